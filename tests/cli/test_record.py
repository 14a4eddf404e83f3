"""`handbook record`: one new file in the log, whole or not at all, and nothing else is touched."""

import datetime
import os
import random
import signal
import subprocess
import sys
import tempfile
import threading
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from generator.inventory.load import load_inventory
from generator.inventory.log import LogEntry
from generator.inventory.write import UNFINISHED, write_new_file
from tests.book.sites import CHECKOUT
from tests.cli.test_commands import exit_code, print_of, run
from tests.properties import small_property, write_property

KILL = "lane/2027/autumn_kill"


@pytest.fixture
def land(tmp_path: Path) -> Path:
    """The small property with one entry kept by hand."""
    data: Any = small_property()
    data["log"] = {"entries": [{"id": "by-hand", "done_on": "2026-08-18", "note": "walked it"}]}
    return write_property(tmp_path / "land", data)


def entries_of(folder: Path) -> dict[str, LogEntry]:
    loaded = load_inventory(folder)
    assert loaded.problems == ()
    assert loaded.inventory is not None
    return {one.id: one for one in loaded.inventory.entries}


def test_an_entry_is_one_new_file_that_reads_as_it_was_typed(land: Path) -> None:
    before = print_of(land)
    result = run(
        "record", land, "--on", "2026-10-12", "--job", KILL, "--finished", "--answer", "yes",
        "--area", "0.5_ac", "--by", "the owner", "--recorded-on", "2026-10-13",
        "--used", "brew=1_pt", "--bought", "brew=2_gal", "--cost", "82.50",
        "--set", "sprayed.wind_mph=6", "--set", "sprayed.temperature_c=10",
        "--set", "sprayed.lot_number=0042", "--set", "sprayed.spot=no",
        "--set", "spent.1.what=fuel: two cans", "--set", "spent.1.cost_usd=12",
        "--set", "spent.2.what=gloves", "--set", "spent.2.cost_usd=7.5",
        "--note", "no: it was # calm",
    )  # fmt: skip
    assert result.exit_code == 0, result.output
    path, told = result.output.splitlines()
    assert path == str(land / "log" / "2026-10-12-lane-27-autumn-kill.yaml")
    assert "Lane screen, is finished, answered yes" in told
    assert "1 pt of brew used; 2 gal of brew bought for $82.50" in told
    after = print_of(land)
    assert after.keys() - before.keys() == {"log", "log/2026-10-12-lane-27-autumn-kill.yaml"}
    assert {name: after[name] for name in before} == before

    entry = entries_of(land)["2026-10-12-lane-27-autumn-kill"]
    assert entry.done_on == datetime.date(2026, 10, 12)
    assert entry.recorded_on == datetime.date(2026, 10, 13)
    assert entry.job is not None
    assert (entry.job.planting, entry.job.step) == ("lane-27", "autumn_kill")
    assert (entry.job.finished, entry.job.answer) == (True, "yes")
    assert entry.job.area_ac is not None
    assert entry.job.area_ac.value == 0.5
    assert [(one.item, one.amount.value, one.amount.unit) for one in entry.used] == [
        ("brew", 16, "fl_oz")
    ]
    assert entry.bought[0].cost_usd is not None
    assert entry.bought[0].cost_usd.value == 82.5
    assert entry.sprayed is not None
    assert entry.sprayed.temperature_f is not None
    assert entry.sprayed.temperature_f.value == 50
    assert (entry.sprayed.lot_number, entry.sprayed.spot) == ("0042", False)
    assert [one.what for one in entry.spent] == ["fuel: two cans", "gloves"]
    assert entry.note == "no: it was # calm"
    assert entries_of(land).keys() >= {"by-hand"}


