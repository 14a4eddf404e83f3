"""Rates, years, dates, machines and tank loads of spray jobs, worked out by hand."""

import copy
from typing import Any

import pytest

from generator.compute.spray import EQUAL_LOAD
from generator.plan.labels.rates import ROUNDING
from generator.plan.model.plan import Plan
from generator.plan.model.work import Pour
from generator.plan.spraying.tank import fill_at_mark, holds
from generator.working import Given, Quantity, Reference, flat_inputs, walk
from tests.plan.planned import BURN_DOWN, KILL, inventory_of, job_of, planned, stops_of
from tests.properties import SEASON, Data, full_card, full_use, small_property, the_work

RATE_OUTSIDE, OVER_ONE_TIME, OVER_YEAR, TOO_OFTEN = "S110", "S111", "S112", "S113"
ACTIVE = "made-up active A"


def pounds_use(**changes: Any) -> Data:
    """A use whose rates count acid equivalent; 4 lb/gal makes 32 fl oz an acre 1 lb."""
    use = full_use(
        basis="ae",
        rate_low_lb_per_ac=0.75,
        rate_high_lb_per_ac=2,
        max_per_application_lb_per_ac=2,
        max_per_year={"amount_lb_per_ac": 4, "counted": "calendar_year"},
    )
    for key in ("rate_low", "rate_high", "max_per_application"):
        del use[f"{key}_fl_oz_per_ac"]
    return use | changes


def plan_with(use: Data, **work: Any) -> Plan:
    """The plan of the small property under a card of one use."""
    return planned(small_property(full_card(use), **work))


def rate(**typed: float) -> Data:
    """A rate in place of the small property's own."""
    return {"rate_product_fl_oz_per_ac": None} | typed


@pytest.mark.parametrize(
    ("typed", "stops"),
    [
        ({"rate_product_fl_oz_per_ac": 24}, set()),
        ({"rate_product_fl_oz_per_ac": 23.99}, {RATE_OUTSIDE}),
        ({"rate_product_fl_oz_per_ac": 64}, set()),
        ({"rate_product_fl_oz_per_ac": 64.01}, {RATE_OUTSIDE, OVER_ONE_TIME}),
        ({"rate_product_pt_per_ac": 4}, set()),
        ({"rate_product_gal_per_ac": 0.5}, set()),
        ({"rate_product_ml_per_ha": 4676}, set()),  # 4,676 mL/ha are 63.99 fl oz/ac
        ({"rate_product_ml_per_ha": 4678}, {RATE_OUTSIDE, OVER_ONE_TIME}),  # 64.02 fl oz/ac
        ({"rate_ae_lb_per_ac": 1}, set()),
        ({"rate_ae_lb_per_ac": 2.01}, {RATE_OUTSIDE, OVER_ONE_TIME}),
        ({"rate_ai_lb_per_ac": 1}, {"S109"}),
        ({}, {"S109"}),
    ],
)
def test_a_rate_lies_within_the_use(typed: Data, stops: set[str]) -> None:
    assert stops_of(plan_with(full_use(), **rate(**typed))) == stops


@pytest.mark.parametrize(
    ("typed", "stops"),
    [
        ({"rate_product_fl_oz_per_ac": 24}, set()),
        ({"rate_product_fl_oz_per_ac": 23.9}, {RATE_OUTSIDE}),
        ({"rate_product_fl_oz_per_ac": 64}, set()),
        ({"rate_product_fl_oz_per_ac": 64.1}, {RATE_OUTSIDE, OVER_ONE_TIME}),
        ({"rate_ae_lb_per_ac": 2}, set()),
        ({"rate_ae_kg_per_ha": 2.25}, {RATE_OUTSIDE, OVER_ONE_TIME}),  # 2.007 lb/ac
        ({"rate_ai_lb_per_ac": 1}, {"S109"}),
    ],
)
def test_a_rate_lies_within_a_use_that_counts_pounds(typed: Data, stops: set[str]) -> None:
    assert stops_of(plan_with(pounds_use(), **rate(**typed))) == stops


