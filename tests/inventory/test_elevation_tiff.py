"""GeoTIFFs written by a library are read as they were written, and all others are refused in words.

The library that writes them is the one that reads them; where heights come to lie, in which zone
and in which unit is our own, and held to a text grid of the same ground and to the EPSG register.
"""

import math
import random
import subprocess
import sys
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import tifffile
from pyproj import CRS, Transformer

from generator.geometry.heights import HeightGrid, fall_of
from generator.inventory import elevation_tiff
from generator.inventory.elevation import WrongGridError
from generator.inventory.load import load_inventory
from generator.inventory.problems import Problem
from tests.inventory.test_elevation import loaded
from tests.properties import small_property, write_property

# off the edges of cells
CORNERS = [
    [41.03103, -93.02096],
    [41.03103, -93.01904],
    [41.03296, -93.01904],
    [41.03296, -93.02096],
]
WEST, NORTH, SIZE = -93.026, 41.038, 0.0001
WIDE, HIGH = 120, 110
KEYS_IN_DEGREES = {1024: 2, 1025: 1, 2048: 4269, 2054: 9102}
Tags = dict[int, Any]


def hill(columns: int = WIDE, rows: int = HIGH) -> np.ndarray:
    """A hill with its top in the middle, in meters, rows from the north."""
    down, right = np.mgrid[0:rows, 0:columns]
    return 250 + 40 * np.exp(-((down - 55) ** 2 + (right - 60) ** 2) / 900)


def tags_of(keys: dict[int, int], more: Tags | None = None) -> list[tuple[Any, ...]]:
    """Where a picture lies: GeoTIFF 1.1, cells of a size tied at their upper left corner."""
    values: Tags = {
        33550: (SIZE, SIZE, 0.0),
        33922: (0.0, 0.0, 0.0, WEST, NORTH, 0.0),
        34735: (1, 1, 0, len(keys), *(part for key in sorted(keys.items())
                                      for part in (key[0], 0, 1, key[1]))),
    } | (more or {})  # fmt: skip
    typed = {33550: 12, 33922: 12, 34264: 12, 34735: 3, 42112: 2, 42113: 2, 274: 3}
    return [
        (tag, typed[tag], 0 if isinstance(value, str) else len(value), value, True)
        for tag, value in values.items()
        if value is not None
    ]


def written(
    path: Path,
    heights: np.ndarray | None = None,
    keys: dict[int, int] | None = None,
    more: Tags | None = None,
    **how: Any,
) -> bytes:
    heights = hill().astype("float32") if heights is None else heights
    tifffile.imwrite(
        path,
        heights,
        metadata=None,
        extratags=tags_of(KEYS_IN_DEGREES if keys is None else keys, more),
        **({"photometric": "minisblack"} | how),
    )
    return path.read_bytes()


def read(
    tmp_path: Path, content: bytes | str, **typed: Any
) -> tuple[HeightGrid | None, tuple[Problem, ...]]:
    """The grid of a property whose place is a square on the south side of the hill."""
    data = small_property()
    data["screens"]["screens"][0]["area_lat_lon"] = CORNERS
    said = {"file": "farm.tif", "heights_in": "m", "source": "invented, 2026"} | typed
    data["property"]["elevation"] = said
    folder = write_property(tmp_path / "property", data)
    (folder / "elevation").mkdir()
    raw = content if isinstance(content, bytes) else content.encode()
    (folder / "elevation" / "farm.tif").write_bytes(raw)
    found = load_inventory(folder)
    return found.inventory.heights if found.inventory is not None else None, found.problems


def as_text(heights: np.ndarray) -> str:
    head = (
        f"ncols {heights.shape[1]}\nnrows {heights.shape[0]}\nxllcorner {WEST}\n"
        f"yllcorner {NORTH - heights.shape[0] * SIZE}\ncellsize {SIZE}\n"
    )
    return head + "\n".join(" ".join(f"{one:.9g}" for one in row) for row in heights) + "\n"


