"""`handbook save`: a whole archive outside the folder, read back, or none; never over another."""

import datetime
import hashlib
import os
import shutil
import subprocess
import tempfile
import zipfile
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.saved import archive as saving
from generator.saved.archive import save
from generator.saved.names import HASHES
from generator.saved.restored import restore
from tests.book.sites import DEMO
from tests.cli.test_commands import print_of, run
from tests.full_disk import files_up_to
from tests.killed import killed
from tests.properties import small_property, write_property

DAY = "2026-11-30"
SAVE_FOR_EVER = """
import datetime, sys
from pathlib import Path
from generator.saved.archive import save
print("ready", flush=True)
while True:
    save(Path(sys.argv[1]), Path(sys.argv[2]), datetime.date(2026, 11, 30))
"""


@pytest.fixture
def land(tmp_path: Path) -> Path:
    """A small property with an entry of its log in a file of its own."""
    folder = write_property(tmp_path / "my land", small_property())
    assert run("record", folder, "--on", "2026-08-19", "--note", "walked it").exit_code == 0
    return folder


def test_a_saved_folder_comes_back_byte_by_byte(land: Path, tmp_path: Path) -> None:
    before = print_of(land)
    os.utime(land / "property.yaml", (1_700_000_000, 1_700_000_000))
    (tmp_path / "stick").mkdir()
    saved = run("save", land, "--to", tmp_path / "stick", "--on", DAY)
    assert saved.exit_code == 0, saved.output
    (archive,) = (tmp_path / "stick").iterdir()
    assert archive.name == f"my land-{DAY}.zip"
    assert f'"{archive}": {len([one for one in before.values() if one != "folder"])} files' in (
        saved.output
    )
    assert "Read back: every file is what its SHA-256 says" in saved.output
    assert print_of(land) == before
    back = run("restore", archive)
    assert back.exit_code == 0, back.output
    new = tmp_path / "stick" / f"my land-saved-{DAY}"
    assert print_of(new) == before
    assert (new / "property.yaml").stat().st_mtime == 1_700_000_000
    assert run("check", new).exit_code == 0


