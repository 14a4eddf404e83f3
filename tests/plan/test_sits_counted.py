"""Sits counted in hours of wind: by the light, by hand, and by another way over real hours."""

import datetime
import math
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from generator.inventory.dates import ShootingHours
from generator.inventory.fields import Where
from generator.inventory.known import Known
from generator.inventory.places import Stand
from generator.inventory.weather import HourlyWind, WindStation
from generator.inventory.weather_wind import read_wind
from generator.plan.days.shooting import here_at
from generator.plan.days.sit_hours import SitHours, SitLengths, sits_of
from generator.plan.days.sits_counted import SitsOfMonth, counted_sits, winds_of_sits
from tests.plan.planned import inventory_of
from tests.properties import Data, small_property

DAY = datetime.date
WHERE = Where("dates.yaml", 1, 1)
SPRINGFIELD, CHICAGO = (39.78, -89.65), (41.98, -87.9)
FOUR = SitLengths(4, 4, 1)
Wind = tuple[float | None, float | None]


def rule(**more: object) -> ShootingHours:
    half_an_hour = {"ends": "sunset", "ends_after_minutes": 30}
    data = small_property()
    data["dates"] = {
        "dates": [{"id": "bow", "kind": "hunting", "first": "2026-10-01", "last": "2026-11-30",
                   "places": "all"}],
        "shooting_hours": [{"id": "light", "dates": "bow", "begins": "sunrise",
                            "begins_before_minutes": 30, "source": "booklet",
                            "looked_up_on": "2026-08-01"} | (more or half_an_hour)],
    }  # fmt: skip
    (found,) = inventory_of(data).shooting_hours
    return found


def days(first: datetime.date, count: int) -> Iterator[datetime.date]:
    return (first + datetime.timedelta(days=number) for number in range(count))


def sits(
    every: Iterable[datetime.date],
    at: tuple[float, float] = SPRINGFIELD,
    by: ShootingHours | None = None,
    lengths: SitLengths = FOUR,
) -> list[SitHours]:
    here = here_at(at, "America/Chicago")
    assert here is not None
    return list(sits_of(every, by, here, lengths))


def clock(sit: SitHours) -> list[int]:
    """The hours of a sit by the clock of Chicago."""
    zone = ZoneInfo("America/Chicago")
    return [datetime.datetime.fromtimestamp(hour * 3600, zone).hour for hour in sit.hours]


def test_a_sit_takes_the_hours_of_its_light() -> None:
    """Springfield, Nov 15, 2025: 6:43:39 and 16:42:27 by JPL DE421, lawful from 6:14 to 17:12.

    Four hours are 6:14 to 10:14 and 13:12 to 17:12; an hour after sunrise is 7:43, one before
    sunset 15:42.
    """
    morning, evening = sits(days(DAY(2025, 11, 15), 1), by=rule())
    assert (clock(morning), clock(evening)) == ([6, 7, 8, 9, 10], [13, 14, 15, 16, 17])
    assert morning.steady == (True, True, False, False, False)
    assert evening.steady == (False, False, False, True, True)


def test_without_a_rule_the_sun_is_the_light_and_a_short_day_ends_a_sit() -> None:
    morning, evening = sits(days(DAY(2025, 11, 15), 1))
    assert (clock(morning), clock(evening)) == ([7, 8, 9, 10, 11], [13, 14, 15, 16, 17])
    long = SitLengths(11, 11, 1)
    morning, evening = sits(days(DAY(2025, 11, 15), 1), lengths=long)
    assert clock(morning) == clock(evening) == list(range(7, 18))


def test_where_clocks_change_the_sun_does_not() -> None:
    """In the night to Nov 1, 2026 clocks go back: the same sun an hour earlier by the clock."""
    before, _, after, _ = sits(days(DAY(2026, 10, 31), 2), by=rule())
    assert (clock(before)[0], clock(after)[0]) == (7, 6)
    assert before.hours[0] + 24 == after.hours[0]
    noon = rule(ends="clock", ends_at="13:00")
    _, before, _, after = sits(days(DAY(2026, 10, 31), 2), by=noon)
    assert (clock(before)[-1], clock(after)[-1]) == (13, 13)
    assert before.hours[-1] + 25 == after.hours[-1]
    # of 2024 the same day was still of summer time
    both = sits([DAY(2024, 11, 1), DAY(2026, 11, 1)], by=noon)
    assert [sit.hours[-1] % 24 for sit in both if sit.part == "evenings"] == [18, 19]


