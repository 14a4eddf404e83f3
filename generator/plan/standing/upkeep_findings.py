"""What stands and water holes have to be inspected for, and by when."""

import datetime
from collections.abc import Iterator

from generator.inventory.dates import HUNTED, DateRange
from generator.inventory.log import LogEntry
from generator.inventory.places import Stand
from generator.inventory.schema import Inventory
from generator.plan.findings.about_places import PlaceCaution, PlaceNote, PlaceStop
from generator.plan.findings.order import finding, older_than_a_year
from generator.plan.model.days import day_words, moved
from generator.plan.model.finding import Finding, Subject


def upkeep_findings(
    inventory: Inventory, entries: tuple[LogEntry, ...], as_of: datetime.date
) -> Iterator[Finding]:
    """Yield stands not inspected in the year before they are hunted, or unsafe, and ground.

    Of water holes, those of which nobody asked whether the ground is wet ground.
    """
    for stand in inventory.stands:
        yield from _straps(stand, inventory.dates, as_of)
        yield from _unsafe(stand, entries)
    for hole in inventory.water_holes:
        if hole.wet_ground_asked_on is None:
            yield finding(
                PlaceNote.WET_GROUND_NOT_LOOKED_UP,
                Subject("water_hole", hole.id),
                hole.where,
                hole=hole.name,
            )


def _straps(stand: Stand, dates: tuple[DateRange, ...], as_of: datetime.date) -> Iterator[Finding]:
    """Yield a caution where the last look is over a year before the next hunting, or never was.

    Where no hunting to come is typed, the plan's day stands for its first.
    """
    hunting = (typed for typed in dates if typed.kind in HUNTED)
    first = min((day for typed in hunting for day in _first_days(typed, as_of)), default=None)
    looked = stand.straps_checked_on
    if looked is not None and not older_than_a_year(looked, max(as_of, first or as_of)):
        return
    since = (
        "have no inspection on record" if looked is None else f"were inspected {day_words(looked)}"
    )
    yield finding(
        PlaceCaution.STRAPS_NOT_LOOKED_OVER,
        Subject("stand", stand.id),
        stand.where,
        stand=stand.name,
        since=since,
        begins=_begins(first, as_of),
    )


def _first_days(dates: DateRange, as_of: datetime.date) -> Iterator[datetime.date]:
    """Yield the first days of dates that are not over; of any year where they come back."""
    years = range(as_of.year - dates.last.year, as_of.year - dates.first.year + 2)
    for by in years if dates.every_year else (0,):
        # by the last day: a stand is climbed in dates that have begun as much as in those to come
        if moved(dates.last, by) >= as_of:
            yield moved(dates.first, by)


def _begins(first: datetime.date | None, as_of: datetime.date) -> str:
    """Return when the next hunting begins, or that it has begun, by its first day as typed."""
    if first is None:
        return "begins on a day that is not known"
    return f"{'began' if first < as_of else 'begins'} on {day_words(first)}"


def _unsafe(stand: Stand, entries: tuple[LogEntry, ...]) -> Iterator[Finding]:
    """Yield a stop where the log's last word on a stand is that it was unsafe.

    A look typed with the stand is of no known result, so it takes nothing back.
    """
    looks = [
        (logged, logged.inspected)
        for logged in entries
        if logged.inspected is not None
        and logged.inspected.sound is not None
        and stand.id in logged.inspected.what
    ]
    if not looks or looks[-1][1].sound:
        return
    entry, look = looks[-1]
    yield finding(
        PlaceStop.STAND_UNSAFE,
        Subject("stand", stand.id),
        look.where,
        stand=stand.name,
        day=day_words(entry.done_on),
        found=f": {look.found}" if look.found else "",
    )
