"""The commands as they are typed: what they say, what they end with, what they leave alone."""

import hashlib
import html
import re
import shutil
import subprocess
import sys
from pathlib import Path
from types import SimpleNamespace

import click
import pytest
from click.testing import CliRunner, Result

from generator import cli
from tests.book.sites import CHECKOUT, DEMO

HEAVY = {"pandas", "xlsxwriter", "pyproj", "mkdocs", "markdown", "jinja2"}
COMMANDS = sorted(cli.main.commands)
FOLDER_COMMANDS = [
    ["check"],
    ["check", "--strict"],
    ["build", "--for", "owner"],
    ["build", "--season", "2028", "--as-of", "2027-09-01", "--for", "contractor"],
    ["explain"],
    ["explain", "buy/2027/all/cost_usd"],
]
NOTHING_RECORDED = "format: 1\nname: Bare ground\nseason: 2027\n"
# The readers of the demonstration beside its owner.
OTHER_READERS = {"hired-sprayer", "hired-driller", "hunting-partner"}


def run(*words: str | Path) -> Result:
    return CliRunner().invoke(cli.main, [str(word) for word in words])


def exit_code(*words: str | Path) -> int:
    """How a run ended; raises what escaped from the command without a sentence of its own."""
    result = run(*words)
    if result.exception is not None and not isinstance(result.exception, SystemExit):
        raise result.exception
    return result.exit_code


def print_of(folder: Path) -> dict[str, str]:
    """Every name below a folder, with the hash of the bytes where it is a file."""
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        if path.is_file()
        else "folder"
        for path in sorted(folder.rglob("*"))
    }


def stamp_of(index: Path) -> str:
    (stamp,) = re.findall(r'<p class="stamp">(.*?)</p>', index.read_text(encoding="utf-8"))
    return re.sub(r"<[^>]*>", "", stamp)


@pytest.fixture
def demo(tmp_path: Path) -> Path:
    """A copy of the demo property, with room beside it."""
    return shutil.copytree(DEMO, tmp_path / "my land")


@pytest.fixture
def bare(tmp_path: Path) -> Path:
    """A property folder in which no day is written down."""
    folder = tmp_path / "bare"
    folder.mkdir()
    (folder / "property.yaml").write_text(NOTHING_RECORDED, encoding="utf-8")
    return folder


@pytest.mark.parametrize("name", COMMANDS)
def test_help_is_in_plain_words(name: str) -> None:
    command = cli.main.commands[name]
    result = run(name, "--help")
    assert result.exit_code == 0
    said = result.output
    assert re.search(r"^  [A-Z][a-z][^:]*\.\n\n", said, re.MULTILINE), (
        "a sentence says what it does"
    )
    for option in (one for one in command.params if isinstance(one, click.Option)):
        assert option.help, option.name
        assert option.help[0].isupper(), option.help
        assert option.help.endswith("."), option.help
        assert option.opts[0] in said
    assert not re.search(r"%[A-Za-z]|INTEGER|TEXT|<=|DIRECTORY|None|\[default", said), said
    assert max(map(len, said.splitlines())) <= 80


def test_the_programs_help_names_every_command_and_the_exit_codes() -> None:
    said = run("--help").output
    assert all(re.search(rf"^  {name} ", said, re.MULTILINE) for name in COMMANDS)
    assert "0 done" in said
    assert "1 something in the folder is wrong" in said


def test_a_folder_without_faults_ends_with_0(demo: Path) -> None:
    assert exit_code("check", demo) == 0
    assert exit_code("explain", demo) == 0


@pytest.mark.parametrize("command", ["check", "build", "explain"])
def test_a_fault_is_named_and_ends_with_1(demo: Path, command: str) -> None:
    screens = demo / "screens.yaml"
    screens.write_text(screens.read_text().replace("width_ft", "widht_ft"), encoding="utf-8")
    result = run(command, demo)
    assert result.exit_code == 1
    assert re.search(r"screens\.yaml:\d+", result.stderr)
    assert "widht_ft" in result.stderr
    assert list(demo.parent.iterdir()) == [demo]


