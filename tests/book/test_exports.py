"""Files for a spreadsheet: read back they are the plan's numbers, and their text is text."""

import csv
import datetime
import html
import io
import math
import random
import re
import zipfile
from typing import Any

import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from generator.book.cells import decimals
from generator.book.csv_table import as_csv, written
from generator.book.exports import owner_files, owner_rows
from generator.book.make import make_book
from generator.book.money_views import totals
from generator.book.pages.written import (
    BUDGET_CSV,
    BUDGET_XLSX,
    BUY_CSV,
    CALENDAR,
    CALENDAR_SPANS,
    GROUND_GEOJSON,
    GROUND_GPX,
    GROUND_KML,
    RECORDS_CSV,
)
from generator.book.record_rows import RECORD_COLUMNS
from generator.book.table_rows import line_rows
from generator.book.tables import budget_table, tidy
from generator.book.text import clean
from generator.book.workbook import as_xlsx
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from tests.book.hostile import SHEETS, VECTORS
from tests.book.sites import DEMO, plans_of
from tests.plan.planned import inventory_of, planned
from tests.properties import SEASON, full_card, full_use, property_data, small_property

DAY = datetime.date(2026, 8, 20)
Cells = list[dict[str, Any]]


@pytest.fixture(scope="module", params=["demo", 1, 2])
def plan(request: pytest.FixtureRequest) -> Plan:
    if request.param == "demo":
        return plans_of(DEMO)["owner"]
    return planned(property_data(request.param, random.Random(request.param).randint(3, 6)))


def shown(value: float) -> float:
    """The value as a CSV file has it: two decimals, or two digits of what is smaller."""
    return float(f"{value:.2f}" if abs(value) >= 0.1 or not value else f"{value:.1e}")


def same(read: float | None, value: float | None) -> bool:
    """Whether a cell is the value: a workbook is written with sixteen digits."""
    if read is None or value is None:
        return read is value
    return math.isclose(read, value, rel_tol=1e-15)


def as_day(cell: str | datetime.datetime | None) -> datetime.date | None:
    """The day in a cell: in a workbook it is one, in a CSV file its ISO 8601 text."""
    if isinstance(cell, datetime.datetime):
        assert cell.time() == datetime.time()
        return cell.date()
    return datetime.date.fromisoformat(cell) if cell else None


def by_csv(content: bytes) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(content.decode("utf-8-sig"), newline="")))


def by_openpyxl(content: bytes, sheet: str) -> Cells:
    found = load_workbook(io.BytesIO(content))[sheet]
    assert isinstance(found, Worksheet)
    head, *rows = [[cell.value for cell in row] for row in found.iter_rows()]
    return [dict(zip(map(str, head), row, strict=True)) for row in rows]


def by_pandas(content: bytes) -> pd.DataFrame:
    return pd.read_csv(io.BytesIO(content), encoding="utf-8-sig")


def test_the_lines_are_the_plan_s_in_every_file(plan: Plan) -> None:
    files = owner_files(owner_rows(plan))
    wanted = [
        (line.job_id, line.item_id, line.amount.unit, line.amount.value,
         line.cost.value if line.cost is not None else None)
        for line in plan.lines
    ]  # fmt: skip
    assert len(wanted) > 3
    texts = by_csv(files[BUDGET_CSV])
    assert [(row["job"], row["item"], row["unit"]) for row in texts] == [one[:3] for one in wanted]
    numbers = [
        (float(row["amount"]), float(row["cost_usd"]) if row["cost_usd"] else None) for row in texts
    ]
    assert numbers == [
        (shown(amount), shown(cost) if cost is not None else None) for *_, amount, cost in wanted
    ]
    sheet = by_openpyxl(files[BUDGET_XLSX], "Lines")
    found = [
        (row["job"], row["item"], row["unit"], row["amount"], row["cost_usd"]) for row in sheet
    ]
    assert [one[:3] for one in found] == [one[:3] for one in wanted]
    for one, other in zip(found, wanted, strict=True):
        assert all(same(a, b) for a, b in zip(one[3:], other[3:], strict=True))
    table = budget_table(line_rows(plan)).frame
    for name in ("amount", "cost_usd"):
        table[name] = table[name].map(shown, na_action="ignore")
    pd.testing.assert_frame_equal(by_pandas(files[BUDGET_CSV]), table, check_dtype=False)
    assert by_pandas(files[BUDGET_CSV])["amount"].dtype == float


