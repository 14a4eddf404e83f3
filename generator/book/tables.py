"""The owner's tables: budget, what to buy and spray records, tidy.

The one module that needs the library of tables, which is loaded for the owner's book alone.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, Any

from generator.book.cells import Cell, as_number
from generator.book.record_rows import RECORD_COLUMNS, record_rows
from generator.dataclass import dataclass
from generator.plan.model.items import StockItem
from generator.plan.model.plan import Plan

if TYPE_CHECKING:
    from pandas import DataFrame

LINE_COLUMNS = (
    "season", "job", "place", "planting", "kind", "item", "amount", "unit", "cost_usd",
)  # fmt: skip
BUY_COLUMNS = (
    "item", "kind", "item_words", "unit", "needed", "on_hand", "package", "packages_count",
    "loose_amount", "price_usd", "cost_usd", "left_over", "short",
    "needed_from", "order_by", "state",
)  # fmt: skip
STATES = {
    "by": "order by the day",
    "now": "order now: it comes within the open dates",
    "late": "too late for the open dates of a job",
    "no_lead": "order-by day not known",
    "no_dates": "open dates not known",
}


@dataclass(frozen=True, slots=True, eq=False)
class Table:
    """A tidy table with its name: a thing a row, its cells plain values or empty."""

    name: str
    frame: DataFrame

    @property
    def columns(self) -> tuple[str, ...]:
        """The names of the columns."""
        return tuple(map(str, self.frame.columns))

    def rows(self) -> Iterator[tuple[Cell, ...]]:
        """Yield the rows; an empty cell is None."""
        for row in self.frame.itertuples(index=False, name=None):
            yield tuple(None if _is_empty(value) else value for value in row)


def tidy(name: str, columns: tuple[str, ...], rows: Iterable[tuple[Cell, ...]]) -> Table:
    """Return a table of rows, each cell kept as it is."""
    from pandas import DataFrame

    return Table(name, DataFrame(list(rows), columns=list(columns), dtype=object))


def budget_table(plan: Plan) -> Table:
    """Return the lines of the budget, a job's need of one thing a row."""
    table = tidy(
        "Lines",
        LINE_COLUMNS,
        (
            (
                line.season, line.job_id, line.place_id, line.planting_id, line.kind, line.item_id,
                line.amount.value, line.amount.unit, as_number(line.cost),
            )
            for line in plan.lines
        ),
    )  # fmt: skip
    numbers = {"season": "int64", "amount": "float64", "cost_usd": "float64"}
    return Table(table.name, table.frame.astype(numbers))


def buying_table(plan: Plan) -> Table:
    """Return what to buy; its name alone of what waits, comes too late or is missed."""
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
    return tidy("Buy", BUY_COLUMNS, found)


def _by_name(item: StockItem, state: str) -> tuple[Cell, ...]:
    nothing = (None,) * (len(BUY_COLUMNS) - 4)
    return (item.id, item.kind, item.words, *nothing, state)


def record_table(plan: Plan) -> Table:
    """Return the spray records, a row for each product of each of them."""
    return tidy("Records", RECORD_COLUMNS, record_rows(plan))


def _is_empty(value: Any) -> bool:
    # the library's mark of an empty number is one that is not even itself
    return value is None or value != value
