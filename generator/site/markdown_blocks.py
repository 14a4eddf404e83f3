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
            chunk = part.rstrip("\n")
            opening = _OPENING.match(chunk)
            if opening and not open_elsewhere:
                if _is_whole(chunk, opening[1]):
                    yield self.md.htmlStash.store(chunk + "\n")
                    continue
                open_elsewhere = True
            yield part


def _is_whole(chunk: str, tag: str) -> bool:
    """Whether the element that begins the chunk ends exactly where the chunk ends."""
    closing = f"</{tag}>"
    if not chunk.endswith(closing):
        return False
    # the usual block holds no other of its kind, and need not be walked
    if chunk.count(closing) == 1:
        return len(re.findall(f"<{tag}\\b", chunk)) == 1
    depth = 0
    for found in re.finditer(f"<(/?){tag}\\b", chunk):
        depth += -1 if found[1] else 1
        if depth == 0:
            return found.end() == len(chunk) - 1
    return False


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
