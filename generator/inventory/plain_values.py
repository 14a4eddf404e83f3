"""Values written as people write them, where only one thing can be meant: `.75`, `3 1/2`, `$140`.

What could mean two things is not read here: `1,5`, a percent of what is no percentage, 9/14/2026
where the property does not say that its days are month, day, year.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterable, Mapping
from fractions import Fraction
from types import MappingProxyType

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
# Behind a dollar sign a comma parts thousands; without one it is a point to some.
_WHOLE_DOLLARS = "0|[1-9][0-9]{0,17}|[1-9][0-9]{0,2}(?:,[0-9]{3}){1,5}"
DOLLARS = rf"\$ ?(?:(?:{_WHOLE_DOLLARS})(?:\.[0-9]{{1,30}})?|\.[0-9]{{1,30}})"
PERCENT_UNITS = ("pct", "fraction")
DOLLAR_UNIT = "usd"
BEARING_UNIT = "deg"
_POINTS = ("n", "nne", "ne", "ene", "e", "ese", "se", "sse",
           "s", "ssw", "sw", "wsw", "w", "wnw", "nw", "nnw")  # fmt: skip
_POINTS_IN_WORDS = ("north", "north-northeast", "northeast", "east-northeast",
                    "east", "east-southeast", "southeast", "south-southeast",
                    "south", "south-southwest", "southwest", "west-southwest",
                    "west", "west-northwest", "northwest", "north-northwest")  # fmt: skip
_EIGHT = _POINTS_IN_WORDS[::2]
_FULL_CIRCLE_DEG = 360
COMPASS_DEG: Mapping[str, float] = MappingProxyType(
    {
        word: _FULL_CIRCLE_DEG * number / len(words)
        for words in (_POINTS, _POINTS_IN_WORDS)
        for number, word in enumerate(words)
    }
)


def point_of_compass(bearing_deg: float) -> str:
    """Return the point of the compass that is nearest to a bearing, of eight.

    >>> point_of_compass(270), point_of_compass(340), point_of_compass(30)
    ('west', 'north', 'northeast')
    """
    part_deg = _FULL_CIRCLE_DEG / len(_EIGHT)
    return _EIGHT[round(bearing_deg / part_deg) % len(_EIGHT)]


def named_direction(bearing_deg: float) -> str | None:
    """Return the name of a direction that is one of sixteen, None where it is told in degrees.

    >>> named_direction(337.5), named_direction(360), named_direction(160)
    ('north-northwest', 'north', None)
    """
    number = bearing_deg * len(_POINTS_IN_WORDS) / _FULL_CIRCLE_DEG
    return _POINTS_IN_WORDS[int(number) % len(_POINTS_IN_WORDS)] if number.is_integer() else None


def plain_direction(raw: object) -> float | None:
    """Return the degrees from north that a value can only mean, None where it is no direction.

    >>> plain_direction("NW"), plain_direction("North-Northwest"), plain_direction(160)
    (315.0, 337.5, 160.0)
    >>> plain_direction("NWW"), plain_direction(361), plain_direction(True)
    (None, None, None)
    """
    if isinstance(raw, str):
        return COMPASS_DEG.get(raw.casefold())
    if isinstance(raw, bool) or not isinstance(raw, int | float):
        return None
    return float(raw) if 0 <= raw <= _FULL_CIRCLE_DEG else None


US_DAY = r"(?:0?[1-9]|1[0-2])/(?:0?[1-9]|[12][0-9]|3[01])/[0-9]{4}"
US_MONTH_DAY = r"(?:0?[1-9]|1[0-2])/(?:0?[1-9]|[12][0-9]|3[01])"
MONTH = r"[0-9]{4}-(?:0[1-9]|1[0-2])"
US_MONTH = r"(?:0?[1-9]|1[0-2])/[0-9]{4}"
_HUNDRED = 100


def in_any_case(words: Iterable[str]) -> str:
    """Return a pattern of some words in small letters, capitals or both."""
    # letter by letter: a pattern in the rules for editors has no switch for capitals
    spelled = ("".join(_in_both_cases(letter) for letter in word) for word in words)
    return f"(?:{'|'.join(spelled)})"


def _in_both_cases(letter: str) -> str:
    return f"[{letter.upper()}{letter}]" if letter.isalpha() else re.escape(letter)


COMPASS = in_any_case(COMPASS_DEG)


def number_patterns(unit: str) -> tuple[str, ...]:
    """Return what text may stand for a number of a unit, as patterns of the whole text."""
    found: tuple[str, ...] = (POINT_NUMBER, MIXED_NUMBER)
    if unit in PERCENT_UNITS:
        found += (PERCENT,)
    if unit.split("_")[0] == DOLLAR_UNIT:
        found += (DOLLARS,)
    if unit == BEARING_UNIT:
        found += (COMPASS,)
    return found


def plain_number(text: str, unit: str) -> float | None:
    """Return the number that text can only mean in a unit, None where it is not plain.

    >>> plain_number(".75", "ft"), plain_number("3 1/2", "ft"), plain_number("$140", "usd")
    (0.75, 3.5, 140.0)
    >>> plain_number("98%", "fraction"), plain_number("98%", "pct"), plain_number("98%", "ft")
    (0.98, 98.0, None)
    >>> plain_number("$1,400", "usd"), plain_number("1,400", "usd"), plain_number("SW", "deg")
    (1400.0, None, 225.0)
    """
    # by the patterns that editors are handed: neither takes what the other refuses
    if not any(re.fullmatch(pattern, text) for pattern in number_patterns(unit)):
        return None
    if "/" in text:
        return _mixed(text)
    if unit == BEARING_UNIT and text.casefold() in COMPASS_DEG:
        return COMPASS_DEG[text.casefold()]
    number = float(text.strip("$% ").replace(",", ""))
    return number / _HUNDRED if unit == "fraction" and text.endswith("%") else number


def _mixed(text: str) -> float:
    whole, _, part = text.removeprefix("-").rpartition(" ")
    number = float(int(whole or 0) + Fraction(part))
    return -number if text.startswith("-") else number


LATITUDE_LETTERS, LONGITUDE_LETTERS = "NS", "EW"
_DEGREES = r"[0-9]{1,3}(?:\.[0-9]{1,15})?"


def degrees_pattern(letters: str) -> str:
    """Return the pattern of text that is degrees: as maps print them, minus or letter and all."""
    either = f"{letters}{letters.lower()}"
    return rf"[-+\u2212]?{_DEGREES}\u00b0?|{_DEGREES} ?\u00b0? ?[{either}]"


def plain_degrees(text: str, letters: str) -> float | None:
    """Return the degrees that text can only mean, west and south negative, else None.

    >>> plain_degrees("93.10 W", LONGITUDE_LETTERS), plain_degrees("93.10 W", LATITUDE_LETTERS)
    (-93.1, None)
    >>> plain_degrees("--93.10", LONGITUDE_LETTERS)
    """
    if not re.fullmatch(degrees_pattern(letters), text):
        return None
    negative = text[0] in "-\u2212" or text[-1] in "SsWw"
    degrees = float(text.strip("-+\u2212\u00b0NSEWnsew "))
    return -degrees if negative else degrees


def point_pattern() -> str:
    """Return the pattern of a point typed as text: latitude, a comma, longitude."""
    latitude, longitude = map(degrees_pattern, (LATITUDE_LETTERS, LONGITUDE_LETTERS))
    return rf"(?:{latitude}), ?(?:{longitude})"


def plain_point(text: str) -> list[str] | str:
    """Return the two parts of a point typed as text, the text itself where it is none.

    >>> plain_point("41.02, -93.10"), plain_point("41.02 -93.10")
    (['41.02', '-93.10'], '41.02 -93.10')
    """
    if not re.fullmatch(point_pattern(), text):
        return text
    return [part.strip() for part in text.split(",")]


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