def test_a_strict_check_ends_with_1_on_a_stop_and_a_plain_one_does_not(demo: Path) -> None:
    assert exit_code("check", demo) == 0
    result = run("check", "--strict", demo)
    assert result.exit_code == 1
    stops = re.findall(r"^(?:\S+:\d+:\d+ )?stop S\d{3} ", result.output, re.MULTILINE)
    assert re.search(rf"No faults\. {len(stops)} stops?\.$", result.output.rstrip())


def test_a_strict_check_without_a_stop_ends_with_0(bare: Path) -> None:
    (bare / "property.yaml").write_text(NOTHING_RECORDED + "as_of: 2027-01-15\n")
    result = run("check", "--strict", bare)
    assert "0 stops" in result.output
    assert result.exit_code == 0


@pytest.mark.parametrize(
    "words",
    [
        ["mow"],
        ["check"],
        ["check", "DEMO", "--loud"],
        ["check", "DEMO/screens.yaml"],
        ["check", "DEMO/nowhere"],
        ["build", "DEMO", "--for", "nobody"],
        ["build", "DEMO", "--season", "27"],
        ["explain", "DEMO", "--season", "spring"],
        ["build", "DEMO", "--as-of", "Jan 15"],
        ["build", "DEMO", "--out", "DEMO"],
        ["build", "DEMO", "--out", "DEMO/book"],
        ["build", "DEMO", "--out", "DEMO/screens.yaml"],
        ["explain", "DEMO", "buy/2027/all/cost"],
        ["new", "DEMO"],
        ["schema", "--out", "DEMO"],
    ],
    ids=" ".join,
)
def test_wrong_usage_ends_with_2_and_touches_nothing(demo: Path, words: list[str]) -> None:
    before = print_of(demo.parent)
    assert exit_code(*(word.replace("DEMO", str(demo)) for word in words)) == 2
    assert print_of(demo.parent) == before


def test_a_target_that_holds_something_else_is_refused(demo: Path, tmp_path: Path) -> None:
    kept = tmp_path / "papers" / "owner" / "letter.txt"
    kept.parent.mkdir(parents=True)
    kept.write_text("mine")
    result = run("build", demo, "--for", "owner", "--out", tmp_path / "papers")
    assert result.exit_code == 2
    assert "holds something else" in result.stderr
    assert print_of(tmp_path / "papers").keys() == {"owner", "owner/letter.txt"}
    assert kept.read_text() == "mine"


def test_an_unknown_reader_and_an_unknown_number_are_told_what_there_is(demo: Path) -> None:
    assert (
        "Readers: owner, hired-sprayer, hired-driller, hunting-partner."
        in run("build", demo, "--for", "nobody").stderr
    )
    near = run("explain", demo, "buy/2027/all/cost_us").stderr
    assert "Did you mean buy/2027/all/cost_usd?" in near


def test_explain_shows_each_number_that_it_lists(demo: Path) -> None:
    names = run("explain", demo).stdout.split()
    assert "buy/2027/all/cost_usd" in names
    for name in (names[0], names[-1], "buy/2027/all/cost_usd"):
        result = run("explain", demo, name)
        assert result.exit_code == 0
        assert re.search(r"\d", result.output), name


@pytest.mark.parametrize("words", [["new"], ["schema", "--out"]], ids=" ".join)
def test_a_folder_that_cannot_be_made_ends_with_1_and_a_sentence(
    demo: Path, words: list[str]
) -> None:
    result = run(*words, demo / "screens.yaml" / "below")
    assert result.exit_code == 1
    assert re.search(r"^Error: .*below.* cannot be made: .+\.$", result.stderr, re.MULTILINE)


@pytest.mark.parametrize("content", [{}, {"property.yaml": "mine", "notes.txt": "mine too"}])
def test_new_refuses_a_folder_that_is_there(tmp_path: Path, content: dict[str, str]) -> None:
    folder = tmp_path / "land"
    folder.mkdir()
    for name, text in content.items():
        (folder / name).write_text(text)
    before = print_of(folder)
    result = run("new", folder)
    assert result.exit_code == 2
    assert "is there already" in result.stderr
    assert print_of(folder) == before