def test_a_job_that_will_not_be_done_is_one_line(land: Path) -> None:
    why = "the sod died by itself"
    result = run("record", land, "--on", "2026-10-12", "--job", KILL, "--not-doing", why)
    assert result.exit_code == 0, result.output
    assert "Kill the sod in fall, Lane screen, will not be done" in result.output
    (entry,) = (one for one in entries_of(land).values() if one.not_doing)
    assert entry.job is None
    (left_out,) = entry.not_doing
    assert (left_out.planting, left_out.step, left_out.why) == ("lane-27", "autumn_kill", why)
    for words in (["--finished"], ["--area", "0.5_ac"]):
        again = run("record", land, "--on", "2026-10-12", "--job", KILL, "--not-doing", why, *words)
        assert again.exit_code == 2
        assert "no --area, --answer or --finished" in again.output
    nothing = run("record", land, "--on", "2026-10-12", "--not-doing", why)
    assert nothing.exit_code == 2


def test_an_entry_later_than_the_typed_day_of_the_plan_is_said_to_be(land: Path) -> None:
    late = run("record", land, "--on", "2026-08-21", "--note", "rain")
    assert late.exit_code == 0
    said = late.stdout.splitlines()[-1]
    assert "later than as_of: 2026-08-20 in property.yaml" in said
    assert "Type as_of: 2026-08-21 or a later day there, leave the line out" in said
    assert "--as-of 2026-08-21" in said
    in_time = run("record", land, "--on", "2026-08-20", "--note", "rain")
    assert "as_of" not in in_time.stdout
    own = land / "property.yaml"
    own.write_text(own.read_text().replace("as_of: '2026-08-20'\n", ""), encoding="utf-8")
    assert "as_of" not in own.read_text()
    assert "as_of" not in run("record", land, "--on", "2027-08-21", "--note", "sun").stdout


def test_the_same_twice_is_two_entries(land: Path) -> None:
    words = ["record", land, "--on", "2026-10-12", "--planting", "lane-27", "--step", "autumn_kill"]
    assert [exit_code(*words) for _ in range(3)] == [0, 0, 0]
    names = [path.name for path in sorted((land / "log").iterdir())]
    first = "2026-10-12-lane-27-autumn-kill"
    assert names == [f"{first}-2.yaml", f"{first}-3.yaml", f"{first}.yaml"]
    assert len(entries_of(land)) == 4


def test_a_correction_leaves_what_it_corrects(land: Path) -> None:
    assert exit_code("record", land, "--on", "2026-08-19", "--corrects", "by-hand") == 0
    before = print_of(land)
    again = run("record", land, "--on", "2026-08-20", "--corrects", "by-hand")
    assert again.exit_code == 1
    assert "is corrected twice" in again.stderr
    assert print_of(land) == before


BOUGHT = ["--bought", "sg=10_lb", "--cost", "118"]
CALM = ["--set", "sprayed.wind_mph=5"]


@pytest.mark.parametrize(
    ("before", "words", "code"),
    [
        # 12 fl oz are counted
        ([], ["--job", KILL, "--used", "brew=13_fl_oz", *CALM], "C370"),
        ([BOUGHT], BOUGHT, "C371"),
        ([["--job", KILL, "--finished"]], ["--job", KILL, "--finished"], "C371"),
        ([], ["--job", "lane/2027/bare_ground", "--on", "2025-10-12"], "C372"),
        ([], ["--job", "lane/2027/look_again", "--answer", "no", "--on", "2026-09-02"], "C373"),
        ([], ["--used", "brew=2_fl_oz", "--set", "sprayed.location=yard"], "C374"),
        (
            [],
            ["--used", "brew=2_fl_oz", "--set", "sprayed.location=yard",
             "--set", "sprayed.wind_mph=14"],
            "C375",
        ),
    ],
)  # fmt: skip
def test_what_can_hardly_be_is_asked_and_written_only_on_yes(
    land: Path, before: list[list[str]], words: list[str], code: str
) -> None:
    on = [] if "--on" in words else ["--on", "2026-10-12"]
    for one in before:
        assert exit_code("record", land, "--on", "2026-10-12", *one) == 0
    found = print_of(land)
    asked = run("record", land, *on, *words)
    assert asked.exit_code == 1
    assert asked.stdout == ""
    (question,) = [one for one in asked.stderr.splitlines() if one.startswith("asked ")]
    assert question.startswith(f"asked {code} log/")
    assert "confirms: [" in question
    told = " ".join(asked.stderr.split())
    assert "Nothing was written. The files have no fault" in told
    assert "--yes" in told
    assert print_of(land) == found
    written = run("record", land, *on, *words, "--yes")
    assert written.exit_code == 0, written.output
    assert question in written.stderr
    path, _ = written.stdout.splitlines()
    assert print_of(land).keys() - found.keys() >= {str(Path(path).relative_to(land))}


