"""`handbook undo`: an entry is corrected by another, counts nowhere, and both stay."""

import os
import re
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from generator.cli import main
from generator.inventory.load import load_inventory
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from tests.cli.test_commands import print_of, run
from tests.plan.planned import AS_OF
from tests.properties import SEASON, small_property, write_property

DAY = "2026-08-19"
KILL = "lane/2027/autumn_kill"
ENTRIES = {
    "bought": ["--bought", "sg=10_lb", "--cost", "118"],
    "sprayed": ["--job", KILL, "--used", "brew=4_fl_oz", "--area", "0.1_ac",
                "--set", "sprayed.wind_mph=5"],
    "finished": ["--job", KILL, "--finished"],
    "not doing": ["--job", KILL, "--not-doing", "the sod died by itself"],
    "spent": ["--set", "spent.1.what=fuel", "--set", "spent.1.cost_usd=12"],
    "note": ["--note", "no: it was # calm"],
}  # fmt: skip


@pytest.fixture
def land(tmp_path: Path) -> Path:
    """The small property, with one entry kept by hand."""
    data = small_property()
    data["log"] = {"entries": [{"id": "by-hand", "done_on": "2026-08-18", "note": "walked it"}]}
    return write_property(tmp_path / "land", data)


def record(land: Path, *words: str, later_s: int = 0) -> str:
    """Record something, as if so many seconds had gone by; return the id of the entry."""
    before = {path.name for path in land.glob("log/*")}
    result = run("record", land, "--on", DAY, "--yes", *words)
    assert result.exit_code == 0, result.output
    (new,) = {path.name for path in land.glob("log/*")} - before
    os.utime(land / "log" / new, (1_700_000_000 + later_s,) * 2)
    return new.removesuffix(".yaml")


def undo(land: Path, *words: str, said: str | None = None) -> Result:
    return CliRunner().invoke(main, ["undo", str(land), *words], input=said)


def inventory_of(land: Path) -> Inventory:
    loaded = load_inventory(land)
    assert loaded.problems == ()
    assert loaded.inventory is not None
    return loaded.inventory


def plan_of(land: Path) -> Plan:
    return make_plan(inventory_of(land), SEASON, AS_OF)


def newest(land: Path) -> LogEntry:
    """The entry that was written last of all."""
    last = max((path for path in land.glob("log/*")), key=lambda path: path.stat().st_mtime_ns)
    return next(one for one in inventory_of(land).entries if f"{one.id}.yaml" == last.name)


def told_by(plan: Plan) -> object:
    """What a plan makes of the log: states, tanks, what is there, what was bought and what is due.

    The entries themselves aside, which all stay.
    """
    return (
        {job.id: (job.state, job.had_left) for job in plan.jobs},
        plan.records,
        plan.items,
        plan.buying,
        plan.actives,
        [(line.job_id, line.amount.value) for line in plan.lines],
        [(finding.code, finding.subject, finding.words) for finding in plan.findings],
    )


@pytest.mark.parametrize("what", ENTRIES)
def test_a_folder_counts_an_entry_taken_back_as_if_it_had_never_been(land: Path, what: str) -> None:
    before = plan_of(land)
    identity = record(land, *ENTRIES[what])
    between = print_of(land)
    result = undo(land, "--yes")
    assert result.exit_code == 0, result.output
    assert f"Entry {identity} of {DAY} says: " in result.output
    assert f"Entry {identity} no longer counts." in result.output
    after = print_of(land)
    assert {name: after[name] for name in between} == between
    assert len(after) == len(between) + 1
    correction = newest(land)
    assert (correction.corrects, correction.not_done) == (identity, True)
    assert correction.done_on.isoformat() == DAY
    assert told_by(plan_of(land)) == told_by(before)


def _anywhere(told: object, identity: str) -> str:
    """What a plan tells, without by which entry and in which line of which file it was told."""
    plain = re.sub(r"(line|column)=\d+", "", str(told).replace(identity, ""))
    return re.sub(r"corrects=('[^']*'|None)", "", plain)


