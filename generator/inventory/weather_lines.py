"""Days of a weather file before they are checked: one value each, by its day and its line."""

import csv
import datetime
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import lru_cache

from generator.inventory import weather_faults as say
from generator.inventory.fields import FIRST_YEAR_LONG_AGO, LAST_YEAR
from generator.inventory.problems import Problem, Sentence, day_out_of_range
from generator.inventory.weather import CELSIUS, FAHRENHEIT, TENTHS
from generator.units import convert

HIGH, LOW, RAIN = "high", "low", "rain"
MOST_FAULTS = 10
_MISSING = ("", "-9999", "9999")
COMMENT = "#"
_DAY = re.compile(r"\d{4}-?\d{2}-?\d{2}", re.ASCII)
_NUMBER = re.compile(r"[+-]?\d{1,7}(\.\d{1,6})?", re.ASCII)
NOON = "1200"
Value = tuple[float, int]


@dataclass(slots=True)
class Days:
    """What the lines of a file gave: values as typed, with their lines, and every fault."""

    file: str
    values: dict[str, dict[datetime.date, Value]] = field(
        default_factory=lambda: {HIGH: {}, LOW: {}, RAIN: {}}
    )
    seen: dict[tuple[datetime.date, str], int] = field(default_factory=dict)
    flagged: int = 0
    early: int = 0
    problems: list[Problem] = field(default_factory=list)

    def fault(self, sentence: Sentence, line: int) -> None:
        """Keep a fault; a file that is wrong from end to end is told of its first lines."""
        if len(self.problems) < MOST_FAULTS:
            self.problems.append(sentence.at(self.file, line, 1))

    def is_new(self, day: datetime.date, what: str, line: int) -> bool:
        """Return whether a line is the first of its day and kind; a second one is a fault."""
        before = self.seen.setdefault((day, what), line)
        if before != line:
            self.fault(say.twice(f"the {what} of {day}", before), line)
        return before == line

    def keep(self, day: datetime.date, what: str, text: str, line: int, flag: str = "") -> None:
        """Keep a value; nothing, and what a flag sets aside, is kept as missing."""
        value = _number(text)
        if value is None:
            if text.strip() not in _MISSING:
                self.fault(say.bad_number(text.strip(), what), line)
        elif flag.strip():
            self.flagged += 1
        else:
            self.values[what][day] = (value, line)


# a record of decades has the same few hundred values over and over
@lru_cache(maxsize=2000)
def _number(text: str) -> float | None:
    """Return the value of a text; None where it is none, or stands for a missing one."""
    text = text.strip()
    return float(text) if text not in _MISSING and _NUMBER.fullmatch(text) else None


def sound_day(text: str, wanted: str, line: int, days: Days) -> datetime.date | None:
    """Return the day a text means, or None with its fault kept: no day, or one of no record."""
    day = day_read(text)
    if day is None:
        days.fault(say.bad_day(text, wanted), line)
    elif not FIRST_YEAR_LONG_AGO <= day.year <= LAST_YEAR:
        days.fault(day_out_of_range(day, FIRST_YEAR_LONG_AGO, LAST_YEAR), line)
        return None
    return day


def day_read(text: str) -> datetime.date | None:
    """Return the day a text means, with dashes or without, or None."""
    text = text.strip()
    try:
        return datetime.date.fromisoformat(text.replace("-", "")) if _DAY.fullmatch(text) else None
    except ValueError:
        return None


ELEMENTS = {"TMAX": HIGH, "TMIN": LOW, "PRCP": RAIN}
GHCN_FIELDS = (4, 8)


def ghcn_days(text: str, days: Days) -> str:
    """Keep the values of a file of one station by element, and return its units."""
    wanted = "station, day as 20270314, element, value and flags, with commas between"
    station = None
    for number, line in enumerate(text.splitlines(), 1):
        parts = line.split(",")
        if not line.strip() or (number == 1 and parts[0] in ("ID", '"ID"')):
            continue
        if not GHCN_FIELDS[0] <= len(parts) <= GHCN_FIELDS[1]:
            days.fault(say.wrong_line(f"the line has {len(parts)} parts", wanted), number)
            continue
        station = station or parts[0]
        if parts[0] != station:
            told = say.wrong_line("the line is of another station", "one station in a file")
            days.fault(told, number)
            continue
        day = sound_day(parts[1], "a day as 20270314", number, days)
        if (
            day is not None
            and parts[2] in ELEMENTS
            and days.is_new(day, ELEMENTS[parts[2]], number)
        ):
            _, _, element, value, _, flag, _, read_at = parts + [""] * (8 - len(parts))
            days.keep(day, ELEMENTS[element], value, number, flag)
            # both are hours and minutes in four digits, so text sorts as time
            days.early += element == "TMAX" and "" < read_at.strip() < NOON
    return TENTHS


