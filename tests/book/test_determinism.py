"""The same folder gives the same bytes, whenever, wherever and in whatever language it is built."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.book.sites import CHECKOUT, DEMO

# Read by a child's Python before anything else: every clock is 40 years on.
# What is written in C takes the types of days as they are, before they are moved.
OTHER_DAY = """
import datetime, time

import pandas, pyproj

AHEAD = 40 * 366 * 86400
clock = time.time


class _Same(type):
    def __instancecheck__(cls, thing):
        stands_for = cls.__mro__[1] if cls in (_Date, _DateTime) else None
        return isinstance(thing, stands_for) if stands_for else super().__instancecheck__(thing)


class _Date(datetime.date, metaclass=_Same):
    @classmethod
    def today(cls):
        return cls.fromtimestamp(clock() + AHEAD)


class _DateTime(datetime.datetime, metaclass=_Same):
    @classmethod
    def now(cls, tz=None):
        return cls.fromtimestamp(clock() + AHEAD, tz)

    @classmethod
    def utcnow(cls):
        return cls.now(datetime.timezone.utc).replace(tzinfo=None)

    today = now


def _moved(function):
    return lambda seconds=None: function(clock() + AHEAD if seconds is None else seconds)


datetime.date, datetime.datetime = _Date, _DateTime
time.time = lambda: clock() + AHEAD
time.time_ns = lambda: int(time.time() * 1e9)
time.gmtime, time.localtime = _moved(time.gmtime), _moved(time.localtime)
"""

USUAL = {"TZ": "UTC", "LANG": "C.UTF-8", "LC_ALL": "C.UTF-8", "PYTHONHASHSEED": "0"}
UNUSUAL = {
    "TZ": "Pacific/Kiritimati",
    "LANG": "tr_TR.UTF-8",
    "LC_ALL": "de_DE.UTF-8",
    "LANGUAGE": "de",
    "PYTHONHASHSEED": "4242",
    "COLUMNS": "37",
}


def _child(environment: dict[str, str], first_on_path: Path | None = None) -> dict[str, str]:
    path = os.pathsep.join(str(one) for one in (first_on_path, CHECKOUT) if one is not None)
    kept = {name: value for name, value in os.environ.items() if name in ("PATH", "HOME")}
    return kept | environment | {"PYTHONPATH": path}


def _built(folder: Path, work: Path, environment: dict[str, str]) -> dict[str, bytes]:
    """Every file of every reader's site, by its address, after a build started from `work`."""
    command = [sys.executable, "-m", "generator", "build", os.path.relpath(folder, work)]
    done = subprocess.run(command, cwd=work, env=environment, capture_output=True, check=False)
    assert done.returncode == 0, done.stderr.decode()
    target = folder.parent / f"{folder.name}-handbook"
    return {
        path.relative_to(target).as_posix(): path.read_bytes()
        for path in sorted(target.rglob("*"))
        if path.is_file()
    }


def _copied(folder: Path, names: list[str], modified: float) -> Path:
    """The demo property, its files made in the order of `names`, with the day each was changed."""
    folder.mkdir(parents=True)
    for name in names:
        (folder / name).parent.mkdir(exist_ok=True)
        (folder / name).write_bytes((DEMO / name).read_bytes())
        os.utime(folder / name, (modified, modified))
    return folder


@pytest.fixture(scope="module")
def names() -> list[str]:
    return sorted(path.relative_to(DEMO).as_posix() for path in DEMO.rglob("*") if path.is_file())


@pytest.fixture(scope="module")
def land(tmp_path_factory: pytest.TempPathFactory, names: list[str]) -> Path:
    return _copied(tmp_path_factory.mktemp("usual") / "land", names, 1_700_000_000)


@pytest.fixture(scope="module")
def usual(land: Path) -> dict[str, bytes]:
    return _built(land, land.parent, _child(USUAL))


def _differences(one: dict[str, bytes], other: dict[str, bytes]) -> list[str]:
    assert len(one) > 50
    return sorted(name for name in one.keys() | other.keys() if one.get(name) != other.get(name))


def test_another_day(usual: dict[str, bytes], names: list[str], tmp_path: Path) -> None:
    clock = tmp_path / "clock"
    clock.mkdir()
    (clock / "sitecustomize.py").write_text(OTHER_DAY)
    environment = _child(USUAL, clock)
    told = "import datetime, time; print(datetime.date.today().year, time.localtime().tm_year)"
    years = subprocess.run(
        [sys.executable, "-c", told], env=environment, capture_output=True, check=True
    ).stdout.split()
    assert [int(year) > 2060 for year in years] == [True, True]
    folder = _copied(tmp_path / "land", names, 1_700_000_000)
    assert _differences(usual, _built(folder, tmp_path, environment)) == []


def test_another_language_time_zone_and_hash_seed(
    usual: dict[str, bytes], names: list[str], tmp_path: Path
) -> None:
    folder = _copied(tmp_path / "land", names, 1_700_000_000)
    assert _differences(usual, _built(folder, tmp_path, _child(UNUSUAL))) == []


def test_another_folder_order_of_files_and_day_of_change(
    usual: dict[str, bytes], names: list[str], tmp_path: Path
) -> None:
    folder = _copied(tmp_path / "my land" / "näher & closer", names[::-1], 1_000_000_000)
    work = tmp_path / "elsewhere"
    work.mkdir()
    assert _differences(usual, _built(folder, work, _child(USUAL))) == []


def test_a_second_build_over_the_first(usual: dict[str, bytes], land: Path) -> None:
    assert _differences(usual, _built(land, land.parent, _child(USUAL))) == []


def test_another_property_is_seen(
    usual: dict[str, bytes], names: list[str], tmp_path: Path
) -> None:
    folder = _copied(tmp_path / "land", names, 1_700_000_000)
    screens = folder / "screens.yaml"
    screens.write_text(screens.read_text().replace("width_ft: 24", "width_ft: 25"))
    assert "owner/places/lane.html" in _differences(usual, _built(folder, tmp_path, _child(USUAL)))


# What of the processor the running numpy takes for itself: it is asked, not guessed.
TAKEN = """
from numpy._core._multiarray_umath import __cpu_dispatch__, __cpu_features__
print(*(name for name in __cpu_dispatch__ if __cpu_features__[name]))
"""


def _taken(environment: dict[str, str]) -> list[str]:
    command = [sys.executable, "-W", "error", "-c", TAKEN]
    done = subprocess.run(command, env=environment, capture_output=True, text=True, check=True)
    return done.stdout.split()


@pytest.mark.long
def test_an_older_processor(usual: dict[str, bytes], names: list[str], tmp_path: Path) -> None:
    newer = _taken(_child(USUAL))
    if not newer:
        pytest.skip("this processor has nothing that numpy could do without")
    older = _child(USUAL | {"NPY_DISABLE_CPU_FEATURES": " ".join(newer)})
    assert _taken(older) == []
    folder = _copied(tmp_path / "land", names, 1_700_000_000)
    assert _differences(usual, _built(folder, tmp_path, older)) == []
