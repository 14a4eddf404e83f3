"""Calendar days of step plans are written for some latitudes: elsewhere the book warns.

By hand: days of about 41 degrees, ten days either way at four days for each degree, are 38.5 to
43.5 degrees north.
"""

import datetime

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.model.finding import WHOLE_FOLDER, Finding
from generator.reference.library import values
from generator.reference.steps import step_plans
from tests.plan.planned import AS_OF, inventory_of
from tests.properties import SEASON, Data, small_property

OUTSIDE, NOT_KNOWN = "C420", "N421"


def told(data: Data, as_of: datetime.date = AS_OF) -> list[Finding]:
    plan = make_plan(inventory_of(data), SEASON, as_of)
    return [one for one in plan.findings_on(WHOLE_FOLDER) if one.code in (OUTSIDE, NOT_KNOWN)]


def at(latitude: float) -> Data:
    data = small_property()
    data["property"]["location_lat_lon"] = [latitude, -93.02]
    return data


def test_every_shipped_plan_says_for_which_latitudes_its_days_are_written() -> None:
    for plan in step_plans().values():
        assert plan.latitudes is not None, plan.id
        assert plan.latitudes.south.value < 41 < plan.latitudes.north.value
    written = step_plans()["frost_seeded_native_grass"].latitudes
    assert written is not None
    days = values()["season_moves_in_a_degree_days"].value
    assert ((41 - written.south.value) * days, (written.north.value - 41) * days) == (10, 10)


@pytest.mark.parametrize(
    ("latitude", "side"),
    [(38.4, "south"), (38.5, None), (41, None), (43.5, None), (43.6, "north"), (-41, "south")],
)
def test_a_property_outside_is_told(latitude: float, side: str | None) -> None:
    found = told(at(latitude))
    assert [one.code for one in found] == ([OUTSIDE] if side else [])
    if side is not None:
        assert f"your ground lies {side} of them" in found[0].words
        assert "step plan Native grass by frost seeding are written" in found[0].words
        assert "based_on: frost_seeded_native_grass" in found[0].to_type
        assert [one.value for _, one in found[0].figures if not hasattr(one, "why")] == [
            38.5,
            43.5,
            4,
        ]


def test_a_plan_of_the_owner_s_own_settles_it() -> None:
    data = at(46)
    own: Data = {"id": "north_grass", "name": "Native grass up here",
                 "based_on": "frost_seeded_native_grass"}  # fmt: skip
    data["steps"] = {"step_plans": [own]}
    data["screens"]["screens"][0]["plantings"][0]["steps"] = "north_grass"
    assert [one.code for one in told(data)] == [OUTSIDE]
    own["days_looked_up_on"] = "2026-08-01"
    assert told(data) == []


def test_all_plans_with_work_ahead_are_told_in_one_caution() -> None:
    data = at(46)
    data["stands"] = {"stands": [{"id": "oak", "name": "Oak", "upkeep": "stand_inspection"}]}
    planting = data["screens"]["screens"][0]["plantings"][0]
    planting["upkeep"] = "established_screen_upkeep"
    assert [one.code for one in told(data)] == [OUTSIDE]
    data["property"]["location_lat_lon"] = [48, -93.02]
    (one,) = told(data)
    assert "of 2 step plans (Native grass by frost seeding and Inspection of a stand)" in one.words
    assert "take each plan over in steps.yaml, based_on: and its id" in one.to_type
    assert [each.value for _, each in one.figures if not hasattr(each, "why")] == [
        38.5, 43.5, 33, 47.5, 4,
    ]  # fmt: skip


def test_without_a_place_on_earth_nobody_can_say() -> None:
    data = small_property()
    del data["property"]["location_lat_lon"]
    assert [one.code for one in told(data)] == [NOT_KNOWN]
    data["property"]["location_lat_lon"] = [41, -93]
    assert told(data) == []