def test_its_list_is_read_by_a_checking_tool(land: Path, tmp_path: Path) -> None:
    """Independent: sha256sum of the system reads the list and agrees."""
    tool = shutil.which("sha256sum")
    assert tool is not None
    assert run("save", land, "--on", DAY).exit_code == 0
    with zipfile.ZipFile(tmp_path / f"my land-{DAY}.zip") as packed:
        assert packed.testzip() is None
        packed.extractall(tmp_path / "out")
    done = subprocess.run(
        [tool, "-c", "--strict", HASHES], cwd=tmp_path / "out", capture_output=True, text=True,
        check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert len(done.stdout.splitlines()) == sum(path.is_file() for path in land.rglob("*"))


def test_it_goes_beside_the_folder_and_never_over_another(land: Path, tmp_path: Path) -> None:
    taken = tmp_path / f"my land-{DAY}.zip"
    taken.write_bytes(b"mine")
    assert run("save", land, "--on", DAY).exit_code == 0
    assert run("save", land, "--on", DAY).exit_code == 0
    assert taken.read_bytes() == b"mine"
    archives = sorted(path.name for path in tmp_path.glob("*.zip"))
    assert archives == [f"my land-{DAY}-2.zip", f"my land-{DAY}-3.zip", taken.name]
    one, two = (tmp_path / name for name in archives[:2])
    assert one.read_bytes() == two.read_bytes()
    assert run("restore", one).exit_code == run("restore", one).exit_code == 0
    assert (tmp_path / f"my land-saved-{DAY}-2" / "property.yaml").is_file()


def test_what_is_left_out_is_said(land: Path, tmp_path: Path) -> None:
    (land / ".git").mkdir()
    (land / ".git" / "config").write_text("x")
    (land / "screens.yaml~").write_text("x")
    (land / "__pycache__").mkdir()
    (land / "photos").mkdir()
    (land / "photos" / "oak.jpg").write_bytes(b"\xff\xd8")
    (land / "photos" / "all").symlink_to(tmp_path)
    (land / "gone.yaml.bak").symlink_to(tmp_path / "nowhere")
    os.mkfifo(land / "pipe")
    (land / "old book").mkdir()
    (land / "old book" / ".handbook-site").write_text("x")
    saved = run("save", land, "--on", DAY)
    assert saved.exit_code == 0, saved.output
    left_out = [line for line in saved.output.splitlines() if line.startswith("left out: ")]
    assert left_out == [
        "left out: .git/ is hidden",
        "left out: __pycache__/ is made anew by itself",
        "left out: gone.yaml.bak is a link that leads nowhere",
        "left out: old book/ is a built book, which a build makes anew",
        "left out: photos/all/ is a link to a folder",
        "left out: pipe is a pipe",
        "left out: screens.yaml~ was left by an editor",
    ]
    with zipfile.ZipFile(tmp_path / f"my land-{DAY}.zip") as packed:
        assert "my land/photos/oak.jpg" in packed.namelist()


def test_a_link_to_a_file_is_saved_as_the_file(land: Path, tmp_path: Path) -> None:
    (tmp_path / "shared.yaml").write_text((land / "property.yaml").read_text())
    (land / "property.yaml").unlink()
    (land / "property.yaml").symlink_to(tmp_path / "shared.yaml")
    assert run("save", land, "--on", DAY).exit_code == 0
    assert run("restore", tmp_path / f"my land-{DAY}.zip").exit_code == 0
    back = tmp_path / f"my land-saved-{DAY}" / "property.yaml"
    assert not back.is_symlink()
    assert back.read_bytes() == (tmp_path / "shared.yaml").read_bytes()


def test_a_folder_with_faults_is_saved_too(land: Path, tmp_path: Path) -> None:
    (land / "screens.yaml").write_text("screens: [")
    assert run("check", land).exit_code == 1
    assert run("save", land, "--on", DAY).exit_code == 0
    assert (tmp_path / f"my land-{DAY}.zip").is_file()


@pytest.mark.parametrize(
    ("name", "told"),
    [("a:b.txt", "not every system takes"), ("con.yaml.txt", "not every system takes"),
     ("tab\tin.txt", "not every system takes"), ("LOG.txt", "one name on many systems")],
)  # fmt: skip
def test_a_name_that_could_not_be_put_back_everywhere_is_refused(
    land: Path, tmp_path: Path, name: str, told: str
) -> None:
    (land / "log.txt").write_text("x")
    (land / name).write_text("x")
    refused = run("save", land, "--on", DAY)
    assert refused.exit_code == 1
    assert told in refused.output
    assert "another name" in refused.output or "them another" in refused.output
    assert list(tmp_path.glob("*.zip")) == []


def test_it_is_not_saved_into_the_folder_itself(land: Path) -> None:
    before = print_of(land)
    for into in (land, land / "log"):
        refused = run("save", land, "--to", into, "--on", DAY)
        assert refused.exit_code == 1
        assert "lies in the property folder" in refused.output
    assert print_of(land) == before


def test_the_day_is_written_one_way(land: Path) -> None:
    assert run("save", land, "--on", "11/30/2026").exit_code == 2
    assert run("save", land, "--on", "soon").exit_code == 2


def test_files_that_are_much_alike_are_saved_and_come_back(land: Path, tmp_path: Path) -> None:
    (land / "zeros.txt").write_bytes(b"0" * 3_000_000)
    assert run("save", land, "--on", DAY).exit_code == 0
    assert run("restore", tmp_path / f"my land-{DAY}.zip").exit_code == 0
    assert (tmp_path / f"my land-saved-{DAY}" / "zeros.txt").stat().st_size == 3_000_000


def test_what_does_not_read_back_is_not_saved(
    land: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    pack = saving._pack

    def spoilt(*given: object) -> dict[str, str]:
        hashes = pack(*given)  # type: ignore[arg-type]  # as it is called
        file = given[3]
        file.seek(200)  # type: ignore[attr-defined]  # a file
        file.write(b"spoilt")  # type: ignore[attr-defined]  # a file
        return hashes

    monkeypatch.setattr(saving, "_pack", spoilt)
    refused = run("save", land, "--on", DAY)
    assert refused.exit_code == 1
    assert "Read back" not in refused.output
    assert sorted(path.name for path in tmp_path.iterdir()) == ["my land"]


def test_a_full_disk_leaves_nothing_behind(land: Path, tmp_path: Path) -> None:
    (land / "photo.jpg").write_bytes(os.urandom(400_000))
    (tmp_path / "full").mkdir()
    with files_up_to(200_000):
        full = run("save", land, "--to", tmp_path / "full", "--on", DAY)
    assert full.exit_code == 1
    assert "Nothing was saved" in full.output
    assert list((tmp_path / "full").iterdir()) == []


NAMES = st.text(st.characters(categories=["L", "N"]), min_size=1, max_size=12).map(
    lambda name: f"n{name}.txt"
)


@given(st.dictionaries(NAMES.map(str.casefold), st.binary(max_size=400), max_size=6))
def test_whatever_lies_there_comes_back(files: dict[str, bytes]) -> None:
    with tempfile.TemporaryDirectory() as work:
        folder = Path(work) / "land"
        folder.mkdir()
        for name, content in files.items():
            (folder / name).write_bytes(content)
        saved = save(folder, Path(work), datetime.date(2026, 11, 30))
        back = restore(saved.archive, Path(work))
        assert print_of(back.folder) == print_of(folder)


def check_kills(folder: Path, into: Path, kills: int, seed: int) -> None:
    """Fails where a kill leaves an archive that is not whole, or the next save what was begun."""
    digests = {path.name: hashlib.sha256(path.read_bytes()).hexdigest() for path in into.iterdir()}
    for _ in killed(SAVE_FOR_EVER, folder, into, kills=kills, seed=seed, within_s=0.3):
        for path in into.iterdir():
            if path.name.startswith("."):
                assert path.name.endswith(".unfinished")
            elif path.name not in digests:
                digests[path.name] = hashlib.sha256(path.read_bytes()).hexdigest()
                with tempfile.TemporaryDirectory() as back:
                    assert print_of(restore(path, Path(back)).folder) == print_of(folder)
    found = {
        path.name: hashlib.sha256(path.read_bytes()).hexdigest() for path in into.glob("*.zip")
    }
    assert {name: digests[name] for name in found} == found
    assert run("save", folder, "--to", into, "--on", DAY).exit_code == 0
    assert [path.name for path in into.iterdir() if path.name.startswith(".")] == []


def test_killed_at_any_moment_an_archive_is_whole_or_not_there(tmp_path: Path) -> None:
    folder = write_property(tmp_path / "land", small_property())
    (tmp_path / "into").mkdir()
    check_kills(folder, tmp_path / "into", 5, seed=3)


@pytest.mark.long
def test_killed_many_times_an_archive_is_whole_or_not_there(tmp_path: Path) -> None:
    folder = shutil.copytree(DEMO, tmp_path / "land")
    (tmp_path / "into").mkdir()
    check_kills(folder, tmp_path / "into", 200, seed=4)
