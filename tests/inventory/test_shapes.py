"""Shapes in files: read as other libraries read them, refused where they are no shapes."""

from __future__ import annotations

import json
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

import fastkml
import geojson_pydantic
import gpxpy
import gpxpy.gpx
import pytest
import shapely
import shapely.geometry
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from pyproj import Geod

from generator.geometry.plane import on_plane_ft
from generator.geometry.rough import rough_area_sq_ft, rough_length_ft
from generator.inventory.load import load_inventory
from generator.inventory.schema import Inventory
from generator.inventory.shape_files import found_shapes
from generator.inventory.shape_found import FoundShape, UnreadableShapesError
from generator.inventory.shape_sound import wrong_with
from generator.units import convert
from tests.inventory.shaped import feature, geojson, gpx, kml, packed, placemark, tuples, with_files

# A field of about three acres, with its first corner again at the end.
RING = [(-93.019, 41.026), (-93.018, 41.026), (-93.018, 41.0275), (-93.019, 41.0275),
        (-93.019, 41.026)]  # fmt: skip
LINE = [(-93.019, 41.026), (-93.0185, 41.0262), (-93.018, 41.0271)]
WELL = (-93.0195, 41.0255)
LAND = """land:
  - {id: well, kind: well, name: Old well, shape: {file: farm.kml, name: Old  well}}
  - {id: woods, kind: woods, name: Woods, shape: {file: woods.geojson}}
"""
SCREENS = (
    "screens:\n  - {id: lane, name: Lane, width_ft: 24, shape: {file: walk.gpx, name: Lane}}\n"
)
STANDS = "stands:\n  - {id: oak, name: Oak, shape: {file: walk.gpx, name: Oak}}\n"
WALKS = "routes:\n  - {id: in, name: Way in, shape: {file: farm.kmz, name: Way in}}\n"
TRACK = "".join(f'<trkpt lat="{lat}" lon="{lon}"><ele>1</ele></trkpt>' for lon, lat in LINE)
SPOT = f"<Point><coordinates>{WELL[0]},{WELL[1]}</coordinates></Point>"
WAY = f"<LineString><coordinates>\n{tuples(LINE)}\n</coordinates></LineString>"
KML = kml(
    f"<Folder><name>Water</name>{placemark('Old well', SPOT)}</Folder>{placemark('Way in', WAY)}"
)
GPX = gpx(
    f'<wpt lat="{WELL[1]}" lon="{WELL[0]}"><name>Oak</name></wpt>'
    f"<trk><name>Lane</name><trkseg>{TRACK}</trkseg></trk>"
)
FILES = {
    "farm.kml": KML,
    "farm.kmz": packed({"files/picture.png": b"none", "doc.kml": KML}),
    "walk.gpx": GPX,
    "woods.geojson": geojson(feature("Woods", "Polygon", [RING])),
}


def sound(folder: Path) -> Inventory:
    loaded = load_inventory(folder)
    assert loaded.problems == ()
    assert loaded.inventory is not None
    return loaded.inventory


