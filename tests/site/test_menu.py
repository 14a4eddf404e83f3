"""The menu of the sites of the demo: its heads, where one is, what is in reach, and that all is."""

import re
from collections.abc import Iterator
from html import unescape
from html.parser import HTMLParser
from pathlib import Path, PurePosixPath
from urllib.parse import urldefrag, urljoin

import pytest

from generator.book.make import make_book
from generator.site.navigation import NAMED_UP_TO
from tests.book.sites import Site, plans_of
from tests.properties import make_property

HEADS = (
    "This week",
    "The year",
    "Places",
    "Stands and walks",
    "Buying and money",
    "Records",
    "How the work is done",
)
TITLE_LETTERS = 60


class _Menu(HTMLParser):
    """Links of a page with where they stand: heads, in reach, the path above the title, anywhere.

    `current` are words and mark of links that say where one is.
    """

    def __init__(self, html: str) -> None:
        super().__init__()
        self.inside: list[str] = []
        self.found: dict[str, list[tuple[str, str]]] = {"heads": [], "in-reach": [], "path": []}
        self.named = 0
        self.all: list[str] = []
        self.current: list[tuple[str, str]] = []
        self._link: dict[str, str | None] | None = None
        self._words = ""
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if tag in ("ul", "nav", "div", "li", "article"):
            self.inside.append((given.get("class") or tag).split()[0])
        if tag == "a" and given.get("href"):
            self._link, self._words = given, ""
            self.all.append(given["href"] or "")

    def handle_data(self, data: str) -> None:
        self._words += data

    def handle_endtag(self, tag: str) -> None:
        if tag == "a" and self._link is not None:
            href, words = self._link["href"] or "", " ".join(self._words.split())
            for part in self.found:
                if part in self.inside and "here" not in self.inside[:-1]:
                    self.found[part].append((words, href))
            self.named += "md-sidebar__inner" in self.inside and not href.startswith("#")
            if mark := self._link.get("aria-current"):
                self.current.append((words, mark))
            self._link = None
        elif tag in ("ul", "nav", "div", "li", "article") and self.inside:
            self.inside.pop()


def _menus(site: Site) -> Iterator[tuple[str, _Menu]]:
    for address, html in site.pages().items():
        yield address, _Menu(html)


def _head_of(site: Site) -> dict[str, str]:
    return {page.address.replace(".md", ".html"): page.group for page in site.book.pages}


def test_the_owner_has_seven_heads_and_others_those_they_have_pages_for(
    demo_sites: dict[str, Site],
) -> None:
    for reader, site in demo_sites.items():
        groups = {page.group for page in site.book.pages} | {"This week"}
        wanted = [head for head in HEADS if head in groups]
        assert groups - set(HEADS) == {""}, reader
        for address, menu in _menus(site):
            assert [words for words, _ in menu.found["heads"]] == wanted, address
    assert {page.group for page in demo_sites["owner"].book.pages} >= set(HEADS[1:])


def test_the_menu_says_where_one_is_and_a_path_above_the_title_too(
    demo_sites: dict[str, Site],
) -> None:
    for reader, site in demo_sites.items():
        heads = _head_of(site)
        for address, menu in _menus(site):
            path = [words for words, _ in menu.found["path"] if words != "Safety"]
            page = next(p for p in site.book.pages if p.address.replace(".md", ".html") == address)
            marked = [words for words, mark in menu.current if mark == "page"]
            if address == "index.html":
                assert marked == ["This week"], reader
                continue
            assert marked == [" ".join(unescape(page.title).split())], f"{reader}: {address}"
            if not heads[address]:
                assert path == [], address
                continue
            assert "true" in {mark for _, mark in menu.current}, address
            assert path[0] == heads[address], address
            lists = {p.address: unescape(p.title) for p in site.book.pages}
            if page.listed_on in lists and page.listed_on != page.address:
                assert path == [heads[address], lists[page.listed_on]], address


def test_emergency_and_safety_are_in_reach_of_every_page(demo_sites: dict[str, Site]) -> None:
    for reader, site in demo_sites.items():
        for address, menu in _menus(site):
            up = "../" * (len(PurePosixPath(address).parts) - 1)
            assert {words for words, _ in menu.found["in-reach"]} == {"Emergency", "Safety"}
            assert ("Safety", f"{up}safety.html") in menu.found["path"], f"{reader}: {address}"
            assert menu.all.count(f"{up}emergency.html") >= 2, f"{reader}: {address}"


def test_no_head_is_a_range_and_no_long_list_is_named_on_every_page(
    demo_sites: dict[str, Site],
) -> None:
    for site in demo_sites.values():
        for address, menu in _menus(site):
            assert menu.named <= len(HEADS) + 2 * NAMED_UP_TO, address
        sheet = next(p.address for p in site.book.pages if p.address.startswith("work/"))
        html = (site.folder / sheet.replace(".md", ".html")).read_text(encoding="utf-8")
        contents = html[html.index('aria-label="Contents"') : html.index("<article")]
        assert " – " not in contents


def _without_turning(html: str) -> str:
    return re.sub(r'<nav class="turn".*?</nav>', "", html, flags=re.DOTALL)


def test_every_page_is_reached_by_links_without_turning_pages(demo_sites: dict[str, Site]) -> None:
    for reader, site in demo_sites.items():
        pages = {
            address: _Menu(_without_turning(html)).all for address, html in site.pages().items()
        }
        reached, ahead = {"index.html"}, ["index.html"]
        while ahead:
            here = ahead.pop()
            found = {urldefrag(urljoin(here, href))[0] for href in pages[here]} & pages.keys()
            ahead += found - reached
            reached |= found
        assert set(pages) - reached == set(), reader


def test_titles_of_the_demo_are_short_enough_for_a_tab(demo_sites: dict[str, Site]) -> None:
    for site in demo_sites.values():
        assert _long_titles(page.title for page in site.book.pages) == []


@pytest.mark.parametrize("seed", [2027, 11])
def test_titles_of_generated_properties_are_short_enough_for_a_tab(
    tmp_path: Path, seed: int
) -> None:
    for plan in plans_of(make_property(tmp_path / "property", seed, 9)).values():
        titles = [page.title for page in make_book(plan).pages]
        assert len(titles) > 20
        assert _long_titles(titles) == []


def _long_titles(titles: Iterator[str] | list[str]) -> list[str]:
    return [title for title in map(unescape, titles) if len(title) >= TITLE_LETTERS]
