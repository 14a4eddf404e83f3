"""Counts of a planting and weeds beside them: what they decide, worked by hand.

The lane is 726 by 60 ft, an acre, sown for the season of 2027 with 8 lb of pure live seed an acre
from a lot of 0.90 x (0.60 + 0.20) = 0.72.
"""

import datetime
from typing import Any

import pytest

from generator.compute.plant_count import CELLS_IN_FRAME
from generator.inventory.counted import CELLS_OF_A_PLACEMENT as CELLS_OF_THE_RULES
from generator.plan.build.season_plan import make_plan
from generator.plan.model.counts import CountSaid
from generator.plan.model.finding import Finding
from generator.plan.model.plan import Plan
from generator.plan.views.numbers import numbers_of
from tests.plan.planned import inventory_of
from tests.properties import Data, full_card, full_use, small_property

JUNE = "2028-06-20"
AFTER = datetime.date(2028, 7, 20)
COUNT_CODES = {"C320", "C321", "C322", "C323", "N400", "N401", "N402", "N403"}


def count(with_plant: float, day: str = JUNE, placed: float = 4, **more: Any) -> Data:
    """A log entry of a count of the lane."""
    weeds = more.pop("weeds_seen", [])
    counted = {
        "planting": "lane-27",
        "placements_count": placed,
        "cells_with_plant_count": with_plant,
    }
    return {"done_on": day, "counted": counted | more, "weeds_seen": weeds}


def with_log(*entries: Data, data: Data | None = None) -> Data:
    data = data or small_property()
    data["log"] = {"entries": [{"id": f"e-{n}"} | one for n, one in enumerate(entries)]}
    return data


def plan_of(data: Data, as_of: datetime.date = AFTER, season: int = 2028) -> Plan:
    return make_plan(inventory_of(data), season, as_of)


def codes(plan: Plan) -> set[str]:
    """The codes of what is told of the lane's counts."""
    return {one.code for one in plan.findings_on("lane")} & COUNT_CODES


def told(plan: Plan, code: str) -> Finding:
    return next(one for one in plan.findings_on("lane") if one.code == code)


def said(plan: Plan) -> tuple[CountSaid, ...]:
    (planting,) = plan.decided.plantings
    return planting.counts


def test_the_rules_and_the_calculation_know_one_frame() -> None:
    assert CELLS_OF_THE_RULES == CELLS_IN_FRAME


def test_a_frequency_and_both_conversions() -> None:
    # 70 of 4 x 25 = 100 cells: 70%; 0.4 x 70 = 28; 70 / 2.25 = 31.1; the lower counts
    (one,) = said(plan_of(with_log(count(70))))
    numbers = {name: number.value for name, number in one.numbers.items()}
    assert numbers["cells_count"] == 100
    assert numbers["frequency_fraction"] == pytest.approx(0.70)
    assert numbers["careful_plants_per_sq_m"] == pytest.approx(28.0)
    assert numbers["one_in_a_cell_plants_per_sq_m"] == pytest.approx(31.11, abs=0.005)
    assert numbers["plants_per_sq_m"] == pytest.approx(28.0)
    # 28 x 0.09290304 = 2.601
    assert numbers["plants_per_sq_ft"] == pytest.approx(2.601, abs=5e-4)
    assert (one.outcome, one.year) == ("keep", 2)


def test_a_frame_read_in_part_counts_the_cells_that_were_read() -> None:
    (one,) = said(plan_of(with_log(count(40, cells_count=80))))
    assert one.numbers["frequency_fraction"].value == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("with_plant", "outcome", "told_codes"),
    [(0, "start_over", {"C321"}), (24, "start_over", {"C321"}), (25, "keep", set()),
     (40, "keep", set())],
)  # fmt: skip
def test_a_quarter_of_the_cells_is_enough_for_cover(
    with_plant: int, outcome: str, told_codes: set[str]
) -> None:
    plan = plan_of(with_log(count(with_plant)))
    assert [one.outcome for one in said(plan)] == [outcome]
    assert codes(plan) == told_codes