def test_a_new_folder_has_no_fault_and_builds_with_its_stop_explained(tmp_path: Path) -> None:
    folder = tmp_path / "my-land"
    assert exit_code("new", folder) == 0
    note, *below, done = run("check", folder).output.splitlines()
    assert re.fullmatch(r"products\.yaml:\d+:\d+ note N425 burn-down", note)
    assert below
    assert all(line.startswith("    ") and len(line) <= 80 for line in below)
    assert done == "No faults."
    result = run("build", folder, "--as-of", "2027-08-01")
    assert result.exit_code == 0, result.output
    owner = tmp_path / "my-land-handbook" / "owner"
    assert f"owner: {owner / 'index.html'}" in result.output
    assert re.search(r"^\d stops?: see Stops, cautions and notes", result.output, re.MULTILINE)
    (sheet,) = (owner / "work").glob("*autumn_kill.html")
    text = sheet.read_text(encoding="utf-8")
    (stop,) = re.findall(r'<section class="finding stop">(?:(?!</section>).)*S102.*?</section>',
                         text, re.DOTALL)  # fmt: skip
    assert 'href="../chapters/label-card.html' in stop
    assert (owner / "chapters" / "label-card.html").is_file()


def test_the_books_go_beside_the_folder_one_for_each_reader(demo: Path) -> None:
    assert exit_code("build", demo) == 0
    beside = demo.parent / "my land-handbook"
    assert {one.name for one in demo.parent.iterdir()} == {demo.name, beside.name}
    readers = {"owner", *OTHER_READERS}
    assert {one.name for one in beside.iterdir()} == readers | {f"{one}.html" for one in readers}


def test_folders_of_readers_who_are_gone_are_named_with_their_day_and_kept(demo: Path) -> None:
    out = demo.parent / "my papers"
    assert exit_code("build", demo, "--for", "hired-sprayer", "--out", out) == 0
    (out / "hired-sprayer").rename(out / "friend-of-old")
    (out / "hired-sprayer.html").rename(out / "friend-of-old.html")
    before = print_of(out / "friend-of-old")
    result = run("build", demo, "--for", "owner", "--out", out)
    assert result.exit_code == 0
    (line,) = (one for one in result.stdout.splitlines() if "is still there" in one)
    assert line == (
        f'"{out / "friend-of-old"}" is still there with "{out / "friend-of-old.html"}", '
        "as of 2026-08-20, and no reader of this name is in readers.yaml. "
        "Delete it yourself, and ask for copies you gave away."
    )
    assert print_of(out / "friend-of-old") == before
    page = html.unescape((out / "owner" / "readers.html").read_text(encoding="utf-8"))
    assert "friend-of-old, as of Aug 20, 2026" in re.sub("<[^>]*>", "", page)
    shutil.rmtree(out / "friend-of-old")
    result = run("build", demo, "--for", "owner", "--out", out)
    assert "is still there" not in result.stdout
    page = html.unescape((out / "owner" / "readers.html").read_text(encoding="utf-8"))
    assert "Folders of readers no longer named" not in page


@pytest.mark.parametrize(
    ("wanted", "built"),
    [
        ("hired-sprayer", {"hired-sprayer"}),
        ("contractor", {"hired-sprayer", "hired-driller"}),
        ("partner", {"hunting-partner"}),
    ],
)
def test_for_builds_readers_by_name_or_by_kind(demo: Path, wanted: str, built: set[str]) -> None:
    assert exit_code("build", demo, "--for", wanted, "--out", demo.parent / "out") == 0
    files = {f"{one}.html" for one in built}
    assert {one.name for one in (demo.parent / "out").iterdir()} == built | files


def test_season_and_day_given_reach_the_page(demo: Path) -> None:
    out = demo.parent / "out"
    assert exit_code("build", demo, "--for", "owner", "--out", out) == 0
    first = stamp_of(out / "owner" / "index.html")
    options = ["--season", "2028", "--as-of", "2027-09-01"]
    assert exit_code("build", demo, "--for", "owner", "--out", out, *options) == 0
    index = out / "owner" / "index.html"
    assert first.startswith("As of Aug 20, 2026.")
    assert stamp_of(index).startswith("As of Sep 1, 2027.")
    assert "Season 2028." in index.read_text(encoding="utf-8")


