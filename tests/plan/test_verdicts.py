"""Whether a screen hides: verdicts by hand, and what never makes one better or worse.

By hand, upland switchgrass on ordinary soil in its third season: low 48 in and typical 66 in on
Nov 15; through winter 0.6 x 48 = 28.8 in and 0.85 x 66 = 56.1 in on Jan 15.
"""

import datetime
import itertools
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.plan.build.season_plan import make_plan
from generator.plan.standing.verdicts import VERDICTS, ScreenJudged, Verdict, judged
from generator.plan.views.numbers import numbers_of
from generator.working import Withheld
from tests.plan.planned import inventory_of
from tests.properties import Data, small_property

DAY = datetime.date
FALL, WINTER = DAY(2029, 11, 15), DAY(2030, 1, 15)
LOG = {"planting": "lane-27"}
# On 726 ft 23 stations are asked for, one for every 10 m.
STATIONS_FT = (*range(0, 726, 33), 726)
ALL_ALONG = [{"at_ft": at, "height_in": 90} for at in STATIONS_FT]


def property_of(*entries: Data, screen: Data, ecotype: str | None = "upland") -> Data:
    """The small property with a log; its screen as asked for, sown with switchgrass."""
    data = small_property()
    data["screens"]["screens"][0] |= {"soil": "ordinary"} | screen
    data["screens"]["screens"][0]["plantings"][0]["upkeep"] = "established_screen_upkeep"
    if ecotype is not None:
        data["seed"]["lots"][0]["ecotype"] = ecotype
    data["log"] = {"entries": [{"id": f"e{n}"} | one for n, one in enumerate(entries)]}
    return data


def verdicts(
    *entries: Data, season: int = 2030, ecotype: str | None = "upland", **screen: Any
) -> dict[datetime.date, ScreenJudged]:
    """The verdicts on the screen as its plan of a season gives them, by their days."""
    inventory = inventory_of(property_of(*entries, screen=screen, ecotype=ecotype))
    plan = make_plan(inventory, season, DAY(season - 1, 9, 2))
    found = judged(plan, plan.place("lane"))
    numbers = numbers_of(plan)
    for one in found:
        assert all(numbers[q.identity] == q for q in one.heights.by_curve.values())
    return {one.day: one for one in found}


def on(day: datetime.date, *entries: Data, **screen: Any) -> Verdict:
    return verdicts(*entries, **screen)[day].verdict


@pytest.mark.parametrize(
    ("needed_in", "fall", "winter"),
    [
        (28.8, "hides", "hides"),
        (28.9, "hides", "not_to_count_on"),
        (48, "hides", "not_to_count_on"),
        (48.1, "not_to_count_on", "not_to_count_on"),
        (56.2, "not_to_count_on", "not_tall_enough"),
        (66, "not_to_count_on", "not_tall_enough"),
        (66.1, "not_tall_enough", "not_tall_enough"),
    ],
)
def test_every_verdict_by_hand(needed_in: float, fall: Verdict, winter: Verdict) -> None:
    found = verdicts(height_needed_in=needed_in)
    assert (found[FALL].verdict, found[WINTER].verdict) == (fall, winter)


def test_days_are_those_of_the_running_and_the_next_season_of_growth() -> None:
    days = list(verdicts(height_needed_ft=4))
    assert days == [FALL, WINTER, DAY(2030, 11, 15), DAY(2031, 1, 15)]


def test_the_first_season_counts_as_no_screen_whatever_was_measured() -> None:
    tall = {"done_on": "2027-08-31", "measured": LOG | {"stations": ALL_ALONG}}
    found = verdicts(tall, season=2028, height_needed_ft=1)
    assert found[DAY(2027, 11, 15)].heights.by_curve["low"].value > 12
    assert [one.verdict for one in found.values()] == ["first_season"] * 2 + ["hides"] * 2


def test_an_annual_is_judged_by_its_one_season() -> None:
    """By hand, sorghum: low 72 in when full; 0.3 of it, 21.6 in, after the winter's wind."""
    data = property_of(screen={"height_needed_ft": 6})
    lot = data["seed"]["lots"][0] | {"species": "tall-sorghum"}
    del lot["ecotype"]
    data["seed"]["lots"] = [lot]
    planting = data["screens"]["screens"][0]["plantings"][0]
    sown = {"species": "tall-sorghum", "lot": lot["id"], "rate_pls_lb_per_ac": 10}
    planting |= {"seed": [sown], "method": "broadcast", "steps": "bridge_sorghum"}
    del planting["upkeep"], planting["work"]
    plan = make_plan(inventory_of(data), 2027, DAY(2026, 9, 1))
    found = {one.day: one for one in judged(plan, plan.place("lane"))}
    assert found[DAY(2027, 11, 15)].verdict == "hides"
    winter = found[DAY(2028, 1, 15)]
    assert winter.heights.by_curve["low"].value == pytest.approx(21.6)
    assert winter.verdict == "not_to_count_on"


