"""Pages put together block by block are, byte for byte, what the converter makes of them."""

import sys
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from markdown import Markdown

from generator.book.make import make_book
from generator.book.model import Page, SearchRecord
from generator.kept import Store
from generator.site import bodies
from generator.site.bodies import Body, body_maker
from generator.site.markdown_blocks import HandbookBlocks
from tests.book.sites import DEMO, plans_of
from tests.site.test_markdown_blocks import EXTENSIONS, ODD, WHOLE

LINES = {
    "bold at the start": "**A** b.",
    "a link and a mark": 'See [it](a.md), <a class="n" href="#w-1">1</a> &amp; `code`.',
    "a list": "- one\n- two",
    "a numbered list": "1. one\n2. two",
    "a year": "2027 was dry.",
    "a definition": "Term\n: what it is",
    "a definition behind a blank line": "Term\n\n: what it is",
    "a footnote": "Word[^1].\n\n[^1]: Note.",
    "a link by name": "[word][name]\n\n[name]: a.html",
    "a table": "a | b\n--|--\n1 | 2",
    "a heading underlined": "Words\n-----",
    "a heading with an attribute": "## Words {: .loud }",
    "a heading closed": "## Words ##",
    "two headings of one name": "## Words\n\n## Words",
    "headings below headings": "## A\n\n### B\n\n#### C\n\n## D",
    "a heading that skips": "#### A\n\n## B",
    "a line of words with an attribute": "Words. {: #here }",
    "a code block": "```\n# no heading\n```",
    "an admonition": "!!! note\n    words",
    "a quotation": "> words",
    "a rule": "Words\n\n---\n\nwords",
    "a tab": "<p>a\tb</p>",
    "a line of spaces": "<p>a</p>\n  \n<p>b</p>",
    "entities": "&#42;not bold&#42; and *bold*",
    "a backslash": "a \\* b",
    "a line broken": "words  \nwords",
    "many newlines": "A.\n\n\n\nB.\n\n\n",
    "a contents marker": "[TOC]\n\n## A",
}


@cache
def _converter() -> Markdown:
    return Markdown(extensions=[*EXTENSIONS, HandbookBlocks()])


def _page(markdown: str) -> Page:
    return Page("a.md", "A", "", markdown, SearchRecord("A", ""))


def _whole(page: Page, monkeypatch: pytest.MonkeyPatch) -> Body:
    with monkeypatch.context() as patch:
        patch.setattr(bodies, "_put_together", lambda *_: None)
        return body_maker(_converter(), "")(page)


@pytest.mark.parametrize("around", ["{}", f"# T {{{{: #t }}}}\n\n{WHOLE}\n\n{{}}\n\n{WHOLE}\n\nB."])
@pytest.mark.parametrize("text", [*LINES.values(), *ODD.values()], ids=[*LINES, *ODD])
def test_a_page_of_any_make_up_is_as_from_the_converter(
    monkeypatch: pytest.MonkeyPatch, text: str, around: str
) -> None:
    page = _page(around.format(text))
    assert body_maker(_converter(), "")(page) == _whole(page, monkeypatch)


@pytest.mark.parametrize("reader", ["owner", "hired-sprayer"])
def test_pages_of_the_demo_are_as_from_the_converter(
    monkeypatch: pytest.MonkeyPatch, reader: str
) -> None:
    make = body_maker(_converter(), "")
    for page in make_book(plans_of(DEMO)[reader]).pages:
        assert make(page) == _whole(page, monkeypatch)


def test_nearly_all_pages_are_put_together() -> None:
    """The converter costs most of a build: what it is not asked for is what makes one fast."""
    pages = make_book(plans_of(DEMO)["owner"]).pages
    asked: list[str] = []

    def converted(block: str) -> tuple[str, bodies.Tokens]:
        asked.append(block)
        return "", []

    whole = [page.address for page in pages if bodies._put_together(page.markdown, converted)]
    others = {page.address for page in pages} - set(whole)
    assert {address for address in others if not address.startswith("chapters/")} == set()
    assert sum(map(len, asked)) < sum(len(page.markdown) for page in pages) / 30


def test_what_ships_is_converted_once_and_what_is_of_a_property_is_never_kept(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(bodies, "STORE", Store(tmp_path))
    monkeypatch.setattr(sys, "dont_write_bytecode", False)
    own = _page("# A\n\n1. one\n2. two\n")
    shipped = replace(own, ships=True)
    body = body_maker(_converter(), "")(own)
    assert list(tmp_path.iterdir()) == []
    assert body_maker(_converter(), "")(shipped) == body
    (kept,) = tmp_path.iterdir()

    class Broken(Markdown):
        def convert(self, _text: str) -> str:
            raise AssertionError

    assert body_maker(Broken(), "")(shipped) == body
    # other settings of the converter may give other HTML
    assert body_maker(_converter(), "others")(shipped) == body
    assert len(list(tmp_path.iterdir())) == 2
    kept.write_bytes(b"damaged")
    assert body_maker(_converter(), "")(shipped) == body


def test_every_chapter_ships_and_no_page_of_a_property_does() -> None:
    for page in make_book(plans_of(DEMO)["owner"]).pages:
        assert page.ships == page.address.startswith("chapters/"), page.address
