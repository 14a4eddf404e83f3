"""What a landowner asks most is at most two links away from the first page."""

import posixpath

import pytest

from tests.book.reading import read
from tests.book.sites import Site

FIRST = "index.html"
TWO = 2
# What is asked, and a page that answers it in the demo.
ASKED = {
    "this week": FIRST,
    "the tank for a screen": "work/lane-2027-autumn_kill.html",
    "may I hunt a stand": "stands/oak.html",
    "order by when": "buy.html",
    "what was sprayed on a place": "places/ridge.html",
    "whom to call": "emergency.html",
    "a job's sheet": "work/lane-2027-frost_seeding.html",
    "what was missed": "missed.html",
    "what can I plant": "plant-when.html",
    "what it costs": "money.html",
}


def linked_from(site: Site, address: str) -> set[str]:
    """The pages that links of a page lead to, those of its menu left out."""
    pages = site.pages()
    page = read(pages[address])
    (article,) = page.all("article")
    links = [*article.all("a"), *page.all("a", "to-emergency")]
    found = set()
    for link in links:
        target = link.attributes.get("href", "").partition("#")[0]
        there = posixpath.normpath(posixpath.join(posixpath.dirname(address), target))
        if target and there in pages:
            found.add(there)
    return found


@pytest.fixture(scope="module")
def within_two(demo_sites: dict[str, Site]) -> set[str]:
    site = demo_sites["owner"]
    reached = {FIRST}
    for _ in range(TWO):
        reached |= {there for address in reached for there in linked_from(site, address)}
    return reached


@pytest.mark.parametrize("asked", ASKED)
def test_what_is_asked_most_is_two_links_away(within_two: set[str], asked: str) -> None:
    assert ASKED[asked] in within_two


def test_not_every_page_is_so_near(within_two: set[str], demo_sites: dict[str, Site]) -> None:
    """The walk goes by links that are there: some pages take a third."""
    assert demo_sites["owner"].pages().keys() - within_two
