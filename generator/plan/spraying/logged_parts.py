"""Entries of one spraying told apart by the ground they may have gone over."""

import math
from collections.abc import Sequence
from itertools import pairwise

from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.plan.labels.rates import ROUNDING
from generator.plan.log.told import latest_day, part_told
from generator.plan.model.days import ONE_DAY
from generator.working import Given, Quantity


@dataclass(frozen=True, slots=True)
class PutOn:
    """So much of a product on an acre, as one entry says it; None where it does not."""

    entry: LogEntry
    rate: Given | Quantity | None
    area_ac: float | None
    too_much_ground: bool


def by_part(puts: tuple[PutOn, ...], ground_ac: float) -> tuple[tuple[PutOn, ...], ...]:
    """Return entries by the parts they name; none unless each names one and all fit."""
    parts: dict[str, list[PutOn]] = {}
    for put in puts:
        parts.setdefault(" ".join((part_told(put.entry) or "").split()).casefold(), []).append(put)
    # entries of one part went over it again, so the largest is its ground; unsaid it may be all
    areas = [max(put.area_ac or ground_ac for put in part) for part in parts.values()]
    # an entry that names no part may be of any of them
    if "" in parts or not fit_on(areas, ground_ac):
        return ()
    return tuple(map(tuple, parts.values()))


def fit_on(areas_ac: Sequence[float], ground_ac: float) -> bool:
    """Return whether areas lie beside one another on so much ground."""
    return math.fsum(areas_ac) <= ground_ac * (1 + ROUNDING)


def runs_of_days(puts: tuple[PutOn, ...]) -> list[tuple[PutOn, ...]]:
    """Return entries in groups of days in a row."""
    ordered = sorted(puts, key=lambda put: (put.entry.done_on, put.entry.id))
    runs: list[list[PutOn]] = [ordered[:1]] if ordered else []
    for before, after in pairwise(ordered):
        # the day after, work goes on beside; later it may be what did not die, sprayed again
        if after.entry.done_on - latest_day(before.entry) <= ONE_DAY:
            runs[-1].append(after)
        else:
            runs.append([after])
    return [tuple(run) for run in runs]


def most_of(run: tuple[PutOn, ...], ground_ac: float) -> tuple[PutOn, ...]:
    """Return the one entry of a run that put down most, where they may each be of other ground."""
    areas = [put.area_ac for put in run]
    if any(area is None for area in areas) or not fit_on(
        [area or 0.0 for area in areas], ground_ac
    ):
        # ground that is not said, or does not fit, may be the same: then all of it adds up
        return run
    return (max(run, key=lambda put: put.rate.value if put.rate is not None else 0.0),)
