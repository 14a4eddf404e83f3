"""Passes side by side over a strip, worked by hand: what is open, where, what is laid twice.

The strip of the small property is 726 ft long, so a foot of width is a sixtieth of an acre. Its
boom has six nozzles 20 in apart, 10 ft, and puts 18.5625 gal on an acre: 0.309375 gal on each foot
of width that is sprayed. Twice the typed 32 fl oz are just the card's most, 64.
"""

import copy
import datetime
import itertools
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from generator.plan.build.season_plan import make_plan
from generator.plan.model.finding import Finding
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.plan.views.numbers import numbers_of
from generator.units import shown
from generator.working import Given, Quantity
from tests.plan.planned import BURN_DOWN, KILL, inventory_of, job_of, planned, stops_of
from tests.properties import SEASON, Data, full_card, full_use, small_property, the_work

GAL_PER_FT = 18.5625 / 60
ABOUT_PASSES = {"S158", "S159", "C325", "C326", "C327", "N391"}


def strip(width_ft: float, sprayer: Data | None = None, **work: Any) -> Data:
    """The small property with a strip so wide, and its sprayer changed."""
    data = small_property(**work)
    data["screens"]["screens"][0]["width_ft"] = width_ft
    data["equipment"]["sprayers"][0] |= sprayer or {}
    return data


def pattern(width_ft: float, swath_ft: float = 18.5, **sprayer: Any) -> Data:
    """The strip sprayed by a pattern without a boom: 3.75 gal a minute at 5 mph, as published."""
    data = strip(width_ft, {"kind": "boomless", "swath_ft": swath_ft} | sprayer)
    boomless = data["equipment"]["sprayers"][0]
    del boomless["nozzle_spacing_in"]
    boomless["catch_tests"][0] |= {"caught_fl_oz": [240, 240], "speed_mph": 5}
    return data


def gun(width_ft: float, swath_ft: float | None) -> Data:
    """The strip sprayed by a hand gun that covers so much at a walk."""
    use = full_use(carrier_gal_per_ac="not_on_label")
    data = small_property(full_card(use))
    data["screens"]["screens"][0]["width_ft"] = width_ft
    sprayer = data["equipment"]["sprayers"][0]
    del sprayer["nozzle_spacing_in"]
    test = {"tested_on": "2026-08-16", "caught_fl_oz": [30], "covered_sq_ft": 340.3125}
    sprayer |= {"kind": "hand_gun", "catch_tests": [test]}
    if swath_ft is not None:
        sprayer["swath_ft"] = swath_ft
    return data


def codes(plan: Plan, job_id: str = KILL) -> set[str]:
    """The findings about passes on a job."""
    return {one.code for one in plan.findings_on(job_id)} & ABOUT_PASSES


