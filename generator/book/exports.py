"""The owner's files for a spreadsheet: numbers, days and times are such, no text is a formula.

A workbook holds every number whole and shows it with the decimals that the CSV files write.
"""

from collections.abc import Mapping

from generator.book.cells import Cell, as_number
from generator.book.csv_table import as_csv
from generator.book.money_views import VIEWS, money_rows
from generator.book.pages.written import BUDGET_CSV, BUDGET_XLSX, BUY_CSV, RECORDS_CSV
from generator.book.tables import Table, budget_table, buying_table, record_table, tidy
from generator.book.workbook import as_xlsx
from generator.plan.model.plan import Plan

TOTAL_COLUMNS = ("by", "which", "cost_usd", "paid_back_usd", "net_usd")


def owner_files(plan: Plan) -> Mapping[str, bytes]:
    """Return the files that stand beside the owner's pages, by their addresses."""
    lines, buy, records = budget_table(plan), buying_table(plan), record_table(plan)
    return {
        BUDGET_CSV: as_csv(lines),
        BUY_CSV: as_csv(buy),
        RECORDS_CSV: as_csv(records),
        BUDGET_XLSX: as_xlsx((lines, buy, _totals(plan), records), plan.as_of),
    }


def _totals(plan: Plan) -> Table:
    found: list[tuple[Cell, ...]] = [
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
    return tidy("Totals", TOTAL_COLUMNS, found)