def test_yes_writes_no_fault(land: Path) -> None:
    before = print_of(land)
    result = run("record", land, "--on", "2026-10-12", "--used", "brew=32_floz", "--yes")
    assert result.exit_code == 1
    assert "floz" in result.stderr
    assert print_of(land) == before


def test_what_was_asked_before_is_not_asked_again(land: Path) -> None:
    for one in (BOUGHT, [*BOUGHT, "--yes"]):
        assert exit_code("record", land, "--on", "2026-10-12", *one) == 0
    first = "2026-10-12-bought"
    other = run("record", land, "--on", "2026-10-13", "--note", "rain")
    assert (other.exit_code, other.stderr) == (0, "")
    settled = run(
        "record", land, "--on", "2026-10-14",
        "--set", f"confirms={first}", "--set", f"confirms={first}-2",
    )  # fmt: skip
    assert settled.exit_code == 0, settled.output
    assert f"{first} and {first}-2 confirmed as right" in settled.output.lower()
    entry = entries_of(land)["2026-10-14-confirms"]
    assert entry.confirms == (first, f"{first}-2")


def test_an_earlier_use_that_leaves_too_little_for_a_later_one_is_asked_about(land: Path) -> None:
    yard = ["--set", "sprayed.location=yard", *CALM]
    late = run("record", land, "--on", "2026-10-12", "--used", "brew=10_fl_oz", *yard)
    assert late.exit_code == 0, late.output
    early = run("record", land, "--on", "2026-10-01", "--used", "brew=9_fl_oz", *yard)
    assert early.exit_code == 1
    assert "asked C370 log/2026-10-12-used-sprayed" in early.stderr


