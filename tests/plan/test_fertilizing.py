"""Fertilizing by hand: what goes on for each need, what bags bring along, what is left out."""

import copy
import datetime
from typing import Any

import pytest

from generator.plan.feeding.doses import nutrients_met, solved
from generator.plan.jobs.soil import older_than_years
from generator.plan.model.job import DateReason, Job, OpenDates
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.plan.season.open_dates import judged_on
from generator.working import Given, Quantity
from tests.plan.planned import inventory_of, planned
from tests.properties import SEASON, Data, small_property

JOB = f"lane/{SEASON}/fertilizing"
SOWING = f"lane/{SEASON}/frost_seeding"
NEED = {"n_lb_per_ac": 0, "p2o5_lb_per_ac": 40, "k2o_lb_per_ac": 15}


def bag(identity: str, n: float, p2o5: float, k2o: float, **more: Any) -> Data:
    """A fertilizer by its grade, in bags of 50 lb."""
    grade = {"n_pct": n, "p2o5_pct": p2o5, "k2o_pct": k2o}
    return {"id": identity, "name": f"{n:g}-{p2o5:g}-{k2o:g}", "package_lb": 50} | grade | more


MAP, TRIPLE, POTASH = bag("map", 11, 52, 0), bag("triple", 0, 46, 0), bag("potash", 0, 0, 60)
BLEND, UREA = bag("blend", 13, 13, 13), bag("urea", 46, 0, 0)


def fed(*bags: Data, named: list[str] | None = None, **test: Any) -> Data:
    """The small property, an acre, with a soil test and these fertilizers, all or some named."""
    data = small_property()
    tested = {"id": "soil", "places": ["lane"], "sampled_on": "2026-04-11", "need": dict(NEED)}
    data["ground"] = {"soil_tests": [tested | test]}
    data["products"]["fertilizers"] = [copy.deepcopy(one) for one in bags]
    planting = _planting(data)
    planting["soil_test"] = "soil"
    planting["fertilizers"] = [one["id"] for one in bags] if named is None else named
    return data


def _planting(data: Data) -> Data:
    planting: Data = data["screens"]["screens"][0]["plantings"][0]
    return planting


def job_in(plan: Plan, job_id: str = JOB) -> Job | None:
    return next((one for one in plan.jobs if one.id == job_id), None)


def spread(plan: Plan) -> dict[str, dict[str, float]]:
    """What goes on of each fertilizer, by its id and the names of its numbers."""
    job = job_in(plan)
    assert job is not None
    return {
        one.item.id: {name: number.value for name, number in one.numbers.items()}
        for one in job.spreadings
    }


def got(plan: Plan) -> dict[str, dict[str, float]]:
    """What each nutrient gets and lacks."""
    job = job_in(plan)
    assert job is not None
    return {
        one.name: {
            name: figure.value
            for name, figure in (
                ("got_lb_per_ac", one.got),
                ("short_lb_per_ac", one.short),
                ("over_lb_per_ac", one.over),
            )
            if isinstance(figure, Given | Quantity)
        }
        for one in job.nutrients
    }


def codes(plan: Plan, job_id: str = JOB) -> set[str]:
    return {one.code for one in plan.findings_on(job_id)}


def test_phosphate_then_potash() -> None:
    plan = planned(fed(MAP, POTASH))
    # 40 / 0.52 = 76.923 lb an acre, on an acre; 50 lb bags: one and 26.923 lb.
    # 15 / 0.60 = 25 lb: no whole bag.
    assert spread(plan) == {
        "map": pytest.approx(
            {
                "rate_lb_per_ac": 76.923,
                "stretch_lb": 10.595,  # on 100 ft of 60 ft, 6,000 of 43,560 square feet
                "product_lb": 76.923,
                "bags_count": 1,
                "part_bag_lb": 26.923,
            },
            abs=5e-4,
        ),
        "potash": pytest.approx(
            {
                "rate_lb_per_ac": 25,
                "product_lb": 25,
                "stretch_lb": 25 * 6000 / 43560,
                "bags_count": 0,
                "part_bag_lb": 25,
            }
        ),
    }
    # The phosphate brings 76.923 x 0.11 = 8.4615 lb of nitrogen nobody asked for.
    assert got(plan) == {
        "n": {
            "got_lb_per_ac": pytest.approx(8.4615, abs=5e-5),
            "over_lb_per_ac": pytest.approx(8.4615, abs=5e-5),
        },
        "p2o5": {"got_lb_per_ac": pytest.approx(40)},
        "k2o": {"got_lb_per_ac": pytest.approx(15)},
    }


