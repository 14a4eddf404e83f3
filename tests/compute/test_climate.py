"""Properties of what is found in a record of days: shifted, warmed, with days left out."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.compute.climate_days import (
    first_freeze_days,
    freeze_thaw_count,
    freeze_thaw_ends_days,
    held_days,
    last_freeze_days,
    sum_reached_days,
    thawed_days,
)
from generator.compute.climate_heat import (
    cut_sine_degree_days_f,
    modified_degree_days_f,
    simple_degree_days_f,
    sine_degree_days_f,
)
from generator.compute.climate_soil import soil_f
from generator.compute.climate_spread import at_share_days, daily_from_months_f, filled_f

TEMPERATURE = st.floats(-40, 110)
SERIES = st.lists(TEMPERATURE, min_size=12, max_size=60)
MONTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
# No day reaches anything by it: too warm to freeze, too cold to grow.
DULL = 34.0


def by_points(high: float, low: float, base: float, top: float = math.inf) -> float:
    """Degree days of a day as the mean over many points of its sine."""
    points = 20_000
    warmth = (
        (high + low) / 2 + (high - low) / 2 * math.sin(2 * math.pi * (n + 0.5) / points)
        for n in range(points)
    )
    return math.fsum(max(0.0, min(one, top) - base) for one in warmth) / points


@given(TEMPERATURE, st.floats(0, 50), st.floats(30, 60))
def test_the_sine_is_the_mean_over_its_points(low: float, more: float, base: float) -> None:
    high = low + more
    assert sine_degree_days_f(high, low, base) == pytest.approx(
        by_points(high, low, base), abs=1e-3
    )
    cut = cut_sine_degree_days_f(high, low, base, 86)
    assert cut == pytest.approx(by_points(high, low, base, 86), abs=1e-3)


@given(TEMPERATURE, st.floats(0, 50))
def test_no_method_gives_less_than_nothing_and_the_cut_takes_away(low: float, more: float) -> None:
    high = low + more
    simple, sine = simple_degree_days_f(high, low, 50), sine_degree_days_f(high, low, 50)
    cut = cut_sine_degree_days_f(high, low, 50, 86)
    assert 0 <= simple <= sine + 1e-9
    assert cut + 1e-9 >= 0
    assert cut <= sine + 1e-9
    assert 0 <= modified_degree_days_f(high, low) <= 36


@given(SERIES, st.integers(0, 10))
def test_a_record_that_begins_later_has_its_days_later(days: list[float], shift: int) -> None:
    later = [DULL] * shift + days
    for found in (
        lambda one: first_freeze_days(one, 32),
        lambda one: last_freeze_days(one, 28),
        lambda one: held_days(one, 60, 5),
        thawed_days,
        lambda one: freeze_thaw_ends_days([high + 20 for high in one], one),
        lambda one: sum_reached_days([max(0, day - 50) for day in one], 40),
    ):
        was, now = found(days), found(later)
        assert now == (None if was is None else was + shift)


@given(SERIES)
def test_warmth_never_makes_anything_that_waits_for_warmth_later(days: list[float]) -> None:
    warmer = [one + 1 for one in days]
    never = len(days)

    def reached(one: list[float]) -> int:
        found = sum_reached_days([simple_degree_days_f(day, day, 32) for day in one], 360)
        return never if found is None else found

    def held(one: list[float]) -> int:
        found = held_days(soil_f(one), 60, 5)
        return never if found is None else found

    assert reached(warmer) <= reached(days)
    assert held(warmer) <= held(days)
    assert (last_freeze_days(warmer, 32) or -1) <= (last_freeze_days(days, 32) or -1) or (
        last_freeze_days(warmer, 32) == last_freeze_days(days, 32)
    )


@given(SERIES)
def test_soil_lies_between_the_coldest_and_the_warmest_of_eleven_days(days: list[float]) -> None:
    for n, one in enumerate(soil_f(days)):
        near = days[max(0, n - 10) : n + 1]
        assert min(near) - 1e-9 <= one <= max(near) + 1e-9


def test_soil_follows_a_step_of_the_air_as_described() -> None:
    # ten days at 10 C, then 21 C: (55 * 10 + 11 * 21) / 66 by hand
    assert soil_f([10.0] * 10 + [21.0])[-1] == pytest.approx(11.8333, abs=1e-4)


@given(st.lists(st.floats(1, 366), min_size=1, max_size=60))
def test_early_comes_before_typical_before_late_within_the_years(days: list[float]) -> None:
    early, typical, late = (at_share_days(days, share) for share in (0.1, 0.5, 0.9))
    assert min(days) <= early <= typical <= late <= max(days)


@given(st.lists(st.floats(1, 300), min_size=1, max_size=60), st.floats(0, 30))
def test_all_years_later_make_each_day_as_much_later(days: list[float], more: float) -> None:
    for share in (0.1, 0.5, 0.9):
        moved = at_share_days([one + more for one in days], share)
        assert moved == pytest.approx(at_share_days(days, share) + more)


@given(st.lists(st.none() | TEMPERATURE, min_size=1, max_size=60))
def test_a_gap_takes_nothing_beyond_what_stands_beside_it(days: list[float | None]) -> None:
    known = [one for one in days if one is not None]
    assume(known)
    filled = filled_f(days)
    assert [new for new, old in zip(filled, days, strict=True) if old is not None] == known
    assert min(known) - 1e-9 <= min(filled)
    assert max(filled) <= max(known) + 1e-9


def test_nothing_cannot_be_filled() -> None:
    with pytest.raises(ValueError, match="no value"):
        filled_f([None, None])


@given(st.lists(st.floats(-10, 90), min_size=12, max_size=12))
def test_days_from_normals_mean_the_normals_again(normals: list[float]) -> None:
    days = daily_from_months_f(normals, MONTHS)
    assert len(days) == 365
    for month, length in enumerate(MONTHS):
        first = sum(MONTHS[:month])
        assert sum(days[first : first + length]) / length == pytest.approx(normals[month], abs=1e-6)


@given(SERIES, st.sets(st.integers(0, 11)))
def test_a_day_left_out_is_no_freeze_thaw_day(highs: list[float], without: set[int]) -> None:
    lows = [one - 20 for one in highs]
    left = [None if n in without else one for n, one in enumerate(lows)]
    taken = freeze_thaw_count([highs[n] for n in without], [lows[n] for n in without])
    assert freeze_thaw_count(highs, left) == freeze_thaw_count(highs, lows) - taken
