"""Points held against the time zone: chief towns and far corners of zones, and slips of a sign."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.inventory.fields import Where
from generator.inventory.load import load_inventory
from generator.inventory.problems import Problem
from generator.inventory.reading_found import TypedPoint
from generator.inventory.zone_points import places_astray, points_astray
from generator.reference.zones import zone_names, zone_point
from generator.units import LatLon
from tests.inventories.overlaid import HERE as INVENTORIES

HERE = Where("property.yaml", 7, 17)
BASE = INVENTORIES / "base"
TOWNS = {name: point for name in zone_names() if (point := zone_point(name))}


def faults(point: LatLon, zone: str | None) -> list[Problem]:
    return list(points_astray([TypedPoint("gate_lat_lon", point, HERE)], zone))


def test_no_chief_town_of_a_zone_is_astray_in_it() -> None:
    assert len(TOWNS) > 400
    assert [name for name, point in TOWNS.items() if faults(point, name)] == []


# Corners as atlases give them, from memory, to a degree.
@pytest.mark.parametrize(
    ("zone", "point"),
    [
        ("America/Adak", (53, 173)),  # Attu, beyond the line of the date
        ("America/Anchorage", (66, -168)),
        ("America/Chicago", (32, -104)),
        ("America/New_York", (25, -82)),
        ("America/New_York", (47, -68)),
        ("Pacific/Honolulu", (28, -178)),
        ("Asia/Shanghai", (39, 74)),
        ("America/Nuuk", (83, -30)),
        ("Europe/London", (60, 2)),
        ("Europe/London", (50, -6)),
        ("Pacific/Auckland", (-44, -176)),
    ],
)
def test_far_corners_of_zones_are_not_astray(zone: str, point: LatLon) -> None:
    assert faults(point, zone) == []


STATES = ("America/New_York", "America/Chicago", "America/Denver", "America/Phoenix",
          "America/Los_Angeles", "US/Central")  # fmt: skip


@pytest.mark.parametrize("zone", STATES)
@settings(max_examples=25)
@given(lat=st.floats(25, 49), lon=st.floats(-124, -67))
def test_a_sign_left_out_anywhere_in_the_states_is_told(zone: str, lat: float, lon: float) -> None:
    assert faults((lat, lon), zone) == []
    (east,) = faults((lat, -lon), zone)
    assert (east.code, east.line, east.column) == ("F460", 7, 17)
    assert "longitude" in east.what
    assert east.accepted.endswith("west of Greenwich is negative")


def test_a_latitude_without_its_place_in_the_north_is_told() -> None:
    (south,) = faults((-41.03, -93.02), "America/Chicago")
    assert "latitude -41.03" in south.what
    assert south.accepted == "41.03: south of the equator is negative"


def test_a_longitude_before_its_latitude_is_told_as_that() -> None:
    (turned,) = faults((-76.5, 42.4), "America/New_York")
    assert turned.accepted == "[42.4, -76.5]: latitude first, then longitude"


def test_a_point_of_another_zone_names_where_its_zone_is() -> None:
    (other,) = faults((52.5, 13.4), "America/Chicago")
    assert "near longitude -88" in other.accepted


def test_where_no_point_goes_with_the_zone_it_is_told_once() -> None:
    typed = [TypedPoint("gate_lat_lon", (41.03, -93.02 - n), HERE) for n in range(5)]
    (one,) = points_astray(typed, "Pacific/Chatham")
    assert one.what.endswith("nor does any other point")
    assert one.accepted.endswith("or the time zone of the place")


def test_one_slip_in_many_points_is_told_once_with_their_files() -> None:
    """All signs but the station's: one thing is to be done, in files that are named."""
    places = [Where("screens.yaml", line, 9) for line in (5, 6, 7)] + [Where("stands.yaml", 2, 9)]
    wrong = [TypedPoint("line_lat_lon", (41.03, 93.02), where) for where in places]
    station = TypedPoint("at_lat_lon", (41.1, -93.1), HERE)
    (one,) = points_astray([station, *wrong], "America/Chicago")
    assert (one.file, one.line) == ("screens.yaml", 5)
    assert one.what.endswith("so it is with 4 points: 3 in screens.yaml and 1 in stands.yaml")
    assert one.accepted == "-93.02: west of Greenwich is negative, and so in each"
    assert places_astray([station, *wrong], "America/Chicago") == set(places)
    few = list(points_astray([station, *wrong[:3]], "America/Chicago"))
    assert [each.line for each in few] == [5, 6, 7]


def test_slips_of_two_kinds_are_told_apart() -> None:
    wrong = [TypedPoint("line_lat_lon", (41.03, 93.02), HERE)] * 4
    turned = [TypedPoint("line_lat_lon", (-93.02, 41.03), HERE)] * 4
    good = TypedPoint("at_lat_lon", (41.1, -93.1), HERE)
    told = list(points_astray([good, *wrong, *turned], "US/Eastern"))
    assert len(told) == 2


def test_far_points_of_a_place_are_not_told_again_beside_a_wrong_sign() -> None:
    land = (BASE / "property.yaml").read_text() + "time_zone: America/Chicago\n"
    screens = (BASE / "screens.yaml").read_text()

    def codes(point: str) -> list[str]:
        line = f"    line_lat_lon: [[41.02, -93.1], {point}]\n    hides"
        new = {"property.yaml": land, "screens.yaml": screens.replace("    hides", line)}
        beside = {name: text.encode() for name, text in new.items()}
        return [one.code for one in load_inventory(BASE, beside).problems]

    assert codes("[41.021, -93.1]") == []
    assert codes("[41.021, 93.1]") == ["F460"]
    assert codes("[42.021, -93.1]") == ["F318"]


@pytest.mark.parametrize("zone", [None, "UTC", "Etc/GMT+6", "CDT"])
def test_without_a_town_of_the_zone_nothing_is_said(zone: str | None) -> None:
    assert faults((41.03, 93.02), zone) == []
