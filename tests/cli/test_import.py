"""`handbook import`: lists what is in files, and writes shapes and entries as new files alone."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
import shapely
import shapely.geometry
import yaml
from click.testing import CliRunner
from hypothesis import given, settings
from hypothesis import strategies as st

from generator import cli
from generator.geometry.plane import middle_of_plane, off_plane, on_plane_ft
from generator.geometry.thin import thinned
from generator.import_command import HOW_GOT
from generator.inventory.fields import rules_of
from generator.inventory.imported import geojson_of
from generator.inventory.land import LandThing
from generator.inventory.load import load_inventory
from generator.inventory.schema import Inventory
from generator.inventory.shape_files import found_shapes
from generator.inventory.shape_found import FoundShape
from tests.cli.test_commands import print_of, run
from tests.inventory.shaped import feature, geojson, gpx, kml, placemark, tuples, with_files
from tests.properties import small_property, write_property

# By hand: a thousandth of a degree of latitude is 364 ft at 41 north, of longitude 276 ft; the
# ground between both is 364 x 276 / 43,560 = 2.31 acres.
RING = [(-93.02, 41.02), (-93.019, 41.02), (-93.019, 41.021), (-93.02, 41.021), (-93.02, 41.02)]
# A walk of 1,093 ft north, written down every 3.64 ft with a hundredth of that to either side.
STEPS = [
    (round(-93.02 + 1e-7 * (number % 2), 7), round(41.02 + 1e-5 * number, 7))
    for number in range(301)
]


def track(name: str, pairs: list[tuple[float, float]]) -> str:
    spots = "".join(f'<trkpt lat="{lat}" lon="{lon}"/>' for lon, lat in pairs)
    return f"<trk><name>{name}</name><trkseg>{spots}</trkseg></trk>"


@pytest.fixture
def land(tmp_path: Path) -> Path:
    return write_property(tmp_path / "land", small_property())


@pytest.fixture
def walked(tmp_path: Path) -> Path:
    """What a phone wrote: a point, a walk, and a walk around a field."""
    file = tmp_path / "My farm.gpx"
    around = [*RING[:-1], (-93.02, 41.02001)]
    point = '<wpt lat="41.0205" lon="-93.0195"><name>Old well</name></wpt>'
    file.write_bytes(gpx(point + track("Lane", STEPS) + track("Field", around)))
    return file


def sound(folder: Path) -> Inventory:
    loaded = load_inventory(folder)
    assert loaded.problems == ()
    assert loaded.inventory is not None
    return loaded.inventory


def test_a_list_says_feet_and_acres_and_writes_nothing(land: Path, walked: Path) -> None:
    before = print_of(land)
    result = run("import", "--list", walked, land)
    assert result.exit_code == 0, result.output
    well, lane, field = result.output.splitlines()
    assert well == "  1  My farm.gpx: Old well: point at 41.02050, -93.01950"
    # length before and after: the zigzag adds next to nothing, so both are as by hand
    assert lane.startswith("  2  My farm.gpx: Lane: line of 1,093 ft, 301 points; thinned to 1,093")
    assert lane.endswith("ft, 2 points")
    assert field.endswith("as an outline 2.31 acres, ends 4 ft apart")
    assert print_of(land) == before


def test_what_is_told_is_written_as_new_files_that_read_as_meant(land: Path, walked: Path) -> None:
    before = print_of(land)
    result = run("import", walked, land, "--pick", "Lane", "--as", "screen", "--width", "24",
                 "--name", "West lane", "--got", "phone")  # fmt: skip
    assert result.exit_code == 0, result.output
    after = print_of(land)
    assert {name: after[name] for name in before} == before
    assert {name for name in after.keys() - before.keys() if "." in name} == {
        "shapes/my-farm.geojson", "screens/west-lane.yaml",
    }  # fmt: skip
    (entry,) = yaml.safe_load((land / "screens" / "west-lane.yaml").read_text())["screens"]
    assert entry == {
        "id": "west-lane", "name": "West lane", "width_ft": 24.0, "got": "phone",
        "shape": {"file": "my-farm.geojson", "name": "West lane"},
    }  # fmt: skip
    place = next(one for one in sound(land).screens if one.id == "west-lane")
    assert place.line_lat_lon is not None
    assert place.line_lat_lon.lat_lon == ((41.02, -93.02), (41.023, -93.02))
    # again: names of their own, and nothing of the first is touched
    again = run("import", walked, land, "--pick", "2", "--as", "walk", "--name", "West lane")
    assert again.exit_code == 0, again.output
    third = print_of(land)
    assert {name: third[name] for name in after} == after
    assert "shapes/my-farm-2.geojson" in third
    assert "routes/west-lane-2.yaml" in third


def test_what_is_asked_is_answered_line_by_line(land: Path, walked: Path) -> None:
    # of a line that ends far from where it began nobody is asked whether it goes around
    answers = "well\n?\nscreen\n24\nstrip\ny\n"
    result = CliRunner().invoke(cli.main, ["import", str(walked), str(land)], input=answers)
    assert result.exit_code == 0, result.output
    assert "tile inlet" in result.output  # the list, where nothing there is was typed
    assert "its ends lie 4 ft apart" in result.output
    inventory = sound(land)
    (well,) = inventory.land
    assert (well.name, well.at_lat_lon) == ("Old well", (41.0205, -93.0195))
    lane = next(one for one in inventory.screens if one.name == "Lane" and one.shape is not None)
    assert lane.line_lat_lon is not None
    assert lane.width_ft is not None
    assert lane.width_ft.value == 24
    (field,) = (one for one in inventory.strips if one.name == "Field")
    assert field.area_lat_lon is not None
    assert len(field.area_lat_lon.lat_lon) == 5


def test_what_can_only_be_an_outline_is_asked_and_what_is_passed_over_is_not_written(
    land: Path, walked: Path
) -> None:
    words = ["import", str(walked), str(land)]
    before = print_of(land)
    nothing = CliRunner().invoke(cli.main, words, input="\n\n\n")
    assert nothing.output.splitlines()[-1].endswith("Nothing was written.")
    assert print_of(land) == before
    # of a line that was not walked around no woods are made
    refused = CliRunner().invoke(cli.main, words, input="\nwoods\nn\n")
    assert refused.exit_code == 2
    assert "Was it walked once around?" in refused.output
    assert print_of(land) == before
    woods = CliRunner().invoke(cli.main, words, input="\n\nwoods\ny\n")
    assert woods.exit_code == 0
    assert [thing.name for thing in sound(land).land] == ["Field"]


def test_nested_folders_and_mixed_forms_are_listed(land: Path, tmp_path: Path) -> None:
    ring = f"<Polygon><outerBoundaryIs><LinearRing><coordinates>{tuples(RING)}</coordinates>"
    ring += "</LinearRing></outerBoundaryIs></Polygon>"
    spot = "<Point><coordinates>-93.02,41.02</coordinates></Point>"
    way = f"<LineString><coordinates>{tuples(RING[:2])}</coordinates></LineString>"
    inner = f"<Folder><name>Inner</name>{placemark('North', ring)}</Folder>"
    open_ring = ring.replace(tuples(RING), tuples(RING[:-1]))
    file = tmp_path / "farm.kml"
    file.write_bytes(
        kml(f"<Folder><name>Plots</name>{inner}{placemark('Gap', open_ring)}</Folder>"
            + placemark("Gate", spot) + placemark("Fence", way))
    )  # fmt: skip
    lines = run("import", "--list", file, land).output.splitlines()
    assert [line.partition(": ")[2].partition(": ")[0] for line in lines] == [
        "Plots / Inner / North", "Plots / Gap", "Gate", "Fence",
    ]  # fmt: skip
    assert "outline of 2.31 acres, 4 corners" in lines[0]
    assert "cannot be taken in: its outline of 4 points does not end where it begins" in lines[1]
    assert lines[3].endswith("line of 276 ft, 2 points")


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (("--as", "moat"), "moat is nothing that a shape can be"),
        (("--as", "well", "--pick", "Lane"), "Lane is in the file as line; well takes point"),
        (("--as", "woods", "--pick", "Field"), "--outline, if it was walked once around"),
        (("--as", "screen", "--pick", "Lane"), "--width says its width"),
        (("--as", "walk", "--pick", "Lnae"), "no shape is called Lnae"),
        (("--as", "walk", "--name", "All"), "--name is for one shape"),
        (("--as", "walk", "--thin", "-1"), "--thin takes feet from 0 to 100"),
        (("--as", "walk", "--got", "guessed", "--pick", "2"), "Invalid value for '--got'"),
    ],
)
def test_what_does_not_fit_is_refused(
    options: tuple[str, ...], said: str, land: Path, walked: Path
) -> None:
    before = print_of(land)
    result = run("import", walked, land, *options)
    assert result.exit_code == 2
    assert said in " ".join(result.output.split())
    assert print_of(land) == before


def test_files_that_cannot_be_read_are_all_told(land: Path, tmp_path: Path) -> None:
    before = print_of(land)
    cut, page = tmp_path / "cut.kml", tmp_path / "page.gpx"
    cut.write_bytes(b"<kml><Placemark>")
    page.write_bytes(b"<html></html>")
    result = run("import", cut, page, tmp_path / "none.gpx", land)
    assert result.exit_code == 1
    told = result.output
    assert "cut.kml:1:17 F511" in told
    assert "page.gpx:1:1 F511" in told
    assert "none.gpx:1:1 F511" in told
    assert "3 files cannot be read. Nothing was written." in told
    assert print_of(land) == before


def test_faults_of_the_folder_and_of_what_would_come_keep_all_out(land: Path, walked: Path) -> None:
    # a walk around a field that crosses itself, said to be an outline
    crossed = walked.with_name("crossed.gpx")
    crossed.write_bytes(gpx(track("Bow", [RING[0], RING[2], RING[1], RING[3]])))
    before = print_of(land)
    result = run("import", crossed, land, "--as", "woods", "--outline")
    assert result.exit_code == 1
    assert "F520" in result.output
    assert print_of(land) == before
    (land / "land.yaml").write_text("land:\n  - {id: a, kind: well, name: A}\n")
    before = print_of(land)
    assert run("import", walked, land, "--as", "walk", "--pick", "2").exit_code == 1
    assert print_of(land) == before


def test_ways_of_getting_points_are_those_of_the_files() -> None:
    assert rules_of(LandThing)["got"].choices == HOW_GOT


def test_shapes_far_off_until_they_are_turned_are_not_taken(tmp_path: Path) -> None:
    folder = with_files(tmp_path / "bend", {}, {})
    file = tmp_path / "east.geojson"
    file.write_bytes(geojson(feature("Well", "Point", (93.02, 41.02))))
    result = run("import", file, folder, "--as", "well")
    assert "with the sign of its longitude turned" in result.output
    assert "Nothing was written." in result.output


# Independent: the simplification of GEOS, through shapely, on the same spots laid out in feet.
SPOTS = st.lists(
    st.tuples(st.floats(-2000, 2000), st.floats(-2000, 2000)), min_size=2, max_size=30, unique=True
)
MIDDLE = middle_of_plane((41.02, -93.02))


@settings(max_examples=60)
@given(SPOTS, st.floats(0.5, 200))
def test_thinning_keeps_what_another_library_keeps(
    spots: list[tuple[float, float]], off_ft: float
) -> None:
    line = off_plane(spots, MIDDLE)
    kept = thinned(line, off_ft)
    assert (kept[0], kept[-1]) == (line[0], line[-1])
    whole, thin = (shapely.LineString(on_plane_ft(one, MIDDLE)) for one in (line, kept))
    # the plane of thinning touches elsewhere: a part in ten thousand of the distance is allowed
    away_ft = [shapely.Point(spot).distance(thin) for spot in whole.coords]
    assert max(away_ft) <= off_ft * 1.0001 + 0.01
    loose, tight = (
        len(whole.simplify(off_ft * share, preserve_topology=False).coords)
        for share in (1.01, 0.99)
    )
    # where a hundredth of the distance decides nothing
    if loose == tight:
        assert len(kept) == tight


POINTS = st.tuples(st.floats(-93.03, -93.01), st.floats(41.01, 41.03))
LISTS = st.lists(POINTS, min_size=3, max_size=8, unique=True)
FORMS = st.sampled_from(["point", "line", "outline"])


@settings(max_examples=100)
@given(st.lists(st.tuples(FORMS, LISTS), max_size=5))
def test_what_is_written_is_read_back_as_it_was(
    shapes: list[tuple[str, list[tuple[float, float]]]],
) -> None:
    written = [
        FoundShape(f"Piece {number}", number, None, form,
                   tuple((lat, lon) for lon, lat in (pairs[:1] if form == "point" else pairs)))
        for number, (form, pairs) in enumerate(shapes, start=1)
    ]  # fmt: skip
    text = geojson_of(written)
    read = found_shapes(text)
    assert [(one.name, one.form) for one in read] == [(one.name, one.form) for one in written]
    for one, other in zip(read, written, strict=True):
        # an outline may be walked the other way round, from the same corner
        turned = (other.lat_lon[0], *other.lat_lon[:0:-1])
        either = (other.lat_lon, turned) if one.form == "outline" else (other.lat_lon,)
        assert one.lat_lon in either
    for drawn in json.loads(text)["features"]:
        geometry = shapely.geometry.shape(drawn["geometry"])
        if geometry.geom_type == "Polygon" and geometry.is_valid:
            assert geometry.exterior.is_ccw  # as RFC 7946 asks of outer rings