# Each case: what is sprayed, what is expected of its numbers, and which findings.
CASES = [
    pytest.param(
        # 24 ft / 20 in = 14.4, so 15 nozzles over three passes: five of six on each, 8 ft 4 in.
        # Together 25 ft, a foot too wide: two laps of 6 in, 6% of a pass. The middle of the first
        # pass lies 4 ft 2 in inside the edge, the next 7 ft 10 in on. 25 ft take 7.734 gal, not
        # the 7.425 of the bare ground; all open, 30 ft would take 9.281.
        strip(24),
        {"lanes_count": 3, "open_count": 5, "shut_count": 1, "pass_width_ft": 25 / 3, "lap_in": 6,
         "lap_fraction": 0.06, "first_pass_ft": 25 / 6, "passes_apart_ft": 23.5 / 3,
         "laid_ac": 25 / 60, "spray_gal": 25 * GAL_PER_FT, "all_open_gal": 30 * GAL_PER_FT,
         "product_fl_oz": 32 * 25 / 60},
        set(), id="three_passes_of_five_nozzles",
    ),
    pytest.param(
        # 60 ft are six passes of 10 ft: nothing shut, nothing laid twice, an acre as it is.
        strip(60),
        {"lanes_count": 6, "open_count": 6, "shut_count": None, "pass_width_ft": 10, "lap_in": None,
         "first_pass_ft": 5, "laid_ac": None, "spray_gal": 18.5625, "all_open_gal": None},
        set(), id="whole_passes",
    ),
    pytest.param(
        # 18 ft / 20 in = 10.8, so 11 nozzles over two passes: six, then five with one shut on the
        # outer side. 18 ft 4 in, 4 in too wide: one lap of 4 in. The last pass is 8 ft 4 in wide
        # and ends at the far edge, its middle 4 ft 2 in from there.
        strip(18),
        {"lanes_count": 2, "open_count": 6, "open_last_count": 5, "shut_count": None,
         "shut_last_count": 1, "pass_width_ft": 10, "lap_in": 4, "first_pass_ft": 5,
         "last_pass_ft": 25 / 6,
         "passes_apart_ft": 29 / 3, "spray_gal": 55 / 3 * GAL_PER_FT,
         "all_open_gal": 20 * GAL_PER_FT},
        set(), id="one_nozzle_shut_on_the_last_pass",
    ),
    pytest.param(
        # 22 ft / 20 in = 13.2, so 14 nozzles over three passes: five, five and four. 23 ft 4 in,
        # 16 in too wide: two laps of 8 in, under a tenth of 8 ft 4 in.
        strip(22),
        {"lanes_count": 3, "open_count": 5, "open_last_count": 4, "shut_count": 1,
         "shut_last_count": 2, "lap_in": 8, "passes_apart_ft": 23 / 3},
        set(), id="a_narrower_setting_and_one_more_shut_on_the_last",
    ),
    pytest.param(
        # 13.5 ft / 20 in = 8.1, so nine nozzles over two passes: 15 ft, one lap of 18 in, 18% of
        # 8 ft 4 in. Twice 32 are the 64 that the card allows: a caution. 8 nozzles just cover
        # 13 ft 4 in, 13.3 on a tape of tenths; nine 15 ft.
        strip(13.5),
        {"lanes_count": 2, "open_count": 5, "open_last_count": 4, "lap_in": 18,
         "lap_fraction": 0.18, "narrower_width_ft": 13.3, "wider_width_ft": 15,
         "fitting_swath_ft": None, "spray_gal": 15 * GAL_PER_FT},
        {"C325"}, id="no_setting_fits",
    ),
    pytest.param(
        # 14 ft / 20 in = 8.4, so nine nozzles, 15 ft. In two passes they lap by 12 in, 12% of
        # 8 ft 4 in; in three of three nozzles, 5 ft, by 6 in, a tenth. The same spray.
        strip(14),
        {"lanes_count": 3, "open_count": 3, "shut_count": 3, "open_last_count": None,
         "pass_width_ft": 5, "lap_in": 6, "first_pass_ft": 2.5, "passes_apart_ft": 4.5,
         "spray_gal": 15 * GAL_PER_FT},
        set(), id="one_pass_more_laps_less",
    ),
    pytest.param(
        # 4 ft / 20 in = 2.4, so three nozzles in one pass along the middle: 5 ft, 6 in beside
        # each edge, a fifth of the pass. The tank holds what falls beside too: 5 ft of spray.
        strip(4),
        {"lanes_count": 1, "open_count": 3, "shut_count": 3, "first_pass_ft": 2, "beside_in": 6,
         "beside_fraction": 0.2, "lap_in": None, "narrower_width_ft": 3.3, "wider_width_ft": 5,
         "spray_gal": 5 * GAL_PER_FT},
        {"C326"}, id="narrower_than_a_pass",
    ),
    pytest.param(
        # 5 ft are three nozzles: nothing falls beside.
        strip(5),
        {"lanes_count": 1, "open_count": 3, "first_pass_ft": 2.5, "beside_in": None},
        set(), id="a_setting_as_narrow_as_the_strip",
    ),
    pytest.param(
        # Two patterns of 18.5 ft over 24 ft: 37 ft, one lap of 13 ft, 70% of a pass. One covers
        # 18.5 ft, two 37; a pattern of 12 ft would fit. 3.75 gal a minute at 5 mph over 18.5 ft
        # are 5940 x 3.75 / (5 x 222) = 20.068 gal an acre; 37 ft are 37 / 60 of it.
        pattern(24),
        {"lanes_count": 2, "lap_in": 156, "lap_fraction": 13 / 18.5, "first_pass_ft": 9.25,
         "passes_apart_ft": 5.5, "narrower_width_ft": 18.5, "wider_width_ft": 37,
         "fitting_swath_ft": 12, "open_count": None,
         "spray_gal": 37 / 60 * 5940 * 3.75 / (5 * 222)},
        {"C325"}, id="a_pattern_that_cannot_be_narrowed",
    ),
    pytest.param(
        # Of two sides, 9.25 ft each, 27 ft take three: 27.75 ft, the last pass with one side. One
        # lap of 9 in, 4% of a pass.
        pattern(27, sides_shut=True),
        {"lanes_count": 2, "open_count": 2, "open_last_count": 1, "pass_width_ft": 18.5,
         "lap_in": 9, "first_pass_ft": 9.25, "passes_apart_ft": 17.75, "last_pass_ft": 4.625,
         "all_open_gal": 37 / 60 * 5940 * 3.75 / (5 * 222)},
        set(), id="a_side_of_a_pattern_shut",
    ),
    pytest.param(
        # One side of 9.25 ft covers 9 ft: 1.5 in beside each edge. Both sides open take twice.
        pattern(9, sides_shut=True),
        {"lanes_count": 1, "open_count": 1, "open_last_count": None, "pass_width_ft": 9.25,
         "first_pass_ft": 4.5, "beside_in": 1.5, "spray_gal": 9.25 / 60 * 5940 * 3.75 / (5 * 222),
         "all_open_gal": 18.5 / 60 * 5940 * 3.75 / (5 * 222)},
        set(), id="one_side_of_a_pattern",
    ),
    pytest.param(
        # A typed lap of 6 in: 60 ft are (60 - 0.5) / (10 - 0.5) = 6.3, seven passes with six laps,
        # 63 ft: 37.8, 38 nozzles. Six on each and two on the last; 63 ft 4 in, laps of 6 2/3 in.
        # The two are 3 ft 4 in wide: their middle 1 ft 8 in from the far edge.
        strip(60, {"lap_in": 6}),
        {"lanes_count": 7, "open_count": 6, "open_last_count": 2, "lap_in": 20 / 3,
         "last_pass_ft": 5 / 3,
         "passes_apart_ft": 10 - 20 / 36, "spray_gal": 190 / 3 * GAL_PER_FT},
        set(), id="a_typed_lap",
    ),
    pytest.param(
        # A gun that covers 8 ft at a walk: 24 ft are three lanes, 4 ft from the edge.
        gun(24, 8),
        {"lanes_count": 3, "lap_in": None, "first_pass_ft": 4, "spray_gal": 24 / 60 * 30},
        set(), id="a_gun_in_lanes",
    ),
    pytest.param(
        # 22 ft are three lanes too, 24 ft wide: two laps of 12 in, an eighth of a lane.
        gun(22, 8),
        {"lanes_count": 3, "lap_in": 12, "passes_apart_ft": 7, "spray_gal": 24 / 60 * 30,
         "fitting_swath_ft": 7.4},
        {"C325"}, id="a_gun_in_lanes_that_lap",
    ),
    pytest.param(
        gun(24, None), {"lanes_count": None, "spray_gal": 12}, {"C327"}, id="a_gun_of_no_width"
    ),
]  # fmt: skip


