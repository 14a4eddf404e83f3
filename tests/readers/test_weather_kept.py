"""Weather is the owner's: others are handed dates, and never a station, a place or a record."""

import copy
from typing import Any

import pytest

from generator.book.make import make_book
from generator.book.model import Book
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import AS_OF, inventory_of
from tests.plan.weathered import NORMALS, days, weather_of, weathered
from tests.properties import SEASON, Data
from tests.readers.partnered import PARTNER

from generator.plan.build.season_plan import make_plan  # isort: skip

RECORD = days()
CANARY = "canaryzq"


def property_with_weather() -> Data:
    """Signs found in a record, a job handed to a contractor, a stand and a job to a partner."""
    data = weathered(RECORD, normals=[NORMALS])
    data["stands"] = {"stands": [{"id": "oak", "name": "Oak", "upkeep": "stand_inspection"}]}
    (contractor,) = data["readers"]["readers"]
    contractor["jobs"][0]["steps"] = ["autumn_kill", "spring_burn_down"]
    partner = copy.deepcopy(contractor) | {"id": PARTNER, "kind": "partner", "stands": ["oak"]}
    data["readers"]["readers"].append(partner)
    return data


def book_of(data: Data, number: int) -> Book:
    """The book of one of the other readers."""
    inventory = inventory_of(data)
    plan = make_plan(inventory, SEASON, AS_OF)
    return make_book(seen_by(plan, inventory.readers[number]))


def texts(book: Book) -> str:
    """All that stands in a book."""
    return repr(book)


@pytest.mark.parametrize("number", [0, 1])
def test_another_station_with_the_same_days_changes_nothing_for_others(number: int) -> None:
    data = property_with_weather()
    other = copy.deepcopy(data)
    (station,) = other["weather"]["stations"]
    station |= {"id": "elsewhere", "name": f"{CANARY} farm", "note": CANARY}
    station |= {"at_lat_lon": [45.678, -88.765], "elevation_ft": 4321}
    station["file"] = f"weather/{CANARY}.csv"
    other["weather_files"] = {f"{CANARY}.csv": data["weather_files"]["ridge.csv"]}
    other["weather"]["normals"][0]["source"] = CANARY
    other["property"]["elevation_ft"] = 321
    assert book_of(data, number) == book_of(other, number)
    assert CANARY not in texts(book_of(other, number))


@pytest.mark.parametrize("number", [0, 1])
def test_days_out_of_the_weather_are_released_as_the_same_days_typed_are(number: int) -> None:
    data = property_with_weather()
    typed = copy.deepcopy(data)
    del typed["weather"]
    del typed["weather_files"]

    def told(sign: Any) -> dict[str, str]:
        parts = ("early", "typical", "late")
        return {one: "{:02}-{:02}".format(*getattr(sign.days, one)) for one in parts}

    found = weather_of(data).signs
    typed["property"]["season_signs"] = {one.sign: told(one) for one in found}
    assert book_of(data, number) == book_of(typed, number)


@pytest.mark.parametrize("number", [0, 1])
def test_no_other_reader_has_the_page_of_signs(number: int) -> None:
    pages = {one.address for one in book_of(property_with_weather(), number).pages}
    assert "signs.md" not in pages
    assert any(one.startswith("work/") for one in pages)
    said = texts(book_of(property_with_weather(), number))
    assert "Ridge farm" not in said
    assert "weather.yaml" not in said
    assert "county pages" not in said
