"""Counts of hourly wind against the real hours of Chicago, and what must hold of any record."""

import datetime
import math
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.compute.wind_record import whole_sit_fraction, winds_fraction
from generator.inventory.fields import Where
from generator.inventory.known import Known
from generator.inventory.weather import HourlyWind, WindStation
from generator.inventory.weather_hours import EPOCH
from generator.inventory.weather_wind import read_wind

SIXTEEN = (
    "N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE",
    "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW",
)  # fmt: skip
WEST = range(SIXTEEN.index("W"), len(SIXTEEN))


@pytest.fixture(scope="module")
def chicago(tmp_path_factory: pytest.TempPathFactory) -> HourlyWind:
    """O'Hare, October to December 2016: 2,206 hours of diyepw 1.3.1 (tests/data/weather)."""
    folder = tmp_path_factory.mktemp("chicago")
    real = Path(__file__).resolve().parents[1] / "data" / "weather" / "chicago_autumn_2016.gz"
    (folder / "weather").mkdir()
    (folder / "weather" / real.name).write_bytes(real.read_bytes())
    station = WindStation(
        where=Where("weather.yaml", 1, 1), id="o", name="O", file=f"weather/{real.name}",
        kind="isd_lite",
    )  # fmt: skip
    wind, problems = read_wind(folder, station, Known())
    assert (wind is not None, problems) == (True, [])
    assert wind is not None
    return wind


def test_thirty_six_equal_reports_blow_alike_from_everywhere() -> None:
    """6.25 percent each; unspread they read 8.33 and 5.56 (an equal circle, worked by hand)."""
    tens = [float(one) for one in range(10, 370, 10)]
    assert winds_fraction(tens, 10, 16) == pytest.approx([1 / 16] * 16, abs=1e-9)
    unspread = winds_fraction(tens, 1e-6, 16)
    assert {round(100 * one, 2) for one in unspread} == {8.33, 5.56}


def test_a_report_is_spread_by_what_it_covers() -> None:
    """By hand: north ends at 348.75 and 11.25, so five eighths of 350 and of 010 lie in it."""
    by_name = {
        told: dict(zip(SIXTEEN, winds_fraction([told], 10, 16), strict=True))
        for told in (350.0, 360.0, 10.0, 20.0, 30.0)
    }
    assert [by_name[told]["N"] for told in (350.0, 360.0, 10.0)] == [0.625, 1, 0.625]
    assert [by_name[told]["NNE"] for told in (10.0, 20.0, 30.0)] == [0.375, 1, 0.875]
    assert by_name[350.0]["NNW"] == 0.375


def test_the_west_of_chicago_is_an_eighth_and_not_a_sixth(chicago: HourlyWind) -> None:
    """W reads 16.9 percent where tens are counted as they stand, and 12.5 percent spread.

    Both were counted over the same file before this program was written.
    """
    reports = [one for one in chicago.from_deg if one is not None]
    assert len(reports) == 2067
    west = SIXTEEN.index("W")
    assert round(100 * winds_fraction(reports, chicago.step_deg, 16)[west], 1) == 12.5
    assert round(100 * winds_fraction(reports, 1e-6, 16)[west], 1) == 16.9


def test_whole_sits_are_fewer_than_their_hours_look_like(chicago: HourlyWind) -> None:
    """W to NNW, 1 to 4 p.m. by standard time: 33 percent of hours, 26 percent of whole sits.

    Counted over the same file before this program was written: of the 86 days all of whose four
    hours are told 26 percent have all of them, 29 percent three or more, 44 percent any.
    """
    winds = dict(
        zip(chicago.hours, zip(chicago.from_deg, chicago.speed_mph, strict=True), strict=True)
    )
    first = (datetime.datetime(2016, 10, 1) - EPOCH).days
    sits = [
        [_from_the_west(*winds.get(day * 24 + hour + 6, (None, None))) for hour in range(13, 17)]
        for day in range(first, first + 92)
    ]
    whole = [whole_sit_fraction(sit) for sit in sits]
    known = [sit for sit, share in zip(sits, whole, strict=True) if share is not None]
    hours = [hour for sit in known for hour in sit if hour is not None]
    assert (len(known), whole.count(1.0)) == (86, 22)
    assert round(100 * sum(hours) / len(hours)) == 33
    assert round(100 * whole.count(1.0) / len(known)) == 26
    assert round(100 * sum(sit.count(1.0) >= 3 for sit in known) / len(known)) == 29
    assert round(100 * sum(1.0 in sit for sit in known) / len(known)) == 44


def _from_the_west(from_deg: float | None, speed_mph: float | None) -> float | None:
    """1 or 0 by the sector a report stands in, as it was counted; a calm is no wind from there."""
    if speed_mph == 0:
        return 0.0
    if from_deg is None:
        return None
    sector = math.floor((from_deg % 360) / 22.5 + 0.5) % 16
    return float(sector in WEST)


@given(
    st.lists(st.integers(1, 36).map(lambda tens: tens * 10.0), min_size=1, max_size=40),
    st.sampled_from((8, 16)),
    st.integers(0, 7),
)
def test_turned_by_an_eighth_everything_turns_with_it(
    reports: list[float], sectors: int, eighths: int
) -> None:
    shares = winds_fraction(reports, 10, sectors)
    turned = winds_fraction([one + 45 * eighths for one in reports], 10, sectors)
    shift = eighths * sectors // 8
    assert math.fsum(shares) == pytest.approx(1)
    assert turned == pytest.approx(shares[-shift:] + shares[:-shift] if shift else shares)


@given(st.lists(st.sampled_from((0.0, 0.25, 1.0)), min_size=1, max_size=6))
def test_a_sit_is_never_likelier_than_its_worst_hour(hours: list[float]) -> None:
    whole = whole_sit_fraction(hours)
    assert whole is not None
    assert whole <= min(hours)
    assert whole_sit_fraction([*hours, None]) is None
