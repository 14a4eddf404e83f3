"""Pages of counts and waits: what the demonstration does not show."""

import datetime
import html
import re

from generator.book.make import make_book
from generator.inventory.load import load_inventory
from generator.inventory.schema import PARTNER
from generator.plan.build.season_plan import make_plan
from generator.plan.model.counts import NOTHING_DECIDED
from generator.plan.readers.seen_by import seen_by
from tests.book.sites import DEMO
from tests.plan.planned import inventory_of
from tests.properties import Data, small_property


def pages_of(data: Data, day: str = "2028-07-20") -> dict[str, str]:
    """The owner's pages as Markdown, without tags, by address."""
    as_of = datetime.date.fromisoformat(day)
    book = make_book(make_plan(inventory_of(data), 2028, as_of))
    return {
        page.address: html.unescape(re.sub(r"<[^>]*>", "", page.markdown)) for page in book.pages
    }


def logged(*entries: Data) -> Data:
    data = small_property()
    data["log"] = {"entries": [{"id": f"e-{n}"} | one for n, one in enumerate(entries)]}
    return data


def test_a_count_in_rows_and_a_place_to_start_over() -> None:
    row = {"planting": "lane-27", "mean_plants_per_row_ft": 0.5, "row_spacing_in": 7.5}
    pages = pages_of(logged({"done_on": "2028-06-20", "counted": row}))
    assert "Start over" in pages["counts.md"]
    assert "8.61 plants/sq m" in pages["counts.md"]
    assert "to sow it all again" in pages["counts.md"]
    assert "Start over" in pages["places/lane.md"]


def test_a_stretch_of_ground_that_is_not_known() -> None:
    frame = {"planting": "lane-27", "placements_count": 4, "cells_with_plant_count": 8}
    data = logged({"done_on": "2028-06-20", "counted": frame | {"from_ft": 9, "to_ft": 99}})
    screen = data["screens"]["screens"][0]
    del screen["width_ft"]
    screen["area_ac"] = 1
    assert "not worked out: type width_ft of the place" in pages_of(data)["counts.md"]


def test_what_is_not_answerable_is_listed_and_what_is_nowhere_is_named() -> None:
    kill = {"planting": "lane-27", "step": "autumn_kill", "finished": True}
    used = [{"item": "brew", "amount_fl_oz": 32}]
    data = logged(
        {"done_on": "2026-09-20", "job": kill, "used": used},
        {"done_on": "2026-09-21", "used": used, "note": "along the barn"},
    )
    del data["products"]["products"][0]["label"]["uses"][0]["plant_back_days"]
    pages = pages_of(data)
    page = pages["plant-when.md"]
    assert "not answerable yet" in page
    assert "leaves out the days before other crops are sown" in pages["places/lane.md"]
    assert "along the barn" in page
    assert "No spraying is logged or planned here" in pages_of(_without_work())["plant-when.md"]


def _without_work() -> Data:
    data = small_property()
    data["screens"]["screens"][0]["plantings"][0]["work"] = []
    return data


def test_no_other_reader_is_given_counts_waits_or_weeds() -> None:
    loaded = load_inventory(DEMO)
    assert loaded.inventory is not None
    plan = make_plan(loaded.inventory, 2027, datetime.date(2026, 8, 20))
    assert plan.decided != NOTHING_DECIDED
    for reader in loaded.inventory.readers:
        seen = seen_by(plan, reader)
        assert seen.decided == NOTHING_DECIDED
        addresses = {page.address for page in make_book(seen).pages}
        assert addresses.isdisjoint({"counts.md", "plant-when.md", "weeds.md"})
        # How to count is prose for whoever hunts here too; nobody hired reads it.
        chapters = {"chapters/counting.md", "chapters/seedlings.md"}
        assert chapters & addresses == (chapters if reader.kind == PARTNER else set())
