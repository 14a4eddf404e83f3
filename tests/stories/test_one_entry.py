"""One entry of the log, and everything that changes by it: a spraying of a residual.

The lane, an acre, was sown for season 2026 and counted thin in June 2027. Its residual is open from
10 to Mar 18, 2028; 32 fl oz of 4 lb in a gallon are a pound to the acre.
"""

import pytest

from tests.properties import Data, full_card, full_use, small_property
from tests.stories.land import Book, Land

SEASON = 2028
RESIDUAL = f"lane/{SEASON}/upkeep_residual"


def thin_screen() -> Data:
    waits = [{"crop": "native grass", "wait_days": 100}, {"crop": "clover", "wait_days": 400}]
    use = full_use("established_dormant", plant_back_days=waits, seeding_interval_days=100)
    data = small_property(full_card(use))
    data["property"] |= {"season": SEASON, "as_of": "2028-03-15"}
    data["property"]["season_signs"] |= {"thaw": "03-10", "grass_green_up": "04-10"}
    data["screens"]["screens"][0]["plantings"][0] |= {
        "id": "lane-26",
        "season": 2026,
        "upkeep": "established_screen_upkeep",
        "work": [
            {
                "step": "upkeep_residual",
                "product": "brew",
                "rate_product_fl_oz_per_ac": 32,
                "method": "broadcast",
                "sprayer": "boom",
            }
        ],
    }
    data["readers"]["readers"][0]["jobs"][0]["planting"] = "lane-26"
    thin = {"planting": "lane-26", "placements_count": 4, "cells_with_plant_count": 10}
    data["log"] = {"entries": [{"id": "june", "done_on": "2027-06-20", "counted": thin}]}
    return data


@pytest.fixture(scope="module")
def books(tmp_path_factory: pytest.TempPathFactory) -> tuple[Book, Book]:
    """The book of Mar 15, 2028 before and after the entry of Mar 12."""
    data = thin_screen()
    log = data.pop("log")
    land = Land(tmp_path_factory.mktemp("thin"), data)
    (land.folder / "log").mkdir()
    land.change("log/counts", log)
    before = land.book("2028-03-15", SEASON)
    land.record("2028-03-12", "--planting", "lane-26", "--step", "upkeep_residual", "--finished",
                "--used", "brew=30_fl_oz", "--area", "1_ac", "--bought", "brew=1_gal",
                "--set", "sprayed.wind_mph=5")  # fmt: skip
    return before, land.book("2028-03-15", SEASON)


def test_the_state_of_its_job(books: tuple[Book, Book]) -> None:
    before, after = books
    assert "Stateopen until Mar 18, 2028" in before.sheet(RESIDUAL)
    assert "Done on Mar 12, 2028. Do not do it again." in after.sheet(RESIDUAL)


def test_what_may_be_planted_when(books: tuple[Book, Book]) -> None:
    before, after = (book.page("plant-when.html") for book in books)
    # Mar 12, 2028 and 400 days
    assert "Apr 16, 2029" not in before
    assert "Apr 16, 2029" in after


def test_the_total_of_the_year(books: tuple[Book, Book]) -> None:
    before, after = (book.page("places/lane.html") for book in books)
    # 32 and 30 fl oz of 4 lb in a gallon
    assert "2028made-up active A, as ae1 lb/ac" in before
    assert "2028made-up active A, as ae0.938 lb/ac" in after


def test_what_is_to_be_bought(books: tuple[Book, Book]) -> None:
    before, after = (book.page("buy.html") for book in books)
    assert "Made-up product brew" in before
    assert "32 fl oz" in before
    assert "Nothing is cleared to buy" in after


def test_what_is_decided_next(books: tuple[Book, Book]) -> None:
    before, after = (book.page("counts.html") for book in books)
    assert "From when it may be sown is not known yet" in before
    # Mar 12, 2028 and 100 days
    assert "native grass may be sown from Jun 20, 2028 on" in after
