"""Pages joined with frames are, byte for byte, what the theme renders of each."""

import datetime
import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from generator.book.make import make_book
from generator.book.model import Book, Page, SearchRecord
from generator.site.build import built
from generator.site.frames import Frames
from generator.site.navigation import NAMED_UP_TO
from generator.site.stage import stage
from tests.book.sites import DEMO, plans_of

MORE = (
    ("no-title.md", "Words alone.\n"),
    ("two/headings.md", "# A {: #this-page }\n\n## B\n\n### C\n\n## D &amp; e\n"),
    ("two/late.md", "<p>x</p>\n\n## B\n\n# A\n"),
    ("two/one.md", "# A\n"),
)


def _plainly(book: Book, folder: Path) -> Path:
    """The site that plain MkDocs makes of the tree."""
    tree = stage(book, folder / "tree")
    day = datetime.datetime.combine(book.as_of, datetime.time(), datetime.UTC)
    subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "--quiet", "--site-dir", str(folder / "plain")],
        cwd=tree,
        env=os.environ
        | {"NO_MKDOCS_2_WARNING": "1", "SOURCE_DATE_EPOCH": str(int(day.timestamp()))},
        check=True,
    )
    return folder / "plain"


@pytest.mark.parametrize("reader", ["hired-sprayer", pytest.param("owner", marks=pytest.mark.long)])
def test_every_page_of_the_demo_is_as_plain_mkdocs_makes_it(tmp_path: Path, reader: str) -> None:
    book = make_book(plans_of(DEMO)[reader])
    own = tuple(
        Page(address, f"Page &#45; {address[:3]}", "More", text, SearchRecord("", ""))
        for address, text in MORE
    )
    listed = tuple(
        Page(
            f"{name}.md", name, "Long", "# A {: #this-page }\n", SearchRecord("", ""), (), "all.md"
        )
        for name in ("all", *(f"all/{number}" for number in range(NAMED_UP_TO + 1)))
    )
    book = replace(book, pages=(*book.pages, *own, *listed))
    assert built(book, tmp_path / "build", tmp_path / "site") == ()
    plain = _plainly(book, tmp_path)
    for page in book.pages:
        name = page.address.removesuffix(".md") + ".html"
        assert (tmp_path / "site" / name).read_text() == (plain / name).read_text(), name


class _Page:
    """What MkDocs hands a frame, as little as will do."""

    parent = previous_page = next_page = None
    ancestors: tuple[object, ...] = ()
    is_homepage = False
    url, title, content = "a.html", "A", "<p>a</p>"

    class toc:  # noqa: N801 - the theme asks for it so
        items = ()


class _Section:
    def __init__(self, *pages: _Page) -> None:
        self.children = list(pages)
        for page in pages:
            page.parent = self  # type: ignore[assignment]


@pytest.mark.parametrize(
    ("frame", "words"),
    [
        ("<ul></ul>", "does not say in its contents"),
        ('<ul><li class="here">x</li></ul>', "not one line an entry"),
    ],
)
def test_a_theme_whose_contents_are_otherwise_is_refused(frame: str, words: str) -> None:
    class Fixed:
        def render(self, _context: object, /) -> str:
            return frame

    page = _Page()
    _Section(_Page(), page, _Page())
    with pytest.raises(ValueError, match=words):
        Frames(Fixed()).around(page, [], lambda _: {})
