"""Slopes out of grids of heights: planes and bowls of known slope, in degrees and in meters."""

import math
from collections.abc import Callable

import pytest
from geographiclib.geodesic import Geodesic
from hypothesis import given
from hypothesis import strategies as st
from pyproj import Transformer

from generator.geometry.heights import Fall, HeightGrid, fall_of
from generator.units import LatLon

MIDDLE = (41.03, -93.02)
CELL_DEG = 0.0001
CELLS = 40
EARTH = Geodesic.WGS84
Surface = Callable[[float, float], float]  # height in feet, by feet east and north of the corner


def in_degrees(surface: Surface, not_known: tuple[int, int] | None = None) -> HeightGrid:
    """A grid in degrees around the middle, its feet on the ground by another library."""
    lat, lon = MIDDLE
    east_m = EARTH.Inverse(lat, lon, lat, lon + CELL_DEG)["s12"]
    north_m = EARTH.Inverse(lat, lon, lat + CELL_DEG, lon)["s12"]
    half = CELLS / 2
    heights = [
        math.nan
        if (column, row) == not_known
        else surface((column + 0.5 - half) * east_m / 0.3048, (row + 0.5 - half) * north_m / 0.3048)
        for row in reversed(range(CELLS))
        for column in range(CELLS)
    ]
    corner = (lon - half * CELL_DEG, lat - half * CELL_DEG)
    return HeightGrid(CELLS, CELLS, corner, CELL_DEG, 0, heights)


def in_meters(surface: Surface, size_m: float = 10) -> HeightGrid:
    """A grid in meters of UTM zone 15 around the middle."""
    to_zone = Transformer.from_crs("EPSG:4326", "EPSG:32615", always_xy=True)
    east, north = to_zone.transform(MIDDLE[1], MIDDLE[0])
    half = CELLS / 2
    heights = [
        surface((column + 0.5 - half) * size_m / 0.3048, (row + 0.5 - half) * size_m / 0.3048)
        for row in reversed(range(CELLS))
        for column in range(CELLS)
    ]
    return HeightGrid(
        CELLS, CELLS, (east - half * size_m, north - half * size_m), size_m, 15, heights
    )


def around(east: float, north: float, side: float) -> list[LatLon]:
    """A square of degrees around the middle, moved by cells of the grid."""
    lat, lon = MIDDLE[0] + north * CELL_DEG, MIDDLE[1] + east * CELL_DEG
    half = side * CELL_DEG / 2
    return [(lat - half, lon - half), (lat - half, lon + half), (lat + half, lon + half),
            (lat + half, lon - half)]  # fmt: skip


def plane(slope_pct: float, falls_to_deg: float) -> Surface:
    """A plane so steep that falls the way of a bearing."""
    down = math.radians(falls_to_deg)
    return lambda east, north: (
        900 - slope_pct / 100 * (east * math.sin(down) + north * math.cos(down))
    )


@pytest.mark.parametrize("laid", [in_degrees, in_meters])
@given(slope_pct=st.floats(1, 60), falls_to_deg=st.floats(0, 359.9))
def test_a_plane_is_as_steep_as_it_was_laid_and_falls_that_way(
    laid: Callable[[Surface], HeightGrid], slope_pct: float, falls_to_deg: float
) -> None:
    fall = fall_of([around(0.3, -0.2, 4)], laid(plane(slope_pct, falls_to_deg)))
    assert fall is not None
    # a tenth of a percent is printed; meters of a zone are right to one part in 2,500
    assert fall.steepest_pct == pytest.approx(slope_pct, abs=0.06, rel=0.001)
    assert fall.falls_to_deg is not None
    turned = (fall.falls_to_deg - falls_to_deg + 180) % 360 - 180
    assert turned == pytest.approx(0, abs=0.1)


def test_the_steepest_cell_that_the_place_touches_counts() -> None:
    # a bowl of 0.0001 feet to a square foot: its slope is twice that times the distance
    bowl = in_degrees(lambda east, north: 0.0001 * (east**2 + north**2))
    fall = fall_of([around(5, 0, 1.8)], bowl)
    assert fall is not None
    east_ft = EARTH.Inverse(*MIDDLE, MIDDLE[0], MIDDLE[1] + CELL_DEG)["s12"] / 0.3048
    north_ft = EARTH.Inverse(*MIDDLE, MIDDLE[0] + CELL_DEG, MIDDLE[1])["s12"] / 0.3048
    # from 4.1 to 5.9 cells east and 0.9 to either side: the middles of its outer cells
    farthest_ft = math.hypot(5.5 * east_ft, 0.5 * north_ft)
    assert fall == Fall(round(0.02 * farthest_ft, 1), fall.falls_to_deg, 4)
    # downhill is to the middle of the bowl, to the west
    assert fall.falls_to_deg == pytest.approx(270, abs=0.01)


def test_ground_that_falls_to_all_sides_falls_nowhere() -> None:
    fall = fall_of(
        [around(0, 0, 5.8)], in_degrees(lambda east, north: -0.0001 * (east**2 + north**2))
    )
    assert fall is not None
    assert fall.falls_to_deg is None
    assert fall.steepest_pct > 0


@pytest.mark.parametrize(
    ("place", "not_known"),
    [
        (around(0, 0, 3), (20, 20)),  # in it
        (around(0, 0, 0.5), (21, 21)),  # beside it
        (around(19, 0, 3), None),  # at the edge of the grid
        (around(60, 0, 3), None),  # past it
    ],
)
def test_nothing_is_said_where_a_height_is_not_known(
    place: list[LatLon], not_known: tuple[int, int] | None
) -> None:
    assert fall_of([place], in_degrees(plane(8, 90), not_known)) is None


def test_a_narrow_place_between_middles_of_cells_touches_them() -> None:
    fall = fall_of([around(0.45, 0.45, 0.01)], in_degrees(plane(8, 90)))
    assert fall is not None
    assert (fall.steepest_pct, fall.cells_count) == (8.0, 1)