def test_nothing_typed_no_verdict() -> None:
    assert verdicts() == {}


def test_a_height_in_another_unit_is_the_same_height() -> None:
    assert on(FALL, height_needed_cm=121.92) == on(FALL, height_needed_ft=4) == "hides"


def counted(day: str, cells: int, **stretch: int) -> Data:
    """A count of 4 placements, 100 cells: 25 of them are enough, 24 are not."""
    count = {"placements_count": 4, "cells_with_plant_count": cells}
    return {"done_on": day, "counted": LOG | count | stretch}


def told(found: ScreenJudged) -> list[tuple[float, float | None, str]]:
    """The stretches of a verdict: where each begins and ends, and why."""
    return [
        (one.begins.value, one.ends.value if one.ends is not None else None, one.why)
        for one in found.stretches
        if not isinstance(one.begins, Withheld) and not isinstance(one.ends, Withheld)
    ]


JUNE, LATER = "2028-06-20", "2029-06-20"
LOWER, UPPER = {"from_ft": 0, "to_ft": 300}, {"from_ft": 300, "to_ft": 726}


@pytest.mark.parametrize(
    ("counts", "verdict", "stretches"),
    [
        ([], "hides", [(0, 726, "hides")]),
        ([counted(JUNE, 25)], "hides", [(0, 726, "hides")]),
        ([counted(JUNE, 24)], "not_to_count_on", [(0, 726, "thin")]),
        (
            [counted(JUNE, 25, **LOWER), counted(JUNE, 24, **UPPER)],
            "in_part",
            [(0, 300, "hides"), (300, 726, "thin")],
        ),
        # A later count of a stretch stands above an earlier one of the whole, and the other way.
        (
            [counted(JUNE, 24), counted(LATER, 60, **LOWER)],
            "in_part",
            [(0, 300, "hides"), (300, 726, "thin")],
        ),
        ([counted(JUNE, 24, **LOWER), counted(LATER, 60)], "hides", [(0, 726, "hides")]),
        # Of two counts of one day the lesser counts.
        (
            [counted(JUNE, 60), counted(JUNE, 10, from_ft=200, to_ft=400)],
            "in_part",
            [(0, 200, "hides"), (200, 400, "thin"), (400, 726, "hides")],
        ),
        # The first fall's count is a count too, until there is another.
        ([counted("2027-09-20", 10)], "not_to_count_on", [(0, 726, "thin")]),
    ],
)
def test_a_stretch_counted_too_thin_hides_nobody(
    counts: list[Data], verdict: Verdict, stretches: list[tuple[float, float, str]]
) -> None:
    found = verdicts(*counts, height_needed_in=48)[FALL]
    assert (found.verdict, told(found)) == (verdict, stretches)


def test_one_tall_reading_lifts_no_screen_and_names_no_feet() -> None:
    """By hand: needed 50 in, low 48 in. 90 in at 200 ft change nothing; 23 stations do."""
    one = {"done_on": "2029-08-31", "measured": LOG | {"height_in": 90, "at_ft": 200}}
    assert on(FALL, one, height_needed_in=50) == "not_to_count_on"
    every = {"done_on": "2029-08-31", "measured": LOG | {"stations": ALL_ALONG}}
    assert on(FALL, every, height_needed_in=50) == "hides"


def test_low_spots_are_named_by_the_stations_beside_them() -> None:
    """By hand, year 3: low 48 in, typical 66 in. 33 in is half: 24 in. Needed are 48 in.

    Of 23 stations the one at 330 ft is low, so from 297 to 363 ft nothing is counted on; as few
    as three stations tell the same of the ground between them.
    """
    stations = [one | ({"height_in": 33} if one["at_ft"] == 330 else {}) for one in ALL_ALONG]
    found = verdicts(
        {"done_on": "2029-08-31", "measured": LOG | {"stations": stations}}, height_needed_in=48
    )[FALL]
    assert found.verdict == "in_part"
    assert told(found) == [(0, 297, "hides"), (297, 363, "low"), (363, 726, "hides")]
    assert found.heights.by_curve["low"].value == pytest.approx(24)
    few = [stations[0], stations[10], {"from_ft": 500, "to_ft": 726, "height_in": 90}]
    found = verdicts(
        {"done_on": "2029-08-31", "measured": LOG | {"stations": few}}, height_needed_in=48
    )[FALL]
    assert told(found) == [(0, 500, "low"), (500, 726, "hides")]