@pytest.mark.parametrize(("data", "numbers", "findings"), CASES)
def test_passes_by_hand(data: Data, numbers: dict[str, float | None], findings: set[str]) -> None:
    plan = planned(data)
    assert stops_of(plan) == set()
    assert codes(plan) == findings
    found = {name: one.value for name, one in job_of(plan).numbers.items()}
    assert {name: found.get(name) for name in numbers} == {
        name: None if value is None else pytest.approx(value, rel=1e-9)
        for name, value in numbers.items()
    }


@pytest.mark.parametrize("width_ft", [13.5, 24])
@pytest.mark.parametrize(("method", "expected"), [("spot", set()), ("broadcast", {"N391"})])
def test_no_passes_over_spots_and_a_note_over_a_part_of_the_place(
    width_ft: float, method: str, expected: set[str]
) -> None:
    data = small_property(full_card(full_use(method=method)), treated_sq_ft=4356, method=method)
    data["screens"]["screens"][0]["width_ft"] = width_ft
    plan = planned(data)
    assert codes(plan) == expected
    assert job_of(plan).numbers.keys() & {"lanes_count", "lap_in"} == set()
    assert job_of(plan).numbers["spray_gal"].value == pytest.approx(1.85625)


def without_width() -> Data:
    """An acre whose width nobody typed."""
    data = small_property()
    screen = data["screens"]["screens"][0]
    del screen["width_ft"], screen["length_ft"]
    screen["area_ac"] = 1
    return data


def told(plan: Plan, code: str) -> list[Finding]:
    """The findings of a code on the kill."""
    return [one for one in plan.findings_on(KILL) if one.code == code]


def test_without_a_taped_width_it_is_asked_since_the_spray_may_not_reach() -> None:
    data = without_width()
    plan = planned(data)
    assert codes(plan) == {"C327"}
    (asked,) = told(plan, "C327")
    assert "nobody has taped the width of the place" in asked.words
    assert "width_ft" in asked.to_type
    data["screens"]["screens"][0]["width_ft"] = 60
    assert codes(planned(data)) == set()


