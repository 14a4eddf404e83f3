"""Hourly wind out of a file of ISD-Lite: calms, hours without a direction, hours without a word."""

import datetime
import re
from pathlib import Path

from generator.inventory import weather_faults as say
from generator.inventory.fields import FIRST_YEAR_LONG_AGO, LAST_YEAR
from generator.inventory.problems import Problem, Sentence, day_out_of_range
from generator.inventory.weather import HourlyWind, WindStation
from generator.inventory.weather_lines import MOST_FAULTS
from generator.inventory.weather_text import text_of
from generator.units import convert

# Year, month, day and hour in UTC, then eight values; wind is the fourth and fifth of them.
FIELDS = 12
DIRECTION, SPEED = 7, 8
_MISSING = -9999
TENTHS_IN_M = 10
FASTEST_M_PER_S = 113
_WHOLE_TURN_DEG = 360
EPOCH = datetime.datetime(1970, 1, 1)
SECONDS_IN_HOUR = 3600
_WHOLE = re.compile(r"-?\d{1,5}", re.ASCII)
WANTED = "year, month, day, hour and eight whole numbers, with blanks between"


def read_wind(folder: Path, station: WindStation) -> tuple[HourlyWind | None, list[Problem]]:
    """Return the wind of a station, or every fault that hinders it, with file and line."""
    text = text_of(folder, station.file)
    if isinstance(text, Sentence):
        where = station.where
        return None, [text.at(where.file, where.line, where.column)]
    hours: dict[int, tuple[float | None, float | None]] = {}
    lines: dict[int, int] = {}
    problems: list[Problem] = []
    for number, line in enumerate(text.splitlines(), 1):
        if not line.strip():
            continue
        read = _hour(line)
        if not isinstance(read, Sentence) and read[0] in lines:
            read = say.twice("the hour", lines[read[0]])
        if isinstance(read, Sentence):
            problems.append(read.at(station.file, number, 1))
            continue
        hour, from_deg, speed_mph = read
        lines[hour], hours[hour] = number, (from_deg, speed_mph)
    if problems:
        return None, problems[:MOST_FAULTS]  # a file of another kind is wrong in every line
    if not any(speed is not None for _, speed in hours.values()):
        told = Sentence("F436", "the file has no wind of any hour", "hours with a wind")
        return None, [told.at(station.file, 1, 1)]
    order = sorted(hours)
    return HourlyWind(
        station.id,
        tuple(order),
        tuple(hours[hour][0] for hour in order),
        tuple(hours[hour][1] for hour in order),
    ), []


def _hour(line: str) -> tuple[int, float | None, float | None] | Sentence:
    """Return the hour with direction and speed, or what is wrong with the line."""
    parts = line.split()
    if len(parts) != FIELDS or not all(_WHOLE.fullmatch(part) for part in parts):
        return say.wrong_line("the line is not one of hourly weather", WANTED)
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
    speed_mph = convert(speed / TENTHS_IN_M * SECONDS_IN_HOUR / 1000, "km_per_h", "mph")
    # a tenth of a mile is finer than the tenth of a meter it stood in
    return hours, float(direction) if known else None, round(speed_mph, 1)
