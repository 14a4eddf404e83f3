"""The safety lines of a sheet, what belongs together on one line: nothing lost, nothing twice."""

import datetime
import re
from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import Literal

from generator.dataclass import dataclass
from generator.plan.model.days import Span
from generator.plan.model.finding import SafetyLine
from generator.plan.model.job import Job
from generator.plan.model.sits import KEEP_AWAY

SETTING_HOLDS_WITHIN = 0.01  # share of the last catch, common practice
_NUMBERS = re.compile(r"([._]\d+)+$")


@dataclass(frozen=True, slots=True)
class PartOfLine:
    """A safety line as part of a line of the sheet, with the words around what it tells."""

    line: SafetyLine
    before: str = ""
    after: str = ""


@dataclass(frozen=True, slots=True)
class JoinedLine:
    """One line of a sheet: what it is about, and all that it tells."""

    label: str
    parts: tuple[PartOfLine, ...]

    @property
    def is_blank(self) -> bool:
        """Whether nothing of it is written down: one blank then stands for all of it."""
        return all(not part.line.text and part.line.figure is None for part in self.parts)


# Lines that stand on one line, by the words it begins with; around each, what tells it apart.
_JOINED: dict[str, dict[str, tuple[str, str]]] = {
    "Back in after": {
        "label.reentry_hours": ("", "by farm-worker rules"),
        "label.reentry_elsewhere": ("elsewhere", ""),
    },
    "Wind": {
        "label.wind_low_mph": ("at least", ""),
        "label.wind_high_mph": ("at most", ""),
    },
    "Keep the spray from": {"label.setback": ("", "")},
    "Mix away from": {"label.mixing": ("", "")},
    "Slopes and soft ground": {
        "near.slope": ("", ""),
        "near.slope_pct": ("steepest", ""),
    },
    "Others here": {
        "dates.others": ("may be hunting", ""),
        "near.others": ("present:", ""),
    },
    "Gate": {"emergency.gate_words": ("", ""), "emergency.gate_lat_lon": ("", "")},
    "Begin at": {"near.block_lat_lon": ("", "")},
    "Water, wells, tile inlets": {
        "near.water_and_wells_there": ("", ""),
        "near.water_and_wells": ("also", ""),
    },
    "Lines above and below": {"near.lines_there": ("", ""), "near.lines": ("also", "")},
    "Neighboring crops, bees, dwellings": {
        "near.neighbours_there": ("", ""),
        "near.neighbours": ("also", ""),
    },
    "EPA number": {"label.epa_reg_no": ("", "")},
}
_TURNS = {key: turn for keys in _JOINED.values() for turn, key in enumerate(keys)}
_WORDS = {key: (label, around) for label, keys in _JOINED.items() for key, around in keys.items()}
BEGIN, ADDRESS = "near.block_lat_lon", "emergency.address_911"


def joined_lines(lines: Iterable[SafetyLine]) -> list[JoinedLine]:
    """Return safety lines as lines of a sheet, in the order in which each first comes."""
    gathered: dict[str, list[PartOfLine]] = {}
    for line in lines:
        label, (before, after) = _WORDS.get(_bare(line.key), (line.label, ("", "")))
        gathered.setdefault(label, []).append(PartOfLine(line, before, after))
    for label in gathered.keys() & _JOINED.keys():
        gathered[label].sort(key=lambda part: _TURNS.get(_bare(part.line.key), 0))
    return [JoinedLine(label, _told_apart(parts)) for label, parts in gathered.items()]


def _told_apart(parts: list[PartOfLine]) -> tuple[PartOfLine, ...]:
    """Return parts with the words around them, which one by itself does not need."""
    return tuple(parts) if len(parts) > 1 else (PartOfLine(parts[0].line),)


@lru_cache(maxsize=1000)
def _bare(key: str) -> str:
    """Return the key of a line without its number among several alike and that of a product."""
    return _NUMBERS.sub("", key)


@dataclass(frozen=True, slots=True)
class Ticked:
    """Lines of the one label in a tank that a box to tick says, so that no other line does."""

    wind: tuple[SafetyLine, ...] = ()
    kept_spraying: tuple[SafetyLine, ...] = ()
    kept_mixing: tuple[SafetyLine, ...] = ()
    dry: tuple[SafetyLine, ...] = ()

    def keys(self) -> frozenset[str]:
        """Return the keys of all of them."""
        every = (*self.wind, *self.kept_spraying, *self.kept_mixing, *self.dry)
        return frozenset(line.key for line in every)


def ticked_lines(job: Job, *, may_go: bool) -> Ticked:
    """Return the lines that boxes say: where one label counts, and what it prints is a figure."""
    if not may_go or job.mix is None or len(job.mix.parts) > 1:
        return Ticked()

    def named(*keys: str) -> tuple[SafetyLine, ...]:
        lines = (line for line in job.safety if _bare(line.key) in keys)
        return tuple(line for line in lines if line.figure is not None)

    return Ticked(
        wind=named("label.wind_low_mph", "label.wind_high_mph"),
        kept_spraying=named("label.setback"),
        kept_mixing=named("label.mixing"),
        dry=named("label.rainfast_hours"),
    )


@dataclass(frozen=True, slots=True)
class SheetLines:
    """The safety lines of a sheet by where they stand on it."""

    keep_away: SafetyLine | None
    call: SafetyLine
    begin: SafetyLine | None
    label: list[tuple[str | None, list[JoinedLine]]]
    ground: list[JoinedLine]
    help: list[JoinedLine]


def sheet_lines(
    safety: tuple[SafetyLine, ...], reader: str, said: frozenset[str] = frozenset()
) -> SheetLines:
    """Return safety lines in their places, without those that are `said` elsewhere on the sheet.

    Where the work begins heads the sheet of somebody who does not know the place.
    """
    (call,) = (line for line in safety if line.key == ADDRESS)
    begin = next((line for line in safety if line.key == BEGIN and reader != "owner"), None)
    away = next((line for line in safety if line.key == KEEP_AWAY), None)
    rest = [line for line in safety if line not in (call, begin, away) and line.key not in said]
    return SheetLines(
        away,
        call,
        begin,
        list(_by_product(line for line in rest if line.key.startswith("label."))),
        joined_lines(line for line in rest if not line.key.startswith(("label.", "emergency."))),
        joined_lines(line for line in rest if line.key.startswith("emergency.")),
    )


def _by_product(lines: Iterable[SafetyLine]) -> Iterator[tuple[str | None, list[JoinedLine]]]:
    """Yield what the labels say, by the product whose label it is; None where there is one."""
    by_product: dict[str | None, list[SafetyLine]] = {}
    for line in lines:
        by_product.setdefault(line.product, []).append(line)
    for product, of_it in by_product.items():
        yield product, joined_lines(of_it)


def setting_to(job: Job) -> Literal["open", "close", "keep"]:
    """Return what to do to what sows, by the share of the last catch that one pass must give."""
    share = job.numbers.get("correction_fraction") or job.numbers.get("drill_correction_fraction")
    if share is None or abs(share.value - 1) < SETTING_HOLDS_WITHIN:
        return "keep"
    return "open" if share.value > 1 else "close"


def count_days_left(usable: Iterable[Span], as_of: datetime.date) -> int:
    """Return how many of the days of a job are left as of a day, that day among them.

    >>> day = datetime.date
    >>> count_days_left([(day(2026, 9, 10), day(2026, 9, 20))], day(2026, 9, 18))
    3
    """
    return sum(max(0, (last - max(first, as_of)).days + 1) for first, last in usable)
