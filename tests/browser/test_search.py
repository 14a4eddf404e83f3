"""What a reader types into the search box, and whether the page it means is among the first two."""

from collections.abc import Iterator
from html import unescape
from pathlib import PurePosixPath

from playwright.sync_api import Browser, Page
from playwright.sync_api import TimeoutError as PlaywrightTimeout

from tests.book.sites import Site
from tests.browser.visits import DESKTOP, listening_page

FOUND = """() => [...document.querySelectorAll(".md-search-result__item > a")]
  .slice(0, 2).map((hit) => hit.querySelector("h1").textContent.trim())"""
# A chapter whose every word is also the name of things and work; the list of chapters has it.
IN_OTHER_NAMES = ("A water hole",)
NAMED = ("places", "stands", "routes", "products", "seed", "equipment", "chapters")
SET_ASIDE = "document.querySelectorAll('.md-search-result__item').forEach((e) => (e.id = 'old'))"
ANSWERED = "document.querySelector('.md-search-result__item:not(#old)') !== null"


def _asked(site: Site) -> Iterator[tuple[str, str]]:
    """The words a reader types, and the name of the page that is meant or its beginning.

    Of a sheet the work alone is typed: its place has a page of its own, which comes first.
    """
    for page in site.book.pages:
        title = unescape(page.title)
        if PurePosixPath(page.address).parts[0] in NAMED and title not in IN_OTHER_NAMES:
            yield title, title
        if PurePosixPath(page.address).parts[0] == "work" and ": " in title:
            yield title.split(": ")[0], title.split(": ")[0]


def _not_found(page: Page, site: Site, asked: list[tuple[str, str]]) -> list[str]:
    page.goto((site.folder / "index.html").as_uri())
    page.keyboard.press("s")
    box = page.locator(".md-search__input")
    faults = []
    for words, wanted in asked:
        page.evaluate(SET_ASIDE)
        box.fill(words)
        box.press("End")  # the search listens for keys
        try:
            page.wait_for_function(ANSWERED, timeout=5000)
        except PlaywrightTimeout:
            faults.append(f"{words}: nothing is found")
            continue
        first = page.evaluate(FOUND)
        if not any(title.startswith(wanted) for title in first):
            faults.append(f"{words}: found instead is {first}")
    return faults


def test_the_name_of_a_thing_or_of_work_finds_its_page(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    faults: list[str] = []
    with listening_page(browser, DESKTOP, faults) as page:
        for reader, site in demo_sites.items():
            asked = list(dict.fromkeys(_asked(site)))
            assert asked
            faults += [f"{reader}: {fault}" for fault in _not_found(page, site, asked)]
    assert faults == []