def a_stand(**typed: object) -> Stand:
    data = small_property()
    data["stands"] = {"stands": [{"id": "oak", "name": "Oak", "lies": "open", **typed}]}
    (found,) = inventory_of(data).stands
    return found


def bed(toward: float) -> Data:
    return {"toward": toward, "distance_yd": 200}


def record(wind: Callable[[int], Wind], years: Iterable[int] = (2026,)) -> HourlyWind:
    """Every hour of November of some years, and of the day after it, by its number from Nov 1."""
    hours, told = [], []
    for year in years:
        first = (DAY(year, 11, 1) - DAY(1970, 1, 1)).days * 24
        hours += [first + number for number in range(31 * 24)]
        told += [wind(number) for number in range(31 * 24)]
    directions, speeds = zip(*told, strict=True)
    return HourlyWind("field", tuple(hours), directions, speeds)


def novembers(
    stand: Stand, wind: HourlyWind, years: Iterable[int] = (2026,)
) -> dict[str, SitsOfMonth]:
    every = [day for year in years for day in days(DAY(year, 11, 1), 30)]
    return {part: one for (_, part), one in counted_sits(stand, wind, sits(every)).items()}


@pytest.mark.parametrize(
    ("typed", "wind", "sits_of_month"),
    [
        # a bed at 30 lies 105 degrees off the line of a northwest wind, one at 160 lies 25 off it
        ({"beds": [bed(30)]}, (315.0, 10.0), 30),
        ({"beds": [bed(160)]}, (315.0, 10.0), 0),
        # turned by 90 degrees all is the same
        ({"beds": [bed(120)]}, (45.0, 10.0), 30),
        ({"beds": [bed(250)]}, (45.0, 10.0), 0),
        # below 4 mph it drifts; a calm and a wind of no direction are none to count on
        ({"beds": [bed(30)]}, (315.0, 3.9), 0),
        ({"beds": [bed(30)]}, (None, 0.0), 0),
        ({"beds": [bed(30)]}, (None, 10.0), 0),
        ({"beds": [bed(30)], "lies": "timber"}, (315.0, 9.9), 0),
        ({"winds_for": ["NW"]}, (315.0, 10.0), 30),
        ({"winds_for": ["NE"]}, (315.0, 10.0), 0),
    ],
)
def test_a_month_of_one_wind_by_hand(typed: Data, wind: Wind, sits_of_month: int) -> None:
    found = novembers(a_stand(**typed), record(lambda _: wind))
    assert {part: one.middling for part, one in found.items()} == {
        "mornings": sits_of_month,
        "evenings": sits_of_month,
    }
    assert all((one.month_days, one.least) == (30, None) for one in found.values())


def test_one_hour_that_is_not_ok_takes_the_whole_sit() -> None:
    """Calm at 21:00 UTC, 3 in the afternoon, on every fifth day: 24 evenings and all mornings."""
    calm = record(lambda hour: (None, 0.0) if hour % 120 == 21 else (315.0, 10.0))
    found = novembers(a_stand(beds=[bed(30)]), calm)
    assert (found["mornings"].middling, found["evenings"].middling) == (30, 24)


def test_a_sit_with_an_hour_nobody_knows_is_left_out() -> None:
    """Of the 24 evenings that are known 12 are OK: half of the days of the month, 15 of 30."""

    def wind(hour: int) -> Wind:
        if hour % 120 == 21:
            return None, None
        return (315.0, 10.0) if hour // 24 % 5 in (1, 2) else (160.0, 10.0)

    found = novembers(a_stand(beds=[bed(30)]), record(wind))
    assert found["evenings"].middling == 15
    # known of less than three quarters of its days, a month says nothing
    gap = record(lambda hour: (None, None) if hour < 8 * 24 else (315.0, 10.0))
    assert novembers(a_stand(beds=[bed(30)]), gap) == {}


