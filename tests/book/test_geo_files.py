"""Files of the ground: valid by their schemas, read back by other libraries to a centimeter."""

import json
import math
from collections.abc import Mapping
from pathlib import Path

import fastkml
import gpxpy
import pytest
from fastkml.validator import validate
from geojson_pydantic import FeatureCollection
from hypothesis import given
from hypothesis import strategies as st
from lxml import etree
from pyproj import Geod
from shapely.geometry import shape

from generator.book.geo_files import as_geojson, as_gpx, as_kml, ground_files
from generator.book.make import make_book
from generator.book.pages.written import GROUND_GEOJSON, GROUND_GPX, GROUND_KML
from generator.book.text import clean
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.plan.views.ground_features import GroundFeature, ground_features
from generator.units import LatLon
from tests.plan.planned import AS_OF, inventory_of, planned
from tests.plan.test_near_things import END, LAT, LON, east, moved, with_things
from tests.properties import SEASON, Data, small_property

GEOD = Geod(ellps="WGS84")
A_CENTIMETER_M = 0.01
GPX_SCHEMA = Path(__file__).parents[1] / "published" / "schemas" / "gpx-1.1.xsd"
GPX = "{http://www.topografix.com/GPX/1/1}"
NAMES = (GROUND_GPX, GROUND_KML, GROUND_GEOJSON)
Read = list[tuple[str, str, tuple[LatLon, ...]]]

SQUARE = ((41.1, -93.1), (41.1, -93.0999), (41.1001, -93.0999), (41.1001, -93.1))
FEATURES = (
    GroundFeature("Gate & <b>bars</b>", "gate", "point", ((41.0267123, -93.0184211),)),
    GroundFeature("Pond", "pond", "point", ((-33.9, 151.2),), radius_ft=60),
    GroundFeature("Lane", "place", "line", ((41.02662, -93.01905), (41.02998, -93.01902)), 24),
    GroundFeature("Against the clock", "place", "outline", SQUARE),
    GroundFeature("With the clock", "place", "outline", SQUARE[::-1]),
)


def read_geojson(content: bytes) -> Read:
    """Names, forms and points by shapely, once a library for RFC 7946 has taken the file."""
    data = json.loads(content)
    FeatureCollection.model_validate(data)
    found: Read = []
    for feature in data["features"]:
        read = shape(feature["geometry"])
        if read.geom_type == "Polygon":
            assert read.is_valid
            assert read.exterior.is_ccw
            assert list(read.interiors) == []
            points, form = list(read.exterior.coords), "outline"
        else:
            points, form = (
                list(read.coords),
                {"Point": "point", "LineString": "line"}[read.geom_type],
            )
        name = feature["properties"]["name"]
        found.append((name, form, tuple((lat, lon) for lon, lat in points)))
    return found


def read_gpx(content: bytes) -> Read:
    """Names, forms and points by gpxpy, once the schema has taken the file; points come first."""
    schema = etree.XMLSchema(etree.parse(GPX_SCHEMA))
    schema.assertValid(etree.fromstring(content))
    read = gpxpy.parse(content.decode())
    assert read.version == "1.1"
    found: Read = [
        (str(one.name), "point", ((one.latitude, one.longitude),)) for one in read.waypoints
    ]
    for track in read.tracks:
        (segment,) = track.segments
        points = tuple((one.latitude, one.longitude) for one in segment.points)
        form = "outline" if points[0] == points[-1] else "line"
        found.append((str(track.name), form, points))
    return found


def read_kml(content: bytes) -> Read:
    """Names, forms and points by fastkml, once the schema it ships has taken the file."""
    assert validate(element=etree.fromstring(content)) is True
    (document,) = fastkml.KML.from_string(content.decode().partition("\n")[2]).features
    found: Read = []
    for placemark in document.features:
        read = placemark.geometry
        points = read.exterior.coords if read.geom_type == "Polygon" else read.coords
        forms = {"Point": "point", "LineString": "line", "Polygon": "outline"}
        form = forms[read.geom_type]
        found.append((placemark.name, form, tuple((lat, lon) for lon, lat in points)))
    return found


