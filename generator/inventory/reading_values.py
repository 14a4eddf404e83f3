"""From plain data to one value of a field: text, numbers with their units, days, points."""

import datetime
import re
from dataclasses import replace
from typing import Any, cast

from generator.inventory import problems as say
from generator.inventory.date_cures import (
    DATE_WORDS,
    MONTH_DAY_WORDS,
    MONTH_WORDS,
    OR_MONTH,
    OR_US_DATE,
    OR_US_MONTH_DAY,
)
from generator.inventory.fields import NOT_ON_LABEL, FieldRule, Points, SeasonMarker
from generator.inventory.plain_values import (
    COMPASS_DEG,
    LATITUDE_LETTERS,
    LONGITUDE_LETTERS,
    first_of_month,
    plain_degrees,
    plain_month,
    plain_number,
    plain_point,
    us_day,
    us_month_day,
)
from generator.inventory.problems import Sentence
from generator.inventory.reading_found import FAULT, Mention, Path, Reading, TypedPoint
from generator.units import LatLon, convert, family_suffixes
from generator.working import Given

_DATE = re.compile(r"\d{4}-\d{2}-\d{2}", re.ASCII)


_MONTH_DAY = re.compile(r"\d{2}-\d{2}", re.ASCII)


_ID = re.compile(r"[a-z0-9]([a-z0-9-]*[a-z0-9])?", re.ASCII)


_WORD = re.compile(r"[a-z0-9]+(_[a-z0-9]+)*", re.ASCII)


YES_OR_NO = {"yes": True, "no": False}


# As words: true and false in small letters are none, unless quotes make them text.
TRUTHS = {"True": True, "TRUE": True, "False": False, "FALSE": False}


LEAP_YEAR = 2024  # without a year, February 29 is a day


POINT_WORDS = "a point like [41.02, -93.10]: latitude, longitude"


_AXES = ((LATITUDE_LETTERS, 90), (LONGITUDE_LETTERS, 180))


PLACEHOLDER_CHARACTERS = " .?_-\u2026\u2014"


# What no land, tank or bag is, and what sums and products of which still are numbers.
SMALLEST = 1e-9


LARGEST = 1e12


