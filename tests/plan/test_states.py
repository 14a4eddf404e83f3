"""Where jobs stand: one state each, on every day, and what moves them from one to the other."""

import copy
import datetime
from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.inventory.load import load_inventory
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.inventory.season import season_of
from generator.plan.build.season_plan import make_plan
from generator.plan.jobs.ground import place_on_its_ground
from generator.plan.jobs.request import JobRequest, every_job
from generator.plan.jobs.soil import is_asked_for
from generator.plan.log.entries import entries_in_force
from generator.plan.log.state import states_of
from generator.plan.log.told import sprayings_of
from generator.plan.model.job import Job
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import BURN_DOWN, KILL, inventory_of, job_of
from tests.properties import SEASON, Data, small_property

DEMO = Path(__file__).parents[2] / "demo_property"
SOWING = f"lane/{SEASON}/frost_seeding"
FIRST_OF_SEASON = datetime.date(SEASON - 1, 9, 1)


def days() -> Iterator[datetime.date]:
    """366 days from the first of the season on."""
    yield from (FIRST_OF_SEASON + datetime.timedelta(days=number) for number in range(366))


def asked_in(inventory: Inventory) -> tuple[JobRequest, ...]:
    """Every job of a property, in its season and beside it."""
    areas = {one.id: place_on_its_ground(one, SEASON).area for one in inventory.places()}
    return tuple(
        one
        for one in every_job(inventory, areas, (SEASON - 1, SEASON, SEASON + 1))
        if is_asked_for(one.step, one.planting, inventory.soil_tests)
    )


def _about(request: JobRequest, step: str, entries: tuple[LogEntry, ...]) -> list[LogEntry]:
    """The entries about a step; of one that comes back every season, those of the job's own."""
    yearly = request.plan.yearly_from is not None
    return [
        entry
        for entry in entries
        if entry.job is not None
        and (entry.job.planting, entry.job.step) == (request.planting.id, step)
        and (not yearly or (entry.job.season or season_of(entry.done_on)) == request.season)
    ]


def reckoned(request: JobRequest, entries: tuple[LogEntry, ...], day: datetime.date) -> set[str]:
    """The states a job is in by what each of them means, worked out one apart from the other."""
    done = any(
        entry.job and entry.job.finished for entry in _about(request, request.step.id, entries)
    )
    answers = {
        need.step: [
            e.job.answer for e in _about(request, need.step, entries) if e.job and e.job.answer
        ]
        for need in request.step.needs
    }
    replaced = any(
        entry.job and entry.job.finished
        for step in request.step.excludes
        for entry in _about(request, step, entries)
    )
    refused = any(
        answers[need.step] and answers[need.step][-1] != need.answer for need in request.step.needs
    )
    settled = done or replaced or refused
    opens, closes = request.dates.opens, request.dates.closes
    over = closes is not None and closes < day
    undated = opens is None or closes is None or closes < opens
    asks = any(not given for given in answers.values())
    early = opens is not None and day < opens
    return {
        state
        for state, is_so in {
            "done": done,
            "not_needed": (replaced or refused) and not done,
            "missed": over and not settled,
            "undated": undated and not over and not settled,
            "waiting": (asks or early) and not (undated or over or settled),
            "open": not (asks or early or undated or over or settled),
        }.items()
        if is_so
    }


def test_every_job_of_the_demonstration_is_in_one_state_on_every_day() -> None:
    inventory = load_inventory(DEMO).inventory
    assert inventory is not None
    asked = asked_in(inventory)
    seen: set[str] = set()
    for day in days():
        entries = entries_in_force(inventory.entries, day, sprayings_of(inventory))
        states = states_of(asked, entries, day)
        for one in asked:
            assert reckoned(one, entries, day) == {states[one.job_id].kind}, (one.job_id, day)
            seen.add(states[one.job_id].kind)
    assert {"done", "missed", "waiting", "open"} <= seen


