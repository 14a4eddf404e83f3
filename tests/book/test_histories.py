"""A place, a lot and a product say what the log has of them, by day, with amounts."""

from tests.book.test_upkeep_pages import pages_of
from tests.properties import Data, full_card, full_use, small_property

SPRAYED: Data = {
    "id": "kill",
    "done_on": "2026-09-20",
    "job": {"planting": "lane-27", "step": "autumn_kill", "area_ac": 1, "finished": True},
    "used": [{"item": "brew", "amount_fl_oz": 31}],
}
SOWN: Data = {
    "id": "sown",
    "done_on": "2027-02-10",
    "job": {"planting": "lane-27", "step": "frost_seeding", "finished": True},
}


def pages(*entries: Data, day: str = "2027-03-01", data: Data | None = None) -> dict[str, str]:
    found = data or small_property()
    found["log"] = {"entries": list(entries)}
    return pages_of(found, day)


def not_allowed() -> Data:
    return small_property(full_card(full_use(allowed="no")))


def history(page: str, title: str) -> str:
    """What stands under the heading of the history, to the next fold or heading."""
    return page.split(f"## {title}")[1].split(" ## ")[0]


def test_a_spraying_stands_on_its_place_and_on_its_product_with_its_amount() -> None:
    found = pages(SPRAYED)
    here = history(found["places/lane.md"], "Sprayed and done here")
    assert "Sep 20, 2026 Kill the sod in fall: 31 fl oz" in here
    assert "on 1 ac" in here
    of_it = history(found["products/brew.md"], "Bought and used")
    assert "Sep 20, 2026 Kill the sod in fall, Lane screen : 31 fl oz on 1 ac" in of_it


def test_what_was_corrected_is_told_as_it_was_and_once() -> None:
    right = SPRAYED | {"id": "right", "corrects": "kill"}
    right["used"] = [{"item": "brew", "amount_fl_oz": 27}]
    here = history(pages(SPRAYED, right)["places/lane.md"], "Sprayed and done here")
    assert "27 fl oz" in here
    assert "31 fl oz" not in here


def test_a_spraying_that_may_have_been_here_says_perhaps() -> None:
    unknown = {"id": "old", "done_on": "2026-08-01",
               "unknown": {"products": ["brew"], "places": ["lane"], "most_fl_oz_per_ac": 40,
                           "checked_with": "the tenant"}}  # fmt: skip
    here = history(pages(unknown)["places/lane.md"], "Sprayed and done here")
    assert "Aug 1, 2026 Perhaps sprayed here , at most 40 fl oz/ac" in here


def test_a_sowing_without_an_amount_says_so_on_its_lot() -> None:
    lot = next(name for name in pages() if name.startswith("seed/"))
    without = history(pages(SOWN)[lot], "Bought and sown")
    assert "how much is not written down" in without
    used = SOWN | {"used": [{"item": lot[5:-3], "amount_lb": 9}]}
    told = history(pages(used)[lot], "Bought and sown")
    assert "Frost seed" in told
    assert "9 lb" in told
    assert "not written down" not in told


def test_a_product_says_on_what_it_is_cleared_and_on_what_it_is_not() -> None:
    cleared = pages(day="2026-08-20")["products/brew.md"]
    assert "Cleared for Kill the sod in fall: Lane screen" in cleared
    stopped = pages(day="2026-08-20", data=not_allowed())
    page = stopped["products/brew.md"]
    assert "Cleared for nothing: use it on no job that is ahead" in page
    assert "Stop Kill the sod in fall: Lane screen" in page
    # the place gives the stop where its amounts would stand
    first = {
        name: pages(day="2026-09-15", data=data)["places/lane.md"].split("## Sprayed")[0]
        for name, data in (("cleared", small_property()), ("stopped", not_allowed()))
    }
    assert "Next Kill the sod in fall" in first["cleared"]
    assert "32 fl oz" in first["cleared"]
    assert "fl oz" not in first["stopped"]
    assert "Stop :" in first["stopped"]


def test_a_lot_says_until_when_its_test_is_good() -> None:
    data = small_property()
    lot = data["seed"]["lots"][0]
    lot["tag"]["tested_on"] = "2026-05-20"
    address = f"seed/{lot['id']}.md"
    assert "good for sowing until May 20, 2027" in pages(data=data)[address]
    lot["tag"]["tested_on"] = "2026-01-05"
    assert "older than a year: test it again" in pages(data=data)[address]