def test_what_to_buy_is_the_plan_s_in_both_files(plan: Plan) -> None:
    files = owner_files(owner_rows(plan))
    bought, waiting = plan.buying.purchases, plan.buying.not_yet
    late = [one.item.id for one in plan.buying.too_late]
    over = [one.item.id for one in plan.buying.missed]
    for rows, as_told in (
        (by_csv(files[BUY_CSV]), shown),
        (by_openpyxl(files[BUDGET_XLSX], "Buy"), float),
    ):
        assert [row["item"] for row in rows] == [
            *(one.item.id for one in bought),
            *(one.id for one in waiting),
            *late,
            *over,
        ]
        for row, one in zip(rows, bought, strict=False):
            figures = {
                "needed": one.needed,
                "on_hand": one.on_hand,
                "packages_count": one.packages,
                "loose_amount": one.loose,
                "cost_usd": one.cost,
                "left_over": one.left_over,
                "short": one.short,
            }
            for name, figure in figures.items():
                assert bool(row[name] not in ("", None)) == (figure is not None)
                if figure is not None:
                    assert same(float(row[name]), as_told(figure.value))
            assert row["unit"] == one.item.unit
            for name, day in (("order_by", one.order.by), ("needed_from", one.order.needed_from)):
                assert as_day(row[name]) == day
        named = rows[len(bought) :]
        for row in named:
            told = {name for name, value in row.items() if value not in ("", None)}
            assert told == {"item", "kind", "item_words", "state"}
        states = ["not to buy yet"] * len(waiting)
        states += ["too late to order, not bought"] * len(late) + ["missed, not bought"] * len(over)
        assert [row["state"] for row in named] == states


def test_what_is_short_has_a_column_of_its_own() -> None:
    # An acre takes 32 fl oz of what is sold by the gallon: none is bought for the one that lacks.
    data = small_property()
    data["products"]["products"][0]["on_hand_fl_oz"] = 31
    files = owner_files(owner_rows(planned(data)))
    for rows in (by_csv(files[BUY_CSV]), by_openpyxl(files[BUDGET_XLSX], "Buy")):
        by_item = {row["item"]: row for row in rows}
        assert float(by_item["brew"]["short"]) == 1
        assert by_item["brew"]["left_over"] in ("", None)
        assert by_item["sg"]["short"] in ("", None)


def test_totals_are_the_plan_s(plan: Plan) -> None:
    rows = by_openpyxl(owner_files(owner_rows(plan))[BUDGET_XLSX], "Totals")
    found = {(row["by"], row["which"]): row["cost_usd"] for row in rows}
    for column in ("season", "place", "planting", "item"):
        for one in totals(plan, column):
            cost = one.cost.value if one.cost else None
            assert same(found.pop((column, one.key)), cost)
    assert found == {}


def test_a_stopped_product_is_in_no_row_with_an_amount() -> None:
    use = full_use(covers={"kinds": ["clover"], "species": ["any"], "land": "any",
                           "places": ["any"]})  # fmt: skip
    files = owner_files(owner_rows(planned(small_property(full_card(use)))))
    assert [row["item"] for row in by_csv(files[BUDGET_CSV])] == ["sg"]
    (brew,) = [row for row in by_csv(files[BUY_CSV]) if row["item"] == "brew"]
    assert re.findall(r"\d", "".join(brew.values())) == []


def test_what_is_missed_stands_by_its_name_alone() -> None:
    inventory = inventory_of(small_property())
    late = datetime.date(2026, 9, 28)  # the day after the last one of the fall kill
    plan = make_plan(inventory, SEASON, late)
    (brew,) = [
        row for row in by_csv(owner_files(owner_rows(plan))[BUY_CSV]) if row["item"] == "brew"
    ]
    assert brew["state"] == "missed, not bought"
    assert re.findall(r"\d", "".join(brew.values())) == []
    page = next(one for one in make_book(plan).pages if one.address == "buy.md")
    listed = page.markdown.partition("<summary>Missed, and not bought")[2].partition("</ul>")[0]
    (kill,) = (one for one in plan.jobs if one.step.id == "autumn_kill")
    assert f"work/{kill.address}.html" in html.unescape(listed)


def test_others_have_calendars_and_the_ground_and_no_file_for_a_spreadsheet() -> None:
    data = small_property()
    plan = planned(data)
    reader = inventory_of(data).readers[0]
    shared = {CALENDAR, CALENDAR_SPANS, GROUND_GEOJSON, GROUND_GPX, GROUND_KML}
    tables = {BUDGET_CSV, BUY_CSV, BUDGET_XLSX, RECORDS_CSV}
    assert set(make_book(plan).files) == tables | shared
    assert set(make_book(seen_by(plan, reader)).files) == shared


def test_two_runs_give_the_same_bytes(plan: Plan) -> None:
    assert owner_files(owner_rows(plan)) == owner_files(owner_rows(plan))


