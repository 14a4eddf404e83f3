"""The budget: one tidy table of lines, and its views, among them what to buy.

Every total is a group of lines, and its working is those lines.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from generator.compute.buying import NEEDED, TOTAL_USD
from generator.compute.money import USED
from generator.plan.log.entries import entries_about
from generator.plan.log.stock import needed_after_use, on_hand_now, there_to_plan_with
from generator.plan.model.finding import stopped_in
from generator.plan.model.items import StockItem, in_unit
from generator.plan.model.job import Job
from generator.plan.model.plan import BudgetLine, Plan
from generator.plan.money.ordering import JobNeed, Order, Shared, order_by, shared_out
from generator.plan.money.packages import ToBuy, to_buy
from generator.working import Given, Quantity, whole_up

if TYPE_CHECKING:
    from pandas import DataFrame

COLUMNS = ("season", "job", "place", "planting", "kind", "item", "amount", "unit", "cost_usd")
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


def table_rows(lines: tuple[BudgetLine, ...]) -> list[dict[str, str | int | float | None]]:
    """Return the lines as rows of plain values under `COLUMNS`, a cost not known as None."""
    return [
        {
            "season": line.season,
            "job": line.job_id,
            "place": line.place_id,
            "planting": line.planting_id,
            "kind": line.kind,
            "item": line.item_id,
            "amount": line.amount.value,
            "unit": line.amount.unit,
            "cost_usd": line.cost.value if line.cost is not None else None,
        }
        for line in lines
    ]


def budget_table(lines: tuple[BudgetLine, ...]) -> DataFrame:
    """Return the budget as a tidy table: a line a row, its columns `COLUMNS`."""
    from pandas import DataFrame

    return DataFrame(table_rows(lines), columns=list(COLUMNS))


@dataclass(frozen=True, slots=True)
class Total:
    """The lines of one group and their cost together; `unpriced` are those without a price."""

    column: str
    key: str
    lines: tuple[BudgetLine, ...]
    cost: Quantity | None
    unpriced: tuple[BudgetLine, ...]


def totals(plan: Plan, column: str) -> tuple[Total, ...]:
    """Return the cost of the plan's lines by what one column of the table says.

    Lines without a price are left out of the cost and named. Pages ask for this: the library of
    tables takes longer to start than all of it.
    """
    costing = _costing(plan)
    groups: dict[Any, list[BudgetLine]] = {}
    for line, row in zip(costing, table_rows(costing), strict=True):
        # by the row, so that pages and the table group by one and the same value
        groups.setdefault(row[column], []).append(line)
    return tuple(_total(plan, column, str(key), tuple(groups[key])) for key in sorted(groups))


def planting_total(plan: Plan, planting_id: str) -> Total | None:
    """Return the cost of one planting, as `totals` has it; None where nothing of it costs.

    A check plans too and stays light: this asks for no table.
    """
    lines = tuple(line for line in _costing(plan) if line.planting_id == planting_id)
    return _total(plan, "planting", planting_id, lines) if lines else None


def _costing(plan: Plan) -> tuple[BudgetLine, ...]:
    return tuple(line for line in plan.lines if line.kind != WITHOUT_COST)


def _total(plan: Plan, column: str, key: str, lines: tuple[BudgetLine, ...]) -> Total:
    costs = tuple(line.cost for line in lines if line.cost is not None)
    name = f"budget/{plan.season}/{column}/{key}/cost_usd"
    return Total(
        column,
        key,
        lines,
        TOTAL_USD(name, parts=costs) if costs else None,
        tuple(line for line in lines if line.cost is None),
    )


@dataclass(frozen=True, slots=True)
class Purchase:
    """One thing to buy: need, on hand, packages, cost and what is left, where they are known.

    `loose` stands in place of packages where the weight itself is bought; `nothing` says that
    nothing has to be bought; `short` is what is let go, where no package is bought for so little.
    """

    item: StockItem
    needed: Quantity
    on_hand: Given | Quantity | None
    package: Given | None
    packages: Quantity | None
    loose: Quantity | None
    cost: Quantity | None
    left_over: Quantity | None
    short: Quantity | None
    nothing: bool
    order: Order


@dataclass(frozen=True, slots=True)
class TooLate:
    """A thing not bought for jobs that lack it, since it comes after their last open day."""

    item: StockItem
    needs: tuple[JobNeed, ...]


@dataclass(frozen=True, slots=True)
class Missed:
    """A thing not bought for jobs whose open dates are over and that the log does not finish."""

    item: StockItem
    jobs: tuple[Job, ...]


def purchases(plan: Plan) -> tuple[Purchase, ...]:
    """Return what jobs still need that can still get it, the first to order first."""
    found = (_purchase(plan, item) for item in plan.items)
    return tuple(sorted((purchase for purchase in found if purchase is not None), key=_by_order))


def _by_order(purchase: Purchase) -> tuple[bool, str, str, str]:
    by, needed_from = purchase.order.by, purchase.order.needed_from
    # what is not bought at all stands last, what has no day behind what has
    return (purchase.nothing, str(by or "9999"), str(needed_from or "9999"), purchase.item.id)


def _purchase(plan: Plan, item: StockItem) -> Purchase | None:
    base = f"buy/{plan.season}/{item.id}"
    shared = _shared(plan, item)
    # what comes too late is not bought, so it is not needed here
    parts = tuple(need for need, _ in (*shared.covered, *shared.short))
    if not parts:
        return None
    needed = in_unit(NEEDED, item.unit)(f"{base}/needed_{item.unit}", parts=parts)
    on_hand = on_hand_now(item, plan.entries, plan.as_of, base)
    had = there_to_plan_with(item, on_hand, base) if on_hand is not None else None
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
        order_by(item, shared.short, plan.as_of),
    )


def _shared(plan: Plan, item: StockItem) -> Shared:
    """Return which jobs what is on hand of a thing reaches, and which lack it."""
    base = f"buy/{plan.season}/{item.id}"
    on_hand = on_hand_now(item, plan.entries, plan.as_of, base)
    had = there_to_plan_with(item, on_hand, base) if on_hand is not None else None
    return shared_out(item, _needs(plan, item), had, plan.as_of)


def too_late(plan: Plan) -> tuple[TooLate, ...]:
    """Return what is not bought for jobs it would come too late for, in the order of the lists."""
    found = ((item, _shared(plan, item).too_late) for item in plan.items)
    return tuple(TooLate(item, needs) for item, needs in found if needs)


def _needs(plan: Plan, item: StockItem) -> list[JobNeed]:
    """Return what each job that is not finished still needs of a thing."""
    jobs = {job.id: job for job in plan.jobs}
    found = []
    for line in plan.lines:
        if line.item_id == item.id:
            job = jobs[line.job_id]
            on_job = entries_about(job.planting_id, job.step.id, plan.entries)
            # what was used on a job comes off its need, whenever the thing was counted
            need = needed_after_use(line.amount, item, job.id, on_job)
            found += [(need, job)] if need is not None else []
    return found


def cost_in_all(plan: Plan, bought: tuple[Purchase, ...]) -> Quantity | None:
    """Return the cost of everything, or None while any cost is not known."""
    costs = tuple(purchase.cost for purchase in bought if purchase.cost is not None)
    # a sum that leaves one out would be taken for the whole
    if not costs or len(costs) < len(bought):
        return None
    return TOTAL_USD(f"buy/{plan.season}/all/cost_usd", parts=costs)


def missed(plan: Plan) -> tuple[Missed, ...]:
    """Return what is not bought for jobs whose open dates are over, in the order of the lists."""
    over = [job for job in plan.jobs if job.state.kind == "missed"]
    found = ((item, tuple(job for job in over if item.id in job.needs)) for item in plan.items)
    return tuple(Missed(item, jobs) for item, jobs in found if jobs)


def not_to_buy_yet(plan: Plan) -> tuple[StockItem, ...]:
    """Return what a stopped job needs and no other job does, in the order of the lists."""
    bought = {line.item_id for line in plan.lines}
    stopped = stopped_in(plan.findings)
    held = {
        item for job in plan.jobs if job.id in stopped and job.state.is_ahead for item in job.needs
    }
    # what another job takes as well is on the list already
    return tuple(item for item in plan.items if item.id in held - bought)
