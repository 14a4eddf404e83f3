"""What holds on the very day, at the very figure, where one more or less would be another answer.

Worked out by hand; each case stands on both sides of its bound.
"""

import datetime
from dataclasses import replace
from typing import Any

import pytest

from generator.compute.suited import is_run_of_hours
from generator.inventory.fields import Where
from generator.inventory.label import YearlyLimit
from generator.plan.jobs.alternatives import still_to_sow
from generator.plan.labels.crops import Crop
from generator.plan.labels.rates import JobRate
from generator.plan.labels.yearly_sums import (
    PlannedSpray,
    a_year_after,
    amount_in_a_year,
    in_doubt,
    in_doubt_at_once,
    times_in_a_year,
)
from generator.plan.season.marker_years import Years, enough, often_without
from generator.reference.active_names import ActiveName
from generator.working import Given
from tests.plan.planned import inventory_of
from tests.plan.test_alternatives import sowing_on
from tests.properties import small_property


def spray(job: str, opens: str, closes: str = "") -> PlannedSpray:
    """A spraying of one product on the lane, on a day or between two."""
    return PlannedSpray(
        job_id=job,
        place_id="lane",
        grounds=frozenset({"lane"}),
        crop=Crop("lane", "lane-27", 2026, None),
        product_id="brew",
        product_name="Brew",
        actives=(),
        pooled=(),
        rate=None,
        opens=datetime.date.fromisoformat(opens),
        closes=datetime.date.fromisoformat(closes or opens),
    )


def limit(counted: str, same_day: str | None = None) -> YearlyLimit:
    """A limit of a year, counted in this way."""
    where = Where("products.yaml", 1, 1)
    amount = Given("most", 64, "fl_oz_per_ac", 64, "fl_oz_per_ac", where.file, where.line, "page")
    return YearlyLimit(where=where, amount=amount, counted=counted, same_day_next_year=same_day)


@pytest.mark.parametrize(
    ("other", "same_day", "times"),
    [
        ("2027-09-09", None, 2),
        ("2027-09-10", None, 2),
        ("2027-09-11", None, 1),
        ("2027-09-09", "apart", 2),
        ("2027-09-10", "apart", 1),
        ("2027-09-10", "together", 2),
        ("2025-09-11", None, 2),
        ("2025-09-10", None, 2),
        ("2025-09-09", None, 1),
        ("2025-09-10", "apart", 1),
        ("2025-09-11", "apart", 2),
    ],
)
def test_twelve_months_after_the_tenth_of_september(
    other: str, same_day: str | None, times: int
) -> None:
    """The day a year on is within 12 months unless the label's reader has said that it is not."""
    mine, far = spray("mine", "2026-09-10"), spray("far", other)
    for one, two in ((mine, far), (far, mine)):
        here = (one, two)
        assert times_in_a_year(one, here, limit("any_12_months", same_day)) == times


@pytest.mark.parametrize(
    ("other", "times"), [("2026-12-31", 2), ("2027-01-01", 1), ("2026-01-01", 2), ("2025-12-31", 1)]
)
def test_a_calendar_year_from_its_first_day_to_its_last(other: str, times: int) -> None:
    mine, far = spray("mine", "2026-09-10"), spray("far", other)
    assert times_in_a_year(mine, (mine, far), limit("calendar_year")) == times
    assert times_in_a_year(far, (mine, far), limit("calendar_year")) == times


def test_open_dates_over_the_new_year_are_of_both_years() -> None:
    mine = spray("mine", "2026-12-20", "2027-01-05")
    for other, times in (
        ("2026-02-01", 2),
        ("2027-11-01", 2),
        ("2025-12-31", 1),
        ("2028-01-01", 1),
    ):
        far = spray("far", other)
        assert times_in_a_year(mine, (mine, far), limit("calendar_year")) == times


def test_a_year_after_the_last_year_there_is() -> None:
    assert a_year_after(datetime.date(9998, 5, 1)) == datetime.date(9999, 5, 1)
    assert a_year_after(datetime.date(9999, 5, 1)) == datetime.date.max


def test_only_two_named_parts_of_one_place_are_apart() -> None:
    north = replace(spray("north", "2026-09-10"), part="North end")
    south = replace(north, part="south end")
    assert north.is_apart_from(south)
    assert not north.is_apart_from(replace(north, part=" north  END"))
    assert not north.is_apart_from(replace(south, place_id="far"))
    nowhere = replace(south, part=None)
    assert not north.is_apart_from(nowhere)
    assert not nowhere.is_apart_from(north)


MOST = Given("rate", 45, "fl_oz_per_ac", 45, "fl_oz_per_ac", "log.yaml", 1, "page")


def of_rate(spraying: PlannedSpray, fl_oz: float, most: float | None = None) -> PlannedSpray:
    """The spraying at a rate of its product, and at most at another."""

    def rate(value: float) -> JobRate:
        typed = Given("rate", value, "fl_oz_per_ac", value, "fl_oz_per_ac", "log.yaml", 1, "page")
        return JobRate(typed, (), None)

    return replace(spraying, rate=rate(fl_oz), most=None if most is None else rate(most))


