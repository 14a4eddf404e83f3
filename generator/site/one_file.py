"""A reader's whole book in one HTML file: for a phone, which opens a file and not a folder.

Pages stand in it one after another, each as text that a browser takes for text alone while scripts
are on: the file's own script shows one page at a time. Where they are off it is read in order.
"""

import hashlib
import json
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import chain
from pathlib import Path
from typing import Any
from urllib.parse import unquote

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from generator.book.model import Book, Page
from generator.compiled import Compiled
from generator.lookup import shipped
from generator.site.bound import ELSEWHERE, name_of_page
from generator.site.gathering import Gathered, Gathering
from generator.site.links import read
from generator.site.navigation import FIRST_PAGE, NAMED_UP_TO, NavigationEntry, titles_in
from generator.site.one_style import style
from generator.site.settings import settings_of, text_only
from generator.site.standing import SEARCH_SETTINGS, search_record

FILE_ENDING = ".html"
# The file's own hears of a new page before the theme's, which look for what stands on it.
_SCRIPTS = (
    "one_file/one-file.js",
    *(
        f"theme/assets/{name}.js"
        for name in ("small-words", "handbook", "today", "can-do", "sheet")
    ),
)
# By its first lines a build knows the file for its own, as it wrote it.
_BEGINS, _ENDS = (
    '<!doctype html>\n<html lang="en">\n<head>\n<meta name="handbook-file" content="',
    '">\n',
)
_MARKED = re.compile(f"{re.escape(_BEGINS)}([0-9a-f]{{64}}){re.escape(_ENDS)}".encode())


def file_beside(folder: Path) -> Path:
    """Return where the one file of the book stands whose pages are in a folder."""
    return folder.with_name(folder.name + FILE_ENDING)


def is_as_written(file: Path) -> bool:
    """Whether a file is one that a build wrote, as it wrote it."""
    content = file.read_bytes()
    marked = _MARKED.match(content)
    if marked is None:
        return False
    return hashlib.sha256(content[marked.end() :]).hexdigest().encode() == marked[1]


def write_one_file(
    file: Path,
    book: Book,
    entries: Sequence[NavigationEntry],
    gathering: Gathering,
    gathered: Sequence[Gathered],
    theme: Iterable[str],
    search_settings: Mapping[str, Any],
) -> tuple[str, ...]:
    """Write a book as one file, of its gathered pages in order; return what is wrong with it.

    `entries` are the navigation of its pages, `theme` the folders in which the theme lies.
    """
    templates = shipped("site_templates")
    environment = Environment(
        loader=FileSystemLoader([templates / "one_file", templates / "theme"]),
        undefined=StrictUndefined,
        bytecode_cache=Compiled("one file"),
        trim_blocks=True,
        lstrip_blocks=True,
    )
    template = environment.get_template("book.html.jinja")
    of_book = settings_of(book)
    head, tail = template.render(
        title=of_book["site_name"],
        entries=entries,
        address=_first_address,
        home=FIRST_PAGE,
        text=text_only,
        named_up_to=NAMED_UP_TO,
        extra=of_book["extra"],
        style=style(theme),
        data=_data(book, entries, gathering.marks, search_settings),
        scripts=[(templates / name).read_text(encoding="utf-8") for name in _SCRIPTS],
    ).split("\x02")
    around = (part.encode("utf-8", errors="xmlcharrefreplace") for part in (head, tail))
    _write_marked(file, chain([next(around)], _wrapped(gathering.texts(gathered)), around))
    return tuple(_problems(file.name, book.pages, gathered, head + tail))


def _wrapped(texts: Iterable[bytes]) -> Iterator[bytes]:
    for text in texts:
        yield from (b"<noscript>", text, b"</noscript>\n")


def _write_marked(file: Path, parts: Iterable[bytes]) -> None:
    """Write a file of these parts, its mark before them."""
    digest = hashlib.sha256()
    with file.open("wb") as written:
        written.write(f"{_BEGINS}{digest.hexdigest()}{_ENDS}".encode())
        for part in parts:
            digest.update(part)
            written.write(part)
        # as long as what stands there
        written.seek(0)
        written.write(f"{_BEGINS}{digest.hexdigest()}{_ENDS}".encode())


def _first_address(entry: NavigationEntry) -> str:
    return name_of_page(entry.address) if entry.address else _first_address(entry.entries[0])


def _data(
    book: Book,
    entries: Sequence[NavigationEntry],
    marks: Mapping[str, str],
    search_settings: Mapping[str, Any],
) -> str:
    """Return what the file's script knows of the book, as JSON that may stand in a script."""
    titles = titles_in(entries)
    pages = [_row(page, text_only(titles[page.address]), marks) for page in book.pages]
    settings = {key: search_settings[key] for key in SEARCH_SETTINGS}
    data = {
        "of": book.title,
        "day": book.as_of.isoformat(),
        "search": settings,
        "pages": pages,
    }
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    return text.replace("<", "\\u003c")


def _row(page: Page, title: str, marks: Mapping[str, str]) -> list[Any]:
    """Return a page as the script reads it; what is usual stands for itself as nothing."""
    record = search_record(page)
    row = [
        name_of_page(page.address),
        marks[page.address],
        title,
        page.group,
        name_of_page(page.listed_on),
        record["text"],
        record.get("words", ""),
        record.get("boost", 1),
    ]
    return row if record["title"] == title else [*row, record["title"]]


def _problems(
    name: str, pages: Sequence[Page], gathered: Sequence[Gathered], frame: str
) -> Iterator[str]:
    """Say what is wrong with a file: ids that stand twice, links that lead out of it or nowhere."""
    around = read(frame)
    yield from (f"{name}: {fault}" for fault in around.faults)
    ids = set(around.ids)
    for page, bound in zip(pages, gathered, strict=True):
        where = f"{name}, {name_of_page(page.address)}"
        yield from (f"{where}: {fault}" for fault in bound.linked.faults)
        if twice := ids & bound.linked.ids:
            yield f"{where}: uses an id of another page: {', '.join(sorted(twice))}."
        ids |= bound.linked.ids
    leading = [
        (name_of_page(page.address), one.linked) for page, one in zip(pages, gathered, strict=True)
    ]
    for where, linked in (*leading, ("around the pages", around)):
        for address in sorted(linked.addresses):
            inside = address.startswith("#") and unquote(address[1:]) in ids
            if not inside and not address.startswith(ELSEWHERE):
                yield f"{name}, {where}: leads to {address}, which is not in the file."