def test_twice_the_ground_twice_the_pounds() -> None:
    data = fed(MAP, POTASH)
    one = spread(planned(data))
    data["screens"]["screens"][0]["length_ft"] *= 2
    two = spread(planned(data))
    for item, numbers in one.items():
        assert two[item]["product_lb"] == pytest.approx(2 * numbers["product_lb"])
        assert two[item]["rate_lb_per_ac"] == numbers["rate_lb_per_ac"]


def test_a_blend_is_credited_and_the_rest_comes_from_a_straight_bag() -> None:
    need = NEED | {"p2o5_lb_per_ac": 26, "k2o_lb_per_ac": 56}
    plan = planned(fed(BLEND, POTASH, need=need))
    # 26 / 0.13 = 200 lb of blend bring 26 lb of potash; 30 lb more / 0.60 = 50 lb.
    assert spread(plan)["blend"]["rate_lb_per_ac"] == pytest.approx(200)
    assert spread(plan)["potash"]["rate_lb_per_ac"] == pytest.approx(50)
    assert got(plan)["k2o"] == {"got_lb_per_ac": pytest.approx(56)}


def test_a_blend_alone_is_raised_until_both_needs_are_met() -> None:
    need = NEED | {"p2o5_lb_per_ac": 26, "k2o_lb_per_ac": 39}
    plan = planned(fed(BLEND, need=need))
    # 200 lb for the phosphate, 13 lb of potash more / 0.13 = 100 lb: 300 lb, six bags, no rest.
    assert spread(plan)["blend"] == pytest.approx(
        {
            "rate_lb_per_ac": 300,
            "product_lb": 300,
            "stretch_lb": 300 * 6000 / 43560,
            "bags_count": 6,
            "part_bag_lb": 0,
        },
        abs=1e-9,
    )
    # The potash is met to the pound; 13 lb more phosphate than asked comes with it.
    assert got(plan)["p2o5"] == {
        "got_lb_per_ac": pytest.approx(39),
        "over_lb_per_ac": pytest.approx(13),
    }
    assert got(plan)["k2o"] == {"got_lb_per_ac": pytest.approx(39)}


def test_potash_that_a_blend_brings_too_much_of_is_not_bought() -> None:
    need = NEED | {"p2o5_lb_per_ac": 26, "k2o_lb_per_ac": 15}
    assert set(spread(planned(fed(BLEND, POTASH, need=need)))) == {"blend"}


@pytest.mark.parametrize("asked", [1, 30, 120])
def test_nitrogen_is_never_topped_up_at_the_sowing_of_native_grass(asked: float) -> None:
    need = NEED | {"n_lb_per_ac": asked}
    plan = planned(fed(TRIPLE, POTASH, UREA, need=need))
    assert set(spread(plan)) == {"triple", "potash"}
    assert got(plan)["n"] == {"short_lb_per_ac": asked}
    assert "C256" in codes(plan)
    (caution,) = (one for one in plan.findings_on(JOB) if one.code == "C256")
    assert [figure.value for _, figure in caution.figures] == [asked]
    assert "feeds the weeds" in caution.words


def test_no_word_on_nitrogen_where_none_is_asked_for_and_none_comes_along() -> None:
    assert codes(planned(fed(TRIPLE, POTASH))) == set()


def test_nitrogen_brought_along_is_said_and_a_listed_bag_without_it_named() -> None:
    data = fed(MAP, POTASH, TRIPLE, named=["map", "potash"])
    plan = planned(data)
    (caution,) = (one for one in plan.findings_on(JOB) if one.code == "C257")
    assert caution.words.startswith("11-52-0, spread for its phosphate")
    assert caution.cure == (
        "For phosphate (P2O5), 0-46-0 carries no nitrogen (N) and is on your list: use it instead."
    )
    assert caution.words_for_others == ""
    del data["products"]["fertilizers"][2]
    (caution,) = (one for one in planned(data).findings_on(JOB) if one.code == "C257")
    assert caution.cure.startswith("For phosphate (P2O5), ask your seller")


def test_nitrogen_of_a_bag_spread_for_two_needs_is_said_once() -> None:
    plan = planned(fed(BLEND, need=NEED | {"p2o5_lb_per_ac": 26, "k2o_lb_per_ac": 39}))
    (caution,) = (one for one in plan.findings_on(JOB) if one.code == "C257")
    assert "spread for its phosphate (P2O5) and potash (K2O)" in caution.words
    # 300 lb of blend bring 39 lb of nitrogen
    assert [figure.value for _, figure in caution.figures] == [pytest.approx(39)]  # type: ignore[union-attr]


