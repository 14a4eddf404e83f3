"""What is on hand on the plan's day, and what jobs still need after what was used on them."""

import datetime

from generator.compute.stock import HAD, ON_HAND, STILL, THERE
from generator.inventory.log import LogEntry
from generator.plan.log.entries import bought_of, names, used_of
from generator.plan.model.items import StockItem, in_unit
from generator.working import Given, Quantity


def on_hand_now(
    item: StockItem, entries: tuple[LogEntry, ...], as_of: datetime.date, base: str
) -> Given | Quantity | None:
    """Return what is on hand: counted, and bought less used on days after the count.

    What was used or bought on the day of the count or before it is in the count. None where
    nothing is counted up to the plan's day, where entries tell of the thing but the day of the
    count is not noted, and where a use after the count was logged without its amount. Below 0
    where more was used than was there.
    """
    if item.on_hand is None or not is_dated(item, entries) or is_counted_later(item, as_of):
        return None
    if amounts_missing(item, entries):
        return None
    had: Given | Quantity = item.on_hand
    # is_dated has seen to it that nothing is logged which could be after the count
    if item.counted_on is None:
        return had
    bought = bought_of(item, entries, item.counted_on)
    if bought:
        formula = in_unit(HAD, item.unit)
        had = formula(f"{base}/had_{item.unit}", counted=had, bought=bought)
    used = used_of(item, entries, item.counted_on)
    if used:
        formula = in_unit(ON_HAND, item.unit)
        had = formula(f"{base}/on_hand_{item.unit}", had=had, used=used)
    return had


def there_to_plan_with(item: StockItem, on_hand: Given | Quantity, base: str) -> Given | Quantity:
    """Return what is on hand to plan with: nothing where the log says less than nothing."""
    if on_hand.value >= 0:
        return on_hand
    return in_unit(THERE, item.unit)(f"{base}/there_{item.unit}", on_hand=on_hand)


def is_counted_later(item: StockItem, as_of: datetime.date) -> bool:
    """Return whether the count is of a day after the plan's, so that it does not count yet."""
    return item.counted_on is not None and item.counted_on > as_of


def is_dated(item: StockItem, entries: tuple[LogEntry, ...]) -> bool:
    """Return whether the log can be told from the count: by its day, or as nothing is logged."""
    if item.counted_on is not None:
        return True
    return not any(names(item, entry) for entry in entries) and not amounts_missing(item, entries)


def amounts_missing(item: StockItem, entries: tuple[LogEntry, ...]) -> tuple[LogEntry, ...]:
    """Return the entries after the count about work that takes the thing and say no amount at all.

    An entry that says what was used says all of it. One that answers a question of a step, or
    puts it off, is about no work.
    """
    counted_on = item.counted_on
    return tuple(
        entry
        for entry in entries
        if entry.job is not None and (entry.job.planting, entry.job.step) in item.taken
        if not entry.used and entry.job.answer is None and entry.job.decide_on is None
        if counted_on is None or entry.done_on > counted_on
    )


def needed_after_use(
    planned: Quantity, item: StockItem, job_id: str, on_job: tuple[LogEntry, ...]
) -> Quantity | None:
    """Return what a job still needs of a thing, None once the log says that it is finished."""
    # finished with less than was planned, it needs no more
    if any(entry.job is not None and entry.job.finished for entry in on_job):
        return None
    used = used_of(item, on_job)
    if not used:
        return planned
    formula = in_unit(STILL, item.unit)
    return formula(f"{job_id}/{item.id}.still_needed_{item.unit}", planned=planned, used=used)
