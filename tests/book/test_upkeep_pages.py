"""Pages of the upkeep of stands, walks and water holes: the owner's alone."""

import datetime
import html
import re

from generator.book.make import make_book
from generator.book.model import Book
from generator.plan.build.season_plan import make_plan
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import inventory_of
from tests.plan.test_burning import standing
from tests.plan.test_upkeep import kept_up, logged
from tests.properties import SEASON, Data


def book_of(data: Data, day: str, reader: str = "owner") -> Book:
    inventory = inventory_of(data)
    as_of = datetime.date.fromisoformat(day)
    plan = make_plan(inventory, SEASON, as_of)
    return make_book(plan if reader == "owner" else seen_by(plan, inventory.readers[0]))


def pages_of(data: Data, day: str) -> dict[str, str]:
    book = book_of(data, day)
    return {
        page.address: " ".join(html.unescape(re.sub(r"<[^>]*>", " ", page.markdown)).split())
        for page in book.pages
    }


def test_the_work_of_the_season_has_them_among_the_others() -> None:
    pages = pages_of(kept_up(), "2027-07-10")
    work = pages["work.md"]
    open_now = work.split("Open now")[1].split("Waiting")[0]
    assert "Inspect stand, steps and harness" in open_now
    assert "Mow weeds above the grass" in open_now
    assert "Check gate, crossings and culverts" in work.split("Missed")[1]
    assert "Inspect stand, steps and harness" in pages["index.md"]


def test_each_has_a_sheet_with_ticks_help_and_cautions() -> None:
    sheet = pages_of(kept_up(), "2027-07-10")[f"work/oak-{SEASON}-stand_check.md"]
    for told in ("Where Oak", "Jul 1 to Aug 20, 2027", "open until Aug 20, 2027",
                 "Somebody knows where I am", "1200 Demo Ridge Road", "Poison line",
                 "Done on ____", "Where the dates come from", "Cautions"):  # fmt: skip
        assert told in sheet, told
    assert f"--job oak/{SEASON}/stand_check" in sheet
    assert "--set inspected.what=oak --set inspected.sound=true" in sheet
    done = pages_of(logged("2027-07-05"), "2027-08-25")[f"work/oak-{SEASON}-stand_check.md"]
    assert "Done on Jul 5, 2027" in " ".join(done.split())
    assert "--job" not in done
    missed = pages_of(kept_up(), "2027-08-25")[f"work/oak-{SEASON}-stand_check.md"]
    assert "The last day was Aug 20, 2027" in missed
    assert "Done on ____" not in missed


def test_the_pages_of_stand_walk_and_hole_list_their_own() -> None:
    pages = pages_of(kept_up(), "2027-07-10")
    assert "Inspect stand, steps and harness" in pages["stands/oak.md"].split("Maintenance")[1]
    assert "Rake the walk bare" in pages["routes/walk.md"].split("Work on it")[1]
    on_water = f"Maintenance in season {SEASON}"
    assert "Check ramp and banks" in pages["ground/hole.md"].split(on_water)[1]


def test_the_season_that_runs_is_told_beside_the_one_planned() -> None:
    data = kept_up()
    done = {
        "id": "round",
        "done_on": "2026-02-10",
        "upkeep": [{"at": "oak", "step": "lane_cutting"}],
    }
    data["log"] = {"entries": [done]}
    del data["stands"]["stands"][0]["straps_checked_on"]
    pages = pages_of(data, "2026-08-20")
    stand = pages["stands/oak.md"]
    # the straps were not loosened by Feb 28, 2026: that opens the page
    missed = "last day Feb 28, 2026 . Nobody climbs it until every strap has been changed."
    assert stand.index(missed) < stand.index("Where it is")
    ahead, over = stand.split("Maintenance")[1].split("Done, missed or not needed")
    assert "open , Jul 1 to Aug 20, 2026" in ahead
    assert "Jul 1 to Aug 20, 2027" in ahead
    assert "missed" not in ahead
    assert "done Feb 10, 2026" in over
    assert "last day Feb 28, 2026 , missed" in over
    # among the work of the season, what the one before still owes alone
    work = pages["work.md"]
    assert "Jul 1 to Aug 20, 2026" in work
    assert "Feb 1, 2026" not in work
    assert "Missed" not in work