def turned(pairs: list[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    return tuple((lat, lon) for lon, lat in pairs)


def test_shapes_come_into_the_fields_that_points_are_typed_in(tmp_path: Path) -> None:
    yaml = {"land": LAND, "screens": SCREENS, "stands": STANDS, "routes": WALKS}
    inventory = sound(with_files(tmp_path / "land", yaml, FILES))
    well, woods = inventory.land
    assert well.at_lat_lon == (WELL[1], WELL[0])
    assert woods.area_lat_lon is not None
    # each corner once, as it is typed
    assert woods.area_lat_lon.lat_lon == turned(RING[:-1])
    assert (woods.area_lat_lon.where.file, woods.area_lat_lon.where.line) == ("land.yaml", 3)
    lane, walk, stand = inventory.screens[0], inventory.routes[0], inventory.stands[0]
    assert lane.line_lat_lon is not None
    assert walk.line_lat_lon is not None
    assert lane.line_lat_lon.lat_lon == walk.line_lat_lon.lat_lon == turned(LINE)
    assert stand.at_lat_lon == (WELL[1], WELL[0])


def test_a_file_that_nobody_names_is_passed_over(tmp_path: Path) -> None:
    files = FILES | {"old.gpx": b"<gpx>", "notes.txt": b"\xff", "trap.kmz": b"PK"}
    sound(with_files(tmp_path / "land", {"land": LAND}, files))


def test_what_is_wrong_with_a_file_is_told_once_and_with_a_shape_at_whoever_names_it(
    tmp_path: Path,
) -> None:
    land = "land:\n" + "".join(
        f"  - {{id: a-{number}, kind: woods, name: A, shape: {{file: {file}, name: {name}}}}}\n"
        for number, (file, name) in enumerate(
            [("cut.kml", "A"), ("cut.kml", "B"), ("farm.geojson", "A"), ("farm.geojson", "B")]
        )
    )
    bad = geojson(feature("A", "Polygon", [RING[:-1]]), feature("B", "Polygon", [RING[:-1]]))
    files = {"cut.kml": KML[:-20], "farm.geojson": bad}
    problems = load_inventory(with_files(tmp_path / "land", {"land": land}, files)).problems
    assert [(one.file, one.line, one.code) for one in problems] == [
        ("land.yaml", 4, "F519"),
        ("land.yaml", 5, "F519"),
        ("shapes/cut.kml", 4, "F511"),
    ]
    assert '"B" in farm.geojson, number 2' in problems[1].what


@pytest.mark.parametrize(
    ("property_line", "pair", "said"),
    [
        ("location_lat_lon: [41.026, -85.02]", (41.026, -85.019), "latitude and longitude swapped"),
        ("location_lat_lon: [41.026, -85.02]", (85.019, 41.026), "sign of its longitude"),
        ("location_lat_lon: [41.026, -85.02]", (-85.019, -41.026), "sign of its latitude"),
        ("location_lat_lon: [41.026, -85.02]", (41.026, 85.019), "swapped, and a sign"),
        # by the time zone, where the middle is not typed
        ("time_zone: America/Chicago", (93.019, 41.026), "does not go with time zone"),
    ],
)
def test_swapped_and_sign_flipped_points_are_told(
    property_line: str, pair: tuple[float, float], said: str, tmp_path: Path
) -> None:
    land = "land:\n  - {id: well, kind: well, name: Well, shape: {file: farm.geojson}}\n"
    files = {"farm.geojson": geojson(feature("Well", "Point", pair))}
    folder = with_files(tmp_path / "land", {"land": land}, files)
    text = f"format: 1\nname: Bend\nseason: 2027\n{property_line}\n"
    (folder / "property.yaml").write_text(text, encoding="utf-8")
    (problem,) = load_inventory(folder).problems
    assert said in problem.what
    assert '"Well" in farm.geojson' in problem.what
    # one that is said to lie far is asked no more of by the middle
    far = land.replace("name: Well", "name: Well, far: yes")
    (folder / "land.yaml").write_text(far, encoding="utf-8")
    assert {one.code for one in load_inventory(folder).problems} <= {"F460"}


# Independent: read by fastkml, gpxpy and geojson-pydantic, each of which knows one of the forms.
def by_fastkml(content: bytes) -> dict[str, Any]:
    # without the line that names the encoding, which lxml wants of bytes alone
    document = fastkml.KML.from_string(content.decode().partition("\n")[2])
    marks = fastkml.utils.find_all(document, of_type=fastkml.Placemark)
    return {mark.name: mark.geometry.__geo_interface__ for mark in marks}


def by_gpxpy(content: bytes) -> dict[str, Any]:
    data = gpxpy.parse(content.decode())
    lines = {
        one.name: [(spot.longitude, spot.latitude) for spot in one.segments[0].points]
        for one in data.tracks
    } | {one.name: [(spot.longitude, spot.latitude) for spot in one.points] for one in data.routes}
    found: dict[str, Any] = {
        name: {"type": "LineString", "coordinates": pairs} for name, pairs in lines.items()
    }
    for one in data.waypoints:
        found[one.name] = {"type": "Point", "coordinates": (one.longitude, one.latitude)}
    return found


def by_pydantic(content: bytes) -> dict[str, Any]:
    read = geojson_pydantic.FeatureCollection.model_validate_json(content)
    return {
        one.properties["name"]: json.loads(one.geometry.model_dump_json(exclude_none=True))
        for one in read.features
        if one.properties is not None and one.geometry is not None
    }


def same(one: FoundShape, other: dict[str, Any]) -> None:
    kind = {"point": "Point", "line": "LineString", "outline": "Polygon"}[one.form]
    assert kind == other["type"]
    pairs = [(lon, lat) for lat, lon in one.lat_lon]
    geometry = shapely.geometry.shape(other)
    ours = {"point": lambda: shapely.Point(pairs[0]), "line": lambda: shapely.LineString(pairs),
            "outline": lambda: shapely.Polygon(pairs)}[one.form]()  # fmt: skip
    assert shapely.force_2d(geometry).equals_exact(ours, 0)


DEGREES = st.tuples(
    st.floats(-93.03, -93.01, allow_subnormal=False).map(lambda one: round(one, 7)),
    st.floats(41.01, 41.04, allow_subnormal=False).map(lambda one: round(one, 7)),
)
LINES = st.lists(DEGREES, min_size=2, max_size=12, unique=True)


@settings(max_examples=60)
@given(DEGREES, LINES, LINES)
def test_points_are_read_as_other_libraries_read_them(
    point: tuple[float, float], line: list[tuple[float, float]], ring: list[tuple[float, float]]
) -> None:
    closed = [*ring, (round(ring[0][0] + 0.001, 7), ring[0][1]), ring[0]]
    spots = [f'lat="{lat!r}" lon="{lon!r}"' for lon, lat in line]
    written = {
        by_pydantic: geojson(
            feature("a", "Point", point), feature("b", "LineString", line),
            feature("c", "Polygon", [closed]),
        ),
        by_fastkml: kml(
            placemark("a", f"<Point><coordinates>{tuples([point])}</coordinates></Point>")
            + "<Folder><name>In it</name>"
            + placemark("b", f"<LineString><coordinates>{tuples(line)}</coordinates></LineString>")
            + placemark("c", "<Polygon><outerBoundaryIs><LinearRing><coordinates>"
                        f"{tuples(closed)}</coordinates></LinearRing></outerBoundaryIs></Polygon>")
            + "</Folder>"
        ),
        by_gpxpy: gpx(
            f'<wpt lat="{point[1]!r}" lon="{point[0]!r}"><name>a</name></wpt>'
            f"<rte><name>r</name>{''.join(f'<rtept {spot}/>' for spot in spots)}</rte>"
            f"<trk><name>b</name><trkseg>{''.join(f'<trkpt {spot}/>' for spot in spots)}</trkseg>"
            "</trk>"
        ),
    }  # fmt: skip
    for reader, content in written.items():
        other = reader(content)
        ours = {shape.name: shape for shape in found_shapes(content)}
        assert ours.keys() == other.keys()
        for name, shape in ours.items():
            assert shape.wrong is None
            same(shape, other[name])


def test_what_gpxpy_and_fastkml_write_is_read() -> None:
    data = gpxpy.gpx.GPX()
    segment = gpxpy.gpx.GPXTrackSegment([gpxpy.gpx.GPXTrackPoint(lat, lon) for lon, lat in LINE])
    data.tracks.append(gpxpy.gpx.GPXTrack(name="Way"))
    data.tracks[0].segments.append(segment)
    (way,) = found_shapes(data.to_xml().encode())
    assert (way.name, way.form, way.lat_lon) == ("Way", "line", turned(LINE))
    mark = fastkml.Placemark(name="Field", geometry=shapely.Polygon(RING))
    document = fastkml.KML(features=[fastkml.Document(features=[mark])])
    (field,) = found_shapes(document.to_string().encode())
    assert (field.name, field.form, field.lat_lon) == ("Field", "outline", turned(RING[:-1]))


def test_other_ways_to_write_the_same_are_read() -> None:
    ring = f"<LinearRing><coordinates>{tuples(RING)}</coordinates></LinearRing>"
    coords = "".join(f"<gx:coord>{lon} {lat} 3</gx:coord>" for lon, lat in LINE)
    several = f"<MultiGeometry>{ring}<Point><coordinates>1,2</coordinates></Point></MultiGeometry>"
    inside = placemark("Bare", ring) + placemark("Run", f"<gx:Track>{coords}</gx:Track>")
    text = kml(
        f"<name>Farm</name><Folder><name>Deep</name>{inside}</Folder>" + placemark("Two", several)
    )
    found = found_shapes(text)
    assert [(one.name, one.form, one.number, one.within) for one in found] == [
        ("Bare", "outline", 1, ("Farm", "Deep")),
        ("Run", "line", 2, ("Farm", "Deep")),
        ("Two", "outline", 3, ("Farm",)),
        ("Two", "point", 3, ("Farm",)),
    ]
    assert found[1].lat_lon == turned(LINE)
    # other encodings, a mark at the beginning, and a name that no property has
    wide = text.decode().replace("UTF-8", "UTF-16").replace("Bare", "Año").encode("utf-16")
    assert found_shapes(wide)[0].name == "Año"
    narrow = text.decode().replace("UTF-8", "ISO-8859-1").replace("Bare", "Año").encode("latin-1")
    assert found_shapes(narrow)[0].name == "Año"
    bare = {"type": "Point", "coordinates": [-93, 41, 200.5]}
    (point,) = found_shapes(b"\xef\xbb\xbf" + json.dumps(bare).encode())
    assert (point.name, point.lat_lon) == ("", ((41, -93),))
    both = {"type": "Feature", "id": 7, "properties": None, "geometry": {
        "type": "GeometryCollection", "geometries": [bare, {"type": "MultiLineString",
        "coordinates": [LINE, LINE]}]}}  # fmt: skip
    assert [(one.name, one.form) for one in found_shapes(json.dumps(both).encode())] == [
        ("7", "point"), ("7", "line"), ("7", "line"),
    ]  # fmt: skip


LAUGHS = b'<!DOCTYPE kml [<!ENTITY a "ha"><!ENTITY b "&a;&a;">]><kml><name>&b;</name></kml>'
OUTSIDE = b'<!DOCTYPE gpx SYSTEM "http://127.0.0.1:9/gpx.dtd"><gpx></gpx>'
DEEP = b'{"type": "GeometryCollection", "geometries": [' * 100 + b"]}" * 100


@pytest.mark.parametrize(
    ("content", "code"),
    [
        (LAUGHS, "F512"),
        (OUTSIDE, "F512"),
        (b"<kml>" + b"<Folder>" * 100_000, "F513"),
        (DEEP, "F513"),
        (b"[" * 100_000, "F513"),
        (packed({"a.kml": KML, "b.kml": KML}), "F514"),
        (packed({f"{number}.png": b"" for number in range(1001)}), "F513"),
        (packed({"doc.kml": b" " * 20_000_001}), "F513"),
        (b"", "F511"),
        (b"  \n", "F511"),
        (b"\xff\xfe", "F511"),
        (b"\x00\x01", "F511"),
        (b'<?xml version="1.0" encoding="none-such"?><kml/>', "F511"),
        (b'{"type": "Topology", "objects": {}}', "F511"),
        (b'{"type": "Point", "coordinates": [NaN, 41]}', "F511"),
        (b'{"type": "Point", "coordinates": [' + b"9" * 5000 + b", 41]}", "F511"),
        (b'[{"type": "Point"}]', "F511"),
    ],
)
def test_traps_and_other_files_are_refused(content: bytes, code: str) -> None:
    with pytest.raises(UnreadableShapesError) as refused:
        found_shapes(content)
    assert refused.value.sentence.code == code
    assert refused.value.sentence.accepted


@pytest.mark.parametrize(
    ("geometry", "code"),
    [
        ({"type": "Point", "coordinates": [-93, 140]}, "F517"),
        ({"type": "Point", "coordinates": [-193, 41]}, "F517"),
        ({"type": "Point", "coordinates": ["-93", 41]}, "F517"),
        ({"type": "Point", "coordinates": [True, 41]}, "F517"),
        ({"type": "Point", "coordinates": [-93]}, "F517"),
        ({"type": "Point", "coordinates": None}, "F517"),
        ({"type": "Point", "coordinates": [1e400, 41]}, "F517"),
        ({"type": "LineString", "coordinates": []}, "F521"),
        ({"type": "LineString", "coordinates": [[-93, 41], [-93, 41]]}, "F521"),
        ({"type": "LineString", "coordinates": [[-93, 41], [-93, 41.000001]]}, "F521"),
        ({"type": "LineString", "coordinates": [[-93, 41], [-92, 41]]}, "F521"),
        ({"type": "Polygon", "coordinates": []}, "F521"),
        ({"type": "Polygon", "coordinates": [[[-93, 41], [-93, 41.1], [-93, 41]]]}, "F519"),
        ({"type": "Polygon", "coordinates": [RING, RING]}, "F520"),
        ({"type": "GeometryCollection", "geometries": [{"type": "Curve"}]}, "F511"),
    ],
)
def test_what_is_no_shape_of_a_property_says_why(geometry: dict[str, Any], code: str) -> None:
    (found,) = found_shapes(json.dumps(geometry).replace("Infinity", "1e400").encode())
    wrong = wrong_with(found)
    assert wrong is not None
    assert wrong.code == code


# Independent: GEOS, through shapely, on the same corners laid out in feet; where no corner comes
# nearer than an inch to a side, no rounding decides.
@settings(max_examples=300)
@given(st.lists(DEGREES, min_size=3, max_size=7, unique=True))
def test_an_outline_is_refused_where_another_library_finds_it_invalid(
    corners: list[tuple[float, float]],
) -> None:
    shape = FoundShape("", 1, None, "outline", turned(corners))
    laid = shapely.Polygon(on_plane_ft(shape.lat_lon, (41.02, -93.02)))
    assume(shapely.minimum_clearance(laid) > 1 / 12 and laid.area > 10)
    wrong = wrong_with(shape)
    assert ("" if wrong is None else wrong.code) == ("" if laid.is_valid else "F520")


# Independent: the geodesics of pyproj on the ellipsoid, from which a round earth is within 1 %.
@settings(max_examples=100)
@given(LINES.filter(lambda line: shapely.LineString(line).length > 1e-4))
def test_rough_measures_are_within_a_percent_of_the_ellipsoid(
    line: list[tuple[float, float]],
) -> None:
    lons, lats = zip(*line, strict=True)
    geod = Geod(ellps="WGS84")
    length_ft = convert(geod.line_length(lons, lats), "m", "ft")
    assert rough_length_ft(turned(line)) == pytest.approx(length_ft, rel=0.01)
    hull = shapely.MultiPoint(line).convex_hull
    if hull.geom_type == "Polygon" and hull.area > 1e-8:
        area, _ = geod.geometry_area_perimeter(hull)
        corners = turned(list(hull.exterior.coords)[:-1])
        area_sq_ft = convert(abs(area), "sq_m", "sq_ft")
        assert rough_area_sq_ft(corners) == pytest.approx(area_sq_ft, rel=0.01)


WHOLE = [KML, GPX, FILES["farm.kmz"], FILES["woods.geojson"]]


@st.composite
def damaged(draw: st.DrawFn) -> bytes:
    content = bytearray(draw(st.sampled_from(WHOLE)))
    for _ in range(draw(st.integers(1, 6))):
        begin = draw(st.integers(0, len(content)))
        end = min(len(content), begin + draw(st.integers(0, 12)))
        content[begin:end] = draw(
            st.one_of(st.binary(max_size=6), st.just(bytes(content[begin:end]) * 2))
        )
    return bytes(content)


@settings(max_examples=400)
@given(damaged())
def test_damaged_files_end_in_shapes_or_in_a_clear_fault(content: bytes) -> None:
    found, refused = tried(content)
    if refused is not None:
        assert refused.sentence.what
        assert min(refused.line, refused.column) >= 1
    for shape in found:
        wrong = wrong_with(shape)
        assert (wrong is None) <= bool(shape.lat_lon)
        assert all(abs(lat) <= 90 and abs(lon) <= 180 for lat, lon in shape.lat_lon)


def tried(content: bytes) -> tuple[list[FoundShape], UnreadableShapesError | None]:
    try:
        return found_shapes(content), None
    except UnreadableShapesError as error:
        return [], error


def many(count: int) -> tuple[str, bytes]:
    """Things of the land in one file, each with thirty corners."""
    features, things = [], ["land:"]
    for number in range(count):
        lon, lat = -93.03 + 0.0002 * number, 41.02
        steps = [(lon + 0.00001 * (step % 15), lat + 0.001 * (step // 15)) for step in range(30)]
        ring = [*steps[:15], *steps[:14:-1], steps[0]]
        features.append(feature(f"Woods {number}", "Polygon", [ring]))
        named = f"{{file: farm.geojson, name: Woods {number}}}"
        things.append(f"  - {{id: woods-{number}, kind: woods, name: Woods, shape: {named}}}")
    return "\n".join(things) + "\n", geojson(*features)


LIGHT = """
import sys
from generator.cli import main
try:
    main(["check", sys.argv[1]])
except SystemExit as ended:
    assert not ended.code, ended.code
heavy = ("numpy", "shapely", "pyproj", "xml.etree", "xml.dom", "xml.sax", "lxml", "zipfile")
print([name for name in heavy if name in sys.modules])
"""


def test_a_check_of_shapes_imports_nothing_heavy(tmp_path: Path) -> None:
    text, content = many(3)
    named = "{file: farm.kml, name: Old well}"
    land = f"{text}  - {{id: well, kind: well, name: Well, shape: {named}}}\n"
    files = {"farm.geojson": content, "farm.kml": KML}
    folder = with_files(tmp_path / "land", {"land": land}, files)
    done = subprocess.run(
        [sys.executable, "-c", LIGHT, str(folder)], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.splitlines()[-1] == "[]"


def least_s(folder: Path) -> float:
    """The least processor time that a check of a folder takes, of several."""
    times = []
    for _ in range(7):
        began = time.process_time()
        sound(folder)
        times.append(time.process_time() - began)
    return min(times)


def test_fifty_shapes_add_little_to_a_check(tmp_path: Path) -> None:
    text, content = many(50)
    # against fifty that are typed, since the lines that name them are read either way
    outline = "area_lat_lon: [[41.02, -93.02], [41.03, -93.02], [41.02, -93.01]]}"
    typed = "\n".join(
        f"{line.partition(', shape:')[0]}, {outline}" if "shape:" in line else line
        for line in text.splitlines()
    )
    files = {"farm.geojson": content}
    shaped = with_files(tmp_path / "shaped", {"land": text}, files)
    plain = with_files(tmp_path / "plain", {"land": f"{typed}\n"}, files)
    assert least_s(shaped) - least_s(plain) < 0.05
