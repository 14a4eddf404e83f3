"""A site as it stands after a build: its pages can be put anew one by one, its rest after them."""

import hashlib
import json
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path
from typing import Any

from generator.book.model import Book, Page
from generator.site.bodies import Body
from generator.site.frames import Framed
from generator.site.hosted import hosted_files
from generator.site.links import Linked, check_links, read_file
from generator.site.mark import digest_of, mark_site
from generator.site.put import Put, published, put_page

SEARCH_SETTINGS = ("lang", "separator", "pipeline", "fields")
READ_TOO = (".svg", ".css")


def search_record(page: Page) -> dict[str, Any]:
    """Return what the search index holds of a page."""
    # Tags of the index outweigh all else: as words of the text they find, and titles come first.
    record: dict[str, Any] = {
        "location": published(page.address),
        "title": page.search.title,
        "text": " ".join(filter(None, (page.search.text, *page.search.tags))),
    }
    if page.search.words:
        record["words"] = page.search.words
    if page.search.boost != 1:
        record["boost"] = page.search.boost
    return record


def search_index(settings: Mapping[str, Any], book: Book) -> dict[str, str]:
    """Return the index twice: a script for pages opened as files, plain data for a server."""
    records = [search_record(page) for page in book.pages]
    index = {"config": {key: settings[key] for key in SEARCH_SETTINGS}, "docs": records}
    data = json.dumps(index, ensure_ascii=False, separators=(",", ":"))
    return {"search/search_index.json": data, "search/search_index.js": f"var __index = {data}"}


class Standing:
    """What a build leaves in memory of a site that it made without a problem.

    Of a page it keeps what it was made from as a digest, and where its links lead, not its text.
    """

    def __init__(
        self,
        make: Callable[[Page], Body],
        framing: Callable[[Body], Framed],
        search_settings: Mapping[str, Any],
        put: Iterable[Put],
    ) -> None:
        self.make, self.framing, self.search_settings = make, framing, search_settings
        self.made_from: dict[str, bytes] = {}
        self.digests: dict[str, str] = {}
        self.linked: dict[str, Linked] = {}
        self.kinds: dict[object, tuple[str, Linked]] = {}
        for one in put:
            self._take(one)

    def note(self, book: Book) -> None:
        """Note what the pages were made from, as `put` asks for it."""
        self.shape = shape_of(book)
        self.pages = {page.address: (page.title, page.group) for page in book.pages}
        self.made_from = {page.address: _digest(page.markdown) for page in book.pages}

    def _take(self, put: Put) -> None:
        self.digests[put.name] = put.digest
        self.linked[put.name] = put.linked
        if put.frame is not None:
            # two processes may each have met a first of one kind
            self.kinds.setdefault(put.kind, (put.name, put.frame))

    def put(self, site: Path, page: Page) -> bool:
        """Write a page anew where it differs from the one that stands; return whether it does."""
        made_from = _digest(page.markdown)
        if self.made_from[page.address] == made_from:
            return False
        self._take(put_page(self.make, self.framing, site, page))
        self.made_from[page.address] = made_from
        return True

    def complete(self, site: Path, book: Book) -> tuple[str, ...]:
        """Write all else of a book whose pages are put, and return what is wrong with the site."""
        texts = search_index(self.search_settings, book)
        contents = {**book.files, **{name: text.encode() for name, text in texts.items()}}
        for name, content in contents.items():
            if self.digests.get(name) != (digest := hashlib.sha256(content).hexdigest()):
                (site / name).parent.mkdir(parents=True, exist_ok=True)
                (site / name).write_bytes(content)
                self.digests[name] = digest
        names = sorted(
            path.relative_to(site).as_posix()
            for path in site.rglob("*")
            if path.is_file() and not path.name.startswith(".")
        )
        drawn = {
            name: read_file(name, (site / name).read_text(encoding="utf-8"))
            for name in names
            if name.endswith(READ_TOO)
        }
        problems = check_links(names, {**self.linked, **drawn}, dict(self.kinds.values()))
        # after all else is written: both list every file as it is
        digests = {name: self.digests.get(name) or digest_of(site / name) for name in names}
        for name, content in hosted_files(book, digests).items():
            (site / name).write_bytes(content)
            digests[name] = hashlib.sha256(content).hexdigest()
        mark_site(site, book, digests)
        return problems


def shape_of(book: Book) -> object:
    """Return what every page of a book shows of the others: a change of it changes all of them."""
    pages = tuple((page.address, page.title, page.group) for page in book.pages)
    return pages, book.title, book.reader, book.as_of, book.old_after, tuple(sorted(book.files))


def _digest(text: str) -> bytes:
    return hashlib.sha256(text.encode()).digest()
