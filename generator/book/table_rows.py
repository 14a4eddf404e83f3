"""Budget, what to buy and totals as rows of tables: a thing a row, its cells plain or empty."""

from generator.book.cells import Cell, as_number
from generator.book.money_views import VIEWS, money_rows
from generator.plan.model.items import StockItem
from generator.plan.model.plan import Plan

LINE_COLUMNS = (
    "season", "job", "place", "planting", "kind", "item", "amount", "unit", "cost_usd",
)  # fmt: skip
BUY_COLUMNS = (
    "item", "kind", "item_words", "unit", "needed", "on_hand", "package", "packages_count",
    "loose_amount", "price_usd", "cost_usd", "left_over", "short",
    "needed_from", "order_by", "state",
)  # fmt: skip
TOTAL_COLUMNS = ("by", "which", "cost_usd", "paid_back_usd", "net_usd")
STATES = {
    "by": "order by the day",
    "now": "order now: it comes within the open dates",
    "late": "too late for the open dates of a job",
    "no_lead": "order-by day not known",
    "no_dates": "open dates not known",
}


def line_rows(plan: Plan) -> list[tuple[Cell, ...]]:
    """Return the lines of the budget, a job's need of one thing a row, under `LINE_COLUMNS`."""
    return [
        (
            line.season, line.job_id, line.place_id, line.planting_id, line.kind, line.item_id,
            line.amount.value, line.amount.unit, as_number(line.cost),
        )
        for line in plan.lines
    ]  # fmt: skip


def buying_rows(plan: Plan) -> list[tuple[Cell, ...]]:
    """Return what to buy, under `BUY_COLUMNS`; its name alone of what waits, is late or missed."""
    found: list[tuple[Cell, ...]] = [
        (
            purchase.item.id, purchase.item.kind, purchase.item.words, purchase.item.unit,
            as_number(purchase.needed), as_number(purchase.on_hand), as_number(purchase.package),
            as_number(purchase.packages), as_number(purchase.loose),
            as_number(purchase.item.price_usd), as_number(purchase.cost),
            as_number(purchase.left_over), as_number(purchase.short),
            purchase.order.needed_from, purchase.order.by,
            "nothing to buy" if purchase.nothing else STATES[purchase.order.state],
        )
        for purchase in plan.buying.purchases
    ]  # fmt: skip
    # no amount beside these names: it would be read as one to order
    found += [_by_name(item, "not to buy yet") for item in plan.buying.not_yet]
    found += [_by_name(late.item, "too late to order, not bought") for late in plan.buying.too_late]
    found += [_by_name(over.item, "missed, not bought") for over in plan.buying.missed]
    return found


def _by_name(item: StockItem, state: str) -> tuple[Cell, ...]:
    nothing = (None,) * (len(BUY_COLUMNS) - 4)
    return (item.id, item.kind, item.words, *nothing, state)


def total_rows(plan: Plan) -> list[tuple[Cell, ...]]:
    """Return cost, payment and the rest by each view of the money, under `TOTAL_COLUMNS`."""
    return [
        (
            column,
            row.total.key,
            as_number(row.total.cost),
            as_number(row.paid_back),
            as_number(row.net),
        )
        for column in VIEWS
        for row in money_rows(plan, column)
    ]
