"""Builds a book into a site that is browsed from a folder, with no network and no server."""

import json
import os
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from datetime import UTC, date, datetime
from functools import partial
from pathlib import Path
from typing import Any

import yaml

from generator.book.model import Book, Page
from generator.in_two import in_two
from generator.lookup import shipped
from generator.site.addresses import check_addresses
from generator.site.bodies import body_maker
from generator.site.engine import Failed, build_site, prepared
from generator.site.links import check_links, read, read_file
from generator.site.mark import mark_site
from generator.site.navigation import navigation, navigation_data
from generator.site.settings import settings_of, text_only

SEARCH_SETTINGS = ("lang", "separator", "pipeline", "fields")


def built(book: Book, workshop: Path, site: Path) -> tuple[str, ...]:
    """Build a book into `site` and mark it as ours; return what is wrong with it, if anything.

    `workshop` is an empty folder for what the build needs besides. A page that cannot be built is
    a problem like any other; what the system refuses, such as room on a full disk, is none, and
    its OSError is raised.
    """
    check_addresses(book)
    with _built_on(book.as_of):
        try:
            return _built(book, workshop, site)
        except Failed as failure:
            cause = failure.__cause__
            if isinstance(cause, OSError) and cause.errno is not None:
                raise cause from None
            return (str(failure),)


def _built(book: Book, workshop: Path, site: Path) -> tuple[str, ...]:
    (workshop / "docs").mkdir(parents=True)
    settings = settings_of(book)
    settings["theme"]["custom_dir"] = str(shipped("site_templates") / "theme")
    (workshop / "mkdocs.yml").write_text(yaml.safe_dump(settings), encoding="utf-8")
    ready = prepared(workshop / "mkdocs.yml", navigation_data(navigation(book.pages)), site)
    make = body_maker(ready.converter)
    bodies = in_two([partial(make, page) for page in book.pages])

    def write_search(settings: Mapping[str, Any]) -> None:
        _write_search_index(site, settings, [search_record(page) for page in book.pages])

    pages = [(text_only(page.title), body) for page, body in zip(book.pages, bodies, strict=True)]
    finished = build_site(ready.config, pages, book.files, write_search)
    if finished.messages:
        return finished.messages
    names = sorted(path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file())
    reads = {_published(body.address): body.linked for body in bodies}
    for name in names:
        if name.endswith((".svg", ".css")):
            reads[name] = read_file(name, (site / name).read_text(encoding="utf-8"))
    frames = {name: read(html) for name, html in finished.frames.items()}
    problems = check_links(names, reads, frames)
    # after all else is written: the mark lists every file as it is
    mark_site(site, book, names, finished.digests)
    return problems


def _published(address: str) -> str:
    return address.removesuffix(".md") + ".html"


def search_record(page: Page) -> dict[str, Any]:
    """Return what the search index holds of a page."""
    # Tags of the index outweigh every title: as words of the text they find, and titles come first.
    record: dict[str, Any] = {
        "location": _published(page.address),
        "title": page.search.title,
        "text": " ".join(filter(None, (page.search.text, *page.search.tags))),
    }
    if page.search.boost != 1:
        record["boost"] = page.search.boost
    return record


def _write_search_index(
    site: Path, settings: Mapping[str, Any], records: list[Mapping[str, Any]]
) -> None:
    """Writes the index twice: a script for pages opened as files, plain data for a server."""
    index = {"config": {key: settings[key] for key in SEARCH_SETTINGS}, "docs": records}
    data = json.dumps(index, ensure_ascii=False, separators=(",", ":"))
    folder = site / "search"
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "search_index.json").write_text(data, encoding="utf-8")
    (folder / "search_index.js").write_text(f"var __index = {data}", encoding="utf-8")


@contextmanager
def _built_on(day: date) -> Iterator[None]:
    """Makes MkDocs take `day` for today: the program reads no clock."""
    name = "SOURCE_DATE_EPOCH"
    before = os.environ.get(name)
    os.environ[name] = str(int(datetime(day.year, day.month, day.day, tzinfo=UTC).timestamp()))
    try:
        yield
    finally:
        if before is None:
            del os.environ[name]
        else:
            os.environ[name] = before
