"""Tables as sheets of a workbook: every number whole, days and times as such, text as text."""

from __future__ import annotations

import datetime
import io
from collections.abc import Iterable
from typing import TYPE_CHECKING

from generator.book.cells import Cell, decimals
from generator.book.csv_table import would_change, written
from generator.book.tables import Table
from generator.book.text import clean

if TYPE_CHECKING:
    from xlsxwriter import Workbook
    from xlsxwriter.format import Format
    from xlsxwriter.worksheet import Worksheet

_WIDEST, _ROOM_FOR_THE_FILTER = 40, 4
_DAYS_SHOWN, _TIMES_SHOWN = "yyyy-mm-dd", "hh:mm"
_AS_THEY_ARE = {
    "in_memory": True,
    "strings_to_formulas": False,
    "strings_to_numbers": False,
    "strings_to_urls": False,
    "default_date_format": _DAYS_SHOWN,
}


def as_xlsx(tables: Iterable[Table], as_of: datetime.date) -> bytes:
    """Return the tables as sheets of a workbook, the same bytes whenever it is made."""
    # of no use to a reader without these files, and slow to come
    from xlsxwriter import Workbook

    made = io.BytesIO()
    book = Workbook(made, _AS_THEY_ARE)
    # its day is the plan's: a workbook made again is the same
    day = datetime.datetime.combine(as_of, datetime.time())
    book.set_properties({"author": "Habitat handbook", "created": day})
    formats = _Formats(book)
    for table in tables:
        _fill(book.add_worksheet(table.name), table, formats)
    book.close()
    return made.getvalue()


class _Formats:
    """The ways in which cells of a workbook are shown, each made once."""

    def __init__(self, book: Workbook) -> None:
        self._book = book
        self._made: dict[tuple[tuple[str, object], ...], Format] = {}

    def of(self, **how: object) -> Format:
        """Return the format of these properties."""
        key = tuple(how.items())
        if key not in self._made:
            self._made[key] = self._book.add_format(how)
        return self._made[key]


def _fill(sheet: Worksheet, table: Table, formats: _Formats) -> None:
    rows = list(table.rows())
    for place, name in enumerate(table.columns):
        sheet.write_string(0, place, name, formats.of(bold=True))
        longest = max((len(written(row[place], name)) for row in rows), default=0)
        # a heading is never cut, whatever its cells hold
        sheet.set_column(place, place, max(min(longest, _WIDEST), len(name)) + _ROOM_FOR_THE_FILTER)
        for number, row in enumerate(rows, 1):
            _fill_cell(sheet, number, place, row[place], name, formats)
    sheet.freeze_panes(1, 0)
    sheet.autofilter(0, 0, len(rows), len(table.columns) - 1)


def _fill_cell(
    sheet: Worksheet, row: int, place: int, value: Cell, column: str, formats: _Formats
) -> None:
    if value is None:
        return
    if isinstance(value, str):
        text = clean(value)
        # whatever the text looks like, it is text and stays so when it is edited
        kept = formats.of(quote_prefix=True) if would_change(text) else None
        sheet.write_string(row, place, text, kept)
    elif isinstance(value, datetime.date):
        sheet.write_datetime(row, place, value, formats.of(num_format=_DAYS_SHOWN))
    elif isinstance(value, datetime.time):
        sheet.write_datetime(row, place, value, formats.of(num_format=_TIMES_SHOWN))
    else:
        shown = formats.of(num_format=_number_shown(decimals(value, column)))
        sheet.write_number(row, place, value, shown)


def _number_shown(decimals_count: int) -> str:
    return f"#,##0.{'0' * decimals_count}" if decimals_count else "0"
