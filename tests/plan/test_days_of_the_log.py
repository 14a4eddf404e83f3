"""Water holes, stands and walks know the last day by file and log, the later of the two."""

import datetime

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from tests.plan.planned import inventory_of
from tests.properties import SEASON, Data, small_property

DAY = datetime.date(2026, 8, 20)
TYPED = datetime.date(2026, 7, 1)


def plan_of(*entries: Data, typed: bool = True) -> Plan:
    days = {"refilled_on": f"{TYPED}", "inspected_on": f"{TYPED}"} if typed else {}
    hole = {"id": "hole", "name": "Hole", "shape": "cone", "top_ft": 12, "depth_ft": 3} | days
    strapped = {"straps_checked_on": f"{TYPED}"} if typed else {}
    walked = {"walked_on": f"{TYPED}"} if typed else {}
    data = small_property()
    data["ground"] = {"water_holes": [hole]}
    data["stands"] = {"stands": [{"id": "oak", "name": "Oak"} | strapped]}
    data["routes"] = {"routes": [{"id": "walk", "name": "Walk", "serves": ["oak"]} | walked]}
    data["log"] = {"entries": [{"id": f"e-{n}"} | one for n, one in enumerate(entries)]}
    return make_plan(inventory_of(data), SEASON, DAY)


def days(plan: Plan) -> list[datetime.date | None]:
    """Refilled, looked over, straps, walked."""
    hole = plan.water[0].hole
    return [hole.refilled_on, hole.inspected_on, plan.land.stands[0].straps_checked_on,
            plan.land.routes[0].walked_on]  # fmt: skip


def filled(day: str) -> Data:
    return {"done_on": day, "water_added": {"water_hole": "hole", "amount_gal": 200}}


def looked(day: str, what: str, sound: bool | None = None) -> Data:
    said = {"what": [what]} if sound is None else {"what": [what], "sound": sound}
    return {"done_on": day, "inspected": said}


def test_without_entries_the_typed_days_stand() -> None:
    assert days(plan_of()) == [TYPED] * 4
    assert days(plan_of(typed=False)) == [None] * 4


@pytest.mark.parametrize("typed", [True, False])
def test_a_later_entry_counts_and_an_earlier_one_does_not(typed: bool) -> None:
    walk = {"done_on": "2026-08-02", "sight_checked": {"route": "walk", "seen_from": "the road"}}
    late = [filled("2026-08-03"), looked("2026-08-04", "hole"), looked("2026-08-05", "oak", True)]
    assert days(plan_of(*late, walk, typed=typed)) == [
        datetime.date(2026, 8, 3),
        datetime.date(2026, 8, 4),
        datetime.date(2026, 8, 5),
        datetime.date(2026, 8, 2),
    ]
    early = [filled("2026-06-03"), looked("2026-06-04", "hole"), looked("2026-06-05", "oak", True)]
    assert days(plan_of(*early)) == [TYPED] * 4


def test_a_day_after_the_plan_s_does_not_count() -> None:
    assert days(plan_of(filled("2026-08-21"))) == [TYPED] * 4


@pytest.mark.parametrize("sound", [None, False])
def test_a_stand_that_is_not_said_to_be_sound_was_not_looked_over(sound: bool | None) -> None:
    assert days(plan_of(looked("2026-08-05", "oak", sound)))[2] == TYPED