def test_work_on_straps_that_an_inspection_makes_good_forbids_nothing() -> None:
    data = kept_up()
    typed = data["stands"]["stands"][0].pop("straps_checked_on")
    missed = "Nobody climbs it until every strap has been changed."
    assert missed in pages_of(data, "2026-08-20")["stands/oak.md"].split("Where it is")[0]
    data["log"] = {"entries": [
        {"id": "look", "done_on": "2026-08-01", "inspected": {"what": ["oak"], "sound": True}}
    ]}  # fmt: skip
    assert missed not in pages_of(data, "2026-08-20")["stands/oak.md"]
    del data["log"]
    data["stands"]["stands"][0]["straps_checked_on"] = typed
    assert typed > "2026-02-28"
    assert missed not in pages_of(data, "2026-08-20")["stands/oak.md"]


def test_a_stand_that_was_unsafe_opens_with_a_stop() -> None:
    data = kept_up()
    look = {"what": ["oak"], "sound": False, "found": "A step is loose"}
    data["log"] = {"entries": [{"id": "look", "done_on": "2027-07-02", "inspected": look}]}
    page = pages_of(data, "2027-07-10")["stands/oak.md"]
    stop = "Stop Oak was unsafe when it was inspected on Jul 2, 2027: A step is loose."
    assert page.index(stop) < page.index("Before you climb")
    assert "Nobody climbs it." in page


def test_a_reader_other_than_the_owner_has_none_of_it() -> None:
    data = kept_up()
    data["log"] = {"entries": [
        {"id": "look", "done_on": "2027-07-02", "upkeep": [{"at": "oak", "step": "stand_check"}],
         "inspected": {"what": ["oak"], "sound": False}}
    ]}  # fmt: skip
    with_upkeep = book_of(data, "2027-07-10", "hired")
    del data["log"]
    for name, key in (("stands", "stands"), ("routes", "routes"), ("ground", "water_holes")):
        for one in data[name][key]:
            del one["upkeep"]
    assert book_of(data, "2027-07-10", "hired") == with_upkeep
    assert book_of(data, "2027-07-10") != with_upkeep


def test_the_page_of_a_walk_says_where_to_park_and_by_which_gate_to_go_in() -> None:
    data = kept_up()
    assert "Park at" not in pages_of(data, "2027-07-10")["routes/walk.md"]
    walk = data["routes"]["routes"][0]
    walk |= {"parking_lat_lon": [41.0281, -93.0201], "gate_lat_lon": [41.0282, -93.0202]}
    page = pages_of(data, "2027-07-10")["routes/walk.md"]
    assert "Park at latitude 41.0281, longitude -93.0201" in page
    assert "Gate it goes in by latitude 41.0282, longitude -93.0202" in page


def test_the_pages_say_for_which_latitudes_the_days_of_their_upkeep_are_written() -> None:
    """As places do for their step plans: by the data of the plan, with its source."""
    pages = pages_of(kept_up(), "2027-07-10")
    ends = "days of the calendar written for 33 degrees to 47.5 degrees north"
    assert f"Inspection of a stand ; {ends} (Common practice)" in pages["stands/oak.md"]
    for page in ("routes/walk.md", "ground/hole.md"):
        assert "days of the calendar written for" in pages[page], page
    data = standing()
    planting = data["screens"]["screens"][0]["plantings"][0]
    assert planting["upkeep"] == "established_screen_upkeep"
    place = pages_of(data, "2027-01-10")["places/lane.md"]
    assert (
        "Maintenance of an established grass screen ; days of the calendar written for 38.5"
        in place
    )
