"""From the values of a weather file to a record of days: units, what is possible, gaps."""

import datetime
from functools import partial
from pathlib import Path

from generator.inventory import weather_faults as say
from generator.inventory.known import Known
from generator.inventory.problems import Problem, Sentence
from generator.inventory.weather import CELSIUS, FAHRENHEIT, TENTHS, DailyRecord, Station
from generator.inventory.weather_lines import HIGH, LINE_READERS, LOW, RAIN, Days, in_us_units
from generator.inventory.weather_text import text_of

# No weather of the United States is colder, warmer or wetter in a day.
COLDEST_F, WARMEST_F, WETTEST_IN = -90.0, 140.0, 60.0
# Only tenths of a degree reach this far; and no summer's warm days stay below that.
BEYOND_ANY_DEGREE = 150.0
NO_WARM_DAY_F = 55.0
WARM_SHARE = 0.9
YEAR_DAYS = 365
_UNITS = (FAHRENHEIT, CELSIUS, TENTHS)


def read_days(
    folder: Path, station: Station, known: Known
) -> tuple[DailyRecord | None, list[Problem]]:
    """Return the record of a station, or every fault that hinders it, with file and line."""
    text = text_of(folder, station.file)
    about = f"days of {station.id}"
    return known.made_of((text, station, station.where), about, partial(_read, text, station))


def _read(text: str | Sentence, station: Station) -> tuple[DailyRecord | None, list[Problem]]:
    if isinstance(text, Sentence):
        return None, [_at_station(text, station)]
    days = Days(station.file)
    units = LINE_READERS[station.kind](text, days)
    if not days.problems:
        units = units or _units_of(days, station)
        if units is None:
            return None, [_at_station(say.unknown_units(_UNITS), station)]
        # first, since what is possible and what is likely are said in these
        _to_us_units(days, units)
        # before the single values: wrong units are one cause, and would be told line by line
        unlikely = _unlikely(days, units)
        if unlikely is not None:
            return None, [_at_station(unlikely, station)]
        _check(days)
    if days.problems:
        return None, days.problems
    if not days.values[HIGH] or not days.values[LOW]:
        return None, [say.nothing_in_it().at(station.file, 1, 1)]
    return _record(days, station.id), []


def _at_station(sentence: Sentence, station: Station) -> Problem:
    where = station.where
    return sentence.at(where.file, where.line, where.column)


def _units_of(days: Days, station: Station) -> str | None:
    """Return the units stated, or tenths where the values can be nothing else."""
    if station.units is not None:
        return station.units
    highs = (abs(value) for value, _ in days.values[HIGH].values())
    return TENTHS if max(highs, default=0) >= BEYOND_ANY_DEGREE else None


def _to_us_units(days: Days, units: str) -> None:
    if units == FAHRENHEIT:
        return
    for what, values in days.values.items():
        for day, (value, line) in values.items():
            values[day] = (in_us_units(value, what, units), line)


def _unlikely(days: Days, units: str) -> Sentence | None:
    """Return what speaks against the units: a year's warm days that are cold, or none a degree."""
    highs = sorted(value for value, _ in days.values[HIGH].values())
    if len(highs) < YEAR_DAYS:
        return None
    warm = highs[int(len(highs) * WARM_SHARE)]
    if warm < NO_WARM_DAY_F:
        return say.unlikely_units(units, f"nine days in ten stay below {warm:.0f} F")
    if highs[len(highs) // 2] > WARMEST_F:
        return say.unlikely_units(units, f"half the days are warmer than {WARMEST_F:.0f} F")
    return None


def _check(days: Days) -> None:
    limits = {HIGH: (COLDEST_F, WARMEST_F), LOW: (COLDEST_F, WARMEST_F), RAIN: (0.0, WETTEST_IN)}
    for what, (least, most) in limits.items():
        unit = "inches" if what == RAIN else "F"
        for day, (value, line) in days.values[what].items():
            if not least <= value <= most:
                told = f"the {what} of {day} is {value:g} {unit}"
                days.fault(say.impossible(told, f"{least:g} to {most:g} {unit}"), line)
    for day, (high, line) in days.values[HIGH].items():
        low = days.values[LOW].get(day)
        if low is not None and low[0] > high:
            told = f"on {day} the low, {low[0]:g} F, is above the high, {high:g} F"
            # at the later of two lines: up to there nothing was wrong
            days.fault(say.impossible(told, "a low of at most the high"), max(line, low[1]))


def _record(days: Days, station_id: str) -> DailyRecord:
    # of temperatures: a day of rain alone neither begins nor ends a record
    known = {*days.values[HIGH], *days.values[LOW]}
    first, last = min(known), max(known)
    calendar = [first + datetime.timedelta(days=n) for n in range((last - first).days + 1)]

    def column(what: str) -> tuple[float | None, ...]:
        values = days.values[what]
        return tuple(values[day][0] if day in values else None for day in calendar)

    highs = len(days.values[HIGH])
    return DailyRecord(
        station_id, first, column(HIGH), column(LOW), column(RAIN),
        days.flagged, days.early * 2 > highs,
    )  # fmt: skip
