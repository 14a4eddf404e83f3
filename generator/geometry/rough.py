"""Lengths and areas right to one percent, without a library: whether there is any to speak of.

Laid on the plane that touches a round earth at the first point. What a page shows is measured on
the ellipsoid instead.
"""

import math
from collections.abc import Sequence

from generator.geometry.crossing import Spot, on_the_plane
from generator.units import LatLon

RADIUS_FT = 20_902_231  # 6,371,000 m, the mean radius of the earth


def rough_length_ft(line_lat_lon: Sequence[LatLon]) -> float:
    """Return about how long a line of some miles is.

    >>> round(rough_length_ft([(41.0, -93.0), (41.0, -93.001)]))  # on the ellipsoid 276
    275
    """
    spots = on_the_plane(line_lat_lon, line_lat_lon[0])
    return RADIUS_FT * math.fsum(map(math.dist, spots, spots[1:]))


def rough_area_sq_ft(outline_lat_lon: Sequence[LatLon]) -> float:
    """Return about how much ground an outline holds that does not cross itself.

    >>> round(rough_area_sq_ft([(41.0, -93.0), (41.0, -93.001), (41.001, -93.001)]), -2)
    50200.0
    """
    spots = on_the_plane(outline_lat_lon, outline_lat_lon[0])
    ends: Sequence[Spot] = [*spots[1:], spots[0]]
    doubled = math.fsum(a[0] * b[1] - b[0] * a[1] for a, b in zip(spots, ends, strict=True))
    return abs(doubled) / 2 * RADIUS_FT * RADIUS_FT
