"""What is kept between runs: never stale, never half, never needed, and not without bound."""

import os
import sys
from pathlib import Path
from typing import Any

import pytest

from generator import kept
from generator.kept import Store, name_of


@pytest.fixture(autouse=True)
def python_keeps_what_it_compiles(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "dont_write_bytecode", False)


def made(store: Store, text: str, kind: str = "test 1") -> tuple[Any, list[str]]:
    """What comes of a text, and the texts it was made from anew."""
    asked: list[str] = []

    def make(source: str) -> Any:
        asked.append(source)
        return {"made of": source}

    return store.made_of(kind, text, make), asked


def test_it_is_made_once(tmp_path: Path) -> None:
    assert made(Store(tmp_path / "a" / "b"), "x") == ({"made of": "x"}, ["x"])
    assert made(Store(tmp_path / "a" / "b"), "x") == ({"made of": "x"}, [])


@pytest.mark.parametrize(("text", "kind"), [("y", "test 1"), ("x", "test 2")])
def test_another_text_or_another_maker_is_something_else(
    tmp_path: Path, text: str, kind: str
) -> None:
    made(Store(tmp_path), "x")
    assert made(Store(tmp_path), text, kind) == ({"made of": text}, [text])


def test_another_python_makes_it_anew(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    made(Store(tmp_path), "x")
    monkeypatch.setattr(sys, "version", "4.0")
    assert made(Store(tmp_path), "x") == ({"made of": "x"}, ["x"])


@pytest.mark.parametrize("damage", ["cut", "turned", "foreign", "empty", "folder"])
def test_what_is_damaged_is_made_anew(tmp_path: Path, damage: str) -> None:
    made(Store(tmp_path), "x")
    (file,) = tmp_path.iterdir()
    whole = file.read_bytes()
    if damage == "folder":
        file.unlink()
        file.mkdir()
    else:
        damaged = {"cut": whole[:-1], "foreign": b"<html>" * 20, "empty": b""}
        damaged["turned"] = whole[:-3] + bytes([whole[-3] ^ 1]) + whole[-2:]
        file.write_bytes(damaged[damage])
    assert made(Store(tmp_path), "x") == ({"made of": "x"}, ["x"])
    if damage != "folder":
        assert file.read_bytes() == whole


def test_where_nothing_can_be_kept_it_is_still_made(tmp_path: Path) -> None:
    blocked = tmp_path / "kept"
    blocked.write_text("a file where the folder should be")
    assert made(Store(blocked), "x") == ({"made of": "x"}, ["x"])
    assert blocked.is_file()


def test_nothing_is_kept_where_python_keeps_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "dont_write_bytecode", True)
    made(Store(tmp_path), "x")
    assert list(tmp_path.iterdir()) == []


def test_a_run_can_do_without(tmp_path: Path) -> None:
    made(Store(tmp_path), "x")
    without = Store(tmp_path)
    without.is_used = False
    assert made(without, "x") == ({"made of": "x"}, ["x"])
    assert made(without, "y") == ({"made of": "y"}, ["y"])
    assert len(list(tmp_path.iterdir())) == 1


def test_the_oldest_go_when_there_are_too_many(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(kept, "MOST_FILES", 10)
    for number in range(10):
        made(Store(tmp_path), str(number))
        os.utime(tmp_path / name_of("test 1", str(number)), (number, number))
    made(Store(tmp_path), "ten")
    assert len(list(tmp_path.iterdir())) <= 10
    assert made(Store(tmp_path), "9")[1] == []
    assert made(Store(tmp_path), "0")[1] == ["0"]