def test_a_first_autumn_is_too_early_to_condemn() -> None:
    """Seven plants in a hundred cells in September of the first year decide nothing."""
    early = with_log(count(7, day="2027-09-12"))
    plan = plan_of(early, datetime.date(2027, 9, 20))
    assert codes(plan) == {"N401"}
    assert "Jun 15, 2028" in told(plan, "N401").cure
    assert [(one.outcome, one.seed) for one in said(plan)] == [("too_early", ())]
    later = with_log(count(7, day="2027-09-12"), count(60))
    assert codes(plan_of(later)) == set()
    parts = (count(60, from_ft=0, to_ft=300), count(60, from_ft=300, to_ft=726))
    assert codes(plan_of(with_log(count(7, day="2027-09-12"), *parts))) == set()


@pytest.mark.parametrize(
    ("as_of", "entries", "told_codes"),
    [
        ("2027-08-31", [], set()),
        ("2027-09-01", [], {"N402"}),
        ("2027-10-31", [], {"N402"}),
        ("2027-11-01", [], set()),
        ("2027-09-20", [count(30, day="2027-09-12")], {"N401"}),
        ("2028-06-14", [count(30, day="2027-09-12")], {"N401"}),
        ("2028-06-15", [count(30, day="2027-09-12")], {"N401", "N403"}),
        ("2028-06-15", [], {"N403"}),
        ("2028-06-15", [count(30, day="2028-06-15")], set()),
        ("2029-12-31", [], {"N403"}),
        ("2030-01-01", [], set()),
    ],
)
def test_a_count_is_asked_for_by_its_time(
    as_of: str, entries: list[Data], told_codes: set[str]
) -> None:
    day = datetime.date.fromisoformat(as_of)
    assert codes(plan_of(with_log(*entries), day)) == told_codes


def test_a_thin_stretch_is_overseeded_with_seed_and_cost() -> None:
    plan = plan_of(with_log(count(20, from_ft=300, to_ft=620), count(50, from_ft=0, to_ft=300)))
    assert [one.outcome for one in said(plan)] == ["keep", "overseed"]
    assert codes(plan) == {"C320"}
    figures = dict(told(plan, "C320").figures)
    assert (figures["From"].value, figures["To"].value) == (300, 620)
    thin = said(plan)[1]
    # 320 x 60 = 19,200 sq ft = 0.440771 ac; x 8 / 0.72 = 4.89746 lb; x 118.50 / 10 = $58.03
    assert thin.area is not None
    assert thin.area.value == pytest.approx(0.440771, abs=5e-7)
    (seed,) = thin.seed
    assert seed.bulk.value == pytest.approx(4.89746, abs=5e-6)
    assert seed.cost is not None
    assert seed.cost.value == pytest.approx(58.03, abs=0.005)
    assert seed.bulk.identity in numbers_of(plan)


def test_a_stretch_is_in_order_once_it_is_counted_again() -> None:
    first = count(20, from_ft=300, to_ft=620)
    again = count(45, day="2028-07-10", from_ft=290, to_ft=640)
    plan = plan_of(with_log(first, again))
    assert codes(plan) == set()
    assert [one.entry.id for one in said(plan)] == ["e-1"]


def test_a_count_of_part_leaves_the_rest_of_an_earlier_one_standing() -> None:
    plan = plan_of(with_log(count(60), count(10, day="2028-07-10", from_ft=100, to_ft=200)))
    assert [one.outcome for one in said(plan)] == ["keep", "overseed"]


def test_thin_stretches_that_make_up_the_place_are_a_place_to_start_over() -> None:
    halves = (count(10, from_ft=0, to_ft=400), count(10, from_ft=400, to_ft=726))
    assert codes(plan_of(with_log(*halves))) == {"C321"}
    with_gap = (count(10, from_ft=0, to_ft=400), count(10, from_ft=410, to_ft=726))
    assert codes(plan_of(with_log(*with_gap))) == {"C320"}


def test_a_stretch_without_a_taped_width_has_no_seed() -> None:
    data = small_property()
    screen = data["screens"]["screens"][0]
    del screen["width_ft"]
    screen["area_ac"] = 1
    plan = plan_of(with_log(count(20, from_ft=300, to_ft=620), data=data))
    (one,) = said(plan)
    assert (one.outcome, one.area, one.seed) == ("overseed", None, ())