def test_a_rate_within_the_range_may_still_be_too_much_at_one_time() -> None:
    use = full_use(max_per_application_fl_oz_per_ac=31)
    assert stops_of(plan_with(use)) == {OVER_ONE_TIME}


def test_pounds_of_a_product_with_two_actives_cannot_be_compared() -> None:
    two = [
        {"active": ACTIVE, "strength_lb_per_gal": 2, "basis": "ae"},
        {"active": "made-up active birch", "strength_lb_per_gal": 1, "basis": "ae"},
    ]
    assert stops_of(planned(small_property(full_card(pounds_use(), actives=two)))) == {"S109"}
    assert stops_of(planned(small_property(full_card(full_use(), actives=two)))) == set()


def two_sprayings(use: Data, **second: Any) -> Data:
    """The small property with the burn-down planned too, under the same use at its own time."""
    later = use | {"timing": "after_sowing_before_emergence"}
    data = small_property(full_card(use, later))
    work = {"step": "spring_burn_down", "product": "brew", "rate_product_fl_oz_per_ac": 32}
    work |= {"method": "broadcast", "sprayer": "boom"}
    the_work(data).append(work | second)
    return data


def _yearly(counted: str, amount: float) -> Data:
    return full_use(max_per_year={"amount_fl_oz_per_ac": amount, "counted": counted})


# The kill is open 10 to Sep 27, 2026, the burn-down 8 to Apr 29, 2027.
@pytest.mark.parametrize(
    ("counted", "amount", "stops"),
    [
        ("calendar_year", 32, set()),
        ("calendar_year", 31.9, {OVER_YEAR}),
        ("any_12_months", 64, set()),
        ("any_12_months", 63.9, {OVER_YEAR}),
        ("crop", 64, set()),
        ("crop", 63.9, {OVER_YEAR}),
    ],
)
def test_what_a_label_allows_in_a_year(counted: str, amount: float, stops: set[str]) -> None:
    plan = planned(two_sprayings(_yearly(counted, amount)))
    assert stops_of(plan, KILL) == stops
    assert stops_of(plan, BURN_DOWN) == stops


def test_a_year_counts_the_sprayings_of_the_season_before() -> None:
    # The burn-down of season 2026 falls into April 2026, the kill of 2027 into September 2026.
    data = two_sprayings(_yearly("calendar_year", 63.9))
    plantings = data["screens"]["screens"][0]["plantings"]
    plantings.append(copy.deepcopy(plantings[0]) | {"id": "lane-26", "season": SEASON - 1})
    assert stops_of(planned(data), KILL) == {OVER_YEAR}
    plantings[1]["season"] = SEASON - 3
    assert stops_of(planned(data), KILL) == set()


def test_a_crop_ends_with_its_planting() -> None:
    data = two_sprayings(_yearly("crop", 64))
    plantings = data["screens"]["screens"][0]["plantings"]
    plantings.append(copy.deepcopy(plantings[0]) | {"id": "lane-26", "season": SEASON - 1})
    assert stops_of(planned(data), KILL) == set()


def test_other_ground_does_not_count() -> None:
    data = two_sprayings(_yearly("any_12_months", 64))
    other = copy.deepcopy(data["screens"]["screens"][0]) | {"id": "far", "known_as": "Strip 2"}
    other["plantings"][0]["id"] = "far-27"
    data["screens"]["screens"].append(other)
    assert stops_of(planned(data), KILL) == set()


def _two_products(active: str, use: Data, **head: Any) -> Data:
    """Two sprayings, the second with another product that holds this active, 4 lb/gal."""
    data = two_sprayings(use, product="other")
    first = data["products"]["products"][0]
    first["label"] |= head
    second = copy.deepcopy(first) | {"id": "other", "name": "Made-up product other"}
    second["label"]["actives"][0]["active"] = active
    data["products"]["products"].append(second)
    return data