def test_more_than_asked_is_said_until_a_bag_without_it_is_named() -> None:
    need = NEED | {"p2o5_lb_per_ac": 0, "k2o_lb_per_ac": 60}
    data = fed(BLEND, POTASH, named=["blend"], need=need)
    plan = planned(data)
    # 60 / 0.13 = 461.5 lb of blend bring 60 lb of phosphate nobody asked for.
    assert got(plan)["p2o5"] == {
        "got_lb_per_ac": pytest.approx(60),
        "over_lb_per_ac": pytest.approx(60),
    }
    assert "over_lb_per_ac" not in got(plan)["k2o"]
    (caution,) = (one for one in plan.findings_on(JOB) if one.code == "C276")
    assert caution.words.startswith("More phosphate (P2O5) goes on than is asked for")
    assert "13-13-13" in caution.words
    assert "states forbid phosphate" in caution.words
    assert [figure.value for _, figure in caution.figures] == [0, pytest.approx(60)]  # type: ignore[union-attr]
    assert caution.cure == (
        "For potash (K2O), 0-0-60 carries no phosphate (P2O5) and is on your list: use it instead."
    )
    _planting(data)["fertilizers"] = ["potash"]
    plan = planned(data)
    assert codes(plan) == set()
    assert got(plan)["p2o5"] == {}


def test_more_than_asked_with_a_better_bag_named_says_to_leave_the_other_out() -> None:
    both = bag("both", 0, 20, 20)
    data = fed(both, TRIPLE, POTASH, need=NEED | {"p2o5_lb_per_ac": 26, "k2o_lb_per_ac": 15})
    plan = planned(data)
    # 130 lb for the phosphate bring 26 lb of potash: 11 more than asked.
    assert got(plan)["k2o"]["over_lb_per_ac"] == pytest.approx(11)
    (caution,) = (one for one in plan.findings_on(JOB) if one.code == "C276")
    assert caution.words.startswith("More potash (K2O) goes on")
    assert "states forbid" not in caution.words
    assert (
        "0-46-0 carries no potash (K2O) and is named already: leave the other out." in caution.cure
    )
    _planting(data)["fertilizers"] = ["triple", "potash"]
    assert codes(planned(data)) == set()


def test_a_bag_with_what_nobody_asks_for_comes_last() -> None:
    need = NEED | {"p2o5_lb_per_ac": 30, "k2o_lb_per_ac": 0}
    plan = planned(fed(bag("both", 0, 20, 20), TRIPLE, need=need))
    assert set(spread(plan)) == {"triple"}
    assert codes(plan) == set()


def test_a_rate_beyond_what_is_spread_at_once_is_a_slip_of_unit() -> None:
    # 60 lb of nutrient in a bag of 5 percent: 1,200 lb an acre; 50 lb in it: 1,000.
    data = fed(bag("weak", 0, 5, 0), need=NEED | {"p2o5_lb_per_ac": 60, "k2o_lb_per_ac": 0})
    (caution,) = (one for one in planned(data).findings_on(JOB) if one.code == "C275")
    assert "0-5-0: more to an acre" in caution.words
    assert [figure.value for _, figure in caution.figures] == [pytest.approx(1200), 1000]  # type: ignore[union-attr]
    data["ground"]["soil_tests"][0]["need"]["p2o5_lb_per_ac"] = 50
    assert "C275" not in codes(planned(data))


def test_a_grade_with_no_number_as_large_as_a_percent_is_a_slip_of_unit() -> None:
    need = NEED | {"p2o5_lb_per_ac": 2, "k2o_lb_per_ac": 0}
    data = fed(bag("shares", 0, 0.52, 0.6), need=need)
    (caution,) = (one for one in planned(data).findings_on(JOB) if one.code == "C275")
    assert "none of the three numbers is a percent" in caution.words
    assert [figure.value for _, figure in caution.figures] == [0, 0.0052, 0.006, 1]  # type: ignore[union-attr]
    data["products"]["fertilizers"][0] |= {"p2o5_pct": 52, "k2o_pct": 0}
    assert "C275" not in codes(planned(data))


def test_of_two_named_bags_the_one_without_nitrogen_is_taken() -> None:
    plan = planned(fed(MAP, TRIPLE, POTASH))
    # 40 / 0.46 = 86.957 lb
    assert spread(plan)["triple"]["rate_lb_per_ac"] == pytest.approx(86.957, abs=5e-4)
    assert "map" not in spread(plan)
    assert codes(plan) == set()