@pytest.mark.parametrize(("years", "least", "middling"), [(9, None, 10), (10, 2, 11)])
def test_nine_years_of_ten_are_told_from_ten_years_on(
    years: int, least: int | None, middling: int
) -> None:
    """2, 4, 6 and on to 20 days: the tenth part of years at i / 11 is 2.2, the average 11."""
    span = range(2001, 2001 + years)
    parts = [
        record(lambda hour, n=n: (315.0, 10.0) if hour // 24 < 2 * n else (160.0, 10.0), [year])
        for n, year in enumerate(span, 1)
    ]
    whole = HourlyWind(
        "field",
        tuple(hour for part in parts for hour in part.hours),
        tuple(one for part in parts for one in part.from_deg),
        tuple(one for part in parts for one in part.speed_mph),
    )
    found = novembers(a_stand(beds=[bed(30)]), whole, span)["mornings"]
    assert (found.least, found.middling) == (least, middling)


def test_a_report_counts_by_the_degrees_it_stands_for() -> None:
    """A wind typed as right counts 22.5 degrees to each side of 315, from 292.5 on.

    A report of 290 stands for 285 to 295, a quarter of it right: a quarter of 30 mornings of which
    one hour is so told, and next to none of those with five such hours in a row.
    """
    every = record(lambda _: (290.0, 10.0))
    rare = record(lambda hour: (290.0, 10.0) if hour % 24 == 15 else (320.0, 10.0))
    stand = a_stand(winds_for=["NW"])
    assert novembers(stand, every)["mornings"].middling == 0
    assert novembers(stand, rare)["mornings"].middling == 7
    in_degrees = HourlyWind("field", rare.hours, rare.from_deg, rare.speed_mph, step_deg=1.0)
    assert novembers(stand, in_degrees)["mornings"].middling == 0


def chicago(folder: Path) -> HourlyWind:
    real = Path(__file__).resolve().parents[1] / "data" / "weather" / "chicago_autumn_2016.gz"
    (folder / "weather").mkdir()
    (folder / "weather" / real.name).write_bytes(real.read_bytes())
    station = WindStation(
        where=WHERE, id="o", name="O", file=f"weather/{real.name}", kind="isd_lite"
    )
    wind, problems = read_wind(folder, station, Known())
    assert problems == []
    assert wind is not None
    return wind


def test_real_hours_of_chicago_come_out_as_another_way_counts_them(tmp_path: Path) -> None:
    """O'Hare, fall of 2016: winds typed for W and NW in the open, each report spread by hand.

    From 247.5 to 337.5 degrees it is OK, from 4 mph on.
    """
    wind = chicago(tmp_path)
    every = sits(days(DAY(2016, 10, 1), 91), CHICAGO, rule())
    told = dict(zip(wind.hours, zip(wind.from_deg, wind.speed_mph, strict=True), strict=True))
    shares: dict[tuple[int, str], list[float]] = defaultdict(list)
    for sit in every:
        chances = []
        for hour in sit.hours:
            from_deg, speed = told.get(hour, (None, None))
            if speed is None:
                break
            inside = 0.0
            if from_deg is not None and speed >= 4:
                inside = max(0, min(from_deg + 5, 337.5) - max(from_deg - 5, 247.5)) / 10
            chances.append(inside)
        else:
            shares[sit.day.month, sit.part].append(math.prod(chances))
    found = counted_sits(a_stand(winds_for=["W", "NW"]), wind, every)
    assert found.keys() == shares.keys()
    for key, month in found.items():
        expected = month.month_days * math.fsum(shares[key]) / len(shares[key])
        assert month.middling == math.floor(expected)
    # of these months one had many such mornings, so that there is something to be counted wrong
    assert max(month.middling for month in found.values()) >= 10


def test_how_often_each_wind_blew_adds_up_and_keeps_calms_apart(tmp_path: Path) -> None:
    wind = chicago(tmp_path)
    found = winds_of_sits(wind, sits(days(DAY(2016, 10, 1), 91), CHICAGO))
    assert list(found) == [10, 11, 12]
    for month in found.values():
        assert math.fsum(
            (*month.blown_fraction, month.calm_fraction, month.turning_fraction)
        ) == pytest.approx(1)
        assert month.calm_fraction > 0