@pytest.mark.parametrize(
    ("active", "head", "stops"),
    [
        (ACTIVE, {}, {OVER_YEAR}),
        ("made-up active birch", {}, set()),
        ("made-up active birch", {"pooled_with": ["made-up active birch"]}, {OVER_YEAR}),
    ],
)
def test_actives_are_counted_together(active: str, head: Data, stops: set[str]) -> None:
    # 32 fl oz of 4 lb/gal are 1 lb each time; 1.9 lb hold one spraying and not two.
    limit = {"amount_lb_per_ac": 1.9, "counted": "any_12_months"}
    pounds = _two_products(active, pounds_use(max_per_year=limit), **head)
    assert stops_of(planned(pounds), KILL) == stops
    # The other product, equally strong, counts by its active as so much of this one.
    ounces = _two_products(active, _yearly("any_12_months", 63.9), **head)
    assert stops_of(planned(ounces), KILL) == stops


def test_a_second_spraying_whose_rate_is_not_known_cannot_be_added_up() -> None:
    data = two_sprayings(_yearly("any_12_months", 128))
    del the_work(data)[1]["rate_product_fl_oz_per_ac"]
    assert stops_of(planned(data), KILL) == {"S156"}
    the_work(data)[1]["rate_product_fl_oz_per_ac"] = 32
    assert stops_of(planned(data), KILL) == set()


@pytest.mark.parametrize(
    ("times", "counted", "stops"),
    [(1, "calendar_year", set()), (1, "any_12_months", {TOO_OFTEN}), (2, "any_12_months", set())],
)
def test_how_often_in_a_year(times: int, counted: str, stops: set[str]) -> None:
    data = two_sprayings(_yearly(counted, 128) | {"times_per_year": times})
    assert stops_of(planned(data), KILL) == stops


def test_how_often_is_counted_both_ways_where_the_card_does_not_say() -> None:
    data = two_sprayings(full_use(max_per_year="not_on_label", times_per_year=1))
    assert stops_of(planned(data), KILL) == {TOO_OFTEN}


def test_a_restricted_product_stops_whatever_else_is_typed() -> None:
    plan = planned(small_property(full_card(full_use(), restricted_use=True)))
    assert stops_of(plan) == {"S114"}


@pytest.mark.parametrize("answer", ["no", "unsure"])
def test_a_product_not_known_to_be_registered(answer: str) -> None:
    card = full_card(full_use(), state_registered=answer)
    assert stops_of(planned(small_property(card))) == {"S115"}


@pytest.mark.parametrize(
    ("bulletins", "stops"),
    [
        ([("2026-09-01", "2026-09")], set()),
        ([("2026-03-31", "2026-09")], set()),
        ([("2026-02-28", "2026-09")], {"S116"}),  # more than six months before
        ([("2026-10-01", "2026-09")], {"S116"}),  # after the month
        ([("2026-09-01", "2026-10")], {"S116"}),
        ([("2026-09-01", "2026-10"), ("2026-08-01", "2026-09")], set()),
    ],
)
def test_bulletins_cover_the_month_of_use(
    bulletins: list[tuple[str, str]], stops: set[str]
) -> None:
    noted = [{"checked_on": day, "month": month} for day, month in bulletins]
    card = full_card(full_use(), bulletin=noted)
    assert stops_of(planned(small_property(card))) == stops


def test_bulletins_cover_every_month_that_is_open() -> None:
    # A first freeze of Oct 20 at the earliest keeps the kill open to Oct 13.
    noted = [{"checked_on": "2026-08-01", "month": "2026-09"}]
    data = small_property(full_card(full_use(), bulletin=noted))
    data["property"]["season_signs"]["first_hard_freeze"] = "10-20"
    assert stops_of(planned(data)) == {"S116"}
    noted.append({"checked_on": "2026-08-01", "month": "2026-10"})
    assert stops_of(planned(data)) == set()


@pytest.mark.parametrize(
    ("last", "stops"), [("09-27", set()), ("09-26", {"S117"}), ("12-31", set())]
)
def test_the_label_s_last_day(last: str, stops: set[str]) -> None:
    assert stops_of(plan_with(full_use(last_date=last))) == stops


def test_the_label_s_last_day_is_one_of_the_calendar_year() -> None:
    data = two_sprayings(full_use(last_date="10-31"))
    assert stops_of(planned(data), BURN_DOWN) == set()


def test_unknown_dates_stop_what_the_label_ties_to_dates() -> None:
    data = small_property(full_card(full_use(last_date="12-31")))
    del data["property"]["season_signs"]["first_hard_freeze"]
    assert stops_of(planned(data)) == {"S117", "S118"}


