"""The owner's files for a spreadsheet: numbers are numbers, and no text is ever a formula."""

import csv
import datetime
import io
import re
import zipfile
from collections.abc import Iterable, Mapping

from openpyxl import Workbook
from openpyxl.packaging.core import DocumentProperties
from openpyxl.styles import Font
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet
from openpyxl.xml.functions import tostring

from generator.book.cells import Cell, Table, as_day, as_number
from generator.book.record_table import record_table
from generator.book.text import clean
from generator.plan.budget import COLUMNS, missed, not_to_buy_yet, purchases, table_rows, too_late
from generator.plan.day_words import MONTHS
from generator.plan.items import StockItem
from generator.plan.model import Plan
from generator.plan.money import VIEWS, rows

BUDGET_CSV, BUY_CSV, BUDGET_XLSX = "budget.csv", "buy.csv", "budget.xlsx"
RECORDS_CSV = "records.csv"
BUY_COLUMNS = (
    "item", "kind", "item_words", "unit", "needed", "on_hand", "package", "packages_count",
    "loose_amount", "price_usd", "cost_usd", "left_over", "needed_from", "order_by", "state",
)  # fmt: skip
TOTAL_COLUMNS = ("by", "which", "cost_usd", "paid_back_usd", "net_usd")
STATES = {
    "by": "order by the day",
    "now": "order now: it comes within the open dates",
    "late": "too late for the open dates of a job",
    "no_lead": "order-by day not known",
    "no_dates": "open dates not known",
}
# A spreadsheet takes what begins so for a formula, in any width of letters.
_LIVE = re.compile(r"[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]")
_LIKE_A_NUMBER = re.compile(r"[\d.,:/\s%$eE()-]+")
_MONTH = "(" + "|".join(f"{month}|{month[:3]}" for month in MONTHS) + ")"
_LIKE_A_DAY = re.compile(
    rf"(\d+[-/. ]*)?{_MONTH}([-/., ]*\d+)+|\d+[-/. ]*{_MONTH}|true|false", re.IGNORECASE
)
_WIDEST = 40
_CORE, _EPOCH = "docProps/core.xml", (1980, 1, 1, 0, 0, 0)


def owner_files(plan: Plan) -> Mapping[str, bytes]:
    """Return the files that stand beside the owner's pages, by their addresses."""
    lines, buy = _lines(plan), _buy(plan)
    return {
        BUDGET_CSV: as_csv(lines),
        BUY_CSV: as_csv(buy),
        RECORDS_CSV: as_csv(record_table(plan)),
        BUDGET_XLSX: as_xlsx((lines, buy, _totals(plan)), plan.as_of),
    }


def _lines(plan: Plan) -> Table:
    found = [tuple(row[name] for name in COLUMNS) for row in table_rows(plan.lines)]
    return Table("Lines", COLUMNS, found)


def _buy(plan: Plan) -> Table:
    """Return what to buy; its name alone of what waits, comes too late or is missed."""
    found: list[tuple[Cell, ...]] = [
        (
            one.item.id, one.item.kind, one.item.words, one.item.unit, as_number(one.needed),
            as_number(one.on_hand), as_number(one.package), as_number(one.packages),
            as_number(one.loose), as_number(one.item.price_usd), as_number(one.cost),
            as_number(one.left_over),
            as_day(one.order.needed_from), as_day(one.order.by),
            "nothing to buy" if one.nothing else STATES[one.order.state],
        )
        for one in purchases(plan)
    ]  # fmt: skip
    for item in not_to_buy_yet(plan):
        found.append(_by_name(item, "not to buy yet"))
    for late in too_late(plan):
        found.append(_by_name(late.item, "too late to order, not bought"))
    for over in missed(plan):
        found.append(_by_name(over.item, "missed, not bought"))
    return Table("Buy", BUY_COLUMNS, found)


def _by_name(item: StockItem, state: str) -> tuple[Cell, ...]:
    nothing = (None,) * (len(BUY_COLUMNS) - 4)
    return (item.id, item.kind, item.words, *nothing, state)


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
        for row in rows(plan, column)
    ]
    return Table("Totals", TOTAL_COLUMNS, found)


def as_csv(table: Table) -> bytes:
    """Return the table as CSV: commas, lines ended by CR LF, UTF-8 with its mark."""
    text = io.StringIO(newline="")
    writer = csv.writer(text)
    writer.writerow(table.columns)
    writer.writerows([inert_cell(value) for value in row] for row in table.rows)
    return text.getvalue().encode("utf-8-sig")


def inert_cell(value: Cell) -> str | int | float:
    """Return a cell of a CSV file in which text stays text when a spreadsheet opens it.

    >>> inert_cell("=1+1"), inert_cell("0042"), inert_cell("Lane screen"), inert_cell(-2.5)
    ("'=1+1", "'0042", 'Lane screen', -2.5)
    """
    if not isinstance(value, str):
        return "" if value is None else value
    text = clean(value)
    return f"'{text}" if _would_change(text) and not _is_our_day(text) else text


def _would_change(text: str) -> bool:
    """Return whether a spreadsheet may take text for a formula, a number or a day."""
    return bool(_LIVE.match(text) or _LIKE_A_DAY.fullmatch(text)) or (
        any(one.isdigit() for one in text) and bool(_LIKE_A_NUMBER.fullmatch(text))
    )


def _is_our_day(text: str) -> bool:
    """Return whether text is a day as we write it, which a spreadsheet reads as that day."""
    return bool(re.fullmatch(r"\d{4}-\d{2}-\d{2}", text, re.ASCII))


def as_xlsx(tables: Iterable[Table], as_of: datetime.date) -> bytes:
    """Return the tables as sheets of a workbook, the same bytes whenever it is made."""
    book = Workbook()
    book.remove(book.worksheets[0])
    for table in tables:
        _fill(book.create_sheet(table.name), table)
    made = io.BytesIO()
    book.save(made)
    return _undated(made.getvalue(), as_of)


def _fill(sheet: Worksheet, table: Table) -> None:
    for number, row in enumerate((table.columns, *table.rows), 1):
        for place, value in enumerate(row, 1):
            cell = sheet.cell(number, place)
            if isinstance(value, str):
                cell.value = clean(value)
                # whatever the text looks like, it is text and stays so when it is edited
                cell.data_type = "s"
                cell.quotePrefix = _would_change(clean(value))
            elif value is not None:
                cell.value = value
            if number == 1:
                cell.font = Font(bold=True)
    sheet.freeze_panes = "A2"
    for place, name in enumerate(table.columns, 1):
        longest = max(len(name), *(len(str(row[place - 1])) for row in table.rows), 0)
        sheet.column_dimensions[get_column_letter(place)].width = min(longest, _WIDEST) + 2


def _undated(made: bytes, as_of: datetime.date) -> bytes:
    """Return a workbook with the plan's day for the day it was made, its parts without one."""
    day = datetime.datetime.combine(as_of, datetime.time())
    about = DocumentProperties(creator="Habitat handbook", created=day, modified=day)
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(made)) as old, zipfile.ZipFile(out, "w") as new:
        for name in sorted(old.namelist()):
            part = zipfile.ZipInfo(name, _EPOCH)
            part.compress_type = zipfile.ZIP_DEFLATED
            part.create_system = 3  # the same on every system
            content = tostring(about.to_tree()) if name == _CORE else old.read(name)
            new.writestr(part, content)
    return out.getvalue()