def falls(grid: HeightGrid | None) -> tuple[float, float, int]:
    assert grid is not None
    found = fall_of([[(lat, lon) for lat, lon in CORNERS]], grid)
    assert found is not None
    assert found.falls_to_deg is not None
    return found.steepest_pct, found.falls_to_deg, found.cells_count


@pytest.mark.parametrize(
    "how",
    [
        {},
        {"rowsperstrip": 7},
        {"tile": (32, 48)},
        {"compression": "zlib", "rowsperstrip": 9},
        {"compression": "zlib", "predictor": 3, "tile": (32, 32)},
        {"compression": "adobe_deflate", "predictor": True, "tile": (64, 64)},
        {"compression": "lzw", "tile": (16, 16)},
        {"compression": "lzw", "predictor": 3, "tile": (64, 64)},
        {"byteorder": ">", "compression": "lzw", "predictor": 3, "rowsperstrip": 1},
        {"bigtiff": True, "compression": "zlib"},
    ],
    ids=str,
)
def test_the_same_hill_falls_the_same_from_a_text_and_from_a_picture(
    tmp_path: Path, how: dict[str, Any]
) -> None:
    heights = hill().astype("float32")
    by_text, problems = read(tmp_path / "text", as_text(heights))
    assert problems == ()
    grid, problems = read(tmp_path / "tiff", written(tmp_path / "hill.tif", **how))
    assert problems == ()
    assert grid is not None
    assert by_text is not None
    assert falls(grid) == pytest.approx(falls(by_text))
    # as much of it as the place lies on, and each cell where the text has it
    assert (grid.columns_count, grid.rows_count) < (WIDE, HIGH)
    right = round((grid.south_west[0] - by_text.south_west[0]) / SIZE)
    up = round((grid.south_west[1] - by_text.south_west[1]) / SIZE)
    for column in range(grid.columns_count):
        for row in range(grid.rows_count):
            there = by_text.height_ft(column + right, row + up)
            assert grid.height_ft(column, row) == pytest.approx(there, abs=1e-4)


@pytest.mark.parametrize("numbers", ["int16", "uint16", "int32", "float32", "float64"])
@pytest.mark.parametrize("predictor", [False, 2])
def test_numbers_of_every_form_and_what_is_not_known(
    tmp_path: Path, numbers: str, predictor: int | bool
) -> None:
    heights = np.round(hill()).astype(numbers)
    heights[60, 59] = 9999 if numbers == "uint16" else -9999
    how = {} if not predictor or numbers[0] == "f" else {"compression": "lzw", "predictor": 2}
    content = written(tmp_path / "hill.tif", heights, more={42113: str(heights[60, 59])}, **how)
    grid, problems = read(tmp_path, content)
    assert problems == ()
    assert grid is not None
    up = round((grid.south_west[1] - (NORTH - HIGH * SIZE)) / SIZE)
    right = round((grid.south_west[0] - WEST) / SIZE)
    assert math.isnan(grid.height_ft(59 - right, HIGH - 1 - 60 - up))
    # its neighbor to the east, in feet
    there = grid.height_ft(60 - right, HIGH - 1 - 60 - up)
    assert there == pytest.approx(float(heights[60, 60]) / 0.3048)


@pytest.mark.parametrize(
    ("not_known", "tag"),
    [(-3.4028234663852886e38, "-3.40282346638529e+38"), (-32768.0, None), (-999999.0, None),
     (float("nan"), "nan"), (-9999.9, "-9999.9")],
)  # fmt: skip
def test_a_number_of_no_ground_is_not_known_whatever_the_tag_says(
    tmp_path: Path, not_known: float, tag: str | None
) -> None:
    heights = hill().astype("float32")
    heights[:] = not_known
    grid, problems = read(tmp_path, written(tmp_path / "hill.tif", heights, more={42113: tag}))
    assert problems == ()
    assert grid is not None
    assert all(math.isnan(height) for height in grid.heights_ft)


