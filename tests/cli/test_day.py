"""The day of a plan: given, typed, of the system or of the device, one for a run, and told.

SOURCE_DATE_EPOCH is what the reproducible builds project specifies: whole seconds since 1970, UTC.
"""

import datetime
import os
import subprocess
import sys
from pathlib import Path

import pytest

from generator import run_day
from tests.book.sites import CHECKOUT
from tests.cli.test_commands import OTHER_READERS, demo, run, stamp_of

__all__ = ["demo"]

TYPED = "as_of: 2026-08-20\n"
DEVICE = datetime.date(2026, 12, 24)
SYSTEM = "1767225599"  # 2025-12-31 23:59:59 in UTC, by `date -u -d @1767225599`
PLANNING = [["build", "--for", "owner"], ["check", "--strict"], ["explain"]]


@pytest.fixture
def undated(demo: Path) -> Path:
    """The demo property without its day."""
    own = demo / "property.yaml"
    own.write_text(own.read_text(encoding="utf-8").replace(TYPED, ""), encoding="utf-8")
    return demo


@pytest.fixture(autouse=True)
def _device(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(run_day, "_today", lambda: DEVICE)
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)


def told_day(words: list[str], folder: Path) -> str:
    result = run(words[0], folder, *words[1:])
    assert result.exit_code in (0, 1), result.output
    (line,) = [one for one in result.output.splitlines() if one.startswith("As of ")]
    return line


