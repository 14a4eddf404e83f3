"""The one file of a book: every page of it once, in order, and nothing that is not in it."""

import re
from dataclasses import replace
from html import unescape
from html.parser import HTMLParser
from pathlib import Path

import pytest

from generator.book.model import Book
from generator.in_two import TWO_FROM
from generator.site import one_style
from generator.site.bound import FEWEST_SIGNS, name_of_page, page_marks
from generator.site.links import read
from generator.site.one_file import file_beside, is_as_written
from generator.site.publish import Refused, publish
from tests.book.sites import Site
from tests.site.books import book_of, tiny_book

BOUND = re.compile(r"<noscript>(<article .*?</article>)</noscript>", re.DOTALL)
ARTICLE = re.compile(r'<article class="md-content__inner md-typeset">(.*?)</article>', re.DOTALL)
# stands once around the pages of the file
OLD = re.compile(r'<p class="old".*?</p>')
PATH = re.compile(r'<nav class="path".*?</nav>', re.DOTALL)
APART = re.compile(r" <small>\([^<]*in the folder of this book and not in this file\)</small>")
TAG = re.compile(r"<[^>]*>")
NAME_IDS = ("for", "headers", "list", "form", "aria-labelledby", "aria-describedby",
            "aria-controls", "aria-owns", "aria-details", "aria-activedescendant")  # fmt: skip
IN_A_FILE = ("https://", "tel:", "data:", "#")


