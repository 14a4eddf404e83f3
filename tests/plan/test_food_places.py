"""Places for food: every shipped plan for one can be used from a strip, with a sheet that helps.

The strip is an acre, 435.6 ft by 100 ft; its seed is 80% pure and 90 % alive, so 0.72 of a pound.
"""

import datetime
from typing import Any

import pytest

from generator.inventory.places import Screen, Strip, hidden_by
from generator.plan.build.season_plan import make_plan
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.reference.library import species
from generator.reference.steps import Step, StepPlan, step_plans
from tests.plan.planned import inventory_of, job_of, planned
from tests.properties import SEASON, Data, full_card, full_use, small_property

FOOD = {
    "ladino_clover": ("white-clover",),
    "late_summer_clover": ("white-clover", "red-clover"),
    "fall_oats": ("oats",),
    "fall_rye": ("cereal-rye",),
    "fall_small_grain_and_brassica": ("oats", "turnip"),
    "beans_or_corn": ("soybean",),
    "bridge_sorghum": ("tall-sorghum",),
    "sorghum_screen": ("grain-sorghum",),
}
each_food_plan = pytest.mark.parametrize("plan", [step_plans()[one] for one in FOOD],
                                         ids=lambda one: one.id)  # fmt: skip


def with_strip(plan: StepPlan, method: str = "broadcast", *extra: Data) -> Data:
    """The small property with a strip that is sown by a plan, its kill on a card of its own."""
    data = small_property(full_card(*(_use(plan, one) for one in _sprayings(plan))))
    data["property"]["season_signs"] |= {"soil_warm": "05-15", "soil_for_sorghum": "05-25"}
    lots = [_lot(data, one) for one in FOOD[plan.id]]
    data["seed"]["lots"] += lots
    test = {"tested_on": "2026-08-16", "lot": lots[0]["id"], "setting": "third", "swath_ft": 20,
            "distance_ft": 217.8, "caught_lb": 0.5,
            "mixed_with": [one["id"] for one in lots[1:]]}  # fmt: skip
    data["equipment"]["spreaders"] = [
        {"id": "crank", "name": "Crank", "hopper_lb": 20, "catch_tests": [test]}
    ]
    sowing = _at_sowing(plan)
    strip: Data = {
        "id": "plot",
        "name": "Plot",
        "known_as": "Plot 1",
        "length_ft": 435.6,
        "width_ft": 100,
        "contract": "none",
        "cover_now": {"kind": "perennial_sod"},
        "plantings": [
            {
                "id": "plot-27",
                "season": SEASON,
                "seed": [
                    {"species": one["species"], "lot": one["id"], "rate_pls_lb_per_ac": 7.2}
                    for one in lots
                ],
                "method": method,
                "steps": plan.id,
                "work": [
                    *(_spraying(one) for one in _sprayings(plan)),
                    {"step": sowing.id, "spreader": "crank"},
                    *extra,
                ],
            }
        ],
    }
    return data | {"strips": {"strips": [strip]}}


def _sprayings(plan: StepPlan) -> list[Step]:
    return [one for one in plan.steps if one.operation == "spray" and one.only_with is None]


def _at_sowing(plan: StepPlan) -> Step:
    (step,) = [one for one in plan.steps if one.timing == "at_sowing" and one.operation == "sow"]
    return step


def _use(plan: StepPlan, step: Step) -> Data:
    kinds = sorted({plan.kind or "", *(species()[one].kind for one in FOOD[plan.id])})
    covers = {"kinds": kinds, "species": ["any"], "land": "any", "places": ["any"]}
    return full_use(step.timing, covers=covers)


def _spraying(step: Step) -> Data:
    return {
        "step": step.id,
        "product": "brew",
        "rate_product_qt_per_ac": 1.5,
        "method": "broadcast",
        "sprayer": "boom",
    }


def _lot(data: Data, kind: str) -> Data:
    lot: Data = data["seed"]["lots"][0] | {"id": f"lot-{kind}", "species": kind}
    lot["tag"] = lot["tag"] | {"purity_pct": 80, "germination_pct": 90, "dormant_pct": 0}
    if species()[kind].legume:
        lot["inoculant"] = {"group": "of its own", "expires_on": "2028-06-30"}
    return lot


def codes(plan: Plan, job: Job) -> set[str]:
    return {one.code for one in plan.findings_on(job.id)}


def sowing_of(plan: Plan, step_plan: StepPlan) -> Job:
    return job_of(plan, f"plot/{SEASON}/{_at_sowing(step_plan).id}")


@each_food_plan
def test_every_step_that_is_due_has_a_sheet(plan: StepPlan) -> None:
    made = planned(with_strip(plan))
    wanted = {
        one.id for one in plan.steps if one.seasons_later in (0, -1) and one.only_with is None
    }
    mine = [one for one in made.jobs if one.place_id == "plot"]
    assert {one.step.id for one in mine} == wanted
    assert all(one.dates.opens and one.dates.closes for one in mine)


@each_food_plan
def test_the_sowing_says_how_and_how_much(plan: StepPlan) -> None:
    """7.2 lb of live seed of each kind at 0.72 are 10 lb of each; a pass of 217.8 ft by 20 ft is a
    tenth of an acre, so half a pound is 5 lb an acre: twice over for each kind, in five lanes.
    """
    made = planned(with_strip(plan))
    job, kinds = sowing_of(made, plan), len(FOOD[plan.id])
    assert job.numbers["bulk_seed_lb"].value == pytest.approx(10 * kinds)
    assert job.numbers["lanes_count"].value == 5
    assert job.numbers["times_over_count"].value == 2 * kinds
    assert job.method == "broadcast"
    assert not [one for one in made.findings_on(job.id) if one.severity == "stop"]


