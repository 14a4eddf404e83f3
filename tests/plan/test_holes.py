"""Ground with a pond cut out of it, as mapping programs write it: its hole is none of it.

Acres are held to another library's polygons, pieces to counts of points strewn over them, holes
that are none to the rules of a third.
"""

import json
import random
import re
from pathlib import Path

import pytest
import shapely
from geographiclib.geodesic import Geodesic
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.book.geo_files import ground_files
from generator.book.make import make_book
from generator.book.pages.written import GROUND_GEOJSON, GROUND_GPX, GROUND_KML
from generator.geometry.arcs import OnGround
from generator.geometry.crossing import first_hole_astray
from generator.geometry.heights import HeightGrid, fall_of
from generator.inventory.imported import geojson_of, offered_by
from generator.inventory.load import load_inventory
from generator.inventory.places import PlantedGround
from generator.inventory.schema import Inventory
from generator.inventory.shape_files import found_shapes
from generator.inventory.shape_found import OUTLINE, FoundShape
from generator.plan.build.season_plan import make_plan
from generator.plan.land.lying import piece_of
from generator.plan.land.measured import measured_around_ft
from generator.plan.model.plan import Plan
from generator.plan.readers.kept_values import typed_values
from generator.plan.readers.seen_by import seen_by
from generator.units import LatLon
from generator.working import Measured
from tests.inventory.shaped import feature, geojson, kml, placemark, tuples
from tests.plan.planned import AS_OF, job_of
from tests.plan.test_treated import WATER
from tests.plan.test_where_things_lie import CORNER, at, land, line
from tests.properties import Data, full_card, full_use, small_property, write_property

# In feet from the corner of the invented ground: a field, with a pond and a shed cut out of it.
FIELD = line((0, 0), (600, 0), (600, 400), (0, 400))
POND = line((200, 100), (300, 100), (300, 250), (200, 250))
SHED = line((500, 300), (520, 300), (520, 330))


def pairs(points: list[list[float]]) -> list[tuple[float, float]]:
    return [(lon, lat) for lat, lon in (*points, points[0])]


def as_geojson(*rings: list[list[float]]) -> bytes:
    return geojson(feature("Field", "Polygon", [pairs(ring) for ring in rings]))


def as_kml(*rings: list[list[float]]) -> bytes:
    outer, *inner = (f"<LinearRing><coordinates>{tuples(pairs(ring))}</coordinates></LinearRing>"
                     for ring in rings)  # fmt: skip
    holes = "".join(f"<innerBoundaryIs>{ring}</innerBoundaryIs>" for ring in inner)
    polygon = f"<Polygon><outerBoundaryIs>{outer}</outerBoundaryIs>{holes}</Polygon>"
    return kml(placemark("Field", polygon))


def inventory_of(tmp_path: Path, file: str, content: bytes, *things: Data) -> Inventory:
    data = small_property(full_card(full_use(setbacks_ft=[WATER])))
    (screen,) = data["screens"]["screens"]
    del screen["length_ft"], screen["width_ft"]
    screen |= {"shape": {"file": file, "name": "Field"}, "got": "surveyed"}
    data["property"] |= {"location_lat_lon": list(CORNER)}
    if things:
        data["land"] = {"land": list(things)}
    folder = write_property(tmp_path / "property", data)
    (folder / "shapes").mkdir()
    (folder / "shapes" / file).write_bytes(content)
    loaded = load_inventory(folder)
    assert loaded.problems == ()
    assert loaded.inventory is not None
    return loaded.inventory


def planned(tmp_path: Path, *things: Data) -> Plan:
    content = as_geojson(FIELD, POND, SHED)
    return make_plan(inventory_of(tmp_path, "farm.geojson", content, *things), 2027, AS_OF)


def acres(outline: list[list[float]]) -> float:
    """What geographiclib says of an outline."""
    polygon = Geodesic.WGS84.Polygon()
    for lat, lon in outline:
        polygon.AddPoint(lat, lon)
    return abs(polygon.Compute()[2]) / 4046.8564224


@pytest.mark.parametrize(("file", "written"), [("a.geojson", as_geojson), ("a.kml", as_kml)])
def test_a_hole_is_no_acre_of_a_place(tmp_path: Path, file: str, written: object) -> None:
    content = written(FIELD, POND, SHED)  # type: ignore[operator]
    inventory = inventory_of(tmp_path, file, content)
    (place,) = inventory.screens
    assert place.area_lat_lon is not None
    assert [len(hole) for hole in place.area_lat_lon.holes] == [4, 3]
    plan = make_plan(inventory, 2027, AS_OF)
    expected = acres(FIELD) - acres(POND) - acres(SHED)
    assert expected == pytest.approx((600 * 400 - 100 * 150 - 20 * 30 / 2) / 43_560, rel=2e-4)
    assert plan.place("lane").area.value == pytest.approx(expected, rel=1e-6)
    ((_, measured),) = plan.place("lane").area.inputs
    assert isinstance(measured, Measured)
    assert "less that of the holes in it" in measured.method
    assert measured.points == 4 + 4 + 3