def test_nitrogen_is_topped_up_last_for_other_kinds_with_what_came_along_credited() -> None:
    data = fed(MAP, POTASH, UREA, need=NEED | {"n_lb_per_ac": 80})
    inventory = inventory_of(data)
    need = inventory.soil_tests[0].need
    assert need is not None
    assert nutrients_met("clover") == ("p2o5", "k2o", "n")
    doses = solved("job", need, inventory.fertilizers, nutrients_met("clover"))
    # (80 - 8.4615) / 0.46 = 155.52 lb
    assert [(one.item.id, one.nutrient) for one in doses] == [
        ("map", "p2o5"),
        ("potash", "k2o"),
        ("urea", "n"),
    ]
    assert doses[2].rate.value == pytest.approx(155.518, abs=5e-4)


def test_a_need_nothing_named_carries_is_said_until_something_does() -> None:
    data = fed(TRIPLE, POTASH, named=["triple"])
    plan = planned(data)
    (caution,) = (one for one in plan.findings_on(JOB) if one.code == "C255")
    assert "potash (K2O)" in caution.words
    assert [figure.value for _, figure in caution.figures] == [15]
    _planting(data)["fertilizers"].append("potash")
    assert "C255" not in codes(planned(data))


def test_a_job_only_where_fertilizer_is_asked_for() -> None:
    data = fed(TRIPLE, POTASH, named=[])
    plan = planned(data)
    assert job_in(plan) is None
    # The soil test asks for it: a note on the sowing, gone once a fertilizer is named.
    assert "N342" in codes(plan, SOWING)
    data = fed(TRIPLE, POTASH)
    plan = planned(data)
    assert job_in(plan) is not None
    assert "N342" not in codes(plan, SOWING)
    data = fed(TRIPLE, named=[], need=NEED | {"p2o5_lb_per_ac": 0, "k2o_lb_per_ac": 0})
    assert "N342" not in codes(planned(data), SOWING)


def test_a_need_without_a_soil_test_is_worked_out_and_says_test_first() -> None:
    data = fed(TRIPLE, POTASH)
    del _planting(data)["soil_test"]
    plan = planned(data)
    assert (codes(plan), spread(plan)) == ({"C253"}, {})
    _planting(data)["need"] = dict(NEED)
    plan = planned(data)
    assert codes(plan) == {"N340"}
    assert set(spread(plan)) == {"triple", "potash"}
    _planting(data)["fertilizers"] = []
    plan = planned(data)
    assert (codes(plan), spread(plan)) == ({"N340", "C254"}, {})


@pytest.mark.parametrize(
    ("sampled_on", "old"),
    # The job closes on the early first freeze, Oct 4, 2026.
    [("2023-10-04", False), ("2023-10-03", True), ("2026-04-11", False)],
)
def test_a_soil_test_is_good_for_three_years_on_the_day_of_the_job(
    sampled_on: str, old: bool
) -> None:
    assert ("C250" in codes(planned(fed(TRIPLE, POTASH, sampled_on=sampled_on)))) == old


@pytest.mark.parametrize(
    ("sampled_on", "old"), [("2023-09-01", False), ("2023-08-31", True), ("2019-05-01", True)]
)
def test_without_the_sign_a_soil_test_is_judged_on_the_first_day(
    sampled_on: str, old: bool
) -> None:
    data = fed(TRIPLE, POTASH, sampled_on=sampled_on)
    # No last day is known; the first is Sep 1, 2026.
    del data["property"]["season_signs"]["first_hard_freeze"]
    assert ("C250" in codes(planned(data))) == old


def test_a_job_is_judged_on_its_last_day_else_its_first_else_the_last_known() -> None:
    day = datetime.date
    first, last = (DateReason(one, None, "typical", 0, "common_practice")
                   for one in (day(2026, 9, 1), day(2026, 10, 20)))  # fmt: skip

    def judged(opens: datetime.date | None, closes: datetime.date | None) -> datetime.date | None:
        return judged_on(OpenDates(opens, closes, (first,), (last,), ("sign",)), SEASON)

    assert judged(first.day, last.day) == last.day
    assert judged(first.day, None) == first.day
    assert judged(None, None) == last.day
    assert judged_on(OpenDates(None, None, (), (), ("sign",)), SEASON) == day(2026, 9, 1)


