"""A disk that takes no more: one sentence, and the site that was there stands."""

from dataclasses import replace
from pathlib import Path

import pytest

from generator.book.model import Book
from generator.site import exchange
from generator.site.publish import NotWritten, publish
from tests.full_disk import contents, files_up_to
from tests.site.books import tiny_book


def _book(words: str, pages: int = 2) -> Book:
    book = tiny_book(words)
    return replace(book, pages=book.pages[:pages])


# Below the sizes of the workshop's mark, of a page and of a script of the theme.
@pytest.mark.parametrize("size", [0, 5_000, 50_000])
def test_the_site_of_before_stands_and_nothing_is_left(tmp_path: Path, size: int) -> None:
    target = tmp_path / "site"
    assert publish(_book("one"), target) == ()
    before = contents(tmp_path)
    with files_up_to(size), pytest.raises(NotWritten) as told:
        publish(_book("other"), target)
    assert str(told.value) == f"{target} cannot be written: File too large."
    assert contents(tmp_path) == before


def test_a_site_that_cannot_be_put_in_place_leaves_the_old_one_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(exchange, "exchange_at_once", lambda _one, _other: False)
    for name in ("site", "target"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "file").write_text(name)
    (tmp_path / "site").rename(tmp_path / "elsewhere")
    with pytest.raises(FileNotFoundError):
        exchange.exchange(tmp_path / "site", tmp_path / "target", tmp_path / "old")
    assert (tmp_path / "target" / "file").read_text() == "target"
    assert not (tmp_path / "old").exists()


@pytest.mark.parametrize("where", ["x" * 300, "round/site", "file/site", "x/" * 3000])
def test_a_place_that_no_system_takes_is_told_in_one_sentence(tmp_path: Path, where: str) -> None:
    ground = tmp_path / "ground"
    ground.mkdir()
    (tmp_path / "round").symlink_to("round")
    (tmp_path / "file").write_text("mine")
    with pytest.raises(NotWritten, match=r"cannot be written: [A-Za-z ]+\.$"):
        publish(_book("one"), tmp_path / where, property_folder=ground)
    assert {path.name for path in tmp_path.iterdir()} <= {"ground", "round", "file", "x"}
