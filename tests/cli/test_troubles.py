"""What a system refuses and what a screen cannot show: one sentence, and nothing is lost."""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
import yaml

from generator import cli
from generator.inventory import write
from generator.inventory.write import write_new_folder
from generator.site import publish as publishing
from tests.book.sites import CHECKOUT
from tests.cli.test_commands import exit_code, run
from tests.full_disk import contents, files_up_to, resize, small_disk
from tests.properties import small_property, write_property

NAME = "Łąka ≥ 草地"


@pytest.fixture
def land(tmp_path: Path) -> Path:
    return write_property(tmp_path / "land", small_property())


def as_typed(
    *words: str | Path, env: dict[str, str] | None = None, **more: Any
) -> subprocess.CompletedProcess[bytes]:
    """A command in a process of its own, as a shell starts it."""
    command = [sys.executable, "-m", "generator", *map(str, words)]
    told = {"stdout": subprocess.PIPE} | more
    environment = os.environ | {"PYTHONPATH": str(CHECKOUT)} | (env or {})
    return subprocess.run(command, env=environment, stderr=subprocess.PIPE, check=False, **told)


def one_sentence(stderr: str) -> str:
    """What follows `Error: `; asserts that it is all that was said beside what is being done."""
    before, _, told = stderr.partition("Error: ")
    assert all(re.match("Writing the book|Building", one) for one in before.splitlines()), stderr
    assert "Traceback" not in told
    return told.rstrip("\n")


# Below the sizes of the first file and of the longest.
@pytest.mark.parametrize("size", [0, 20_000])
def test_a_new_folder_that_fails_leaves_nothing(tmp_path: Path, size: int) -> None:
    assert exit_code("new", tmp_path / "first") == 0
    shutil.rmtree(tmp_path / "first")
    for folder in (tmp_path / "land", tmp_path / "deep" / "in" / "land"):
        with files_up_to(size):
            result = run("new", folder)
        assert result.exit_code == 1
        told = one_sentence(result.stderr)
        assert told == f"{folder} cannot be made: File too large."
        assert contents(tmp_path) == {}


