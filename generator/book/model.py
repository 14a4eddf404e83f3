"""What a finished book is made of: pages as Markdown, search records, files beside them."""

from collections.abc import Mapping
from dataclasses import field
from datetime import date

from generator.dataclass import dataclass


@dataclass(frozen=True, slots=True)
class SearchRecord:
    """What the search box knows of one page; every text is already safe as HTML.

    `words` are what somebody types who does not know what the page is called; they find it before
    the titles of others do. `boost` raises or lowers a page among the hits.
    """

    title: str
    text: str
    tags: tuple[str, ...] = ()
    words: str = ""
    boost: float = 1


@dataclass(frozen=True, slots=True)
class Page:
    """One page of the book.

    `address` is the Markdown file's path inside the book with forward slashes ("work/one.md").
    `title` and `markdown` are already safe: text from the inventory stands in them as entities.
    `group` is the head of the menu that it stands under; "" is the top. `listed_on` is the address
    of the page that lists it among others of its kind, its own for that page itself; "" is none.
    `safety_keys` name the safety lines that must still be on the finished page. `ships` says that
    nothing of a property stands on it, so that its HTML may be kept for other builds.
    """

    address: str
    title: str
    group: str
    markdown: str
    search: SearchRecord
    safety_keys: tuple[str, ...] = ()
    listed_on: str = ""
    ships: bool = False


@dataclass(frozen=True, slots=True)
class Book:
    """All pages for one reader, in navigation order, and files that stand beside them.

    From the day behind `old_after` on every page says that it is old; None is never.
    """

    title: str
    reader: str
    as_of: date
    pages: tuple[Page, ...]
    files: Mapping[str, bytes] = field(default_factory=dict)
    old_after: date | None = None


@dataclass(frozen=True, slots=True)
class LeftFolder:
    """A folder of pages that an earlier build made for a reader who is gone since.

    `as_of` is the day its book was made for; None where its mark does not hold one.
    """

    name: str
    as_of: date | None
