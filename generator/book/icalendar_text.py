"""Events as an iCalendar file (RFC 5545): all-day events with reminders, the same bytes each time.

Lines end in CR LF and are folded at 75 octets; text is text, whatever stands in it.
"""

import datetime
from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import Literal

from generator.book.text import clean
from generator.dataclass import dataclass
from generator.plan.model.days import ONE_DAY

LONGEST_OCTETS = 75
REMINDED_AT_HOUR = 9
_HOURS_IN_DAY = 24
_FIRST_DAY = datetime.date(2000, 1, 1)
# The first comes first: it stands before the others once they are told apart.
_MEANS_SOMETHING = ("\\", ";", ",")


@dataclass(frozen=True, slots=True)
class Reminder:
    """A reminder in the morning, so many days before the first day of an event."""

    days_before: int
    words: str


@dataclass(frozen=True, slots=True)
class Event:
    """One all-day event from a first to a last day.

    `status`: CONFIRMED; TENTATIVE, not to be done yet; CANCELLED, in place of an older one.
    `key` makes its UID, so it must be the same in every file for the same thing.
    """

    key: str
    first: datetime.date
    last: datetime.date
    summary: str
    description: tuple[str, ...]
    location: str | None = None
    status: Literal["CONFIRMED", "TENTATIVE", "CANCELLED"] = "CONFIRMED"
    reminders: tuple[Reminder, ...] = ()

    def reminded_on(self, reminder: Reminder) -> datetime.date:
        """Return the day on which a reminder comes up."""
        return self.first - reminder.days_before * ONE_DAY


def as_icalendar(name: str, as_of: datetime.date, events: Iterable[tuple[str, Event]]) -> bytes:
    """Return the file of events, each with its UID, as they stood on a day.

    DTSTAMP is that day and SEQUENCE counts the days up to it, so that a file of a later day
    replaces the events of an earlier one. A reminder of a day gone by is left out.
    """
    lines = [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:-//Habitat handbook//Jobs and dates//EN",
        "CALSCALE:GREGORIAN",
        f"X-WR-CALNAME:{_text(name)}",
    ]
    for uid, event in events:
        lines += _event(uid, event, as_of)
    lines.append("END:VCALENDAR")
    return "".join(f"{folded(line)}\r\n" for line in lines).encode()


def _event(uid: str, event: Event, as_of: datetime.date) -> Iterator[str]:
    yield "BEGIN:VEVENT"
    yield f"UID:{uid}"
    yield f"DTSTAMP:{as_of:%Y%m%d}T000000Z"
    yield f"SEQUENCE:{(as_of - _FIRST_DAY).days}"
    yield f"DTSTART;VALUE=DATE:{event.first:%Y%m%d}"
    # the end is the first day that is no longer in it
    yield f"DTEND;VALUE=DATE:{event.last + ONE_DAY:%Y%m%d}"
    yield f"SUMMARY:{_text(event.summary)}"
    yield "DESCRIPTION:" + "\\n".join(map(_text, event.description))
    if event.location is not None:
        yield f"LOCATION:{_text(event.location)}"
    yield f"STATUS:{event.status}"
    # a job that may be done on a day takes nobody's day
    yield "TRANSP:TRANSPARENT"
    for reminder in event.reminders:
        if event.reminded_on(reminder) >= as_of:
            yield from _reminder(reminder)
    yield "END:VEVENT"


def _reminder(reminder: Reminder) -> Iterator[str]:
    yield "BEGIN:VALARM"
    yield "ACTION:DISPLAY"
    yield f"DESCRIPTION:{_text(reminder.words)}"
    yield _trigger(reminder)
    yield "END:VALARM"


def _trigger(reminder: Reminder) -> str:
    """Return when a reminder comes, from the midnight that begins an event."""
    hours = _HOURS_IN_DAY * reminder.days_before - REMINDED_AT_HOUR
    # on the first day itself the morning comes after the midnight that is counted from
    sign = "-" if hours > 0 else ""
    whole, rest = divmod(abs(hours), _HOURS_IN_DAY)
    span = (f"{whole}D" if whole else "") + (f"T{rest}H" if rest else "")
    return f"TRIGGER;RELATED=START:{sign}P{span}"


@lru_cache(maxsize=1024)
def _text(text: str) -> str:
    """Return text as a value: on one line, nothing in it a sign of the format.

    >>> _text("Lane; oats, 2 lb")
    'Lane\\\\; oats\\\\, 2 lb'
    """
    told = clean(text)
    for sign in _MEANS_SOMETHING:
        told = told.replace(sign, f"\\{sign}")
    return told


def folded(line: str) -> str:
    """Return a line cut so that no piece is longer than 75 octets, no character cut in two.

    >>> [len(one) for one in folded("x" * 150).split("\\r\\n")]
    [75, 75, 2]
    """
    # most lines fit, and most that do not are of one octet a letter
    if line.isascii():
        if len(line) <= LONGEST_OCTETS:
            return line
        rest = range(LONGEST_OCTETS, len(line), LONGEST_OCTETS - 1)
        return "\r\n ".join(
            [line[:LONGEST_OCTETS], *(line[at : at + LONGEST_OCTETS - 1] for at in rest)]
        )
    pieces, piece, octets = [], "", 0
    for letter in line:
        size = len(letter.encode())
        if octets + size > LONGEST_OCTETS:
            pieces.append(piece)
            # the blank that begins a folded line counts among its octets
            piece, octets = " ", 1
        piece += letter
        octets += size
    return "\r\n".join([*pieces, piece])
