"""The page of shooting hours and the pages of stands: what they say with a rule and without."""

from typing import Any

from generator.book.make import make_book
from generator.book.model import Page
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import inventory_of, planned
from tests.properties import Data, small_property

HOURS: Data = {"dates": "season", "begins": "sunrise", "begins_before_minutes": 30,
               "ends": "sunset", "ends_after_minutes": 30, "source": "booklet, invented",
               "looked_up_on": "2026-08-02"}  # fmt: skip


def hunted(*rules: Data, **at: Any) -> Data:
    """A property with a stand and a week of hunting near 41 north, and these rules."""
    data = small_property()
    data["property"] |= {"location_lat_lon": [41.03, -93.02], "time_zone": "America/Chicago"} | at
    data["property"] = {name: one for name, one in data["property"].items() if one is not None}
    data["stands"] = {"stands": [{"id": "oak", "name": "Oak"}]}
    dates = {"id": "season", "kind": "hunting", "first": "2026-09-15", "last": "2026-09-21",
             "places": "all", "looked_up_on": "2026-08-02"}  # fmt: skip
    data["dates"] = {"dates": [dates], "shooting_hours": list(rules)}
    return data


def page(data: Data, address: str) -> str:
    return next(one.markdown for one in make_book(planned(data)).pages if one.address == address)


def rows_of_hours(stand: str) -> list[str]:
    """The rows of the weeks on the page of a stand, which has other tables behind them."""
    section = stand[stand.index("hours by the week") :].partition("\n## ")[0]
    return section.partition("</table>")[0].split("<tr>")[2:]


def test_every_hunting_day_stands_with_its_hours() -> None:
    text = page(hunted(HOURS | {"id": "deer"}), "hours.md")
    assert text.count("<tr><td") == 7
    # Sep 15, 2026 by ephemeris DE421: up 06:52:45, down 19:20:58; half an hour, inwards
    first = text.partition("<tbody>")[2].partition("</tr>")[0]
    assert "Sep 15, 2026" in first
    assert [one in first for one in ("06:23", "19:50", "06:53", "19:20")] == [True] * 4
    assert "30 min" in text
    assert "not looked up" not in text


def test_without_a_rule_the_page_says_what_to_look_up_and_gives_no_hours() -> None:
    text = page(hunted(), "hours.md")
    assert "not looked up yet" in text
    assert "Look up in your state's season booklet" in text
    assert "<th>Until</th>" not in text
    assert "06:53" in text
    assert "06:23" not in text
    stand = page(hunted(), "stands/oak.md")
    assert "Shooting hours not looked up yet" in stand
    assert "<th>Until</th>" not in stand


def test_without_a_zone_the_page_asks_for_it_and_gives_no_time() -> None:
    data = hunted(HOURS | {"id": "deer"}, time_zone=None)
    text = page(data, "hours.md")
    assert "time_zone is not typed in property.yaml" in text
    assert "<table" not in text
    assert "6:27" not in page(data, "stands/oak.md")
    assert "hours by the week" in page(data, "stands/oak.md")
    assert rows_of_hours(page(data, "stands/oak.md")) == []


def test_a_stand_has_its_hours_by_the_week() -> None:
    stand = page(hunted(HOURS | {"id": "deer"}), "stands/oak.md")
    rows = rows_of_hours(stand)
    # 15 to Sep 19, then Sunday and Monday: the latest beginning, the earliest end
    assert [("06:27" in row, "19:43" in row) for row in rows] == [(True, True), (False, False)]


def test_hours_of_days_on_which_nobody_goes_in_are_struck_out() -> None:
    data = hunted(HOURS | {"id": "deer"})
    quiet = {"id": "still", "kind": "quiet", "first": "2026-09-18", "last": "2026-09-20"}
    data["dates"]["dates"].append(quiet | {"places": ["oak"]})
    stand = page(data, "stands/oak.md")
    assert "These are stay-out dates." in stand[: stand.index("hours by the week")]
    rows = rows_of_hours(stand)
    # the week is cut where the days begin, and Sunday begins another
    told = [("<s " in row and "stay out" in row) for row in rows]
    assert told == [False, True, True, False]
    # dates of another stand, or that are over, close nothing here
    data["dates"]["dates"][-1]["places"] = ["lane"]
    assert "<s " not in page(data, "stands/oak.md")


def test_the_words_of_the_season_before_stand_as_a_caution() -> None:
    old = hunted(HOURS | {"id": "deer", "looked_up_on": "2025-08-01"})
    assert "C315" in page(old, "hours.md")
    assert "C315" in page(old, "dates.md")
    assert "C315" not in page(hunted(HOURS | {"id": "deer"}), "hours.md")


def test_hours_are_the_owner_s() -> None:
    data = hunted(HOURS | {"id": "deer"})
    theirs = make_book(seen_by(planned(data), inventory_of(data).readers[0])).pages
    assert [one.address for one in theirs if _tells_hours(one)] == []


def _tells_hours(one: Page) -> bool:
    return one.address == "hours.md" or "06:23" in one.markdown or "Chicago" in one.markdown