def test_a_point_is_the_middle_of_its_cell(tmp_path: Path) -> None:
    """OGC 19-008, raster types: a tie is of a corner of a cell, or of its middle."""
    area, _ = read(tmp_path / "area", written(tmp_path / "area.tif"))
    points = KEYS_IN_DEGREES | {1025: 2}
    middles, _ = read(tmp_path / "point", written(tmp_path / "point.tif", keys=points))
    assert area is not None
    assert middles is not None
    for grid, west in ((area, WEST), (middles, WEST - SIZE / 2)):
        off = (grid.south_west[0] - west) / SIZE
        assert off == pytest.approx(round(off), abs=1e-6)


@pytest.mark.parametrize("code", [32615, 26915, 6344])
def test_meters_of_a_zone_lie_where_another_library_puts_them(tmp_path: Path, code: int) -> None:
    """A cell of another height lies where the register's own projection puts a point."""
    to_zone = Transformer.from_crs("EPSG:4326", f"EPSG:{code}", always_xy=True)
    east, north = to_zone.transform(-93.02, 41.032)
    tied = (0.0, 0.0, 0.0, math.floor(east) - 300.0, math.floor(north) + 300.0, 0.0)
    heights = np.full((600, 600), 250, "float32")
    heights[300, 300] = (
        251  # the cell that begins at the point, rounded down, less one to the south
    )
    keys = {1024: 1, 1025: 1, 3072: code, 3076: 9001}
    more = {33550: (1.0, 1.0, 0.0), 33922: tied}
    content = written(
        tmp_path / "hill.tif", heights, keys, more, compression="lzw", tile=(256, 256)
    )
    grid, problems = read(tmp_path, content)
    assert problems == ()
    assert grid is not None
    assert grid.utm_zone == 15
    (highest,) = [
        (column, row)
        for column in range(grid.columns_count)
        for row in range(grid.rows_count)
        if grid.height_ft(column, row) > 823
    ]
    found = (grid.south_west[0] + highest[0], grid.south_west[1] + highest[1])
    assert found == (math.floor(east), math.floor(north) - 1)
    _, problems = read(tmp_path / "typed", content, utm_zone="15N")
    assert problems == ()
    _, (problem,) = read(tmp_path / "other", content, utm_zone="16N")
    assert problem.code == "F543"
    assert "UTM zone 15N" in str(problem)


