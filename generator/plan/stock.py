"""What is on hand on the plan's day, and what jobs still need after what was used on them."""

from generator.compute.stock import HAD, ON_HAND, STILL
from generator.inventory.log import LogEntry
from generator.plan.items import StockItem, in_unit
from generator.plan.log import bought_of, names, used_of
from generator.plan.model import BudgetLine, Job
from generator.working import Given, Quantity


def on_hand_now(
    item: StockItem, entries: tuple[LogEntry, ...], base: str
) -> Given | Quantity | None:
    """Return what is on hand: counted, and bought less used on days after the count.

    What was used or bought on the day of the count or before it is in the count. None where
    nothing is counted, and where entries name the thing but the day of the count is not noted.
    """
    if item.on_hand is None or not is_dated(item, entries):
        return None
    had: Given | Quantity = item.on_hand
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


def is_dated(item: StockItem, entries: tuple[LogEntry, ...]) -> bool:
    """Return whether the log can be told from the count: by its day, or as nothing is logged."""
    return item.counted_on is not None or not any(names(item, one) for one in entries)


def still_needed(
    line: BudgetLine, job: Job, item: StockItem, entries: tuple[LogEntry, ...]
) -> Quantity | None:
    """Return what a line still needs, None once the log says that its job is finished."""
    on_job = tuple(
        one
        for one in entries
        if one.job is not None
        and (one.job.planting, one.job.step) == (job.planting_id, job.step.id)
    )
    if any(one.job is not None and one.job.finished for one in on_job):
        return None
    used = used_of(item, on_job)
    if not used:
        return line.amount
    formula = in_unit(STILL, item.unit)
    name = f"{job.id}/{item.id}.still_needed_{item.unit}"
    return formula(name, planned=line.amount, used=used)