def test_a_boom_with_one_catch_is_asked_how_many_nozzles_it_has() -> None:
    data = strip(24)
    test = data["equipment"]["sprayers"][0]["catch_tests"][0]
    test["caught_fl_oz"] = [32]
    plan = planned(data)
    assert codes(plan) == {"C327"}
    (asked,) = told(plan, "C327")
    assert "Boom has one catch" in asked.words
    # Nothing is laid out as if the boom had one nozzle.
    job = job_of(plan)
    assert not job.numbers.keys() & {"lanes_count", "open_count", "shut_count", "pass_width_ft"}
    assert job.numbers["spray_gal"].value == pytest.approx(24 * GAL_PER_FT)
    test["caught_fl_oz"] = [32, 32]
    assert codes(planned(data)) == set()


def test_each_thing_that_passes_lack_is_asked() -> None:
    data = without_width()
    data["equipment"]["sprayers"][0]["catch_tests"][0]["caught_fl_oz"] = [32]
    plan = planned(data)
    assert [one.words.count("the width") for one in told(plan, "C327")] == [1, 0]


def narrow_boom(lap_in: float | None) -> Data:
    """A boom of two nozzles, 3 ft 4 in, over 9 ft: three passes, 10 ft, two laps of 6 in."""
    data = strip(9, {"lap_in": lap_in} if lap_in is not None else {})
    data["equipment"]["sprayers"][0]["catch_tests"][0]["caught_fl_oz"] = [32, 32]
    return data


@pytest.mark.parametrize(
    ("lap_in", "expected"), [(None, {"C325"}), (6, set()), (5, {"C325"}), (0, {"C325"})]
)
def test_a_lap_of_six_inches_is_let_through_where_it_is_typed(
    lap_in: float | None, expected: set[str]
) -> None:
    plan = planned(narrow_boom(lap_in))
    assert job_of(plan).numbers["lap_in"].value == pytest.approx(6)
    assert codes(plan) == expected


def test_a_typed_lap_of_seven_inches_is_looked_at_like_any_other() -> None:
    # (9 - 7/12) / (3 1/3 - 7/12) = 3.06: four passes with three laps, 10 ft 9 in, seven nozzles:
    # two on each, one on the last. 11 ft 8 in: laps of 10 2/3 in, a quarter of a pass and more.
    plan = planned(narrow_boom(7))
    assert job_of(plan).numbers["lap_in"].value == pytest.approx(32 / 3)
    assert codes(plan) == {"C325"}


def test_no_width_is_said_to_cure_a_lap_that_is_too_wide_itself() -> None:
    numbers = job_of(planned(strip(60, {"lap_in": 24}, rate_product_fl_oz_per_ac=24))).numbers
    assert numbers["lap_fraction"].value > 0.1
    assert not numbers.keys() & {"narrower_width_ft", "wider_width_ft", "fitting_swath_ft"}


@pytest.mark.parametrize(
    ("lap_in", "stops", "words"),
    [
        (59.9, set(), ""),
        (60, {"S159"}, "would be sprayed twice"),
        # 120 - 75 are 45 in from pass to pass, so that a third begins before the first ends.
        (75, {"S159"}, "would be sprayed three times"),
        (118, {"S159"}, "would be sprayed more than six times"),
        (150, {"S159"}, "no pass would reach new ground"),
    ],
)
def test_half_a_pass_is_no_lap(lap_in: float, stops: set[str], words: str) -> None:
    plan = planned(strip(60, {"lap_in": lap_in}, rate_product_fl_oz_per_ac=24))
    found = stops_of(plan)
    assert found & {"S159"} == stops
    if stops:
        (stop,) = [one for one in plan.findings_on(KILL) if one.code == "S159"]
        assert [one.value for _, one in stop.figures if not isinstance(one, str)] == [lap_in, 10]
        assert words in stop.words


def test_half_of_a_pass_is_half_of_what_is_open() -> None:
    # 183 in with laps of 59: (183 - 59) / (120 - 59) = 2.03, three passes; 301 in, 16 nozzles: six,
    # six and four: 59 is under half of 120. 15 ft 2 in: 300 in, five on each, 100 in: it is over.
    for width_ft, stops in ((15.25, set()), (182 / 12, {"S159"})):
        data = strip(width_ft, {"lap_in": 59}, rate_product_fl_oz_per_ac=24)
        use = data["products"]["products"][0]["label"]["uses"][0]
        use |= {"max_per_application_fl_oz_per_ac": 75, "max_per_year": YEAR}
        plan = planned(data)
        assert stops_of(plan) == stops
    (stop,) = told(plan, "S159")
    assert "would be sprayed three times" in stop.words
    figures = dict(stop.figures)
    assert isinstance(figures["Width of one pass"], Quantity)
    assert figures["Width of one pass"].value == pytest.approx(100 / 12)