@pytest.mark.parametrize("words", FOLDER_COMMANDS, ids=" ".join)
def test_no_command_changes_the_property_folder(demo: Path, words: list[str]) -> None:
    before = print_of(demo)
    assert len(before) >= 8
    assert exit_code(words[0], demo, *words[1:]) in (0, 1)
    assert print_of(demo) == before


def test_nothing_said_holds_colour_codes_also_where_the_folder_does(demo: Path) -> None:
    screens = demo / "screens.yaml"
    screens.write_text(screens.read_text() + '"\\e[31mred": 1\n', encoding="utf-8")
    for words in (["check", demo], ["build", demo], ["check", "--strict", DEMO], ["--help"]):
        result = CliRunner().invoke(cli.main, [str(word) for word in words], color=True)
        assert result.output
        assert "\x1b" not in result.output
    assert "[31mred" in run("check", demo).output


@pytest.mark.parametrize("step_s", [0.01, 0.9, 1.1, 60.0])
def test_a_line_of_progress_comes_only_past_a_second(
    bare: Path, monkeypatch: pytest.MonkeyPatch, step_s: float
) -> None:
    began, later = 5000.0, iter(range(100))
    clock = SimpleNamespace(monotonic=lambda: began + step_s * min(next(later), 1))
    monkeypatch.setattr("generator.said.time", clock)
    result = run("build", bare, "--for", "owner", "--as-of", "2026-09-20")
    assert next(later) >= 2, "the clock was looked at when it began and before it spoke"
    said = [re.sub(r"\d+", "N", line) for line in result.stderr.splitlines()]
    slow = ["Writing the book for owner ...", "Building N pages for owner ..."]
    assert said == (slow if step_s > 1 else [])
    assert not re.search("Writing|Building", result.stdout)


# Of the two properties only the demo has ground of points, which are measured on the earth.
BASE = CHECKOUT / "tests" / "inventories" / "base"


@pytest.mark.parametrize(
    ("words", "more"),
    [
        (["--help"], set()),
        (["check", str(BASE)], set()),
        (["check", "--strict", str(BASE)], set()),
        (["check", "--strict", str(DEMO)], {"pyproj"}),
    ],
    ids=str,
)
def test_a_command_that_builds_nothing_loads_nothing_heavy(
    words: list[str], more: set[str]
) -> None:
    program = (
        "import runpy, sys\n"
        f"sys.argv = ['handbook', *{words!r}]\n"
        "try:\n"
        "    runpy.run_module('generator', run_name='__main__')\n"
        "finally:\n"
        "    print('\\nLOADED', *sorted({name.split('.')[0] for name in sys.modules}))\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=CHECKOUT, capture_output=True, text=True, check=False
    )
    loaded = set(done.stdout.rpartition("LOADED")[2].split())
    assert {"click", "generator"} <= loaded, done.stderr
    assert loaded & HEAVY == more


@pytest.mark.parametrize("name", COMMANDS)
def test_the_readme_names_the_command_and_its_options_and_no_others(name: str) -> None:
    readme = (CHECKOUT / "README.md").read_text(encoding="utf-8")
    (row,) = re.findall(rf"^\| `handbook {name}\b.*$", readme, re.MULTILINE)
    options = [one for one in cli.main.commands[name].params if isinstance(one, click.Option)]
    assert set(re.findall(r"--[a-z-]+", row)) == {word for one in options for word in one.opts}


def test_the_readme_names_no_command_that_is_not_there() -> None:
    readme = (CHECKOUT / "README.md").read_text(encoding="utf-8")
    assert set(re.findall(r"^\| `handbook (\w+)", readme, re.MULTILINE)) == set(COMMANDS)


def test_a_python_without_docstrings_is_refused_in_a_sentence() -> None:
    done = subprocess.run(
        [sys.executable, "-OO", "-m", "generator", "check", str(DEMO)],
        cwd=CHECKOUT, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 2
    assert "Run it without" in done.stderr
    assert "Traceback" not in done.stderr
