"""Folders of readers who are gone are named with the day of their book, and left as they are."""

import datetime
import os
from dataclasses import replace
from pathlib import Path

import pytest

from generator.book.model import LeftFolder
from generator.site.left import left_folders
from generator.site.mark import SITE_MARK, Mark, mark_of
from generator.site.publish import publish
from tests.site.books import book_of

BEFORE, AFTER = datetime.date(2026, 8, 20), datetime.date(2027, 3, 1)


def built(books: Path, name: str, day: datetime.date) -> None:
    assert publish(replace(book_of(1), as_of=day), books / name) == ()


def test_a_site_says_the_land_and_the_day_it_was_made_for(tmp_path: Path) -> None:
    built(tmp_path, "hired", BEFORE)
    assert mark_of(tmp_path / "hired") == Mark("Lane & Creek", BEFORE)
    built(tmp_path, "hired", AFTER)
    assert mark_of(tmp_path / "hired") == Mark("Lane & Creek", AFTER)


def test_folders_of_readers_who_are_gone_are_named_in_order_and_no_other(tmp_path: Path) -> None:
    for name, day in (("owner", AFTER), ("hired", AFTER), ("zoe", BEFORE), ("ann", AFTER)):
        built(tmp_path, name, day)
    (tmp_path / "photos").mkdir()
    (tmp_path / "letter.txt").write_text("mine")
    names = sorted(path.relative_to(tmp_path).as_posix() for path in tmp_path.rglob("*"))
    assert left_folders(tmp_path, ["owner", "hired"]) == (
        LeftFolder("ann", AFTER),
        LeftFolder("zoe", BEFORE),
    )
    assert sorted(path.relative_to(tmp_path).as_posix() for path in tmp_path.rglob("*")) == names


@pytest.mark.parametrize(
    "mark",
    [
        b"Made by the handbook program, which replaces this folder as a whole.\n",
        b"As of soon\n",
        b"\xff\xfe\x00",
        b"x" * 100_000 + b"\nAs of 2026-08-20\n",
        b"",
    ],
)
def test_a_mark_without_a_day_is_named_without_one(tmp_path: Path, mark: bytes) -> None:
    (tmp_path / "old").mkdir()
    (tmp_path / "old" / SITE_MARK).write_bytes(mark)
    assert left_folders(tmp_path, ["owner"]) == (LeftFolder("old", None),)


def test_a_pipe_in_place_of_a_mark_is_never_opened(tmp_path: Path) -> None:
    (tmp_path / "old").mkdir()
    os.mkfifo(tmp_path / "old" / SITE_MARK)
    assert left_folders(tmp_path, ["owner"]) == ()


def test_where_nothing_was_built_yet_nothing_is_left(tmp_path: Path) -> None:
    assert left_folders(tmp_path / "not-there", ["owner"]) == ()
    (tmp_path / "file").write_text("mine")
    assert left_folders(tmp_path / "file", ["owner"]) == ()


def test_a_folder_that_may_not_be_looked_into_is_not_ours(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "photos").mkdir()
    (tmp_path / "old").mkdir()
    (tmp_path / "old" / SITE_MARK).write_text("")

    def closed(path: Path) -> bool:
        if path.parent.name == "photos":
            raise PermissionError(13, "Permission denied", str(path))
        return path.exists()

    monkeypatch.setattr(Path, "is_file", closed)
    assert left_folders(tmp_path, ["owner"]) == (LeftFolder("old", None),)