def test_a_lap_that_was_meant_stops_too_where_it_is_half_of_a_pass() -> None:
    # Nozzles 3 in apart, five of them: 15 in. 18 in with laps of 6: two passes of four, 12 in.
    data = strip(1.5, {"lap_in": 6, "nozzle_spacing_in": 3})
    data["equipment"]["sprayers"][0]["catch_tests"][0]["caught_fl_oz"] = [4.8] * 5
    plan = planned(data)
    assert stops_of(plan) == {"S159"}
    (stop,) = told(plan, "S159")
    assert "would be sprayed twice" in stop.words


def test_a_single_pass_has_no_lap_however_few_nozzles_are_open() -> None:
    # 3 ft take two nozzles, 40 in: a lap of 24 would be over half of it, and there is none.
    assert stops_of(planned(strip(3, {"lap_in": 24}))) == set()


def test_more_passes_are_not_laid_so_narrow_that_the_typed_lap_is_half_of_one() -> None:
    # Nozzles 3 in apart, four of them: 12 in. 15 in with laps of 5: two passes, 20 in, seven
    # nozzles: four and three, one lap of 6 in. Four passes of three nozzles, 9 in, would lap by 5.
    data = strip(1.25, {"lap_in": 5, "nozzle_spacing_in": 3})
    data["equipment"]["sprayers"][0]["catch_tests"][0]["caught_fl_oz"] = [4.8] * 4
    data["equipment"]["measures"][0]["mark_fl_oz"] = 0.1
    plan = planned(data)
    assert codes(plan) == {"C325"}
    numbers = job_of(plan).numbers
    assert (numbers["lanes_count"].value, numbers["lap_in"].value) == (2, pytest.approx(6))


def thrice(most: float, rate: float = 24) -> Data:
    """A pattern of 18 ft 6 in over 30 ft with laps of 8 ft: three passes that lap by 12 ft 9 in.

    (30 - 8) / (18.5 - 8) = 2.1: three passes, 55.5 ft, 25.5 too wide. They begin 5 ft 9 in apart,
    so that all three lie over the ground from 11 ft 6 in to 18 ft 6 in.
    """
    data = pattern(30, lap_in=96)
    the_work(data)[0]["rate_product_fl_oz_per_ac"] = rate
    use = data["products"]["products"][0]["label"]["uses"][0]
    use |= {"max_per_application_fl_oz_per_ac": most, "max_per_year": YEAR}
    use["carrier_gal_per_ac"] = "not_on_label"
    return data


def test_ground_under_three_passes_gets_three_times_the_rate() -> None:
    plan = planned(thrice(75))
    assert stops_of(plan) == set()
    (caution,) = told(plan, "C325")
    assert "some ground is sprayed three times" in caution.words
    assert job_of(plan).numbers["laid_times_count"].value == 3
    plan = planned(thrice(71))
    assert stops_of(plan) == {"S158"}
    (stop,) = told(plan, "S158")
    assert "sprayed three times" in stop.words
    figures = dict(stop.figures)
    assert isinstance(figures["Passes over the same ground"], Quantity)
    assert figures["Passes over the same ground"].value == 3


def test_what_a_stop_of_passes_rests_on_is_explained() -> None:
    for data, code in ((thrice(71), "S158"), (strip(60, {"lap_in": 60}), "S159")):
        plan = planned(data)
        (stop,) = told(plan, code)
        found = {one.identity for _, one in stop.figures if isinstance(one, Quantity)}
        assert found
        assert found <= numbers_of(plan).keys()
        assert [
            one for one in numbers_of(plan) if one.endswith(("laid_times_count", "boom_width_ft"))
        ]


@pytest.mark.parametrize(
    ("data", "expected"),
    [
        # Five of six open: the boom's middle is half of 20 in beside that of what is open.
        (strip(24), {"steer_off_ft": 10, "shut_far_count": None, "last_steer_off_ft": None}),
        # Six, then five: the one is shut toward the far edge.
        (strip(18), {"steer_off_ft": None, "shut_far_count": 1, "last_steer_off_ft": 10}),
        # Five, five, four: two shut on the last pass, both toward the far edge.
        (strip(22), {"steer_off_ft": 10, "shut_far_count": 2, "last_steer_off_ft": 20}),
        # Four of six on each of two passes: one shut at each end.
        (strip(13.3), {"steer_off_ft": None, "last_steer_off_ft": None}),
        # Three of six on one pass.
        (strip(4), {"steer_off_ft": 10}),
        # A side of 9 ft 3 in open: its middle is half of that from the sprayer.
        (pattern(9, sides_shut=True), {"steer_off_ft": 55.5, "last_steer_off_ft": None}),
        (pattern(27, sides_shut=True), {"steer_off_ft": None, "last_steer_off_ft": 55.5}),
        (pattern(24), {"steer_off_ft": None, "last_steer_off_ft": None}),
    ],
)
def test_where_the_sprayer_is_steered(data: Data, expected: dict[str, float | None]) -> None:
    numbers = job_of(planned(data)).numbers
    found = {name: numbers[name] for name in expected if name in numbers}
    assert {name: one.value for name, one in found.items()} == {
        name: pytest.approx(value if name.endswith("_count") else value / 12)
        for name, value in expected.items()
        if value is not None
    }


