"""How deep ground of one outline lies in another.

Both are laid on the plane that touches the ground at the first corner of one, of a round earth:
right to one percent for outlines of up to some miles. It is looked for at corners, at the middle
of what of each side lies in the other outline, and along the middle of each outline, twice as deep
there, as outlines that lie on each other share their whole width.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from generator.dataclass import dataclass
from generator.geometry.crossing import Spot, on_the_plane
from generator.units import LatLon, convert

MEAN_RADIUS_M = 6371008.8  # mean radius (2 a + b) / 3 of the ellipsoid of GPS, WGS 84
CUTS = 16  # across an outline, to find its middle
ROUNDING_M = 0.001  # more than numbers this long are off on an earth of this size


@dataclass(frozen=True, slots=True)
class _Ball:
    """An outline as a ball around its first corner; the earth's middle is at 0, 0, 0."""

    number: int
    middle_m: tuple[float, float, float]
    radius_m: float


def shared_depth_ft(one_lat_lon: Sequence[LatLon], other_lat_lon: Sequence[LatLon]) -> float:
    """Return how deep one outline lies in the other, in feet, 0 where they share no ground.

    >>> strip = [(41, -93), (41, -92.99), (41.0001, -92.99), (41.0001, -93)]
    >>> beside = [(41.00008, -93), (41.00008, -92.99), (41.0002, -92.99), (41.0002, -93)]
    >>> round(shared_depth_ft(strip, beside))  # 0.00002 degrees of latitude are 2.2 m
    7
    """
    one = plane_in_feet(on_the_plane(one_lat_lon, one_lat_lon[0]))
    other = plane_in_feet(on_the_plane(other_lat_lon, one_lat_lon[0]))
    if not _reach_each_other(one, other):
        return 0.0
    depths = [
        *_along_sides(one, other),
        *_along_sides(other, one),
        *_along_the_middle(one, other),
        *_along_the_middle(other, one),
    ]
    return max(depths, default=0.0)


def near_each_other(outlines_lat_lon: Sequence[Sequence[LatLon]]) -> Iterator[tuple[int, int]]:
    """Yield the numbers, the smaller first, of every two outlines that may share ground.

    Each is looked at as the ball around its first corner that holds its other corners: two balls
    that lie apart hold no ground together. Of hundreds of outlines few are near each other.
    """
    if not outlines_lat_lon:
        return
    balls = [_ball(number, outline) for number, outline in enumerate(outlines_lat_lon)]
    # along the axis on which they lie apart the most, few need to be compared
    reaches_m = [
        max(axis) - min(axis) for axis in zip(*(one.middle_m for one in balls), strict=True)
    ]
    axis = reaches_m.index(max(reaches_m))
    waiting = sorted(balls, key=lambda ball: ball.middle_m[axis] - ball.radius_m)
    for place, ball in enumerate(waiting):
        for other in waiting[place + 1 :]:
            # they begin in this order, so no later one reaches back to this ball
            if other.middle_m[axis] - other.radius_m > ball.middle_m[axis] + ball.radius_m:
                break
            if math.dist(ball.middle_m, other.middle_m) <= ball.radius_m + other.radius_m:
                yield min(ball.number, other.number), max(ball.number, other.number)


def _ball(number: int, outline_lat_lon: Sequence[LatLon]) -> _Ball:
    corners = [_in_space_m(lat_lon) for lat_lon in outline_lat_lon]
    radius_m = max(math.dist(corners[0], corner) for corner in corners)
    return _Ball(number, corners[0], radius_m + ROUNDING_M)


def _in_space_m(lat_lon: LatLon) -> tuple[float, float, float]:
    """Return where a point of a round earth lies from its middle, in meters."""
    lat, lon = (math.radians(degrees) for degrees in lat_lon)
    from_axis_m = MEAN_RADIUS_M * math.cos(lat)
    return from_axis_m * math.cos(lon), from_axis_m * math.sin(lon), MEAN_RADIUS_M * math.sin(lat)


def plane_in_feet(spots: Sequence[Spot]) -> list[Spot]:
    """Return spots of the touching plane in feet from where it touches."""
    radius_ft = convert(MEAN_RADIUS_M, "m", "ft")
    return [(east * radius_ft, north * radius_ft) for east, north in spots]


