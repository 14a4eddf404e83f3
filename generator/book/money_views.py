"""Views of the owner's money: cost, payment and the rest by season, place, planting and thing."""

from collections.abc import Callable, Mapping

from generator.plan.model.plan import BudgetLine, Plan
from generator.plan.money.budget import WITHOUT_COST, Total, season_total, total_of
from generator.plan.money.money_hours import PAID_BY, MoneyRow, money_row
from generator.working import Quantity

VIEWS = (*PAID_BY, "item")
# What the lines of the budget are put together by, by the columns of their table.
_COLUMNS: Mapping[str, Callable[[BudgetLine], str]] = {
    "season": lambda line: str(line.season),
    "job": lambda line: line.job_id,
    "place": lambda line: line.place_id,
    "planting": lambda line: line.planting_id,
    "kind": lambda line: line.kind,
    "item": lambda line: line.item_id,
    "unit": lambda line: line.amount.unit,
}


def totals(plan: Plan, column: str) -> tuple[Total, ...]:
    """Return the cost of the plan's lines by what one column of their table says.

    Lines without a price are left out of the cost and named.
    """
    key_of, groups = _COLUMNS[column], dict[str, list[BudgetLine]]()
    for line in plan.lines:
        if line.kind != WITHOUT_COST:
            groups.setdefault(key_of(line), []).append(line)
    return tuple(
        total_of(plan.season, column, key, tuple(lines)) for key, lines in sorted(groups.items())
    )


def money_rows(plan: Plan, column: str) -> tuple[MoneyRow, ...]:
    """Return cost, payment and the rest by season, place or planting; by item, the cost alone."""
    return tuple(money_row(plan, total) for total in totals(plan, column))


def season_row(plan: Plan) -> MoneyRow | None:
    """Return the row of the plan's own season: what the season before still owes stands apart."""
    total = season_total(plan)
    return money_row(plan, total) if total is not None else None


def places_apart(plan: Plan) -> tuple[MoneyRow, ...]:
    """Return the rows by place, none where each place has one planting and they say the same."""
    places = money_rows(plan, "place")
    return places if len(places) != len(money_rows(plan, "planting")) else ()


def view_numbers(plan: Plan) -> list[Quantity | None]:
    """Return every number of the views that stand on pages."""
    mine = season_row(plan)
    shown = (
        *((mine,) if mine is not None else ()),
        *money_rows(plan, "planting"),
        *money_rows(plan, "item"),
        *places_apart(plan),
    )
    return [number for row in shown for number in (row.total.cost, row.paid_back, row.net)]
