"""More used than was there, of a thing that was counted or bought."""

import datetime
from collections.abc import Iterator
from dataclasses import replace
from itertools import groupby

from generator.compute.stock import HAD, ON_HAND
from generator.inventory.log import Bought, LogEntry, Used
from generator.inventory.schema import Inventory
from generator.plan.doubts.doubt import Confirmed, Doubt, day_of, is_confirmed
from generator.plan.findings.about_doubts import DoubtCaution
from generator.plan.labels.rates import ROUNDING
from generator.plan.log.entries import bought_of, names, used_of
from generator.plan.log.stock import is_counted_later
from generator.plan.model.items import StockItem, in_unit, stock_items
from generator.working import Figure, Given, Quantity


def more_used_than_there(
    inventory: Inventory,
    entries: tuple[LogEntry, ...],
    as_of: datetime.date,
    confirmed: Confirmed,
) -> Iterator[Doubt]:
    """Yield every use of more than was there on its day, by what is counted and bought.

    What was bought on a day is there for the uses of that day. Up to the day of a count, what was
    there before the first purchase is not known, so uses before it are not asked about.
    """
    for kept in stock_items(inventory):
        moved = tuple(entry for entry in entries if names(kept, entry))
        item = _as_logged(kept, moved)
        if item is None:
            continue
        # a count after the plan's day does not count yet, whatever it found
        counted = None if is_counted_later(item, as_of) else item.on_hand
        day = item.counted_on if counted is not None else None
        spans = [(counted, moved)]
        if day is not None:
            before, after = _split(moved, day)
            # a count takes in all before it, so what it finds missing is no later use's doing
            spans = [(None, before), (counted, after)]
        for at_first, in_span in spans:
            yield from _asked(item, at_first, in_span, confirmed)


def _as_logged(item: StockItem, moved: tuple[LogEntry, ...]) -> StockItem | None:
    """Return a thing in a unit its amounts can be had in; None where they cannot be added up.

    Where neither a package nor a count says how it is kept, the log says it, volume or weight.
    """
    if item.on_hand is not None or item.package is not None:
        return item
    units: dict[str, None] = {}
    for entry in moved:
        named: tuple[Used | Bought, ...] = (*entry.used, *entry.bought)
        units |= dict.fromkeys(thing.amount.unit for thing in named if thing.item == item.id)
    return replace(item, unit=next(iter(units))) if len(units) == 1 else None


def _split(
    moved: tuple[LogEntry, ...], day: datetime.date
) -> tuple[tuple[LogEntry, ...], tuple[LogEntry, ...]]:
    """Return the entries up to a day, that day included, and those after it."""
    return (
        # the day of a count belongs to it, as it does in what is on hand
        tuple(entry for entry in moved if entry.done_on <= day),
        tuple(entry for entry in moved if entry.done_on > day),
    )


def _asked(
    item: StockItem, counted: Given | None, moved: tuple[LogEntry, ...], confirmed: Confirmed
) -> Iterator[Doubt]:
    """Yield the uses in question, the first of them with what is left after it."""
    for number, entry in enumerate(_beyond(item, counted, moved)):
        if is_confirmed(confirmed, entry):
            continue
        figures: tuple[tuple[str, Figure], ...] = tuple(
            ("Used", amount) for amount in used_of(item, (entry,))
        )
        if number == 0:
            figures += (("Left by count and log", _left(item, counted, moved, entry)),)
        yield Doubt(
            DoubtCaution.MORE_USED_THAN_THERE,
            entry,
            {"item": item.words, "day": day_of(entry), "entry": entry.id},
            figures,
            item=item.id,
        )


def _beyond(
    item: StockItem, counted: Given | None, moved: tuple[LogEntry, ...]
) -> Iterator[LogEntry]:
    """Yield the entries that use more than is there; after one of them nothing is left."""
    there = counted.value if counted is not None else None
    for _, of_day in groupby(moved, key=lambda entry: entry.done_on):
        today = tuple(of_day)
        bought = [amount.value for amount in bought_of(item, today)]
        if bought:
            # before the uses of its day: what was bought that morning can be gone by night
            there = (there or 0) + sum(bought)
        for entry in today:
            used = sum(amount.value for amount in used_of(item, (entry,)))
            if there is None or not used:
                continue
            # both may have been typed in other units: a rounding error is no use of too much
            if used > there * (1 + ROUNDING) + used * ROUNDING:
                yield entry
            # nothing, not less: what is bought next is there in full
            there = max(0, there - used)


def _left(
    item: StockItem, counted: Given | None, moved: tuple[LogEntry, ...], entry: LogEntry
) -> Quantity:
    """Return what is left after the first use of too much: below nothing.

    Before a first purchase nobody knows what was there, so what was used then is left out too.
    """
    base, last = f"log/{entry.id}/{item.id}", (entry.done_on, entry.id)
    bought = [
        log_entry
        for log_entry in moved
        if log_entry.done_on <= entry.done_on and bought_of(item, (log_entry,))
    ]
    uses = [log_entry for log_entry in moved if (log_entry.done_on, log_entry.id) <= last]
    if counted is None:
        uses = [log_entry for log_entry in uses if log_entry.done_on >= bought[0].done_on]
    amounts = bought_of(item, tuple(bought))
    first, *more = (counted, *amounts) if counted is not None else amounts
    had: Given | Quantity = first
    if more:
        had = in_unit(HAD, item.unit)(f"{base}.had_{item.unit}", counted=first, bought=tuple(more))
    left = in_unit(ON_HAND, item.unit)
    return left(f"{base}.left_{item.unit}", had=had, used=used_of(item, tuple(uses)))
