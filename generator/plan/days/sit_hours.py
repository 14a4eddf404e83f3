"""Which hours of a record a morning sit and an evening sit take, day by day, by the light."""

import datetime
import math
from collections.abc import Iterable, Iterator
from typing import Literal

from generator.dataclass import dataclass
from generator.inventory.dates import CLOCK, ShootingHours
from generator.plan.days.shooting import Here, lawful_hours

SitPart = Literal["mornings", "evenings"]
SIT_PARTS: tuple[SitPart, ...] = ("mornings", "evenings")
_EPOCH = datetime.datetime(1970, 1, 1, tzinfo=datetime.UTC)
_HOURS_IN_DAY = 24


@dataclass(frozen=True, slots=True)
class SitLengths:
    """How long a sit takes, and how near to sunrise and sunset the air is steady, in hours."""

    morning_hours: float
    evening_hours: float
    steady_hours: float


@dataclass(frozen=True, slots=True)
class SitHours:
    """The reports of a sit: hours since 1970 in UTC, and whether the air is steady then."""

    day: datetime.date
    part: SitPart
    hours: tuple[int, ...]
    steady: tuple[bool, ...]


@dataclass(frozen=True, slots=True)
class _Light:
    """The light of a day, in hours after its midnight in UTC."""

    starts_hours: float
    ends_hours: float
    sunrise_hours: float
    sunset_hours: float


def sits_of(
    days: Iterable[datetime.date], rule: ShootingHours | None, here: Here, lengths: SitLengths
) -> Iterator[SitHours]:
    """Yield the sits of days: a morning from the first light on, an evening up to the last.

    By the owner's rule for shooting hours, or from sunrise to sunset without one. A report speaks
    for half an hour to each side, and each that speaks for any of a sit is of it.
    """
    # in every year a day has its sun at the same time within a minute; a clock it has not
    by_clock = rule is not None and rule.ends == CLOCK
    known: dict[tuple[int, int, int], _Light | None] = {}
    for day in days:
        key = (day.year if by_clock else 0, day.month, day.day)
        if key not in known:
            known[key] = _light(day, rule, here)
        light = known[key]
        if light is not None:
            morning_ends = min(light.starts_hours + lengths.morning_hours, light.ends_hours)
            evening_starts = max(light.ends_hours - lengths.evening_hours, light.starts_hours)
            steady = lengths.steady_hours
            yield _sit(day, "mornings", light.starts_hours, morning_ends, light, steady)
            yield _sit(day, "evenings", evening_starts, light.ends_hours, light, steady)


def _light(day: datetime.date, rule: ShootingHours | None, here: Here) -> _Light | None:
    sunrise, sunset = here.begins("sunrise", day, 0), here.ends("sunset", day, 0)
    starts, ends = lawful_hours(day, rule, here) if rule is not None else (sunrise, sunset)
    if starts is None or ends is None or sunrise is None or sunset is None:
        return None
    midnight = datetime.datetime.combine(day, datetime.time(), datetime.UTC)
    times = (starts, ends, sunrise, sunset)
    return _Light(*((time - midnight) / datetime.timedelta(hours=1) for time in times))


def _sit(
    day: datetime.date,
    part: SitPart,
    starts_hours: float,
    ends_hours: float,
    light: _Light,
    steady_hours: float,
) -> SitHours:
    midnight = datetime.datetime.combine(day, datetime.time(), datetime.UTC)
    first = (midnight - _EPOCH).days * _HOURS_IN_DAY
    hours = range(_nearest(starts_hours), _nearest(ends_hours) + 1)
    return SitHours(
        day,
        part,
        tuple(first + hour for hour in hours),
        tuple(
            hour <= light.sunrise_hours + steady_hours or hour >= light.sunset_hours - steady_hours
            for hour in hours
        ),
    )


def _nearest(hours: float) -> int:
    return math.floor(hours + 1 / 2)
