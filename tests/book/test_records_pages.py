"""Spray records on their page, as a file for a spreadsheet, and as a form for every spraying."""

import csv
import io
from pathlib import Path

import pytest

from generator.book.exports import RECORDS_CSV
from generator.book.make import make_book
from generator.book.record_rows import RECORD_COLUMNS
from generator.plan.readers.seen_by import seen_by
from tests.book.reading import Element, read
from tests.book.sites import Site, build_sites
from tests.plan.planned import inventory_of, planned
from tests.properties import Data, small_property, the_work, write_property

FORM = "records/lane-2027-autumn_kill.html"
SPRAYED: Data = {
    "id": "e-1",
    "done_on": "2026-08-04",
    "job": {"planting": "lane-27", "step": "autumn_kill", "area_ac": 0.5},
    "used": [{"item": "brew", "amount_fl_oz": 15.5}],
    "sprayed": {"started_at": "07:10", "wind_mph": 5, "temperature_f": 63, "weeds": "=brome"},
}


def with_log(*entries: Data) -> Data:
    return small_property() | {"log": {"entries": list(entries)}}


def site_of(data: Data, folder: Path, reader: str = "owner") -> Site:
    return build_sites(write_property(folder / "property", data), folder / "sites", reader)[reader]


def text_of(element: Element) -> str:
    return " ".join(element.text().split())


def form_of(data: Data, folder: Path, reader: str = "owner") -> str:
    pages = site_of(data, folder, reader).pages()
    (page,) = [html for name, html in pages.items() if name.startswith("records/")
               and "autumn_kill" in name]  # fmt: skip
    (sheet,) = read(page).all("section", "record")
    return text_of(sheet)


def rows_of(data: Data) -> list[dict[str, str]]:
    text = make_book(planned(data)).files[RECORDS_CSV].decode("utf-8-sig")
    return list(csv.DictReader(io.StringIO(text, newline="")))


def test_a_record_shows_what_it_holds_and_names_what_it_leaves_out(tmp_path: Path) -> None:
    page = read(site_of(with_log(SPRAYED), tmp_path).pages()["records.html"])
    (record,) = page.all("section", "record")
    text = text_of(record)
    for words in ("Made-up product brew", "15.5 fl oz", "0.5 ac", "Lane screen", "Native grass",
                  "7:10 a.m.", "5 mph", "63 °F", "=brome", "Aug 4, 2028"):  # fmt: skip
        assert words in text, words
    assert "Left out: who sprayed." in text
    assert "C310" in text


def test_a_wind_not_measured_and_a_record_looked_at_again_are_said(tmp_path: Path) -> None:
    said = {"started_at": "07:10", "wind_not_measured": True}
    again = {"id": "e-2", "done_on": "2026-08-06", "confirms": ["e-1"]}
    early = SPRAYED | {"sprayed": said}
    asked = text_of(read(site_of(with_log(early), tmp_path).pages()["records.html"]))
    assert "Wind, and from wherenot measured" in asked
    # fourth of August: before the season of the job begins
    assert "C372" in asked
    assert "C374" not in asked
    settled = site_of(with_log(early, again), tmp_path / "again").pages()["records.html"]
    (record,) = read(settled).all("section", "record")
    assert "Checked again and right as it is: entry of Aug 6, 2026." in text_of(record)
    assert "C372" not in text_of(record)


def test_without_a_spraying_the_page_says_so_and_links_the_forms(tmp_path: Path) -> None:
    page = read(site_of(small_property(), tmp_path).pages()["records.html"])
    assert "No spraying is logged yet." in text_of(page)
    assert page.all("section", "record") == []
    assert FORM in [one.attributes.get("href") for one in page.all("a")]


@pytest.mark.parametrize("reader", ["owner", "hired"])
def test_a_form_holds_what_is_known_of_a_cleared_job(tmp_path: Path, reader: str) -> None:
    text = form_of(small_property(), tmp_path, reader)
    for words in ("Made-up product brew", "none, invented", "planned 32 fl oz", "planned 1 ac",
                  "Establishing native grass, invented site", "Boom, flat fan",
                  "by the catch test 18.6 gal/ac"):  # fmt: skip
        assert words in text, words
    assert ("Lane screen" in text) == (reader == "owner")


