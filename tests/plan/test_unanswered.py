"""What cannot be said is listed until the owner types what it would rest on."""

import copy
from typing import Any

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.plan.views.unanswered import Question
from tests.plan.planned import AS_OF, inventory_of, planned
from tests.plan.test_burning import JANUARY, standing
from tests.properties import SEASON, Data, full_card, full_use, small_property, the_work


def listed(plan: Plan) -> set[Question]:
    words = {one.asks for one in plan.unanswered}
    return {question for question in Question if question.value.asks in words}


NEAR = {
    "water_and_wells": "none",
    "slope": "flat",
    "slope_pct": 2,
    "lines": "none",
    "neighbours": "none",
    "others": "nobody",
    "block_lat_lon": [41.03, -93.02],
}
LOOKED_UP = {"places": "all", "source": "booklet", "looked_up_on": "2026-08-01"}
HUNTING = {"id": "bow", "kind": "hunting", "first": "2026-10-01", "last": "2026-12-31"} | LOOKED_UP
NESTING = {"id": "hens", "kind": "nesting", "first": "2027-05-15", "last": "2027-08-01"} | LOOKED_UP


def answered() -> Data:
    """The small property with everything typed that a question asks for."""
    use = full_use(slope_limit_pct=10, soil_limits="not_on_label", setbacks_ft="not_on_label")
    data = small_property(full_card(use))
    data["screens"]["screens"][0]["near"] = copy.deepcopy(NEAR)
    data["dates"] = {"dates": [copy.deepcopy(HUNTING), copy.deepcopy(NESTING)]}
    mower = {"id": "mower", "name": "Mower", "width_ft": 5, "speed_mph": 4,
             "efficiency_fraction": 0.8}  # fmt: skip
    data["equipment"]["machines"] = [mower]
    the_work(data).append({"step": "first_summer_mowing", "machine": "mower"})
    crew = {"id": "crew", "reader": "hired", "insured": True}
    data["people"] = {"helpers": [{"id": "me", "weekend_hours": 8}], "contractors": [crew]}
    return data


def test_where_all_is_typed_nothing_is_listed() -> None:
    assert listed(planned(answered())) == set()


def without(key: str, data: Data) -> Data:
    screen = data["screens"]["screens"][0]
    if key == "contract":
        del screen["contract"]
    elif key in ("slope_pct", "others"):
        del screen["near"][key]
    elif key == "helpers":
        del data["people"]["helpers"]
    elif key == "contractors":
        del data["people"]["contractors"]
    elif key == "setbacks":
        for use in data["products"]["products"][0]["label"]["uses"]:
            use["setbacks_ft"] = [{"keep_from": "open water", "distance_ft": 30}]
    elif key == "soil":
        for use in data["products"]["products"][0]["label"]["uses"]:
            use["soil_limits"] = "not on sand"
    else:
        kept = [one for one in data["dates"]["dates"] if one["kind"] != key]
        data["dates"]["dates"] = kept
    return data


@pytest.mark.parametrize(
    ("key", "question"),
    [
        ("hunting", Question.HUNTED),
        ("nesting", Question.NESTS),
        ("contract", Question.CONTRACT),
        ("slope_pct", Question.STEEP),
        ("others", Question.NEAR),
        ("soil", Question.SOIL),
        ("setbacks", Question.SET_BACK),
        ("helpers", Question.HOURS),
        ("contractors", Question.INSURED),
    ],
)
def test_what_is_left_out_is_listed_with_its_place(key: str, question: Question) -> None:
    plan = planned(without(key, answered()))
    assert listed(plan) == {question}
    (one,) = plan.unanswered
    assert one.place_ids == ("lane",)


def test_the_own_limit_for_machines_asks_for_the_slope_too() -> None:
    data = without("slope_pct", answered())
    use: dict[str, Any] = data["products"]["products"][0]["label"]["uses"][0]
    use["slope_limit_pct"] = "not_on_label"
    assert listed(planned(data)) == set()
    data["property"]["slope_limit_pct"] = 15
    assert listed(planned(data)) == {Question.STEEP}


def test_a_burn_asks_for_bans_and_no_other_work_does() -> None:
    data = standing(treated_sq_ft=10000)
    plan = make_plan(inventory_of(data), SEASON, JANUARY)
    assert Question.BANNED in listed(plan)
    assert Question.BANNED not in listed(planned(small_property()))
    ban = {"id": "ban", "kind": "burn_ban", "first": "2027-05-01", "last": "2027-05-09"} | LOOKED_UP
    data["dates"] = {"dates": [ban]}
    plan = make_plan(inventory_of(data), SEASON, JANUARY)
    assert Question.BANNED not in listed(plan)


@pytest.mark.parametrize("step", ["upkeep_burning", "upkeep_mowing"])
def test_regrowth_is_asked_where_what_is_cut_hides_a_walk(step: str) -> None:
    data = standing(step, treated_sq_ft=10000)
    data["routes"] = {"routes": [{"id": "walk", "name": "Oak walk"}]}
    plan = make_plan(inventory_of(data), SEASON, JANUARY)
    assert Question.REGROWTH not in listed(plan)
    data["screens"]["screens"][0]["hides"] = ["walk"]
    plan = make_plan(inventory_of(data), SEASON, JANUARY)
    assert Question.REGROWTH in listed(plan)


def test_mowing_above_seedlings_lowers_no_screen() -> None:
    data = answered()
    data["routes"] = {"routes": [{"id": "walk", "name": "Oak walk"}]}
    data["screens"]["screens"][0]["hides"] = ["walk"]
    assert listed(planned(data)) == set()


def test_what_is_over_asks_nothing_and_no_other_reader_is_asked() -> None:
    data = small_property()
    inventory = inventory_of(data)
    plan = make_plan(inventory, SEASON, AS_OF)
    assert plan.unanswered
    assert seen_by(plan, inventory.readers[0]).unanswered == ()
    later = make_plan(inventory, SEASON, AS_OF.replace(year=2028))
    assert later.unanswered == ()