def _reach_each_other(one: Sequence[Spot], other: Sequence[Spot]) -> bool:
    return all(
        min(spot[axis] for spot in one) <= max(spot[axis] for spot in other)
        and min(spot[axis] for spot in other) <= max(spot[axis] for spot in one)
        for axis in (0, 1)
    )


def sides_of(outline: Sequence[Spot]) -> Iterator[tuple[Spot, Spot]]:
    """Yield the sides of an outline, the last one back to where it begins."""
    yield from pairwise((*outline, outline[0]))


def _along_sides(one: Sequence[Spot], other: Sequence[Spot]) -> Iterator[float]:
    """Yield how deep corners and sides of an outline lie in another."""
    for begins, ends in sides_of(one):
        parts = sorted({0.0, 1.0, *_cut_at(begins, ends, other)})
        middles = [(first + last) / 2 for first, last in pairwise(parts)]
        for part in (0.0, *middles):
            spot = _between(begins, ends, part)
            if lies_inside(spot, other):
                yield _to_the_edge(spot, other)


def _along_the_middle(one: Sequence[Spot], other: Sequence[Spot]) -> Iterator[float]:
    """Yield the width of the shared ground around spots in the middle of an outline."""
    for spot in _middle(one):
        if lies_inside(spot, other):
            yield 2 * min(_to_the_edge(spot, one), _to_the_edge(spot, other))


def _middle(outline: Sequence[Spot]) -> Iterator[Spot]:
    for axis in (0, 1):
        low, high = (end(spot[axis] for spot in outline) for end in (min, max))
        for cut in range(1, CUTS):
            at_ft = low + (high - low) * cut / CUTS
            crossed = sorted(_crossed(outline, axis, at_ft))
            for first, last in zip(crossed[::2], crossed[1::2], strict=False):
                across = (first + last) / 2
                yield (at_ft, across) if axis == 0 else (across, at_ft)


def _crossed(outline: Sequence[Spot], axis: int, at_ft: float) -> Iterator[float]:
    """Yield where the line at a place of an axis crosses the sides, on the other axis."""
    for begins, ends in sides_of(outline):
        # a corner on the line counts as below it: an outline is crossed an even number of times
        if (begins[axis] > at_ft) != (ends[axis] > at_ft):
            part = (at_ft - begins[axis]) / (ends[axis] - begins[axis])
            yield begins[1 - axis] + part * (ends[1 - axis] - begins[1 - axis])


def _cut_at(begins: Spot, ends: Spot, outline: Sequence[Spot]) -> Iterator[float]:
    """Yield the parts of a side at which an outline cuts it."""
    along = (ends[0] - begins[0], ends[1] - begins[1])
    for first, last in sides_of(outline):
        side = (last[0] - first[0], last[1] - first[1])
        turn = along[0] * side[1] - along[1] * side[0]
        # in line or side by side: where one ends on the other, sides next to them cut it
        if turn == 0:
            continue
        gap = (first[0] - begins[0], first[1] - begins[1])
        part = (gap[0] * side[1] - gap[1] * side[0]) / turn
        on_side = (gap[0] * along[1] - gap[1] * along[0]) / turn
        if 0 < part < 1 and 0 <= on_side <= 1:
            yield part


def _between(begins: Spot, ends: Spot, part_fraction: float) -> Spot:
    east, north = ends[0] - begins[0], ends[1] - begins[1]
    return begins[0] + part_fraction * east, begins[1] + part_fraction * north


def lies_inside(spot: Spot, outline: Sequence[Spot]) -> bool:
    """Return whether a spot lies inside an outline."""
    return sum(across > spot[1] for across in _crossed(outline, 0, spot[0])) % 2 == 1


def _to_the_edge(spot: Spot, outline: Sequence[Spot]) -> float:
    return min(from_side_ft(spot, begins, ends) for begins, ends in sides_of(outline))


def from_side_ft(spot: Spot, begins: Spot, ends: Spot) -> float:
    """Return how far a spot in feet lies from the nearest part of a side."""
    along = (ends[0] - begins[0], ends[1] - begins[1])
    length_2 = along[0] ** 2 + along[1] ** 2
    out = (spot[0] - begins[0], spot[1] - begins[1])
    # a side of no length is its corner
    part = (out[0] * along[0] + out[1] * along[1]) / length_2 if length_2 else 0.0
    near = _between(begins, ends, min(max(part, 0.0), 1.0))
    return math.hypot(spot[0] - near[0], spot[1] - near[1])
