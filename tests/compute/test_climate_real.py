"""What is found in real records, against answers worked out outside the project."""

import datetime
import hashlib
import math
import re
import statistics

import pytest

from generator.compute.climate_days import (
    first_freeze_days,
    freeze_thaw_count,
    last_freeze_days,
    sum_reached_days,
)
from generator.compute.climate_heat import modified_degree_days_f, simple_degree_days_f
from generator.compute.climate_spread import at_share_days
from tests.compute.weather_data import FOLDER, Day, budburst, daily, spring_means_c

CHAMPION = daily("champion")
SEATTLE = daily("seattle")


def between(days: list[Day], first: datetime.date, last: datetime.date) -> list[Day]:
    return [one for one in days if first <= one.day <= last]


def day_of_year(day: datetime.date) -> int:
    return day.timetuple().tm_yday


def last_freezes(threshold: float) -> dict[int, datetime.date]:
    found = {}
    for year in range(1982, 2019):
        spring = between(CHAMPION, datetime.date(year, 1, 1), datetime.date(year, 7, 31))
        at = last_freeze_days([one.low_f for one in spring], threshold)
        assert at is not None
        found[year] = spring[at].day
    return found


def first_freezes(threshold: float) -> list[int]:
    found = []
    for year in range(1982, 2019):
        autumn = between(CHAMPION, datetime.date(year, 8, 1), datetime.date(year, 12, 31))
        at = first_freeze_days([one.low_f for one in autumn], threshold)
        assert at is not None
        found.append(day_of_year(autumn[at].day))
    return found


def shares(days: list[int], year: int = 2001) -> list[str]:
    """Early, typical and late as dates of a common year, to the nearest day."""
    first = datetime.date(year, 1, 1)
    found = (at_share_days(days, share) for share in (0.1, 0.5, 0.9))
    return [f"{first + datetime.timedelta(round(one) - 1):%b %d}" for one in found]


def test_the_files_are_the_ones_the_list_says() -> None:
    listed = dict(
        reversed(line.split())
        for line in re.findall(
            r"^    ([0-9a-f]{64}  \S+)$", (FOLDER / "README.md").read_text("utf-8"), re.MULTILINE
        )
    )
    there = [one for one in FOLDER.iterdir() if one.suffix in (".gz", ".csv")]
    assert {one.name: hashlib.sha256(one.read_bytes()).hexdigest() for one in there} == listed


def test_last_freezes_of_champion() -> None:
    """Independent: read off by another script, last low at or under 0 C before August.

    37 years; mean day of the year 129.65, standard deviation 12.48; Apr 16 to Jun 15.
    """
    days = last_freezes(32)
    assert [f"{days[year]:%m-%d}" for year in range(2000, 2006)] == [
        "05-13", "05-25", "05-09", "05-20", "05-14", "05-03"
    ]  # fmt: skip
    numbers = [day_of_year(one) for one in days.values()]
    assert len(numbers) == 37
    assert statistics.mean(numbers) == pytest.approx(129.65, abs=0.005)
    assert statistics.stdev(numbers) == pytest.approx(12.48, abs=0.005)
    assert min(f"{one:%m-%d}" for one in days.values()) == "04-16"
    assert max(f"{one:%m-%d}" for one in days.values()) == "06-15"


def test_early_typical_and_late_freezes_of_champion() -> None:
    """Independent: the same record by positions i / (n + 1), outside the project.

    The record has 28 F as -2.22 C, which is 28.004 F and so no freeze of 28 F to either script; the
    program reads temperatures to a tenth of a degree F, and to it such a day is one.
    """
    assert shares([day_of_year(one) for one in last_freezes(32).values()]) == [
        "Apr 25", "May 10", "May 27"
    ]  # fmt: skip
    assert shares([day_of_year(one) for one in last_freezes(28).values()]) == [
        "Apr 10", "Apr 26", "May 10"
    ]  # fmt: skip
    assert shares(first_freezes(32)) == ["Sep 15", "Sep 28", "Oct 10"]


def test_freeze_thaw_days_of_champion() -> None:
    """Independent: 121.8 days a year by the rule of 0 C and -2.2 C, outside the project."""
    highs = [round(one.high_f, 1) for one in CHAMPION]
    count = freeze_thaw_count(highs, [round(one.low_f, 1) for one in CHAMPION])
    assert count / 37 == pytest.approx(121.8, abs=0.05)


@pytest.mark.parametrize(
    ("year", "simple", "modified"),
    [
        (2012, 2040.1, 2269.2),
        (2013, 2464.6, 2688.6),
        (2014, 2682.4, 2899.2),
        (2015, 2773.9, 3001.5),
    ],
)
def test_degree_days_of_seattle(year: int, simple: float, modified: float) -> None:
    """Independent: yearly sums over 50 F worked out outside the project, to the printed digit."""
    days = [one for one in SEATTLE if one.day.year == year]
    simply = math.fsum(simple_degree_days_f(one.high_f, one.low_f, 50) for one in days)
    assert abs(simply - simple) <= 0.05 * (1 + 1e-9)
    held = math.fsum(modified_degree_days_f(one.high_f, one.low_f) for one in days)
    assert abs(held - modified) <= 0.05 * (1 + 1e-9)


def test_thermal_time_tells_budburst_better_than_the_mean_date() -> None:
    """Observed: 12 years of blueberry budburst at Harvard Forest (MA), 1990 to 2001.

    Base 6 C from Feb 1, 70 degree days C: 3.75 days off as a root mean square, 6.7 by the mean
    date. Fitted on the same years, outside the project.
    """
    seen, off, off_mean = budburst(), [], []
    mean = statistics.mean(seen.values())
    for year, means in spring_means_c().items():
        heat = [max(0.0, one - 6) * 9 / 5 for one in means]
        at = sum_reached_days(heat, 70 * 9 / 5)
        assert at is not None
        off.append(32 + at - seen[year])
        off_mean.append(mean - seen[year])
    assert len(off) == 12
    assert math.sqrt(statistics.mean(one**2 for one in off)) == pytest.approx(3.75, abs=0.005)
    assert math.sqrt(statistics.mean(one**2 for one in off_mean)) == pytest.approx(6.70, abs=0.005)
