"""The stretches of a screen: which of them hide somebody on a day, and why the others do not.

A stretch hides where its low curve is tall enough and its last count found enough plants.
"""

import datetime
import itertools
import math
from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Literal

from generator.dataclass import dataclass
from generator.inventory.counted import Counted
from generator.plan.model.counts import CountSaid, Decided
from generator.plan.standing.heights import heights_on
from generator.plan.standing.heights_measured import measured_days
from generator.plan.standing.planting_curves import Growing
from generator.reference.library import values
from generator.units import convert
from generator.working import Figure, Quantity, Reference

Why = Literal["hides", "thin", "low"]
FIRST_STATION = Reference("station_ft", 0.0, "ft", "arithmetic", "where the stations begin")


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch between two stations; `ends` is None where nobody typed how long the screen is.

    `counted_on` is the day of the count that found it thin.
    """

    begins: Figure
    ends: Figure | None
    why: Why
    counted_on: datetime.date | None = None

    @property
    def hides(self) -> bool:
        """Return whether it hides somebody."""
        return self.why == "hides"

    @property
    def is_whole(self) -> bool:
        """Return whether it is the whole of a screen whose length is not known."""
        return self.begins == FIRST_STATION and self.ends is None


@dataclass(frozen=True, slots=True)
class _Cut:
    """A station at which one stretch ends and the next begins."""

    at_ft: float
    figure: Figure | None


def counts_of(decided: Decided, planting_id: str) -> tuple[CountSaid, ...]:
    """Return the counts of a planting that are still the last of some stretch."""
    return tuple(
        count
        for planted in decided.plantings
        if planted.planting.id == planting_id
        for count in planted.counts
    )


def stretches(
    growing: Growing, counts: tuple[CountSaid, ...], day: datetime.date, needed_in: float
) -> tuple[Stretch, ...]:
    """Return the stretches of a screen on a day, in order; neighbors that are alike are one."""
    found = [
        _judged(growing, counts, begins, ends, day, needed_in)
        for begins, ends in itertools.pairwise(_cuts(growing, counts))
    ]
    return tuple(_joined(found))


def thin_stretches(growing: Growing, counts: tuple[CountSaid, ...]) -> tuple[Stretch, ...]:
    """Return the stretches whose last count found too few plants, in order."""
    found = [
        _thin(counts, begins, ends) or Stretch(_figure(begins), ends.figure, "hides")
        for begins, ends in itertools.pairwise(_cuts(growing, counts))
    ]
    return tuple(stretch for stretch in _joined(found) if not stretch.hides)


def _cuts(growing: Growing, counts: Iterable[CountSaid]) -> list[_Cut]:
    """Return where stretches begin and end: at stations of counts and heights, and at the end."""
    # of heights those of the last day alone: they are what pulls the curves
    last = next(iter(measured_days(growing)), None)
    by_ft: dict[float, Figure] = dict(last.stations()) if last is not None else {}
    for count in counts:
        for station in (count.counted.from_ft, count.counted.to_ft):
            if station is not None:
                by_ft[station.value] = station
    end = (
        _Cut(growing.length.value, growing.length)
        if growing.length is not None
        else _Cut(math.inf, None)
    )
    between = [_Cut(at, by_ft[at]) for at in sorted(by_ft) if 0 < at < end.at_ft]
    return [_Cut(0.0, FIRST_STATION), *between, end]


def _judged(
    growing: Growing,
    counts: tuple[CountSaid, ...],
    begins: _Cut,
    ends: _Cut,
    day: datetime.date,
    needed_in: float,
) -> Stretch:
    # before the height: a tall stretch with gaps still shows who walks behind it
    thin = _thin(counts, begins, ends)
    if thin is not None:
        return thin
    heights = heights_on(growing.part(begins.at_ft, ends.at_ft), day, ("low",))
    tall = heights is not None and heights.by_curve["low"].value >= needed_in
    return Stretch(_figure(begins), ends.figure, "hides" if tall else "low")


def _thin(counts: Iterable[CountSaid], begins: _Cut, ends: _Cut) -> Stretch | None:
    """Return a stretch that its last count found thin; of two counts of a day the lesser counts."""
    over = [count for count in counts if _covers(count, begins, ends)]
    if not over:
        return None
    last = max(over, key=lambda count: (count.entry.done_on, not is_enough(count.numbers)))
    if is_enough(last.numbers):
        return None
    return Stretch(_figure(begins), ends.figure, "thin", last.entry.done_on)


def _covers(count: CountSaid, begins: _Cut, ends: _Cut) -> bool:
    first, last = stations(count.counted)
    # whole or not at all: stretches are cut at both ends of every count
    return first <= begins.at_ft and ends.at_ft <= last


def _figure(cut: _Cut) -> Figure:
    assert cut.figure is not None  # the end alone may be without one
    return cut.figure


def _joined(found: Iterable[Stretch]) -> Iterator[Stretch]:
    alike = itertools.groupby(found, key=lambda stretch: (stretch.why, stretch.counted_on))
    for _, group in alike:
        first, *others = group
        yield replace(first, ends=others[-1].ends) if others else first


def stations(counted: Counted | None) -> tuple[float, float]:
    """Return where a count begins and ends, in feet; the whole place has no end."""
    if counted is None or counted.from_ft is None or counted.to_ft is None:
        return (0.0, math.inf)
    return (counted.from_ft.value, counted.to_ft.value)


def is_enough(numbers: dict[str, Quantity]) -> bool:
    """Return whether a count is enough for cover: by cells of the frame, else by plants in rows.

    A count just at the threshold is enough.
    """
    frequency = numbers.get("frequency_fraction")
    if frequency is not None:
        least = values()["cells_enough_for_cover_pct"]
        return frequency.value >= convert(least.value, least.unit, frequency.unit)
    return numbers["plants_per_sq_m"].value >= values()["enough_plants_per_sq_m"].value