def test_a_correction_that_settles_what_is_asked_is_written_at_once(land: Path) -> None:
    words = ["--on", "2026-10-12", "--used", "brew=40_fl_oz", "--set", "sprayed.location=yard"]
    assert exit_code("record", land, *words, *CALM, "--yes") == 0
    words[3] = "brew=4_fl_oz"
    cure = run("record", land, *words, *CALM, "--corrects", "2026-10-12-used-sprayed")
    assert (cure.exit_code, cure.stderr) == (0, "")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--used", "brew=32_floz"], "floz"),
        (["--used", "brew=two_gal"], "not a plain number"),
        (["--used", "brw=32_fl_oz"], "did you mean brew?"),
        (["--set", "sprayed.wnd_mph=6"], "wnd_mph"),
        (["--set", "sprayed.started_at=half past"], "no time of day"),
        (["--set", "mowed.cut_height_in=8", "--job", KILL], "mowed"),
        (["--planting", "lane-27", "--step", "autumn_kil"], "autumn_kil"),
        (["--recorded-on", "2026-10-01", "--note", "rain"], "comes before"),
        (["--recorded-on", "Oct 13, 2026", "--note", "rain"], "write 2026-10-13"),
        (["--set", "sprayed.humidity_pct=140"], "140"),
        (["--note", "..."], "still stands here"),
    ],
)
def test_an_entry_with_a_fault_is_not_written(land: Path, words: list[str], said: str) -> None:
    before = print_of(land)
    result = run("record", land, "--on", "2026-10-12", *words)
    assert result.exit_code == 1
    assert said in result.stderr
    assert "Nothing was written." in result.stderr
    assert print_of(land) == before


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--job", "lane/2027/autumn"], "lane/2027/autumn_kill"),
        (["--job", "lane/2027/autum_kill"], "did you mean lane/2027/autumn_kill?"),
        (["--job", "lnae/2027/autumn_kill"], "did you mean lane/2027/autumn_kill?"),
        (["--job", "lane/2026/autumn_kill"], "did you mean lane/2027/autumn_kill?"),
        (["--job", "lane/2027/first_summer"], "did you mean lane/2027/first_summer_mowing?"),
        (["--job", "zzz/2027/autumn_kill"], 'there is no place "zzz"; lane'),
        (["--job", "lane/2027/zzz"], "on that place: lane/2027/autumn_kill"),
        (["--job", "lane"], "place/season/step"),
        (["--job", KILL, "--step", "autumn_kill"], "already"),
        (["--finished"], "needs --job"),
        (["--planting", "lane-27"], "needs --job"),
        (["--area", "1_ac"], "needs --job"),
        (["--used", "brew"], "item=amount_unit"),
        (["--cost", "5"], "goes with --bought"),
        (["--bought", "brew=1_gal", "--bought", "sg=1_lb", "--cost", "5"], "once for each"),
        (["--set", "sprayed"], "name=value"),
        (["--set", "sprayed.nozzle=a", "--set", "sprayed.nozzle=b"], "stands twice"),
        (["--set", "spent.2.what=fuel"], "counted from 1"),
        (["--set", "done_on=2026-01-01"], "option of its own"),
        (["--set", "done_on.day=1"], "no value can stand there"),
    ],
)
def test_what_cannot_be_meant_is_refused(land: Path, words: list[str], said: str) -> None:
    before = print_of(land)
    result = run("record", land, "--on", "2026-10-12", *words)
    assert result.exit_code == 2
    assert said in " ".join(result.stderr.split())
    assert print_of(land) == before


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--on", "8/19/2026", "--note", "x"],
         '--on of this entry F212 "8/19/2026" is not a date - write 2026-08-19; '
         "or dates: us in property.yaml, if your days are month/day/year"),
        (["--on", "2026-10-12", "--recorded-on", "2026-13-01", "--note", "x"],
         '--recorded-on of this entry F212 "2026-13-01" is no day'),
        (["--on", "2026-10-12", "--used", "brew=32_floz"], "amount_floz of this entry F205 "),
        (["--on", "2026-10-12", "--job", KILL, "--set", "mowed.cut_height_in=8"],
         "of this entry F390 mowed:"),
    ],
)  # fmt: skip
def test_a_fault_names_what_was_typed_and_no_file_that_is_not_there(
    land: Path, words: list[str], said: str
) -> None:
    result = run("record", land, *words)
    assert result.exit_code == 1
    assert said in result.stderr
    assert ".yaml:" not in result.stderr
    assert list(land.glob("log/*")) == []


def test_a_fault_of_the_folder_s_own_files_keeps_its_place(land: Path) -> None:
    (land / "stands.yaml").write_text("stands:\n  - {name: Oak}\n", encoding="utf-8")
    result = run("record", land, "--on", "2026-10-12", "--note", "x")
    assert result.stderr.startswith("stands.yaml:2:")


def test_a_folder_with_a_fault_takes_no_entry(land: Path) -> None:
    (land / "stands.yaml").write_text("stands:\n  - {name: Oak}\n", encoding="utf-8")
    result = run("record", land, "--on", "2026-10-12")
    assert result.exit_code == 1
    assert "stands.yaml:2" in result.stderr
    assert not (land / "log").exists()


def test_a_name_that_is_taken_stays_whose_it_is(land: Path) -> None:
    taken = land / "log" / "walk.yaml"
    write_new_file(taken, b"entries: []\n")
    with pytest.raises(FileExistsError):
        write_new_file(taken, b"entries:\n")
    assert taken.read_bytes() == b"entries: []\n"
    assert [one.name for one in taken.parent.iterdir()] == ["walk.yaml"]


