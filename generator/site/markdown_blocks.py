"""Our Markdown extension: HTML blocks pass through unread, links to pages lead to their HTML.

The stock processor gives the same HTML for such blocks, by parsing every tag in them; in a page of
tables that parsing is most of the cost.
"""

import re
from collections.abc import Iterator
from xml.etree.ElementTree import Element

from markdown import Markdown
from markdown.extensions import Extension
from markdown.preprocessors import Preprocessor
from markdown.treeprocessors import Treeprocessor

_OPENING = re.compile(
    r"<(article|aside|details|div|dl|figure|footer|header|h[1-6]|nav|ol|p|section|table|ul)\b"
)
_PAGE_LINK = re.compile(r"^(?![a-z][a-z0-9+.-]*:|/)([^?#]*)\.md(?=$|[?#])")
# Fenced code comes before (25), MkDocs' and Python-Markdown's own reading of HTML after (21, 20).
_BEFORE_HTML = 24
_AFTER_INLINE = 0


class HtmlBlocks(Preprocessor):
    """Puts each whole HTML block away: at column 0, blank lines around it and none inside."""

    def run(self, lines: list[str]) -> list[str]:
        return "\n\n".join(self._put_away("\n".join(lines))).split("\n")

    def _put_away(self, text: str) -> Iterator[str]:
        # A block that stays open takes what follows with it, so the stock processor reads it all.
        if not text.startswith("<") and "\n\n<" not in text:
            yield text
            return
        open_elsewhere = False
        for part in text.split("\n\n"):
            # of three blank lines in a row one is left at the beginning
            chunk = part.strip("\n")
            if opens_block(chunk) and not open_elsewhere:
                if whole_block(chunk):
                    yield self.md.htmlStash.store(chunk + "\n")
                    continue
                open_elsewhere = True
            yield part


def opens_block(chunk: str) -> bool:
    """Whether a chunk begins with an element that is a block."""
    return _OPENING.match(chunk) is not None


def whole_block(chunk: str) -> bool:
    """Whether a chunk is nothing but whole elements, each on lines of its own."""
    at = 0
    while opening := _OPENING.match(chunk, at):
        end = _end_of(chunk, opening[1], at)
        if end == len(chunk):
            return True
        if end is None or chunk[end] != "\n":
            return False
        at = end + 1
    return False


def _end_of(chunk: str, tag: str, at: int) -> int | None:
    """Return where the element that begins at a place ends, None where it stays open."""
    closing = f"</{tag}>"
    # the usual block is one element that holds no other of its kind, and need not be walked
    if chunk.endswith(closing) and chunk.find(closing, at) == len(chunk) - len(closing):
        inner = chunk.find(f"<{tag}", at + 1)
        if inner < 0:
            return len(chunk)
    depth = 0
    for found in re.compile(f"<(/?){tag}\\b").finditer(chunk, at):
        depth += -1 if found[1] else 1
        if depth == 0:
            end = chunk.find(">", found.end())
            return end + 1 if end >= 0 else None
    return None


class PageLinks(Treeprocessor):
    """Points links between Markdown files at the pages made from them."""

    def run(self, root: Element) -> None:
        for element in root.iter("a"):
            address = element.get("href", "")
            if ".md" in address:
                element.set("href", _PAGE_LINK.sub(r"\1.html", address, count=1))


class HandbookBlocks(Extension):
    """Both of the above; given to `markdown.Markdown` beside the stock extensions."""

    def extendMarkdown(self, md: Markdown) -> None:  # noqa: N802 - the library's name
        md.preprocessors.register(HtmlBlocks(md), "handbook_html", _BEFORE_HTML)
        md.treeprocessors.register(PageLinks(md), "handbook_links", _AFTER_INLINE)
