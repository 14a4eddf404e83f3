"""What a reader types into the search box, and whether the page it means is among the first two."""

from collections.abc import Iterator
from html import unescape
from pathlib import PurePosixPath

import pytest
from playwright.sync_api import Browser, Page
from playwright.sync_api import TimeoutError as PlaywrightTimeout

from tests.book.sites import Site
from tests.browser.visits import DESKTOP, listening_page

FOUND = """() => [...document.querySelectorAll(".md-search-result__item > a")]
  .slice(0, 2).map((hit) => [
    decodeURIComponent(new URL(hit.href).pathname), hit.querySelector("h1").textContent.trim()
  ])"""
SET_ASIDE = "document.querySelectorAll('.md-search-result__item').forEach((e) => (e.id = 'old'))"
ANSWERED = "document.querySelector('.md-search-result__item:not(#old)') !== null"


def _asked(site: Site) -> Iterator[tuple[str, str]]:
    """The words a reader types, by what the book calls the page, and the page's address."""
    for page in site.book.pages:
        if "/" in page.address:
            yield unescape(page.title), page.address.removesuffix(".md") + ".html"


def _not_found(page: Page, site: Site, asked: list[tuple[str, str]]) -> list[str]:
    page.goto((site.folder / "index.html").as_uri())
    page.keyboard.press("s")
    box = page.locator(".md-search__input")
    faults = []
    for words, address in asked:
        page.evaluate(SET_ASIDE)
        box.fill(words)
        box.press("End")  # the search listens for keys
        try:
            page.wait_for_function(ANSWERED, timeout=5000)
        except PlaywrightTimeout:
            faults.append(f"{words}: nothing is found")
            continue
        first = page.evaluate(FOUND)
        # A job of two seasons stands on two sheets under one name: either is what was meant.
        if not any(hit.endswith(f"/{address}") or title == words for hit, title in first):
            faults.append(f"{words}: {address} is not among {first}")
    return faults


def _one_of_each_folder(asked: list[tuple[str, str]]) -> list[tuple[str, str]]:
    """All but the many job sheets, of which every fifth."""
    sheets = [one for one in asked if PurePosixPath(one[1]).parts[0] in ("work", "records")]
    return [one for one in asked if one not in sheets] + sheets[::5]


def test_the_name_of_a_page_finds_it(browser: Browser, demo_sites: dict[str, Site]) -> None:
    faults: list[str] = []
    with listening_page(browser, DESKTOP, faults) as page:
        for reader, site in demo_sites.items():
            asked = _one_of_each_folder(list(_asked(site)))
            assert asked
            faults += [f"{reader}: {fault}" for fault in _not_found(page, site, asked)]
    assert faults == []


@pytest.mark.long
def test_the_name_of_every_page_finds_it(browser: Browser, demo_sites: dict[str, Site]) -> None:
    faults: list[str] = []
    with listening_page(browser, DESKTOP, faults) as page:
        for reader, site in demo_sites.items():
            found = _not_found(page, site, list(_asked(site)))
            faults += [f"{reader}: {fault}" for fault in found]
    assert faults == []
