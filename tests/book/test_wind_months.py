"""The page of sits by month, read off the finished page: what it counts, and who has it."""

import datetime

from generator.book.make import make_book
from generator.plan.readers.seen_by import seen_by
from tests.book.reading import read
from tests.plan.planned import inventory_of, planned
from tests.properties import Data, small_property

BOW: Data = {"id": "bow", "kind": "hunting", "first": "2026-11-01", "last": "2026-11-30",
             "places": "all", "looked_up_on": "2026-08-01"}  # fmt: skip
OAK: Data = {
    "id": "oak",
    "name": "Oak",
    "lies": "open",
    "beds": [{"toward": 30, "distance_yd": 200}],
}


def hours_of_wind(first: datetime.date, days: int) -> str:
    """From the northwest at 10 mph in every hour, but calm at 21:00 UTC on every fifth day."""
    lines = ["time,direction_deg,speed_mph"]
    for number in range(days * 24):
        at = datetime.datetime.combine(first, datetime.time()) + datetime.timedelta(hours=number)
        wind = "0,0" if number % 120 == 21 else "315,10"
        lines.append(f"{at:%Y-%m-%dT%H:%MZ},{wind}")
    return "\n".join(lines) + "\n"


def with_wind(*stands: Data, zone: str | None = "America/Chicago") -> Data:
    data = small_property()
    data["property"]["location_lat_lon"] = [39.78, -89.65]
    if zone is not None:
        data["property"]["time_zone"] = zone
    data["stands"] = {"stands": list(stands or (OAK, {"id": "elm", "name": "Elm"}))}
    data["dates"] = {"dates": [BOW]}
    data["weather"] = {
        "wind_stations": [
            {"id": "field", "name": "Field", "file": "weather/w.csv", "kind": "plain"}
        ]
    }
    data["weather_files"] = {"w.csv": hours_of_wind(datetime.date(2025, 10, 1), 62)}
    return data


def pages(data: Data, reader: str = "owner") -> dict[str, str]:
    plan = planned(data)
    if reader != "owner":
        (one,) = (one for one in inventory_of(data).readers if one.id == reader)
        plan = seen_by(plan, one)
    return {page.address: page.markdown for page in make_book(plan).pages}


def words(page: str) -> str:
    return " ".join(read(page).text().split())


def test_hunted_months_stand_first_with_mornings_and_evenings() -> None:
    """24 of 30 evenings of November are whole, as counted by hand in tests/plan."""
    page = pages(with_wind())["wind-months.md"]
    november, october, *_ = read(page).all("table")
    assert [cell.text().strip() for cell in november.all("td")] == ["Oak", "30 of 30", "24 of 30"]
    assert [cell.text().strip() for cell in october.all("td")][:2] == ["Oak", "31 of 31"]
    assert page.index("## November") < page.index("Months without hunting dates")
    told = words(page)
    assert "neither beds nor winds it is for are typed: Elm" in told
    assert "calm 13" in told
    assert "told from 10 years on" in told
    assert "sunrise to sunset, since no rule for shooting hours is typed" in told


def test_winds_of_the_hunted_month_add_up_to_a_hundred() -> None:
    table = read(pages(with_wind())["wind-months.md"]).all("table")[-1]
    rows = [[cell.text().strip() for cell in row.all("td")] for row in table.all("tr")[1:]]
    told = {name: int(share) for name, share in rows}
    assert told["northwest"] + told["calm"] == 100
    assert told["north"] == told["no one direction"] == 0


def test_without_a_clock_nothing_is_counted_and_it_says_what_to_type() -> None:
    told = words(pages(with_wind(zone=None))["wind-months.md"])
    assert "Type location_lat_lon and time_zone in property.yaml" in told
    assert "of 30" not in told


def test_who_has_it_and_from_where_it_is_reached() -> None:
    owner, hired = pages(with_wind()), pages(with_wind(), "hired")
    for page in ("winds.md", "stands/oak.md"):
        assert "wind-months.html" in owner[page]
    assert "wind-months.md" not in hired
    assert not any("wind-months" in page for page in hired.values())
    without = with_wind()
    del without["weather"], without["weather_files"]
    assert "wind-months.md" not in pages(without)
    assert not any("wind-months" in page for page in pages(without).values())
