"""Walks kept short by machine: passes by the machine's width, way and time, and what fits."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.compute.lane_mowing import mowing_ft, mowing_minutes, mowing_passes_count
from generator.plan.jobs.lane_mowing import lane_mowing
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import inventory_of, planned
from tests.properties import SEASON, Data
from tests.readers.test_partner import shared

MOWER: Data = {"id": "brush", "name": "Brush mower", "width_ft": 5, "speed_mph": 3,
               "efficiency_pct": 70}  # fmt: skip
ASKED = ["first_clipping", "second_clipping", "lodged_grass"]
WIDTHS_FT = st.floats(1, 60)


def mown(**changes: object) -> Data:
    """A property of two walks, one of them kept short by a machine of five feet."""
    data = shared()
    data["equipment"]["machines"] = [MOWER]
    walk = {"lane_width_ft": 9, "machine": "brush", "asked_for": ASKED} | changes
    data["routes"]["routes"][0] |= {name: one for name, one in walk.items() if one is not None}
    return data


def test_passes_way_and_minutes_by_hand() -> None:
    """Nine feet with five are two passes; twice 877 ft at 3 mph and 70 percent, 264 ft a minute."""
    inventory = inventory_of(mown())
    lane = lane_mowing(inventory.routes[0], inventory.machines)
    assert lane is not None
    assert lane.way is not None
    assert lane.minutes is not None
    assert (lane.passes.value, lane.way.value) == (2, 1754)
    assert lane.minutes.value == pytest.approx(1754 / (264 * 0.7))
    assert lane_mowing(inventory.routes[1], inventory.machines) is None


@given(WIDTHS_FT, WIDTHS_FT)
def test_passes_cover_the_lane_and_none_is_spare(lane_ft: float, machine_ft: float) -> None:
    passes = mowing_passes_count(lane_ft, machine_ft)
    assert passes * machine_ft >= lane_ft * (1 - 1e-9)
    assert (passes - 1) * machine_ft < lane_ft


@given(st.floats(1, 5000), st.integers(1, 9), st.floats(1, 10))
def test_twice_the_length_is_twice_the_way_and_the_time(
    length_ft: float, passes: int, speed_mph: float
) -> None:
    once, twice = mowing_ft(length_ft, passes), mowing_ft(2 * length_ft, passes)
    assert twice == pytest.approx(2 * once)
    minutes = mowing_minutes(once, speed_mph, 0.7)
    assert mowing_minutes(twice, speed_mph, 0.7) == pytest.approx(2 * minutes)


def test_its_steps_come_where_they_are_asked_for() -> None:
    steps = {job.step.id for job in planned(mown()).upkeep if job.subject.id == "walk"}
    assert set(ASKED) <= steps
    without = planned(mown(asked_for=None))
    assert set(ASKED) & {job.step.id for job in without.upkeep} == set()


def test_a_machine_wider_than_its_lane_is_told_until_one_that_fits_is_named() -> None:
    def told(width_ft: float) -> list[str]:
        return [one.code for one in planned(mown(lane_width_ft=width_ft)).findings_on("walk")]

    assert told(4.9) == ["C461"]
    assert told(5) == []


def test_a_lane_without_its_machine_says_nothing_of_passes() -> None:
    for changes in ({"machine": None}, {"lane_width_ft": None}):
        inventory = inventory_of(mown(**changes))
        assert lane_mowing(inventory.routes[0], inventory.machines) is None
    data = mown()
    del data["routes"]["routes"][0]["length_ft"]
    inventory = inventory_of(data)
    lane = lane_mowing(inventory.routes[0], inventory.machines)
    assert lane is not None
    assert [number.value for number in lane.numbers()] == [2]


def test_a_partner_has_the_work_and_is_not_told_of_lane_and_machine() -> None:
    data = mown()
    friend = next(one for one in inventory_of(data).readers if one.id == "friend")
    view = seen_by(planned(data), friend)
    (walk,) = view.land.routes
    assert (walk.lane_width_ft, walk.machine) == (None, None)
    assert f"lane-walk/{SEASON}/second_clipping" in {job.id for job in view.upkeep}
    assert "Brush mower" not in repr(view)