# From Sep 27, 2026 to Jan 20, 2027 there are 115 days.
@pytest.mark.parametrize(
    ("typed", "stops"),
    [
        ({"seeding_interval_days": 115}, set()),
        ({"seeding_interval_days": 116}, {"S118"}),
        ({"seeding_interval_days": 999999999}, {"S118"}),
        ({"seeding_interval_hours": 2760}, set()),
        ({"seeding_interval_hours": 2761}, {"S118"}),
    ],
)
def test_days_between_spraying_and_sowing(typed: Data, stops: set[str]) -> None:
    use = full_use()
    del use["seeding_interval_days"]
    assert stops_of(plan_with(use | typed)) == stops


def test_a_spraying_after_the_sowing_waits_for_none() -> None:
    data = two_sprayings(full_use(seeding_interval_days=300))
    assert stops_of(planned(data), BURN_DOWN) == set()


def test_a_sprayer_needs_a_catch_test_and_a_measure() -> None:
    assert stops_of(planned(small_property(sprayer=None))) == {"S119"}
    for gap in ("measure", "catch_tests"):
        data = small_property()
        del data["equipment"]["sprayers"][0][gap]
        assert stops_of(planned(data)) == {"S119"}


def test_the_last_catch_test_counts() -> None:
    data = small_property()
    tests = data["equipment"]["sprayers"][0]["catch_tests"]
    tests.append(copy.deepcopy(tests[0]) | {"tested_on": "2026-08-17", "speed_mph": 3})
    tests.append(copy.deepcopy(tests[0]) | {"tested_on": "2025-08-17", "speed_mph": 9})
    # 5940 x 0.25 / (3 x 20) = 24.75
    assert job_of(planned(data)).numbers["carrier_gal_per_ac"].value == pytest.approx(24.75)


@pytest.mark.parametrize(
    ("low", "high", "stops"),
    [(18.5625, 25, set()), (18.6, 25, {"S120"}), (10, 18.5, {"S120"})],
)
def test_spray_to_an_acre_within_what_the_label_asks(
    low: float, high: float, stops: set[str]
) -> None:
    wanted = {"low_gal_per_ac": low, "high_gal_per_ac": high}
    assert stops_of(plan_with(full_use(carrier_gal_per_ac=wanted))) == stops


def loads_of(data: Data, job_id: str = KILL) -> list[tuple[str, float, float]]:
    """Each kind of load: its name, the spray mix in it, the product to measure in."""
    mix = job_of(planned(data), job_id).mix
    assert mix is not None
    return [(one.name, one.spray.value, one.doses[0].amount.value) for one in mix.loads]


def test_one_load() -> None:
    # An acre at 18.5625 gal, 32 fl oz: on a mark of half an ounce.
    assert loads_of(small_property()) == [("last", 18.5625, 32)]


def test_full_loads_and_a_last_part_load() -> None:
    data = small_property(rate_product_fl_oz_per_ac=48)
    data["equipment"]["sprayers"][0]["tank_gal"] = 8
    # 18.5625 gal: two loads of 8 and one of 2.5625. 8 / 18.5625 x 48 = 20.687, by half ounces
    # 20.5; 2.5625 / 18.5625 x 48 = 6.626, by half ounces 6.5.
    assert loads_of(data) == [("full", 8, 20.5), ("last", 2.5625, 6.5)]
    mix = job_of(planned(data)).mix
    assert mix is not None
    assert mix.loads[0].count is not None
    assert mix.loads[0].count.value == 2
    # 20.5 / (8 / 18.5625) and 6.5 / (2.5625 / 18.5625)
    assert [one.doses[0].rate.value for one in mix.loads] == [
        pytest.approx(47.566, abs=0.001),
        pytest.approx(47.085, abs=0.001),
    ]


