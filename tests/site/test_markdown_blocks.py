"""Our Markdown extension gives, byte for byte, what the stock processors give."""

import pytest
from markdown import Markdown

from generator.book.make import make_book
from generator.site.markdown_blocks import HandbookBlocks
from tests.book.sites import DEMO, plans_of
from tests.site.books import book_of

EXTENSIONS = [
    "admonition",
    "attr_list",
    "def_list",
    "footnotes",
    "sane_lists",
    "tables",
    "toc",
]

WHOLE = """<section class='a'>
<p>One &amp; *two* <b>b</b></p>
<table><tr><td>1</td></tr></table>
</section>"""
ODD = {
    "whole": f"Before.\n\n{WHOLE}\n\nAfter.",
    "at the start": f"{WHOLE}\n\nAfter.",
    "at the end": f"Before.\n\n{WHOLE}",
    "alone": WHOLE,
    "two in a row": f"{WHOLE}\n\n{WHOLE}",
    "many blank lines": f"Before.\n\n\n\n{WHOLE}\n\n\n\nAfter.",
    "blank lines in threes": f"Before.\n\n\n{WHOLE}\n\n\n{WHOLE}\n\n\nAfter.",
    "two roots, one of them open": "<p>a</p>\n<div>b\n\nAfter *it*.",
    "a root and a drawing": "<p>a</p>\n<svg><g/></svg>\n\nAfter *it*.",
    "trailing newline": f"{WHOLE}\n",
    "no blank line before": f"Before.\n{WHOLE}\n\nAfter.",
    "no blank line after": f"{WHOLE}\nAfter *it*.",
    "blank line inside": "<div>\n\n<p>in *it*</p>\n\n</div>\n\nAfter *it*.",
    "blank line inside, block whole": f"<div>\n\n{WHOLE}\n\n</div>\n\nAfter.",
    "nested same tag": "<div><div>a</div>\n<div>b</div></div>\n\nAfter.",
    "two roots": "<p>a</p>\n<p>b</p>\n\nAfter.",
    "two roots on a line": "<div>a</div> *x* <div>b</div>\n\nAfter.",
    "text behind": "<div>a</div> *x*\n\nAfter.",
    "never closed": "<div>a\n\nAfter *it*.",
    "inline tag": "<strong>a</strong> *b*\n\n<a href='x.html'>x</a>",
    "in a list": "- one\n\n    <div>a *b*</div>\n\n- two",
    "in a quotation": "> <div>a</div>\n\nAfter.",
    "in an admonition": "!!! note\n    <p>a *b*</p>\n\nAfter.",
    "indented code": "    <div>a</div>\n\nAfter.",
    "code span": "Text `<div>` and\n\n<div>a</div>",
    "similar name": "<sectional>a</sectional>\n\n<detailsx>b</detailsx>",
    "closing tag of another": "<p>a</p></div>\n\nAfter.",
    "self-closing": "<div/>\n\n<hr/>\n\nAfter.",
    "details": "<details class='working' id='w'><summary>S</summary><p>1</p></details>\n\nAfter.",
    "tabs": "<div>\n\t<p>a\tb</p>\n</div>\n\nAfter.",
    "heading": "<h2 id='x'>X</h2>\n\n## Y",
}


def _stock(text: str) -> str:
    return Markdown(extensions=EXTENSIONS).convert(text)


def _ours(text: str) -> str:
    return Markdown(extensions=[*EXTENSIONS, HandbookBlocks()]).convert(text)


@pytest.mark.parametrize("text", ODD.values(), ids=ODD.keys())
def test_html_blocks_come_out_as_from_the_stock_processor(text: str) -> None:
    assert _ours(text) == _stock(text)


def test_whole_pages_come_out_as_from_the_stock_processor_but_for_page_links() -> None:
    for page in book_of(6).pages:
        assert _ours(page.markdown) == _stock(page.markdown).replace(".md", ".html")


def test_a_whole_block_is_put_away_before_the_stock_processor_sees_it() -> None:
    converter = Markdown(extensions=[HandbookBlocks()])
    lines = converter.preprocessors["handbook_html"].run(f"A.\n\n{WHOLE}\n\nB.".split("\n"))
    assert not any("<" in line for line in lines)
    assert converter.htmlStash.rawHtmlBlocks == [f"{WHOLE}\n"]


def test_nearly_all_of_a_book_is_put_away() -> None:
    """What the stock processor parses costs most of a build; one block left open takes the rest."""
    book = make_book(plans_of(DEMO)["owner"])
    converter = Markdown(extensions=[HandbookBlocks()])
    left = whole = 0
    for page in book.pages:
        converter.reset()
        lines = converter.preprocessors["handbook_html"].run(page.markdown.split("\n"))
        left += sum(len(line) for line in lines if line.startswith("<"))
        whole += sum(map(len, converter.htmlStash.rawHtmlBlocks))
    assert whole > 1_000_000
    assert left < whole / 50


@pytest.mark.parametrize(
    ("link", "leads_to"),
    [
        ("a.md", "a.html"),
        ("../a/b.md#c", "../a/b.html#c"),
        ("a.mdx", "a.mdx"),
        ("a.html", "a.html"),
        ("https://example.org/a.md", "https://example.org/a.md"),
        ("#a.md", "#a.md"),
        ("a.html?x=b.md", "a.html?x=b.md"),
    ],
)
def test_only_links_to_pages_change(link: str, leads_to: str) -> None:
    assert _ours(f"[x]({link})") == f'<p><a href="{leads_to}">x</a></p>'
