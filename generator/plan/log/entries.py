"""What the log says on the plan's day: entries that count, and amounts of one thing in them."""

import datetime
from collections.abc import Iterator
from dataclasses import replace

from generator.inventory.log import Bought, LogEntry, Used
from generator.plan.log.told import Sprayings, unsettled
from generator.plan.model.items import StockItem, amount_in
from generator.working import Given


def entries_in_force(
    entries: tuple[LogEntry, ...], as_of: datetime.date, sprayings: Sprayings
) -> tuple[LogEntry, ...]:
    """Return the entries that count on a day, in order of their days: none that was corrected.

    A correction of a later day does not count yet, so what it corrects still does. A spraying
    counts until a correction says what was sprayed instead or that nothing was; a clean-out that
    stood beside it does not.
    """
    still = unsettled(entries, sprayings, as_of)
    # a note takes no spray off the ground: only what says more of it takes its place
    corrected = _corrected(entries, as_of) - set(still)
    known = (entry for entry in entries if entry.id not in corrected and entry.done_on <= as_of)
    # what was wrong may be the clean-out: a tank that may not be clean counts as not clean
    kept = (replace(entry, cleaned_out=None) if entry.id in still else entry for entry in known)
    return tuple(sorted(kept, key=lambda entry: (entry.done_on, entry.id)))


def _corrected(entries: tuple[LogEntry, ...], as_of: datetime.date) -> set[str]:
    """Return the entries that corrections up to a day replace, and those these had replaced."""
    replaces = {entry.id: entry.corrects for entry in entries}
    found: set[str] = set()
    for entry in entries:
        at = entry.corrects if entry.done_on <= as_of else None
        # down to the first entry of a chain; `found` ends corrections that run in a circle
        while at is not None and at not in found:
            found.add(at)
            at = replaces[at]
    return found


def not_yet(entries: tuple[LogEntry, ...], as_of: datetime.date) -> tuple[LogEntry, ...]:
    """Return the entries of days after the plan's, which do not count yet."""
    corrected = {entry.corrects for entry in entries}
    return tuple(entry for entry in entries if entry.id not in corrected and entry.done_on > as_of)


def entries_about(
    planting_id: str, step_id: str, entries: tuple[LogEntry, ...]
) -> tuple[LogEntry, ...]:
    """Return the entries about one step on one planting."""
    return tuple(
        entry
        for entry in entries
        if entry.job is not None and (entry.job.planting, entry.job.step) == (planting_id, step_id)
    )


def used_of(
    item: StockItem, entries: tuple[LogEntry, ...], after: datetime.date | None = None
) -> tuple[Given, ...]:
    """Return every amount of a thing used, in its unit; with `after`, on days after that one."""
    return tuple(
        amount_in(used.amount, item.unit)
        for entry in entries
        if after is None or entry.done_on > after
        for used in _of(item, entry.used)
    )


def bought_of(
    item: StockItem, entries: tuple[LogEntry, ...], after: datetime.date | None = None
) -> tuple[Given, ...]:
    """Return every amount of a thing bought, in its unit; with `after`, on days after that one."""
    return tuple(
        amount_in(bought.amount, item.unit)
        for entry in entries
        if after is None or entry.done_on > after
        for bought in _of(item, entry.bought)
    )


def names(item: StockItem, entry: LogEntry) -> bool:
    """Return whether an entry names the thing as used or bought."""
    return any(True for _ in _of(item, (*entry.used, *entry.bought)))


def _of(item: StockItem, moved: tuple[Used | Bought, ...]) -> Iterator[Used | Bought]:
    yield from (move for move in moved if move.item == item.id)
