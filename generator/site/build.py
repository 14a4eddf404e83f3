"""Builds a book into a site that is browsed from a folder, with no network and no server."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, date, datetime
from functools import partial
from pathlib import Path

from generator.book.model import Book
from generator.in_two import in_two
from generator.lookup import shipped
from generator.site.addresses import check_addresses
from generator.site.bodies import body_maker
from generator.site.engine import Failed, Framing, build_site, prepared
from generator.site.gathering import Gathering
from generator.site.navigation import navigation, navigation_data, titles_in
from generator.site.one_file import write_one_file
from generator.site.put import Put, put_page
from generator.site.settings import settings_of, text_only
from generator.site.standing import Standing


def built(book: Book, workshop: Path, site: Path, one_file: Path | None = None) -> tuple[str, ...]:
    """Build a book into `site` and mark it as ours; return what is wrong with it, if anything.

    `one_file` is where the same pages go as one file. `workshop` is an empty folder for what the
    build needs besides. A page that cannot be built is
    a problem like any other; what the system refuses, such as room on a full disk, is none, and
    its OSError is raised.
    """
    return _tried(book, workshop, site, one_file)[0]


def build(book: Book, workshop: Path, site: Path) -> tuple[tuple[str, ...], Standing | None]:
    """Build as `built` does, and return what is kept of the site too, where MkDocs made one."""
    problems, standing = _tried(book, workshop, site, None)
    if standing is not None:
        standing.note(book)
    return problems, standing


def _tried(
    book: Book, workshop: Path, site: Path, one_file: Path | None
) -> tuple[tuple[str, ...], Standing | None]:
    check_addresses(book)
    with _built_on(book.as_of):
        try:
            return _build(book, workshop, site, one_file)
        except Failed as failure:
            cause = failure.__cause__
            if isinstance(cause, OSError) and cause.errno is not None:
                raise cause from None
            return (str(failure),), None


def _build(
    book: Book, workshop: Path, site: Path, one_file: Path | None
) -> tuple[tuple[str, ...], Standing | None]:
    (workshop / "docs").mkdir(parents=True)
    settings = settings_of(book)
    settings["theme"]["custom_dir"] = str(shipped("site_templates") / "theme")
    entries = navigation(book.pages)
    ready = prepared(workshop, settings, navigation_data(entries), site)
    make = body_maker(ready.converter, ready.converter_settings)
    gathering = Gathering(workshop / "bound", book) if one_file is not None else None
    keep = gathering.keep if gathering is not None else None
    put: list[Put] = []

    def write(framing: Framing) -> None:
        # no text of a page goes from one process to the other
        tasks = [partial(put_page, make, framing, site, page, keep) for page in book.pages]
        try:
            put.extend(in_two(tasks))
        finally:
            if gathering is not None:
                gathering.close()

    titles = {address: text_only(title) for address, title in titles_in(entries).items()}
    finished = build_site(ready.config, titles, book.files, write)
    if finished.messages:
        return finished.messages, None
    standing = Standing(make, finished.framing, finished.search_settings, put)
    problems = standing.complete(site, book)
    # what is wrong with the folder is told once
    if one_file is not None and gathering is not None and not problems:
        bound = [one.bound for one in put if one.bound is not None]
        theme, settings_of_search = ready.config.theme.dirs, finished.search_settings
        problems = write_one_file(
            one_file, book, entries, gathering, bound, theme, settings_of_search
        )
    return problems, standing


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