def test_codes_are_those_of_the_register_of_the_oil_and_gas_producers() -> None:
    """EPSG, as the database of PROJ has it: what each code is called, and in which unit it is."""
    for code in elevation_tiff._DEGREES_OF:
        crs = CRS.from_epsg(code)
        assert crs.is_geographic
        assert crs.name in {"WGS 84", "NAD83", "NAD83(2011)"}
    for first, last, sign in elevation_tiff._ZONES:
        for code in (first, (first + last) // 2, last):
            crs = CRS.from_epsg(code)
            name = f"{code - first + 1}{'N' if sign > 0 else 'S'}"
            assert crs.name.endswith(f"UTM zone {name}")
            assert crs.name.partition(" / ")[0] in {"WGS 84", "NAD83", "NAD83(2011)"}
            assert {axis.unit_name for axis in crs.axis_info} == {"metre"}
    units = {9001: "m", 9002: "ft", 9003: "ft", 5703: "m", 8228: "ft", 6360: "ft"}
    assert units == elevation_tiff._UNIT_CODES
    for code, unit in units.items():
        if code < 9000:
            (axis,) = CRS.from_epsg(code).axis_info
            # feet of the survey are two millionths longer
            length_m = 0.3048 if unit == "ft" else 1
            assert axis.unit_conversion_factor == pytest.approx(length_m, rel=3e-6)


def test_a_unit_that_the_file_says_is_held_against_the_typed_one(tmp_path: Path) -> None:
    metadata = '<GDALMetadata><Item name="U" sample="0" role="unittype">foot</Item></GDALMetadata>'
    said = (({42112: metadata}, {}), ({}, {4099: 9003}), ({}, {4096: 6360}))
    for number, (more, keys) in enumerate(said):
        content = written(tmp_path / "hill.tif", keys=KEYS_IN_DEGREES | keys, more=more)
        grid, (problem,) = read(tmp_path / f"meters{number}", content)
        assert grid is None
        assert problem.code == "F543"
        assert "heights_in: ft" in str(problem)
        grid, problems = read(tmp_path / f"feet{number}", content, heights_in="ft")
        assert problems == ()
        assert grid is not None


SCALED = '<GDALMetadata><Item name="SCALE" sample="0" role="scale">0.1</Item></GDALMetadata>'
STATE_PLANE = {1024: 1, 1025: 1, 3072: 3436}


@pytest.mark.parametrize(
    ("heights", "keys", "more", "how", "code", "says"),
    [
        (np.zeros((50, 50, 3), "uint8"), None, None, {"photometric": "rgb"}, "F541", "3 bands"),
        (np.zeros((50, 50), "uint8"), None, None, {}, "F541", "to look at"),
        (np.zeros((50, 50), "complex64"), None, None, {}, "F541", "complex64"),
        (None, None, None, {"compression": "zstd"}, "F541", "ZSTD"),
        (None, None, None, {"photometric": "miniswhite"}, "F541", "to look at"),
        (None, None, {34264: (1.0,) * 16}, {}, "F541", "matrix"),
        (None, None, {274: (6,)}, {}, "F541", "turned"),
        (None, None, {33550: (SIZE, 2 * SIZE, 0.0)}, {}, "F541", "no squares"),
        (None, None, {33550: None}, {}, "F541", "where on earth"),
        (None, None, {34735: None}, {}, "F541", "where on earth"),
        (None, None, {33922: (0.0,) * 12}, {}, "F541", "several points"),
        (None, None, {42112: SCALED}, {}, "F541", "scale of 0.1"),
        (None, STATE_PLANE, None, {}, "F541", "neither degrees"),
        (None, KEYS_IN_DEGREES | {2048: 4267}, None, {}, "F541", "neither degrees"),
        (None, KEYS_IN_DEGREES | {2054: 9105}, None, {}, "F541", "neither degrees"),
        (None, {1024: 1, 3072: 32615, 3076: 9003}, None, {}, "F541", "neither degrees"),
        (None, {1024: 1, 3072: 32615}, None, {}, "F543", "lies in no UTM zone"),
        (None, None, {33922: (0.0, 0.0, 0.0, 500000.0, NORTH, 0.0)}, {}, "F543", "500000"),
        (None, None, {33922: (0.0, 0.0, 0.0, -90.0, NORTH, 0.0)}, {}, "F543", "no place"),
        (None, None, {33922: (0.0, 0.0, 0.0, math.nan, NORTH, 0.0)}, {}, "F541", "damaged"),
        (None, None, {33550: (0.0, 0.0, 0.0)}, {}, "F541", "damaged"),
        (None, None, {33550: (1e-7, 1e-7, 0.0), 33922: (0.0, 0.0, 0.0, -93.02, 41.032, 0.0)}, {},
         "F542", "larger cells"),
        (np.zeros((2100, 2100), "int16"), None, None, {"rowsperstrip": 2100}, "F541", "one piece"),
    ],
)  # fmt: skip
def test_what_is_not_read_is_refused_in_words(
    tmp_path: Path,
    heights: np.ndarray | None,
    keys: dict[int, int] | None,
    more: Tags | None,
    how: dict[str, Any],
    code: str,
    says: str,
) -> None:
    if says == "larger cells":
        heights = np.zeros((3000, 3000), "int16")
    grid, (problem,) = read(tmp_path, written(tmp_path / "hill.tif", heights, keys, more, **how))
    assert grid is None
    assert problem.code == code
    assert says in str(problem)
    assert str(problem).startswith("elevation/farm.tif:1")


def test_a_small_file_that_would_unpack_to_a_large_one_unpacks_to_its_piece(tmp_path: Path) -> None:
    """A tile is said to be 16 by 16 and holds a hundred million zeros."""
    import zlib

    content = bytearray(written(tmp_path / "hill.tif", compression="zlib", tile=(16, 16)))
    bomb = zlib.compress(bytes(100_000_000), 9)
    with tifffile.TiffFile(tmp_path / "hill.tif") as tiff:
        page = tiff.pages.first
        counts, offsets = page.tags["TileByteCounts"], page.tags["TileOffsets"]
        number = len(page.dataoffsets)
        content += bomb
        at = len(content) - len(bomb)
        assert page.tags["TileOffsets"].dtype == 4
        size = {3: 2, 4: 4}[counts.dtype]
        content[offsets.valueoffset : offsets.valueoffset + 4 * number] = (
            at.to_bytes(4, "little") * number
        )
        length = len(bomb) if size == 4 else 65_000
        content[counts.valueoffset : counts.valueoffset + size * number] = (
            length.to_bytes(size, "little") * number
        )
    import resource

    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    grid, problems = read(tmp_path, bytes(content))
    after = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    assert grid is not None or [one.code for one in problems] == ["F541"]
    assert after - before < 50_000  # of kB


def test_damaged_files_end_in_heights_or_in_one_fault(
    tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    """Hundreds of files, cut off or with bytes changed, most of them where tags stand."""
    forms = [
        written(tmp_path / "one.tif", compression="lzw", predictor=3, tile=(16, 16)),
        written(tmp_path / "two.tif", rowsperstrip=7),
        written(tmp_path / "three.tif", compression="zlib", bigtiff=True, byteorder=">"),
    ]
    draw = random.Random(20261130)
    refused = 0
    path = tmp_path / "farm.tif"
    for number in range(450):
        content = bytearray(forms[number % len(forms)])
        for _ in range(draw.randrange(1, 6)):
            # tags stand at the start: the library writes them before the strips or tiles
            where = draw.randrange(min(len(content), draw.choice((16, 600, len(content)))))
            content[where] = draw.choice((0, 1, 0x7F, 0xFF, draw.randrange(256)))
        if draw.random() < 0.2:
            del content[draw.randrange(len(content)) :]
        path.write_bytes(content)
        points = [(lat, lon) for lat, lon in CORNERS]
        try:
            grid = elevation_tiff.tiff_grid(path, "m", 0, points, 40)
        except WrongGridError:
            refused += 1
            continue
        assert grid is not None
        assert len(grid.heights_ft) == grid.columns_count * grid.rows_count
    assert 50 < refused < 400
    assert capfd.readouterr() == ("", "")


WITHOUT = """
import sys
sys.modules["imagecodecs" if "{missing}" == "imagecodecs" else "tifffile"] = None
from generator.cli import main
try:
    main(["check", sys.argv[1]])
except SystemExit as ended:
    assert ended.code == 1, ended.code
"""


@pytest.mark.parametrize("missing", ["tifffile", "imagecodecs"])
def test_without_the_extra_a_sentence_says_what_to_install(tmp_path: Path, missing: str) -> None:
    read(tmp_path, written(tmp_path / "hill.tif"))
    done = subprocess.run(
        [sys.executable, "-c", WITHOUT.format(missing=missing), str(tmp_path / "property")],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    said = " ".join((done.stdout + done.stderr).split())
    assert "F541" in said
    assert "[elevation]" in said


def test_a_text_grid_asks_for_no_extra(tmp_path: Path) -> None:
    inventory, problems = loaded(tmp_path, as_text(hill(5, 5)))
    assert problems == ()
    assert inventory is not None
    code = (
        "import sys; from pathlib import Path; from generator.inventory.load import load_inventory;"
        f"load_inventory(Path({str(tmp_path / 'property')!r}));"
        "print([one for one in ('numpy', 'tifffile', 'pyproj', 'shapely') if one in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