def at_once(rate: float, **use: Any) -> Data:
    """13.5 ft that are laid twice in the middle, at this rate."""
    data = small_property(full_card(full_use(**use)), rate_product_fl_oz_per_ac=rate)
    data["screens"]["screens"][0]["width_ft"] = 13.5
    return data


YEAR = {"amount_fl_oz_per_ac": 1000, "counted": "calendar_year"}


@pytest.mark.parametrize(
    ("rate", "most", "high", "stops"),
    [
        (32, 64, 64, set()),
        (32.5, 64, 64, {"S158"}),
        # Where the card names no most at one time, its highest rate is all that it allows.
        (32, "not_on_label", 64, set()),
        (32.5, "not_on_label", 64, {"S158"}),
        (32.5, 65, 64, set()),
    ],
)
def test_twice_the_rate_is_held_against_the_most_at_one_time(
    rate: float, most: float | str, high: float, stops: set[str]
) -> None:
    data = at_once(
        rate, rate_high_fl_oz_per_ac=high, max_per_application_fl_oz_per_ac=most, max_per_year=YEAR
    )
    assert stops_of(planned(data)) == stops


def test_the_stop_names_the_widths_that_fit_and_goes_with_one() -> None:
    data = at_once(40)
    (stop,) = [one for one in planned(data).findings_on(KILL) if one.severity == "stop"]
    figures = dict(stop.figures)
    fitting = {
        words: round(one.value, 4)
        for words, one in figures.items()
        if words.startswith("Width") and isinstance(one, Given | Quantity)
    }
    assert fitting == {"Width that fits": 13.3, "Width that fits, the next": 15}
    for width_ft in (13.3, 15):
        data["screens"]["screens"][0]["width_ft"] = width_ft
        plan = planned(data)
        assert stops_of(plan) == set()
        assert codes(plan) == set()


def test_the_pattern_that_a_stop_names_fits() -> None:
    data = pattern(24)
    the_work(data)[0]["rate_product_fl_oz_per_ac"] = 40
    (stop,) = [one for one in planned(data).findings_on(KILL) if one.severity == "stop"]
    assert stop.code == "S158"
    (swath,) = [one for words, one in stop.figures if words.startswith("Pattern")]
    assert isinstance(swath, Quantity)
    assert swath.value == 12
    data["equipment"]["sprayers"][0]["swath_ft"] = 12
    use = data["products"]["products"][0]["label"]["uses"][0]
    use["carrier_gal_per_ac"] = "not_on_label"
    assert stops_of(planned(data)) == set()


@pytest.mark.parametrize(
    "data",
    [
        strip(13.5),
        strip(4),
        strip(10.5),
        pattern(24),
        pattern(30),
        pattern(12),
        gun(22, 8),
        gun(10, 7),
    ],
)
def test_what_is_said_to_fit_does_when_it_is_typed_as_it_is_printed(data: Data) -> None:
    plan = planned(data)
    numbers = job_of(plan).numbers
    tried = 0
    for name in ("narrower_width_ft", "wider_width_ft", "fitting_swath_ft"):
        if name in numbers:
            told = float(shown(numbers[name].value, "ft").removesuffix(" ft"))
            cured = copy.deepcopy(data)
            if name == "fitting_swath_ft":
                cured["equipment"]["sprayers"][0]["swath_ft"] = told
                use = cured["products"]["products"][0]["label"]["uses"][0]
                use["carrier_gal_per_ac"] = "not_on_label"
            else:
                cured["screens"]["screens"][0]["width_ft"] = told
            assert codes(planned(cured)) == set(), name
            tried += 1
    assert tried > 0
    assert codes(plan) & {"C325", "C326"}


