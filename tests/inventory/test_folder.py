"""What lies in a property folder: all that may be meant is read or named, and no pipe is opened.

What the operating system does with links, pipes, devices and rights is its own; each case is made
in a folder and read by the command's own way in.
"""

import gzip
import os
import shutil
import socket
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from generator.inventory.load import Loaded, load_inventory
from generator.inventory.yaml_text import MOST_BYTES
from tests.book.sites import CHECKOUT
from tests.inventories.overlaid import HERE

ENTRIES = (
    "entries:\n  - {id: sprayed, done_on: 2026-08-18, used: [{item: brew, amount_fl_oz: 120}]}\n"
)
STATION = """stations:
  - {id: ridge, name: Ridge farm, file: weather/ridge.csv, kind: plain}
"""
NOBODY = 65534


@pytest.fixture
def land(tmp_path: Path) -> Path:
    """The small property, with room beside it."""
    return Path(shutil.copytree(HERE / "base", tmp_path / "land"))


def faults(loaded: Loaded) -> list[str]:
    return [f"{one.file}:{one.line}:{one.column} {one.code}" for one in loaded.problems]


def ids(loaded: Loaded) -> list[str]:
    assert loaded.inventory is not None, loaded.problems
    return [one.id for one in loaded.inventory.entries]


@pytest.mark.parametrize(
    "name",
    [
        "log.yaml.txt",
        "log.yaml.bak",
        "LOG.YAML",
        "log.yml",
        "log.yaml ",
        "log (1).yaml",
        "copy of log.yaml.old",
        "log",
        "log/a.yaml.txt",
        "log/a.yml.bak",
        "log/A.YAML.TXT",
        "log/older/a.yaml",
        "log/older/a.yaml.txt",
        "screens/a.yaml.txt",
        "weather/a.yaml.txt",
        "schema/log.yaml",
        "old/log.yaml.txt",
        "old/2024/LOG.YML",
        "#log.yaml",
    ],
)
def test_a_file_that_may_be_meant_and_is_not_read_is_a_fault(name: str, land: Path) -> None:
    (land / name).parent.mkdir(parents=True, exist_ok=True)
    (land / name).write_text(ENTRIES)
    loaded = load_inventory(land)
    assert faults(loaded) == [f"{name}:1:1 F214"]
    assert loaded.problems[0].accepted


def test_a_file_that_is_not_read_is_told_what_it_may_be(land: Path) -> None:
    for name in ("log.yaml.txt", "log"):
        (land / name).write_text(ENTRIES)
        (fault,) = load_inventory(land).problems
        assert "did you mean log.yaml?" in fault.accepted
        (land / name).unlink()
    (land / "log").mkdir()
    (land / "log" / "a.yaml.txt").write_text(ENTRIES)
    (fault,) = load_inventory(land).problems
    assert "a name that ends in .yaml" in fault.accepted


def test_of_a_list_that_is_not_read_no_mention_is_called_a_slip(land: Path) -> None:
    (land / "seed.yaml").rename(land / "seed.yaml.txt")
    assert faults(load_inventory(land)) == ["seed.yaml.txt:1:1 F214"]


LEFT = [
    ".log.yaml.swp",
    ".log.yaml",
    ".gitignore",
    "#log.yaml#",
    "log.yaml.SWP",
    "log.yaml.swp",
    "log.yaml.tmp",
    "log.yaml~",
    "log/.a.yaml.swp",
    "log/a.yaml~",
    "log~",
]


@pytest.mark.parametrize("name", LEFT)
def test_what_an_editor_leaves_is_no_fault_and_hides_nothing(name: str, land: Path) -> None:
    (land / name).parent.mkdir(exist_ok=True)
    (land / name).write_text("entries: [")
    (land / "log.yaml").write_text(ENTRIES)
    loaded = load_inventory(land)
    assert ids(loaded) == ["sprayed"]
    assert loaded.inventory is not None
    assert loaded.inventory.passed_over == (name,)