def test_what_is_known_and_what_is_possible_in_a_year() -> None:
    """30 and 20 fl oz are known; 45 in place of the 20 where two entries may be of one part."""
    card = inventory_of(small_property()).products[0].label
    assert card is not None
    mine, other = of_rate(spray("mine", "2026-09-10"), 30), spray("log", "2026-09-20")
    for how, amount in (("known", 50), ("possible", 75)):
        here = (mine, of_rate(other, 20, 45))
        found = amount_in_a_year(mine, here, card, "product", limit("calendar_year"), how)
        assert found is not None
        assert (found.amount.value, found.amount.unit) == (amount, "fl_oz_per_ac")
        assert found.count == 2
    alone = amount_in_a_year(mine, (mine,), card, "product", limit("calendar_year"))
    assert alone is not None
    assert mine.rate is not None
    assert (alone.amount, alone.count) == (mine.rate.product, 1)


def test_what_has_no_rate_is_asked_where_the_log_leaves_it_out_and_else_leaves_no_sum() -> None:
    card = inventory_of(small_property()).products[0].label
    assert card is not None
    mine, other = of_rate(spray("mine", "2026-09-10"), 30), spray("log", "2026-09-20")
    no_amount = replace(other, gaps=frozenset({"amount"}))
    no_product = replace(of_rate(other, 20), product_id="", gaps=frozenset({"product"}))
    for left_out in (no_amount, no_product):
        for how in ("known", "possible"):
            here = (mine, left_out)
            found = amount_in_a_year(mine, here, card, "product", limit("calendar_year"), how)
            assert found is not None
            assert (found.amount.value, found.count) == (30, 1)
    assert amount_in_a_year(mine, (mine, other), card, "product", limit("calendar_year")) is None


@pytest.mark.parametrize(
    ("change", "doubted"),
    [
        ({}, False),
        ({"gaps": frozenset({"area"})}, True),
        ({"gaps": frozenset({"area"}), "job_id": "mine"}, False),  # counts by its plan
        ({"gaps": frozenset({"area"}), "product_id": "second"}, False),
        ({"most": JobRate(MOST, (), None)}, True),
        ({"most": JobRate(MOST, (), None), "job_id": "mine"}, False),
        ({"product_id": "", "gaps": frozenset({"product"})}, True),
    ],
)
def test_of_what_it_is_not_known_what_it_adds(change: dict[str, Any], doubted: bool) -> None:
    mine = spray("mine", "2026-09-10")
    other = replace(spray("log", "2026-09-20"), **change)
    found = in_doubt(mine, (mine, other), limit("calendar_year"))
    assert found == ((other,) if doubted else ())


def test_of_a_tank_the_actives_of_a_near_name_are_in_doubt() -> None:
    def holding(product: str, name: str) -> PlannedSpray:
        part = replace(spray("mine", "2026-09-10"), product_id=product)
        return replace(part, actives=(ActiveName(name),))

    mine, near = holding("brew", "made-up alderane"), holding("near", "made-up aldarane")
    tank = (mine, near, holding("same", "made-up alderane"), holding("far", "made-up birchate"))
    assert in_doubt_at_once(mine, tank) == (near,)


@pytest.mark.parametrize(
    ("speeds_mph", "blew_so"),
    [
        ([3, 3, 3], True),
        ([2.9, 3, 3], False),
        ([10, 10, 10], True),
        ([10, 10, 10.1], False),
        ([3, 10, 3], True),
        ([3, 10], False),
    ],
)
def test_a_wind_at_the_end_of_the_label_s_range_is_within_it(
    speeds_mph: list[float], blew_so: bool
) -> None:
    assert is_run_of_hours(speeds_mph, 3, 10, 3) == blew_so


@pytest.mark.parametrize(
    ("closes", "first"),
    [("2027-08-30", "2027-08-31"), ("2027-08-31", "2027-08-31"), ("2027-09-01", "2027-10-15")],
)
def test_a_choice_that_ends_on_the_day_the_missed_sowing_closed_is_of_that_year(
    closes: str, first: str
) -> None:
    """Oats are sown to Aug 31; missed after that, rye is left before the oats of next year."""
    job, _ = sowing_on("2027-08-16")
    moved = replace(job, dates=replace(job.dates, closes=datetime.date.fromisoformat(closes)))
    as_of = datetime.date.fromisoformat("2027-08-31")
    assert min(str(until) for _, until, _ in still_to_sow(moved, as_of)) == first


@pytest.mark.parametrize(
    ("came", "without", "often", "told"),
    [
        (18, 2, False, True),  # two of twenty years are one in ten
        (17, 2, True, False),
        (10, 1, False, True),
        (10, 0, False, True),
        (9, 0, False, False),  # nine years do not tell one in ten
        (9, 1, False, False),
        (0, 12, True, False),
        (2, 18, True, False),
    ],
)
def test_a_sign_that_years_lack(came: int, without: int, often: bool, told: bool) -> None:
    days = tuple(datetime.date(2000 + year, 10, 20) for year in range(came))
    years = Years(days, 0, without)
    assert often_without(years) == often
    assert enough(years) == told
