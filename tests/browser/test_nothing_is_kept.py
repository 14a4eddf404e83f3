"""A browser that keeps nothing of a page: search, scheme and the page of now do their work in it.

Chromium told to block what sites keep throws at every look at it; Firefox with its storage turned
off has none there (`dom.storage.enabled`), which is imitated.
"""

import functools
import json
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.book.sites import Site
from tests.browser.visits import PHONE
from tests.chromium import LAUNCH_FLAGS

LOOKED_AT = '["localStorage", "sessionStorage", "indexedDB"]'
THROWS = f"""for (const name of {LOOKED_AT}) Object.defineProperty(window, name,
  {{ get() {{ throw new DOMException("Access is denied.", "SecurityError"); }} }});"""
IS_NOT_THERE = f"""for (const name of {LOOKED_AT}) Object.defineProperty(window, name,
  {{ get: () => null }});"""
CAN_KEEP = """() => {
  try { localStorage.setItem("a", "b"); return localStorage.getItem("a") === "b"; }
  catch { return false; }
}"""
# What Chromium writes for "block all cookies", which takes all that sites keep with it.
BLOCKED = {"profile": {"default_content_setting_values": {"cookies": 2}}}


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, *said: Any) -> None:
        pass


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """The address of a folder on this machine's own network, while it is served."""
    handler = functools.partial(_Quiet, directory=str(folder))
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        thread = threading.Thread(target=server.serve_forever)
        thread.start()
        try:
            yield f"http://127.0.0.1:{server.server_port}"
        finally:
            server.shutdown()
            thread.join()


@pytest.fixture(params=["from a folder", "from a server"])
def address(request: pytest.FixtureRequest, demo_sites: dict[str, Site]) -> Iterator[str]:
    folder = demo_sites["owner"].folder
    if request.param == "from a folder":
        yield folder.as_uri()
    else:
        with served(folder) as found:
            yield found


@contextmanager
def _blocking(browser: Browser, chromium: Path, profile: Path) -> Iterator[Page]:
    """A page of a Chromium of its own whose settings block what sites keep."""
    (profile / "Default").mkdir(parents=True)
    (profile / "Default" / "Preferences").write_text(json.dumps(BLOCKED), encoding="utf-8")
    context = browser.browser_type.launch_persistent_context(
        profile, headless=True, args=LAUNCH_FLAGS, viewport=PHONE,
        executable_path=chromium,
    )  # fmt: skip
    try:
        yield context.pages[0]
    finally:
        context.close()


@contextmanager
def _imitating(browser: Browser, script: str) -> Iterator[Page]:
    context = browser.new_context(viewport=PHONE)
    context.add_init_script(script)
    try:
        yield context.new_page()
    finally:
        context.close()


def _does_its_work(page: Page, address: str) -> None:
    faults: list[str] = []
    page.on("console", lambda said: faults.append(said.text))
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.goto(f"{address}/index.html")
    assert not page.evaluate(CAN_KEEP)
    scheme = "document.body.getAttribute('data-md-color-scheme')"
    before = page.evaluate(scheme)
    page.locator(".md-header label[for^=__palette]:visible").click()
    page.wait_for_function(f"{scheme} !== {before!r}")
    page.locator(".md-header__button[for=__search]").click()
    page.locator(".md-search__input").press_sequentially("lane")
    page.locator(".md-search-result__link").first.click()
    page.wait_for_url("**?h=*")
    assert page.locator("article mark").first.is_visible()
    page.goto(f"{address}/index.html")
    assert page.locator("#today").is_visible()
    page.goto(f"{address}/buy.html")
    number = page.locator("article a.n").first
    working = page.locator(f"[id='{(number.get_attribute('href') or '#')[1:]}'] p").first
    number.click()
    working.wait_for(state="visible")
    assert faults == []


def test_a_chromium_that_blocks_what_sites_keep(
    browser: Browser, chromium: Path, address: str, tmp_path: Path
) -> None:
    with _blocking(browser, chromium, tmp_path / "profile") as page:
        _does_its_work(page, address)


def test_a_browser_that_has_no_storage(browser: Browser, demo_sites: dict[str, Site]) -> None:
    with _imitating(browser, IS_NOT_THERE) as page:
        _does_its_work(page, demo_sites["owner"].folder.as_uri())


@pytest.mark.long
@pytest.mark.parametrize("script", [THROWS, IS_NOT_THERE], ids=["throws", "is not there"])
def test_a_browser_whose_storage_throws_or_is_not_there(
    browser: Browser, address: str, script: str
) -> None:
    with _imitating(browser, script) as page:
        _does_its_work(page, address)