def test_a_name_that_only_looks_like_a_leftover_is_read(land: Path) -> None:
    (land / "log").mkdir()
    for number, name in enumerate(["a.tmp.yaml", "#b.yaml", "c~.yaml", "d.swp.yml"]):
        (land / "log" / name).write_text(f"entries: [{{id: e-{number}, done_on: 2026-08-18}}]\n")
    loaded = load_inventory(land)
    assert sorted(ids(loaded)) == ["e-0", "e-1", "e-2", "e-3"]
    assert loaded.inventory is not None
    assert loaded.inventory.passed_over == ()


def test_a_hidden_folder_is_passed_over_as_one(land: Path) -> None:
    (land / ".old" / "log").mkdir(parents=True)
    (land / ".old" / "log" / "a.yaml").write_text("entries: [")
    inventory = load_inventory(land).inventory
    assert inventory is not None
    assert inventory.passed_over == (".old/",)


def test_the_mark_an_editor_leaves_that_leads_nowhere_is_no_fault(land: Path) -> None:
    (land / ".#log.yaml").symlink_to("somebody@machine.4711")
    inventory = load_inventory(land).inventory
    assert inventory is not None
    assert inventory.passed_over == (".#log.yaml",)


@pytest.mark.parametrize("at", ["log", "weather", "screens", "photos"])
def test_a_linked_folder_below_the_top_is_a_fault(at: str, land: Path) -> None:
    elsewhere = land.parent / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "a.yaml").write_text(ENTRIES)
    (land / at).mkdir()
    (land / at / "older").symlink_to(elsewhere, target_is_directory=True)
    loaded = load_inventory(land)
    assert faults(loaded) == [f"{at}/older:1:1 F217"]
    assert "the folder itself" in loaded.problems[0].accepted


def test_links_that_are_read_leave_nothing_out(land: Path) -> None:
    """A linked log is looked into as any other, and a linked file is the file it leads to."""
    elsewhere = land.parent / "elsewhere"
    elsewhere.mkdir()
    (land.parent / "one.yaml").write_text(ENTRIES)
    (elsewhere / "a.yaml").symlink_to(land.parent / "one.yaml")
    (elsewhere / "b.yaml.txt").write_text(ENTRIES)
    (land / "log").symlink_to(elsewhere, target_is_directory=True)
    assert faults(load_inventory(land)) == ["log/b.yaml.txt:1:1 F214"]
    (elsewhere / "b.yaml.txt").unlink()
    assert ids(load_inventory(land)) == ["sprayed"]


def test_links_in_a_circle_end(land: Path) -> None:
    (land / "log").mkdir()
    (land / "log" / "again").symlink_to(land / "log", target_is_directory=True)
    (land / "log" / "a.yaml").symlink_to(land / "log" / "b.yaml")
    (land / "log" / "b.yaml").symlink_to(land / "log" / "a.yaml")
    assert faults(load_inventory(land)) == [
        "log/a.yaml:1:1 F218", "log/again:1:1 F217", "log/b.yaml:1:1 F218",
    ]  # fmt: skip


@pytest.mark.parametrize("name", ["log.yaml", "log", "log/a.yaml", "log/older", "weather/a.csv"])
def test_a_link_that_leads_nowhere_is_a_fault(name: str, land: Path) -> None:
    (land / name).parent.mkdir(exist_ok=True)
    (land / name).symlink_to("gone")
    assert faults(load_inventory(land)) == [f"{name}:1:1 F218"]


