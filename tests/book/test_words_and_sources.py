"""The pages Words and Sources: nothing lost between the data and the page, in good order."""

import html
import re

import pytest

from generator.book.make import make_book
from generator.book.model import Book
from generator.reference.library import sources, words
from tests.book.sites import DEMO, plans_of

HEADS = {
    "published": "## Published",
    "common_practice": "## Common practice",
    "memory": "## From memory",
    "definition": "## By definition",
}


@pytest.fixture(scope="module")
def books() -> dict[str, Book]:
    return {name: make_book(plan) for name, plan in plans_of(DEMO).items()}


def page_of(book: Book, address: str) -> str:
    (page,) = [one for one in book.pages if one.address == address]
    return html.unescape(page.markdown)


def listed_under(text: str) -> dict[str, list[str]]:
    """The titles of sources under each grade."""
    found = {}
    for trust, head in HEADS.items():
        if head in text:
            part = text.partition(head)[2].partition("\n## ")[0]
            found[trust] = re.findall(r"<li><p><strong>(.*?)</strong>", part)
    return found


def test_every_word_stands_once_under_its_letter_in_order(books: dict[str, Book]) -> None:
    text = page_of(books["owner"], "glossary.md")
    shown = []
    for part in text.split("\n## ")[1:]:
        entries = re.findall(r"<dt>(.*?)</dt>", part)
        assert entries
        assert {one[0].upper() for one in entries} == {part[0]}
        shown += entries
    assert shown == sorted(words(), key=str.lower)
    anchors = re.findall(r'<a href="#(letter-.)">', text)
    assert anchors == [f"letter-{part[0].lower()}" for part in text.split("\n## ")[1:]]


def test_every_word_is_found_by_a_search(books: dict[str, Book]) -> None:
    (page,) = [one for one in books["owner"].pages if one.address == "glossary.md"]
    found = re.sub(r"\W+", " ", page.search.text.lower())
    assert [one for one in words() if re.sub(r"\W+", " ", one.lower()) not in found] == []


def test_each_source_stands_under_its_grade_alone(books: dict[str, Book]) -> None:
    grade_of = {one.title: one.trust for one in sources().values()}
    for name, book in books.items():
        found = listed_under(page_of(book, "sources.md"))
        assert len(found["published"]) > 3, name
        for trust, titles in found.items():
            assert titles == sorted(titles, key=str.lower)
            assert {grade_of[title] for title in titles} == {trust}


def test_chapters_on_safety_are_named_beside_what_they_rest_on(books: dict[str, Book]) -> None:
    text = page_of(books["owner"], "sources.md")
    entry = text.partition(sources()["niosh_suspension"].title)[2].partition("</li>")[0]
    assert sources()["niosh_suspension"].address in entry
    assert 'href="chapters/stands-and-climbing.html"' in entry


def test_what_the_book_cannot_know_is_one_tap_from_the_first_page(books: dict[str, Book]) -> None:
    for name, book in books.items():
        first = book.pages[0].markdown
        assert 'href="chapters/what-this-book-does-not-know.html"' in first, name
        assert "chapters/what-this-book-does-not-know.md" in {one.address for one in book.pages}
    assert "what-this-book-does-not-know" in page_of(books["owner"], "findings.md")
