"""A label's year and the totals by place, from what was really sprayed: by hand.

The place is an acre, the card of 4 lb in a gallon allows 128 fl oz of product in a calendar year
and 64 at one time; 32 fl oz are 1 lb of active.
"""

import copy
import datetime
from typing import Any

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from tests.plan.planned import BURN_DOWN, KILL, inventory_of, well_stocked
from tests.properties import SEASON, Data, full_card, full_use, small_property, the_work

DAY = datetime.date(2027, 4, 10)  # the kill is over, the burn down is open
SPRING = "2027-04-09"


def two_sprayings(limit_fl_oz: float, counted: str = "any_12_months") -> Data:
    """The kill at 32 fl oz, and a burn down of 32 fl oz of the same product half a year later."""
    year = {"amount_fl_oz_per_ac": limit_fl_oz, "counted": counted}
    uses = [
        full_use(timing, max_per_year=year, times_per_year="not_on_label")
        for timing in ("before_sowing", "after_sowing_before_emergence")
    ]
    data = well_stocked(small_property(full_card(*uses)))
    work = dict(the_work(data)[0]) | {"step": "spring_burn_down"}
    the_work(data).append(work)
    return data


def killed(fl_oz: float | None, area_ac: float | None = 1, **more: Any) -> Data:
    """An entry that finishes the kill."""
    job = {"planting": "lane-27", "step": "autumn_kill", "finished": True, "area_ac": area_ac}
    entry: Data = {"id": "e-1", "done_on": "2026-09-14",
                   "job": {key: one for key, one in job.items() if one is not None}}  # fmt: skip
    if fl_oz is not None:
        entry["used"] = [{"item": "brew", "amount_fl_oz": fl_oz}]
    return entry | more


def plan_of(data: Data, *entries: Data) -> Plan:
    logged = data | {"log": {"entries": list(entries)}}
    return make_plan(inventory_of(logged), SEASON, DAY)


def stops(data: Data, *entries: Data) -> set[str]:
    found = plan_of(data, *entries).findings_on(BURN_DOWN)
    return {one.code for one in found if one.severity == "stop"}


def totals(plan: Plan) -> dict[int, float]:
    return {one.year: one.total.value for one in plan.actives}


def test_what_was_really_sprayed_counts_and_not_what_was_planned() -> None:
    data = two_sprayings(70)
    assert stops(data, killed(32)) == set()  # 64
    assert stops(data, killed(38)) == set()  # 70
    assert stops(data, killed(38.5)) == {"S112"}  # 70.5
    assert stops(two_sprayings(60), killed(20)) == set()  # 52, and the plan had 64
    assert stops(two_sprayings(60)) == {"S112"}


def test_the_ground_it_was_put_on_makes_the_rate() -> None:
    data = two_sprayings(70)
    assert stops(data, killed(32, 1)) == set()
    assert stops(data, killed(32, 0.5)) == {"S112"}  # 64 on the half acre, and 32 are to come


def test_two_days_on_ground_apart_count_by_the_more_and_on_the_same_ground_together() -> None:
    data = two_sprayings(70)
    first = killed(19, 0.5, id="e-0", done_on="2026-09-13")
    first["job"].pop("finished")
    assert (
        stops(data, first, killed(15, 0.5)) == set()
    )  # 38 and 30 on an acre, one beside the other
    assert stops(data, first, killed(20, 0.5)) == {"S112"}
    # seven tenths and a half do not lie apart on an acre: 38 and 20 on the same ground
    assert stops(data, first, killed(14, 0.7)) == {"S112"}


@pytest.mark.parametrize(("fl_oz", "area_ac"), [(None, 1), (32, None), (None, None)])
def test_an_amount_that_is_left_out_stops_what_counts_with_it(
    fl_oz: float | None, area_ac: float | None
) -> None:
    data = two_sprayings(128)
    assert stops(data, killed(fl_oz, area_ac)) == {"S200"}
    cure = killed(32, 1, id="e-2", corrects="e-1")
    assert stops(data, killed(fl_oz, area_ac), cure) == set()


