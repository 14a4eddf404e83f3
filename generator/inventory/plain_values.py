"""Values written as people write them, where only one thing can be meant: `.75`, `3 1/2`, `$140`.

What could mean two things is not read here: `1,5`, a percent of what is no percentage, 9/14/2026
where the property does not say that its days are month, day, year.
"""

from __future__ import annotations

import datetime
import re
from fractions import Fraction

from generator.inventory.fields import FirstOfMonth
from generator.inventory.number_cures import PLAIN_NUMBER

US = "us"
POINT_NUMBER = r"-?\.[0-9]{1,30}"
# Rulers, tapes and cups are marked in these parts; of 10/12 nobody knows that it is no day.
_PARTS = (
    "1/2|[12]/3|[1-3]/4|[1-7]/8|(?:[1-9]|1[0-5])/16|(?:[1-9]|[12][0-9]|3[01])/32"
    "|(?:[1-9]|[1-5][0-9]|6[0-3])/64"
)
MIXED_NUMBER = rf"-?(?:[1-9][0-9]{{0,5}} )?(?:{_PARTS})"
PERCENT = rf"(?:{PLAIN_NUMBER}|{POINT_NUMBER}) ?%"
DOLLARS = r"\$ ?(?:(?:0|[1-9][0-9]{0,17})(?:\.[0-9]{1,30})?|\.[0-9]{1,30})"
PERCENT_UNITS = ("pct", "fraction")
DOLLAR_UNIT = "usd"

US_DAY = r"(?:0?[1-9]|1[0-2])/(?:0?[1-9]|[12][0-9]|3[01])/[0-9]{4}"
US_MONTH_DAY = r"(?:0?[1-9]|1[0-2])/(?:0?[1-9]|[12][0-9]|3[01])"
MONTH = r"[0-9]{4}-(?:0[1-9]|1[0-2])"
US_MONTH = r"(?:0?[1-9]|1[0-2])/[0-9]{4}"
_HUNDRED = 100


def number_patterns(unit: str) -> tuple[str, ...]:
    """Return what text may stand for a number of a unit, as patterns of the whole text."""
    found: tuple[str, ...] = (POINT_NUMBER, MIXED_NUMBER)
    if unit in PERCENT_UNITS:
        found += (PERCENT,)
    if unit.split("_")[0] == DOLLAR_UNIT:
        found += (DOLLARS,)
    return found


def plain_number(text: str, unit: str) -> float | None:
    """Return the number that text can only mean in a unit, None where it is not plain.

    >>> plain_number(".75", "ft"), plain_number("3 1/2", "ft"), plain_number("$140", "usd")
    (0.75, 3.5, 140.0)
    >>> plain_number("98%", "fraction"), plain_number("98%", "pct"), plain_number("98%", "ft")
    (0.98, 98.0, None)
    """
    if not any(re.fullmatch(pattern, text) for pattern in number_patterns(unit)):
        return None
    if "/" in text:
        return _mixed(text)
    number = float(text.strip("$% "))
    return number / _HUNDRED if unit == "fraction" and text.endswith("%") else number


def _mixed(text: str) -> float:
    whole, _, part = text.removeprefix("-").rpartition(" ")
    number = float(int(whole or 0) + Fraction(part))
    return -number if text.startswith("-") else number


def us_day(text: str) -> str | None:
    """Return month/day/year as year-month-day, None where it is not written so.

    >>> us_day("9/14/2026"), us_day("14/9/2026")
    ('2026-09-14', None)
    """
    if not re.fullmatch(US_DAY, text):
        return None
    month, day, year = text.split("/")
    return f"{year}-{month:0>2}-{day:0>2}"


def us_month_day(text: str) -> str | None:
    """Return month/day as month-day, None where it is not written so.

    >>> us_month_day("3/4"), us_month_day("13/4")
    ('03-04', None)
    """
    if not re.fullmatch(US_MONTH_DAY, text):
        return None
    month, day = text.split("/")
    return f"{month:0>2}-{day:0>2}"


def plain_month(text: str) -> str | None:
    """Return a month as year-month, however a tag prints it; None where it is no month.

    >>> plain_month("10/2026"), plain_month("2026-10"), plain_month("10/26")
    ('2026-10', '2026-10', None)
    """
    if re.fullmatch(MONTH, text):
        return text
    if not re.fullmatch(US_MONTH, text):
        return None
    month, year = text.split("/")
    return f"{year}-{month:0>2}"


def first_of_month(text: str) -> FirstOfMonth | None:
    """Return the month of a tag, which counts from its first day, None where it is no month."""
    month = plain_month(text)
    if month is None or month.startswith("0000"):
        return None
    day = datetime.date.fromisoformat(f"{month}-01")
    return FirstOfMonth(day.year, day.month, 1)