def test_what_is_left_beside_a_pond_in_a_hole(tmp_path: Path) -> None:
    pond = land("pond", area_lat_lon=POND, got="surveyed", counts_from="bank")
    job = job_of(planned(tmp_path, pond))
    assert job.kept_off
    (kept,) = job.kept_off
    # strewn over the box of the field: in it, out of its holes, nearer to the pond than 66 ft and
    # what two surveys may be off, a foot each
    draw, near, held = random.Random(23), 0, 0
    for _ in range(200_000):
        east, north = draw.uniform(0, 600), draw.uniform(0, 400)
        over, up = max(200 - east, east - 300, 0), max(100 - north, north - 250, 0)
        if not over and not up:
            continue
        held += 1
        near += over**2 + up**2 <= kept.reach.value**2 if kept.reach else 0
    assert kept.lost.value == pytest.approx(
        near / held * (600 * 400 - 100 * 150) / 43_560, rel=0.02
    )


def test_what_stands_in_a_hole_is_as_far_off_as_its_edge() -> None:
    around = OnGround(tuple(map(tuple, FIELD)), True, 0.0, (tuple(map(tuple, POND)),))  # type: ignore[arg-type]
    well = OnGround((tuple(at(250, 175)),))  # type: ignore[arg-type]
    ground, spot = piece_of(around, CORNER), piece_of(well, CORNER)
    assert not ground.intersects(spot)
    assert ground.distance(spot) == pytest.approx(50, abs=0.1)


def test_exports_have_the_hole_and_an_import_of_them_is_the_same(tmp_path: Path) -> None:
    files = ground_files(planned(tmp_path))
    (polygon,) = [
        shapely.geometry.shape(one["geometry"])
        for one in json.loads(files[GROUND_GEOJSON])["features"]
        if one["geometry"]["type"] == "Polygon"
    ]
    assert polygon.is_valid
    assert polygon.exterior.is_ccw
    assert [ring.is_ccw for ring in polygon.interiors] == [False, False]
    wanted = {tuple(map(tuple, ring)) for ring in (POND, SHED)}
    for name in (GROUND_GEOJSON, GROUND_KML):
        (again,) = [one for one in found_shapes(files[name]) if one.form == OUTLINE]
        assert set(again.lat_lon) == set(map(tuple, FIELD))
        assert {frozenset(hole) for hole in again.holes} == {frozenset(hole) for hole in wanted}
    assert files[GROUND_GPX].count(b"<trkseg>") == 3


def test_an_import_takes_holes_and_writes_them(tmp_path: Path) -> None:
    path = tmp_path / "farm.kml"
    path.write_bytes(as_kml(FIELD, POND))
    (offered,) = offered_by(path, CORNER, 3)
    assert offered.wrong is None
    (again,) = found_shapes(geojson_of([offered.taken]))
    assert set(again.holes[0]) == set(map(tuple, POND))
    assert shapely.from_geojson(geojson_of([offered.taken]).decode()).is_valid


def test_the_hole_is_drawn(tmp_path: Path) -> None:
    plan = planned(tmp_path)
    (page,) = [one for one in make_book(plan).pages if one.address == "places/lane.md"]
    (drawn,) = re.findall(r'fill-rule="evenodd" d="([^"]+)"', page.markdown)
    # the field, the pond and the shed
    assert drawn.count("M") == drawn.count("z") == 3


def test_the_corners_of_a_hole_are_looked_for_as_those_of_its_outline(tmp_path: Path) -> None:
    inventory = inventory_of(tmp_path, "a.geojson", as_geojson(FIELD, POND))
    typed = [one.value for one in typed_values(inventory) if one.field == "area_lat_lon"]
    assert typed == [tuple(point) for point in (*FIELD, *POND)]
    (hired,) = inventory.readers
    (place,) = seen_by(make_plan(inventory, 2027, AS_OF), hired).places
    assert place.lies is not None
    # where the places of their jobs lie is theirs to know
    assert [set(hole) for hole in place.lies.holes_lat_lon] == [set(map(tuple, POND))]


# Corners of triangles, most of them inside of the square around them.
PARTS = st.integers(-3000, 43_000).map(lambda part: part / 1000)
RINGS = st.lists(st.tuples(PARTS, PARTS), min_size=3, max_size=3, unique=True)
AROUND = [(0.0, 0.0), (40.0, 0.0), (40.0, 40.0), (0.0, 40.0)]


