"""Cures for text that stands where a day, a day of the year or a month is wanted: `Sep 14, 2026`.

A date named in a cure is always one that the reader of the files takes where it stands.
"""

from __future__ import annotations

import datetime
import re
from typing import NamedTuple

DATE_WORDS = "a date like 2027-03-14"
MONTH_DAY_WORDS = "a month and day like 03-14"
MONTH_WORDS = "a month like 2027-03"
OR_MONTH = ", or a month like 2027-03"
OR_US_DATE = " or 3/14/2027"
OR_US_MONTH_DAY = " or 3/14"

_LEAP_YEAR = 2024  # without a year, 29 February is a day
_CENTURY = 2000
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_YEAR_FIRST = re.compile(r"([0-9]{4})[-/.]([0-9]{1,2})[-/.]([0-9]{1,2})")
_YEAR_LAST = re.compile(r"([0-9]{1,2})[-/.]([0-9]{1,2})(?:[-/.]([0-9]{4}|[0-9]{2}))?\.?")
# Eight digits are a day only where four of them are a year of our time.
_GLUED = re.compile(r"((?:19|20)[0-9]{2})([0-9]{2})([0-9]{2})")
_GLUED_YEAR_LAST = re.compile(r"([0-9]{2})([0-9]{2})((?:19|20)[0-9]{2})")
_GLUED_MONTH_DAY = re.compile(r"([0-9]{2})([0-9]{2})")
_MONTH_OF_YEAR = re.compile(r"([0-9]{4})[-/.]([0-9]{1,2})")
_MONTH_AND_YEAR = re.compile(r"([0-9]{1,2})[-/.]([0-9]{4})")
_TAG_MONTH = re.compile(r"([0-9]{1,2})/([0-9]{2})")


class _Day(NamedTuple):
    """What text may mean; `short` where its year was typed in two digits."""

    year: int | None
    month: int
    day: int
    short: bool = False

    @property
    def is_one(self) -> bool:
        try:
            datetime.date(self.year or _LEAP_YEAR, self.month, self.day)
        except ValueError:
            return False
        return True


def date_cure(text: str, wanted: str, *, us_dates: bool = False) -> tuple[str, str]:
    """Return what is wrong with text, as the end of a sentence, and how to write what it means.

    `wanted` begins with one of the words above; `us_dates` says that a folder's days are
    month/day/year.
    """
    if wanted.startswith(MONTH_WORDS):
        return _month_cure(text, wanted)
    if wanted.startswith(MONTH_DAY_WORDS):
        return _month_day_cure(text, wanted, us_dates)
    return _day_cure(text, wanted, us_dates)


def _month_cure(text: str, wanted: str) -> tuple[str, str]:
    month = _meant_month(text)
    if month is None and (day := _meant_day(text, us_dates=False)) is not None and day.is_one:
        month = _written_month(day.year, day.month) if not day.short else None
    return "is not a month", wanted if month is None else f"write {month}"


def _month_day_cure(text: str, wanted: str, us_dates: bool) -> tuple[str, str]:
    found = _GLUED_MONTH_DAY.fullmatch(text)
    glued = _Day(None, int(found[1]), int(found[2])) if found else None
    day = glued if glued is not None and glued.is_one else _meant_day(text, us_dates)
    if day is None:
        return "is not a month and day", wanted
    if not day.is_one:
        return "is no day of the calendar", wanted
    return "is not a month and day", f"write {day.month:02}-{day.day:02}"


def _day_cure(text: str, wanted: str, us_dates: bool) -> tuple[str, str]:
    # where a tag is copied, 10/26 is month and year; elsewhere it is a day without its year
    printed = _TAG_MONTH.fullmatch(text) if OR_MONTH in wanted else None
    month = _meant_month(text)
    if printed is not None and month is None:
        month = _written_month(_CENTURY + int(printed[2]), int(printed[1]))
    if OR_MONTH in wanted and month is not None:
        ending = ", if that is the month and year" if printed is not None else ""
        return "is not a date", f"write {month}{ending}"
    if month is not None or re.fullmatch(r"(?:19|20)[0-9]{2}", text):
        return "names no day", f"{wanted}, with its day"
    day = _meant_day(text, us_dates)
    if day is None:
        two = re.fullmatch(r"[0-9]{1,2}[-/.][0-9]{1,2}[-/.][0-9]{2}", text)
        return "is not a date", f"{wanted}, with the year in four digits" if two else wanted
    if not day.is_one:
        return "is no day of the calendar", wanted
    if day.year is None:
        return "has no year", wanted
    written = f"{day.year:04}-{day.month:02}-{day.day:02}"
    # written as it should be and refused all the same: to say it again is no cure
    if written == text:
        return "is not a date", wanted
    return "is not a date", f"write {written}{', if that is the year' if day.short else ''}"


def _meant_month(text: str) -> str | None:
    """Return the month of a year that text can only mean, as it is written, else None."""
    if found := _MONTH_OF_YEAR.fullmatch(text):
        return _written_month(int(found[1]), int(found[2]))
    if found := _MONTH_AND_YEAR.fullmatch(text):
        return _written_month(int(found[2]), int(found[1]))
    months, days, years = _named(text)
    if len(months) != 1 or days or len(years) != 1:
        return None
    return _written_month(years[0], months[0])


def _written_month(year: int | None, month: int) -> str | None:
    return f"{year:04}-{month:02}" if year and 1 <= month <= len(_MONTHS) else None


def _meant_day(text: str, us_dates: bool) -> _Day | None:
    """Return the day that text can only mean, None where it could be several."""
    if found := _YEAR_FIRST.fullmatch(text) or _GLUED.fullmatch(text):
        year, month, day = (int(part) for part in found.groups())
        return _Day(year, month, day)
    if found := _GLUED_YEAR_LAST.fullmatch(text):
        first, second, year = (int(part) for part in found.groups())
        return _in_order(first, second, year, short=False, month_first=us_dates)
    if found := _YEAR_LAST.fullmatch(text):
        typed_year = found[3]
        short = typed_year is not None and len(typed_year) == len("26")
        year_of = None if typed_year is None else int(typed_year) + _CENTURY * short
        first, second = int(found[1]), int(found[2])
        # 03-04 is in the files' own order of month and day; of 3/4 nobody knows the order
        as_month = us_dates or ("-" in text and year_of is None)
        return _in_order(first, second, year_of, short=short, month_first=as_month)
    months, days, years = _named(text)
    if len(months) != 1 or len(days) != 1 or len(years) > 1:
        return None
    return _Day(years[0] if years else None, months[0], days[0])


def _in_order(
    first: int, second: int, year: int | None, *, short: bool, month_first: bool
) -> _Day | None:
    # Both at most 12: 3/4 is March to one person and April to another.
    if second > len(_MONTHS) >= first or first == second or (month_first and first <= len(_MONTHS)):
        return _Day(year, first, second, short)
    if first > len(_MONTHS) >= second:
        return _Day(year, second, first, short)
    return None


def _named(text: str) -> tuple[list[int], list[int], list[int]]:
    """Return the months that text names in words, the days and the years in it."""
    words = re.findall(r"[a-z]+|[0-9]+", text.lower().replace("th", ""))
    months = [_MONTHS.index(word[:3]) + 1 for word in words if word[:3] in _MONTHS]
    years = [int(word) for word in words if re.fullmatch(r"[0-9]{4}", word)]
    days = [int(word) for word in words if re.fullmatch(r"[0-9]{1,2}", word)]
    return months, days, years