def test_starting_over_says_from_when_the_ground_may_be_sown() -> None:
    killed = {
        "done_on": "2026-09-20",
        "job": {"planting": "lane-27", "step": "autumn_kill", "finished": True},
        "used": [{"item": "brew", "amount_fl_oz": 32}],
    }
    card = full_card(full_use(seeding_interval_days=60))
    answered = plan_of(with_log(killed, count(10), data=small_property(card)))
    # 60 days after Sep 20, 2026
    assert "from Nov 19, 2026 on" in told(answered, "C321").words
    assert dict(told(answered, "C321").figures)["The label asks for"].value == 60
    without = plan_of(with_log(count(10)))
    assert "not known yet: write each spraying down" in told(without, "C321").words
    gap = full_use()
    del gap["seeding_interval_days"]
    unknown = plan_of(with_log(killed, count(10), data=small_property(full_card(gap))))
    assert "leaves out the days before this planting is sown" in told(unknown, "C321").words


def test_a_planting_after_it_takes_the_word_from_a_failed_one() -> None:
    data = with_log(count(10))
    again = dict(data["screens"]["screens"][0]["plantings"][0], id="lane-29", season=2029)
    data["screens"]["screens"][0]["plantings"].append(again)
    plan = make_plan(inventory_of(data), 2028, AFTER)
    assert codes(plan) == set()


def test_rows_are_counted_by_plants() -> None:
    row = {"planting": "lane-27", "mean_plants_per_row_ft": 0.5, "row_spacing_in": 7.5}
    plan = plan_of(with_log({"done_on": JUNE, "counted": row}))
    (one,) = said(plan)
    # 0.5 x 12 / 7.5 = 0.8 on a square foot, / 0.09290304 = 8.611: under 10
    assert one.numbers["plants_per_sq_m"].value == pytest.approx(8.611, abs=5e-4)
    assert (one.outcome, one.by_frame) == ("start_over", False)
    thick = row | {"mean_plants_per_row_ft": 0.6}
    # 0.96 on a square foot, 10.33 on a square meter
    assert codes(plan_of(with_log({"done_on": JUNE, "counted": thick}))) == set()


def test_too_few_placements_are_noted_and_never_a_fault() -> None:
    # an acre asks for 4, and 3 are not enough; half of it asks for 2
    assert codes(plan_of(with_log(count(60, placed=3)))) == {"N400"}
    assert codes(plan_of(with_log(count(60, placed=4)))) == set()
    half = count(40, placed=2, from_ft=0, to_ft=363)
    assert codes(plan_of(with_log(half))) == set()


FOXTAIL = {"weed": "giant-foxtail", "stage": "seedling", "height_in": 6, "share": "many"}
RAGWEED = {"weed": "Common ragweed", "stage": "growing", "height_in": 18, "share": "most"}


def test_many_weeds_beside_plants_enough_ask_to_be_held_down() -> None:
    plan = plan_of(with_log(count(60, weeds_seen=[RAGWEED])))
    assert [one.outcome for one in said(plan)] == ["weeds"]
    words = told(plan, "C322").words
    assert "growth regulator that kills broad-leaved plants spares this planting" in words
    assert "mow above the grass" in words


def test_no_killer_of_grasses_is_named_for_grass() -> None:
    plan = plan_of(with_log(count(60, weeds_seen=[FOXTAIL])))
    words = told(plan, "C322").words
    assert "a residual works before it comes up next spring" in words
    assert "grass killer" not in words
    brome = FOXTAIL | {"weed": "smooth-brome"}
    words = told(plan_of(with_log(count(60, weeds_seen=[brome]))), "C322").words
    assert "no way of working in our list spares this planting now" in words


def test_no_growth_regulator_is_named_where_a_legume_is_sown() -> None:
    data = small_property()
    data["seed"]["lots"].append(data["seed"]["lots"][0] | {"id": "pea", "species": "partridge-pea"})
    seed = [
        {"species": "switchgrass", "lot": "sg", "rate_pls_lb_per_ac": 7},
        {"species": "partridge-pea", "lot": "pea", "rate_pls_lb_per_ac": 1},
    ]
    data["screens"]["screens"][0]["plantings"][0]["seed"] = seed
    thistle = RAGWEED | {"weed": "musk-thistle"}
    words = told(plan_of(with_log(count(60, weeds_seen=[thistle]), data=data)), "C322").words
    assert "no way of working in our list spares this planting now" in words


