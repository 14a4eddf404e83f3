"""Views of the owner's money: cost, payment and the rest by season, place, planting and thing."""

from generator.book.tables import totals
from generator.plan.model.plan import Plan
from generator.plan.money.budget import season_total
from generator.plan.money.money_hours import PAID_BY, MoneyRow, money_row
from generator.working import Quantity

VIEWS = (*PAID_BY, "item")


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
