"""What stands, walks and water holes ask for in every season: jobs, states, log, findings."""

import datetime
from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.inventory.load import load_inventory
from generator.inventory.log import LogEntry
from generator.plan.build.season_plan import make_plan
from generator.plan.log.entries import entries_in_force
from generator.plan.log.told import sprayings_of
from generator.plan.log.upkeep import upkeep_jobs
from generator.plan.model.job import UpkeepJob
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import inventory_of
from tests.plan.test_states import DEMO, days
from tests.properties import SEASON, Data, small_property

DAY = datetime.date
CHECK = f"oak/{SEASON}/stand_check"
REFILL = f"hole/{SEASON}/summer_refill"


def kept_up() -> Data:
    """The small property with a stand, a walk to it and a water hole, each with its upkeep."""
    data = small_property()
    data["stands"] = {
        "stands": [
            {"id": "oak", "name": "Oak", "upkeep": "stand_inspection",
             "straps_checked_on": "2026-08-01"}
        ]
    }  # fmt: skip
    walk = {"id": "walk", "name": "Walk", "serves": ["oak"], "upkeep": "walk_in_work"}
    data["routes"] = {"routes": [walk]}
    hole = {"id": "hole", "name": "Hole", "shape": "round", "top_ft": 16, "bottom_ft": 4,
            "depth_ft": 3, "upkeep": "water_hole_upkeep",
            "wet_ground_asked_on": "2026-05-01"}  # fmt: skip
    data["ground"] = {"water_holes": [hole]}
    return data


def plan_on(data: Data, day: str) -> Plan:
    as_of = DAY.fromisoformat(day)
    return make_plan(inventory_of(data), SEASON, as_of)


def job_on(data: Data, day: str, job_id: str = CHECK) -> UpkeepJob:
    return next(one for one in plan_on(data, day).upkeep if one.id == job_id)


@pytest.mark.parametrize(
    ("day", "kind", "said"),
    # the check of a stand is open from Jul 1 to Aug 20
    [
        ("2027-06-30", "waiting", "2027-07-01"),
        ("2027-07-01", "open", "2027-08-20"),
        ("2027-08-20", "open", "2027-08-20"),
        ("2027-08-21", "missed", "2027-08-20"),
    ],
)
def test_a_job_waits_is_open_and_is_missed_by_its_dates(day: str, kind: str, said: str) -> None:
    state = job_on(kept_up(), day).state
    assert (state.kind, str(state.day)) == (kind, said)


def logged(day: str) -> Data:
    data = kept_up()
    done = {"id": "look", "done_on": day, "upkeep": [{"at": "oak", "step": "stand_check"}]}
    data["log"] = {"entries": [done]}
    return data


def test_an_entry_of_the_season_finishes_its_job_and_no_other() -> None:
    data = logged("2027-07-05")
    assert job_on(data, "2027-07-04").state.kind == "open"
    state = job_on(data, "2027-08-25").state
    assert (state.kind, str(state.day)) == ("done", "2027-07-05")
    kinds = {one.state.kind for one in plan_on(data, "2027-07-10").upkeep if one.id != CHECK}
    assert "done" not in kinds
    # a look of the summer before is of the season before
    assert job_on(logged("2026-07-05"), "2027-07-10").state.kind == "open"


def test_work_that_was_late_counts_for_the_season_it_names() -> None:
    rake = f"walk/{SEASON - 1}/rake_walk"
    data = kept_up()
    done = {"at": "walk", "step": "rake_walk"}
    data["log"] = {"entries": [{"id": "late", "done_on": "2026-09-02", "upkeep": [done]}]}
    # without a season it is of the day's, and the raking of next August would count as done
    assert job_on(data, "2026-09-03", f"walk/{SEASON}/rake_walk").state.kind == "done"
    done["season"] = SEASON - 1
    assert job_on(data, "2026-09-03", f"walk/{SEASON}/rake_walk").state.kind == "waiting"
    # early for the season to come
    early = {"at": "walk", "step": "rake_walk", "season": SEASON}
    data["log"] = {"entries": [{"id": "early", "done_on": "2026-08-16", "upkeep": [early]}]}
    assert job_on(data, "2026-08-20", f"walk/{SEASON}/rake_walk").state.kind == "done"
    assert job_on(data, "2026-08-20", rake).state.kind == "open"


def test_what_is_done_only_where_it_is_asked_for() -> None:
    data = kept_up()
    assert REFILL not in {one.id for one in plan_on(data, "2027-07-10").upkeep}
    data["ground"]["water_holes"][0]["asked_for"] = ["summer_refill"]
    assert job_on(data, "2027-07-10", REFILL).state.kind == "open"


