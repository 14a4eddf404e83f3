"""The owner's files for a spreadsheet: numbers, days and times are such, no text is a formula.

A workbook holds every number whole and shows it with the decimals that the CSV files write.
"""

import csv
import datetime
import io
import re
import zipfile
from collections.abc import Iterable, Mapping

from openpyxl import Workbook
from openpyxl.cell.cell import Cell as SheetCell
from openpyxl.cell.cell import MergedCell
from openpyxl.packaging.core import DocumentProperties
from openpyxl.styles import Font
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet
from openpyxl.xml.functions import tostring

from generator.book.cells import Cell, Table, as_number, decimals
from generator.book.record_table import record_table
from generator.book.text import clean
from generator.plan.model.days import MONTHS
from generator.plan.model.items import StockItem
from generator.plan.model.plan import Plan
from generator.plan.money.budget import (
    COLUMNS,
    table_rows,
)
from generator.plan.money.money_hours import VIEWS, rows

BUDGET_CSV, BUY_CSV, BUDGET_XLSX = "budget.csv", "buy.csv", "budget.xlsx"
RECORDS_CSV = "records.csv"
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
# A spreadsheet takes what begins so for a formula, in any width of letters.
_LIVE = re.compile(r"[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]")
_LIKE_A_NUMBER = re.compile(r"[\d.,:/\s%$()-][\d.,:/\s%$eE()-]*")
# Read as what they are, a spreadsheet shows them as they were written.
_OUR_DAY = re.compile(r"\d{4}-\d{2}-\d{2}", re.ASCII)
_OUR_TIME = re.compile(r"([01]\d|2[0-3]):[0-5]\d", re.ASCII)
_REGISTRATION = re.compile(r"\d+(-\d+){1,2}", re.ASCII)
_MONTH = "(" + "|".join(f"{month}|{month[:3]}" for month in MONTHS) + ")"
_LIKE_A_DAY = re.compile(
    rf"(\d+[-/. ]*)?{_MONTH}([-/., ]*\d+)+|\d+[-/. ]*{_MONTH}|true|false", re.IGNORECASE
)
_WIDEST, _ROOM_FOR_THE_FILTER = 40, 4
LONG_DAY, DAYS_IN_MONTH, SHORT_YEAR, FIRST_YEAR, LAST_YEAR = 3, 31, 99, 1000, 9999
_DAYS_SHOWN, _TIMES_SHOWN = "yyyy-mm-dd", "hh:mm"
_CORE, _EPOCH = "docProps/core.xml", (1980, 1, 1, 0, 0, 0)


def owner_files(plan: Plan) -> Mapping[str, bytes]:
    """Return the files that stand beside the owner's pages, by their addresses."""
    lines, buy, records = _lines(plan), _buy(plan), record_table(plan)
    return {
        BUDGET_CSV: as_csv(lines),
        BUY_CSV: as_csv(buy),
        RECORDS_CSV: as_csv(records),
        BUDGET_XLSX: as_xlsx((lines, buy, _totals(plan), records), plan.as_of),
    }


def _lines(plan: Plan) -> Table:
    found: list[tuple[Cell, ...]] = [
        tuple(row[name] for name in COLUMNS) for row in table_rows(plan.lines)
    ]
    return Table("Lines", COLUMNS, found)


def _buy(plan: Plan) -> Table:
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
    for item in plan.buying.not_yet:
        found.append(_by_name(item, "not to buy yet"))
    for late in plan.buying.too_late:
        found.append(_by_name(late.item, "too late to order, not bought"))
    for over in plan.buying.missed:
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
    writer.writerows(
        [written(value, column) for value, column in zip(row, table.columns, strict=True)]
        for row in table.rows
    )
    # without its mark a spreadsheet may read the file in an older encoding
    return text.getvalue().encode("utf-8-sig")


def written(value: Cell, column: str) -> str:
    """Return a cell of a CSV file, in which text stays text when a spreadsheet opens it.

    >>> written("=1+1", "note"), written("0042", "lot"), written(-2.5, "net_usd")
    ("'=1+1", "'0042", '-2.50')
    >>> written(datetime.date(2026, 8, 4), "done_on"), written(datetime.time(7, 10), "started_at")
    ('2026-08-04', '07:10')
    """
    if value is None:
        return ""
    if isinstance(value, str):
        text = clean(value)
        return f"'{text}" if _would_change(text) else text
    if isinstance(value, datetime.time):
        return f"{value:%H:%M}"
    if isinstance(value, datetime.date):
        return value.isoformat()
    return f"{value:.{decimals(value, column)}f}"


def _would_change(text: str) -> bool:
    """Return whether a spreadsheet may make of text a formula or show another number or day."""
    if _OUR_DAY.fullmatch(text) or _OUR_TIME.fullmatch(text):
        return False
    # stands as the label prints it, unless it could be read as a day
    if _REGISTRATION.fullmatch(text):
        return _could_be_a_day(text)
    return bool(_LIVE.match(text) or _LIKE_A_DAY.fullmatch(text)) or (
        any(letter.isdigit() for letter in text) and bool(_LIKE_A_NUMBER.fullmatch(text))
    )


def _could_be_a_day(text: str) -> bool:
    """Return whether numbers joined by hyphens could be a day or a month, in any order in use.

    >>> _could_be_a_day("10-26"), _could_be_a_day("1-2027"), _could_be_a_day("524-475")
    (True, True, False)
    """
    numbers = [int(part) for part in text.split("-")]
    if len(numbers) == LONG_DAY:
        first, second, third = numbers
        orders = ((first, second, third), (second, first, third), (second, third, first))
        return any(_month(m) and 1 <= d <= DAYS_IN_MONTH and _year(y) for m, d, y in orders)
    first, second = numbers
    return (_month(first) and _year(second)) or (_month(second) and _year(first))


def _month(number: int) -> bool:
    return 1 <= number <= len(MONTHS)


def _year(number: int) -> bool:
    """Return whether a number could be a year, of two digits or four, or else a day."""
    return number <= SHORT_YEAR or FIRST_YEAR <= number <= LAST_YEAR


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
    for place, name in enumerate(table.columns, 1):
        sheet.cell(1, place, name).font = Font(bold=True)
        longest = max((len(written(row[place - 1], name)) for row in table.rows), default=0)
        # a heading is never cut, whatever its cells hold
        width = max(min(longest, _WIDEST), len(name)) + _ROOM_FOR_THE_FILTER
        sheet.column_dimensions[get_column_letter(place)].width = width
    for number, row in enumerate(table.rows, 2):
        for place, (value, name) in enumerate(zip(row, table.columns, strict=True), 1):
            _fill_cell(sheet.cell(number, place), value, name)
    sheet.freeze_panes = "A2"
    sheet.auto_filter.ref = sheet.dimensions


def _fill_cell(cell: SheetCell | MergedCell, value: Cell, column: str) -> None:
    if isinstance(value, str):
        cell.value = clean(value)
        # whatever the text looks like, it is text and stays so when it is edited
        cell.data_type = "s"
        cell.quotePrefix = _would_change(clean(value))
        return
    cell.value = value
    if isinstance(value, datetime.date):
        cell.number_format = _DAYS_SHOWN
    elif isinstance(value, datetime.time):
        cell.number_format = _TIMES_SHOWN
    elif value is not None:
        cell.number_format = _number_shown(decimals(value, column))


def _number_shown(decimals_count: int) -> str:
    return f"#,##0.{'0' * decimals_count}" if decimals_count else "0"


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
