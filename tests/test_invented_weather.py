"""The demo property's weather is made from a seed, and what is shipped is what that makes."""

from generator.inventory.load import load_inventory
from generator.lookup import shipped
from tests.invented_weather import BROKEN, FIRST, LAST, daily_file, wind_file

DEMO = shipped("demo_property")
MOST_BYTES = 300_000


def test_the_shipped_records_are_made_from_their_seed() -> None:
    made = {"sample-county-farm.csv.gz": daily_file(), "sample-airfield-2025.gz": wind_file()}
    there = {one.name: one.read_bytes() for one in (DEMO / "weather").iterdir()}
    assert there == made
    assert sum(map(len, there.values())) < MOST_BYTES


def test_the_demo_says_that_its_weather_is_invented() -> None:
    inventory = load_inventory(DEMO).inventory
    assert inventory is not None
    stations = (*inventory.stations, *inventory.wind_stations)
    assert len(stations) == 2
    assert all((one.note or "").startswith("Invented.") for one in stations)


def test_the_record_has_its_years_and_the_gaps_that_were_made() -> None:
    inventory = load_inventory(DEMO).inventory
    assert inventory is not None
    (record,) = inventory.daily
    assert (record.first, record.last) == (FIRST, LAST)
    assert record.missing == sum((end - begin).days + 1 for begin, end in BROKEN)
    (wind,) = inventory.hourly_wind
    assert wind.calm > 0
    assert wind.missing > 0
    assert any(
        speed and direction is None
        for speed, direction in zip(wind.speed_mph, wind.from_deg, strict=True)
    )
