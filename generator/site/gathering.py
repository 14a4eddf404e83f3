"""Gathers the pages of the one file while they are put, in whichever process."""

import os
import re
from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from pathlib import Path
from typing import BinaryIO

from generator.book.model import Book, Page
from generator.dataclass import dataclass
from generator.site.bodies import Body
from generator.site.bound import DRAWN, Drawing, binder, elsewhere, page_marks
from generator.site.links import Linked


@dataclass(frozen=True, slots=True)
class Gathered:
    """Where a page for the one file lies: in which file, from where, how long; its drawings."""

    file: str
    start: int
    length: int
    linked: Linked
    drawings: Mapping[str, Drawing]


class Gathering:
    """The pages of a book as they are bound into one file, in a folder of their own."""

    def __init__(self, folder: Path, book: Book) -> None:
        folder.mkdir()
        self.folder = folder
        self.marks = page_marks(page.address for page in book.pages)
        self.make = binder(self.marks, book.files)
        # a file for each process: none waits for the other, and no text goes between them
        self.files: dict[int, BinaryIO] = {}

    def keep(self, page: Page, body: Body) -> Gathered:
        """Write a page behind those that this process wrote before."""
        bound = self.make(page, body)
        text = bound.html.encode("utf-8", errors="xmlcharrefreplace")
        name = str(os.getpid())
        if os.getpid() not in self.files:
            self.files[os.getpid()] = (self.folder / name).open("wb")
        file = self.files[os.getpid()]
        start = file.tell()
        file.write(text)
        # a second process ends without closing what it has open
        file.flush()
        return Gathered(name, start, len(text), bound.linked, bound.drawings)

    def close(self) -> None:
        """Close what this process has written to."""
        for file in self.files.values():
            file.close()

    def texts(self, gathered: Sequence[Gathered]) -> Iterator[bytes]:
        """Yield the pages as they stand in the file: a drawing on the first page that shows it."""
        kept = {name: (self.folder / name).read_bytes() for name in {one.file for one in gathered}}
        shown: set[str] = set()

        def drawn(drawings: Mapping[str, Drawing], found: re.Match[str]) -> str:
            digest = found[1]
            if digest in shown:
                return elsewhere(digest, drawings[digest].words)
            shown.add(digest)
            return drawings[digest].html

        for one in gathered:
            text = kept[one.file][one.start : one.start + one.length]
            if one.drawings:
                text = DRAWN.sub(partial(drawn, one.drawings), text.decode()).encode()
            yield text