def test_another_product_with_the_same_active_counts() -> None:
    data = two_sprayings(70)
    other = dict(data["products"]["products"][0]) | {"id": "other", "name": "Other"}
    data["products"]["products"].append(other)
    used = [{"item": "other", "amount_fl_oz": 39}]
    fence = {"id": "e-9", "done_on": SPRING, "used": used,
             "sprayed": {"place": "lane", "treated_ac": 1}}  # fmt: skip
    assert stops(data, killed(0.5), fence) == {"S112"}  # 0.5, 39 and 32
    used[0]["amount_fl_oz"] = 37
    assert stops(data, killed(0.5), fence) == set()
    elsewhere = fence | {"sprayed": {"location": "the yard", "treated_ac": 1}}
    used[0]["amount_fl_oz"] = 500
    assert stops(data, killed(0.5), elsewhere) == set()


def test_a_begun_spraying_counts_by_its_plan_unless_more_was_used() -> None:
    data = two_sprayings(64)
    begun = killed(40)
    begun["job"].pop("finished")
    assert stops(data, begun) == {"S112"}  # 40 and 32
    begun["used"][0]["amount_fl_oz"] = 3
    assert stops(data, begun) == set()  # 32 and 32


def test_a_calendar_year_begins_anew_in_january() -> None:
    assert stops(two_sprayings(33, "calendar_year"), killed(64)) == set()
    assert stops(two_sprayings(33, "any_12_months"), killed(64)) == {"S112"}


def test_totals_by_place_and_year_are_of_what_was_sprayed() -> None:
    data = two_sprayings(128)
    assert totals(plan_of(data, killed(48))) == {2026: 1.5, 2027: 1}
    assert totals(plan_of(data, killed(32, 0.5))) == {2026: 2, 2027: 1}
    spring = {"id": "e-2", "done_on": SPRING, "used": [{"item": "brew", "amount_fl_oz": 24}],
              "job": {"planting": "lane-27", "step": "spring_burn_down", "area_ac": 1,
                      "finished": True}}  # fmt: skip
    assert totals(plan_of(data, killed(48), spring)) == {2026: 1.5, 2027: 0.75}


def test_a_missed_spraying_adds_nothing_to_the_totals_and_counts_against_the_limit() -> None:
    data = two_sprayings(128)
    plan = plan_of(data)
    assert next(one for one in plan.jobs if one.id == KILL).state.kind == "missed"
    assert totals(plan) == {2027: 1}
    assert stops(two_sprayings(60)) == {"S112"}  # not logged, it may have been done


def test_a_correction_that_tells_no_spraying_is_told_until_it_does() -> None:
    data = two_sprayings(70)
    note: Data = {"id": "e-2", "done_on": "2026-09-20", "corrects": "e-1", "note": "see the paper"}
    told = plan_of(data, killed(39), note)
    assert "C316" in {one.code for one in told.findings_on("log/e-1")}
    assert stops(data, killed(39), note) == {"S112"}  # 39 and 32
    settled = [
        killed(8, id="e-2", corrects="e-1"),
        note | {"not_done": True},
        note | {"unknown": {"products": ["brew"], "most_fl_oz_per_ac": 8, "checked_with": "paper"},
                "job": {"planting": "lane-27", "step": "autumn_kill", "finished": True}},
    ]  # fmt: skip
    for correction in settled:
        plan = plan_of(data, killed(39), correction)
        assert "C316" not in {one.code for one in plan.findings_on("log/e-1")}
        assert "S112" not in stops(data, killed(39), correction)


def test_a_clean_out_beside_a_spraying_that_is_corrected_does_not_count() -> None:
    """The tank is not known to be clean: the correction says nothing of the clean-out."""
    data = two_sprayings(128)
    data["products"]["products"][0]["label"]["actives"][0]["works_as"] = ["soil_residual"]
    other = copy.deepcopy(data["products"]["products"][0]) | {"id": "other", "name": "Other"}
    other["label"]["actives"][0]["active"] = "quite another"
    data["products"]["products"].append(other)
    the_work(data)[1]["product"] = "other"
    clean = killed(32, cleaned_out={"sprayer": "boom"}) | {"sprayed": {"sprayer": "boom"}}
    assert "S154" not in stops(data, clean)
    note: Data = {"id": "e-2", "done_on": "2026-09-20", "corrects": "e-1", "note": "wrong"}
    assert "S154" in stops(data, clean, note)