def check_same(read: Read, features: tuple[GroundFeature, ...]) -> None:
    """Each feature is read back: its name, its form, and its points to a centimeter."""
    assert [(name, form) for name, form, _ in read] == [(one.name, one.form) for one in features]
    for (_, form, points), feature in zip(read, features, strict=True):
        typed = feature.points_lat_lon
        if form == "outline":
            assert points[0] == points[-1]
            points = _begun_at(points[:-1], typed)
        assert len(points) == len(typed)
        for (lat, lon), (lat_typed, lon_typed) in zip(points, typed, strict=True):
            _, _, apart_m = GEOD.inv(lon, lat, lon_typed, lat_typed)
            assert apart_m < A_CENTIMETER_M


def _begun_at(ring: tuple[LatLon, ...], typed: tuple[LatLon, ...]) -> tuple[LatLon, ...]:
    """A ring from the first typed corner on, in the order they were typed in."""
    begins = min(range(len(ring)), key=lambda at: math.dist(ring[at], typed[0]))
    turned = (*ring[begins:], *ring[:begins])
    goes_back = math.dist(turned[1], typed[1]) > math.dist(turned[-1], typed[1])
    return (turned[0], *turned[:0:-1]) if goes_back else turned


def in_gpx(features: tuple[GroundFeature, ...]) -> tuple[GroundFeature, ...]:
    """Features in the order of a GPX file: points before lines."""
    return tuple(sorted(features, key=lambda one: one.form != "point"))


def test_every_form_is_valid_and_read_back() -> None:
    check_same(read_geojson(as_geojson(FEATURES)), FEATURES)
    check_same(read_gpx(as_gpx("Land & <water>", FEATURES)), in_gpx(FEATURES))
    check_same(read_kml(as_kml("Land & <water>", FEATURES)), FEATURES)


POINTS = st.tuples(st.floats(-85, 85), st.floats(-179, 179))
BOXES = st.tuples(POINTS, st.floats(1e-5, 0.1), st.floats(1e-5, 0.1), st.booleans())


def _box(made: tuple[LatLon, float, float, bool]) -> tuple[LatLon, ...]:
    (lat, lon), north, east, goes_back = made
    ring = ((lat, lon), (lat, lon + east), (lat + north, lon + east), (lat + north, lon))
    return ring[::-1] if goes_back else ring


@given(
    st.text(min_size=1).map(clean).filter(str.strip),
    POINTS,
    st.lists(
        POINTS, min_size=2, max_size=5, unique_by=lambda one: (round(one[0], 3), round(one[1], 3))
    ),
    BOXES.map(_box),
)
def test_whatever_it_is_called_and_wherever_it_lies(
    name: str, point: LatLon, line: list[LatLon], outline: tuple[LatLon, ...]
) -> None:
    features = (
        GroundFeature(name, "stand", "point", (point,)),
        GroundFeature(name, "walk", "line", tuple(line)),
        GroundFeature(name, "pond", "outline", outline),
    )
    check_same(read_geojson(as_geojson(features)), features)
    check_same(read_gpx(as_gpx(name, features)), features)
    check_same(read_kml(as_kml(name, features)), features)


def test_words_beside_a_name_say_what_it_is_and_how_wide() -> None:
    assert [one.words for one in FEATURES[:3]] == [
        "gate",
        "pond, 60 ft around this point",
        "place, 24 ft wide",
    ]
    read = gpxpy.parse(as_gpx("Land", FEATURES).decode())
    assert read.waypoints[1].description == "pond, 60 ft around this point"
    (feature,) = json.loads(as_geojson(FEATURES[2:3]))["features"]
    assert feature["properties"] == {"name": "Lane", "what": "place", "width_ft": 24}


