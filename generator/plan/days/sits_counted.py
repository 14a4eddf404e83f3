"""How many mornings and evenings of a month were OK for a stand in every hour of a sit."""

import calendar
import itertools
import math
from bisect import bisect_left
from collections import defaultdict
from collections.abc import Iterable, Mapping

from generator.compute.climate_spread import at_share_days
from generator.compute.scent import CIRCLE_DEG
from generator.compute.wind_record import whole_sit_fraction, winds_fraction
from generator.dataclass import dataclass
from generator.inventory.places import Stand
from generator.inventory.weather import HourlyWind
from generator.plan.days.sit_hours import SitHours, SitPart
from generator.plan.season.marker_years import EARLY
from generator.plan.winds.airs import OK, Air, HowTold
from generator.plan.winds.stand_winds import stand_wind
from generator.plan.winds.widths import EIGHT_WINDS_DEG
from generator.reference.library import values

_QUARTERS = 4  # of a degree
# A direction, a class of speed, whether the air is steady.
_Told = tuple[float, int, bool]
MonthAndPart = tuple[int, SitPart]


@dataclass(frozen=True, slots=True)
class SitsOfMonth:
    """The sits of a month that a stand can be counted on, of its days, rests left away.

    `middling` is the average of years, `least` what nine years of ten had at least, None where too
    few years are known.
    """

    month_days: int
    middling: int
    least: int | None


@dataclass(frozen=True, slots=True)
class WindsOfMonth:
    """How often the wind of sits came from each of eight directions, calm, and without direction.

    Shares of the hours of a month of which the record has a wind.
    """

    blown_fraction: tuple[float, ...]
    calm_fraction: float
    turning_fraction: float
    hours: int


class HoursOfStand:
    """What each hour of a record is for one stand: the chance that its wind was OK there."""

    def __init__(self, stand: Stand, record: HourlyWind) -> None:
        """Take a stand and the record whose hours are asked."""
        self._stand = stand
        self._step_deg = record.step_deg
        self._by_hour = dict(
            zip(record.hours, zip(record.from_deg, record.speed_mph, strict=True), strict=True)
        )
        self._by_told_fraction: dict[_Told, float] = {}
        self._class_of_mph: dict[float, int] = {}
        self._at_ends: dict[_Told, bool] = {}

    def fraction(self, hour: int, *, steady: bool) -> float | None:
        """Return the chance that the wind of an hour was OK, None where nobody knows its speed.

        A calm, and a wind that turned about or of no told direction, is none to count on.
        """
        from_deg, speed_mph = self._by_hour.get(hour, (None, None))
        if speed_mph is None:
            return None
        if from_deg is None or speed_mph == 0:
            return 0.0
        if speed_mph not in self._class_of_mph:
            self._class_of_mph[speed_mph] = _class_of(speed_mph)
        told = (from_deg, self._class_of_mph[speed_mph], steady)
        if told not in self._by_told_fraction:
            self._by_told_fraction[told] = self._share(told, speed_mph)
        return self._by_told_fraction[told]

    def _share(self, told: _Told, speed_mph: float) -> float:
        """Return the share of the degrees a report stands for on which the wind is OK."""
        from_deg, of_speed, steady = told
        first_deg, cells = from_deg - self._step_deg / 2, max(1, round(self._step_deg))
        ends = [(first_deg + cell, of_speed, steady) for cell in range(cells + 1)]
        for end in ends:
            if end not in self._at_ends:
                self._at_ends[end] = self._is_ok(end[0], speed_mph, steady=steady)
        shares = [
            float(self._at_ends[one])
            if self._at_ends[one] == self._at_ends[other]
            # verdicts change at whole quarters of a degree: in the middle of each there is one
            else sum(
                self._is_ok(one[0] + (quarter + 1 / 2) / _QUARTERS, speed_mph, steady=steady)
                for quarter in range(_QUARTERS)
            )
            / _QUARTERS
            for one, other in itertools.pairwise(ends)
        ]
        return math.fsum(shares) / cells

    def _is_ok(self, from_deg: float, speed_mph: float, *, steady: bool) -> bool:
        air = Air(from_deg % CIRCLE_DEG, speed_mph, HowTold.RECORD, steady)
        return stand_wind(self._stand, air).word == OK