@pytest.mark.parametrize("at", ["log", "log/older", "weather", "seed", "photos/2026"])
def test_a_folder_that_cannot_be_opened_is_a_fault(
    at: str, land: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (land / at).mkdir(parents=True)
    opened = os.scandir

    def scandir(path: object = ".") -> object:
        if Path(str(path)) == land / at:
            raise PermissionError(13, "Permission denied", str(path))
        return opened(path)  # type: ignore[call-overload]  # whatever is handed on

    monkeypatch.setattr(os, "scandir", scandir)
    loaded = load_inventory(land)
    assert faults(loaded) == [f"{at}:1:1 F218"]


@pytest.fixture
def open_land() -> Iterator[Path]:
    """The small property where another account may come."""
    with tempfile.TemporaryDirectory() as work:
        Path(work).chmod(0o755)
        yield Path(shutil.copytree(HERE / "base", Path(work) / "land"))


@pytest.mark.skipif(not hasattr(os, "geteuid"), reason="this system has no such rights")
def test_what_another_account_may_not_open_is_named_all_in_one_run(open_land: Path) -> None:
    """Read by an account that may not, as root may open everything."""
    for name in ("log", "photos"):
        (open_land / name).mkdir()
    (open_land / "log" / "a.yaml").write_text(ENTRIES)
    (open_land / "log.yaml").write_text(ENTRIES.replace("sprayed", "again"))
    shut = ["log", "log.yaml", "photos"]
    for name in shut:
        (open_land / name).chmod(0)
    program = (
        "import os, sys; from pathlib import Path\n"
        "from generator.inventory.load import load_inventory\n"
        "load_inventory(Path(sys.argv[2]))\n"
        f"os.geteuid() or os.setuid({NOBODY})\n"
        "for one in load_inventory(Path(sys.argv[1])).problems: print(one.file, one.code)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program, str(open_land), str(HERE / "base")],
        cwd=CHECKOUT, capture_output=True, text=True, check=False,
    )  # fmt: skip
    for name in shut:
        (open_land / name).chmod(0o700)
    assert done.stderr == ""
    assert done.stdout.splitlines() == [f"{name} F218" for name in shut]


def _socket(path: Path) -> None:
    with socket.socket(socket.AF_UNIX) as one:
        there = Path.cwd()
        os.chdir(path.parent)  # the name of a socket may not be long
        try:
            one.bind(path.name)
        finally:
            os.chdir(there)


NO_FILES: dict[str, Callable[[Path], None]] = {
    "pipe": lambda path: os.mkfifo(path),
    "socket": _socket,
    "folder": lambda path: path.mkdir(),
    "device": lambda path: path.symlink_to("/dev/zero"),
}


@pytest.mark.parametrize("what", NO_FILES)
@pytest.mark.parametrize("name", ["log.yaml", "log/a.yaml", "log.yaml.txt", "property.yaml"])
def test_what_is_no_file_is_refused_without_opening_it(what: str, name: str, land: Path) -> None:
    path = land / name
    path.parent.mkdir(exist_ok=True)
    path.unlink(missing_ok=True)
    NO_FILES[what](path)
    loaded = checked_in_time(land)
    assert loaded == [f"{name}:1:1 F219 this is a {what}"]


@pytest.mark.parametrize("what", ["pipe", "socket", "device"])
def test_a_log_that_is_no_folder_is_refused_and_takes_no_entry(what: str, land: Path) -> None:
    NO_FILES[what](land / "log")
    assert checked_in_time(land) == [f"log:1:1 F219 this is a {what}"]
    done = in_time("record", str(land), "--on", "2026-08-18", "--note", "walked it")
    assert done.returncode == 1
    assert "Nothing was written." in done.stderr


def in_time(*words: str) -> subprocess.CompletedProcess[str]:
    """A command that ends within its time and its memory, or fails."""
    program = (
        "import resource, runpy, sys\n"
        "resource.setrlimit(resource.RLIMIT_AS, (2 * 10**9, 2 * 10**9))\n"
        f"sys.argv = ['handbook', *{words!r}]\n"
        "runpy.run_module('generator', run_name='__main__')\n"
    )
    return subprocess.run(
        [sys.executable, "-c", program],
        cwd=CHECKOUT, capture_output=True, text=True, check=False, timeout=30,
    )  # fmt: skip


def checked_in_time(folder: Path) -> list[str]:
    done = in_time("check", str(folder))
    assert "Traceback" not in done.stderr
    return [one.partition(" - ")[0] for one in done.stderr.splitlines() if one[0] != "E"]


def test_a_pipe_nobody_means_to_be_read_is_left_alone(land: Path) -> None:
    os.mkfifo(land / "notes.txt")
    os.mkfifo(land / ".log.yaml")
    assert checked_in_time(land) == []


@pytest.mark.parametrize("what", NO_FILES)
@pytest.mark.parametrize("ending", ["csv", "csv.gz"])
def test_a_weather_file_that_is_no_file_is_refused(what: str, ending: str, land: Path) -> None:
    (land / "weather").mkdir()
    (land / "weather.yaml").write_text(STATION.replace("csv", ending))
    NO_FILES[what](land / "weather" / f"ridge.{ending}")
    assert checked_in_time(land) == [f"weather.yaml:2:5 F430 the weather file is a {what}"]


def test_a_file_over_the_limit_is_refused_by_its_size(land: Path) -> None:
    """Sparse files: were one read, a hundred gigabytes would not fit into the memory allowed."""
    (land / "weather").mkdir()
    for name in ("log.yaml", "seed.yaml"):
        with (land / name).open("wb") as file:
            file.truncate(100 * 10**9)
    assert checked_in_time(land) == [
        f"{name}:1:1 F001 the file is 100000.0 MB long" for name in ("log.yaml", "seed.yaml")
    ]
    for name in ("log.yaml", "seed.yaml"):
        shutil.copy(HERE / "base" / "stands.yaml", land / name)
    shutil.copy(HERE / "base" / "seed.yaml", land / "seed.yaml")
    (land / "log.yaml").write_text("# " + "a" * (MOST_BYTES - 3) + "\n")
    (land / "weather.yaml").write_text(STATION)
    with (land / "weather" / "ridge.csv").open("wb") as file:
        file.truncate(100 * 10**9)
    assert checked_in_time(land) == ["weather.yaml:2:5 F430 the weather file is 100000.0 MB long"]


def test_a_packed_file_is_bounded_by_what_comes_out_of_it(land: Path) -> None:
    (land / "weather").mkdir()
    (land / "weather.yaml").write_text(STATION)
    # 30 MB that hold 30 GB: members of one packed file, one behind the other
    member = gzip.compress(b"\n" * 10**7)
    (land / "weather" / "ridge.csv").write_bytes(member * 3000)
    (told,) = checked_in_time(land)
    assert told.startswith("weather.yaml:2:5 F430 the file is far too long")


def test_faults_of_all_kinds_are_told_in_one_run(land: Path) -> None:
    (land / "log").mkdir()
    (land / "log" / "a.yaml.txt").write_text(ENTRIES)
    (land / "log" / "older").symlink_to(land.parent, target_is_directory=True)
    os.mkfifo(land / "money.yaml")
    (land / "papers.yaml").symlink_to("gone")
    (land / "stands.yaml").write_text("stands:\n  - {id: oak, nam: Oak}\n")
    assert faults(load_inventory(land)) == [
        "log/a.yaml.txt:1:1 F214",
        "log/older:1:1 F217",
        "money.yaml:1:1 F219",
        "papers.yaml:1:1 F218",
        "stands.yaml:2:15 F201",
    ]


def test_folders_in_folders_without_end_are_no_traceback(land: Path) -> None:
    there = Path.cwd()
    os.chdir(land)
    try:
        for _ in range(1200):
            Path("a").mkdir()
            os.chdir("a")
        Path("log.yaml").write_text(ENTRIES)
        os.chdir(there)
        (told,) = checked_in_time(land)
        assert told.partition(" ")[2].startswith("F214")
    finally:
        os.chdir(there)
        # too deep for what clears away the folders of tests
        subprocess.run(["rm", "-rf", str(land / "a")], check=True)