def test_a_disk_without_second_names_takes_a_file_and_overwrites_none(
    land: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(*_names: object) -> None:
        raise OSError("no second names here")

    monkeypatch.setattr(os, "link", refused)
    write_new_file(land / "log" / "walk.yaml", b"entries: []\n")
    with pytest.raises(FileExistsError):
        write_new_file(land / "log" / "walk.yaml", b"entries:\n")
    assert (land / "log" / "walk.yaml").read_bytes() == b"entries: []\n"
    assert len(list((land / "log").iterdir())) == 1


def test_what_a_killed_writer_left_is_never_read_and_goes_with_the_next_entry(land: Path) -> None:
    left = land / "log" / f".2026-10-01-note.yaml.77{UNFINISHED}"
    left.parent.mkdir()
    left.write_text("entries:\n- id: 2026-10-01", encoding="utf-8")
    assert entries_of(land).keys() == {"by-hand"}
    assert exit_code("record", land, "--on", "2026-10-12", "--note", "rain") == 0
    assert [path.name for path in (land / "log").iterdir()] == ["2026-10-12-note.yaml"]


def begun(folder: Path, *words: str) -> subprocess.Popen[bytes]:
    command = [sys.executable, "-m", "generator", "record", str(folder), *words]
    quiet = subprocess.DEVNULL
    return subprocess.Popen(command, cwd=CHECKOUT, stdout=quiet, stderr=quiet)


def test_entries_written_at_once_all_survive(land: Path) -> None:
    at_once = [begun(land, "--on", "2026-10-12", "--note", f"load {n}") for n in range(4)]
    assert [one.wait(timeout=60) for one in at_once] == [0] * 4
    notes = {one.note for one in entries_of(land).values()}
    assert notes == {"walked it", *(f"load {n}" for n in range(4))}


@given(st.lists(st.sampled_from("abcdef"), min_size=2, max_size=12))
def test_of_writers_at_once_each_name_is_one_s_and_whole(names: list[str]) -> None:
    """Threads that keep nobody waiting: of those that want one name, one gets it."""
    with tempfile.TemporaryDirectory() as work:
        folder = Path(work) / "log"
        folder.mkdir()
        started = threading.Barrier(len(names))

        def write(number: int) -> bool:
            started.wait()
            try:
                write_new_file(folder / f"{names[number]}.yaml", content_of(number))
            except FileExistsError:
                return False
            return True

        with ThreadPoolExecutor(len(names)) as writers:
            won = [n for n, one in enumerate(writers.map(write, range(len(names)))) if one]
        assert sorted(names[n] for n in won) == sorted(set(names))
        assert {path.name for path in folder.iterdir()} == {f"{one}.yaml" for one in names}
        for number in won:
            assert (folder / f"{names[number]}.yaml").read_bytes() == content_of(number)


def content_of(number: int) -> bytes:
    """The file of one writer, like no other's."""
    return f"entries: [] # {number}\n".encode() * 500


def test_killed_while_it_writes_a_file_is_there_whole_or_not_at_all(tmp_path: Path) -> None:
    """The writer alone, killed at a few dozen moments of its work."""
    content = yaml.safe_dump({"entries": [{"id": "a", "note": "word " * 20000}]}).encode()
    code = (
        "import sys, pathlib; from generator.inventory.write import write_new_file\n"
        "content = sys.stdin.buffer.read(); print('ready', flush=True)\n"
        "[write_new_file(pathlib.Path(sys.argv[1]) / f'{n}.yaml', content) for n in range(10**6)]"
    )
    chance = random.Random(7)
    for turn in range(8):
        folder = tmp_path / str(turn)
        with subprocess.Popen(
            [sys.executable, "-c", code, str(folder)],
            cwd=CHECKOUT, stdin=subprocess.PIPE, stdout=subprocess.PIPE,
        ) as one:  # fmt: skip
            assert one.stdin is not None
            assert one.stdout is not None
            one.stdin.write(content)
            one.stdin.close()
            one.stdout.readline()
            time.sleep(chance.uniform(0.005, 0.06))
            one.send_signal(signal.SIGKILL)
        named = [path for path in folder.glob("*") if not path.name.startswith(".")]
        assert all(path.read_bytes() == content for path in named)
        assert sorted(path.name for path in named) == sorted(f"{n}.yaml" for n in range(len(named)))


@pytest.mark.long
def test_killed_at_any_moment_nothing_is_lost_and_no_half_file_is_read(land: Path) -> None:
    chance = random.Random(11)
    # The same load on the same day each time, which is asked about.
    words = ("--on", "2026-10-12", "--job", KILL, "--used", "brew=4_fl_oz", "--yes")
    whole = begun(land, *words)
    started = time.monotonic()
    assert whole.wait(timeout=60) == 0
    takes = time.monotonic() - started
    kept = set(entries_of(land))
    before = print_of(land)
    for _ in range(40):
        one = begun(land, *words)
        time.sleep(chance.uniform(0.3, 1.1) * takes)
        one.send_signal(signal.SIGKILL)
        one.wait(timeout=60)
        now = entries_of(land)
        assert kept <= set(now)
        assert len(now) <= len(kept) + 1
        kept = set(now)
        assert all(print_of(land)[name] == found for name, found in before.items())
    assert all(one.used or one.id == "by-hand" for one in entries_of(land).values())


def test_a_step_of_an_upkeep_is_named_as_its_sheet_names_it(tmp_path: Path) -> None:
    data: Any = small_property()
    stand = {"id": "oak", "name": "Oak", "upkeep": "stand_inspection"}
    data["stands"] = {"stands": [stand]}
    land = write_property(tmp_path / "land", data)
    result = run(
        "record", land, "--on", "2027-07-05", "--job", "oak/2027/stand_check",
        "--set", "inspected.what=oak", "--set", "inspected.sound=true",
    )  # fmt: skip
    assert result.exit_code == 0, result.output
    (entry,) = entries_of(land).values()
    assert entry.inspected is not None
    assert (entry.inspected.what, entry.inspected.sound) == (("oak",), True)
    assert [(one.at, one.step, one.season) for one in entry.upkeep] == [
        ("oak", "stand_check", 2027)
    ]
    assert "Inspect stand, steps and harness, Oak, is done" in result.output
    assert entry.job is None
    wrong = run("record", land, "--on", "2027-07-05", "--job", "oak/2027/rake_walk")
    assert wrong.exit_code == 2
    assert "oak/2027/stand_check" in wrong.output
    area = run(
        "record", land, "--on", "2027-07-05", "--job", "oak/2027/stand_check", "--area", "1_ac"
    )
    assert area.exit_code == 2
    assert "no --area" in area.output
    both = run(
        "record", land, "--on", "2027-07-05", "--job", "oak/2027/stand_check", "--step", "rake_walk"
    )
    assert both.exit_code == 2
    assert "leave --planting and --step out" in both.output
    assert len(entries_of(land)) == 1


def test_a_job_of_every_season_counts_for_the_one_its_sheet_names(tmp_path: Path) -> None:
    data: Any = small_property()
    data["screens"]["screens"][0]["plantings"][0]["upkeep"] = "established_screen_upkeep"
    land = write_property(tmp_path / "land", data)
    job = "lane/2030/upkeep_summer_count"
    late = run("record", land, "--on", "2030-09-03", "--job", job, "--finished")
    assert late.exit_code == 0, late.output
    (entry,) = entries_of(land).values()
    assert entry.job is not None
    assert (entry.job.step, entry.job.season) == ("upkeep_summer_count", 2030)
    far = run("record", land, "--on", "2034-09-03", "--job", job, "--finished")
    assert far.exit_code == 1
    assert "not near season 2030" in far.output
    assert len(entries_of(land)) == 1


def test_what_is_typed_as_people_write_it_is_written_and_read_back(land: Path) -> None:
    path = land / "property.yaml"
    path.write_text(path.read_text(encoding="utf-8") + "dates: us\n", encoding="utf-8")
    result = run(
        "record", land, "--on", "10/12/2026", "--recorded-on", "10/13/2026", "--job", KILL,
        "--area", "1/2_ac", "--used", "brew=3 1/2_fl_oz", "--bought", "brew=.75_gal",
        "--cost", "$82.50", "--set", "sprayed.humidity_pct=55%", "--set", "sprayed.spot=no",
        "--set", "sprayed.copy_given_on=10/20/2026", "--set", "sprayed.lot_number=42", "--yes",
    )  # fmt: skip
    assert result.exit_code == 0, result.output
    path.write_text(path.read_text(encoding="utf-8").replace("dates: us\n", ""), encoding="utf-8")
    entry = entries_of(land)["2026-10-12-lane-27-autumn-kill"]  # its days hold without that word
    assert entry.done_on == datetime.date(2026, 10, 12)
    assert entry.recorded_on == datetime.date(2026, 10, 13)
    assert entry.job is not None
    assert entry.job.area_ac is not None
    assert entry.job.area_ac.value == 0.5
    assert [one.amount.typed for one in (*entry.used, *entry.bought)] == [3.5, 0.75]
    assert entry.bought[0].cost_usd is not None
    assert entry.bought[0].cost_usd.value == 82.5
    assert entry.sprayed is not None
    assert entry.sprayed.copy_given_on == datetime.date(2026, 10, 20)
    assert entry.sprayed.humidity_fraction is not None
    assert entry.sprayed.humidity_fraction.value == pytest.approx(0.55)
    assert (entry.sprayed.spot, entry.sprayed.lot_number) == (False, "42")


def test_month_day_year_is_refused_where_the_folder_does_not_say_so(land: Path) -> None:
    before = print_of(land)
    result = run("record", land, "--on", "10/12/2026", "--note", "walked it")
    assert result.exit_code == 1
    assert "dates: us in property.yaml" in result.stderr
    assert print_of(land) == before


def test_a_marker_seen_names_the_jobs_it_moves_and_undo_moves_them_back(land: Path) -> None:
    seen = run("record", land, "--on", "2027-03-21", "--seen", "weed_green_up")
    assert seen.exit_code == 0, seen.output
    path, told, *moved = seen.output.splitlines()
    assert path == str(land / "log" / "2027-03-21-markers-seen.yaml")
    assert told.startswith("Weed green-up was seen on 2027-03-21.")
    # typed: its late year is April 8, and this job opens on that day
    words = "Spring weed kill, before the grass is up, Lane screen"
    assert moved == [
        f"Moved: {words}, Mar 21 to Apr 29, 2027; it was Apr 8 to 29, 2027.",
    ]
    (entry,) = (one for one in entries_of(land).values() if one.markers_seen)
    assert entry.markers_seen == ("weed_green_up",)
    undone = run("undo", land, "--yes")
    assert undone.exit_code == 0, undone.output
    assert f"Moved: {words}, Apr 8 to 29, 2027; it was Mar 21 to Apr 29, 2027." in undone.output
    # the same day once more moves no job that another entry moved already
    run("record", land, "--on", "2027-03-21", "--seen", "weed_green_up")
    again = run("record", land, "--on", "2027-03-21", "--seen", "weed_green_up")
    assert "No job of its season moved." in again.output


def test_a_marker_seen_in_the_wrong_part_of_a_year_is_asked_about_first(land: Path) -> None:
    asked = run("record", land, "--on", "2026-10-10", "--seen", "weed_green_up")
    assert asked.exit_code == 1
    assert "Weed green-up is logged as seen on Oct 10, 2026." in " ".join(asked.output.split())
    assert not (land / "log").exists() or not list((land / "log").glob("*.yaml"))
    assert (
        run("record", land, "--on", "2026-10-10", "--seen", "weed_green_up", "--yes").exit_code == 0
    )