@pytest.mark.parametrize("what", ENTRIES)
def test_to_undo_an_undo_brings_the_entry_back(land: Path, what: str) -> None:
    identity = record(land, *ENTRIES[what])
    in_force = told_by(plan_of(land))
    assert undo(land, "--yes").exit_code == 0
    first = newest(land).id
    again = undo(land, "--yes")
    assert again.exit_code == 0, again.output
    assert f"It corrects entry {identity}, which then counts again." in again.output
    assert newest(land).corrects == first
    assert _anywhere(told_by(plan_of(land)), newest(land).id) == _anywhere(in_force, identity)
    assert undo(land, "--yes").exit_code == 0
    assert newest(land).not_done


def test_a_correction_taken_back_puts_what_it_had_replaced_in_force(land: Path) -> None:
    record(land, *ENTRIES["bought"])
    first = newest(land).id
    in_force = _anywhere(plan_of(land).buying, first)
    record(land, "--bought", "sg=40_lb", "--cost", "400", "--corrects", first, later_s=5)
    assert _anywhere(plan_of(land).buying, newest(land).id) != in_force
    assert undo(land, "--yes").exit_code == 0
    bought = newest(land).bought
    assert [(one.item, one.amount.typed, one.amount.typed_unit) for one in bought] == [
        ("sg", 10, "lb")
    ]
    assert _anywhere(plan_of(land).buying, newest(land).id) == in_force


def test_it_says_what_it_takes_back_and_asks(land: Path) -> None:
    identity = record(land, *ENTRIES["bought"])
    before = print_of(land)
    for said in ("n\n", "\n"):
        no = undo(land, said=said)
        assert no.exit_code == 0
        assert f"Entry {identity} of {DAY} says: 10 lb of sg bought for $118." in no.output
        assert "Take it back? Both stay in the log" in no.output
        assert "Nothing was written." in no.output
        assert print_of(land) == before
    nobody = undo(land, said="")
    assert nobody.exit_code == 1
    assert print_of(land) == before
    assert undo(land, said="y\n").exit_code == 0
    assert newest(land).corrects == identity


def test_the_last_is_the_one_written_last_and_not_the_one_of_the_latest_day(land: Path) -> None:
    record(land, *ENTRIES["note"], later_s=5)
    last = record(land, *ENTRIES["bought"], later_s=9)
    record(land, *ENTRIES["spent"])
    assert undo(land, "--yes").exit_code == 0
    assert newest(land).corrects == last


def test_where_it_cannot_be_told_it_is_asked_for(land: Path) -> None:
    nothing = undo(land, "--yes")
    assert nothing.exit_code == 2
    assert "no entry was written by handbook record" in nothing.output
    one, two = record(land, *ENTRIES["note"]), record(land, *ENTRIES["bought"])
    before = print_of(land)
    copied = undo(land, "--yes")
    assert copied.exit_code == 2
    assert f"{one} and {two} have files of the same time" in copied.output or (
        f"{two} and {one} have files of the same time" in copied.output
    )
    assert print_of(land) == before
    assert undo(land, "--yes", "--entry", one).exit_code == 0
    assert newest(land).corrects == one
    taken = undo(land, "--yes", "--entry", one)
    assert taken.exit_code == 2
    assert f"counts no longer: {newest(land).id} corrects it" in taken.output
    unknown = undo(land, "--yes", "--entry", "by-hnad")
    assert unknown.exit_code == 2
    assert "did you mean by-hand?" in unknown.output
    assert undo(land, "--yes", "--entry", "by-hand").exit_code == 0


def test_nothing_is_taken_back_in_a_folder_with_a_fault(land: Path) -> None:
    record(land, *ENTRIES["note"])
    (land / "stands.yaml").write_text("stands: 3\n")
    before = print_of(land)
    result = undo(land, "--yes")
    assert result.exit_code == 1
    assert "Nothing was taken back." in result.output
    assert print_of(land) == before


def test_pages_of_records_and_log_name_both_and_count_none(land: Path, tmp_path: Path) -> None:
    record(land, *ENTRIES["sprayed"])
    assert undo(land, "--yes").exit_code == 0
    out = tmp_path / "out"
    assert run("build", land, "--out", out, "--for", "owner").exit_code == 0
    assert plan_of(land).records == ()
    log = (out / "owner" / "log").glob("*.html")
    assert any("Taken back" in page.read_text() for page in log)
