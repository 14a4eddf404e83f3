"""Spans of days and days in words; when dates come back, what they take, and what is left."""

import datetime
import math
from collections.abc import Iterable
from functools import lru_cache

from generator.inventory.dates import ALL_PLACES, DateRange

Span = tuple[datetime.date, datetime.date]  # first and last day


MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def day_words(day: datetime.date) -> str:
    """Return a day in words.

    >>> day_words(datetime.date(2027, 3, 4))
    'Mar 4, 2027'
    """
    return f"{MONTHS[day.month - 1][:3]} {day.day}, {day.year}"


ONE_DAY = datetime.timedelta(days=1)
_HOURS_IN_DAY = 24


def last_day_kept_out(sprayed_on: datetime.date, hours: float) -> datetime.date:
    """Return the last day touched by hours that begin at an hour of a day nobody knows.

    >>> day = datetime.date(2026, 9, 27)
    >>> [last_day_kept_out(day, hours).day for hours in (0, 12, 24, 48)]
    [27, 28, 28, 29]
    """
    return sprayed_on + datetime.timedelta(days=math.ceil(hours / _HOURS_IN_DAY))


def comes_back(dates: DateRange, inside: Span) -> tuple[Span, ...]:
    """Return the days of a record that fall inside a span; `every_year` ones of any year."""
    if not dates.every_year:
        return inside_of((dates.first, dates.last), inside)
    # a year to spare at either end: what does not reach into the span falls out below
    years = range(inside[0].year - dates.last.year - 1, inside[1].year - dates.first.year + 2)
    return tuple(
        span
        for by in years
        for span in inside_of((moved(dates.first, by), moved(dates.last, by)), inside)
    )


def moved(day: datetime.date, years: int) -> datetime.date:
    """Return the same day in another year; Feb 29 falls on the 28th."""
    try:
        return day.replace(year=day.year + years)
    except ValueError:
        return day.replace(year=day.year + years, day=day.day - 1)


def inside_of(span: Span, inside: Span) -> tuple[Span, ...]:
    """Return the days of a span that lie in another: one span or none."""
    first, last = max(span[0], inside[0]), min(span[1], inside[1])
    return ((first, last),) if first <= last else ()


def holds_on(places: tuple[str, ...], place_id: str) -> bool:
    """Return whether dates or a paper hold on a place."""
    named = _named(places)
    return ALL_PLACES in named or place_id in named


# asked of every job, and dates may name as many places as there are
@lru_cache(maxsize=256)
def _named(places: tuple[str, ...]) -> frozenset[str]:
    return frozenset(places)


def days_of(
    dates: Iterable[DateRange], kinds: tuple[str, ...], place_id: str, inside: Span
) -> tuple[Span, ...]:
    """Return the days inside a span that dates of some kinds take on a place, joined together."""
    return joined(
        span
        for record in dates
        if record.kind in kinds and holds_on(record.places, place_id)
        for span in comes_back(record, inside)
    )


def first_record(
    dates: Iterable[DateRange], kinds: tuple[str, ...], place_id: str, inside: Span
) -> DateRange | None:
    """Return the record whose days of some kinds on a place begin first inside a span."""
    found = [
        (spans[0], record.id, record)
        for record in dates
        if record.kind in kinds and holds_on(record.places, place_id)
        if (spans := comes_back(record, inside))
    ]
    # of two that begin on one day the id decides, not the order of the file
    return min(found, key=lambda entry: entry[:2])[2] if found else None


def joined(spans: Iterable[Span]) -> tuple[Span, ...]:
    """Return spans in order; those that touch are one.

    >>> day = datetime.date
    >>> joined([(day(2027, 5, 4), day(2027, 5, 6)), (day(2027, 5, 1), day(2027, 5, 3))])
    ((datetime.date(2027, 5, 1), datetime.date(2027, 5, 6)),)
    """
    found: list[Span] = []
    for first, last in sorted(spans):
        if found and first <= found[-1][1] + ONE_DAY:
            found[-1] = (found[-1][0], max(last, found[-1][1]))
        else:
            found.append((first, last))
    return tuple(found)


def days_left_of(inside: Span, taken: tuple[Span, ...]) -> tuple[Span, ...]:
    """Return what is left of a span once joined spans inside it are taken out."""
    left: list[Span] = []
    first = inside[0]
    for begins, ends in taken:
        if first < begins:
            left.append((first, begins - ONE_DAY))
        first = ends + ONE_DAY
    return (*left, (first, inside[1])) if first <= inside[1] else tuple(left)


def span_ends(first: datetime.date, last: datetime.date) -> tuple[str, str]:
    """Return the two ends of a span of days as a sentence writes them.

    >>> span_ends(datetime.date(2027, 5, 1), datetime.date(2027, 5, 6))
    ('May 1', '6, 2027')
    """
    begins, ends = day_words(first), day_words(last)
    if first.year != last.year:
        return begins, ends
    return begins.partition(",")[0], ends.partition(" ")[2] if first.month == last.month else ends


def span_words(first: datetime.date, last: datetime.date) -> str:
    """Return a span in words: the year once, and the month too where it is the same.

    >>> day = datetime.date
    >>> span_words(day(2027, 5, 1), day(2027, 5, 6)), span_words(day(2027, 5, 1), day(2027, 6, 2))
    ('May 1 to 6, 2027', 'May 1 to Jun 2, 2027')
    >>> span_words(day(2026, 12, 1), day(2027, 1, 9)), span_words(day(2027, 5, 1), day(2027, 5, 1))
    ('Dec 1, 2026 to Jan 9, 2027', 'May 1, 2027')
    """
    if first == last:
        return day_words(first)
    begins, ends = span_ends(first, last)
    return f"{begins} to {ends}"


def in_words(spans: tuple[Span, ...]) -> str:
    """Return spans as a sentence lists them.

    >>> in_words(((datetime.date(2027, 5, 1), datetime.date(2027, 5, 6)),))
    'May 1 to 6, 2027'
    """
    return ", ".join(span_words(*span) for span in spans)
