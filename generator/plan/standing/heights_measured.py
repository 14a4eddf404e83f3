"""Heights measured of a planting on a day: which of them count along the strip, and for how much.

Between two stations the lower of both counts. What is counted on is never raised by fewer stations
than are asked, nor where they leave a gap.
"""

import datetime
import itertools
from collections.abc import Iterable, Iterator

from generator.compute.height_stations import (
    LOWEST_HEIGHT,
    MEAN_HEIGHT,
    STATIONS_WANTED,
    WIDEST_GAP_FT,
)
from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.inventory.log_seen import HeightReading
from generator.plan.standing.planting_curves import Growing
from generator.working import Given, Quantity

Feet = tuple[float, float]  # two stations, the lower first


@dataclass(frozen=True, slots=True)
class Measuring:
    """All heights measured of a planting on one day; `name` is the id of the day's first entry."""

    name: str
    day: datetime.date
    readings: tuple[HeightReading, ...]

    def stations(self) -> dict[float, Given]:
        """Return every station that was named, by its feet, in order."""
        named = (
            station
            for reading in self.readings
            for station in (reading.at_ft, reading.from_ft, reading.to_ft)
            if station is not None
        )
        return {
            station.value: station for station in sorted(named, key=lambda station: station.value)
        }

    def within(self, part_ft: Feet | None) -> tuple[Given, ...]:
        """Return the heights that count on a part of the strip; all of them on the whole.

        What was measured over a stretch counts on it, else what was measured in the part and next
        to it on either side; what names no station counts everywhere.
        """
        if part_ft is None:
            return tuple(reading.height_in for reading in self.readings)
        placed = [
            (span, reading) for reading in self.readings if (span := _span(reading)) is not None
        ]
        over = [
            reading for span, reading in placed if span[0] <= part_ft[0] and part_ft[1] <= span[1]
        ]
        near = over or list(_nearest(placed, part_ft))
        everywhere = [reading for reading in self.readings if _span(reading) is None]
        return tuple(reading.height_in for reading in (*everywhere, *near))


def _span(reading: HeightReading) -> Feet | None:
    if reading.at_ft is not None:
        return (reading.at_ft.value, reading.at_ft.value)
    if reading.from_ft is None or reading.to_ft is None:
        return None
    return (reading.from_ft.value, reading.to_ft.value)


def _nearest(placed: list[tuple[Feet, HeightReading]], part_ft: Feet) -> Iterator[HeightReading]:
    """Yield what was measured in a part, and last before it and first after it."""
    first, last = part_ft
    # between stations nobody measured: both neighbors count, and the low curve takes the lower
    before = max((span[1] for span, _ in placed if span[1] <= first), default=first)
    after = min((span[0] for span, _ in placed if span[0] >= last), default=last)
    for span, reading in placed:
        if before <= span[1] and span[0] <= after:
            yield reading


def measured_days(growing: Growing) -> tuple[Measuring, ...]:
    """Return the days on which a planting was measured, the newest first."""
    return growing.once("measured days", lambda: _by_day(growing.measured))


def _by_day(entries: Iterable[LogEntry]) -> tuple[Measuring, ...]:
    days: dict[datetime.date, list[LogEntry]] = {}
    for entry in entries:
        days.setdefault(entry.done_on, []).append(entry)
    return tuple(
        Measuring(
            told[0].id,
            day,
            tuple(
                reading for entry in told if entry.measured for reading in entry.measured.readings
            ),
        )
        for day, told in sorted(days.items(), reverse=True)
    )


def stations_wanted(growing: Growing, measuring: Measuring) -> Quantity | None:
    """Return at how many stations a planting is to be measured; None where no length is known."""
    if growing.length is None:
        return None
    base = f"height/{growing.planting.id}/{measuring.name}"
    return STATIONS_WANTED(f"{base}/stations_count", length_ft=growing.length)


def is_enough_to_lift(growing: Growing, measuring: Measuring) -> bool:
    """Return whether a day's heights may raise what is counted on: at enough stations, no gap."""
    wanted = stations_wanted(growing, measuring)
    if wanted is None or growing.length is None:
        return False
    # a set: two heights at one station are no second station
    at = {span for reading in measuring.readings if (span := _span(reading)) is not None}
    # with both ends, or stations close together would leave the rest of the strip unseen
    feet = [0.0, *measuring.stations(), growing.length.value]
    gaps = (after - before for before, after in itertools.pairwise(feet))
    return len(at) >= wanted.value and all(gap <= WIDEST_GAP_FT for gap in gaps)


def lowest_of(heights: tuple[Given, ...], base: str) -> Given | Quantity:
    """Return the lowest of some heights; one alone is itself."""
    return heights[0] if len(heights) == 1 else LOWEST_HEIGHT(base, heights_in=heights)


def mean_of(heights: tuple[Given, ...], base: str) -> Given | Quantity:
    """Return the mean of some heights; one alone is itself."""
    return heights[0] if len(heights) == 1 else MEAN_HEIGHT(base, heights_in=heights)