def on_day(data: Data, day: str, job_id: str = KILL) -> Job:
    """A job of property data as it stands on a day."""
    as_of = datetime.date.fromisoformat(day)
    return job_of(make_plan(inventory_of(data), SEASON, as_of), job_id)


@pytest.mark.parametrize(
    ("day", "kind", "said"),
    [
        # Open from Sep 10; first hard freeze Oct 4 in the early year, less 7 days.
        ("2026-09-09", "waiting", "2026-09-10"),
        ("2026-09-10", "open", "2026-09-27"),
        ("2026-09-27", "open", "2026-09-27"),
        ("2026-09-28", "missed", "2026-09-27"),
    ],
)
def test_a_job_waits_is_open_and_is_missed_by_its_dates(day: str, kind: str, said: str) -> None:
    state = on_day(small_property(), day).state
    assert (state.kind, str(state.day)) == (kind, said)


def test_a_job_whose_sign_is_not_typed_has_no_dates() -> None:
    data = small_property()
    del data["property"]["season_signs"]["first_hard_freeze"]
    assert on_day(data, "2026-09-10").state.kind == "undated"


def asking() -> Data:
    """The small property with a plan of its own, in which a second kill waits for an answer."""
    data = small_property()
    kill = {
        "step": "second_kill",
        "name": "Kill what came back",
        "operation": "spray",
        "timing": "before_sowing",
        "why": "What is green in the dead sod comes back.",
        "opens": [{"date": "09-20"}],
        "closes": [{"sign": "first_hard_freeze", "by": "late"}],
        "if_missed": "Wait a year.",
        "needs": [{"step": "green_look", "answer": "yes"}],
    }
    look = {
        "step": "green_look",
        "name": "Look for green",
        "operation": "tend",
        "timing": "before_sowing",
        "why": "Sod that came back would smother the grass.",
        "opens": [{"date": "09-18"}],
        "closes": [{"date": "10-15"}],
        "if_missed": "Look the day you find out.",
        "asks": "Is anything still green?",
    }
    data["steps"] = {
        "step_plans": [
            {
                "id": "my_grass",
                "name": "Grass my way",
                "based_on": "frost_seeded_native_grass",
                "steps": [look, kill],
            }
        ]
    }
    data["screens"]["screens"][0]["plantings"][0]["steps"] = "my_grass"
    return data


SECOND = f"lane/{SEASON}/second_kill"


def answered(**said: object) -> Data:
    """The same with one entry on the look, of Sep 25."""
    data = asking()
    job = {"planting": "lane-27", "step": "green_look", **said}
    data["log"] = {"entries": [{"id": "e-1", "done_on": "2026-09-25", "job": job}]}
    return data


def test_a_job_waits_for_an_answer_and_says_when_to_decide() -> None:
    state = on_day(asking(), "2026-09-10", SECOND).state
    assert (state.kind, str(state.day)) == ("waiting", "2026-09-18")
    assert (state.step, state.question) == ("Look for green", "Is anything still green?")
    # once the look is due, the day to decide is today
    assert str(on_day(asking(), "2026-09-26", SECOND).state.day) == "2026-09-26"


@pytest.mark.parametrize(("answer", "kind"), [("yes", "open"), ("no", "not_needed")])
def test_an_answer_opens_a_job_or_leaves_it_out(answer: str, kind: str) -> None:
    data = answered(answer=answer)
    # on the day before the entry's the answer is not there yet
    assert on_day(data, "2026-09-24", SECOND).state.kind == "waiting"
    assert on_day(data, "2026-09-26", SECOND).state.kind == kind


def test_an_answer_can_be_put_off_to_a_day() -> None:
    state = on_day(answered(decide_on="2026-10-02"), "2026-09-26", SECOND).state
    assert (state.kind, str(state.day)) == ("waiting", "2026-10-02")


