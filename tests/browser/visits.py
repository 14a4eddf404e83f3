"""Opens the pages of a finished site from its folder and says what a reader would trip over."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Literal

from playwright.sync_api import Browser, Page, Request, ViewportSize

PHONE: ViewportSize = {"width": 360, "height": 740}
DESKTOP: ViewportSize = {"width": 1280, "height": 900}
SIDEWAYS = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


def visit_all(browser: Browser, site: Path) -> list[str]:
    """Faults over every page of `site`, each opened on a phone and unfolded.

    A fault is a request that failed or left the folder, anything said on the console, an error of
    a script, a picture that did not load, or a page wider than the phone.
    """
    faults: list[str] = []
    with listening_page(browser, PHONE, faults) as page:
        for path in sorted(site.rglob("*.html")):
            page.goto(path.as_uri())
            name = path.relative_to(site).as_posix()
            faults += [f"{name}: {fault}" for fault in _seen(page)]
    return faults


@contextmanager
def listening_page(
    browser: Browser,
    size: ViewportSize,
    faults: list[str],
    scheme: Literal["light", "dark"] = "light",
) -> Iterator[Page]:
    """A page that writes into `faults` what it asked for in vain and what it complained of."""
    context = browser.new_context(viewport=size, color_scheme=scheme)
    page = context.new_page()
    page.on("request", lambda asked: _note_request(asked.url, faults))
    page.on("requestfailed", lambda asked: _note_failure(asked, faults))
    page.on("console", lambda said: faults.append(f"console at {page.url}: {said.text}"))
    page.on("pageerror", lambda error: faults.append(f"script error at {page.url}: {error}"))
    try:
        yield page
    finally:
        context.close()


def search_opens(browser: Browser, site: Path, words: str) -> str:
    """The main heading of the page that the first hit for `words` opens, searched from home.

    Raises AssertionError where the search asked for something in vain or complained.
    """
    faults: list[str] = []
    with listening_page(browser, DESKTOP, faults) as page:
        page.goto((site / "index.html").as_uri())
        page.keyboard.press("s")
        page.locator(".md-search__input").press_sequentially(words)
        hit = page.locator(".md-search-result__link").first
        hit.wait_for(state="visible")
        hit.click()
        page.wait_for_url("**?h=*")
        heading = page.locator("h1").inner_text()
    assert faults == []
    return heading


def _note_request(address: str, faults: list[str]) -> None:
    if not address.startswith(("file:", "data:", "blob:", "about:")):
        faults.append(f"request leaves the folder: {address}")


def _note_failure(asked: Request, faults: list[str]) -> None:
    # Going on to the next page stops what the last one was still loading; that is no fault.
    if asked.failure != "net::ERR_ABORTED":
        faults.append(f"request failed: {asked.url}: {asked.failure}")


def _seen(page: Page) -> Iterator[str]:
    broken = page.evaluate(
        "[...document.images].filter(i => !i.complete || !i.naturalWidth).map(i => i.src)"
    )
    yield from (f"picture does not load: {source}" for source in broken)
    page.evaluate("document.querySelectorAll('details').forEach((fold) => { fold.open = true; })")
    if (over := page.evaluate(SIDEWAYS)) > 0:
        yield f"scrolls sideways by {over} px on a phone"
