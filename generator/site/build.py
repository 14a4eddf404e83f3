"""Builds a staged tree into a site that is browsed from a folder, with no network and no server."""

import json
import os
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

from generator.site.engine import Failed, build_tree

SEARCH_SETTINGS = ("lang", "separator", "pipeline", "fields")


def built(tree: Path, site: Path) -> tuple[str, ...]:
    """Builds the tree that `stage` wrote into `site`; returns what is wrong with it, if anything.

    `site` is emptied first. A page that cannot be built is a problem like any other; what the
    system refuses, such as room on a full disk, is none, and its OSError is raised.
    """
    book = json.loads((tree / "book.json").read_text(encoding="utf-8"))
    pages = book["pages"]
    titles = {page["address"]: page["title"] for page in pages}

    def write_search(settings: Mapping[str, Any]) -> None:
        _write_search_index(site, settings, [page["search"] for page in pages])

    with _built_on(date.fromisoformat(book["as_of"])):
        try:
            return build_tree(tree, site, titles, write_search)
        except Failed as failure:
            cause = failure.__cause__
            if isinstance(cause, OSError) and cause.errno is not None:
                raise cause from None
            return (str(failure),)


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
