"""The sun's times: what holds whatever the place, and the places where there are none."""

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.compute import sun

FIRST = datetime.date(2000, 1, 1)
LATITUDES = st.floats(min_value=-60, max_value=60)
LONGITUDES = st.floats(min_value=-180, max_value=180)
DAYS = st.integers(min_value=7000, max_value=14000).map(float)
ALL = (
    sun.civil_dawn_minutes, sun.sunrise_minutes, sun.sunset_minutes, sun.civil_dusk_minutes,
)  # fmt: skip
TROMSO = (69.65, 18.96)


def times(latitude_deg: float, longitude_deg: float, day: datetime.date) -> list[float | None]:
    return [one(latitude_deg, longitude_deg, float((day - FIRST).days)) for one in ALL]


@given(latitude_deg=LATITUDES, longitude_deg=LONGITUDES, day=DAYS)
def test_dawn_sunrise_sunset_dusk_follow_each_other(
    latitude_deg: float, longitude_deg: float, day: float
) -> None:
    dawn, rise, down, dusk = (one(latitude_deg, longitude_deg, day) for one in ALL)
    assert rise is not None
    assert down is not None
    # up to 60 degrees there is a sunrise on every day, and a dawn on all but midsummer's
    assert dawn is None or dawn < rise
    assert rise < down
    assert dusk is None or down < dusk


@given(latitude_deg=LATITUDES, longitude_deg=LONGITUDES, day=DAYS)
def test_the_middle_of_the_day_is_near_noon_of_the_meridian(
    latitude_deg: float, longitude_deg: float, day: float
) -> None:
    """The equation of time never takes more than 16.5 minutes; the sun moves north meanwhile."""
    rise = sun.sunrise_minutes(latitude_deg, longitude_deg, day)
    down = sun.sunset_minutes(latitude_deg, longitude_deg, day)
    assert rise is not None
    assert down is not None
    assert abs((rise + down) / 2 + 4 * longitude_deg - 720) < 18


@given(latitude_deg=LATITUDES, longitude_deg=st.floats(min_value=-179, max_value=179), day=DAYS)
def test_a_degree_farther_west_the_sun_comes_four_minutes_later(
    latitude_deg: float, longitude_deg: float, day: float
) -> None:
    here = sun.sunrise_minutes(latitude_deg, longitude_deg, day)
    west = sun.sunrise_minutes(latitude_deg, longitude_deg - 1, day)
    assert here is not None
    assert west is not None
    assert west - here == pytest.approx(4, abs=0.05)


@given(latitude_deg=st.floats(min_value=1, max_value=60), longitude_deg=LONGITUDES)
def test_days_are_longer_in_summer(latitude_deg: float, longitude_deg: float) -> None:
    _, rise, down, _ = times(latitude_deg, longitude_deg, datetime.date(2027, 6, 21))
    _, winter_rise, winter_down, _ = times(latitude_deg, longitude_deg, datetime.date(2027, 12, 21))
    assert rise is not None
    assert down is not None
    assert winter_rise is not None
    assert winter_down is not None
    assert down - rise > winter_down - winter_rise


def test_there_is_no_sunrise_in_the_polar_summer() -> None:
    assert times(*TROMSO, datetime.date(2027, 6, 21)) == [None] * 4


def test_the_polar_winter_has_twilight_and_no_sunrise() -> None:
    dawn, rise, down, dusk = times(*TROMSO, datetime.date(2026, 12, 21))
    assert rise is None
    assert down is None
    assert dawn is not None
    assert dusk is not None
    assert dawn < dusk


@pytest.mark.parametrize("latitude_deg", [90.0, -90.0])
def test_the_poles_have_no_times(latitude_deg: float) -> None:
    assert times(latitude_deg, 0.0, datetime.date(2027, 3, 20)) == [None] * 4