def test_a_test_sampled_after_the_job_cannot_have_asked_for_it() -> None:
    # The job closes on Oct 4, 2026.
    assert "C277" not in codes(planned(fed(TRIPLE, POTASH, sampled_on="2026-10-04")))
    (caution,) = (
        one
        for one in planned(fed(TRIPLE, POTASH, sampled_on="2026-10-05")).findings_on(JOB)
        if one.code == "C277"
    )
    assert "sampled after the last open day" in caution.words


def test_the_age_of_a_test_is_counted_by_the_calendar() -> None:
    day = datetime.date
    assert not older_than_years(day(2024, 2, 29), day(2027, 2, 28), 3)
    assert older_than_years(day(2024, 2, 29), day(2027, 3, 1), 3)


def test_bags_are_left_blank_where_none_is_typed() -> None:
    triple = {key: value for key, value in TRIPLE.items() if key != "package_lb"}
    numbers = spread(planned(fed(triple, POTASH)))["triple"]
    assert set(numbers) == {"rate_lb_per_ac", "product_lb", "stretch_lb"}


def test_what_is_spread_is_what_is_bought() -> None:
    priced = {"price_usd": 30, "on_hand_lb": 10}
    plan = planned(fed(MAP | priced, POTASH))
    bought = {one.item.id: one for one in plan.buying.purchases}
    lines = {(one.kind, one.item_id): one.amount.value for one in plan.lines}
    assert lines["fertilizer", "map"] == pytest.approx(76.923, abs=5e-4)
    assert bought["map"].needed.value == lines["fertilizer", "map"]
    # 66.9 lb beyond the 10 on hand: two bags of 50 at $30
    assert bought["map"].cost is not None
    assert bought["map"].cost.value == 60


def test_a_stop_withholds_every_amount_of_the_job() -> None:
    data = fed(MAP, POTASH)
    del data["screens"]["screens"][0]["known_as"]
    plan = planned(data)
    job = job_in(plan)
    assert job is not None
    assert "S122" in codes(plan)
    assert (job.spreadings, job.nutrients, job.numbers) == ((), (), {})
    assert not [one for one in plan.lines if one.kind == "fertilizer"]


def test_another_reader_sees_what_to_spread_and_no_price_or_id() -> None:
    data = fed(MAP | {"price_usd": 31.07, "on_hand_lb": 7}, POTASH)
    plan = planned(data)
    inventory = inventory_of(data)
    seen = job_in(seen_by(plan, inventory.readers[0]), f"strip-1/{SEASON}/fertilizing")
    assert seen is not None
    first = seen.spreadings[0]
    assert first.numbers["product_lb"].value == pytest.approx(76.923, abs=5e-4)
    assert (first.item.name, first.item.id, first.item.price_usd) == ("11-52-0", "spread-1", None)
    assert "map" not in first.numbers["product_lb"].identity
    assert [one.need.value for one in seen.nutrients] == [0, 40, 15]  # type: ignore[union-attr]


def test_a_bag_whose_part_a_later_one_carries_is_named() -> None:
    need = NEED | {"p2o5_lb_per_ac": 10, "k2o_lb_per_ac": 60}
    data = fed(TRIPLE, bag("five", 5, 10, 30), need=need)
    plan = planned(data)
    # 10 / 0.46 = 21.7 lb for the phosphate; 60 / 0.30 = 200 lb for the potash bring 20 more of it
    assert spread(plan)["triple"]["rate_lb_per_ac"] == pytest.approx(21.739, abs=5e-4)
    assert got(plan)["p2o5"]["over_lb_per_ac"] == pytest.approx(20)
    (caution,) = (one for one in plan.findings_on(JOB) if one.code == "C276")
    assert caution.cure.startswith("0-46-0 is not needed")
    _planting(data)["fertilizers"] = ["five"]
    plan = planned(data)
    # 100 lb for the phosphate bring 30 of potash, 100 more meet the rest: 20 of phosphate in all
    assert spread(plan)["five"]["rate_lb_per_ac"] == pytest.approx(200)
    assert got(plan)["p2o5"]["over_lb_per_ac"] == pytest.approx(10)
    (caution,) = (one for one in plan.findings_on(JOB) if one.code == "C276")
    assert "not needed" not in caution.cure


def test_a_bag_that_meets_a_need_is_never_called_needless() -> None:
    # 39 lb of potash from the blend bring 39 of phosphate, one short of the 40 that triple meets
    data = fed(TRIPLE, BLEND, need=NEED | {"p2o5_lb_per_ac": 40, "k2o_lb_per_ac": 39})
    (caution,) = (one for one in planned(data).findings_on(JOB) if one.code == "C276")
    assert "not needed" not in caution.cure
