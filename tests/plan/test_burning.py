"""Burning a standing screen: a third at the most, never the same part twice, and what it hides.

The lane is an acre, 43,560 square feet; a third is 14,520.
"""

import datetime
from typing import Any

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import inventory_of, job_of
from tests.properties import SEASON, Data, small_property

BURNING = f"lane/{SEASON}/upkeep_burning"
MOWING = f"lane/{SEASON}/upkeep_mowing"
JANUARY = datetime.date(2027, 1, 15)


def standing(step: str = "upkeep_burning", **work: Any) -> Data:
    """The lane as a screen of 2023, of which a part is to be burned or mown, with its permit."""
    data = small_property()
    data["screens"]["screens"][0]["plantings"][0] |= {
        "id": "lane-23",
        "season": 2023,
        "upkeep": "established_screen_upkeep",
        "work": [{"step": step} | work],
    }
    data["readers"]["readers"][0]["jobs"][0]["planting"] = "lane-23"
    data["property"]["season_signs"]["grass_green_up"] = "04-10"
    permit = {"id": "fire", "kind": "burn", "places": ["lane"], "approved_on": "2026-12-20",
              "expires_on": "2027-04-30"}  # fmt: skip
    data["papers"] = {"permits": [permit]}
    return data


def plan_of(data: Data) -> Plan:
    return make_plan(inventory_of(data), SEASON, JANUARY)


def codes(plan: Plan, job: str = BURNING) -> set[str]:
    return {one.code for one in plan.findings_on(job)} & {"S222", "S223", "C343"}


@pytest.mark.parametrize(
    ("sq_ft", "held"),
    [(None, True), (14520, False), (14590, False), (14600, True), (14900, True), (43560, True)],
)
def test_no_more_than_a_third_burns_in_a_season(sq_ft: float | None, held: bool) -> None:
    work = {} if sq_ft is None else {"treated_sq_ft": sq_ft}
    plan = plan_of(standing(**work))
    assert ("S222" in codes(plan)) == held
    for stop in (one for one in plan.findings_on(BURNING) if one.code == "S222"):
        told = {name: figure.value for name, figure in stop.figures}
        assert told["At most"] == 33
        if sq_ft is not None:
            assert told["Burns this season"] == pytest.approx(sq_ft / 43560)


def two_burns(first_sq_ft: float, second_sq_ft: float | None) -> Data:
    """The lane kept up by a plan of the owner's own, with a second burn a little later."""
    data = standing(treated_sq_ft=first_sq_ft, part="north end")
    (planting,) = data["screens"]["screens"][0]["plantings"]
    planting["upkeep"] = "lane_upkeep"
    second = {"step": "second_fire", "part": "south end"}
    planting["work"].append(second | ({"treated_sq_ft": second_sq_ft} if second_sq_ft else {}))
    fire = {
        "step": "second_fire",
        "name": "Burn the south end",
        "operation": "burn",
        "timing": "established_dormant",
        "why": "So that fire comes back.",
        "opens": [{"date": "03-20"}],
        "closes": [{"date": "04-05"}],
        "if_missed": "Leave it.",
        "only_with": "work",
    }
    own = {"id": "lane_upkeep", "name": "Lane", "based_on": "established_screen_upkeep"}
    data["steps"] = {"step_plans": [own | {"steps": [fire]}]}
    return data


@pytest.mark.parametrize(
    ("first", "second", "held"), [(7000, 7500, False), (7000, 8000, True), (7000, None, True)]
)
def test_burns_of_one_season_count_together(first: float, second: float, held: bool) -> None:
    plan = plan_of(two_burns(first, second))
    for job in (BURNING, f"lane/{SEASON}/second_fire"):
        assert ("S222" in codes(plan, job)) == held


def test_what_burnt_earlier_in_the_season_counts_too() -> None:
    data = two_burns(14000, 7000)
    job = {"planting": "lane-23", "step": "upkeep_burning", "finished": True}
    entry = {"id": "fire-27", "done_on": "2027-03-18", "job": job}
    data["log"] = {"entries": [entry]}
    later = make_plan(inventory_of(data), SEASON, datetime.date(2027, 3, 20))
    assert "S222" in codes(later, f"lane/{SEASON}/second_fire")
    assert codes(later) == set()


def burnt(day: str, their_part: str | None, **work: Any) -> Data:
    data = standing(treated_sq_ft=10000, **work)
    entry: Data = {
        "id": "fire-26",
        "done_on": day,
        "job": {"planting": "lane-23", "step": "upkeep_burning", "finished": True},
    }
    if their_part is not None:
        entry["burned"] = {"part": their_part}
    data["log"] = {"entries": [entry]}
    return data


@pytest.mark.parametrize(
    ("day", "part", "mine", "held"),
    [
        ("2026-03-28", None, None, True),
        ("2026-03-28", "north end", None, True),
        ("2026-03-28", None, "south end", True),
        ("2026-03-28", "North  end", "north end", True),
        ("2026-03-28", "north end", "south end", False),
        ("2025-03-28", None, None, False),
    ],
)
def test_no_part_burns_two_years_running(
    day: str, part: str | None, mine: str | None, held: bool
) -> None:
    work = {} if mine is None else {"part": mine}
    plan = plan_of(burnt(day, part, **work))
    assert ("S223" in codes(plan)) == held


def test_a_burn_that_was_planned_and_missed_holds_nothing() -> None:
    # the same step stood in season 2026, whose dates are over in January 2027
    assert codes(plan_of(standing(treated_sq_ft=10000))) == set()


def test_a_screen_that_hides_a_walk_is_told_with_the_walk_for_the_owner_alone() -> None:
    for step, job in (("upkeep_burning", BURNING), ("upkeep_mowing", MOWING)):
        data = standing(step, treated_sq_ft=10000)
        data["routes"] = {"routes": [{"id": "walk", "name": "Oak walk"}]}
        assert "C343" not in codes(plan_of(data), job)
        data["screens"]["screens"][0]["hides"] = ["walk"]
        plan = plan_of(data)
        (told,) = [one for one in plan.findings_on(job) if one.code == "C343"]
        assert "hides Oak walk" in told.words
        theirs = seen_by(plan, inventory_of(data).readers[0])
        assert "C343" not in {one.code for one in theirs.findings}


def test_the_part_stands_on_the_job() -> None:
    assert job_of(plan_of(standing(part="north end")), BURNING).part == "north end"