SUMMARY_COLUMNS = {"TMAX": HIGH, "TMIN": LOW, "PRCP": RAIN}


def summary_days(text: str, days: Days) -> str | None:
    """Keep the values of a file of daily summaries; its units are for its owner to say."""
    rows = _rows(text, days)
    number, header = next(rows, (1, []))
    missing = [column for column in ("DATE", "TMAX", "TMIN") if column not in header]
    if missing:
        days.fault(say.wrong_columns(missing, ("DATE", "TMAX", "TMIN")), number)
        return None
    for number, row in rows:
        by_name = dict(zip(header, row, strict=False))
        day = _day_in(by_name.get("DATE", ""), len(row) == len(header), number, days)
        if day is None:
            continue
        for column, what in SUMMARY_COLUMNS.items():
            if column in by_name:
                flags = by_name.get(f"{column}_ATTRIBUTES", "").split(",")
                # the second attribute is the quality check; the first says how it was measured
                flag = flags[1] if len(flags) > 1 else ""
                days.keep(day, what, by_name[column], number, flag)
    return None


PLAIN_COLUMNS = {HIGH: ("tmax_f", "tmax_c"), LOW: ("tmin_f", "tmin_c")}
RAIN_COLUMNS = ("precip_in", "precip_mm")


def plain_days(text: str, days: Days) -> str | None:
    """Keep the values of a plain file, whose columns say their units."""
    rows = _rows(text, days)
    number, header = next(rows, (1, []))
    columns = {
        what: next((name for name in names if name in header), None)
        for what, names in (PLAIN_COLUMNS | {RAIN: RAIN_COLUMNS}).items()
    }
    missing = [PLAIN_COLUMNS[what][0] for what in PLAIN_COLUMNS if columns[what] is None]
    if "date" not in header or missing:
        missing = [*([] if "date" in header else ["date"]), *missing]
        days.fault(say.wrong_columns(missing, ("date", "tmax_f", "tmin_f", "precip_in")), number)
        return None
    places = {name: place for place, name in enumerate(header)}
    kept = [(what, places[column]) for what, column in columns.items() if column is not None]
    for number, row in rows:
        whole = len(row) == len(header)
        day = _day_in(row[places["date"]] if whole else "", whole, number, days)
        if day is not None:
            for what, place in kept:
                days.keep(day, what, row[place], number)
    for what, column in columns.items():
        if column is not None and column.endswith(("_c", "_mm")):
            _to_us(days.values[what], what)
    return FAHRENHEIT


def _to_us(values: dict[datetime.date, Value], what: str) -> None:
    for day, (value, line) in values.items():
        values[day] = (in_us_units(value, what, CELSIUS), line)


def _rows(text: str, days: Days) -> Iterator[tuple[int, list[str]]]:
    """Yield the rows of a file with columns, each with its line; remarks are passed over."""
    reader = csv.reader(text.splitlines())
    try:
        for row in reader:
            cells = [cell.strip() for cell in row]
            if any(cells) and not row[0].startswith(COMMENT):
                yield reader.line_num, cells
    except csv.Error:
        told = say.wrong_line("the line is not what a table has", "values with commas between")
        days.fault(told, reader.line_num)


def _day_in(text: str, whole: bool, number: int, days: Days) -> datetime.date | None:
    # a part too few or too many puts a value below another column
    if not whole:
        told = say.wrong_line("the line has more or fewer parts than the first one", "as many")
        days.fault(told, number)
        return None
    day = sound_day(text, "a day as 2027-03-14", number, days)
    if day is not None and not days.is_new(day, "weather", number):
        return None
    return day


def in_us_units(value: float, what: str, units: str) -> float:
    """Return a value in F or inches; a temperature to a tenth, as thermometers are read.

    A reading of 28 F stands as -2.2 C in a record of tenths, and is 28 F again.
    """
    if units == FAHRENHEIT:
        return value
    metric = value / 10 if units == TENTHS else value
    if what == RAIN:
        return round(convert(metric / 10, "cm", "in"), 3)
    return round(convert(metric, "c", "f"), 1)


LINE_READERS: dict[str, Callable[[str, Days], str | None]] = {
    "ghcn_by_station": ghcn_days,
    "daily_summaries": summary_days,
    "plain": plain_days,
}
