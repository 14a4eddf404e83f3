"""Hourly wind out of the files of a station, put together from their hours."""

from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path

from generator.inventory import weather_faults as say
from generator.inventory.known import Known
from generator.inventory.problems import Problem, Sentence
from generator.inventory.weather import ISD_LITE, PLAIN, HourlyWind, WindStation
from generator.inventory.weather_hours import HourRead, isd_lite_hours, plain_hours
from generator.inventory.weather_lines import MOST_FAULTS
from generator.inventory.weather_text import text_of

TENS_DEG, WHOLE_DEG = 10.0, 1.0
Winds = dict[int, tuple[float | None, float | None]]
_READERS: dict[str, Callable[[str], Iterator[HourRead]]] = {
    ISD_LITE: isd_lite_hours,
    PLAIN: plain_hours,
}


def read_wind(
    folder: Path, station: WindStation, known: Known
) -> tuple[HourlyWind | None, list[Problem]]:
    """Return the wind of a station, or every fault that hinders it, with file and line."""
    texts = [(name, text_of(folder, name)) for name in (station.file, *station.more_files)]
    about = f"wind of {station.id}"
    return known.made_of((texts, station, station.where), about, partial(_read, texts, station))


def _read(
    texts: list[tuple[str, str | Sentence]], station: WindStation
) -> tuple[HourlyWind | None, list[Problem]]:
    hours: Winds = {}
    problems: list[Problem] = []
    before: dict[int, tuple[str, int]] = {}
    for name, text in texts:
        if isinstance(text, Sentence):
            where = station.where
            problems.append(text.at(where.file, where.line, where.column))
            continue
        # a file of another kind is wrong in every line
        problems += list(_faults_of(text, name, station.kind, hours, before))[:MOST_FAULTS]
    if problems:
        return None, problems
    if not any(speed is not None for _, speed in hours.values()):
        told = Sentence("F436", "the file has no wind of any hour", "hours with a wind")
        return None, [told.at(station.file, 1, 1)]
    return _record(station.id, hours), []


def _faults_of(
    text: str, file: str, kind: str, hours: Winds, before: dict[int, tuple[str, int]]
) -> Iterator[Problem]:
    """Keep the hours of a file, and yield what is wrong with its lines."""
    for number, read in _READERS[kind](text):
        if isinstance(read, Sentence):
            yield read.at(file, number, 1)
            continue
        hour, from_deg, speed_mph = read
        first = before.setdefault(hour, (file, number))
        if first != (file, number):
            yield _twice(file, first).at(file, number, 1)
        hours[hour] = (from_deg, speed_mph)


def _twice(file: str, first: tuple[str, int]) -> Sentence:
    return say.twice("the hour" if first[0] == file else f"the hour, in {first[0]},", first[1])


def _record(station_id: str, hours: Winds) -> HourlyWind:
    order = sorted(hours)
    directions = tuple(hours[hour][0] for hour in order)
    in_tens = all(one is None or one % TENS_DEG == 0 for one in directions)
    return HourlyWind(
        station_id,
        tuple(order),
        directions,
        tuple(hours[hour][1] for hour in order),
        TENS_DEG if in_tens else WHOLE_DEG,
    )
