"""Slopes of ground that was measured from space, held to planes that another library fits.

`tests/data/elevation/README.md` says where the heights are from.
"""

import math
from pathlib import Path

import numpy as np
import pytest
import tifffile
from geographiclib.geodesic import Geodesic

from generator.geometry.heights import HeightGrid, fall_of
from generator.inventory.load import load_inventory
from generator.units import LatLon
from tests.inventory.test_elevation_tiff import KEYS_IN_DEGREES, tags_of
from tests.properties import small_property, write_property

CUT = Path(__file__).parents[1] / "data" / "elevation" / "cumberland.asc"
HEAD = [line.split() for line in CUT.read_text(encoding="utf-8").splitlines()[:6]]
WEST, SOUTH, SIZE = (float(HEAD[number][1]) for number in (2, 3, 4))
METERS = np.loadtxt(CUT, skiprows=6)
COUNT = len(METERS)


def square(column: int, row: int, cells: int) -> list[LatLon]:
    """A square inside whole cells, from its south-western one on."""
    west, south = WEST + (column + 0.1) * SIZE, SOUTH + (row + 0.1) * SIZE
    side = (cells - 0.2) * SIZE
    return [(south, west), (south, west + side), (south + side, west + side), (south + side, west)]


def read(tmp_path: Path, name: str, content: bytes, outline: list[LatLon]) -> HeightGrid:
    data = small_property()
    data["screens"]["screens"][0]["area_lat_lon"] = [list(point) for point in outline]
    # far from where the small property lies
    data["property"] |= {"location_lat_lon": list(outline[0]), "time_zone": "America/New_York"}
    data["property"]["elevation"] = {"file": name, "heights_in": "m", "source": "radar, 2000"}
    folder = write_property(tmp_path / "property", data)
    (folder / "elevation").mkdir()
    (folder / "elevation" / name).write_bytes(content)
    loaded = load_inventory(folder)
    assert loaded.problems == ()
    assert loaded.inventory is not None
    assert loaded.inventory.heights is not None
    return loaded.inventory.heights


def planes(column: int, row: int, cells: int) -> list[tuple[float, float]]:
    """What each cell of a square rises to the east and north, by the plane of least squares.

    Through nine heights, the four beside the middle counted twice, as weights of the fit.
    """
    at = (SOUTH + row * SIZE, WEST + column * SIZE)
    east_m = Geodesic.WGS84.Inverse(*at, at[0], at[1] + SIZE)["s12"]
    north_m = Geodesic.WGS84.Inverse(*at, at[0] + SIZE, at[1])["s12"]
    found = []
    for up in range(row, row + cells):
        for right in range(column, column + cells):
            lines, heights = [], []
            for north in (-1, 0, 1):
                for east in (-1, 0, 1):
                    weight = math.sqrt(2) if abs(north) + abs(east) == 1 else 1.0
                    height_m = METERS[COUNT - 1 - up - north, right + east]
                    lines.append([weight, weight * east * east_m, weight * north * north_m])
                    heights.append(weight * height_m)
            _, rise_east, rise_north = np.linalg.lstsq(np.array(lines), np.array(heights))[0]
            found.append((float(rise_east), float(rise_north)))
    return found


@pytest.mark.parametrize(("column", "row", "cells"), [(3, 4, 1), (20, 9, 3), (8, 25, 6)])
def test_measured_ground_is_as_steep_as_planes_through_it(
    tmp_path: Path, column: int, row: int, cells: int
) -> None:
    outline = square(column, row, cells)
    tifffile.imwrite(
        tmp_path / "cut.tif",
        METERS.astype("int16"),
        metadata=None,
        photometric="minisblack",
        compression="lzw",
        predictor=2,
        tile=(16, 16),
        extratags=tags_of(
            KEYS_IN_DEGREES | {2048: 4326},
            {
                33550: (SIZE, SIZE, 0.0),
                33922: (0.0, 0.0, 0.0, WEST, SOUTH + COUNT * SIZE, 0.0),
                42113: "-32768",
            },
        ),
    )
    by_text = read(tmp_path / "text", "cut.asc", CUT.read_bytes(), outline)
    picture = (tmp_path / "cut.tif").read_bytes()
    by_picture = read(tmp_path / "picture", "cut.tif", picture, outline)
    fitted = planes(column, row, cells)
    east, north = (math.fsum(part) for part in zip(*fitted, strict=True))
    for grid in (by_text, by_picture):
        fall = fall_of([outline], grid)
        assert fall is not None
        assert fall.cells_count == cells * cells
        steepest_pct = 100 * max(math.hypot(*rise) for rise in fitted)
        assert fall.steepest_pct == pytest.approx(steepest_pct, abs=0.06)
        assert steepest_pct > 3
        assert fall.falls_to_deg is not None
        assert fall.falls_to_deg == pytest.approx(math.degrees(math.atan2(-east, -north)) % 360,
                                                  abs=0.05)  # fmt: skip


def test_what_another_library_wrote_holds_the_same_heights(tmp_path: Path) -> None:
    outline = square(3, 4, 30)
    by_text = read(tmp_path / "text", "cut.asc", CUT.read_bytes(), outline)
    written = CUT.with_suffix(".tif").read_bytes()
    by_picture = read(tmp_path / "picture", "cut.tif", written, outline)
    right = round((by_picture.south_west[0] - WEST) / SIZE)
    up = round((by_picture.south_west[1] - SOUTH) / SIZE)
    cells = [
        (column, row)
        for column in range(by_picture.columns_count)
        for row in range(by_picture.rows_count)
    ]
    assert len(cells) > 30 * 30
    assert [by_picture.height_ft(*cell) for cell in cells] == pytest.approx(
        [by_text.height_ft(column + right, row + up) for column, row in cells]
    )
    one, other = fall_of([outline], by_picture), fall_of([outline], by_text)
    assert one is not None
    assert other is not None
    assert (one.steepest_pct, one.cells_count) == (other.steepest_pct, other.cells_count)
    assert one.falls_to_deg == pytest.approx(other.falls_to_deg)
