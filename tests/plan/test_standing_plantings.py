"""Clover that stood before anybody planned: its jobs of every season, and none of a sowing."""

import datetime
from pathlib import Path

import pytest

from generator.book.make import make_book
from generator.book.written_down import names_of
from generator.inventory.load import load_inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.standing.cover_by_season import grown_in
from tests.plan.planned import AS_OF, inventory_of, planned
from tests.properties import SEASON, Data, full_card, full_use, small_property, write_property

YEARLY = {"standing_look", "standing_first_clipping", "standing_second_clipping"}
ASKED_FOR = {"standing_grass_in_fall", "standing_grass_in_spring", "standing_overseeding"}


def with_clover(**more: object) -> Data:
    """The small property with a strip of clover that stands since season 2022."""
    data = small_property()
    planting: Data = {"id": "knob-22", "standing_since": 2022, "species": ["white-clover"],
                      "steps": "standing_clover"}  # fmt: skip
    data["strips"] = {"strips": [
        {"id": "knob", "name": "Knob", "known_as": "Plot 9", "length_ft": 100, "width_ft": 20,
         "contract": "none", "plantings": [planting | more]},
    ]}  # fmt: skip
    return data


def steps_of(plan: Plan) -> set[str]:
    return {job.step.id for job in plan.jobs if job.place_id == "knob"}


def test_what_stands_needs_no_lot_and_has_the_steps_of_every_season() -> None:
    data = with_clover()
    for season in (SEASON, SEASON + 1, SEASON + 5):
        plan = make_plan(inventory_of(data), season, datetime.date(season - 1, 9, 2))
        assert steps_of(plan) == YEARLY, season
    # in August the season that runs still has its late clipping open
    plan = planned(data)
    assert f"knob/{SEASON - 1}/standing_second_clipping" in {job.id for job in plan.jobs}
    assert [one.code for one in plan.findings if "knob" in one.subject] == []


def test_steps_that_cost_something_come_where_they_are_asked_for() -> None:
    assert steps_of(planned(with_clover())) & ASKED_FOR == set()
    seed = [{"species": "white-clover", "lot": "wc", "rate_pls_lb_per_ac": 3}]
    work = [{"step": "standing_overseeding", "spreader": "crank"}]
    data = with_clover(seed=seed, work=work)
    lot = dict(data["seed"]["lots"][0]) | {"id": "wc", "species": "white-clover"}
    data["seed"]["lots"].append(lot)
    data["equipment"]["spreaders"] = [{"id": "crank", "name": "Crank", "hopper_lb": 30}]
    plan = planned(data)
    assert steps_of(plan) == {*YEARLY, "standing_overseeding"}
    data["strips"]["strips"][0]["cover_now"] = {"kind": "perennial_sod"}
    found = planned(data).findings_on(f"knob/{SEASON}/standing_overseeding")
    assert [one.code for one in found if one.severity == "stop"] == ["S180"]
    (sowing,) = (job for job in plan.jobs if job.step.id == "standing_overseeding")
    assert sowing.season == SEASON
    # 100 ft by 20 ft is 0.0459 ac: at 3 pounds of live seed an acre, 0.1377 lb, by hand
    (part,) = sowing.sowings
    live_lb = part.numbers["bulk_seed_lb"].value * part.numbers["pls_fraction"].value
    assert live_lb == pytest.approx(0.1377, abs=0.0001)


def test_grass_is_taken_out_by_the_owner_s_own_card_and_no_other() -> None:
    work = [{"step": "standing_grass_in_spring", "product": "brew", "rate_product_qt_per_ac": 1,
             "method": "broadcast", "sprayer": "boom"}]  # fmt: skip
    use = full_use(covers={"kinds": ["native_grass"], "species": ["switchgrass"], "land": "any"})
    data = with_clover(work=work)
    data["products"] = small_property(full_card(use))["products"]
    job = f"knob/{SEASON}/standing_grass_in_spring"
    plan = planned(data)
    assert [one.code for one in plan.findings_on(job) if one.severity == "stop"] != []
    assert next(one for one in plan.jobs if one.id == job).mix is None


def test_it_counts_as_standing_in_every_season_until_another_takes_its_place() -> None:
    plan = planned(with_clover())
    for season in (SEASON - 1, SEASON, SEASON + 3):
        assert ("knob", "clover") in {(one.place.id, one.kind) for one in grown_in(plan, season)}
    data = with_clover()
    oats = {"id": "knob-28", "season": SEASON + 1, "method": "broadcast", "steps": "fall_oats",
            "seed": [{"species": "oats", "lot": "oats", "rate_pls_lb_per_ac": 60}]}  # fmt: skip
    lot = dict(data["seed"]["lots"][0]) | {"id": "oats", "species": "oats"}
    data["seed"]["lots"].append(lot)
    data["strips"]["strips"][0]["plantings"].append(oats)
    after = make_plan(inventory_of(data), SEASON + 1, datetime.date(SEASON, 9, 2))
    assert steps_of(after) & YEARLY == set()


def test_its_place_says_what_stands_there_until_it_is_killed() -> None:
    plan = planned(with_clover())
    page = next(one for one in make_book(plan).pages if one.address == "places/knob.md")
    assert "White clover, since season 2022" in page.markdown
    assert "Season</dt>" not in page.markdown
    assert "standing since season 2022" in names_of(plan)["knob-22"]


def test_a_screen_of_old_grass_stands_in_place_too() -> None:
    data = with_clover(species=["switchgrass"], steps="established_screen_upkeep")
    assert "upkeep_summer_count" in steps_of(planned(data))


def test_a_plan_from_its_sowing_on_is_none_for_what_stands(tmp_path: Path) -> None:
    folder = write_property(tmp_path / "property", with_clover(steps="ladino_clover"))
    (problem,) = load_inventory(folder).problems
    assert "does not come back every season" in problem.what
    assert "standing_clover" in problem.accepted


def test_a_clipping_that_is_logged_is_done_for_its_season() -> None:
    data = with_clover()
    data["log"] = {"entries": [
        {"id": "e-1", "done_on": "2026-08-11",
         "job": {"planting": "knob-22", "step": "standing_second_clipping", "finished": True}},
    ]}  # fmt: skip
    plan = make_plan(inventory_of(data), SEASON, AS_OF)
    states = {job.id: job.state.kind for job in plan.jobs if "second_clipping" in job.id}
    assert states.pop(f"knob/{SEASON}/standing_second_clipping") != "done"
    assert set(states.values()) <= {"done"}