class Links(HTMLParser):
    """Every id, and everything that is loaded or led to, as Python's own parser reads them."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.ids: list[str] = []
        self.leads_to: list[str] = []
        self.asked_for: list[str] = []
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        for name, value in attrs:
            if name == "id":
                self.ids.append(value or "")
            elif name in NAME_IDS:
                self.asked_for += (value or "").split()
            elif name in ("href", "src", "xlink:href", "data", "action", "poster", "srcset"):
                self.leads_to.append(value or "")
        if tag in ("iframe", "object", "embed", "link", "base", "form"):
            self.leads_to.append(f"a tag {tag}")


def _written(book: Book, folder: Path) -> str:
    assert publish(book, folder / "owner") == ()
    return (folder / "owner.html").read_text(encoding="utf-8")


def _words(html: str) -> str:
    return " ".join(unescape(TAG.sub(" ", html)).split())


@pytest.fixture(scope="module")
def twelve(tmp_path_factory: pytest.TempPathFactory) -> str:
    return _written(book_of(12), tmp_path_factory.mktemp("twelve"))


def test_every_page_of_every_reader_stands_in_it_in_order_word_for_word(
    demo_sites: dict[str, Site],
) -> None:
    for reader, site in demo_sites.items():
        bound = BOUND.findall(file_beside(site.folder).read_text(encoding="utf-8"))
        pages = site.pages()
        assert len(bound) == len(pages)
        for page, html in zip(site.book.pages, bound, strict=True):
            name = name_of_page(page.address)
            assert f'id="{name}"' in html.partition(">")[0], reader
            (article,) = ARTICLE.findall(pages[f"{name}.html"])
            own, shown = _words(OLD.sub("", PATH.sub("", article))), _words(APART.sub("", html))
            # of a drawing that stands on an earlier page its name alone is here
            if 'a class="drawn"' not in html:
                assert shown == own, f"{reader}: {name}"


def test_it_leads_nowhere_out_of_itself_and_no_two_places_have_one_name(
    demo_sites: dict[str, Site],
) -> None:
    for site in demo_sites.values():
        html = file_beside(site.folder).read_text(encoding="utf-8")
        found = Links(html)
        assert len(found.ids) > 100
        assert len(set(found.ids)) == len(found.ids)
        ids = set(found.ids)
        outside = [one for one in found.leads_to if not one.startswith(IN_A_FILE)]
        nowhere = [
            one
            for one in found.leads_to
            if one.startswith("#") and one.removeprefix("#") not in ids
        ]
        assert (outside, nowhere) == ([], [])
        assert set(found.asked_for) - set(found.ids) == set()
        # the check that reads the folder, over the file as it lies there
        keys = {key for page in site.book.pages for key in page.safety_keys}
        linked = read(html, keys)
        assert linked.faults == ()
        assert linked.addresses == frozenset()


def test_a_readers_file_holds_that_readers_pages_and_no_other(demo_sites: dict[str, Site]) -> None:
    titles = {
        reader: {page.title for page in site.book.pages} for reader, site in demo_sites.items()
    }
    owners = titles["owner"] - titles["hired-driller"]
    text = unescape(file_beside(demo_sites["hired-driller"].folder).read_text(encoding="utf-8"))
    assert {"What each reader sees", "Money and hours"} <= {unescape(one) for one in owners}
    named = {unescape(one) for one in owners if len(unescape(one)) > 14}
    assert {one for one in named if f">{one}<" in text or f'"{one}"' in text} == set()


def test_the_same_book_makes_the_same_bytes_in_one_process_and_in_two(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    book = book_of(TWO_FROM + 3)
    in_two = _written(book, tmp_path / "two")
    monkeypatch.setattr("os.cpu_count", lambda: 1)
    assert _written(book, tmp_path / "one") == in_two


def test_a_drawing_is_kept_once_however_many_pages_show_it(twelve: str) -> None:
    assert twelve.count("data:image/svg+xml;base64,") == 1
    (place,) = re.findall(r'<img id="(drawn:[0-9a-f]+)"', twelve)
    assert (
        twelve.count(f'<a class="drawn" href="#{place}">The drawing: Where the strip lies</a>')
        == 11
    )


def test_a_small_drawing_and_one_without_words_stay_on_their_pages(tmp_path: Path) -> None:
    points = " ".join(f"{number},{number}" for number in range(100))
    chart = f'<svg aria-hidden="true"><polyline points="{points}"/></svg>'
    named = f'<svg role="img"><title>A bed</title><polyline points="{points}"/></svg>'
    small = '<svg role="img"><title>A dot</title><circle r="1"/></svg>'
    book = tiny_book("drawn")
    pages = tuple(
        replace(page, markdown=f"# Page\n\n<div>{chart}{named}{small}</div>\n")
        for page in book.pages[:3]
    )
    html = _written(replace(book, pages=pages), tmp_path)
    assert [html.count(one) for one in (chart, small)] == [3, 3]
    assert html.count("<title>A bed</title>") == 1
    assert html.count(">The drawing: A bed</a>") == 2


def test_a_link_to_a_file_says_that_it_is_in_the_folder(tmp_path: Path) -> None:
    book = tiny_book("filed")
    markdown = '# Page\n\n<p class="files"><a href="days.ics" download>days</a></p>\n'
    pages = (replace(book.pages[0], markdown=markdown), book.pages[1])
    html = _written(replace(book, pages=pages, files={"days.ics": b"BEGIN"}), tmp_path)
    assert "days <small>(days.ics, in the folder of this book and not in this file)</small>" in html
    assert "BEGIN" not in html


def test_text_of_a_page_that_would_end_its_wrapping_is_refused(tmp_path: Path) -> None:
    book = tiny_book("x")
    pages = (book.pages[0], replace(book.pages[1], markdown="# Page\n\n<div></noScript></div>\n"))
    (problem,) = publish(replace(book, pages=pages), tmp_path / "owner")
    assert problem == "owner.html, page-1: holds the tag noscript."
    assert list(tmp_path.iterdir()) == []


def _mine(file: Path) -> None:
    file.write_text("mine")


def _changed(file: Path) -> None:
    publish(tiny_book("one"), file.with_suffix(""))
    file.write_text(file.read_text(encoding="utf-8") + "mine", encoding="utf-8")


def _folder(file: Path) -> None:
    file.mkdir()


def _link(file: Path) -> None:
    file.symlink_to("elsewhere")


@pytest.mark.parametrize("put", [_mine, _changed, _folder, _link])
def test_a_file_that_no_build_wrote_is_refused_and_left_as_it_is(
    tmp_path: Path, put: object
) -> None:
    assert callable(put)
    file = tmp_path / "owner.html"
    put(file)
    before = file.read_bytes() if file.is_file() else None
    shown = sorted(path.name for path in tmp_path.iterdir())
    with pytest.raises(Refused) as refused:
        publish(tiny_book("other"), tmp_path / "owner")
    assert str(refused.value) == (
        f"{file} is where the book goes as one file, and no build wrote it as it is; "
        "move it and build again."
    )
    assert sorted(path.name for path in tmp_path.iterdir()) == shown
    assert (file.read_bytes() if file.is_file() else None) == before


def test_its_own_file_is_replaced_and_known_wherever_it_lies(tmp_path: Path) -> None:
    first = _written(tiny_book("one"), tmp_path)
    assert is_as_written(tmp_path / "owner.html")
    second = _written(tiny_book("other"), tmp_path)
    assert "The one book." in first
    assert "The other book." in second
    assert "The one book." not in second


def test_marks_of_pages_tell_them_apart_and_stay_when_a_page_comes() -> None:
    many = [f"work/job-{number}.md" for number in range(3000)]
    marks = page_marks(many)
    assert len(set(marks.values())) == len(many)
    assert min(map(len, marks.values())) == FEWEST_SIGNS
    fewer = page_marks(many[:300])
    assert sum(fewer[address] != marks[address] for address in fewer) < 3
    # one that another begins like is longer, and neither is the beginning of the other's places
    assert all(re.fullmatch(r"[a-z2-7]+", mark) for mark in marks.values())


def test_of_the_themes_style_stays_what_the_file_can_meet() -> None:
    css = (
        '@charset "UTF-8";html{box-sizing:border-box}'
        ".md-typeset h1,.md-tabs__item{margin:0}.md-tabs{top:0}"
        "[dir=rtl] .md-typeset{margin:1}[data-md-color-primary=red]{color:red}"
        "@media print{.md-tabs{display:none}.md-typeset{font-size:1px}}"
        "@media screen{.md-tabs{display:none}}@keyframes turn{0%{top:0}}"
    )
    assert "".join(one_style._met(css)) == (
        "html{box-sizing:border-box}.md-typeset h1{margin:0}"
        "@media print{.md-typeset{font-size:1px}}"
    )


def test_the_themes_style_is_there_in_full_measure(twelve: str) -> None:
    style = twelve.partition("<style>")[2].partition("</style>")[0]
    assert 40_000 < len(style) < 90_000
    for rule in (
        ".md-typeset h1",
        "@media print",
        "@page",
        ".to-emergency",
        "prefers-reduced-motion",
    ):
        assert rule in style, rule
    assert "url(http" not in style
    assert style.count("{") == style.count("}")