def test_a_new_folder_that_is_broken_off_leaves_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken_off(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(write.Path, "rename", broken_off)
    with pytest.raises(KeyboardInterrupt):
        write_new_folder(tmp_path / "a" / "land", {"property.yaml": b"format: 1\n"})
    assert contents(tmp_path) == {}


def test_an_entry_that_cannot_be_written_leaves_the_log_as_it_was(land: Path) -> None:
    words = ["record", land, "--on", "2026-08-12", "--note", "walked it"]
    before = contents(land)
    for _ in range(2):
        with files_up_to(20):
            result = run(*words)
        assert result.exit_code == 1
        told = f"{land} takes no entry: File too large. Nothing was written."
        assert one_sentence(result.stderr) == told
        assert contents(land) == before
        assert exit_code(*words) == 0
        before = contents(land)


def test_what_cannot_be_printed_on_a_full_disk_is_told(land: Path) -> None:
    for words in (["check", land], ["--help"]):
        with Path("/dev/full").open("wb") as full:
            done = as_typed(*words, stdout=full)
        assert done.returncode == 1
        assert one_sentence(done.stderr.decode()) == "No space left on device."


def test_a_place_for_books_that_no_system_takes_ends_with_1(land: Path) -> None:
    before, out = contents(land), land.parent / ("x" * 300)
    result = run("build", land, "--for", "hired", "--out", out)
    assert result.exit_code == 1
    told = f"hired was not built: {out}/hired cannot be written: File name too long."
    assert one_sentence(result.stderr) == told
    assert contents(land) == before


@pytest.mark.parametrize(
    ("out", "code", "said"),
    [
        ("LAND", 2, "lies in the property folder, which a build never changes."),
        ("LAND/books", 2, "lies in the property folder, which a build never changes."),
        ("letters", 2, "holds something else; give an empty or a new folder."),
        ("note.txt/books", 1, "cannot be written: a part of it is no folder."),
        ("x" * 300, 1, "cannot be written: File name too long."),
        ("locked", 1, "locked takes no new folder."),
        ("locked/deep/down", 1, "locked takes no new folder."),
    ],
)
def test_a_place_that_takes_no_book_is_refused_before_any_work(
    land: Path, monkeypatch: pytest.MonkeyPatch, out: str, code: int, said: str
) -> None:
    (land.parent / "letters" / "owner").mkdir(parents=True)
    (land.parent / "letters" / "owner" / "mine.txt").write_text("mine")
    (land.parent / "note.txt").write_text("mine")
    locked = land.parent / "locked"
    locked.mkdir()
    # whoever runs this may write anywhere, so the folder is locked by what the system says of it
    writable = os.access
    monkeypatch.setattr(os, "access", lambda one, how: one != locked and writable(one, how))
    worked: list[object] = []
    monkeypatch.setattr(cli, "planned", lambda *every: worked.append(every))
    before = contents(land.parent)
    words = ["--for", "owner", "--out", out.replace("LAND", "land")]
    monkeypatch.chdir(land.parent)
    result = run("build", "land", *words)
    assert result.exit_code == code
    assert said in " ".join(one_sentence(result.stderr[result.stderr.index("Error: ") :]).split())
    assert worked == []
    assert contents(land.parent) == before


def test_books_for_a_place_without_a_name_are_not_scattered_where_one_is(
    land: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(land.parent)
    assert exit_code("build", land, "--out", "") == 2
    assert [path.name for path in land.parent.iterdir()] == ["land"]


def test_one_reader_s_trouble_keeps_no_other_from_being_built(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    data: Any = small_property()
    (hired,) = data["readers"]["readers"]
    data["readers"]["readers"] = [hired, hired | {"id": "driller"}, hired | {"id": "helper"}]
    land, out = write_property(tmp_path / "land", data), tmp_path / "out"
    (out / "driller").mkdir(parents=True)
    (out / "driller" / "letter.txt").write_text("mine")
    made = publishing.built

    def failing(book: Any, workshop: Path, site: Path, one_file: Path) -> tuple[str, ...]:
        if ".hired." in site.parent.name:
            raise OSError(28, "No space left on device")
        if ".owner." in site.parent.name:
            return ("index.html: leads to gone.html, which does not exist.",)
        return made(book, workshop, site, one_file)

    monkeypatch.setattr(publishing, "built", failing)
    result = run("build", land, "--out", out)
    assert result.exit_code == 1
    built = [line.partition(":")[0] for line in result.stdout.splitlines() if "index.html" in line]
    assert built == ["helper"]
    assert {one.name for one in out.iterdir()} == {"driller", "helper", "helper.html"}
    told = result.stderr[result.stderr.index("Error: ") :].splitlines()
    assert told == [
        "Error: owner was not built: The pages do not hold together:",
        "index.html: leads to gone.html, which does not exist.",
        f"hired was not built: {out}/hired cannot be written: No space left on device.",
        f"driller was not built: {out}/driller holds something else; "
        "give an empty or a new folder.",
    ]


UNUSUAL = {
    "cp1252": {"PYTHONIOENCODING": "cp1252"},
    "no language": {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"},
}


@pytest.mark.parametrize("env", UNUSUAL.values(), ids=UNUSUAL)
def test_an_old_encoding_spells_out_what_it_lacks_and_ends_as_ever(
    tmp_path: Path, env: dict[str, str]
) -> None:
    data: Any = small_property()
    data["screens"]["screens"][0]["name"] = NAME
    land = write_property(tmp_path / NAME, data)
    words = ["--on", "2026-10-12", "--job", "lane/2027/autumn_kill", "--finished", "--note", NAME]
    done = as_typed("record", land, *words, env=env)
    assert (done.returncode, done.stderr) == (0, b"")
    # Where no language is set, click takes plain ASCII for a mistake and prints UTF-8.
    shown = NAME if env is not UNUSUAL["cp1252"] else "\\u0141\\u0105ka \\u2265 \\u8349\\u5730"
    assert f", {shown}, is finished.".encode() in done.stdout
    (entry,) = (land / "log").iterdir()
    found = yaml.safe_load(entry.read_text(encoding="utf-8"))["entries"]
    assert found[0]["note"] == NAME


def test_what_is_typed_and_is_no_text_is_refused(land: Path) -> None:
    before = contents(land)
    # As Python takes b"caf\xe9" from a command line in UTF-8.
    result = run("record", land, "--on", "2026-08-12", "--note", "caf\udce9")
    assert result.exit_code == 2
    assert "is no text: type it in UTF-8." in result.stderr
    assert contents(land) == before


@pytest.mark.parametrize(
    "words",
    [
        ["build", "LAND", "--season", "9" * 5000],
        ["record", "LAND", "--on", "2026-08-12", "--used", f"brew={'9' * 5000}_gal"],
        ["record", "LAND", "--on", "2026-08-12", "--job", f"lane/{'9' * 5000}/autumn_kill"],
        ["record", "LAND", "--on", "2026-08-12", "--set", f"spent.{'9' * 5000}.what=x"],
        ["record", "LAND", "--on", "2026-08-12", "--area", "9" * 5000 + "_ac", "--job", "a/b/c"],
        ["record", "LAND", "--on", "9" * 5000, "--note", "x"],
        ["explain", "LAND", "x" * 5000],
        ["check", "--strict", "LAND", "--as-of", "9999-12-31"],
    ],
    ids=lambda words: " ".join(words)[:40],
)
def test_numbers_and_days_beyond_any_measure_are_refused(land: Path, words: list[str]) -> None:
    before = contents(land)
    assert exit_code(*(word.replace("LAND", str(land)) for word in words)) in (1, 2)
    assert contents(land) == before


@pytest.mark.long
def test_a_disk_that_is_really_full_loses_nothing(tmp_path: Path) -> None:
    assert exit_code("new", tmp_path / "land") == 0
    with small_disk(tmp_path / "disk", 16_000) as mounted:
        if not mounted:
            pytest.skip("nobody may mount a disk here")
        for room_kb in (2500, 2000, 1500, 800, 300, 100, 8, 0):
            out = tmp_path / "disk" / str(room_kb)
            words = ["build", tmp_path / "land", "--out", out]
            assert exit_code(*words, "--as-of", "2027-01-15") == 0
            before = contents(out)
            resize(tmp_path / "disk", room_kb)
            done = as_typed(*words, "--as-of", "2027-05-01")
            told = done.stderr.decode()
            assert done.returncode == 1
            assert "Traceback" not in told
            assert f"{out}/owner cannot be written: No space left on device." in told
            after = contents(out)
            assert {name: after[name] for name in before if name.startswith("owner")} == {
                name: content for name, content in before.items() if name.startswith("owner")
            }
            kept = {
                f"{reader}{end}" for reader in ("owner", "hired-sprayer") for end in ("", ".html")
            }
            assert {name.partition("/")[0] for name in after} == kept
            made = as_typed("new", out / "deep" / "land")
            if made.returncode:
                assert not (out / "deep").exists()
            shutil.rmtree(out)
            resize(tmp_path / "disk", 16_000)
