"""Hours of a file of wind before they are put together: one direction and speed each, by line."""

import csv
import datetime
import functools
import re
from collections.abc import Iterator

from generator.inventory import weather_faults as say
from generator.inventory.fields import FIRST_YEAR_LONG_AGO, LAST_YEAR
from generator.inventory.problems import Sentence, day_out_of_range
from generator.inventory.weather_lines import COMMENT
from generator.units import convert

HourOfWind = tuple[int, float | None, float | None]
HourRead = tuple[int, HourOfWind | Sentence]
# Year, month, day and hour in UTC, then eight values; wind is the fourth and fifth of them.
FIELDS = 12
DIRECTION, SPEED = 7, 8
_MISSING = -9999
TENTHS_IN_M = 10
FASTEST_M_PER_S = 113
_WHOLE_TURN_DEG = 360
EPOCH = datetime.datetime(1970, 1, 1)
SECONDS_IN_HOUR = 3600
_LINE = re.compile(r"\s*(-?[0-9]{1,5})" + r"\s+(-?[0-9]{1,5})" * (FIELDS - 1) + r"\s*")
WANTED = "year, month, day, hour and eight whole numbers, with blanks between"
_TIME = re.compile(r"(\d{4}-\d{2}-\d{2})[T ](\d{2}:\d{2})(?::00)?(Z|[+-]\d{2}:\d{2})", re.ASCII)
_NUMBER = re.compile(r"\d{1,4}(\.\d{1,6})?", re.ASCII)
_NONE = ("", str(_MISSING))
VARIABLE = "variable"
TIME, FROM = "time", "direction_deg"
SPEEDS = ("speed_mph", "speed_km_per_h")
MOST_IN_UNIT = {"speed_mph": 253, "speed_km_per_h": 407}


def isd_lite_hours(text: str) -> Iterator[HourRead]:
    """Yield the hours of a file of ISD-Lite, each with its line, or what is wrong with it."""
    for number, line in enumerate(text.splitlines(), 1):
        if line.strip():
            yield number, _hour(line)


def _hour(line: str) -> HourOfWind | Sentence:
    """Return the hour with direction and speed, or what is wrong with the line."""
    found = _LINE.fullmatch(line)
    if found is None:
        return say.wrong_line("the line is not one of hourly weather", WANTED)
    parts = found.groups()
    year, month, day, hour = map(int, parts[:4])
    try:
        at = datetime.datetime(year, month, day, hour)
    except ValueError:
        return say.bad_day(" ".join(parts[:4]), "a day and an hour as 2026 10 01 00")
    if not FIRST_YEAR_LONG_AGO <= year <= LAST_YEAR:
        return day_out_of_range(at.date(), FIRST_YEAR_LONG_AGO, LAST_YEAR)
    direction, speed = int(parts[DIRECTION]), int(parts[SPEED])
    hours = int((at - EPOCH).total_seconds()) // SECONDS_IN_HOUR
    # a direction without a speed is no wind
    if speed == _MISSING:
        return hours, None, None
    if not 0 <= speed <= FASTEST_M_PER_S * TENTHS_IN_M:
        told = f"the wind is {speed / TENTHS_IN_M:g} m/s"
        return say.impossible(told, f"0 to {FASTEST_M_PER_S} m/s")
    if direction != _MISSING and not 0 <= direction <= _WHOLE_TURN_DEG:
        return say.impossible(f"the wind is from {direction} degrees", "0 to 360 degrees")
    # wind from the north is 360 here; 0 stands for a calm
    known = speed > 0 and direction not in (_MISSING, 0)
    return hours, float(direction) if known else None, _mph_of_tenths(speed)


@functools.cache
def _mph_of_tenths(tenths_of_m_per_s: int) -> float:
    km_per_h = tenths_of_m_per_s / TENTHS_IN_M * SECONDS_IN_HOUR / 1000
    # a tenth of a mile is finer than the tenth of a meter it stood in
    return round(convert(km_per_h, "km_per_h", "mph"), 1)


