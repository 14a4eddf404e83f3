"""Points far from the middle of the property: a gate that 911 would be sent to, a wrong middle."""

import pytest

from generator.plan.model.finding import WHOLE_FOLDER
from generator.plan.model.plan import Plan
from tests.plan.planned import planned
from tests.properties import Data, small_property

FAR, MIDDLE = "C409", "C410"


def with_stands(data: Data | None = None) -> Data:
    data = data or small_property()
    data["stands"] = {
        "stands": [
            {"id": "oak", "name": "Oak", "at_lat_lon": [41.031, -93.021]},
            {"id": "elm", "name": "Elm", "at_lat_lon": [41.032, -93.022]},
        ]
    }
    return data


def told(plan: Plan) -> list[tuple[str, str]]:
    return [(one.code, one.subject) for one in plan.findings if one.code in (FAR, MIDDLE)]


def test_points_of_one_property_are_asked_of_nothing() -> None:
    assert told(planned(with_stands())) == []


# A degree of latitude is 69 miles: 0.28 of one are 19.3, 0.3 are 20.7.
@pytest.mark.parametrize(("latitude", "asked"), [(41.31, False), (41.33, True), (14.03, True)])
def test_a_gate_farther_than_twenty_miles_is_asked(latitude: float, asked: bool) -> None:
    data = with_stands()
    card = data["property"]["emergency"]
    card["gate_lat_lon"] = [latitude, -93.02]
    assert told(planned(data)) == ([(FAR, WHOLE_FOLDER)] if asked else [])
    for found in planned(data).findings:
        if found.code == FAR:
            assert "gate_lat_lon" in found.to_type
            assert "far: yes under emergency:" in found.to_type
            assert found.place.startswith("property.yaml:")
    card["far"] = "yes"
    assert told(planned(data)) == []


def test_a_place_and_a_stand_are_asked_until_they_are_said_to_be_far() -> None:
    data = with_stands()
    lane = data["screens"]["screens"][0]
    lane["near"] = {"block_lat_lon": [41.03, -93.52]}
    data["stands"]["stands"][1]["at_lat_lon"] = [41.03, -92.52]
    assert told(planned(data)) == [(FAR, "elm"), (FAR, "lane")]
    lane["far"] = "yes"
    data["stands"]["stands"][1]["far"] = "yes"
    assert told(planned(data)) == []
    lane["far"] = "no"
    assert told(planned(data)) == [(FAR, "lane")]


def test_where_to_park_for_a_walk_and_its_gate_are_asked_too() -> None:
    for key in ("parking_lat_lon", "gate_lat_lon"):
        data = with_stands()
        walk = {"id": "draw", "name": "Draw", key: [41.33, -93.02]}
        data["routes"] = {"routes": [walk]}
        assert told(planned(data)) == [(FAR, "draw")]
        walk["far"] = "yes"
        assert told(planned(data)) == []


def test_a_wrong_middle_is_told_once_and_not_of_everything() -> None:
    data = with_stands()
    data["property"]["location_lat_lon"] = [14.03, -93.02]
    assert told(planned(data)) == [(MIDDLE, WHOLE_FOLDER)]
    # what is said to be far speaks for the middle
    data["property"]["emergency"]["far"] = "yes"
    assert told(planned(data)) == [(FAR, "elm"), (FAR, "oak")]


def test_without_a_middle_nothing_is_measured() -> None:
    data = with_stands()
    del data["property"]["location_lat_lon"]
    data["property"]["emergency"]["gate_lat_lon"] = [14.03, -93.02]
    assert told(planned(data)) == []


def test_weather_stations_are_not_asked_here() -> None:
    data = with_stands()
    data["weather"] = {
        "stations": [
            {
                "id": "town",
                "name": "Town",
                "file": "weather/town.csv",
                "kind": "plain",
                "at_lat_lon": [42.03, -93.02],
            }
        ]
    }
    data["weather_files"] = {"town.csv": "date,tmax_f,tmin_f\n2025-01-01,40,20\n"}
    assert told(planned(data)) == []


def test_what_rests_on_the_middle_waits_until_it_is_mended() -> None:
    """Ten degrees off: what says so is told, and what follows from it alone is not."""
    data = with_stands()
    data["property"]["location_lat_lon"] = [31.03, -93.02]
    found = {one.code for one in planned(data).findings_on(WHOLE_FOLDER)}
    assert MIDDLE in found
    assert "C420" not in found
    for one in data["stands"]["stands"]:
        one["far"] = "yes"
    found = {one.code for one in planned(data).findings_on(WHOLE_FOLDER)}
    assert MIDDLE not in found
    assert "C420" in found
