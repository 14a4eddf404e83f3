"""A table as CSV, in which text stays text when a spreadsheet opens it."""

import csv
import datetime
import io
import re

from generator.book.cells import Cell, decimals
from generator.book.tables import Table
from generator.book.text import clean
from generator.plan.model.days import MONTHS

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
LONG_DAY, DAYS_IN_MONTH, SHORT_YEAR, FIRST_YEAR, LAST_YEAR = 3, 31, 99, 1000, 9999


def as_csv(table: Table) -> bytes:
    """Return the table as CSV: commas, lines ended by CR LF, UTF-8 with its mark."""
    text = io.StringIO(newline="")
    writer = csv.writer(text)
    writer.writerow(table.columns)
    writer.writerows(
        [written(value, column) for value, column in zip(row, table.columns, strict=True)]
        for row in table.rows()
    )
    # without its mark a spreadsheet may read the file in an older encoding
    return text.getvalue().encode("utf-8-sig")


def written(value: Cell, column: str) -> str:
    """Return a cell of a CSV file, an apostrophe before text that a spreadsheet would change.

    >>> written("=1+1", "note"), written("0042", "lot"), written(-2.5, "net_usd")
    ("'=1+1", "'0042", '-2.50')
    >>> written(datetime.date(2026, 8, 4), "done_on"), written(datetime.time(7, 10), "started_at")
    ('2026-08-04', '07:10')
    """
    if value is None:
        return ""
    if isinstance(value, str):
        text = clean(value)
        return f"'{text}" if would_change(text) else text
    if isinstance(value, datetime.time):
        return f"{value:%H:%M}"
    if isinstance(value, datetime.date):
        return value.isoformat()
    return f"{value:.{decimals(value, column)}f}"


def would_change(text: str) -> bool:
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
