"""The budget: lines with what they cost, groups of them, and what is bought.

Every total is a group of lines, and its working is those lines.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from generator.compute.buying import NEEDED, TOTAL_USD
from generator.compute.money import USED
from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.plan.log.entries import entries_about
from generator.plan.log.stock import needed_after_use, on_hand_now, there_to_plan_with
from generator.plan.model.buying import Buying, JobNeed, Missed, Purchase, TooLate
from generator.plan.model.items import StockItem, in_unit
from generator.plan.model.job import Job
from generator.plan.model.plan import BudgetLine, Plan, grouped
from generator.plan.money.ordering import Shared, order_by, shared_out
from generator.plan.money.packages import ToBuy, to_buy
from generator.working import Given, Quantity, whole_up

WITHOUT_COST = "hours"  # your own time is counted and has no price


def priced(lines: tuple[BudgetLine, ...], items: tuple[StockItem, ...]) -> tuple[BudgetLine, ...]:
    """Return lines of things with what so much of each costs, where its price is noted."""
    by_id = {item.id: item for item in items}
    return tuple(replace(line, cost=_cost(line, by_id[line.item_id])) for line in lines)


def _cost(line: BudgetLine, item: StockItem) -> Quantity | None:
    if item.package is None or item.price_usd is None:
        return None
    return USED(
        f"{line.job_id}/{item.id}.used_usd",
        amount=line.amount,
        package_size=item.package,
        price_usd=item.price_usd,
    )


@dataclass(frozen=True, slots=True)
class Total:
    """The lines of one group and their cost together; `unpriced` are those without a price."""

    column: str
    key: str
    lines: tuple[BudgetLine, ...]
    cost: Quantity | None
    unpriced: tuple[BudgetLine, ...]


def planting_total(plan: Plan, planting_id: str) -> Total | None:
    """Return the cost of one planting, of which a contract may pay a share; None without any."""
    lines = plan.once("lines by planting", _lines_by_planting).get(planting_id, ())
    return total_of(plan.season, "planting", planting_id, lines) if lines else None


def season_total(plan: Plan) -> Total | None:
    """Return the cost of the plan's own season, without what the one before owes; None for none."""
    lines = tuple(
        line for line in plan.lines if line.season == plan.season and line.kind != WITHOUT_COST
    )
    return total_of(plan.season, "season", str(plan.season), lines) if lines else None


def _lines_by_planting(plan: Plan) -> dict[str, tuple[BudgetLine, ...]]:
    return grouped((line.planting_id, line) for line in plan.lines if line.kind != WITHOUT_COST)


def total_of(season: int, column: str, key: str, lines: tuple[BudgetLine, ...]) -> Total:
    """Return the cost of lines that say the same in one column of the budget's table."""
    costs = tuple(line.cost for line in lines if line.cost is not None)
    name = f"budget/{season}/{column}/{key}/cost_usd"
    return Total(
        column,
        key,
        lines,
        TOTAL_USD(name, parts=costs) if costs else None,
        tuple(line for line in lines if line.cost is None),
    )


def buying_of(plan: Plan) -> Buying:
    """Return what is bought for a plan that has its lines, and what is not."""
    lines: dict[str, list[BudgetLine]] = {}
    for line in plan.lines:
        lines.setdefault(line.item_id, []).append(line)
    jobs = {job.id: job for job in plan.jobs}
    purchases, late = [], []
    for item in plan.items:
        needs = list(_needs(plan.entries, item, lines.get(item.id, []), jobs))
        if not needs:
            continue
        base = f"buy/{plan.season}/{item.id}"
        on_hand = on_hand_now(item, plan.entries, plan.as_of, base)
        had = there_to_plan_with(item, on_hand, base) if on_hand is not None else None
        shared = shared_out(item, needs, had, plan.as_of)
        if shared.too_late:
            late.append(TooLate(item, shared.too_late))
        if shared.covered or shared.short:
            purchases.append(_purchase(item, shared, on_hand, had, plan.as_of, base))
    return Buying(
        tuple(sorted(purchases, key=_by_order)),
        tuple(late),
        tuple(_missed(plan)),
        tuple(_not_yet(plan)),
    )


def _by_order(purchase: Purchase) -> tuple[bool, str, str, str]:
    by, needed_from = purchase.order.by, purchase.order.needed_from
    # what is not bought at all stands last, what has no day behind what has
    return (purchase.nothing, str(by or "9999"), str(needed_from or "9999"), purchase.item.id)


def _purchase(
    item: StockItem,
    shared: Shared,
    on_hand: Given | Quantity | None,
    had: Given | Quantity | None,
    as_of: datetime.date,
    base: str,
) -> Purchase:
    # what comes too late is not bought, so it is not needed here
    parts = tuple(need for need, _ in (*shared.covered, *shared.short))
    needed = in_unit(NEEDED, item.unit)(f"{base}/needed_{item.unit}", parts=parts)
    # nothing counted: what is short is not known, and all of it is no answer
    bought = to_buy(item, needed, had, base) if had is not None else ToBuy()
    return Purchase(
        item,
        needed,
        on_hand,
        item.package,
        bought.packages,
        bought.loose,
        bought.cost,
        bought.left_over,
        bought.short,
        bought.is_nothing() or whole_up(needed.value) == 0,
        order_by(item, shared.short, as_of),
    )


def _needs(
    entries: tuple[LogEntry, ...],
    item: StockItem,
    lines: Iterable[BudgetLine],
    jobs: Mapping[str, Job],
) -> Iterator[JobNeed]:
    """Yield what each job that is not finished still needs of a thing."""
    for line in lines:
        job = jobs[line.job_id]
        on_job = entries_about(job.planting_id, job.step.id, entries)
        # what was used on a job comes off its need, whenever the thing was counted
        need = needed_after_use(line.amount, item, job.id, on_job)
        if need is not None:
            yield need, job


def cost_in_all(plan: Plan) -> Quantity | None:
    """Return the cost of everything, or None while any cost is not known."""
    bought = plan.buying.purchases
    costs = tuple(purchase.cost for purchase in bought if purchase.cost is not None)
    # a sum that leaves one out would be taken for the whole
    if not costs or len(costs) < len(bought):
        return None
    return TOTAL_USD(f"buy/{plan.season}/all/cost_usd", parts=costs)


def _missed(plan: Plan) -> Iterator[Missed]:
    over = [job for job in plan.jobs if job.state.kind == "missed"]
    for item in plan.items:
        jobs = tuple(job for job in over if item.id in job.needs)
        if jobs:
            yield Missed(item, jobs)


def _not_yet(plan: Plan) -> Iterator[StockItem]:
    needed = {line.item_id for line in plan.lines}
    stopped = plan.stopped()
    held = {
        item for job in plan.jobs if job.id in stopped and job.state.is_ahead for item in job.needs
    }
    # what another job takes as well is on the list already
    yield from (item for item in plan.items if item.id in held - needed)
