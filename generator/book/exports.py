"""The owner's files for a spreadsheet: numbers, days and times are such, no text is a formula.

A workbook holds every number whole and shows it with the decimals that the CSV files write. The
libraries that make them are slow to come and need nothing of a plan but rows, so that another
process may make them.
"""

import datetime
from collections.abc import Callable, Mapping
from typing import NamedTuple

from generator.book.cells import Cell
from generator.book.csv_table import as_csv
from generator.book.pages.written import BUDGET_CSV, BUDGET_XLSX, BUY_CSV, RECORDS_CSV
from generator.book.record_rows import RECORD_COLUMNS, record_rows
from generator.book.table_rows import (
    BUY_COLUMNS,
    TOTAL_COLUMNS,
    buying_rows,
    line_rows,
    total_rows,
)
from generator.book.tables import budget_table, tidy
from generator.book.workbook import as_xlsx
from generator.plan.model.plan import Plan

CellRows = list[tuple[Cell, ...]]


class OwnerRows(NamedTuple):
    """What the owner's files are made of."""

    lines: CellRows
    buying: CellRows
    totals: CellRows
    records: CellRows
    as_of: datetime.date


# Takes the rows, and returns what waits until the files are made of them.
Filing = Callable[[OwnerRows], Callable[[], Mapping[str, bytes]]]
NO_ROWS = OwnerRows([], [], [], [], datetime.date.min)


def owner_rows(plan: Plan) -> OwnerRows:
    """Return the rows of the owner's tables."""
    return OwnerRows(
        line_rows(plan), buying_rows(plan), total_rows(plan), record_rows(plan), plan.as_of
    )


def owner_files(rows: OwnerRows) -> Mapping[str, bytes]:
    """Return the files that stand beside the owner's pages, by their addresses."""
    lines, buy = budget_table(rows.lines), tidy("Buy", BUY_COLUMNS, rows.buying)
    totals = tidy("Totals", TOTAL_COLUMNS, rows.totals)
    records = tidy("Records", RECORD_COLUMNS, rows.records)
    return {
        BUDGET_CSV: as_csv(lines),
        BUY_CSV: as_csv(buy),
        RECORDS_CSV: as_csv(records),
        BUDGET_XLSX: as_xlsx((lines, buy, totals, records), rows.as_of),
    }


def filed_at_last(rows: OwnerRows) -> Callable[[], Mapping[str, bytes]]:
    """Have the files made when they are waited for."""
    return lambda: owner_files(rows)
