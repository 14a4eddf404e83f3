"""Sorghum where stock may eat it, and grain laid down where birds may be hunted."""

import datetime

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.reference.steps import step_plans
from tests.plan.planned import inventory_of, planned
from tests.plan.test_food_places import with_strip
from tests.properties import SEASON, small_property

STOCK, GRAIN = "C393", "C394"


def plan_of(name: str, *work: str, season: int = SEASON) -> Plan:
    """The plan of a strip sown by a step plan, with further steps of it asked for."""
    data = with_strip(step_plans()[name], "broadcast", *({"step": one} for one in work))
    day = datetime.date(season - 1, 8, 20)
    return make_plan(inventory_of(data), season, day)


def subjects(plan: Plan, code: str) -> set[str]:
    return {one.subject for one in plan.findings if one.code == code}


@pytest.mark.parametrize("name", ["sorghum_screen", "bridge_sorghum"])
def test_sorghum_is_told_on_its_place_and_where_it_is_sown_or_mown(name: str) -> None:
    short = {"sorghum_screen": "sorghum", "bridge_sorghum": "bridge"}[name]
    assert subjects(plan_of(name), STOCK) == {"plot", f"plot/{SEASON}/{short}_sowing"}
    after = plan_of(name, f"{short}_clearing", season=SEASON + 1)
    assert subjects(after, STOCK) == {"plot", f"plot/{SEASON + 1}/{short}_clearing"}
    assert subjects(plan_of(name, season=SEASON + 2), STOCK) == set()


def test_places_without_sorghum_have_no_such_caution() -> None:
    assert subjects(planned(small_property()), STOCK) == set()
    assert subjects(plan_of("fall_rye"), STOCK) == set()


@pytest.mark.parametrize(
    ("name", "step", "season"),
    [
        ("fall_rye", "rye_mowing", SEASON),
        ("beans_or_corn", "crop_clearing", SEASON + 1),
        ("sorghum_screen", "sorghum_clearing", SEASON + 1),
    ],
)
def test_mowing_a_crop_with_grain_asks_to_look_the_rule_up(
    name: str, step: str, season: int
) -> None:
    plan = plan_of(name, step, season=season)
    assert subjects(plan, GRAIN) == {f"plot/{season}/{step}"}
    (told,) = [one for one in plan.findings if one.code == GRAIN]
    assert "20.21(i)" in told.words
    assert "Look the rule up" in told.cure
    # 50 CFR 20.21(i) depends on what is hunted there: it is not said that this place is baited
    assert "not said in this book" in told.words


def test_mowing_clover_or_grass_lays_down_no_grain() -> None:
    assert subjects(planned(small_property()), GRAIN) == set()
    assert subjects(plan_of("ladino_clover", "clover_first_mowing"), GRAIN) == set()


def test_packing_the_ground_at_the_sowing_lays_down_no_crop() -> None:
    plan = plan_of("fall_oats", "oats_packing")
    assert any(one.step.id == "oats_packing" for one in plan.jobs)
    assert subjects(plan, GRAIN) == set()


def test_whoever_is_handed_the_mowing_is_told_to_ask() -> None:
    data = with_strip(step_plans()["fall_rye"], "broadcast", {"step": "rye_mowing"})
    data["readers"]["readers"][0]["jobs"] = [{"planting": "plot-27", "steps": ["rye_mowing"]}]
    seen = seen_by(planned(data), inventory_of(data).readers[0])
    (told,) = [one for one in seen.findings if one.code == GRAIN]
    assert "Ask the owner" in told.words
