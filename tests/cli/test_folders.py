"""The folder behind a command: left out inside one, and told apart from what is none."""

import re
import shutil
from pathlib import Path

import click
import pytest
from click.testing import CliRunner

from generator import cli
from generator.site.mark import SITE_MARK
from tests.book.sites import CHECKOUT, DEMO
from tests.cli.test_commands import COMMANDS, exit_code, print_of, run
from tests.properties import small_property, write_property

MARK = "Made by the handbook program.\nAs of 2026-08-20\nOf Creek place\nEach file:\n"
FOLDER_COMMANDS = [["check"], ["build"], ["explain"], ["record", "--on", "2026-10-12"]]


@pytest.fixture
def land(tmp_path: Path) -> Path:
    return write_property(tmp_path / "my land", small_property())


def _error(*words: str | Path) -> str:
    result = run(*words)
    assert result.exit_code == 2, result.output
    return " ".join(result.stderr.partition("Error: ")[2].split())


def test_inside_a_property_folder_its_name_is_left_out(
    land: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(land)
    assert run("check").output == "No faults.\n"
    names = run("explain").stdout.split()
    assert names == run("explain", land).stdout.split()
    alone, named = run("explain", names[0]), run("explain", land, names[0])
    assert (alone.exit_code, alone.output) == (0, named.output)
    assert exit_code("record", "--on", "2026-08-12", "--note", "walked it") == 0
    assert exit_code("build", "--for", "hired") == 0
    assert (land.parent / "my land-handbook" / "hired" / "index.html").is_file()
    assert {path.name for path in land.iterdir()} >= {"log", "property.yaml"}


def test_a_number_that_is_not_there_is_told_as_one(
    land: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(land)
    assert _error("explain", "lane/2027/none").startswith("There is no number lane/2027/none.")
    monkeypatch.chdir(land.parent)
    assert _error("explain", "lane/2027/none") == (
        "There is no folder lane/2027/none. Nothing was read."
    )


@pytest.mark.parametrize("words", FOLDER_COMMANDS, ids=" ".join)
def test_elsewhere_it_is_asked_for_and_one_that_lies_there_is_named(
    land: Path, monkeypatch: pytest.MonkeyPatch, words: list[str]
) -> None:
    monkeypatch.chdir(land.parent)
    before = print_of(land.parent)
    assert _error(*words) == (
        "The folder you are in is no property folder: no property.yaml lies in it. "
        'Did you mean "my land"? Nothing was read.'
    )
    assert print_of(land.parent) == before


def test_a_folder_of_something_else_is_no_folder_with_a_fault(land: Path) -> None:
    (land.parent / "photos").mkdir()
    (land.parent / "photos" / "mkdocs.yml").write_text("site_name: A\n")
    assert _error("check", land.parent / "photos") == (
        f"{land.parent}/photos is no property folder: no property.yaml lies in it. "
        "Nothing was read."
    )
    (land / "property.yaml").unlink()
    result = run("check", land)
    assert result.exit_code == 1
    assert "property.yaml:1:1 F215" in result.stderr


@pytest.mark.parametrize("inside", ["owner", "owner/work"])
def test_a_built_handbook_is_recognized_with_its_land_and_the_folder_it_was_built_from(
    land: Path, monkeypatch: pytest.MonkeyPatch, inside: str
) -> None:
    book = land.parent / "my land-handbook" / "owner"
    (book / "work").mkdir(parents=True)
    (book / SITE_MARK).write_text(MARK)
    monkeypatch.chdir(land.parent)
    typed = Path("my land-handbook", inside)
    assert _error("build", typed) == (
        f'"{typed}" is a built handbook of Creek place, as of 2026-08-20: name its property '
        'folder. Did you mean "my land"? Nothing was read.'
    )
    shutil.rmtree(land)
    assert "Did you mean" not in _error("build", typed)


@pytest.mark.parametrize(
    ("readers", "told"),
    [
        (["owner"], "owner of Creek place, as of 2026-08-20"),
        (
            ["driller", "hired", "owner"],
            "driller, hired and owner of Creek place, as of 2026-08-20",
        ),
        (["driller", "hired"], "driller and hired"),
    ],
)
def test_a_folder_of_books_is_called_one_and_not_by_the_first_of_them(
    land: Path, monkeypatch: pytest.MonkeyPatch, readers: list[str], told: str
) -> None:
    for out in ("my land-handbook", "out"):
        for name in readers:
            (land.parent / out / name).mkdir(parents=True)
            mark = MARK if name == "owner" else MARK.replace("Creek place", "Work handed over")
            (land.parent / out / name / SITE_MARK).write_text(mark)
    monkeypatch.chdir(land.parent)
    said = f"is a folder of built books, for {told}: name their property folder."
    assert _error("check", "my land-handbook") == (
        f'"my land-handbook" {said} Did you mean "my land"? Nothing was read.'
    )
    assert _error("build", "out") == f"out {said} Nothing was read."


def test_a_file_and_a_folder_that_is_not_there_are_told_apart(land: Path) -> None:
    shown = f'"{land}/screens.yaml"'
    for command in ("check", "explain"):
        assert _error(command, land / "screens.yaml") == (
            f"{shown} is a file: name the property folder it lies in. Nothing was read."
        )
    assert _error("check", land.parent / "my lnad") == (
        f'There is no folder "{land.parent}/my lnad". Did you mean "{land}"? Nothing was read.'
    )
    long = run("check", "x" * 300)
    assert long.exit_code == 1
    told = f"Error: {'x' * 300} cannot be read: File name too long. Nothing was read.\n"
    assert long.stderr == told


def test_what_was_not_done_is_said_by_each_command(land: Path) -> None:
    (land / "stands.yaml").write_text("stands:\n  - {name: Oak}\n", encoding="utf-8")
    undone = {
        "check": "1 fault.",
        "check --strict": "1 fault. Nothing was planned.",
        "explain": "1 fault. Nothing was worked out.",
        "build": "1 fault. Nothing was built.",
        "record --on 2026-08-12 --note x": "1 fault. Nothing was written.",
    }
    for words, said in undone.items():
        command, *more = words.split()
        result = run(command, land, *more)
        assert (result.exit_code, result.stderr.splitlines()[-1]) == (1, f"Error: {said}")


@pytest.mark.parametrize(
    "words", [[], ["--by", "me"], ["--recorded-on", "2026-10-13"], ["--yes"]], ids=" ".join
)
def test_with_nothing_to_record_record_is_used_wrongly(land: Path, words: list[str]) -> None:
    before = print_of(land)
    assert _error("record", land, "--on", "2026-10-12", *words) == (
        "there is nothing to record: say what was done, by --job, --seen, --used, --bought or "
        "--set, or give a --note"
    )
    assert print_of(land) == before


def test_no_sentence_of_help_is_cut() -> None:
    assert "..." not in run("--help").output.replace("[ARGS]...", "")
    for name in COMMANDS:
        said = run(name, "--help").output
        assert "..." not in said


README = (CHECKOUT / "README.md").read_text(encoding="utf-8")


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_the_line_that_turns_completion_on_is_the_one_the_shell_takes(shell: str) -> None:
    assert f"_HANDBOOK_COMPLETE={shell}_source handbook" in README
    done = CliRunner().invoke(
        cli.main, [], prog_name="handbook", env={"_HANDBOOK_COMPLETE": f"{shell}_source"}
    )
    assert done.exit_code == 0
    assert f"_HANDBOOK_COMPLETE={shell}_complete" in done.output


@pytest.mark.parametrize(
    ("words", "offered"),
    [
        ("handbook bu", "plain,build"),
        ("handbook check de", "dir,de"),
        ("handbook explain de", "dir,de"),
        ("handbook build --for", "plain,--for"),
        ("handbook record . --answer y", "plain,yes"),
    ],
)
def test_completion_offers_commands_folders_options_and_answers(words: str, offered: str) -> None:
    env = {
        "_HANDBOOK_COMPLETE": "bash_complete",
        "COMP_WORDS": words,
        "COMP_CWORD": str(len(words.split()) - 1),
    }
    done = CliRunner().invoke(cli.main, [], prog_name="handbook", env=env)
    assert done.output.splitlines() == [offered]


def test_the_readme_says_where_the_folder_may_be_left_out() -> None:
    rows = dict(re.findall(r"^\| `handbook (\w+) ?([^`]*)`", README, re.MULTILINE))
    left_out = {
        name
        for name, command in cli.main.commands.items()
        if any(isinstance(one, click.Argument) and not one.required for one in command.params)
    }
    # files and folder of an import are one list of words, whose last may be the folder
    assert {name for name, words in rows.items() if "[FOLDER]" in words} == left_out | {"import"}
    assert rows["new"] == "FOLDER"
    assert DEMO.name in README