def on_earth(ring: list[tuple[float, float]]) -> list[LatLon]:
    return [(41 + north / 100_000, -93 + east / 100_000) for east, north in ring]


@given(st.lists(RINGS, min_size=1, max_size=3))
def test_holes_that_are_none_are_those_another_library_refuses(
    holes: list[list[tuple[float, float]]],
) -> None:
    pieces = [shapely.Polygon(hole) for hole in holes]
    assume(all(piece.is_valid and piece.area > 0 for piece in pieces))
    outline = shapely.Polygon(AROUND)
    rings = [shapely.LinearRing(AROUND), *(piece.exterior for piece in pieces)]
    # a corner that lies on another edge does so in one layout of numbers and not in another
    corners = [(at, shapely.Point(spot)) for at, ring in enumerate(rings) for spot in ring.coords]
    assume(
        all(ring.distance(spot) > 0.0001 for own, spot in corners for at, ring in enumerate(rings)
            if at != own)
    )  # fmt: skip
    meet = any(one.intersects(other) for at, one in enumerate(rings) for other in rings[:at])
    apart = all(not one.intersects(other) for at, one in enumerate(pieces) for other in pieces[:at])
    are_holes = not meet and apart and all(outline.contains(piece) for piece in pieces)
    found = first_hole_astray([on_earth(AROUND), *map(on_earth, holes)])
    assert (found is None) == are_holes


@pytest.mark.parametrize(
    ("rings", "code", "says"),
    [
        ([FIELD, line((500, 300), (700, 300), (700, 350))], "F520", "hole 1 in its outline meets"),
        ([FIELD, line((900, 0), (950, 0), (950, 50))], "F520", "lies outside"),
        ([FIELD, POND, line((220, 120), (250, 120), (250, 150))], "F520", "hole 2 in its"),
        ([FIELD, POND, line((0, 10), (50, 60), (50, 10), (0, 60))], "F520", "of hole 2 in it"),
    ],
)
def test_a_hole_that_is_none_is_told(
    tmp_path: Path, rings: list[list[list[float]]], code: str, says: str
) -> None:
    found = found_shapes(as_geojson(*rings))
    assert isinstance(found[0], FoundShape)
    path = tmp_path / "farm.geojson"
    path.write_bytes(as_geojson(*rings))
    (offered,) = offered_by(path, CORNER, 3)
    assert offered.wrong is not None
    assert offered.wrong.code == code
    assert says in offered.wrong.what


def test_a_hole_left_open_is_told(tmp_path: Path) -> None:
    content = json.loads(as_geojson(FIELD, POND))
    del content["features"][0]["geometry"]["coordinates"][1][-1]
    path = tmp_path / "farm.geojson"
    path.write_text(json.dumps(content), encoding="utf-8")
    (offered,) = offered_by(path, CORNER, 3)
    assert offered.wrong is not None
    assert offered.wrong.code == "F519"
    assert offered.wrong.what.startswith("of hole 1 in it: its outline of 4 points")


def test_the_way_around_an_outline_goes_around_its_holes(tmp_path: Path) -> None:
    (place,) = inventory_of(tmp_path, "a.geojson", as_geojson(FIELD, POND)).screens
    assert place.area_lat_lon is not None
    around = measured_around_ft(place.area_lat_lon, PlantedGround)
    assert around.value == pytest.approx(2 * (600 + 400) + 2 * (100 + 150), rel=2e-4)


def test_a_bank_in_a_hole_makes_no_place_steep() -> None:
    lat, lon = CORNER
    size, count = 0.00005, 50
    # a plane of one foot to a cell, with a pit where the pond is cut out
    east = [lon + (0.5 + column) * size for column in range(count)]
    north = [lat + (count - 0.5 - row) * size for row in range(count)]
    (south_pond, west_pond), (north_pond, east_pond) = POND[0], POND[2]
    heights = [
        column - (60.0 if is_pit else 0.0)
        for row in range(count)
        for column in range(count)
        for is_pit in (
            south_pond + 2 * size < north[row] < north_pond - 2 * size
            and west_pond + 2 * size < east[column] < east_pond - 2 * size,
        )
    ]
    grid = HeightGrid(count, count, (lon, lat), size, 0, heights)
    inside = line((60, 60), (500, 60), (500, 340), (60, 340))
    outline = [(point[0], point[1]) for point in inside]
    hole = [(point[0], point[1]) for point in POND]
    whole, without = fall_of([outline], grid), fall_of([outline], grid, [hole])
    assert whole is not None
    assert without is not None
    assert whole.steepest_pct > 100
    # one foot in a cell of 0.00005 degrees, 13.8 ft
    assert without.steepest_pct == pytest.approx(100 / 13.8, abs=0.1)