@pytest.mark.parametrize(
    ("tank_gal", "loads"),
    [
        # 18.5625 gal of 15: 3.5625 are left, under a quarter of the tank, 3.75: two alike of
        # 9.28125, by eight ounces 9.3125, which take 9.3125 / 18.5625 x 32 = 16.05 fl oz.
        (15, [("equal", 9.3125, 16)]),
        # of 14.5: 4.0625 are over a quarter, 3.625. 14.5 take 24.997 fl oz and 4.0625 take 7.003.
        (14.5, [("full", 14.5, 25), ("last", 4.0625, 7)]),
        # of 8.25 twice and a quarter of it: the quarter stays a load of its own.
        (8.25, [("full", 8.25, 14), ("last", 2.0625, 3.5)]),
        # of 9.28125 twice: just two tanks, the last as full as the first.
        (9.28125, [("full", 9.28125, 16), ("last", 9.28125, 16)]),
    ],
)
def test_loads_are_alike_where_the_last_would_be_under_a_quarter_of_the_tank(
    tank_gal: float, loads: list[tuple[str, float, float]]
) -> None:
    data = small_property()
    data["equipment"]["sprayers"][0]["tank_gal"] = tank_gal
    assert loads_of(data) == loads


@pytest.mark.parametrize(
    ("sq_ft", "gal", "poured"),
    [
        # 18.5625 gal on an acre: 2,000 sq ft take 0.85227 gal, 109.1 fl oz: 110, 3 qt 14 fl oz.
        (2000, 110 / 128, [(3, "qt"), (14, "fl_oz")]),
        # 816 sq ft take 0.34773 gal, 44.5 fl oz: 45.
        (816, 45 / 128, [(1, "qt"), (13, "fl_oz")]),
        # 2,300 sq ft take 0.98011 gal, 125.5 fl oz: 126.
        (2300, 126 / 128, [(3, "qt"), (30, "fl_oz")]),
        # 3,000 sq ft take 1.27841 gal, 163.6 fl oz, by eights 168: 1 gal 1 qt 8 fl oz.
        (3000, 1.3125, [(1, "gal"), (1, "qt"), (8, "fl_oz")]),
        # half an acre takes 9.28125 gal, 1,188 fl oz, by eights 1,192.
        (21780, 9.3125, [(9, "gal"), (1, "qt"), (8, "fl_oz")]),
    ],
)
def test_water_is_rounded_up_to_what_is_marked(
    sq_ft: float, gal: float, poured: list[tuple[float, str]]
) -> None:
    data = small_property(treated_sq_ft=sq_ft)
    data["equipment"]["measures"][0]["mark_fl_oz"] = 0.1
    mix = job_of(planned(data)).mix
    assert mix is not None
    (load,) = mix.loads
    assert load.spray.value == gal
    assert [(one.value, one.unit) for one in load.poured] == poured
    # what is measured in is for the rounded load, so an acre still gets the typed rate
    assert load.doses[0].rate.value == pytest.approx(32, rel=0.05)


@pytest.mark.parametrize(("gal", "mark_fl_oz"), [(0.999, 1), (1, 8), (1.001, 8)])
def test_a_gallon_is_poured_by_the_wider_marks(gal: float, mark_fl_oz: float) -> None:
    load = EQUAL_LOAD(
        "each",
        spray_gal=Given("spray", 2 * gal, "gal", 2 * gal, "gal", "a.yaml", 1, "page"),
        loads_count=Given("loads", 2, "count", 2, "count", "a.yaml", 2, "page"),
    )
    filled = fill_at_mark("fill", load, Given("tank", 25, "gal", 25, "gal", "a.yaml", 3, "page"))
    marks = [one for name, one in filled.inputs if name == "mark_fl_oz"]
    assert [one.value for one in marks if isinstance(one, Reference)] == [mark_fl_oz]


@pytest.mark.parametrize(
    ("given", "kept"),
    [
        (24 * (1 - 3 * ROUNDING), False),
        (24 * (1 - ROUNDING), True),
        (64 * (1 + ROUNDING), True),
        (64 * (1 + 3 * ROUNDING), False),
    ],
)
def test_a_rounded_amount_holds_at_the_ends_of_the_label_s_range(given: float, kept: bool) -> None:
    rate = Given("rate", 32, "fl_oz_per_ac", 32, "fl_oz_per_ac", "a.yaml", 1, "page")
    jug = inventory_of(small_property()).measures[0]
    assert holds(Pour("", "Brew", rate, jug, 24, 64), given) == kept
    without = Pour("", "Brew", rate, jug)
    assert [holds(without, one) for one in (-0.5, 0, 0.001)] == [False, False, True]


