"""Water holes by hand: what they hold, how long it lasts deer, whether a fawn gets out."""

from typing import Any

import pytest

from generator.plan.model.place import Water
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.plan.views.numbers import numbers_of
from tests.plan.planned import inventory_of, planned
from tests.properties import Data, small_property

BOWL: Data = {"id": "hole", "name": "Hole", "shape": "round",
              "top_ft": 16, "bottom_ft": 4, "depth_ft": 3}  # fmt: skip
TRENCH: Data = {"id": "hole", "name": "Hole", "shape": "rectangle",
                "length_ft": 40, "width_ft": 30, "side_ft_per_ft": 4, "depth_ft": 3}  # fmt: skip
DEER = {"deer_count": 10, "deer_weight_lb": 150}


def with_hole(hole: Data, **more: Any) -> Data:
    data = small_property()
    data["ground"] = {"water_holes": [hole | {"wet_ground_asked_on": "2026-05-01"} | more]}
    return data


def only_water(plan: Plan) -> Water:
    (water,) = plan.water
    return water


def codes(plan: Plan) -> set[str]:
    return {one.code for one in plan.findings_on("hole")}


def test_a_round_hole() -> None:
    numbers = only_water(planned(with_hole(BOWL))).numbers
    # pi / 4 x (256 + 64 + 16) = 263.894 cu ft, x 1728 / 231 = 1974.06 gal; sides 6 ft out in 3
    assert numbers["volume_cu_ft"].value == pytest.approx(263.894, abs=5e-4)
    assert numbers["water_gal"].value == pytest.approx(1974.06, abs=5e-3)
    assert numbers["side_ft_per_ft"].value == 2
    assert numbers["ramp_run_ft"].value == 12


def test_a_hole_that_runs_to_a_point() -> None:
    cone = {"id": "hole", "name": "Hole", "shape": "cone", "top_ft": 10, "depth_ft": 3}
    numbers = only_water(planned(with_hole(cone))).numbers
    # pi x 25 x 3 / 3 = 78.54 cu ft; sides 5 ft out in 3
    assert numbers["volume_cu_ft"].value == pytest.approx(78.54, abs=5e-3)
    assert numbers["side_ft_per_ft"].value == pytest.approx(5 / 3)


def test_a_rectangle() -> None:
    numbers = only_water(planned(with_hole(TRENCH))).numbers
    # 3 / 6 x (40 x 30 + 4 x 28 x 18 + 16 x 6) = 1656 cu ft
    assert numbers["volume_cu_ft"].value == pytest.approx(1656)
    assert (numbers["bottom_length_ft"].value, numbers["bottom_width_ft"].value) == (16, 6)


def test_the_need_typed_by_the_owner_counts() -> None:
    data = with_hole(BOWL, **DEER, need_qt_per_100_lb_per_day=4)
    (taken,) = only_water(planned(data)).drunk
    # 15 hundredweights at 4 qt are 60 qt, 15 gal a day; 1974.06 / 15 = 131.6 days
    assert taken.daily.value == 15
    assert taken.lasts.value == pytest.approx(131.604, abs=5e-4)
    assert (taken.refills, taken.careful) == (None, True)


def test_without_one_both_ends_of_the_range_are_shown() -> None:
    data = with_hole(BOWL, **DEER, dry_spell_days=240, refill_gal=200)
    low, high = only_water(planned(data)).drunk
    assert (low.careful, high.careful) == (False, True)
    assert (low.daily.value, high.daily.value) == (7.5, 11.25)
    assert low.refills is not None
    assert high.refills is not None
    # 240 x 7.5 = 1,800 gal are there; 240 x 11.25 = 2,700 are 726 short: four loads of 200
    assert (low.refills.value, high.refills.value) == (0, 4)