def test_a_workbook_is_of_the_plan_s_day(plan: Plan) -> None:
    content = owner_files(owner_rows(plan))[BUDGET_XLSX]
    about = load_workbook(io.BytesIO(content)).properties
    day = datetime.datetime.combine(plan.as_of, datetime.time())
    assert (about.created, about.modified) == (day, day)
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        assert {one.date_time for one in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        assert archive.testzip() is None


LIKE_SOMETHING_ELSE = (
    *("=1+1", "+1", "-2+3", "@SUM(A1)", "\t=1", "\r=1", " =1", "\uff1d1+1", "\uff0b1", "\uff201"),
    *("0042", "1e5", "3/4", "1,240", "$5", "(7)", "5%", "MAR-27", "3 may", "true"),
    *("25:00", "7:5:1", "10-26", "1-2027", "2027-1", "3-4-5", "31-12-26", "10-10-10", "-5"),
)


@pytest.mark.parametrize("text", [*LIKE_SOMETHING_ELSE, *SHEETS])
def test_text_that_looks_like_something_else_is_made_text(text: str) -> None:
    table = tidy("One", ("a", "b"), [(text, 2.25)])
    (row,) = by_csv(as_csv(table))
    assert row == {"a": f"'{clean(text)}", "b": "2.25"}
    cell = load_workbook(io.BytesIO(as_xlsx([table], DAY)))["One"]["A2"]
    assert (cell.value, cell.data_type, cell.quotePrefix) == (clean(text), "s", True)
    assert cell.hyperlink is None


@pytest.mark.parametrize("text", ["Lane screen", "lane/2027/autumn_kill", "lane-27", "2026-08-20",
                                  "switchgrass, lot 4", "11-52-0 blend", "marsh", "07:30", "23:59",
                                  "524-475", "62719-324", "100-1486-5905", "11-52-0",
                                  "0-0-60", "e-2", "e5", ""])  # fmt: skip
def test_plain_text_days_times_and_registration_numbers_stay_as_they_are(text: str) -> None:
    assert written(text, "note") == text
    cell = load_workbook(io.BytesIO(as_xlsx([tidy("One", ("a",), [(text,)])], DAY)))["One"]["A2"]
    assert (cell.value or "", cell.quotePrefix) == (text, False)


@pytest.mark.parametrize(
    ("value", "column", "text", "number_format"),
    [
        (7.333333333333333, "needed", "7.33", "#,##0.00"),
        (1234.5, "cost_usd", "1234.50", "#,##0.00"),
        (-0.5, "net_usd", "-0.50", "#,##0.00"),
        (0.0, "cost_usd", "0.00", "#,##0.00"),
        (0.0999, "amount", "0.10", "#,##0.00"),
        (0.0123456, "amount", "0.012", "#,##0.000"),
        (0.00456, "amount", "0.0046", "#,##0.0000"),
        (3.0, "packages_count", "3", "0"),
        (5.0, "wind_mph", "5", "0"),
        (60.800000000000004, "temperature_f", "60.80", "#,##0.00"),
        (2027, "season", "2027", "0"),
    ],
)
def test_numbers_show_two_decimals_and_the_workbook_holds_them_whole(
    value: float, column: str, text: str, number_format: str
) -> None:
    assert written(value, column) == text
    content = as_xlsx([tidy("One", (column,), [(value,)])], DAY)
    cell = load_workbook(io.BytesIO(content))["One"]["A2"]
    assert same(cell.value, value)
    assert cell.number_format == number_format
    assert number_format.count("0") - 1 == decimals(value, column)


@pytest.mark.parametrize(
    ("value", "text", "read"),
    [
        (datetime.date(2026, 8, 4), "2026-08-04", datetime.datetime(2026, 8, 4)),
        (datetime.time(7, 30), "07:30", datetime.time(7, 30)),
    ],
)
def test_days_and_times_are_such_and_no_text(
    value: datetime.date | datetime.time, text: str, read: object
) -> None:
    table = tidy("One", ("a",), [(value,)])
    assert by_csv(as_csv(table)) == [{"a": text}]
    cell = load_workbook(io.BytesIO(as_xlsx([table], DAY)))["One"]["A2"]
    assert (cell.value, cell.is_date) == (read, True)
    assert cell.number_format == ("hh:mm" if isinstance(value, datetime.time) else "yyyy-mm-dd")


def test_days_and_times_are_stored_as_the_format_counts_them() -> None:
    """ECMA-376, part 1, 18.17.4 (section from memory): days from December 30, 1899, parts of a day.

    By hand: 108 years of 365 days, 26 leap days from 1904 on, and the two days of 1899.
    """
    table = tidy("One", ("a", "b"), [(datetime.date(2008, 1, 1), datetime.time(18, 0))])
    with zipfile.ZipFile(io.BytesIO(as_xlsx([table], DAY))) as archive:
        sheet = archive.read("xl/worksheets/sheet1.xml").decode()
    assert re.findall(r"<v>([\d.]+)</v>", sheet.partition('<row r="2"')[2]) == [
        str(108 * 365 + 26 + 2),
        "0.75",
    ]


def test_every_sheet_has_a_heading_that_stays_and_a_filter(plan: Plan) -> None:
    book = load_workbook(io.BytesIO(owner_files(owner_rows(plan))[BUDGET_XLSX]))
    assert book.sheetnames == ["Lines", "Buy", "Totals", "Records"]
    for sheet in book.worksheets:
        assert sheet.freeze_panes == "A2"
        assert sheet.auto_filter.ref == sheet.dimensions
        assert all(cell.font.bold for cell in sheet[1])


def test_the_workbook_has_the_records_as_the_file_of_records_has_them(plan: Plan) -> None:
    files = owner_files(owner_rows(plan))
    sheet, file = by_openpyxl(files[BUDGET_XLSX], "Records"), by_csv(files[RECORDS_CSV])
    assert len(sheet) == len(file) >= len(plan.records)
    for row, texts in zip(sheet, file, strict=True):
        assert list(row) == list(texts) == list(RECORD_COLUMNS)
        for name in ("done_on", "recorded_on", "copy_given_on", "latest_on", "keep_until"):
            assert as_day(row[name]) == as_day(texts[name])
        for name in ("started_at", "stopped_at"):
            assert (f"{row[name]:%H:%M}" if row[name] else "") == texts[name]
        for name in ("entry", "place", "product", "by", "note"):
            assert (row[name] or "") == texts[name].removeprefix("'")


@pytest.mark.parametrize("value", [0.0, -2.5, 1e-7, 12, 1e12])
def test_numbers_stay_numbers(value: float) -> None:
    table = tidy("One", ("a",), [(value,)])
    assert float(by_csv(as_csv(table))[0]["a"]) == value
    cell = load_workbook(io.BytesIO(as_xlsx([table], DAY)))["One"]["A2"]
    assert (cell.value, cell.data_type) == (value, "n")


def _is_number(found: str) -> bool:
    """Whether a spreadsheet would read a cell as a number."""
    return bool(re.fullmatch(r"\s*[+-]?(\d+[.,]?\d*|[.,]\d+)([eE][+-]?\d+)?\s*%?", found))


TEXTS = st.text(max_size=40) | st.sampled_from(VECTORS)


@settings(max_examples=60, deadline=None)
@given(texts=st.lists(TEXTS, min_size=1, max_size=4))
def test_any_text_comes_back_as_text(texts: list[str]) -> None:
    table = tidy("One", tuple("abcd"[: len(texts)]), [tuple(texts)])
    (row,) = by_csv(as_csv(table))
    for text, found in zip(texts, row.values(), strict=True):
        assert found.removeprefix("'") == clean(text).removeprefix("'")
        assert not found.startswith(("=", "+", "-", "@", "\t", "\r"))
        assert not _is_number(found)
    content = as_xlsx([table], DAY)
    for text, cell in zip(texts, load_workbook(io.BytesIO(content))["One"][2], strict=True):
        assert (cell.value or "") == clean(text)
        assert cell.data_type in ("s", "inlineStr") or cell.value is None
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        sheet = archive.read("xl/worksheets/sheet1.xml").decode()
    assert "<f>" not in sheet
    assert "hyperlink" not in sheet


def test_a_site_carries_the_files_and_links_to_them(demo_sites: dict[str, Any]) -> None:
    owner, hired = demo_sites["owner"], demo_sites["hired-sprayer"]
    shared = (CALENDAR, CALENDAR_SPANS, GROUND_GEOJSON, GROUND_GPX, GROUND_KML)
    for name, content in owner.book.files.items():
        assert (owner.folder / name).read_bytes() == content
        assert (hired.folder / name).exists() == (name in shared)
    for page, name in (("buy.html", BUY_CSV), ("money.html", BUDGET_CSV)):
        html = (owner.folder / page).read_text(encoding="utf-8")
        assert f'href="{name}"' in html
        assert f'href="{BUDGET_XLSX}"' in html
    records = (owner.folder / "records.html").read_text(encoding="utf-8")
    assert f'href="{BUDGET_XLSX}"' in records
    assert not (hired.folder / "money.html").exists()