def both_jobs(rate: float, burn_down_sq_ft: float | None = None) -> Data:
    """The kill and the burn down of 13.5 ft, of the same product, 128 fl oz allowed in a season."""
    year = {"amount_fl_oz_per_ac": 128, "counted": "any_12_months"}
    uses = [
        full_use(timing, max_per_year=year, max_per_application_fl_oz_per_ac=64)
        for timing in ("before_sowing", "after_sowing_before_emergence")
    ]
    data = small_property(full_card(*uses), rate_product_fl_oz_per_ac=rate)
    data["screens"]["screens"][0]["width_ft"] = 13.5
    burn_down = dict(the_work(data)[0]) | {"step": "spring_burn_down"}
    if burn_down_sq_ft is not None:
        burn_down["treated_sq_ft"] = burn_down_sq_ft
    the_work(data).append(burn_down)
    return data


def test_the_year_is_held_on_the_ground_that_is_laid_twice() -> None:
    # Twice 32 in the kill and twice 32 in the burn down are the 128 of the year.
    assert stops_of(planned(both_jobs(32))) == set()
    data = both_jobs(32)
    for use in data["products"]["products"][0]["label"]["uses"]:
        use["max_per_year"]["amount_fl_oz_per_ac"] = 127
    plan = planned(data)
    assert stops_of(plan, KILL) == stops_of(plan, BURN_DOWN) == {"S158"}
    # Where the burn down goes over a part alone, three times 32 are 96: its own sheet has the stop
    # of the ground that the kill laid twice as soon as the year allows less.
    for amount, stops in ((96, set()), (95, {"S158"})):
        data = both_jobs(32, burn_down_sq_ft=4356)
        for use in data["products"]["products"][0]["label"]["uses"]:
            use["max_per_year"]["amount_fl_oz_per_ac"] = amount
        plan = planned(data)
        assert stops_of(plan, KILL) == stops_of(plan, BURN_DOWN) == stops


def laid(job: Job, width_ft: float) -> list[tuple[float, float]]:
    """Where each pass begins and ends, in feet from the edge, as the sheet has it driven."""
    number = {name: one.value for name, one in job.numbers.items()}
    count = int(number["lanes_count"])
    part = number["pass_width_ft"] / number["open_count"]
    if count == 1:
        half = number["pass_width_ft"] / 2
        return [(number["first_pass_ft"] - half, number["first_pass_ft"] + half)]
    apart = number.get("passes_apart_ft", number["pass_width_ft"])
    middles = [number["first_pass_ft"] + apart * n for n in range(count)]
    widths = [number["pass_width_ft"]] * count
    if "open_last_count" in number:
        widths[-1] = number["open_last_count"] * part
        middles[-1] = width_ft - number["last_pass_ft"]
    return [(at - wide / 2, at + wide / 2) for at, wide in zip(middles, widths, strict=True)]


@settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True
)
@given(
    width=st.floats(3, 90),
    nozzles=st.integers(1, 12),
    lap=st.none() | st.integers(0, 36).map(lambda quarters: quarters / 4),
    rate=st.floats(24, 64),
    most=st.floats(64, 200),
    tank=st.floats(4, 30),
)
def test_passes_cover_the_width_the_tank_is_never_short_and_no_ground_gets_more_than_the_card(
    width: float, nozzles: int, lap: float | None, rate: float, most: float, tank: float
) -> None:
    data = at_once(rate, max_per_application_fl_oz_per_ac=most, max_per_year=YEAR)
    data["screens"]["screens"][0]["width_ft"] = width
    sprayer = data["equipment"]["sprayers"][0] | {"tank_gal": tank}
    sprayer |= {"lap_in": lap} if lap is not None else {}
    sprayer["catch_tests"][0]["caught_fl_oz"] = [32] * nozzles
    data["equipment"]["sprayers"] = [sprayer]
    plan = planned(data)
    job = job_of(plan)
    if job.mix is None:
        assert stops_of(plan) <= {"S158", "S121"}
        return
    if nozzles == 1:
        assert codes(plan) == {"C327"}
        assert "lanes_count" not in job.numbers
        return
    passes = laid(job, width)
    assert passes[0][0] <= 1e-9
    assert passes[-1][1] >= width - 1e-9
    for (_, end), (start, _) in itertools.pairwise(passes):
        assert start <= end + 1e-9
    if len(passes) > 1:
        assert passes[0][0] == pytest.approx(0, abs=1e-9)
        assert max(end for _, end in passes) == pytest.approx(width, abs=1e-9)
    taken = sum(end - start for start, end in passes) * GAL_PER_FT
    counts = [load.count.value if load.count is not None else 1 for load in job.mix.loads]
    filled = [load.spray.value for load in job.mix.loads]
    assert sum(n * gal for n, gal in zip(counts, filled, strict=True)) >= taken * (1 - 1e-9)
    assert max(filled) <= tank * (1 + 1e-9)
    edges = sorted({edge for one in passes for edge in one})
    middles = [(low + high) / 2 for low, high in itertools.pairwise(edges) if high > low + 1e-6]
    times = max(sum(start < at < end for start, end in passes) for at in middles)
    widest = job.numbers.get("lap_fraction")
    wide = widest is not None and widest.value > 0.1 + 1e-9
    typed = lap is not None and wide and job.numbers["lap_in"].value <= min(lap, 6) + 1e-9
    if wide and not typed:
        assert times == job.numbers["laid_times_count"].value
        for load in job.mix.loads:
            assert load.doses[0].rate.value * times <= most * (1 + 1e-9)


