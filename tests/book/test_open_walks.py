"""A walk that is open by the day of a sit, on the page of sits and on the wind card."""

from typing import Any

from generator.book.make import make_book
from generator.plan.readers.seen_by import seen_by
from tests.book.reading import read
from tests.plan.planned import inventory_of, planned
from tests.properties import Data, small_property

OPENED = "open by then, another way in"


def hunted(**crop: Any) -> Data:
    """A stand with two walks, corn beside one of them, and two sits by it: Oct 9 and Oct 12."""
    data = small_property()
    data["property"] |= {"location_lat_lon": [41.0, -93.0], "time_zone": "America/Chicago"}
    oak = {"id": "oak", "name": "Oak", "straps_checked_on": "2026-08-01"}
    data["stands"] = {"stands": [oak]}
    corn = {"id": "corn", "kind": "field corn"} | crop
    data["routes"] = {
        "routes": [
            {"id": "walk", "name": "Walk", "serves": ["oak"], "crops_beside": [corn]},
            {"id": "bank", "name": "Bank way", "serves": ["oak"]},
        ]
    }
    data["sits"] = {
        "sits": [
            {"id": f"sit-{day[-2:]}", "sits_on": day, "from_time": "15:00", "until_time": "19:00",
             "person": "the owner", "stand": "oak", "walk_in": "walk", "walk_out": "walk"}
            for day in ("2026-10-09", "2026-10-12")
        ]
    }  # fmt: skip
    partner = {"id": "friend", "kind": "partner", "jobs": [], "stands": ["oak"], "routes": ["walk"]}
    data["readers"]["readers"].append(partner)
    return data


def words_of(data: Data, page: str, reader: str = "owner") -> list[str]:
    """The words of the rows of the first table of a page, as one reader has it."""
    plan = planned(data)
    if reader != "owner":
        plan = seen_by(plan, inventory_of(data).readers[-1])
    pages = {one.address: one.markdown for one in make_book(plan).pages}
    table = read(pages[page]).all("table")[0]
    return [" ".join(row.text().split()) for row in table.all("tr")]


def test_a_sit_after_the_cut_says_so_with_the_other_way_in() -> None:
    rows = words_of(hunted(harvest_planned_on="2026-10-10"), "sits.md")
    (before,) = (row for row in rows if "Oct 9, 2026" in row)
    (after,) = (row for row in rows if "Oct 12, 2026" in row)
    assert f"{OPENED}: Bank way" in after
    assert OPENED not in before
    assert not any(OPENED in row for row in words_of(hunted(), "sits.md"))


def test_the_card_says_from_which_day_a_walk_is_open_and_a_partner_is_told_too() -> None:
    data = hunted(harvest_planned_on="2026-10-10")
    (owner,) = (row for row in words_of(data, "winds.md") if row.startswith("First"))
    (friend,) = (row for row in words_of(data, "winds.md", "friend") if row.startswith("First"))
    assert "Walk open from Oct 10, 2026, other way: Bank way" in owner
    assert "Walk open from Oct 10, 2026" in friend
    assert "Bank way" not in friend