@pytest.mark.parametrize("reader", ["owner", "hired"])
def test_a_form_of_a_stopped_job_names_no_product_and_no_amount(
    tmp_path: Path, reader: str
) -> None:
    data = small_property(rate_product_fl_oz_per_ac=70)
    text = form_of(data, tmp_path, reader)
    assert "Do not spray by this paper." in text
    assert "brew" not in text
    assert "fl oz" not in text
    assert "gal/ac" not in text
    the_work(data)[0]["rate_product_fl_oz_per_ac"] = 32
    assert "Do not spray by this paper." not in form_of(data, tmp_path / "again", reader)


def test_a_finished_spraying_has_no_form(tmp_path: Path) -> None:
    done = SPRAYED | {"job": SPRAYED["job"] | {"finished": True}}
    assert FORM not in site_of(with_log(done), tmp_path).pages()
    assert FORM in site_of(with_log(SPRAYED), tmp_path / "begun").pages()


def test_records_are_the_owner_s_alone() -> None:
    data = with_log(SPRAYED)
    plan = planned(data)
    theirs = make_book(seen_by(plan, inventory_of(data).readers[0]))
    assert "records.md" not in {one.address for one in theirs.pages}
    assert RECORDS_CSV not in theirs.files
    assert "records.md" in {one.address for one in make_book(plan).pages}


def test_the_file_has_a_row_for_each_product_and_no_live_text() -> None:
    data = with_log(SPRAYED)
    (row,) = rows_of(data)
    assert list(row) == list(RECORD_COLUMNS)
    told = {
        "done_on": "2026-08-04",
        "product": "Made-up product brew",
        "amount": "15.50",
        "unit": "fl_oz",
        "area_ac": "0.50",
        "place": "Lane screen",
        "started_at": "07:10",
        "wind_mph": "5",
        "weeds": "'=brome",
        "keep_until": "2028-08-04",
    }
    assert {name: row[name] for name in told} == told
    assert row["left_out"].startswith("who sprayed, time ended")
    assert not row["confirmed_by"] + row["could_be_products"] + row["checked_with"]
    other = dict(data["products"]["products"][0]) | {"id": "other", "name": "Other"}
    data["products"]["products"].append(other)
    second = {"item": "other", "amount_fl_oz": 2}
    data["log"]["entries"] = [SPRAYED | {"used": [*SPRAYED["used"], second]}]
    assert [one["product"] for one in rows_of(data)] == ["Made-up product brew", "Other"]
    assert rows_of(small_property()) == []


def test_the_file_holds_what_can_no_longer_be_known_and_who_looked_again() -> None:
    bounded = {
        "products": ["brew"], "most_fl_oz_per_ac": 32, "places": ["lane"],
        "latest_on": "2026-08-06", "checked_with": "the receipt",
    }  # fmt: skip
    job = SPRAYED["job"] | {"part": "north half"}
    entry = SPRAYED | {"job": job, "unknown": bounded, "recorded_on": "2026-08-07"}
    again = {"id": "e-2", "done_on": "2026-08-08", "confirms": ["e-1"]}
    (row,) = rows_of(with_log(entry, again))
    told = {
        "part": "north half",
        "recorded_on": "2026-08-07",
        "could_be_products": "Made-up product brew",
        "at_most": "32.00",
        "at_most_unit": "fl_oz_per_ac",
        "could_be_places": "Lane screen",
        "latest_on": "2026-08-06",
        "checked_with": "the receipt",
        "confirmed_by": "e-2",
    }
    assert {name: row[name] for name in told} == told


def test_a_sprayer_shows_what_went_through_it_and_the_look_for_drift(tmp_path: Path) -> None:
    seen = {"place": "lane", "clean": False, "found": "beans curled"}
    looked = {"id": "e-2", "done_on": "2026-08-09", "drift_checked": seen}
    cleaned = {"id": "e-3", "done_on": "2026-08-05", "cleaned_out": {"sprayer": "boom"}}
    before = site_of(with_log(SPRAYED), tmp_path).pages()["equipment/boom.html"]
    after = site_of(with_log(SPRAYED, looked, cleaned), tmp_path / "after").pages()
    assert "not looked at" in text_of(read(before))
    assert "not cleaned out" in text_of(read(before))
    text = text_of(read(after["equipment/boom.html"]))
    assert "Aug 9, 2026, something harmed: beans curled" in text
    assert "Cleaned out Aug 5, 2026." in text
    assert "not looked at" not in text
    assert "not cleaned out" not in text