def test_without_upkeep_nothing_is_asked() -> None:
    data = kept_up()
    for name, key in (("stands", "stands"), ("routes", "routes"), ("ground", "water_holes")):
        for one in data[name][key]:
            del one["upkeep"]
    assert plan_on(data, "2027-07-10").upkeep == ()


def test_a_renamed_stand_keeps_the_addresses_of_its_sheets() -> None:
    before = job_on(kept_up(), "2027-07-10").address
    data = kept_up()
    data["stands"]["stands"][0] |= {"id": "old-oak", "was": ["oak"]}
    data["routes"]["routes"][0]["serves"] = ["old-oak"]
    assert job_on(data, "2027-07-10", f"old-oak/{SEASON}/stand_check").address == before


def reckoned(one: UpkeepJob, entries: tuple[LogEntry, ...], day: datetime.date) -> set[str]:
    """The states a job is in by what each of them means, worked out one apart from the other."""
    first, last = DAY(one.season - 1, 9, 1), DAY(one.season, 8, 31)
    done = any(
        (step.at, step.step) == (one.subject.id, one.step.id)
        and (step.season == one.season or (not step.season and first <= entry.done_on <= last))
        for entry in entries
        if entry.done_on <= day
        for step in entry.upkeep
    )
    opens, closes = one.dates.opens, one.dates.closes
    assert opens is not None
    assert closes is not None
    left_out = not done and any(
        (left.at, left.step) == (one.subject.id, one.step.id) and first <= entry.done_on <= last
        for entry in entries
        if entry.done_on <= day
        for left in entry.not_doing
    )
    is_left = not done and not left_out
    by_meaning = {
        "done": done,
        "not_needed": left_out,
        "waiting": day < opens and is_left,
        "open": opens <= day <= closes and is_left,
        "missed": closes < day and is_left,
    }
    return {kind for kind, is_so in by_meaning.items() if is_so}


def year_before() -> Iterator[datetime.date]:
    """The days of the season before, in which the demonstration's log stands."""
    yield from (day - datetime.timedelta(days=365) for day in days())


def test_every_job_of_the_demonstration_is_in_one_state_on_every_day() -> None:
    inventory = load_inventory(Path(DEMO)).inventory
    assert inventory is not None
    seen: set[str] = set()
    for day in (*year_before(), *days()):
        for one in upkeep_jobs(
            inventory,
            (SEASON - 1, SEASON),
            entries_in_force(inventory.entries, day, sprayings_of(inventory)),
            day,
        ):
            assert reckoned(one, inventory.entries, day) == {one.state.kind}, (one.id, day)
            seen.add(one.state.kind)
    assert seen == {"done", "not_needed", "waiting", "open", "missed"}


def test_no_other_reader_is_given_any_of_it() -> None:
    data = kept_up()
    inventory = inventory_of(data)
    plan = plan_on(data, "2027-07-10")
    assert plan.upkeep
    theirs = seen_by(plan, inventory.readers[0])
    assert theirs.upkeep == ()
    assert not {one.subject for one in theirs.findings} & {"oak", "walk", "hole"}


def straps(looked: str | None, first: str | None = None) -> Data:
    data = kept_up()
    stand = data["stands"]["stands"][0]
    del stand["straps_checked_on"]
    if looked is not None:
        stand["straps_checked_on"] = looked
    if first is not None:
        bow = {"id": "bow", "kind": "hunting", "first": first, "last": "2027-12-31",
               "places": "all", "source": "booklet", "looked_up_on": "2026-08-01"}  # fmt: skip
        data["dates"] = {"dates": [bow]}
    return data


@pytest.mark.parametrize(
    ("looked", "first", "told"),
    [
        (None, None, True),
        ("2026-08-01", "2026-10-01", False),
        # a year before Oct 1, 2026 is Oct 1, 2025
        ("2025-10-01", "2026-10-01", False),
        ("2025-09-30", "2026-10-01", True),
        # no dates: the day of the plan, Aug 20, 2026, stands for the first
        ("2025-08-20", None, False),
        ("2025-08-19", None, True),
    ],
)
def test_a_stand_not_looked_over_in_a_year_is_told(
    looked: str | None, first: str | None, told: bool
) -> None:
    plan = plan_on(straps(looked, first), "2026-08-20")
    assert ("C330" in {one.code for one in plan.findings_on("oak")}) == told