@each_food_plan
def test_a_kill_that_the_card_covers_has_its_loads(plan: StepPlan) -> None:
    made = planned(with_strip(plan))
    for step in _sprayings(plan):
        season = SEASON + step.seasons_later
        job = job_of(made, f"plot/{season}/{step.id}")
        assert job.mix is not None, [one.words for one in made.findings_on(job.id)]


def with_interval(plan: StepPlan, days: int) -> Data:
    """The strip with a label that asks for so many days between its kill and the sowing."""
    data = with_strip(plan)
    for use in data["products"]["products"][0]["label"]["uses"]:
        use["seeding_interval_days"] = days
    return data


@pytest.mark.parametrize(
    ("days", "told"),
    [
        # The kill is open Jul 1 to Aug 20, 2027, the sowing 1 to Aug 31.
        (0, None),
        (11, "Spray by Aug 20, 2027"),  # Aug 20 and 11 days are the 31st
        (12, "Spray by Aug 19, 2027"),
        (61, "Spray by Jul 1, 2027"),  # Jul 1 and 61 days are the 31st of August
    ],
)
def test_a_kill_and_a_sowing_of_the_same_weeks_choose_their_days(
    days: int, told: str | None
) -> None:
    made = planned(with_interval(step_plans()["fall_oats"], days))
    kill = job_of(made, f"plot/{SEASON}/oats_kill")
    assert kill.mix is not None
    found = [one.words for one in made.findings_on(kill.id) if one.code == "C247"]
    assert [told is not None and told in one for one in found] == ([True] if told else [])


def test_a_kill_that_leaves_no_day_to_sow_is_stopped() -> None:
    made = planned(with_interval(step_plans()["fall_oats"], 62))
    assert "S118" in codes(made, job_of(made, f"plot/{SEASON}/oats_kill"))


@pytest.mark.parametrize(("as_of", "waits"), [("2027-08-18", True), ("2027-08-19", False)])
def test_a_sowing_waits_until_the_days_after_the_kill_are_over(as_of: str, waits: bool) -> None:
    """Sprayed on Aug 5; 14 days later, on the 19th, oats may be sown, until the 31st."""
    data = with_interval(step_plans()["fall_oats"], 14)
    kill = {"planting": "plot-27", "step": "oats_kill", "finished": True}
    used = [{"item": "brew", "amount_fl_oz": 48}]
    data["log"] = {"entries": [{"id": "kill", "done_on": "2027-08-05", "job": kill, "used": used}]}
    day = datetime.date.fromisoformat(as_of)
    made = make_plan(inventory_of(data), SEASON, day)
    sowing = job_of(made, f"plot/{SEASON}/oats_sowing")
    assert ("S210" in codes(made, sowing)) == waits
    assert bool(sowing.numbers) != waits


def test_a_spraying_over_the_standing_crop_does_not_hold_back_its_own_sowing() -> None:
    """Weeds in the beans are sprayed from May 25 on, beans sown until Jun 10; corn must wait."""
    plan = step_plans()["beans_or_corn"]
    data = with_strip(plan, "broadcast", _spraying(plan.steps[-2]))
    assert data["strips"]["strips"][0]["plantings"][0]["work"][-1]["step"] == "crop_weeds"
    covers = {"kinds": [plan.kind], "species": ["any"], "land": "any", "places": ["any"]}
    waits = [{"crop": "Beans or corn", "wait_days": 300}]
    use = full_use("seedlings", covers=covers, plant_back_days=waits)
    data["products"]["products"][0]["label"]["uses"].append(use)
    made = planned(data)
    assert job_of(made, f"plot/{SEASON}/crop_weeds").mix is not None
    assert "S210" not in codes(made, sowing_of(made, plan))


@each_food_plan
def test_seed_on_a_bed_is_pressed_in_or_the_sheet_says_so(plan: StepPlan) -> None:
    made = planned(with_strip(plan))
    assert "N322" in codes(made, sowing_of(made, plan))
    packing = [one for one in plan.steps if one.operation == "roll"]
    if packing:
        made = planned(with_strip(plan, "broadcast", {"step": packing[0].id}))
        assert "N322" not in codes(made, sowing_of(made, plan))
        assert job_of(made, f"plot/{SEASON}/{packing[0].id}").step.operation == "roll"


@each_food_plan
def test_frost_seeding_is_for_the_frost(plan: StepPlan) -> None:
    made = planned(with_strip(plan, "frost_seed"))
    in_frost = plan.id == "ladino_clover"
    assert ("C246" in codes(made, sowing_of(made, plan))) != in_frost
    made = planned(with_strip(plan, "broadcast"))
    assert "C246" not in codes(made, sowing_of(made, plan))


def test_places_are_screens_and_then_strips() -> None:
    inventory = inventory_of(with_strip(step_plans()["fall_oats"]))
    assert [(type(one), one.id) for one in inventory.places()] == [
        (Screen, "lane"),
        (Strip, "plot"),
    ]
    made = planned(with_strip(step_plans()["fall_oats"]))
    assert [one.id for one in made.places] == ["lane", "plot"]


def test_a_strip_hides_no_walk_and_a_screen_does() -> None:
    data: dict[str, Any] = with_strip(step_plans()["fall_oats"])
    data["stands"] = {"stands": [{"id": "oak", "name": "Oak"}]}
    data["routes"] = {"routes": [{"id": "walk", "name": "Walk", "serves": ["oak"]}]}
    data["screens"]["screens"][0]["hides"] = ["walk"]
    screen, strip = inventory_of(data).places()
    assert hidden_by(screen) == ("walk",)
    assert hidden_by(strip) == ()