def test_a_later_answer_takes_the_place_of_an_earlier_one() -> None:
    data = answered(answer="no")
    later = copy.deepcopy(data["log"]["entries"][0])
    later |= {"id": "e-2", "done_on": "2026-09-28"}
    later["job"]["answer"] = "yes"
    data["log"]["entries"].append(later)
    assert on_day(data, "2026-09-27", SECOND).state.kind == "not_needed"
    assert on_day(data, "2026-09-28", SECOND).state.kind == "open"


def test_a_job_that_another_replaces_is_not_needed_once_that_one_is_done() -> None:
    data = asking()
    mowing = {
        "step": "second_mowing",
        "name": "Mow instead",
        "operation": "mow",
        "timing": "seedlings",
        "why": "Weeds shade the seedlings.",
        "opens": [{"date": "07-01"}],
        "closes": [{"date": "08-01"}],
        "if_missed": "Leave it.",
        "excludes": ["first_summer_mowing"],
    }
    data["steps"]["step_plans"][0]["steps"].append(mowing)
    job = f"lane/{SEASON}/second_mowing"
    assert on_day(data, "2027-07-10", job).state.kind == "open"
    done = {"planting": "lane-27", "step": "first_summer_mowing", "finished": True}
    data["log"] = {"entries": [{"id": "e-1", "done_on": "2027-07-05", "job": done}]}
    state = on_day(data, "2027-07-10", job).state
    assert (state.kind, state.step) == ("not_needed", "Mow weeds above the grass")


def test_a_job_that_is_not_needed_takes_nothing_and_says_nothing() -> None:
    work = {"step": "second_kill", "product": "brew", "rate_product_fl_oz_per_ac": 32,
            "method": "broadcast", "sprayer": "boom"}  # fmt: skip
    found = {}
    for answer in ("yes", "no"):
        data = answered(answer=answer)
        data["screens"]["screens"][0]["plantings"][0]["work"].append(work)
        day = datetime.date(2026, 9, 26)
        found[answer] = make_plan(inventory_of(data), SEASON, day)
    assert SECOND in {line.job_id for line in found["yes"].lines}
    assert SECOND not in {line.job_id for line in found["no"].lines}
    assert not found["no"].findings_on(SECOND)


def test_other_readers_are_told_the_state_without_the_days_of_the_log() -> None:
    for data, kind in ((answered(answer="no"), "not_needed"), (asking(), "waiting")):
        inventory = inventory_of(data)
        day = datetime.date(2026, 9, 26)
        plan = seen_by(make_plan(inventory, SEASON, day), inventory.readers[0])
        job = next(one for one in plan.jobs if one.step.id == "second_kill")
        assert (job.state.kind, job.state.day) == (kind, None)


def test_the_states_of_the_small_property_in_spring() -> None:
    # Apr 1: the kill and the sowing are past; burn down opens on Apr 8
    data = small_property()
    assert on_day(data, "2027-04-01", KILL).state.kind == "missed"
    assert on_day(data, "2027-04-01", SOWING).state.kind == "missed"
    assert on_day(data, "2027-04-01", BURN_DOWN).state.kind == "waiting"


def test_what_the_season_before_owes_stands_in_the_plan_while_that_season_runs() -> None:
    # old growth comes off from 1 to Aug 31, 2026, for a sowing in season 2027
    thatch = f"lane/{SEASON - 1}/thatch_off"
    assert on_day(small_property(), "2026-08-20", thatch).state.kind == "open"
    done = {"planting": "lane-27", "step": "thatch_off", "finished": True}
    for data, day in ((small_property(), "2026-09-01"), (small_property(), "2026-08-20")):
        if day == "2026-08-20":
            data["log"] = {"entries": [{"id": "e-1", "done_on": "2026-08-10", "job": done}]}
        as_of = datetime.date.fromisoformat(day)
        plan = make_plan(inventory_of(data), SEASON, as_of)
        assert thatch not in {one.id for one in plan.jobs}
        assert SOWING in {one.id for one in plan.jobs}
