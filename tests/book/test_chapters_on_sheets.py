"""A job sheet names the chapters that say how it is done, for each reader those they have."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.book.content import chapters, chapters_for
from generator.book.make import make_book
from generator.book.model import Book
from tests.book.sites import DEMO, plans_of

READ = "<h2>Read how this is done</h2>"


@pytest.fixture(scope="module")
def books() -> dict[str, Book]:
    return {name: make_book(plan) for name, plan in plans_of(DEMO).items()}


def sheets(book: Book) -> Iterator[tuple[str, str]]:
    for page in book.pages:
        if page.address.startswith("work/"):
            yield page.address, page.markdown


def listed(sheet: str) -> str:
    """What stands under the heading, up to the next."""
    return sheet.partition(READ)[2].partition("<h2>")[0]


def test_sheets_name_chapters_and_only_such_as_the_reader_has(books: dict[str, Book]) -> None:
    assert len(books) > 1
    for reader, book in books.items():
        has = {page.address for page in book.pages}
        named = [text for _, text in sheets(book) if READ in text]
        assert named, reader
        for text in named:
            links = [part.partition('"')[0] for part in listed(text).split('href="../')[1:]]
            assert links
            assert {one.replace(".html", ".md") for one in links} <= has


def test_a_spray_sheet_of_the_owner_names_what_spraying_needs(books: dict[str, Book]) -> None:
    text = next(text for address, text in sheets(books["owner"]) if "autumn_kill" in address)
    links = [part.partition(".html")[0] for part in listed(text).split('href="../chapters/')[1:]]
    assert links[0] == "sod-the-year-before"
    assert {"label-card", "calibration", "records"} <= set(links)


def test_the_list_stands_where_paper_shows_nothing(books: dict[str, Book]) -> None:
    css = Path("site_templates/theme/assets/print.css")
    print_rules = (DEMO.parent / css).read_text(encoding="utf-8")
    hidden = print_rules.partition("display: none !important")[0]
    assert ".behind" in hidden
    for book in books.values():
        for _, text in sheets(book):
            if READ in text:
                assert '<section class="behind">' in text.partition(READ)[0]


def test_chapters_keep_the_order_of_their_names_and_leave_out_those_of_others() -> None:
    everything = [one.name for one in chapters()]
    backwards = everything[::-1]
    assert [one.name for one in chapters_for("owner", backwards)] == backwards
    assert chapters_for("nobody", everything) == ()
    with pytest.raises(KeyError):
        chapters_for("owner", ["no-such-chapter"])