def test_no_more_goes_in_than_the_hole_holds() -> None:
    # A cone 7.25 ft across and 2.4 ft deep holds 33.026 cu ft, 247.05 gal.
    cone = {"id": "hole", "name": "Hole", "shape": "cone", "top_ft": 7.25, "depth_ft": 2.4}
    data = with_hole(cone, **DEER, need_qt_per_100_lb_per_day=3, dry_spell_days=240)
    data["ground"]["water_holes"][0]["refill_gal"] = 2000
    plan = planned(data)
    water = only_water(plan)
    (taken,) = water.drunk
    assert water.numbers["water_gal"].value == pytest.approx(247.05, abs=5e-3)
    assert taken.refills is not None
    # 240 x 11.25 = 2,700 gal, 2,453 of them to be brought: ten loads of at most 247
    assert taken.refills.value == 10
    assert water.load() is water.numbers["water_gal"]
    (note,) = (one for one in plan.findings_on("hole") if one.code == "N345")
    assert [figure.value for _, figure in note.figures] == [2000, pytest.approx(247.05, abs=5e-3)]  # type: ignore[union-attr]
    data["ground"]["water_holes"][0]["refill_gal"] = 200
    plan = planned(data)
    assert "N345" not in codes(plan)
    (taken,) = only_water(plan).drunk
    assert taken.refills is not None
    # 2,453 gal in loads of 200
    assert taken.refills.value == 13
    load = only_water(plan).load()
    assert load is not None
    assert load.value == 200


def test_what_is_not_typed_is_said_and_not_invented() -> None:
    plan = planned(with_hole(BOWL))
    assert only_water(plan).drunk == ()
    assert "N343" in codes(plan)
    plan = planned(with_hole(BOWL, **DEER))
    assert "N343" not in codes(plan)
    assert "N344" in codes(plan)
    plan = planned(with_hole(BOWL, **DEER, dry_spell_days=40, refill_gal=200))
    assert codes(plan) == {"C259"}


@pytest.mark.parametrize(
    ("hole", "words"),
    [
        # 2 to 1 is as steep as may be, and too steep to climb
        (BOWL, "The water hole has neither a side nor a ramp"),
        (BOWL | {"ramp_ft_per_ft": 4}, None),
        (BOWL | {"ramp_ft_per_ft": 3.9}, "The water hole has neither a side nor a ramp"),
        (BOWL | {"depth_ft": 4, "ramp_ft_per_ft": 4}, "The water hole has sides steeper"),
        (BOWL | {"depth_ft": 4}, "The water hole has sides steeper"),
        (TRENCH, None),
    ],
)
def test_steep_sides_and_no_way_out_are_said_until_cured(hole: Data, words: str | None) -> None:
    found = [one for one in planned(with_hole(hole)).findings_on("hole") if one.code == "C259"]
    assert len(found) == (words is not None)
    assert all(one.words.startswith(str(words)) for one in found)


@pytest.mark.parametrize(
    ("hole", "earth", "ramp"),
    [
        (BOWL, False, True),
        # A made tank with upright walls and a ramp: the ramp is there, its cure is not.
        (TRENCH | {"side_ft_per_ft": 0, "ramp_ft_per_ft": 4}, True, False),
        (TRENCH | {"side_ft_per_ft": 0}, True, True),
    ],
)
def test_the_cure_and_the_figures_are_those_of_the_fault(
    hole: Data, earth: bool, ramp: bool
) -> None:
    (caution,) = (one for one in planned(with_hole(hole)).findings_on("hole") if one.code == "C259")
    names = {name for name, _ in caution.figures}
    assert ("lay the sides back" in caution.cure, "build a rough ramp" in caution.cure) == (
        earth,
        ramp,
    )
    assert ("Sides not steeper than" in names, "A ramp no steeper than" in names) == (earth, ramp)


def test_numbers_of_water_holes_can_be_explained_and_stay_with_the_owner() -> None:
    data = with_hole(BOWL, **DEER)
    plan = planned(data)
    assert "water/2027/hole/high_gal_per_day" in numbers_of(plan)
    assert seen_by(plan, inventory_of(data).readers[0]).water == ()