def _class_of(speed_mph: float) -> int:
    """Return in which class of speed a wind is: within one, no verdict changes."""
    known = values()
    ends = sorted(
        known[name].value
        for name in (
            "drifts_in_the_open_mph",
            "drifts_in_timber_mph",
            "slope_air_below_mph",
            "slow_wind_below_mph",
            "fast_wind_above_mph",
        )
    )
    # an end is a class of its own: some verdicts begin at it and others behind it
    below = bisect_left(ends, speed_mph)
    return 2 * below + (below < len(ends) and ends[below] == speed_mph)


def is_counted(stand: Stand) -> bool:
    """Return whether anything is typed of a stand that a wind could be OK by."""
    return bool(stand.beds or stand.winds_for)


def counted_sits(
    stand: Stand, record: HourlyWind, sits: Iterable[SitHours]
) -> dict[MonthAndPart, SitsOfMonth]:
    """Return the sits of a stand by month and part of the day, of months that the record has."""
    hours = HoursOfStand(stand, record)
    by_fraction: dict[MonthAndPart, dict[int, list[float]]] = defaultdict(lambda: defaultdict(list))
    for sit in sits:
        share = whole_sit_fraction(
            [
                hours.fraction(hour, steady=steady)
                for hour, steady in zip(sit.hours, sit.steady, strict=True)
            ]
        )
        if share is not None:
            by_fraction[sit.day.month, sit.part][sit.day.year].append(share)
    counted = {key: _of_month(key[0], of_years) for key, of_years in by_fraction.items()}
    return {key: month for key, month in counted.items() if month is not None}


def _of_month(month: int, by_year_fraction: Mapping[int, list[float]]) -> SitsOfMonth | None:
    """Return the sits of a month over the years that have enough of it; None where none has."""
    wanted = values()["sits_known_pct"].value / 100
    enough = {
        year: shares
        for year, shares in by_year_fraction.items()
        if len(shares) >= wanted * calendar.monthrange(year, month)[1]
    }
    if not enough:
        return None
    # the shortest of its lengths: no year has more days than it has
    length = min(calendar.monthrange(year, month)[1] for year in enough)
    per_year = [length * math.fsum(shares) / len(shares) for shares in enough.values()]
    least = None
    if len(per_year) >= values()["fewest_years"].value:
        least = _whole(at_share_days(per_year, EARLY))
    return SitsOfMonth(length, _whole(math.fsum(per_year) / len(per_year)), least)


def _whole(sits_days: float) -> int:
    # a sum of shares is off by less than this; a rest of a day is left away
    return math.floor(round(sits_days, 6))


def winds_of_sits(record: HourlyWind, sits: Iterable[SitHours]) -> dict[int, WindsOfMonth]:
    """Return by month how often the wind came from where in the hours of sits."""
    by_hour = dict(
        zip(record.hours, zip(record.from_deg, record.speed_mph, strict=True), strict=True)
    )
    hours: dict[int, set[int]] = defaultdict(set)
    for sit in sits:
        hours[sit.day.month].update(sit.hours)
    found = {}
    for month, asked in sorted(hours.items()):
        told = [by_hour[hour] for hour in sorted(asked) if hour in by_hour]
        speeds_mph = [speed_mph for _, speed_mph in told if speed_mph is not None]
        # in a calm, and where it turned about, the record has no direction
        reports_deg = [from_deg for from_deg, _ in told if from_deg is not None]
        if speeds_mph:
            found[month] = _winds_of(
                reports_deg, speeds_mph.count(0), len(speeds_mph), record.step_deg
            )
    return found


def _winds_of(
    reports_deg: list[float], calm_count: int, hours_count: int, step_deg: float
) -> WindsOfMonth:
    of_reports = [0.0] * len(EIGHT_WINDS_DEG)
    if reports_deg:
        of_reports = winds_fraction(reports_deg, step_deg, len(EIGHT_WINDS_DEG))
    return WindsOfMonth(
        tuple(fraction * len(reports_deg) / hours_count for fraction in of_reports),
        calm_count / hours_count,
        (hours_count - len(reports_deg) - calm_count) / hours_count,
        hours_count,
    )
