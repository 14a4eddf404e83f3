"""The page of the years ahead: the work of each later season once, on days that are left.

Worked out by hand on the small property, whose screen is kept up from before the plan's season.
"""

import re

from generator.book.make import make_book
from tests.plan.planned import planned
from tests.plan.test_years_ahead import kept
from tests.properties import SEASON, Data

ICE = "See what still hides after ice"


def season_of_page(data: Data, season: int) -> str:
    book = make_book(planned(data))
    page = next(one.markdown for one in book.pages if one.address == "ahead.md")
    found = page.partition(f"## Season {season}\n")[2].partition("\n## ")[0]
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", found))


def test_a_season_with_the_same_work_names_the_season_that_has_it() -> None:
    data = kept(SEASON - 5)
    first = season_of_page(data, SEASON + 1)
    assert f"{ICE} Jan 10 to Mar 10, {SEASON + 1} Lane screen" in first
    for season in range(SEASON + 2, SEASON + 5):
        told = season_of_page(data, season)
        assert f"The same work as in season {SEASON + 1}, on the same places" in told
        assert ICE not in told


def test_stay_out_dates_of_one_season_make_it_another() -> None:
    data = kept(SEASON - 5)
    data["dates"] = {"dates": [
        {"id": "once", "kind": "quiet", "first": f"{SEASON + 2}-02-01",
         "last": f"{SEASON + 2}-12-31", "places": ["lane"]},
    ]}  # fmt: skip
    assert f"{ICE} Jan 10 to Mar 10, {SEASON + 1}" in season_of_page(data, SEASON + 1)
    assert f"{ICE} Jan 10 to 31, {SEASON + 2}" in season_of_page(data, SEASON + 2)
    # the season after it has the work of the first, and that of the one before it no more
    assert f"{ICE} Jan 10 to Mar 10, {SEASON + 3}" in season_of_page(data, SEASON + 3)


def test_one_step_with_other_days_left_on_another_place_is_a_line_of_its_own() -> None:
    data = kept(SEASON - 5)
    spare = dict(data["screens"]["screens"][0]) | {"id": "spare", "name": "Spare screen"}
    spare["plantings"] = [dict(spare["plantings"][0]) | {"id": "spare-old"}]
    spare.pop("known_as", None)
    data["screens"]["screens"].append(spare)
    data["dates"] = {"dates": [
        {"id": "once", "kind": "quiet", "first": f"{SEASON + 1}-02-01",
         "last": f"{SEASON + 1}-12-31", "places": ["lane"]},
    ]}  # fmt: skip
    told = season_of_page(data, SEASON + 1)
    assert f"{ICE} Jan 10 to 31, {SEASON + 1} Lane screen" in told
    assert f"{ICE} Jan 10 to Mar 10, {SEASON + 1} Spare screen" in told
