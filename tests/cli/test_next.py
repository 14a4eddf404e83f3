"""The command alone: what there is where somebody is, and what to do next."""

import re
from pathlib import Path

import pytest

from generator import cli
from tests.cli.test_commands import exit_code, print_of, run
from tests.properties import small_property, write_property


@pytest.fixture
def land(tmp_path: Path) -> Path:
    return write_property(tmp_path / "my land", small_property())


def said() -> list[str]:
    result = run()
    assert result.exit_code == 0, result.output
    assert result.stderr == ""
    return result.stdout.splitlines()


def test_in_a_property_folder_it_says_what_was_built_last_and_the_next_commands(
    land: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(land)
    before = print_of(land.parent)
    first = said()
    books = land.parent / "my land-handbook"
    assert first[:2] == ["You are in a property folder.", f'No book lies in "{books}" yet.']
    assert print_of(land.parent) == before
    assert exit_code("build", "--for", "hired", "--as-of", "2026-09-01") == 0
    lines = said()
    assert lines[1:3] == [f'Built last, in "{books}":', "  hired, as of 2026-09-01"]
    assert lines[3:] == first[2:]
    named = re.findall(r"^  handbook (\w+)", "\n".join(lines), re.MULTILINE)
    assert named == ["check", "build", "serve", "record", "pack"]
    assert set(named) <= set(cli.main.commands)
    assert lines[-1] == "All commands: handbook --help"


def test_beside_property_folders_it_leads_into_one(
    land: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(land.parent)
    assert said() == [
        "The folder you are in is no property folder: no property.yaml lies in it. "
        'Did you mean "my land"?',
        'Next: cd "my land", then handbook',
        "All commands: handbook --help",
    ]


def test_elsewhere_it_says_how_one_is_begun(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    lines = said()
    assert lines[1] == "Next, where you have none yet:"
    assert [line.split()[:3] for line in lines[2:4]] == [
        ["handbook", "new", "my-land"],
        ["handbook", "build", "my-land"],
    ]
    assert list(tmp_path.iterdir()) == []


def test_in_a_built_book_it_names_the_folder_it_was_made_from(
    land: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert exit_code("build", land, "--for", "hired", "--as-of", "2026-09-01") == 0
    monkeypatch.chdir(land.parent / "my land-handbook" / "hired")
    lines = said()
    assert "is a built handbook" in lines[0]
    assert lines[0].endswith(f'Did you mean "{Path("..", "..", "my land")}"?')
    assert lines[1:] == ["All commands: handbook --help"]
