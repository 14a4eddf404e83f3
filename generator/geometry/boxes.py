"""Boxes of latitude and longitude around what lies on the ground.

What two boxes keep apart is not measured: of hundreds of things few lie near each other.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from generator.dataclass import dataclass
from generator.units import LatLon

# No degree of a meridian is shorter, nor one of the equator.
FT_IN_A_DEGREE = 362_700
_WHOLE_TURN_DEG = 360


@dataclass(frozen=True, slots=True)
class Box:
    """The least and the most of latitude and longitude."""

    south_deg: float
    north_deg: float
    west_deg: float
    east_deg: float


def box_of(points_lat_lon: Sequence[LatLon]) -> Box:
    """Return the box around points.

    >>> box_of([(41, -93), (41.5, -93.5)])
    Box(south_deg=41, north_deg=41.5, west_deg=-93.5, east_deg=-93)
    """
    lat, lon = zip(*points_lat_lon, strict=True)
    return Box(min(lat), max(lat), min(lon), max(lon))


def are_surely_apart(one: Box, other: Box, more_than_ft: float) -> bool:
    """Return whether what two boxes hold lies farther apart than a distance; False says nothing.

    >>> are_surely_apart(box_of([(41, -93)]), box_of([(41.01, -93)]), 3000)
    True
    >>> are_surely_apart(box_of([(41, -93)]), box_of([(41.01, -93)]), 4000)
    False
    """
    up_deg = max(other.south_deg - one.north_deg, one.south_deg - other.north_deg)
    if up_deg * FT_IN_A_DEGREE > more_than_ft:
        return True
    along_deg = max(other.west_deg - one.east_deg, one.west_deg - other.east_deg)
    # whichever way around is shorter, also across the 180th meridian
    behind_deg = max(one.east_deg, other.east_deg) - min(one.west_deg, other.west_deg)
    along_deg = min(along_deg, _WHOLE_TURN_DEG - behind_deg)
    if along_deg <= 0:
        return False
    farthest_deg = max(map(abs, (one.south_deg, one.north_deg, other.south_deg, other.north_deg)))
    straight_deg = math.degrees(2 * math.sin(math.radians(along_deg) / 2))
    straight_ft = straight_deg * FT_IN_A_DEGREE * math.cos(math.radians(farthest_deg))
    return straight_ft > more_than_ft