def test_counts_at_stations_of_a_screen_without_a_length() -> None:
    outline = {"area_ac": 1, "height_needed_in": 48}
    data = property_of(counted(JUNE, 24, from_ft=100, to_ft=300), screen=outline)
    screen = data["screens"]["screens"][0]
    del screen["length_ft"], screen["width_ft"]
    plan = make_plan(inventory_of(data), 2030, DAY(2029, 9, 2))
    found = next(one for one in judged(plan, plan.place("lane")) if one.day == FALL)
    assert told(found) == [(0, 100, "hides"), (100, 300, "thin"), (300, None, "hides")]


def worse_or_same(one: Verdict, other: Verdict) -> bool:
    return VERDICTS.index(one) <= VERDICTS.index(other)


HEIGHTS_IN = st.floats(6, 120).map(lambda height: round(height, 1))


@settings(deadline=None, max_examples=25)
@given(HEIGHTS_IN)
def test_a_higher_low_curve_never_worsens_a_verdict(needed_in: float) -> None:
    """Poor soil, ordinary soil, a kind that is known, a kind that is taller."""
    cases = [("upland", "poor"), ("upland", "ordinary"), ("lowland", "ordinary")]
    found = [
        verdicts(ecotype=ecotype, soil=soil, height_needed_in=needed_in) for ecotype, soil in cases
    ]
    for lesser, better in itertools.pairwise(found):
        for day, one in lesser.items():
            assert one.heights.by_curve["low"].value <= better[day].heights.by_curve["low"].value
            assert worse_or_same(one.verdict, better[day].verdict)


@settings(deadline=None, max_examples=25)
@given(st.dates(DAY(2028, 6, 15), DAY(2029, 9, 1)), HEIGHTS_IN, HEIGHTS_IN, HEIGHTS_IN)
def test_a_taller_measuring_never_worsens_a_verdict(
    day: datetime.date, needed_in: float, one_in: float, other_in: float
) -> None:
    low, high = (
        verdicts(
            {"done_on": day.isoformat(), "measured": LOG | {"height_in": height}},
            height_needed_in=needed_in,
        )
        for height in sorted((one_in, other_in))
    )
    assert all(worse_or_same(one.verdict, high[when].verdict) for when, one in low.items())


@settings(deadline=None, max_examples=10)
@given(
    st.lists(st.tuples(st.integers(0, 726), HEIGHTS_IN), min_size=1, max_size=30),
    HEIGHTS_IN,
    st.data(),
)
def test_fewer_plants_or_a_lower_spot_never_better_a_verdict(
    told_at: list[tuple[int, float]], needed_in: float, data: st.DataObject
) -> None:
    """Of the same heights with one of them lower, and of the same ground with a thin stretch."""
    lowered = data.draw(st.integers(0, len(told_at) - 1))
    plain = [{"at_ft": at, "height_in": height} for at, height in told_at]
    lower = [dict(one) for one in plain]
    lower[lowered]["height_in"] = round(lower[lowered]["height_in"] / 2, 2)
    first, last = sorted(data.draw(st.lists(st.integers(0, 726), min_size=2, max_size=2)))
    thin = [counted(JUNE, 10, from_ft=first, to_ft=last)] if first < last else []
    measured, less = (
        {"done_on": "2029-08-31", "measured": LOG | {"stations": stations}}
        for stations in (plain, lower)
    )
    better = verdicts(measured, height_needed_in=needed_in)
    for worse in (
        verdicts(less, height_needed_in=needed_in),
        verdicts(measured, *thin, height_needed_in=needed_in),
    ):
        for day, one in worse.items():
            assert worse_or_same(one.verdict, better[day].verdict)
            assert _hidden_ft(one) <= _hidden_ft(better[day])


def _hidden_ft(found: ScreenJudged) -> float:
    return sum((ends or 0) - begins for begins, ends, why in told(found) if why == "hides")


@settings(deadline=None, max_examples=25)
@given(st.dates(DAY(2028, 6, 15), DAY(2029, 9, 1)), HEIGHTS_IN, st.integers(3, 40))
def test_mowing_never_betters_a_verdict(
    day: datetime.date, needed_in: float, cut_height_in: int
) -> None:
    mown = {
        "done_on": day.isoformat(),
        "job": {"planting": "lane-27", "step": "upkeep_mowing"},
        "mowed": {"cut_height_in": cut_height_in},
    }
    cut, uncut = verdicts(mown, height_needed_in=needed_in), verdicts(height_needed_in=needed_in)
    assert all(worse_or_same(one.verdict, uncut[when].verdict) for when, one in cut.items())
