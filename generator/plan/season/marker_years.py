"""Every year of a record: the day on which it reached a sign, years with gaps left out."""

import datetime
import math
from collections.abc import Callable, Sequence
from functools import lru_cache

from generator.compute.climate_days import (
    emergence_days,
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
from generator.compute.climate_spread import at_share_days, filled_f
from generator.dataclass import dataclass
from generator.inventory.weather import DailyRecord
from generator.plan.model.markers import HeatOfYears, Left, Series
from generator.reference.library import values

# A year with more days missing than this, up to where the sign can come, says nothing of it
# (common practice).
MOST_MISSING = 10
EARLY, TYPICAL, LATE = 0.1, 0.5, 0.9
# A year without a leap day: a day of any year is named by its month and day in it.
_COMMON_YEAR = 2001
# The year is cut in summer: a freeze of one winter is never taken for one of the next.
SPRING = ((1, 1), (7, 31))
AUTUMN = ((8, 1), (12, 31))
YEAR = ((1, 1), (12, 31))
FREEZE_THAW_UNTIL = (4, 30)
# A process that stays asks the same of the records it has at each save of a file beside them.
_REMEMBERED = 10
WEEK = datetime.timedelta(days=7)
MonthDay = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Window:
    """The days of a part of one year: as recorded, and the mean and the soil with gaps filled."""

    first: datetime.date
    high_f: tuple[float | None, ...]
    low_f: tuple[float | None, ...]
    mean_f: tuple[float, ...]
    soil_f: tuple[float, ...]

    def missing(self, until: int) -> int:
        """Return how many days up to one lack a high or a low."""
        high_f, low_f = self.high_f[: until + 1], self.low_f[: until + 1]
        if None not in high_f and None not in low_f:
            return 0
        pairs = zip(high_f, low_f, strict=True)
        return sum(high is None or low is None for high, low in pairs)


@dataclass(frozen=True, slots=True)
class Years:
    """The day of each year, and the years left out or without one."""

    days: tuple[datetime.date, ...]
    left_out: int
    without: int


Find = Callable[[Window], int | None]
# A sign that comes in fewer years than nine of ten has no late year.
MOST_WITHOUT = 0.1


def enough(years: Years) -> bool:
    """Return whether an early and a late year can be told: enough years, and it comes in most."""
    count = len(years.days)
    return count >= values()["fewest_years"].value and not often_without(years)


def often_without(years: Years) -> bool:
    """Return whether the sign fails to come in more than one year of ten."""
    return years.without > MOST_WITHOUT * (len(years.days) + years.without)


@lru_cache(maxsize=_REMEMBERED)
def series_of(record: DailyRecord) -> Series:
    """Return a record with its means and its soil, worked out once."""
    # over the whole record: soil of the first days of a year rests on the last of the one before
    high, low = filled_f(record.high_f), filled_f(record.low_f)
    mean = [(one + other) / 2 for one, other in zip(high, low, strict=True)]
    return Series(record, tuple(mean), tuple(soil_f(mean)))


def windows(series: Series, part: tuple[MonthDay, MonthDay]) -> list[Window]:
    """Return a part of every year that lies in the record as a whole."""
    record, found = series.record, []
    for year in range(record.first.year, record.last.year + 1):
        begins, ends = (datetime.date(year, *day) for day in part)
        # a part cut short could hide the day, and would be counted as one in which it did not come
        if begins < record.first or ends > record.last:
            continue
        at, to = (begins - record.first).days, (ends - record.first).days + 1
        whole = (record.high_f, record.low_f, series.mean_f, series.soil_f)
        found.append(Window(begins, *(tuple(column[at:to]) for column in whole)))  # type: ignore[arg-type]  # each column of its own type
    return found


def years_of(parts: Sequence[Window], find: Find, *, is_last: bool = False) -> Years:
    """Return the day found in each year, without years that miss too many days before it.

    Where the last of its kind is looked for, days count against a year up to the latest day on
    which it came in any: behind a gap there may have been a later one.
    """
    found = [(window, find(window)) for window in parts]
    latest = max((at for _, at in found if at is not None), default=0) if is_last else 0
    days, left_out, without = [], 0, 0
    for window, at in found:
        until = max(at, latest) if at is not None else len(window.mean_f) - 1
        if window.missing(until) > MOST_MISSING:
            # before `without`: where days are missing, nobody knows that the sign failed to come
            left_out += 1
        elif at is None:
            without += 1
        else:
            days.append(window.first + datetime.timedelta(days=at))
    return Years(tuple(days), left_out, without)


def first_freeze(threshold_f: float) -> Find:
    """Return the finder of the first day at or below a threshold."""
    return lambda window: first_freeze_days(window.low_f, threshold_f)


def last_freeze(threshold_f: float) -> Find:
    """Return the finder of the last day at or below a threshold."""
    return lambda window: last_freeze_days(window.low_f, threshold_f)


def freeze_thaw_end(window: Window) -> int | None:
    """Find the last day of a time of freezing and thawing."""
    return freeze_thaw_ends_days(window.high_f, window.low_f)


def thaw(window: Window) -> int | None:
    """Find the day after the last with frozen soil."""
    return thawed_days(window.soil_f)


def warm_sum(wanted_degree_days_f: float, base_f: float) -> Find:
    """Return the finder of the day on which a sum of degree days is reached."""

    def found(window: Window) -> int | None:
        heat = [simple_degree_days_f(mean, mean, base_f) for mean in window.mean_f]
        return sum_reached_days(heat, wanted_degree_days_f)

    return found


def emergence(threshold_f: float, run: int) -> Find:
    """Return the finder of the first of a run of days with soil warm enough for seedlings."""
    return lambda window: emergence_days(window.soil_f, threshold_f, run, 0)


def soil_held(threshold_f: float, run: int) -> Find:
    """Return the finder of the day that ends the first run of warm soil."""
    return lambda window: held_days(window.soil_f, threshold_f, run)


def spread(days: Sequence[datetime.date]) -> tuple[MonthDay, MonthDay, MonthDay]:
    """Return the early, the typical and the late day of many years.

    Early goes down and late goes up to a whole day, so that neither is nearer than it is.
    """
    numbers = [_in_common_year(day) for day in days]
    early, typical, late = (at_share_days(numbers, share) for share in (EARLY, TYPICAL, LATE))
    # half a day of the middle goes down; round() would take it up or down, to the even day
    half = 0.5
    whole = (math.floor(early), math.ceil(typical - half), math.ceil(late))
    return tuple(month_and_day(number) for number in whole)  # type: ignore[return-value]  # three of three


def _in_common_year(day: datetime.date) -> int:
    try:
        return day.replace(year=_COMMON_YEAR).timetuple().tm_yday
    except ValueError:
        return datetime.date(_COMMON_YEAR, 3, 1).timetuple().tm_yday


def month_and_day(day_of_year: int) -> MonthDay:
    """Return month and day of a day of the year, held to the year itself.

    >>> month_and_day(60), month_and_day(400)
    ((3, 1), (12, 31))
    """
    held = min(max(day_of_year, 1), 365)
    day = datetime.date(_COMMON_YEAR, 1, 1) + datetime.timedelta(days=held - 1)
    return day.month, day.day


def later(month_day: MonthDay, days: int) -> MonthDay:
    """Return a day of the year so many days later.

    >>> later((4, 20), 14), later((4, 20), -20)
    ((5, 4), (3, 31))
    """
    return month_and_day(datetime.date(_COMMON_YEAR, *month_day).timetuple().tm_yday + days)


def normal_year(drawn: Callable[[Sequence[int]], list[float]]) -> Window:
    """Return the year of normals as days; a year before it leads its soil in."""
    ends = [datetime.date(_COMMON_YEAR, month % 12 + 1, 1) for month in range(1, 12)]
    begins = [datetime.date(_COMMON_YEAR, month, 1) for month in range(1, 13)]
    ends.append(datetime.date(_COMMON_YEAR + 1, 1, 1))
    lengths = [(end - begin).days for begin, end in zip(begins, ends, strict=True)]
    mean = drawn(lengths)
    # high and low are the mean too: normals know no single night, and no freeze is asked of them
    soil = soil_f([*mean, *mean])[len(mean) :]
    return Window(begins[0], tuple(mean), tuple(mean), tuple(mean), tuple(soil))


def freeze_thaw_left(series: Series) -> tuple[Left, ...]:
    """Return how many freeze-thaw days are left to the end of April, week by week."""
    rows = []
    parts = windows(series, (SPRING[0], FREEZE_THAW_UNTIL))
    parts = [window for window in parts if window.missing(len(window.mean_f)) <= MOST_MISSING]
    day = datetime.date(_COMMON_YEAR, *SPRING[0])
    while parts and day <= datetime.date(_COMMON_YEAR, *FREEZE_THAW_UNTIL):
        counts = []
        for window in parts:
            at = (day.replace(year=window.first.year) - window.first).days
            counts.append(freeze_thaw_count(window.high_f[at:], window.low_f[at:]))
        few, typical, many = (at_share_days(counts, share) for share in (EARLY, TYPICAL, LATE))
        rows.append(
            # few down, many up: the range is never narrower than the years were
            Left((day.month, day.day), math.floor(few), math.floor(typical), math.ceil(many))
        )
        day += WEEK
    return tuple(rows)


@lru_cache(maxsize=_REMEMBERED)
def heat_of_years(series: Series, base_f: float, top_f: float) -> tuple[HeatOfYears, ...]:
    """Return the degree days of a year by each method that has a name."""
    parts = [
        window
        for window in windows(series, YEAR)
        if window.missing(len(window.mean_f)) <= MOST_MISSING
    ]
    if not parts:
        return ()
    days = [
        list(zip(filled_f(window.high_f), filled_f(window.low_f), strict=True)) for window in parts
    ]
    methods: dict[str, Callable[[float, float], float]] = {
        "simple_degree_days_f": lambda high, low: simple_degree_days_f(high, low, base_f),
        "modified_degree_days_f": modified_degree_days_f,
        "sine_degree_days_f": lambda high, low: sine_degree_days_f(high, low, base_f),
        "cut_sine_degree_days_f": lambda high, low: cut_sine_degree_days_f(
            high, low, base_f, top_f
        ),
    }
    rows = []
    for name, method in methods.items():
        sums = [math.fsum(method(high, low) for high, low in year) for year in days]
        rows.append(
            HeatOfYears(name, *(at_share_days(sums, share) for share in (EARLY, TYPICAL, LATE)))
        )
    return tuple(rows)