def test_a_load_is_never_rounded_above_what_the_tank_holds() -> None:
    # 18.5625 gal in a tank of 18.57, which is at no mark: by eights 18.625 would not go in
    data = small_property(treated_sq_ft=43570)
    data["screens"]["screens"][0]["width_ft"] = 61
    data["equipment"]["sprayers"][0]["tank_gal"] = 18.57
    mix = job_of(planned(data)).mix
    assert mix is not None
    (load,) = mix.loads
    assert (load.spray.value, load.poured) == (18.57, ())


def test_equal_loads_where_the_last_part_load_is_too_small_to_measure() -> None:
    data = small_property(rate_product_fl_oz_per_ac=32)
    data["equipment"]["sprayers"][0]["tank_gal"] = 9.25
    data["equipment"]["measures"][0]["mark_fl_oz"] = 1
    # Two loads of 9.25 leave 0.0625 gal, for which 0.108 fl oz would be needed: no mark does.
    # Three loads of 6.1875 gal take 10.667 fl oz each: 11 on the mark, 33 fl oz an acre.
    assert loads_of(data) == [("equal", 6.1875, 11)]


def test_rounding_falls_back_to_the_mark_below() -> None:
    data = small_property(rate_product_fl_oz_per_ac=63.9)
    # 63.9 is nearest the mark 64, which is 64 an acre: allowed to 64, so it stays.
    assert loads_of(data) == [("last", 18.5625, 64)]
    use = full_use(max_per_application_fl_oz_per_ac=63.95)
    data = small_property(full_card(use), rate_product_fl_oz_per_ac=63.9)
    assert loads_of(data) == [("last", 18.5625, 63.5)]


def test_rounding_keeps_what_a_year_allows() -> None:
    # 31.9 twice are 63.8 of 63.9 allowed: each may round up by 0.05 at most, so 32 is too much.
    data = two_sprayings(_yearly("any_12_months", 63.9), rate_product_fl_oz_per_ac=31.9)
    the_work(data)[0]["rate_product_fl_oz_per_ac"] = 31.9
    assert loads_of(data, KILL) == [("last", 18.5625, 31.5)]
    assert loads_of(data, BURN_DOWN) == [("last", 18.5625, 31.5)]


def test_rounding_keeps_the_smaller_of_two_pooled_limits() -> None:
    # 31.9 twice are 63.8. The kill's own card allows 64.4, the other's 63.9: no mark up holds both.
    data = _two_products(ACTIVE, _yearly("any_12_months", 63.9))
    for work in the_work(data):
        work["rate_product_fl_oz_per_ac"] = 31.9
    first = data["products"]["products"][0]
    first["label"]["uses"][0]["max_per_year"]["amount_fl_oz_per_ac"] = 64.4
    assert loads_of(data, KILL) == [("last", 18.5625, 31.5)]
    assert loads_of(data, BURN_DOWN) == [("last", 18.5625, 31.5)]


def test_rounding_keeps_the_smaller_of_two_limits_of_one_card() -> None:
    data = two_sprayings(_yearly("any_12_months", 63.9), rate_product_fl_oz_per_ac=31.9)
    the_work(data)[0]["rate_product_fl_oz_per_ac"] = 31.9
    uses = data["products"]["products"][0]["label"]["uses"]
    uses[0] = copy.deepcopy(uses[0])
    uses[0]["max_per_year"]["amount_fl_oz_per_ac"] = 64.4
    assert loads_of(data, KILL) == [("last", 18.5625, 31.5)]


def test_rounding_is_checked_in_pounds_where_the_label_counts_pounds() -> None:
    # 1.997 lb are 63.9 fl oz; the mark 64 is 2 lb, above 1.998.
    use = pounds_use(max_per_application_lb_per_ac=1.998)
    data = small_property(full_card(use), **rate(rate_ae_lb_per_ac=1.997))
    assert loads_of(data) == [("last", 18.5625, 63.5)]


