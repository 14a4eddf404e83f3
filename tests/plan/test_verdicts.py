"""Whether a screen hides: verdicts by hand, and what never makes one better or worse.

By hand, upland switchgrass on ordinary soil in its third season: low 48 in and typical 66 in on
15 November; through winter 0.6 x 48 = 28.8 in and 0.85 x 66 = 56.1 in on 15 January.
"""

import datetime
import itertools
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.plan.build import make_plan
from generator.plan.numbers import numbers_of
from generator.plan.verdicts import VERDICTS, Judged, Verdict, judged
from tests.plan.planned import inventory_of
from tests.properties import Data, small_property

DAY = datetime.date
FALL, WINTER = DAY(2029, 11, 15), DAY(2030, 1, 15)
LOG = {"planting": "lane-27"}


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
) -> dict[datetime.date, Judged]:
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
    tall = {"done_on": "2027-08-31", "measured": LOG | {"height_in": 90}}
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