@pytest.mark.parametrize(
    ("first", "said"),
    [
        (None, "Hunting begins on a day that is not known."),
        ("2026-10-01", "Hunting begins on Oct 1, 2026."),
        ("2026-08-20", "Hunting begins on Aug 20, 2026."),
        # it has begun: its own first day is told, not the day of the plan
        ("2026-08-01", "Hunting began on Aug 1, 2026."),
    ],
)
def test_the_typed_first_day_of_hunting_is_told(first: str | None, said: str) -> None:
    plan = plan_on(straps("2024-07-01", first), "2026-08-20")
    (told,) = [one for one in plan.findings_on("oak") if one.code == "C330"]
    assert told.words.endswith(said)


@pytest.mark.parametrize(
    ("first", "begins"),
    [("2024-10-01", "begins on Oct 1, 2026"), ("2020-08-01", "began on Aug 1, 2026")],
)
def test_hunting_that_comes_back_every_year_begins_again(first: str, begins: str) -> None:
    data = straps("2024-07-01", first)
    hunting = data["dates"]["dates"][-1]
    hunting |= {"every_year": True, "last": f"{first[:4]}-12-31"}
    (told,) = [one for one in plan_on(data, "2026-08-20").findings_on("oak") if one.code == "C330"]
    assert told.words.endswith(f"Hunting {begins}.")


def test_the_inspection_of_the_season_is_a_look_too() -> None:
    data = straps("2024-07-01")
    done = {"id": "done", "done_on": "2026-08-10", "upkeep": [{"at": "oak", "step": "stand_check"}]}
    data["log"] = {"entries": [done]}
    plan = plan_on(data, "2026-08-20")
    assert "C330" not in {one.code for one in plan.findings_on("oak")}
    done["upkeep"] = [{"at": "oak", "step": "strap_release"}]
    plan = plan_on(data, "2026-08-20")
    assert "C330" in {one.code for one in plan.findings_on("oak")}


def test_a_look_that_found_it_sound_cures_and_one_that_did_not_does_not() -> None:
    data = straps("2024-07-01")
    look = {"id": "look", "done_on": "2026-08-10", "inspected": {"what": ["oak"], "sound": False}}
    data["log"] = {"entries": [look]}
    plan = plan_on(data, "2026-08-20")
    assert "C330" in {one.code for one in plan.findings_on("oak")}
    look["inspected"] = {"what": ["oak"], "sound": True}
    plan = plan_on(data, "2026-08-20")
    assert "C330" not in {one.code for one in plan.findings_on("oak")}


def test_the_last_word_of_the_log_on_a_stand_counts() -> None:
    data = straps("2026-08-01")
    looks = [("2026-08-05", True), ("2026-08-10", False), ("2026-08-12", None)]
    told = {}
    for count in range(len(looks) + 1):
        data["log"] = {"entries": [
            {"id": f"e-{number}", "done_on": day,
             "inspected": {"what": ["oak"]} | ({} if sound is None else {"sound": sound})}
            for number, (day, sound) in enumerate(looks[:count])
        ]}  # fmt: skip
        told[count] = "S331" in {one.code for one in plan_on(data, "2026-08-20").findings_on("oak")}
    # a look without a word on it takes nothing back
    assert told == {0: False, 1: False, 2: True, 3: True}
    sound = {"id": "mended", "done_on": "2026-08-15", "inspected": {"what": ["oak"], "sound": True}}
    data["log"]["entries"].append(sound)
    assert "S331" not in {one.code for one in plan_on(data, "2026-08-20").findings_on("oak")}
    # on the day before the mending, nothing of it is known
    assert "S331" in {one.code for one in plan_on(data, "2026-08-14").findings_on("oak")}


def test_wet_ground_that_nobody_asked_about_is_noted() -> None:
    data = kept_up()
    assert "N410" not in {one.code for one in plan_on(data, "2026-08-20").findings_on("hole")}
    del data["ground"]["water_holes"][0]["wet_ground_asked_on"]
    assert "N410" in {one.code for one in plan_on(data, "2026-08-20").findings_on("hole")}


def test_the_jobs_of_the_season_before_stand_beside_while_it_runs() -> None:
    # the check of 2026 is open until Aug 20, 2026, the refill of that summer is not asked for
    found = {one.id: one.state.kind for one in plan_on(kept_up(), "2026-08-20").upkeep}
    assert found["oak/2026/stand_check"] == "open"
    assert found["oak/2026/strap_release"] == "missed"
    assert found[CHECK] == "waiting"
    assert "hole/2026/summer_refill" not in found
    later = {one.id for one in plan_on(kept_up(), "2026-09-01").upkeep}
    assert not {one for one in later if "/2026/" in one}
