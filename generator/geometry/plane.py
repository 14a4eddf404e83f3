"""The plane of a property: equal-area, in feet, on the ellipsoid of satellite receivers.

Its middle is that of the property rounded to hundredths of a degree, and nothing else: no shape
that is added or taken away moves a digit of what is measured on another one. Areas on it are those
on the ellipsoid; lengths are right to one part in a million for some miles around.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cache
from typing import TYPE_CHECKING

from generator.geometry.crossing import Spot
from generator.units import LatLon, convert

if TYPE_CHECKING:
    from pyproj import Proj

MIDDLE_DECIMALS = 2
POINT_DECIMALS = 7  # of a degree, about a hundredth of a meter
SHARE_DECIMALS = 3  # of a share: a tenth of a percent
SNAP_DECIMALS = 2  # of a foot: nothing measured on typed points is known any finer


def middle_of_plane(location_lat_lon: LatLon) -> LatLon:
    """Return the middle of the plane of a property whose middle is typed.

    >>> middle_of_plane((41.02671, -93.01842))
    (41.03, -93.02)
    """
    lat, lon = location_lat_lon
    return round(lat, MIDDLE_DECIMALS), round(lon, MIDDLE_DECIMALS)


@cache
def _projection(middle: LatLon) -> Proj:
    from pyproj import Proj

    return Proj(proj="laea", lat_0=middle[0], lon_0=middle[1], ellps="WGS84", units="m")


def on_plane_ft(points_lat_lon: Iterable[LatLon], middle: LatLon) -> list[Spot]:
    """Return points in feet east and north of the middle of a plane.

    >>> [(round(east), round(north)) for east, north in on_plane_ft([(41.001, -93.0)], (41, -93))]
    [(0, 364)]
    """
    points = list(points_lat_lon)
    if not points:
        return []
    east_m, north_m = _projection(middle)([lon for _, lon in points], [lat for lat, _ in points])
    return [
        (convert(east, "m", "ft"), convert(north, "m", "ft"))
        for east, north in zip(east_m, north_m, strict=True)
    ]


def off_plane(spots: Sequence[Spot], middle: LatLon) -> list[LatLon]:
    """Return spots of a plane as latitude and longitude, rounded to seven decimals.

    >>> off_plane([(0.0, 0.0)], (41.03, -93.02))
    [(41.03, -93.02)]
    """
    if not spots:
        return []
    lon, lat = _projection(middle)(
        [convert(east, "ft", "m") for east, _ in spots],
        [convert(north, "ft", "m") for _, north in spots],
        inverse=True,
    )
    return [
        (round(one_lat, POINT_DECIMALS), round(one_lon, POINT_DECIMALS))
        for one_lat, one_lon in zip(lat, lon, strict=True)
    ]


def snapped_ft(length_ft: float) -> float:
    """Return a length as it meets a verdict, to a hundredth of a foot.

    >>> snapped_ft(65.999999999)
    66.0
    """
    return round(length_ft, SNAP_DECIMALS)


def snapped_share(share_fraction: float) -> float:
    """Return a share as it meets a verdict, to a thousandth.

    >>> snapped_share(0.10000000001)
    0.1
    """
    return round(share_fraction, SHARE_DECIMALS)
