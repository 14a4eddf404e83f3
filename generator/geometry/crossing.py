"""Whether an outline crosses or touches itself, so that its area would be no area of ground.

Latitude and longitude are laid on the plane that touches the ground at the first point, seen from
the middle of the earth. There every shortest way is a straight line, also at the poles and across
the 180th meridian. Right for outlines of up to some tens of miles.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TypeAlias

from generator.dataclass import dataclass
from generator.units import LatLon

# In parts of the earth's radius, east and north of the first point.
Spot: TypeAlias = "tuple[float, float]"


@dataclass(frozen=True, slots=True)
class _Side:
    """A side of the outline from one corner to the next; `number` is that of its first corner."""

    number: int
    begins: Spot
    ends: Spot

    def reach(self, axis: int) -> tuple[float, float]:
        """Return the least and the most of the side on an axis."""
        one, other = self.begins[axis], self.ends[axis]
        return (one, other) if one <= other else (other, one)


def first_crossing(outline_lat_lon: Sequence[LatLon]) -> tuple[int, int] | None:
    """Return the first two sides that cross or touch where they should not, or None.

    A side is numbered from 0 like the corner it begins at; the last one ends at the first corner.
    Sides that follow each other may meet in their corner and nowhere else. No two corners that
    follow each other may be the same point.

    >>> first_crossing([(41, -93), (41, -92.99), (41.01, -93), (41.01, -92.99)])
    (1, 3)
    >>> first_crossing([(41, -93), (41, -92.99), (41.01, -92.99), (41.01, -93)]) is None
    True
    """
    spots = on_the_plane(outline_lat_lon, outline_lat_lon[0])
    ends = [*spots[1:], spots[0]]
    sides = [_Side(n, *pair) for n, pair in enumerate(zip(spots, ends, strict=True))]
    along = _longer_axis(spots)
    waiting = sorted(sides, key=lambda side: side.reach(along))
    found: list[tuple[int, int]] = []
    for place, side in enumerate(waiting):
        for other in waiting[place + 1 :]:
            # they begin in this order, so no later one reaches back to this side
            if other.reach(along)[0] > side.reach(along)[1]:
                break
            first, second = sorted((side, other), key=lambda edge: edge.number)
            if _meet_wrongly(first, second, len(sides)):
                found.append((first.number, second.number))
    # the first in the order in which corners are typed, which is not that of the search
    return min(found, default=None)


def _longer_axis(spots: Sequence[Spot]) -> int:
    """Return the axis on which sides share the least reach, so that few need to be compared."""
    east, north = (max(axis) - min(axis) for axis in zip(*spots, strict=True))
    return 0 if east >= north else 1


def on_the_plane(points_lat_lon: Sequence[LatLon], touching: LatLon) -> list[Spot]:
    """Return points on the plane that touches the ground at one, in parts of the earth's radius."""
    lat_0, lon_0 = (math.radians(degrees) for degrees in touching)
    spots = []
    for lat_lon in points_lat_lon:
        lat, lon = (math.radians(degrees) for degrees in lat_lon)
        east = math.cos(lat) * math.sin(lon - lon_0)
        # cos(lat_0) sin(lat) - sin(lat_0) cos(lat) cos(lon - lon_0), without taking near equals
        # from each other
        bend = 2 * math.sin((lon - lon_0) / 2) ** 2
        north = math.sin(lat - lat_0) + math.sin(lat_0) * math.cos(lat) * bend
        depth = math.cos(lat - lat_0) - math.cos(lat_0) * math.cos(lat) * bend
        spots.append((east / depth, north / depth))
    return spots


def _meet_wrongly(first: _Side, second: _Side, sides: int) -> bool:
    if second.number == first.number + 1:
        return _folds_back(first.begins, first.ends, second.ends)
    if first.number == 0 and second.number == sides - 1:
        return _folds_back(second.begins, second.ends, first.ends)
    return _touch(first, second)


def _folds_back(before: Spot, corner: Spot, after: Spot) -> bool:
    """Return whether the way out of a corner lies on the way into it."""
    back = (before[0] - corner[0], before[1] - corner[1])
    out = (after[0] - corner[0], after[1] - corner[1])
    return _turn(before, corner, after) == 0 and back[0] * out[0] + back[1] * out[1] > 0


def lines_meet(one: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> bool:
    """Return whether two straight lines, each from one spot to another, meet anywhere.

    >>> lines_meet(((0, 0), (2, 2)), ((0, 2), (2, 0)))
    True
    """
    return _touch(_Side(0, *one), _Side(1, *other))


def _touch(one: _Side, other: _Side) -> bool:
    # needed: sides in one line pass both tests below, however far apart they lie
    apart = any(
        one.reach(axis)[1] < other.reach(axis)[0] or other.reach(axis)[1] < one.reach(axis)[0]
        for axis in (0, 1)
    )
    return (
        not apart
        and _on_both_sides(one.begins, one.ends, other)
        and _on_both_sides(other.begins, other.ends, one)
    )


def _on_both_sides(begins: Spot, ends: Spot, other: _Side) -> bool:
    """Return whether the line through two spots parts the ends of a side, or meets one."""
    left, right = _turn(begins, ends, other.begins), _turn(begins, ends, other.ends)
    return left == 0 or right == 0 or (left > 0) != (right > 0)


def _turn(one: Spot, two: Spot, three: Spot) -> float:
    """Return above 0 where three spots turn left, below 0 where right, 0 where they are in line."""
    return (two[0] - one[0]) * (three[1] - one[1]) - (two[1] - one[1]) * (three[0] - one[0])