def full() -> Data:
    """The strip with all that may lie somewhere, handed to somebody hired and to a partner."""
    shed = {"kind": "building", "known_as": "Shed", "coordinates_for": ["hired"]}
    bed = {"kind": "bedding", "known_as": "Bed", "coordinates_for": ["hunts"]}
    data = with_things(
        east("well", 50, known_as="Dug well"),
        shed | {"at_lat_lon": moved(LAT, LON, 90, 2000)},
        bed | {"at_lat_lon": moved(LAT, LON, 90, 900), "radius_ft": 120},
    )
    data["property"].setdefault("emergency", {})["gate_lat_lon"] = moved(LAT, LON, 180, 900)
    data["screens"]["screens"][0]["near"] = {"block_lat_lon": [LAT, LON]}
    jobs = data["readers"]["readers"][0]["jobs"]
    partner = {"id": "hunts", "kind": "partner", "jobs": jobs, "stands": ["oak", "elm"]}
    data["readers"]["readers"].append(partner | {"routes": ["lane-walk", "bank"]})
    data["stands"] = {"stands": [
        {"id": "oak", "name": "Oak", "at_lat_lon": [41.03, -93.02], "coordinates": "yes"},
        {"id": "elm", "name": "Elm", "at_lat_lon": [41.031, -93.02]},
    ]}  # fmt: skip
    line = [[41.03, -93.021], [41.031, -93.021]]
    data["routes"] = {"routes": [
        {"id": "lane-walk", "name": "Lane walk", "serves": ["oak"], "line_lat_lon": line,
         "coordinates": "yes"},
        {"id": "bank", "name": "Bank", "serves": ["elm"], "line_lat_lon": line[::-1]},
    ]}  # fmt: skip
    return data


def plan_for(data: Data, reader_id: str) -> Plan:
    inventory = inventory_of(data)
    plan = make_plan(inventory, SEASON, AS_OF)
    return seen_by(plan, next(one for one in inventory.readers if one.id == reader_id))


WORK = [("Gate", "point"), ("Strip 1", "line"), ("Strip 1: begin here", "point")]


@pytest.mark.parametrize(
    ("reader", "more"),
    [
        ("hired", [("Shed", "point")]),
        ("hunts", [("Oak", "point"), ("Lane walk", "line"), ("Bed", "point")]),
    ],
)
def test_a_reader_takes_along_their_work_and_what_the_owner_hands_out(
    reader: str, more: list[tuple[str, str]]
) -> None:
    view = plan_for(full(), reader)
    features = ground_features(view)
    assert sorted((one.name, one.form) for one in features) == sorted([*WORK, *more])
    files = ground_files(view)
    check_same(read_geojson(files[GROUND_GEOJSON]), features)
    check_same(read_gpx(files[GROUND_GPX]), in_gpx(features))
    check_same(read_kml(files[GROUND_KML]), features)
    (place,) = (one for one in features if one.name == "Strip 1")
    assert place.points_lat_lon == ((LAT, LON), tuple(END))


def test_the_owner_takes_all_along() -> None:
    names = [one.name for one in ground_features(planned(full()))]
    for name in ("Gate", "Lane screen", "Oak", "Elm", "Lane walk", "Bank", "T 0", "T 1", "T 2"):
        assert name in names


def test_an_outline_typed_closed_or_with_a_point_twice_is_the_same() -> None:
    ring = [[41.03, -93.02], [41.03, -93.01], [41.031, -93.01]]
    files = []
    for typed in (ring, [*ring, ring[0]], [ring[0], *ring]):
        data = with_things()
        screen = data["screens"]["screens"][0]
        del screen["width_ft"], screen["line_lat_lon"]
        files.append(
            ground_files(
                planned(data | {"screens": {"screens": [screen | {"area_lat_lon": typed}]}})
            )
        )
    assert files[0] == files[1] == files[2]


def test_where_nothing_has_a_point_there_is_no_file_and_no_word_of_one() -> None:
    data = small_property()
    data["property"].get("emergency", {}).pop("gate_lat_lon", None)
    book = make_book(planned(data))
    assert not set(NAMES) & set(book.files)
    (page,) = (one for one in book.pages if one.address == "work.md")
    assert "ground.gpx" not in page.markdown


@pytest.mark.parametrize("reader", [None, "hired", "hunts"])
def test_the_page_of_work_leads_to_the_files(reader: str | None) -> None:
    plan = planned(full()) if reader is None else plan_for(full(), reader)
    book = make_book(plan)
    (page,) = (one for one in book.pages if one.address == "work.md")
    assert set(NAMES) <= set(book.files)
    assert all(f'href="{name}" download' in page.markdown for name in NAMES)
    assert ("yours alone" in page.markdown) == (reader is None)


def test_files_do_not_hang_on_the_order_of_the_folder() -> None:
    def files(data: Data) -> Mapping[str, bytes]:
        return ground_files(planned(data))

    data, other = full(), full()
    for lists in (other["land"], other["stands"], other["routes"]):
        for entries in lists.values():
            entries.reverse()
    assert files(data) == files(other)