def logged(width_ft: float, year_fl_oz: float, used_fl_oz: float, **sprayed: Any) -> Data:
    """The kill is logged: its whole ground, with so much, and a burn down is ahead."""
    data = both_jobs(32)
    for use in data["products"]["products"][0]["label"]["uses"]:
        use["max_per_year"]["amount_fl_oz_per_ac"] = year_fl_oz
    data["screens"]["screens"][0]["width_ft"] = width_ft
    job = {"planting": "lane-27", "step": "autumn_kill", "finished": True}
    job["area_ac"] = round(width_ft / 60, 6)
    used = [{"item": "brew", "amount_fl_oz": used_fl_oz}]
    entry = {"id": "e-1", "done_on": "2026-09-14", "job": job, "used": used}
    entry["sprayed"] = {"wind_mph": 5} | sprayed
    data["log"] = {"entries": [entry]}
    return data


def killed(width_ft: float, year_fl_oz: float, used_fl_oz: float, **sprayed: Any) -> Plan:
    """The plan after the kill is logged."""
    data = logged(width_ft, year_fl_oz, used_fl_oz, **sprayed)
    return make_plan(inventory_of(data), SEASON, datetime.date(2026, 10, 1))


@pytest.mark.parametrize(
    ("width_ft", "year_fl_oz", "used_fl_oz", "stops"),
    [
        # 24 ft take 25 ft of spray: 13 fl oz over 25 / 60 of an acre are 31.2, and 32 to come.
        (24, 64, 13, set()),
        # 14 fl oz are 33.6: over 64 with the 32 to come.
        (24, 64, 14, {"S112"}),
        # 13.5 ft take 15 ft: 8 fl oz are 32 over 1 / 4 of an acre, twice that where they lap, and
        # 64 to come there: 128.
        (13.5, 128, 8, set()),
        (13.5, 127, 8, {"S158"}),
        # 4 ft take 5 ft, the rest falls beside: 2.6 fl oz over 1 / 12 of an acre are 31.2.
        (4, 64, 2.6, set()),
    ],
)
def test_a_logged_spraying_went_over_the_ground_of_its_passes(
    width_ft: float, year_fl_oz: float, used_fl_oz: float, stops: set[str]
) -> None:
    plan = killed(width_ft, year_fl_oz, used_fl_oz)
    assert stops_of(plan, BURN_DOWN) & {"S112", "S158"} == stops


@pytest.mark.parametrize(("year_fl_oz", "stops"), [(128, set()), (127, {"S158"})])
def test_a_product_that_was_not_planned_went_over_the_ground_as_often(
    year_fl_oz: float, stops: set[str]
) -> None:
    # 13.5 ft take 15 ft: 8 fl oz are 32 over 1 / 4 of an acre, twice that where they lap.
    data = logged(13.5, year_fl_oz, 8)
    for name in ("product", "rate_product_fl_oz_per_ac"):
        del the_work(data)[0][name]
    plan = make_plan(inventory_of(data), SEASON, datetime.date(2026, 10, 1))
    assert stops_of(plan, BURN_DOWN) & {"S112", "S158"} == stops


def test_what_did_not_go_through_the_planned_sprayer_went_over_the_bare_ground() -> None:
    plan = killed(24, 64, 13, own_sprayer=False)
    assert "S112" in stops_of(plan, BURN_DOWN)


def test_the_mark_above_is_taken_where_the_label_asks_for_no_less() -> None:
    # 24 ft at the card's lowest rate of 24: 10.02 fl oz for 7.75 gal; 10 would be 23.95 to an acre.
    plan = planned(strip(24, rate_product_fl_oz_per_ac=24))
    assert stops_of(plan) == set()
    mix = job_of(plan).mix
    assert mix is not None
    assert mix.loads[0].doses[0].amount.value == pytest.approx(10.5)
    assert mix.loads[0].doses[0].rate.value == pytest.approx(10.5 / 7.75 * 18.5625)
