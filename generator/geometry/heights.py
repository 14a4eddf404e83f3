"""How steep ground is, and which way it falls, from a grid of heights.

A cell's slope is that of its eight neighbors, those beside it counted twice. Of ground of which one
cell lacks a neighbor nothing is said: what is not known there may be steeper.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import cache
from typing import TYPE_CHECKING

from generator.dataclass import dataclass
from generator.geometry.crossing import Spot
from generator.geometry.geodesic import line_length_ft
from generator.geometry.rough import rough_length_ft
from generator.units import LatLon, convert

if TYPE_CHECKING:
    from pyproj import Proj

_WHOLE_TURN_DEG = 360
# How often the difference of two rows, or columns, of a window counts, and all of them together.
_COUNTED = (1, 2, 1)
_COUNTED_TWICE_OVER = 2 * sum(_COUNTED)  # each difference is over two cells
SLOPE_DECIMALS = 1  # of a percent: no grid of heights is any finer
LEAST_FALL = 0.001  # of a foot to a foot: below it no way counts as downhill


@dataclass(frozen=True, slots=True)
class HeightGrid:
    """Heights of the middles of square cells in feet, not a number where none is known.

    They stand in rows from north to south, each from west to east. The south-west corner and the
    size of a cell are in degrees, or in meters of a UTM zone; a zone south of the equator is below
    0, and 0 stands for degrees.
    """

    columns_count: int
    rows_count: int
    south_west: Spot
    cell_size: float
    utm_zone: int
    heights_ft: Sequence[float]

    def height_ft(self, column: int, row: int) -> float:
        """Return the height of a cell, counted from the south-west; not a number past the edge."""
        if not (0 <= column < self.columns_count and 0 <= row < self.rows_count):
            return math.nan
        return self.heights_ft[(self.rows_count - 1 - row) * self.columns_count + column]


@dataclass(frozen=True, slots=True)
class Fall:
    """How steep ground is at its steepest, the way it falls as a whole, and of how many cells.

    `falls_to_deg` is None where the falls of its cells take each other away.
    """

    steepest_pct: float
    falls_to_deg: float | None
    cells_count: int


def fall_of(
    outlines_lat_lon: Sequence[Sequence[LatLon]],
    grid: HeightGrid,
    holes_lat_lon: Sequence[Sequence[LatLon]] = (),
) -> Fall | None:
    """Return how ground inside outlines and outside of holes falls.

    None where the grid does not hold all of it.

    >>> heights = [feet for feet in (40.0, 30.0, 20.0, 10.0) for _ in range(4)]
    >>> plane = HeightGrid(4, 4, (-93.0, 41.0), 0.001, 0, heights)
    >>> fall_of([[(41.0012, -92.9988), (41.0018, -92.9988), (41.0018, -92.9982)]], plane)
    Fall(steepest_pct=2.7, falls_to_deg=180.0, cells_count=1)
    """
    cells = list(_cells(outlines_lat_lon, holes_lat_lon, grid))
    if not cells:
        return None
    cell_ft = _cell_ft(outlines_lat_lon[0][0], grid)
    rises = [_rise(column, row, grid, cell_ft) for column, row in cells]
    if any(math.isnan(part) for rise in rises for part in rise):
        return None
    steepest = max(math.hypot(*rise) for rise in rises)
    # downhill is away from where it rises
    east, north = (-math.fsum(part) / len(rises) for part in zip(*rises, strict=True))
    falls_to_deg = math.degrees(math.atan2(east, north)) % _WHOLE_TURN_DEG
    return Fall(
        round(convert(steepest, "fraction", "pct"), SLOPE_DECIMALS),
        falls_to_deg if math.hypot(east, north) >= LEAST_FALL else None,
        len(cells),
    )


def window_of(
    points_lat_lon: Sequence[LatLon], reach_ft: float, grid: HeightGrid
) -> tuple[range, range] | None:
    """Return the columns and rows, from the south-west, that lie around points.

    They go about so far past the points, and cells farther for the neighbors. None where the grid
    has no such cell.

    >>> frame = HeightGrid(100, 100, (-93.0, 41.0), 0.001, 0, ())
    >>> window_of([(41.0105, -92.9895), (41.0125, -92.9885)], 200, frame)
    (range(6, 16), range(6, 17))
    """
    cell_ft, ranges = _rough_cell_ft(points_lat_lon[0], grid), []
    for places, side_ft, count in zip(
        zip(*_on_grid(points_lat_lon, grid), strict=True),
        cell_ft,
        (grid.columns_count, grid.rows_count),
        strict=True,
    ):
        if not all(math.isfinite(place) for place in places):
            return None
        past = reach_ft / side_ft + len(_COUNTED)
        first, last = math.floor(min(places) - past), math.floor(max(places) + past)
        ranges.append(range(max(first, 0), min(last + 1, count)))
    columns, rows = ranges
    return (columns, rows) if columns and rows else None


def _cells(
    outlines_lat_lon: Sequence[Sequence[LatLon]],
    holes_lat_lon: Sequence[Sequence[LatLon]],
    grid: HeightGrid,
) -> Iterator[tuple[int, int]]:
    """Yield column and row, from the south-west, of every cell that the ground touches."""
    from shapely import Polygon, box, difference, intersects, prepare, union_all

    around, holes = (
        union_all([Polygon(_on_grid(outline, grid)) for outline in outlines])
        for outlines in (outlines_lat_lon, holes_lat_lon)
    )
    ground = difference(around, holes)
    prepare(ground)
    west, south, east, north = map(math.floor, ground.bounds)
    rows = range(south, north + 1)
    for column in range(west, east + 1):
        lower = [float(row) for row in rows]
        upper = [row + 1.0 for row in lower]
        sides = ([float(column)] * len(lower), [column + 1.0] * len(lower))
        in_it = intersects(ground, box(sides[0], lower, sides[1], upper))
        yield from ((column, row) for row, holds in zip(rows, in_it, strict=True) if holds)


def _on_grid(points_lat_lon: Sequence[LatLon], grid: HeightGrid) -> list[Spot]:
    """Return points in cells east and north of the south-west corner."""
    if grid.utm_zone:
        lon, lat = [lon for _, lon in points_lat_lon], [lat for lat, _ in points_lat_lon]
        easts, norths = _zone(grid.utm_zone)(lon, lat)
    else:
        easts, norths = [lon for _, lon in points_lat_lon], [lat for lat, _ in points_lat_lon]
    west, south = grid.south_west
    return [
        ((east - west) / grid.cell_size, (north - south) / grid.cell_size)
        for east, north in zip(easts, norths, strict=True)
    ]


@cache
def _zone(utm_zone: int) -> Proj:
    from pyproj import Proj

    return Proj(proj="utm", zone=abs(utm_zone), south=utm_zone < 0, ellps="WGS84")


def _cell_ft(at_lat_lon: LatLon, grid: HeightGrid) -> Spot:
    """Return how far the middles of cells are apart, to the east and to the north."""
    if grid.utm_zone:
        side_ft = convert(grid.cell_size, "m", "ft")
        return side_ft, side_ft
    lat, lon = at_lat_lon
    return (
        line_length_ft([at_lat_lon, (lat, lon + grid.cell_size)]),
        line_length_ft([at_lat_lon, (lat + grid.cell_size, lon)]),
    )


def _rough_cell_ft(at_lat_lon: LatLon, grid: HeightGrid) -> Spot:
    if grid.utm_zone:
        return _cell_ft(at_lat_lon, grid)
    lat, lon = at_lat_lon
    return (
        rough_length_ft([at_lat_lon, (lat, lon + grid.cell_size)]),
        rough_length_ft([at_lat_lon, (lat + grid.cell_size, lon)]),
    )


def _rise(column: int, row: int, grid: HeightGrid, cell_ft: Spot) -> Spot:
    """Return how much a cell rises to the east and to the north, in feet to a foot."""
    east = north = 0.0
    for counted, step in zip(_COUNTED, (-1, 0, 1), strict=True):
        east += counted * (
            grid.height_ft(column + 1, row + step) - grid.height_ft(column - 1, row + step)
        )
        north += counted * (
            grid.height_ft(column + step, row + 1) - grid.height_ft(column + step, row - 1)
        )
    return east / (_COUNTED_TWICE_OVER * cell_ft[0]), north / (_COUNTED_TWICE_OVER * cell_ft[1])