def _text(rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    if isinstance(raw, str) and not raw.strip(PLACEHOLDER_CHARACTERS):
        # dots left standing on a label card must not count as having read the label
        return reading.fault(say.placeholder(raw, _or_label(rule, "what it says")), path)
    if isinstance(raw, str):
        return raw
    if rule.numbered and isinstance(raw, int) and not isinstance(raw, bool):
        return str(raw)
    return reading.fault(say.wrong_type(raw, _or_label(rule, "text")), path)


def _or_label(rule: FieldRule, wanted: str) -> str:
    return f"{wanted}, or {NOT_ON_LABEL}" if rule.label else wanted


def _identity(_rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    # an id of digits alone reads as a number
    word = str(raw) if isinstance(raw, int) and not isinstance(raw, bool) else raw
    if not isinstance(word, str):
        return reading.fault(say.wrong_type(raw, "an id"), path)
    return word if is_id(word) else reading.fault(say.bad_id(word), path)


def is_id(word: str) -> bool:
    """Return whether a word can be an id, and so a file name on every system."""
    is_file_name = len(word) <= say.LONGEST_ID and word not in say.NO_FILE_NAMES
    return is_file_name and bool(_ID.fullmatch(word))


def _word(_rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    wanted = "small letters, digits and underscores, like autumn_kill"
    if isinstance(raw, str) and len(raw) <= say.LONGEST_ID and _WORD.fullmatch(raw):
        reading.words.add(raw)
        return raw
    return reading.fault(say.wrong_type(raw, wanted), path)


def _reference(rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    word = str(raw) if isinstance(raw, int) and not isinstance(raw, bool) else raw
    if not isinstance(word, str):
        return reading.fault(say.wrong_type(raw, "an id"), path)
    reading.mentions.append(Mention(word, rule.refers_to, reading.where(path), path))
    return word


def _choice(rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    word = raw.casefold() if isinstance(raw, str) else None
    if word in rule.choices:
        return word
    truth = _truth(raw)
    if truth is not None and YES_OR_NO.keys() <= set(rule.choices):
        return "yes" if truth else "no"
    choices = (*rule.choices, NOT_ON_LABEL) if rule.label else rule.choices
    return reading.fault(say.bad_choice(raw, choices), path)


def _measure(rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    key = _key_of(path)
    typed_unit = unit_of(key, rule)
    number = _number(rule, raw, key, path, reading)
    if not isinstance(number, float):
        return number
    unit = rule.unit or family_suffixes(_family_of(typed_unit, rule))[0]
    value = convert(number, typed_unit, unit)
    limit = _broken_limit(rule, value, typed_unit, unit)
    # before the range: 85 for a fraction is a percent, and is told as one
    if typed_unit == "fraction" and rule.limits.at_most == 1 < number:
        return reading.fault(say.no_fraction(number), path)
    if value and not SMALLEST <= abs(value) <= LARGEST:
        limit = "a number of a size that exists"
    if limit:
        return reading.fault(say.out_of_range(number, typed_unit, limit), path)
    where = reading.where(path)
    stem = key.removesuffix(f"_{typed_unit}")
    name = f"{stem}_{unit}"
    return Given(
        name,
        value,
        unit,
        number,
        typed_unit,
        where.file,
        where.line,
        rule.visible,
        rule.help,
        where.column,
    )


def _number(rule: FieldRule, raw: object, key: str, path: Path, reading: Reading) -> float | object:
    unit = unit_of(key, rule)
    needs_unit = not key.endswith(f"_{unit}")
    if needs_unit and not (isinstance(raw, str) and raw.casefold() in COMPASS_DEG):
        return reading.key_fault(say.unknown_unit(key, key, (f"{key}_{unit}",)), path)
    if isinstance(raw, str):
        plain = plain_number(raw, unit)
        return reading.fault(say.not_a_number(raw, key), path) if plain is None else plain
    if isinstance(raw, bool) or not isinstance(raw, int | float):
        return reading.fault(say.wrong_type(raw, _or_label(rule, "a number")), path)
    try:
        return float(raw)
    except OverflowError:
        return reading.fault(say.wrong_type(raw, "a number of a size that exists"), path)


def _key_of(path: Path) -> str:
    """Return the key that a value stands behind, by itself or in its list."""
    return next(str(part) for part in reversed(path) if isinstance(part, str))


def unit_of(key: str, rule: FieldRule) -> str:
    """Return the unit of a key that is legal for a measure."""
    suffixes = [suffix for family in rule.families for suffix in family_suffixes(family)]
    return max(
        (suffix for suffix in suffixes if key.endswith(f"_{suffix}")), key=len, default=rule.unit
    )


def _family_of(suffix: str, rule: FieldRule) -> str:
    return next(family for family in rule.families if suffix in family_suffixes(family))


def _broken_limit(rule: FieldRule, value: float, typed_unit: str, unit: str) -> str | None:
    limits = rule.limits
    if limits.above is not None and not value > limits.above:
        return f"more than {_limit(limits.above, unit, typed_unit)}"
    if limits.at_least is not None and value < limits.at_least:
        return f"at least {_limit(limits.at_least, unit, typed_unit)}"
    if limits.at_most is not None and value > limits.at_most:
        return f"at most {_limit(limits.at_most, unit, typed_unit)}"
    return None


def _limit(value: float, unit: str, typed_unit: str) -> str:
    return f"{convert(value, unit, typed_unit):g}"


def _whole(rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    if isinstance(raw, float) and raw.is_integer():
        raw = int(raw)
    if isinstance(raw, bool) or not isinstance(raw, int):
        return reading.fault(say.not_whole(raw, _key_of(path)), path)
    limits = rule.limits
    too_low = limits.at_least is not None and raw < limits.at_least
    too_high = limits.at_most is not None and raw > limits.at_most
    if too_low:
        return reading.fault(say.out_of_range(raw, "", f"at least {limits.at_least:g}"), path)
    if too_high:
        return reading.fault(say.out_of_range(raw, "", f"at most {limits.at_most:g}"), path)
    return raw


def _truth(raw: object) -> bool | None:
    """Return what a word for yes or no says, None where it is no such word."""
    if isinstance(raw, bool) or not isinstance(raw, str):
        return raw if isinstance(raw, bool) else None
    return TRUTHS[raw] if raw in TRUTHS else YES_OR_NO.get(raw.casefold())


def _yes_no(_rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    truth = _truth(raw)
    if truth is not None:
        return truth
    return reading.fault(say.bad_choice(raw, ("true", "false")), path)


def _date(rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    text = raw if isinstance(raw, str) else ""
    month = first_of_month(text) if rule.month_too else None
    if month is not None:
        return _in_its_years(rule, month, path, reading)
    written = (us_day(text) if reading.us_dates else None) or text
    try:
        if not _DATE.fullmatch(written):
            raise ValueError(text)
        day = datetime.date.fromisoformat(written)
    except ValueError:
        wanted = DATE_WORDS + (OR_US_DATE if reading.us_dates else "")
        wanted += OR_MONTH if rule.month_too else ""
        sentence = _no_day(raw, wanted, reading)
        return reading.fault(_or_us(sentence, us_day(text), reading), path)
    return _in_its_years(rule, day, path, reading)


def _no_day(raw: object, wanted: str, reading: Reading) -> Sentence:
    """Return the fault of what is no day; of one typed without marks, as 20260914, too."""
    text = str(raw) if isinstance(raw, int) and not isinstance(raw, bool) else raw
    if not isinstance(text, str) or not text:
        return say.wrong_type(raw, wanted)
    return say.bad_date(text, wanted, us_dates=reading.us_dates)


def _in_its_years(rule: FieldRule, day: datetime.date, path: Path, reading: Reading) -> object:
    """Return a day in the years it can lie in, or the fault of one that is not."""
    first, last = int(rule.limits.at_least or 0), int(rule.limits.at_most or 0)
    if not first <= day.year <= last:
        return reading.fault(say.day_out_of_range(day, first, last), path)
    return day


def _or_us(sentence: Sentence, as_us: str | None, reading: Reading) -> Sentence:
    """Return the fault of a day with the line that lets month/day/year be read, where it is one."""
    if as_us is None or reading.us_dates:
        return sentence
    try:
        datetime.date.fromisoformat(as_us if as_us.count("-") > 1 else f"{LEAP_YEAR}-{as_us}")
    except ValueError:
        return sentence
    cure = f"{sentence.accepted}; or dates: us in property.yaml, if your days are month/day/year"
    return replace(sentence, accepted=cure)


def _month(_rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    month = plain_month(raw) if isinstance(raw, str) else None
    if month is not None:
        return month
    return reading.fault(_no_day(raw, MONTH_WORDS, reading), path)


def _month_day(_rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    text = raw if isinstance(raw, str) else ""
    written = (us_month_day(text) if reading.us_dates else None) or text
    try:
        if not _MONTH_DAY.fullmatch(written):
            raise ValueError(text)
        day = datetime.date.fromisoformat(f"{LEAP_YEAR}-{written}")
    except ValueError:
        wanted = MONTH_DAY_WORDS + (OR_US_MONTH_DAY if reading.us_dates else "")
        sentence = _no_day(raw, wanted, reading)
        return reading.fault(_or_us(sentence, us_month_day(text), reading), path)
    return (day.month, day.day)


def _lat_lon(_rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    raw = plain_point(raw) if isinstance(raw, str) else raw
    if not isinstance(raw, list) or len(raw) != 2:
        return reading.fault(say.wrong_type(raw, POINT_WORDS), path)
    # where one half can be read it is a point, and the other half is told at its own place
    if all(
        isinstance(half, str) and plain_degrees(half, _AXES[n][0]) is None
        for n, half in enumerate(raw)
    ):
        return reading.fault(say.wrong_type(", ".join(raw), POINT_WORDS), path)
    read = [_degrees(raw, number, (*path, number), reading) for number in range(2)]
    if FAULT in read:
        return FAULT
    point = cast("LatLon", tuple(read))
    key = _key_of(path)
    reading.points.append(TypedPoint(key, point, reading.where(path)))
    return point


def _degrees(raw: list[Any], number: int, path: Path, reading: Reading) -> object:
    """Return one of the two numbers of a point."""
    letters, most = _AXES[number]
    part = raw[number]
    if isinstance(part, str):
        part = plain_degrees(part, letters)
    elif isinstance(part, list) and _has_minus_apart(part, path, reading):
        part = -part[0]
    if isinstance(part, bool) or not isinstance(part, int | float):
        return reading.fault(say.wrong_type(raw[number], POINT_WORDS), path)
    if abs(part) <= most:
        return float(part)
    fault = say.out_of_range(part, "degrees", f"-{most} to {most}")
    if _is_turned_around(raw):
        turned = f"[{raw[1]}, {raw[0]}]: latitude first, then longitude"
        fault = replace(fault, accepted=turned)
    return reading.fault(fault, path)


def _has_minus_apart(raw: list[Any], path: Path, reading: Reading) -> bool:
    """Whether a number stands behind two dashes, `- - 93.10`: the second can only be its minus."""
    if len(raw) != 1 or isinstance(raw[0], bool) or not isinstance(raw[0], int | float):
        return False
    dash, number = reading.document.mark(path), reading.document.mark((*path, 0))
    return raw[0] > 0 and dash.line == number.line and number.column - dash.column >= len("- ")


def _is_turned_around(raw: list[Any]) -> bool:
    """Whether two numbers are a point only with the longitude last."""
    numbers = all(isinstance(half, int | float) for half in raw)
    # no latitude lies beyond 90, so the first can only be the longitude
    return numbers and 90 < abs(raw[0]) <= 180 and abs(raw[1]) <= 90


def _points(rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    wanted = "a list of points like [[41.02, -93.10], [41.03, -93.10]]: latitude, longitude"
    is_point = (isinstance(point, list | str) for point in raw) if isinstance(raw, list) else ()
    if not isinstance(raw, list) or not any(is_point):
        return reading.fault(say.wrong_type(raw, wanted), path)
    places = [(*path, number) for number in range(len(raw))]
    found = [_lat_lon(rule, point, at, reading) for point, at in zip(raw, places, strict=True)]
    if any(point is FAULT for point in found):
        return FAULT
    each = tuple(reading.where(at) for at in places)
    return Points(cast("tuple[LatLon, ...]", tuple(found)), each[0], each)


def _sign(rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    where = reading.where(path)
    if isinstance(raw, str):
        day = _month_day(rule, raw, path, reading)
        if not isinstance(day, tuple):
            return day
        return SeasonMarker(where=where, early=day, typical=day, late=day, single=True)
    if not isinstance(raw, dict):
        return reading.fault(
            say.wrong_type(raw, "{early: 03-20, typical: 04-01, late: 04-12}"), path
        )
    parts = ("early", "typical", "late")
    known = {part: part for part in parts}
    for key in raw:
        if key not in known:
            reading.key_fault(say.unknown_key(key, parts), (*path, key))
    days = [
        _month_day(rule, raw[part], (*path, part), reading)
        if part in raw
        else reading.fault(say.missing_key(part, "this season sign"), path)
        for part in parts
    ]
    if any(day is FAULT for day in days) or any(key not in known for key in raw):
        return FAULT
    early, typical, late = (cast("tuple[int, int]", day) for day in days)
    return SeasonMarker(where=where, early=early, typical=typical, late=late, single=False)
