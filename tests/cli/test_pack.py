"""One reader's book in one archive: whole, dated, the same bytes, where it may lie."""

import datetime
import signal
import subprocess
import sys
import time
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.site.mark import SITE_MARK
from generator.site.pack import archive_name, pack
from generator.site.publish import Refused
from tests.book.sites import CHECKOUT
from tests.cli.test_commands import exit_code, print_of, run
from tests.properties import small_property, write_property

NAME = "handbook-hired-2026-09-01.zip"
WORDS = ("--for", "hired", "--as-of", "2026-09-01")
KILLS = 20
PACK_FOR_EVER = """
import sys
from pathlib import Path
from generator.site.pack import pack
def build(book):
    book.mkdir(parents=True)
    for number in range(200):
        (book / f"{number}.html").write_text(words * 500)
print("ready", flush=True)
while True:
    for words in ("one", "other"):
        pack(Path(sys.argv[1]), "hired", build)
"""


@pytest.fixture
def land(tmp_path: Path) -> Path:
    return write_property(tmp_path / "my land", small_property())


def _error(*words: str | Path) -> str:
    result = run("pack", *words)
    assert result.exit_code == 2, result.output
    return " ".join(result.stderr.partition("Error: ")[2].split())


def _writes(words: str, beside: bool = False) -> Callable[[Path], None]:
    def build(book: Path) -> None:
        (book / "work").mkdir(parents=True)
        (book / "index.html").write_text(words, encoding="utf-8")
        (book / "work" / "one.html").write_text(words, encoding="utf-8")
        if beside:
            book.with_name(f"{book.name}.html").write_text(words, encoding="utf-8")

    return build


def test_an_archive_holds_the_book_that_a_build_makes_and_only_it(
    land: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(land)
    before = print_of(land)
    result = run("pack", *WORDS)
    assert result.exit_code == 0, result.output
    archive = land.parent / NAME
    assert result.output.splitlines()[-1].startswith(f"hired: {archive}, 0.")
    # nothing of it lies anywhere else
    assert print_of(land) == before
    assert {path.name for path in land.parent.iterdir()} == {land.name, NAME}
    assert exit_code("build", *WORDS) == 0
    books = land.parent / "my land-handbook"
    built = {
        f"{NAME.removesuffix('.zip')}{path.relative_to(books).as_posix().removeprefix('hired')}":
        path.read_bytes()
        for path in books.rglob("*") if path.is_file()
    }  # fmt: skip
    with zipfile.ZipFile(archive) as packed:
        assert packed.testzip() is None
        assert {name: packed.read(name) for name in packed.namelist()} == built
        assert f"{NAME.removesuffix('.zip')}/{SITE_MARK}" in built


def test_it_goes_where_it_is_told_to_and_is_the_same_on_another_day_and_place(
    land: Path, tmp_path: Path
) -> None:
    stick = tmp_path / "stick"
    stick.mkdir()
    assert exit_code("pack", land, *WORDS, "--to", stick) == 0
    moved = land.rename(tmp_path / "elsewhere")
    assert exit_code("pack", moved, *WORDS) == 0
    assert (stick / NAME).read_bytes() == (tmp_path / NAME).read_bytes()
    with zipfile.ZipFile(stick / NAME) as packed:
        entries = packed.infolist()
        assert [entry.filename for entry in entries] == sorted(packed.namelist())
        assert {entry.date_time for entry in entries} == {(1980, 1, 1, 0, 0, 0)}


def test_it_is_refused_where_it_would_be_kept_with_what_is_not_the_reader_s(land: Path) -> None:
    assert exit_code("build", land, "--for", "hired", "--as-of", "2026-09-01") == 0
    books = land.parent / "my land-handbook"
    (land / "log").mkdir(exist_ok=True)
    before = print_of(land.parent)
    inside = "lies in the property folder, which holds what you type alone."
    for into in (land, land / "log"):
        assert _error(land, *WORDS, "--to", into) == f"{into} {inside}"
    holds = "holds built books; an archive there would be handed on with them."
    assert _error(land, *WORDS, "--to", books) == f"{books} {holds}"
    lies = "lies in a built book, which a build replaces as a whole."
    for into in (books / "hired", books / "hired" / "work"):
        assert _error(land, *WORDS, "--to", into) == f"{into} {lies}"
    gone = land.parent / "gone"
    assert _error(land, *WORDS, "--to", gone) == (
        f"{gone} is no folder that is there; name one with --to."
    )
    (land.parent / "way in").symlink_to(land)
    assert _error(land, *WORDS, "--to", land.parent / "way in").endswith(inside)
    (land.parent / "way in").unlink()
    assert print_of(land.parent) == before


def test_a_kind_that_several_readers_are_of_is_asked_for_by_name(land: Path) -> None:
    assert _error(land, "--for", "nobody", "--as-of", "2026-09-01").startswith(
        "There is no reader nobody. Readers: owner, hired"
    )
    assert run("pack", land).exit_code == 2


def test_an_archive_of_ours_is_replaced_and_what_is_somebody_s_own_is_not(tmp_path: Path) -> None:
    target = tmp_path / archive_name("hired", datetime.date(2026, 9, 1))
    pack(target, "hired", _writes("one"))
    pack(target, "hired", _writes("other", beside=True))
    with zipfile.ZipFile(target) as packed:
        stem = target.stem
        assert packed.namelist() == [
            f"{stem}.html", f"{stem}/index.html", f"{stem}/work/one.html",
        ]  # fmt: skip
        assert packed.read(f"{stem}.html") == b"other"
    ours = target.read_bytes()
    for content in (b"mine", b"", ours[:-1], ours[:40] + b"?" + ours[41:], ours + b"\n"):
        target.write_bytes(content)
        with pytest.raises(Refused, match="not as this program left it"):
            pack(target, "hired", _writes("one"))
        assert target.read_bytes() == content
    target.unlink()
    target.symlink_to(tmp_path / "nowhere")
    with pytest.raises(Refused, match="not as this program left it"):
        pack(target, "hired", _writes("one"))


def test_what_keeps_a_book_from_being_built_leaves_the_archive_as_it_was(tmp_path: Path) -> None:
    target = tmp_path / NAME
    pack(target, "hired", _writes("one"))
    before = target.read_bytes()

    def fails(book: Path) -> None:
        _writes("other")(book)
        raise OSError("full")

    with pytest.raises(OSError, match="full"):
        pack(target, "hired", fails)
    assert target.read_bytes() == before
    assert list(tmp_path.iterdir()) == [target]


@pytest.mark.long
def test_killed_at_any_moment_the_last_whole_archive_stands(tmp_path: Path) -> None:
    target = tmp_path / NAME
    for number in range(KILLS):
        packing = subprocess.Popen(
            [sys.executable, "-c", PACK_FOR_EVER, str(target)],
            cwd=CHECKOUT, stdout=subprocess.PIPE, text=True,
        )  # fmt: skip
        assert packing.stdout is not None
        packing.stdout.readline()
        time.sleep(0.05 + number / 50)
        packing.send_signal(signal.SIGKILL)
        packing.wait()
        packing.stdout.close()
        if target.exists():
            with zipfile.ZipFile(target) as packed:
                assert packed.testzip() is None
                assert len(packed.namelist()) == 200
    pack(target, "hired", _writes("one"))
    assert list(tmp_path.iterdir()) == [target]
