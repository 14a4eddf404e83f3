"""Which hours of a record a morning sit and an evening sit take, day by day, by the light."""

import datetime
import math
from collections.abc import Iterable, Iterator
from typing import Literal

from generator.dataclass import dataclass
from generator.inventory.dates import ShootingHours
from generator.plan.days.shooting import Here, lawful_hours

Part = Literal["mornings", "evenings"]
PARTS: tuple[Part, ...] = ("mornings", "evenings")
_EPOCH = datetime.datetime(1970, 1, 1, tzinfo=datetime.UTC)
_HOUR = datetime.timedelta(hours=1)
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
    part: Part
    hours: tuple[int, ...]
    steady: tuple[bool, ...]


@dataclass(frozen=True, slots=True)
class _Light:
    """The light of a day, in hours after its midnight in UTC."""

    starts: float
    ends: float
    sunrise: float
    sunset: float


def sits_of(
    days: Iterable[datetime.date], rule: ShootingHours | None, here: Here, lengths: SitLengths
) -> Iterator[SitHours]:
    """Yield the sits of days: a morning from the first light on, an evening up to the last.

    By the owner's rule for shooting hours, or from sunrise to sunset without one. A report speaks
    for half an hour to each side, and each that speaks for any of a sit is of it.
    """
    # a day of the year has its sun within a minute at the same time in every year
    known: dict[tuple[int, int], _Light | None] = {}
    for day in days:
        key = (day.month, day.day)
        if key not in known:
            known[key] = _light(day, rule, here)
        light = known[key]
        if light is not None:
            morning_ends = min(light.starts + lengths.morning_hours, light.ends)
            evening_starts = max(light.ends - lengths.evening_hours, light.starts)
            yield _sit(day, "mornings", light.starts, morning_ends, light, lengths.steady_hours)
            yield _sit(day, "evenings", evening_starts, light.ends, light, lengths.steady_hours)


def _light(day: datetime.date, rule: ShootingHours | None, here: Here) -> _Light | None:
    sunrise, sunset = here.begins("sunrise", day, 0), here.ends("sunset", day, 0)
    starts, ends = lawful_hours(day, rule, here) if rule is not None else (sunrise, sunset)
    if starts is None or ends is None or sunrise is None or sunset is None:
        return None
    midnight = datetime.datetime.combine(day, datetime.time(), datetime.UTC)
    return _Light(*((time - midnight) / _HOUR for time in (starts, ends, sunrise, sunset)))


def _sit(
    day: datetime.date, part: Part, starts: float, ends: float, light: _Light, steady_hours: float
) -> SitHours:
    midnight = datetime.datetime.combine(day, datetime.time(), datetime.UTC)
    first = (midnight - _EPOCH).days * _HOURS_IN_DAY
    hours = range(_nearest(starts), _nearest(ends) + 1)
    return SitHours(
        day,
        part,
        tuple(first + hour for hour in hours),
        tuple(
            hour <= light.sunrise + steady_hours or hour >= light.sunset - steady_hours
            for hour in hours
        ),
    )


def _nearest(hours: float) -> int:
    return math.floor(hours + 1 / 2)
