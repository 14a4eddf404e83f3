"""Every link, picture and download of every page of the demo leads to something that is there.

Read with the standard library's parser, beside the build's own check in generator/site/links.py.
"""

from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urljoin, urlsplit

from tests.book.sites import Site


class _Read(HTMLParser):
    def __init__(self, html: str) -> None:
        super().__init__()
        self.ids: set[str] = set()
        self.leads: list[str] = []
        self.title = ""
        self._in_title = False
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._in_title = tag == "title" and not self.title
        for name, value in attrs:
            if name == "id" and value:
                self.ids.add(value)
            if name in ("href", "src") and value:
                self.leads.append(value)

    def handle_data(self, data: str) -> None:
        if self._in_title:
            self.title += data

    def handle_endtag(self, tag: str) -> None:
        if tag == "title":
            self._in_title = False


def _broken(folder: Path, pages: dict[str, _Read]) -> list[str]:
    faults = []
    for address, page in pages.items():
        for lead in page.leads:
            parts = urlsplit(lead)
            if parts.scheme in ("https", "tel", "data"):
                continue
            target = unquote(urlsplit(urljoin(f"/{address}", lead)).path).lstrip("/")
            if not (folder / target).is_file():
                faults.append(f"{address}: {lead} is not there")
            elif parts.fragment and unquote(parts.fragment) not in pages[target].ids:
                faults.append(f"{address}: {lead} has no such place")
    return faults


def test_every_link_leads_somewhere(demo_sites: dict[str, Site]) -> None:
    for reader, site in demo_sites.items():
        pages = {address: _Read(html) for address, html in site.pages().items()}
        assert sum(len(page.leads) for page in pages.values()) > 500
        assert _broken(site.folder, pages) == [], reader


def test_a_link_that_leads_nowhere_is_seen(tmp_path: Path) -> None:
    (tmp_path / "a.html").write_text("", encoding="utf-8")
    page = _Read(
        '<p id="here"><a href="#here"><a href="#gone"><img src="gone.svg"><a href="a.html">'
    )
    assert _broken(tmp_path, {"a.html": page}) == [
        "a.html: #gone has no such place",
        "a.html: gone.svg is not there",
    ]


def test_pages_of_one_book_have_titles_of_their_own(demo_sites: dict[str, Site]) -> None:
    for reader, site in demo_sites.items():
        titles: dict[str, list[str]] = {}
        for address, html in site.pages().items():
            titles.setdefault(_Read(html).title, []).append(address)
        assert {title: on for title, on in titles.items() if len(on) > 1} == {}, reader
