"""What stands where in which season, and the acres by age, worked out by hand.

The small property has one acre of grass on one screen, sown for season 2027.
"""

import datetime

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.standing.cover_by_season import AGES, acres_by_age, age_of, grown_in
from tests.plan.planned import AS_OF, inventory_of, planned
from tests.plan.test_woody import rowed
from tests.properties import SEASON, Data, small_property


def replanted(season: int, steps: str = "drilled_native_grass") -> Data:
    """The small property with another planting on the same screen."""
    data = small_property()
    first = data["screens"]["screens"][0]["plantings"][0]
    again = {"id": "lane-again", "season": season, "seed": first["seed"], "steps": steps}
    again["method"] = "drill" if steps.startswith("drilled") else "frost_seed"
    data["screens"]["screens"][0]["plantings"].append(again)
    return data


def stands(plan: Plan, season: int) -> list[tuple[str, int]]:
    return [(one.planting.id, one.year) for one in grown_in(plan, season)]


def test_a_planting_is_in_its_first_season_when_it_is_sown() -> None:
    plan = planned(small_property())
    assert stands(plan, SEASON - 1) == []
    assert [stands(plan, SEASON + n) for n in range(4)] == [
        [("lane-27", 1)], [("lane-27", 2)], [("lane-27", 3)], [("lane-27", 4)]
    ]  # fmt: skip


def test_the_last_planting_of_a_place_counts() -> None:
    plan = planned(replanted(SEASON + 2))
    assert stands(plan, SEASON + 1) == [("lane-27", 2)]
    assert stands(plan, SEASON + 2) == [("lane-again", 1)]
    assert stands(plan, SEASON + 3) == [("lane-again", 2)]


def test_a_planting_whose_sowing_was_missed_stands_nowhere() -> None:
    inventory = inventory_of(small_property())
    late = make_plan(inventory, SEASON, datetime.date(2027, 8, 1))
    assert stands(planned(small_property()), SEASON) == [("lane-27", 1)]
    assert stands(late, SEASON) == []


@pytest.mark.parametrize(
    ("season", "age"),
    [(0, "first"), (1, "second"), (2, "third"), (3, "later"), (9, "later")],
)
def test_grass_goes_by_its_season(season: int, age: str) -> None:
    (one,) = grown_in(planned(small_property()), SEASON + season)
    assert age_of(one) == age


def test_rows_of_trees_are_an_age_of_their_own() -> None:
    plan = planned(rowed())
    kinds = {one.planting.id: age_of(one) for one in grown_in(plan, SEASON + 1)}
    assert "woody" in kinds.values()


def test_acres_are_the_ground_of_what_stands() -> None:
    plan = planned(small_property())
    found = acres_by_age(plan)
    assert [one.season for one in found] == [SEASON - 1 + n for n in range(5)]
    assert [{age: n.value for age, n in one.acres.items()} for one in found] == [
        {}, {"first": 1.0}, {"second": 1.0}, {"third": 1.0}, {"later": 1.0}
    ]  # fmt: skip


def test_no_place_is_counted_twice() -> None:
    plan = planned(rowed())
    for one in acres_by_age(plan):
        together = sum(number.value for number in one.acres.values())
        standing = {grown.place.id: grown.place.area.value for grown in grown_in(plan, one.season)}
        assert together == pytest.approx(sum(standing.values()))
        assert set(one.acres) <= set(AGES)
    assert plan.as_of == AS_OF