def test_a_mark_too_coarse_is_a_stop() -> None:
    data = small_property()
    data["equipment"]["measures"][0]["mark_fl_oz"] = 20
    # 32 rounds to 40: allowed. Between 30 and 36 no mark of 20 stands.
    assert loads_of(data) == [("last", 18.5625, 40)]
    narrow = full_use(rate_low_fl_oz_per_ac=30, rate_high_fl_oz_per_ac=36)
    data["products"]["products"][0]["label"]["uses"] = [narrow]
    assert stops_of(planned(data)) == {"S121"}


def test_old_labels_and_catch_tests_are_cautions() -> None:
    def cautions(data: Data) -> set[str]:
        return {one.code for one in planned(data).findings_on(KILL) if one.severity == "caution"}

    use = full_use(setbacks_ft="not_on_label")
    data = small_property(full_card(use, read_on="2025-09-27"))
    assert cautions(data) == set()  # a year to the day on Sep 27, 2026
    data["products"]["products"][0]["label"]["read_on"] = "2025-09-26"
    data["equipment"]["sprayers"][0]["catch_tests"][0]["tested_on"] = "2025-09-26"
    assert cautions(data) == {"C203", "C204"}


@pytest.mark.parametrize("use", [full_use(), pounds_use()])
def test_a_stop_shows_what_was_typed_and_the_pounds_it_makes(use: Data) -> None:
    plan = plan_with(use, rate_product_fl_oz_per_ac=80)
    stop = next(one for one in plan.findings_on(KILL) if one.code == RATE_OUTSIDE)
    # 80 fl oz of 4 lb/gal are 2.5 lb; the use goes from 0.75 lb to 2 lb.
    shown = {told: (figure.value, figure.unit) for told, figure in stop.figures}
    assert shown == {
        "Typed": (80, "fl_oz_per_ac"),
        "Strength of made-up active A": (4, "lb_per_gal"),
        "Your rate": (2.5, "lb_per_ac"),
        "Lowest on the card": (0.75, "lb_per_ac"),
        "Highest on the card": (2, "lb_per_ac"),
    }
    for _, figure in stop.figures:
        if isinstance(figure, Quantity):
            assert all(isinstance(one, Given) for q in walk(figure) for _, one in q.inputs)


def test_a_stop_shows_no_product_that_was_worked_out() -> None:
    # 1 lb is typed: what it makes of product in a year stays back, for which nothing is cleared
    data = two_sprayings(_yearly("any_12_months", 63.9), rate_product_pt_per_ac=2)
    del the_work(data)[1]["rate_product_fl_oz_per_ac"]
    del the_work(data)[0]["rate_product_fl_oz_per_ac"]
    the_work(data)[0]["rate_ae_lb_per_ac"] = 1
    (stop,) = (one for one in planned(data).findings_on(KILL) if one.severity == "stop")
    shown = {told: (figure.value, figure.unit) for told, figure in stop.figures}
    assert shown == {
        "Planned in a year": (2, "lb_per_ac"),
        "Most in a year": (pytest.approx(1.996875), "lb_per_ac"),
    }
    units = {
        one.unit
        for _, figure in stop.figures
        for quantity in walk(figure)
        for _, one in flat_inputs(quantity)
        if not isinstance(one, Given)
    }
    assert units == {"lb_per_ac"}


def test_age_is_judged_where_the_last_day_waits_for_a_sign() -> None:
    use = full_use(seeding_interval_days="not_on_label")
    data = small_property(full_card(use, read_on="2020-01-01"))
    data["equipment"]["sprayers"][0]["catch_tests"][0]["tested_on"] = "2020-01-01"
    del data["property"]["season_signs"]["first_hard_freeze"]
    old = {one.code for one in planned(data).findings_on(KILL)}
    assert old >= {"C203", "C204", "C206"}
    data["products"]["products"][0]["label"]["read_on"] = "2026-08-01"
    data["equipment"]["sprayers"][0]["catch_tests"][0]["tested_on"] = "2026-08-16"
    assert not {one.code for one in planned(data).findings_on(KILL)} & {"C203", "C204"}
