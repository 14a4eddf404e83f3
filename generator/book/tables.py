"""Tidy tables, and what is worked out of them by the library that has them.

The one module that needs that library, which is loaded for the owner's book alone.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, Any

from generator.book.cells import Cell
from generator.book.table_rows import LINE_COLUMNS
from generator.dataclass import dataclass

if TYPE_CHECKING:
    from pandas import DataFrame


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


def budget_table(rows: Iterable[tuple[Cell, ...]]) -> Table:
    """Return the lines of the budget as a table whose numbers can be added up."""
    table = tidy("Lines", LINE_COLUMNS, rows)
    numbers = {"season": "int64", "amount": "float64", "cost_usd": "float64"}
    return Table(table.name, table.frame.astype(numbers))


def _is_empty(value: Any) -> bool:
    # the library's mark of an empty number is one that is not even itself
    return value is None or value != value
