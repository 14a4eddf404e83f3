"""Whether an outline crosses or touches itself, so that its area would be no area of ground.

Latitude and longitude are laid on the plane that touches the ground at the first point, seen from
the middle of the earth. There every shortest way is a straight line, also at the poles and across
the 180th meridian. Right for outlines of up to some tens of miles.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import chain, islice, pairwise
from typing import TypeAlias

from generator.units import LatLon

# In parts of the earth's radius, east and north of the first point.
Spot: TypeAlias = "tuple[float, float]"


# A straight side of an outline, or a line: where it begins and where it ends.
StraightSide: TypeAlias = "tuple[Spot, Spot]"


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
    # the first in the order in which corners are typed, which is not that of the search
    return min(chain(_folds(spots), _crossings(spots)), default=None)


def _folds(spots: Sequence[Spot]) -> Iterator[tuple[int, int]]:
    """Yield sides that follow each other where the second lies on the first."""
    last = len(spots) - 1
    for number, corner in enumerate(spots):
        after = spots[number + 1 if number < last else 0]
        if _folds_back(spots[number - 1], corner, after):
            yield (number - 1, number) if number else (0, last)


def _crossings(spots: Sequence[Spot]) -> Iterator[tuple[int, int]]:
    """Yield sides that cross or touch, and do not follow each other."""
    last = len(spots) - 1
    sides = list(zip(spots, [*spots[1:], spots[0]], strict=True))
    along = _longer_axis(spots)
    across = 1 - along
    # from where to where each reaches along the axis, its number, and its reach across it
    waiting = sorted(
        (
            min(one[along], two[along]),
            max(one[along], two[along]),
            number,
            min(one[across], two[across]),
            max(one[across], two[across]),
        )
        for number, (one, two) in enumerate(sides)
    )
    for place, (_, ends, number, low, high) in enumerate(waiting, start=1):
        for begins, _, other, other_low, other_high in islice(waiting, place, None):
            # they begin in this order, so no later one reaches back to this side
            if begins > ends:
                break
            if other_low > high or low > other_high or abs(number - other) in (1, last):
                continue
            if _cross(sides[number], sides[other]):
                yield (number, other) if number < other else (other, number)


def first_hole_astray(rings_lat_lon: Sequence[Sequence[LatLon]]) -> int | None:
    """Return the number of a hole that is none in the outline, which is the first ring, or None.

    A hole lies inside of the outline and outside of all others, and its edge meets none of theirs.

    >>> field = [(41, -93), (41, -92.99), (41.01, -92.99), (41.01, -93)]
    >>> first_hole_astray([field, [(41.002, -92.998), (41.002, -92.996), (41.004, -92.997)]])
    >>> first_hole_astray([field, [(41.002, -92.998), (41.002, -92.98), (41.004, -92.997)]])
    1
    """
    rings = [on_the_plane(ring, rings_lat_lon[0][0]) for ring in rings_lat_lon]
    found = [max(pair) for pair in _rings_that_meet(rings)]
    outline, *holes = rings
    for number, hole in enumerate(holes, start=1):
        others = (other for at, other in enumerate(holes, start=1) if at != number)
        if not lies_inside(hole[0], outline) or any(lies_inside(hole[0], one) for one in others):
            found.append(number)
    return min(found, default=None)


def _rings_that_meet(rings: Sequence[Sequence[Spot]]) -> Iterator[tuple[int, int]]:
    """Yield the numbers of every two rings whose edges meet."""
    along = _longer_axis(rings[0])
    # from where to where each side reaches along the axis, the number of its ring, and the side
    waiting = sorted(
        (min(one[along], two[along]), max(one[along], two[along]), number, (one, two))
        for number, ring in enumerate(rings)
        for one, two in pairwise((*ring, ring[0]))
    )
    for place, (_, ends, number, side) in enumerate(waiting, start=1):
        for begins, _, other, other_side in islice(waiting, place, None):
            if begins > ends:
                break
            if number != other and lines_meet(side, other_side):
                yield number, other


def lies_inside(spot: Spot, outline: Sequence[Spot]) -> bool:
    """Return whether a spot lies inside an outline: whether north of it sides cross odd times.

    >>> lies_inside((1, 1), [(0, 0), (3, 0), (0, 3)]), lies_inside((2, 2), [(0, 0), (3, 0), (0, 3)])
    (True, False)
    """
    east, north = spot
    inside = False
    for begins, ends in pairwise((*outline, outline[0])):
        # a corner right above counts as west of it: an outline is crossed an even number of times
        if (begins[0] > east) != (ends[0] > east):
            part = (east - begins[0]) / (ends[0] - begins[0])
            inside ^= begins[1] + part * (ends[1] - begins[1]) > north
    return inside


def _longer_axis(spots: Sequence[Spot]) -> int:
    """Return the axis on which sides share the least reach, so that few need to be compared."""
    east, north = (max(axis) - min(axis) for axis in zip(*spots, strict=True))
    return 0 if east >= north else 1


def on_the_plane(points_lat_lon: Sequence[LatLon], touching: LatLon) -> list[Spot]:
    """Return points on the plane that touches the ground at one, in parts of the earth's radius."""
    radians, sin, cos = math.radians, math.sin, math.cos
    lat_0, lon_0 = map(radians, touching)
    sin_0, cos_0 = sin(lat_0), cos(lat_0)
    spots = []
    for lat_deg, lon_deg in points_lat_lon:
        lat, around = radians(lat_deg), radians(lon_deg) - lon_0
        cos_lat = cos(lat)
        # cos(lat_0) sin(lat) - sin(lat_0) cos(lat) cos(around), without taking near equals
        # from each other
        bend = 2 * sin(around / 2) ** 2
        north = sin(lat - lat_0) + sin_0 * cos_lat * bend
        depth = cos(lat - lat_0) - cos_0 * cos_lat * bend
        spots.append((cos_lat * sin(around) / depth, north / depth))
    return spots


def _folds_back(before: Spot, corner: Spot, after: Spot) -> bool:
    """Return whether the way out of a corner lies on the way into it."""
    back = (before[0] - corner[0], before[1] - corner[1])
    out = (after[0] - corner[0], after[1] - corner[1])
    return _turn(before, corner, after) == 0 and back[0] * out[0] + back[1] * out[1] > 0


def lines_meet(one: StraightSide, other: StraightSide) -> bool:
    """Return whether two straight lines, each from one spot to another, meet anywhere.

    >>> lines_meet(((0, 0), (2, 2)), ((0, 2), (2, 0)))
    True
    """
    # needed: lines that are one line pass what is behind it, however far apart they lie
    apart = any(
        max(one[0][axis], one[1][axis]) < min(other[0][axis], other[1][axis])
        or max(other[0][axis], other[1][axis]) < min(one[0][axis], one[1][axis])
        for axis in (0, 1)
    )
    return not apart and _cross(one, other)


def _cross(one: StraightSide, other: StraightSide) -> bool:
    """Return whether two lines, upright boxes around which meet, meet too."""
    return _on_both_sides(one, other) and _on_both_sides(other, one)


def _on_both_sides(line: StraightSide, other: StraightSide) -> bool:
    """Return whether a line, drawn on, parts the ends of another, or meets one."""
    left, right = _turn(*line, other[0]), _turn(*line, other[1])
    return left == 0 or right == 0 or (left > 0) != (right > 0)


def _turn(one: Spot, two: Spot, three: Spot) -> float:
    """Return above 0 where three spots turn left, below 0 where right, 0 where they are in line."""
    return (two[0] - one[0]) * (three[1] - one[1]) - (two[1] - one[1]) * (three[0] - one[0])
