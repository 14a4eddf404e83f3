"""Which log entries tell of a spraying, and what they say of it: where, what, how far bounded."""

import datetime
from collections.abc import Iterable, Iterator, Mapping

from generator.dataclass import dataclass
from generator.inventory.log import LogEntry, Used
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.working import Given


@dataclass(frozen=True, slots=True)
class Sprayings:
    """What is needed to read sprayings out of a log: products, places, steps of plantings."""

    products: Mapping[str, Product]
    places: Mapping[str, str]
    spray_steps: frozenset[tuple[str, str]]
    every_place: frozenset[str]
    planned: Mapping[tuple[str, str], tuple[str, ...]]

    def tells(self, entry: LogEntry) -> bool:
        """Whether an entry tells of a spraying, however little of it."""
        return not entry.not_done and (
            entry.sprayed is not None
            or entry.unknown is not None
            or bool(self.used(entry))
            or self._on_a_spray_job(entry)
        )

    def _on_a_spray_job(self, entry: LogEntry) -> bool:
        """Whether an entry is about a spraying of a step plan and not of a decision alone."""
        job = entry.job
        if job is None or (job.planting, job.step) not in self.spray_steps:
            return False
        # an end, ground or a part tell of work even beside an answer; an answer alone tells of none
        decides = job.answer is not None or job.decide_on is not None
        return bool(job.finished or job.area_ac is not None or job.part) or not decides

    def tells_in_full(self, entry: LogEntry) -> bool:
        """Whether an entry says where it was sprayed, with what, how much, on how much ground.

        Of a spraying on no place of the owner's the ground need not be said.
        """
        if not (self.tells(entry) and self.used(entry)):
            return False
        on_a_place = self.place_of(entry) is not None and area_of(entry) is not None
        return on_a_place or self.is_elsewhere(entry)

    def used(self, entry: LogEntry) -> tuple[Used, ...]:
        """Return what an entry used of herbicides."""
        return tuple(used for used in entry.used if used.item in self.products)

    def products_of(self, entry: LogEntry) -> tuple[str, ...]:
        """Return the ids of what was sprayed, or could have been; none where nothing tells.

        An entry about a job that names no product was of what the job was planned with.
        """
        unknown = entry.unknown.products if entry.unknown is not None else ()
        said = tuple(dict.fromkeys([*(used.item for used in self.used(entry)), *unknown]))
        if said or entry.job is None:
            return said
        return self.planned.get((entry.job.planting, entry.job.step), ())

    def place_of(self, entry: LogEntry) -> str | None:
        """Return the place of an entry's job, else the place it says was sprayed."""
        if entry.job is not None:
            return self.places[entry.job.planting]
        return entry.sprayed.place if entry.sprayed is not None else None

    def is_elsewhere(self, entry: LogEntry) -> bool:
        """Whether an entry says in words that it was on no place of the owner's."""
        said = entry.sprayed
        return self.place_of(entry) is None and said is not None and bool(said.location)

    def places_of(self, entry: LogEntry) -> frozenset[str]:
        """Return the places on which a spraying was, or may have been; none where elsewhere."""
        place, unknown = self.place_of(entry), entry.unknown
        bounded = frozenset(unknown.places) if unknown is not None else frozenset[str]()
        if place is not None:
            return bounded | {place}
        if self.is_elsewhere(entry):
            return bounded
        # where nothing tells, it may have been on any place, and weighs on all of them
        return bounded or self.every_place


def sprayings_of(inventory: Inventory) -> Sprayings:
    """Return what is needed to read sprayings out of the log of a property."""
    plantings = [
        (planting, place.id) for place in inventory.places() for planting in place.plantings
    ]
    return Sprayings(
        {product.id: product for product in inventory.products},
        {planting.id: place_id for planting, place_id in plantings},
        frozenset(
            (planting.id, step.id)
            for planting, _ in plantings
            for step in inventory.steps_of(planting)
            if step.does.sprays
        ),
        frozenset(place.id for place in inventory.places()),
        {
            (planting.id, work.step): (
                work.product,
                *(partner.product for partner in work.partners),
            )
            for planting, _ in plantings
            for work in planting.work
            if work.product is not None
        },
    )


def area_of(entry: LogEntry) -> Given | None:
    """Return the ground an entry says it was done on."""
    if entry.job is not None:
        return entry.job.area_ac
    return entry.sprayed.treated_ac if entry.sprayed is not None else None


def latest_day(entry: LogEntry) -> datetime.date:
    """Return the latest day on which the work of an entry can have been done."""
    latest = entry.unknown.latest_on if entry.unknown is not None else None
    return max(entry.done_on, latest) if latest is not None else entry.done_on


def part_told(entry: LogEntry) -> str | None:
    """Return what the owner calls the part of the place it was done on."""
    if entry.job is not None:
        return entry.job.part
    return entry.sprayed.part if entry.sprayed is not None else None


def unsettled(
    entries: Iterable[LogEntry], sprayings: Sprayings, as_of: datetime.date
) -> Mapping[str, LogEntry]:
    """Return the last correction of each corrected spraying that still counts, by its id.

    A correction settles a spraying where it tells of one in full, bounds what can no longer be
    known of it, or says that it was not done.
    """
    corrections = {
        entry.corrects: entry for entry in entries if entry.corrects and entry.done_on <= as_of
    }
    found: dict[str, LogEntry] = {}
    for entry in entries:
        if entry.id in corrections and sprayings.tells(entry):
            later = tuple(_corrections_of(entry, corrections))
            if not any(_settles(correction, sprayings) for correction in later):
                found[entry.id] = later[-1]
    return found


def _settles(correction: LogEntry, sprayings: Sprayings) -> bool:
    bounded = correction.unknown is not None
    return bool(correction.not_done) or bounded or sprayings.tells_in_full(correction)


def _corrections_of(entry: LogEntry, corrections: Mapping[str, LogEntry]) -> Iterator[LogEntry]:
    """Yield the correction of an entry, then the correction of that, to the end or around once."""
    seen: set[str] = set()
    at = corrections.get(entry.id)
    while at is not None and at.id not in seen:
        seen.add(at.id)
        yield at
        at = corrections.get(at.id)