@pytest.mark.parametrize(
    "words", [pytest.param(PLANNING[0], marks=pytest.mark.long), *PLANNING[1:]], ids=" ".join
)
def test_the_day_is_the_first_that_is_said_and_is_told(
    words: list[str], demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    given = [*words, "--as-of", "2027-01-15"]
    own = demo / "property.yaml"
    without = own.read_text(encoding="utf-8").replace(TYPED, "")
    monkeypatch.setenv("SOURCE_DATE_EPOCH", SYSTEM)
    assert told_day(given, demo) == "As of 2027-01-15: the day given by --as-of."
    assert told_day(words, demo) == "As of 2026-08-20: the day typed as as_of: in property.yaml."
    own.write_text(without, encoding="utf-8")
    assert told_day(words, demo) == "As of 2025-12-31: the day given by SOURCE_DATE_EPOCH."
    monkeypatch.delenv("SOURCE_DATE_EPOCH")
    assert told_day(words, demo) == "As of 2026-12-24: the day of this device."


def test_a_list_of_numbers_is_told_its_day_beside_itself(demo: Path) -> None:
    assert run("explain", demo).stderr.startswith("As of 2026-08-20")
    assert "As of" not in run("explain", demo).stdout


def test_the_day_of_the_device_is_one_for_all_readers_and_stands_on_their_pages(
    undated: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[datetime.date] = []

    def next_day() -> datetime.date:
        asked.append(DEVICE + datetime.timedelta(days=len(asked)))
        return asked[-1]

    monkeypatch.setattr(run_day, "_today", next_day)
    assert run("build", undated).exit_code == 0
    assert asked == [DEVICE]
    books = undated.parent / "my land-handbook"
    stamps = {one.name: stamp_of(one / "index.html") for one in books.iterdir() if one.is_dir()}
    assert stamps.keys() == {"owner", *OTHER_READERS}
    assert all(one.startswith("As of Dec 24, 2026.") for one in stamps.values())


def test_a_day_is_the_same_day_whoever_says_it(undated: Path) -> None:
    """By the clock or given: the same bytes."""
    folders = []
    for words in ([], ["--as-of", f"{DEVICE}"]):
        out = undated.parent / f"out-{len(words)}"
        assert run("build", undated, "--for", "contractor", "--out", out, *words).exit_code == 0
        folders.append(out)
    first, second = (
        {path.relative_to(out): path.read_bytes() for path in out.rglob("*") if path.is_file()}
        for out in folders
    )
    assert first == second


@pytest.mark.parametrize(
    "bad", ["", "today", "1.5", "-1", " 1767225599", "1e9", "\u0661", "9" * 12, "9" * 4000]
)
@pytest.mark.parametrize("words", PLANNING, ids=" ".join)
def test_a_bad_day_of_the_system_is_one_sentence(
    words: list[str], bad: str, undated: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", bad)
    result = run(words[0], undated, *words[1:])
    assert result.exit_code == 2
    assert "Set it to one, or do without it." in " ".join(result.stderr.split())
    assert list(undated.parent.iterdir()) == [undated]


def test_days_no_plan_is_made_for_are_refused(
    undated: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A clock that was never set is one of them."""
    monkeypatch.setattr(run_day, "_today", lambda: datetime.date(1970, 1, 1))
    for words in (["explain"], ["explain", "--as-of", "1999-12-31"]):
        result = run(words[0], undated, *words[1:])
        assert result.exit_code == 2
        assert "It takes a day from 2000-01-01 to 2100-12-31" in " ".join(result.stderr.split())
    own = undated / "property.yaml"
    own.write_text(own.read_text(encoding="utf-8") + "as_of: 2101-01-01\n", encoding="utf-8")
    assert run("explain", undated).exit_code == 1
    assert run("explain", undated, "--as-of", "2000-01-01").exit_code == 0


def test_a_plain_check_takes_no_day(demo: Path) -> None:
    result = run("check", demo, "--as-of", "2027-01-15")
    assert result.exit_code == 2
    assert "--as-of goes with --strict" in result.stderr


def test_a_plain_check_asks_no_clock(undated: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "nonsense")
    assert run("check", undated).exit_code == 0


@pytest.mark.parametrize(
    ("zone", "day"), [("Pacific/Kiritimati", "2025-12-31"), ("America/Chicago", "2025-12-31")]
)
def test_the_day_of_the_system_is_one_in_utc_everywhere(zone: str, day: str, undated: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "generator", "explain", str(undated)],
        cwd=CHECKOUT, capture_output=True, text=True, check=True,
        env=os.environ | {"SOURCE_DATE_EPOCH": SYSTEM, "TZ": zone},
    )  # fmt: skip
    assert done.stderr.startswith(f"As of {day}: the day given by SOURCE_DATE_EPOCH.")


def test_without_any_day_the_command_takes_the_device_s(undated: Path) -> None:
    """The real clock, once: the day it was before or after the command ran."""
    environment = {one: value for one, value in os.environ.items() if one != "SOURCE_DATE_EPOCH"}
    before = datetime.date.today()
    done = subprocess.run(
        [sys.executable, "-m", "generator", "explain", str(undated)],
        cwd=CHECKOUT, capture_output=True, text=True, check=True, env=environment,
    )  # fmt: skip
    told = {f"As of {one}: the day of this device." for one in (before, datetime.date.today())}
    assert done.stderr.splitlines()[0] in told


def test_the_day_may_be_month_day_year_where_the_folder_says_so(undated: Path) -> None:
    result = run("explain", undated, "--as-of", "3/4/2027")
    assert result.exit_code == 2
    assert "Write 2027-03-04." in result.stderr
    path = undated / "property.yaml"
    path.write_text(path.read_text(encoding="utf-8") + "dates: us\n", encoding="utf-8")
    assert (
        "As of 2027-03-04: the day given by --as-of."
        in run("explain", undated, "--as-of", "3/4/2027").stderr
    )
    assert run("explain", undated, "--as-of", "4/31/2027").exit_code == 2


def test_a_day_after_which_a_book_is_old_is_told_once_it_is_over(
    demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(demo)
    own = demo / "property.yaml"
    own.write_text(
        own.read_text(encoding="utf-8").replace("old_after: 2027-07-31", "old_after: 2026-11-30"),
        encoding="utf-8",
    )
    assert run("explain", "--as-of", "2026-11-30").stderr.count("\n") == 1
    assert run("explain", "--as-of", "2026-12-01").stderr.splitlines()[1] == (
        "old_after: 2026-11-30 in property.yaml is over, so every page says that it is old. "
        "Type a later day there, or take the line out."
    )
    # past the season that is said instead, and what is next
    said = run("explain", "--as-of", "2027-09-01").stderr
    assert "old_after" not in said
    assert "type season: 2028" in said
