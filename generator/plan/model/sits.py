"""Sits of people at stands, and the hours in which others must keep away, as a reader sees them."""

import datetime
from collections.abc import Iterable
from enum import Enum

from generator.dataclass import dataclass
from generator.inventory.places import Stand
from generator.plan.model.days import ONE_DAY, span_words
from generator.plan.model.finding import Subject

Hours = tuple[datetime.time, datetime.time]  # by the clock of one day, first and last
KEEP_AWAY = "sits.keep_away"  # key of the line of safety on these hours
_NOON, _MIDNIGHT = datetime.time(12), datetime.time(0)


@dataclass(frozen=True, slots=True)
class SitAhead:
    """A sit that is not over on the plan's day.

    `who` is the person as the owner calls them, None where it is not said or not for this reader;
    `reader` is the id of the reader they are, for the owner alone, and `is_readers` says that it is
    the reader's own. `walks` are the walk in and the walk out, by
    their ids, None where one is not typed or not handed over. `is_hunted` says whether hunting
    dates hold on the stand that day; `legal` are first and last minute of its hours by the rule
    looked up, `sunset` the sun's, None where one is not known.
    """

    id: str
    day: datetime.date
    hours: Hours
    stand: Stand
    who: str | None
    is_readers: bool
    walks: tuple[str | None, str | None]
    is_hunted: bool
    legal: tuple[datetime.datetime, datetime.datetime] | None
    sunset: datetime.datetime | None
    note: str | None = None
    reader: str | None = None


@dataclass(frozen=True, slots=True)
class KeepAway:
    """Hours of a day in which nobody else goes to a place, a stand or a water hole, or on a walk.

    `is_known` says that points and arc are typed and meet; where it is not so, nothing typed says
    that they do not. `sit_ids` are the sits it is for, the owner's alone to know.
    """

    subject: Subject
    day: datetime.date
    hours: Hours
    is_known: bool
    sit_ids: tuple[str, ...] = ()


class WhyNot(Enum):
    """What forbids a stand on a day: the key of the words a page says."""

    UNSAFE = "unsafe"
    NOT_INSPECTED = "not_inspected"
    CLOSED = "closed"
    NOT_LOOKED_UP = "not_looked_up"
    NO_DATES = "no_dates"
    QUIET = "quiet"
    RESTS = "rests"
    NO_LEAVE = "no_leave"
    TOO_NEAR = "too_near"
    TAKEN = "taken"
    KEPT_CLOSED = "kept_closed"  # of what the owner alone knows why


@dataclass(frozen=True, slots=True)
class Forbids:
    """One thing that forbids a stand: since or until when, what it is about, in which hours."""

    why: WhyNot
    day: datetime.date | None = None
    what: str | None = None
    hours: Hours | None = None
    sit_ids: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class StandAnswer:
    """What is said of a stand on days in a row; nothing forbids it where `forbids` is empty."""

    first: datetime.date
    last: datetime.date
    forbids: tuple[Forbids, ...]


def clock_words(time: datetime.time) -> str:
    """Return a time of day in words.

    >>> [clock_words(datetime.time(*time)) for time in ((6, 27), (12, 0), (19, 0), (0, 5))]
    ['6:27 a.m.', 'noon', '7 p.m.', '12:05 a.m.']
    """
    if time in (_NOON, _MIDNIGHT):
        return "noon" if time == _NOON else "midnight"
    return f"{_digits(time)} {_half(time)}"


def hours_words(hours: Hours) -> str:
    """Return hours of one day in words, the half of the day once where it is the same.

    >>> clock = datetime.time
    >>> hours_words((clock(15), clock(19, 30))), hours_words((clock(10), clock(14)))
    ('3 to 7:30 p.m.', '10 a.m. to 2 p.m.')
    """
    begins, ends = hours
    if _half(begins) == _half(ends) and not {begins, ends} & {_NOON, _MIDNIGHT}:
        return f"{_digits(begins)} to {clock_words(ends)}"
    return f"{clock_words(begins)} to {clock_words(ends)}"


def _digits(time: datetime.time) -> str:
    hour = time.hour % _NOON.hour or _NOON.hour
    return f"{hour}:{time.minute:02}" if time.minute else str(hour)


def _half(time: datetime.time) -> str:
    return "a.m." if time < _NOON else "p.m."


def joined_hours(hours: Iterable[Hours]) -> tuple[Hours, ...]:
    """Return hours of one day in order; those that touch are one.

    >>> clock = datetime.time
    >>> joined_hours([(clock(15), clock(17)), (clock(16), clock(19))]) == ((clock(15), clock(19)),)
    True
    """
    found: list[Hours] = []
    for begins, ends in sorted(hours):
        if found and begins <= found[-1][1]:
            found[-1] = (found[-1][0], max(found[-1][1], ends))
        else:
            found.append((begins, ends))
    return tuple(found)


def away_words(away: Iterable[KeepAway]) -> str:
    """Return the days and hours of some in words, days in a row with the same hours once."""
    by_day: dict[datetime.date, list[Hours]] = {}
    for keep in away:
        by_day.setdefault(keep.day, []).append(keep.hours)
    runs: list[tuple[datetime.date, datetime.date, tuple[Hours, ...]]] = []
    for day in sorted(by_day):
        hours = joined_hours(by_day[day])
        if runs and runs[-1][1] + ONE_DAY == day and runs[-1][2] == hours:
            runs[-1] = (runs[-1][0], day, hours)
        else:
            runs.append((day, day, hours))
    return "; ".join(
        f"{span_words(first, last)}, {' and '.join(map(hours_words, hours))}"
        for first, last, hours in runs
    )
