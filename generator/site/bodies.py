"""A page's Markdown as HTML, with what the contents and the check of links need of it.

Most pages of a book are headings and whole HTML blocks with a line of words here and there. These
are put together block by block, each heading and line of words converted once for all pages; any
other page goes through the converter whole. Both give the same HTML.
"""

import re
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import Any

import markdown
from markdown import Markdown
from markdown.extensions.toc import nest_toc_tokens

from generator.book.model import Page
from generator.dataclass import dataclass
from generator.kept import STORE
from generator.site import markdown_blocks
from generator.site.frames import Heading, Headings
from generator.site.links import Linked, read
from generator.site.markdown_blocks import opens_block, whole_block

Tokens = list[dict[str, Any]]
# A heading of plain words and entities that is given its name.
_NAMED = re.compile(
    r"(#{1,6}) ((?:[^\n&{}<>\[\]*_`\\!]|&#\d+;)*(?:[^\s&{}<>\[\]*_`\\!#]|&#\d+;)) \{: #([\w-]+) \}"
)
_HEADING = re.compile(r"#{2,6} [^\n{]+")
# Words alone, that no block of Markdown begins with or goes on in.
_WORDS = re.compile(r"(?:[A-Za-z&]|\*\*)[^\n|{]*")
# What makes of lines of words something else, or what the converter changes in whole blocks.
_CHANGED_BY = ("\t", "\r", "\x02", "\x03")
_CHANGED_LINE = re.compile(r"\n(?: |\[|\*\[|\n: )")


@dataclass(frozen=True, slots=True)
class Body:
    """What stands on a page, its headings, and where its links lead."""

    address: str
    html: str
    headings: Headings
    linked: Linked


def body_maker(converter: Markdown, settings: str) -> Callable[[Page], Body]:
    """Return the function that makes a page's body; what it has converted it keeps.

    `settings` say all that the converter was made with.
    """
    # what ships is kept from build to build, and a property's own text never is
    kind = f"html {markdown.__version__} {settings} {Path(markdown_blocks.__file__).read_text()}"

    @cache
    def converted(block: str) -> tuple[str, Tokens]:
        html = converter.reset().convert(block)
        return html, getattr(converter, "toc_tokens", [])

    def made(page: Page) -> Body:
        if page.ships:
            html, tokens = STORE.made_of(kind, page.markdown, converted)
        else:
            html, tokens = _put_together(page.markdown, converted) or converted(page.markdown)
        return Body(page.address, html, Headings(_headings(tokens)), read(html, page.safety_keys))

    return made


def _put_together(
    text: str, converted: Callable[[str], tuple[str, Tokens]]
) -> tuple[str, Tokens] | None:
    """Return a page made of whole blocks and lines of words, None where it holds anything else."""
    if _is_changed(text):
        return None
    blocks: list[str] = []
    tokens: Tokens = []
    for part in text.split("\n\n"):
        block = part.strip("\n")
        if opens_block(block):
            if not whole_block(block):
                return None
            # one newline of its own, as the converter leaves it
            blocks.append(f"{block}\n")
        elif named := _NAMED.fullmatch(block):
            level, words, anchor = len(named[1]), named[2].strip(), named[3]
            blocks.append(f'<h{level} id="{anchor}">{words}</h{level}>')
            tokens.append({"level": level, "id": anchor, "name": words})
        elif _HEADING.fullmatch(block) or _WORDS.fullmatch(block):
            html, own = converted(block)
            blocks.append(html)
            tokens += own
        elif block:
            return None
    if len({token["id"] for token in tokens}) < len(tokens):
        return None
    return "\n".join(blocks).strip(), _nested(tokens)


def _is_changed(text: str) -> bool:
    has_a_note = "[" in text and "[^" in text
    return (
        has_a_note or any(sign in text for sign in _CHANGED_BY) or bool(_CHANGED_LINE.search(text))
    )


def _nested(tokens: Tokens) -> Tokens:
    # what is nested is changed, and the tokens of a kept block stand on other pages too
    nested: Tokens = nest_toc_tokens([dict(token) for token in tokens])  # type: ignore[misc,assignment]  # dicts of its own kind
    return nested


def _headings(tokens: Tokens) -> tuple[Heading, ...]:
    return tuple(_in_order(tokens))


def _in_order(tokens: Tokens) -> Iterator[Heading]:
    for token in tokens:
        yield Heading(f"#{token['id']}", token["name"], _headings(token.get("children", [])))
