"""Lengths and areas on the ground from points, on the ellipsoid that satellite receivers use.

A point is (latitude, longitude) in degrees on WGS 84, north and east positive. Sides are
geodesics, the shortest ways over the ellipsoid. The library is imported when the first points are
measured: most properties have none, and a check of them must not wait for it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import cache
from typing import TYPE_CHECKING

from generator.units import LatLon, convert

if TYPE_CHECKING:
    from pyproj import Geod

ELLIPSOID = "WGS84"
HALF_A_TURN_DEG = 180
MI_IN_A_DEGREE = 69.5  # of latitude at the pole, where it is longest: 111.694 km; rounded up


@cache
def _geod() -> Geod:
    from pyproj import Geod

    return Geod(ellps=ELLIPSOID)


def _degrees(points: Sequence[LatLon]) -> tuple[list[float], list[float]]:
    """Return longitudes and latitudes, in the order the library takes them."""
    return [lon for _, lon in points], [lat for lat, _ in points]


def line_length_ft(line_lat_lon: Sequence[LatLon]) -> float:
    """Return the length along a line from its first point to its last, in feet.

    >>> round(line_length_ft([(41.0, -93.0), (41.0, -93.001)]), 1)
    276.0
    """
    return convert(float(_geod().line_length(*_degrees(line_lat_lon))), "m", "ft")


def outline_area_ac(
    outline_lat_lon: Sequence[LatLon], holes_lat_lon: Sequence[Sequence[LatLon]] = ()
) -> float:
    """Return the area inside an outline and outside of holes in it, in acres.

    Whichever way round each is walked; the last point is joined to the first. Right for outlines
    that do not cross themselves.

    >>> round(outline_area_ac([(41.0, -93.0), (41.0, -93.001), (41.001, -93.001)]), 4)
    1.1544
    """
    # below 0 where an outline is walked the other way round
    around_sq_m, *inside_sq_m = (
        abs(float(_geod().polygon_area_perimeter(*_degrees(ring))[0]))
        for ring in (outline_lat_lon, *holes_lat_lon)
    )
    return convert(around_sq_m - math.fsum(inside_sq_m), "sq_m", "ac")


def outline_perimeter_ft(
    outline_lat_lon: Sequence[LatLon], holes_lat_lon: Sequence[Sequence[LatLon]] = ()
) -> float:
    """Return the way once around an outline and around each hole in it, in feet.

    The last point is joined to the first.

    >>> round(outline_perimeter_ft([(41.0, -93.0), (41.0, -93.001), (41.001, -93.001)]), 1)
    1097.5
    """
    rings = (outline_lat_lon, *holes_lat_lon)
    around_m = (float(_geod().polygon_area_perimeter(*_degrees(ring))[1]) for ring in rings)
    return convert(math.fsum(around_m), "m", "ft")


def distances_mi(from_lat_lon: LatLon, to_lat_lon: Sequence[LatLon]) -> list[float]:
    """Return how far each point lies from the first one named, in miles.

    >>> [round(one, 2) for one in distances_mi((41.0, -93.0), [(41.0, -93.0), (42.0, -93.0)])]
    [0.0, 69.01]
    """
    lons, lats = _degrees(to_lat_lon)
    here = [from_lat_lon] * len(to_lat_lon)
    _, _, apart_m = _geod().inv(*_degrees(here), lons, lats)
    return [convert(float(distance_m), "m", "mi") for distance_m in apart_m]


def are_surely_within_mi(
    from_lat_lon: LatLon, to_lat_lon: Sequence[LatLon], most_mi: float
) -> bool:
    """Return whether every point lies within a distance of the first, without measuring it.

    Along the meridian and then along the parallel it is never nearer than straight there, and no
    degree of either is longer than MI_IN_A_DEGREE. False says nothing.

    >>> are_surely_within_mi((41.0, -93.0), [(41.1, -93.1)], 20)
    True
    """
    lat, lon = from_lat_lon
    lats, lons = zip(*to_lat_lon, strict=True)
    # of a box around them no corner lies farther off: enough for nearly all there is
    east_deg, north_deg = (
        max(max(axis) - own, own - min(axis)) for axis, own in ((lons, lon), (lats, lat))
    )
    if east_deg <= HALF_A_TURN_DEG and (north_deg + east_deg) * MI_IN_A_DEGREE <= most_mi:
        return True
    # whichever way around is shorter, also across the 180th meridian
    around_deg = [min(abs(east - lon) % 360, -abs(east - lon) % 360) for _, east in to_lat_lon]
    up_deg = [abs(north - lat) for north, _ in to_lat_lon]
    apart_deg = map(sum, zip(around_deg, up_deg, strict=True))
    return all(distance_deg * MI_IN_A_DEGREE <= most_mi for distance_deg in apart_deg)