def test_in_its_first_summer_no_way_of_working_is_named() -> None:
    early = with_log(count(60, day="2027-09-12", weeds_seen=[RAGWEED]))
    (one,) = said(plan_of(early, datetime.date(2027, 9, 20)))
    assert [found.ways for found in one.weeds] == [()]
    (later,) = said(plan_of(with_log(count(60, weeds_seen=[RAGWEED]))))
    assert [found.ways for found in later.weeds] == [("auxin", "soil_residual")]


@pytest.mark.parametrize("share", ["none", "few", "some"])
def test_weeds_are_held_down_once_they_are_seen_to_be_few(share: str) -> None:
    look = {
        "done_on": "2028-07-15",
        "weeds_seen": [RAGWEED | {"weed": "common-ragweed", "planting": "lane-27", "share": share}],
    }
    assert codes(plan_of(with_log(count(60, weeds_seen=[RAGWEED]), look))) == set()


def test_weeds_of_long_before_the_count_are_not_beside_it() -> None:
    def looked(day: str) -> Data:
        return {"done_on": day, "weeds_seen": [RAGWEED | {"planting": "lane-27"}]}

    # May 21 is 30 days before Jun 20, May 20 is 31
    assert codes(plan_of(with_log(looked("2028-05-21"), count(60)))) == {"C322"}
    assert codes(plan_of(with_log(looked("2028-05-20"), count(60)))) == set()


def test_weeds_at_the_count_of_one_stretch_are_not_beside_another() -> None:
    upper = count(60, from_ft=0, to_ft=300, weeds_seen=[RAGWEED])
    lower = count(60, from_ft=300, to_ft=726)
    assert [one.outcome for one in said(plan_of(with_log(upper, lower)))] == ["weeds", "keep"]
    whole = {"done_on": JUNE, "weeds_seen": [RAGWEED | {"planting": "lane-27"}]}
    bare = count(60, from_ft=0, to_ft=300)
    everywhere = said(plan_of(with_log(bare, lower, whole)))
    assert [one.outcome for one in everywhere] == ["weeds", "weeds"]


def test_a_weed_of_the_owner_s_own_words_is_told_and_has_no_way() -> None:
    plan = plan_of(with_log(count(60, weeds_seen=[RAGWEED | {"weed": "a white flower"}])))
    assert "a white flower is not in our list" in told(plan, "C322").words


@pytest.mark.parametrize("typed", ["canada-thistle", "Canada thistle", "canada THISTLE"])
def test_a_noxious_weed_is_told_until_it_is_gone(typed: str) -> None:
    data = small_property()
    data["property"]["noxious"] = [
        {"weed": typed, "looked_up_on": "2028-05-02", "source": "county weed list"}
    ]
    thistle = {"weed": "canada-thistle", "share": "few"}
    plan = plan_of(with_log(count(60, weeds_seen=[thistle]), data=data))
    assert codes(plan) == {"C323"}
    assert "county weed list" in told(plan, "C323").words
    gone = {
        "done_on": "2028-07-18",
        "weeds_seen": [thistle | {"planting": "lane-27", "share": "none"}],
    }
    assert codes(plan_of(with_log(count(60, weeds_seen=[thistle]), gone, data=data))) == set()
    data["property"]["noxious"] = []
    assert codes(plan_of(with_log(count(60, weeds_seen=[thistle]), data=data))) == set()


def test_a_corrected_count_counts_no_more() -> None:
    right = count(60) | {"corrects": "e-0"}
    assert codes(plan_of(with_log(count(6), right))) == set()


def test_rows_of_trees_are_not_asked_for_a_count() -> None:
    data = small_property()
    planting = data["screens"]["screens"][0]["plantings"][0]
    data["seed"]["plants"] = [
        {"id": "cedar", "name": "Cedar", "species": "eastern-redcedar", "root": "bare_root"}
    ]
    planting |= {"method": "plant", "steps": "woody_row", "work": []}
    planting["woody"] = [{"plants": "cedar", "rows_count": 1, "spacing_ft": 8}]
    del planting["seed"]
    data["readers"]["readers"] = []
    plan = plan_of(data)
    assert plan.decided.plantings == ()
    assert codes(plan) == set()