def plain_hours(text: str) -> Iterator[HourRead]:
    """Yield the hours of a plain file, whose columns say their units, each with its line."""
    reader = csv.reader(text.splitlines())
    rows = (
        [cell.strip() for cell in row]
        for row in reader
        if row and not row[0].startswith(COMMENT) and any(cell.strip() for cell in row)
    )
    try:
        header = next(rows, [])
        speed = next((name for name in SPEEDS if name in header), None)
        missing = [name for name in (TIME, FROM) if name not in header]
        if missing or speed is None:
            missing += [] if speed is not None else [SPEEDS[0]]
            yield max(1, reader.line_num), say.wrong_columns(missing, (TIME, FROM, SPEEDS[0]))
            return
        for row in rows:
            if len(row) != len(header):
                told = "the line has more or fewer parts than the first one"
                yield reader.line_num, say.wrong_line(told, "as many")
                continue
            by_name = dict(zip(header, row, strict=True))
            yield reader.line_num, _plain_hour(by_name[TIME], by_name[FROM], by_name[speed], speed)
    except csv.Error:
        told = "the line is not what a table has"
        yield reader.line_num, say.wrong_line(told, "values with commas between")


def _plain_hour(time: str, direction: str, speed: str, column: str) -> HourOfWind | Sentence:
    """Return the hour with direction and speed, or what is wrong with them."""
    at = _instant(time)
    if at is None:
        return say.bad_time(time)
    if not FIRST_YEAR_LONG_AGO <= at.year <= LAST_YEAR:
        return day_out_of_range(at.date(), FIRST_YEAR_LONG_AGO, LAST_YEAR)
    wind = _wind(direction, speed, column)
    if isinstance(wind, Sentence):
        return wind
    # a report a few minutes before the hour is that of the hour
    return round((at - EPOCH).total_seconds() / SECONDS_IN_HOUR), *wind


@functools.cache
def _wind(direction: str, speed: str, column: str) -> tuple[float | None, float | None] | Sentence:
    """Return direction and speed as two cells tell them, of which a record has few different."""
    if speed in _NONE:
        return None, None
    if not _NUMBER.fullmatch(speed):
        return say.bad_number(speed, column)
    told = float(speed)
    if told > MOST_IN_UNIT[column]:
        unit = column.removeprefix("speed_")
        return say.impossible(f"the wind is {told:,g} {unit}", f"0 to {MOST_IN_UNIT[column]}")
    speed_mph = told if column == SPEEDS[0] else convert(told, "km_per_h", "mph")
    from_deg = _from_deg(direction, told)
    return from_deg if isinstance(from_deg, Sentence) else (from_deg, round(speed_mph, 1))


def _from_deg(direction: str, speed: float) -> float | Sentence | None:
    """Return where a wind came from; None in a calm, where it turned about or nobody says."""
    if direction in _NONE or direction.casefold() == VARIABLE:
        return None
    if not _NUMBER.fullmatch(direction):
        return say.bad_wind_from(direction)
    from_deg = float(direction)
    if from_deg > _WHOLE_TURN_DEG:
        return say.impossible(f"the wind is from {direction} degrees", "1 to 360 degrees")
    if speed == 0:
        return None
    # 0 stands for a calm in one file and for north in another
    return from_deg if from_deg > 0 else say.bad_wind_from(direction)


def _instant(text: str) -> datetime.datetime | None:
    """Return a time in UTC; None for one that does not say its own distance from UTC."""
    found = _TIME.fullmatch(text)
    if found is None:
        return None
    day, time, offset = found.groups()
    try:
        at = datetime.datetime.fromisoformat(f"{day}T{time}{'+00:00' if offset == 'Z' else offset}")
        return at.astimezone(datetime.UTC).replace(tzinfo=None)
    except (ValueError, OverflowError):
        return None
