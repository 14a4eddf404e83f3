"""Which of many things lie near each other at all, and how far one piece of ground lies on another.

Most things of a property are far from most others, so they are first looked at as balls around
their points, without a measuring library. Pieces lie on one plane, in feet.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import lru_cache

from generator.dataclass import dataclass
from generator.geometry.arcs import MEAN_RADIUS_M, OnGround
from generator.geometry.crossing import Spot
from generator.geometry.pieces import SHARPEST_MITRE, Piece, left_of, shared_by
from generator.geometry.plane import snapped_ft
from generator.units import LatLon, convert

ROUNDING_M = 0.001  # more than numbers this long are off on an earth of this size
ROUND_EARTH = 1.01  # a round earth is right to one part in a hundred
KEPT_BALLS = 4096  # of one property, whose things are asked for again and again
SAME_FT = 0.02  # widths this near each other are the same: points are typed no finer


@dataclass(frozen=True, slots=True)
class _Ball:
    """A thing as a ball around all its ground; the earth's middle is at 0, 0, 0."""

    number: int
    middle_m: tuple[float, ...]
    radius_m: float


def near_each_other(things: Sequence[OnGround], within_ft: float = 0) -> Iterator[tuple[int, int]]:
    """Yield the numbers, the smaller first, of every two things that may be so near each other.

    Each is looked at as a ball that holds all of it: two balls that lie apart hold no ground
    together. Of hundreds of things few are near each other.
    """
    if not things:
        return
    beside_m = convert(within_ft, "ft", "m") / 2
    balls = [_ball(number, thing, beside_m) for number, thing in enumerate(things)]
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


def _ball(number: int, thing: OnGround, beside_m: float) -> _Ball:
    middle, radius_m = _around_m(thing.points_lat_lon)
    # the outer corner of the sharpest bend reaches out the farthest
    beside_m += convert(thing.half_width_ft, "ft", "m") * SHARPEST_MITRE
    return _Ball(number, middle, radius_m * ROUND_EARTH + beside_m + ROUNDING_M)


@lru_cache(maxsize=KEPT_BALLS)
def _around_m(points_lat_lon: tuple[LatLon, ...]) -> tuple[tuple[float, ...], float]:
    """Return the middle of points, and how far from it the farthest of them lies."""
    corners = [_in_space_m(lat_lon) for lat_lon in points_lat_lon]
    middle = tuple((max(axis) + min(axis)) / 2 for axis in zip(*corners, strict=True))
    return middle, max(math.dist(middle, corner) for corner in corners)


def _in_space_m(lat_lon: LatLon) -> tuple[float, float, float]:
    """Return where a point of a round earth lies from its middle, in meters."""
    lat, lon = math.radians(lat_lon[0]), math.radians(lat_lon[1])
    from_axis_m = MEAN_RADIUS_M * math.cos(lat)
    return from_axis_m * math.cos(lon), from_axis_m * math.sin(lon), MEAN_RADIUS_M * math.sin(lat)


def lies_on(one: Piece, other: Piece, off_ft: float) -> bool:
    """Return whether two pieces of ground lie on each other by more than their points may be off.

    They do where the ground they share is wider than that, or as wide as the narrower of the two,
    or where one reaches deeper into the other than that, however narrow it is there.

    >>> from generator.geometry.pieces import strip_piece
    >>> strip, beside = strip_piece([(0, 0), (400, 0)], 24), strip_piece([(0, 15), (400, 15)], 24)
    >>> lies_on(strip, beside, 8), lies_on(strip, beside, 10)
    (True, False)
    >>> lies_on(strip, strip_piece([(50, -90), (50, 90)], 10), 16)
    True
    """
    shared = shared_by(one, other)
    if shared.area == 0:
        return False
    if _is_as_wide_as(shared, off_ft):
        return True
    if any(shared.intersects(piece.buffer(-off_ft)) for piece in (one, other)):
        return True
    return _is_as_wide_as(shared, min(_widest_ft(one), _widest_ft(other)))


def runs_in(line: Piece, ground: Piece, off_ft: float) -> bool:
    """Return whether a line runs in a piece of ground by more than its points may be off.

    It does where it is in it for longer than that, or for as long as the ground is wide; a point
    does where it lies in it.

    >>> from generator.geometry.pieces import line_piece, strip_piece
    >>> strip = strip_piece([(0, 0), (400, 0)], 24)
    >>> runs_in(line_piece([(50, -90), (50, 90)]), strip, 30)
    True
    """
    inside = shared_by(line, ground)
    if inside.is_empty or line.length == 0:
        return not inside.is_empty
    return float(inside.length) >= min(off_ft, _widest_ft(ground)) - SAME_FT


def past_ft(piece: Piece, ground: Piece) -> float:
    """Return how far a piece reaches past a piece of ground, at its farthest corner, 0 for none.

    >>> from generator.geometry.pieces import outline_piece, strip_piece
    >>> field = outline_piece([(0, 0), (300, 0), (300, 300), (0, 300)])
    >>> past_ft(strip_piece([(250, 150), (330, 150)], 24), field)
    30.0
    """
    from shapely import Point, get_coordinates

    corners = [Point(corner) for corner in get_coordinates(left_of(piece, ground))]
    return snapped_ft(max((corner.distance(ground) for corner in corners), default=0.0))


def shortest_way(one: Piece, other: Piece) -> Spot:
    """Return the shortest way from one piece to another, east and north, in feet.

    >>> from generator.geometry.pieces import line_piece
    >>> shortest_way(line_piece([(0, 0), (0, 90)]), line_piece([(40, 50)]))
    (40.0, 0.0)
    """
    from shapely import shortest_line

    (east, north), (far_east, far_north) = shortest_line(one, other).coords
    return far_east - east, far_north - north


def lies_on_the_side(way: Spot, bearing_deg: float) -> bool:
    """Return whether a way goes to the side that a bearing points to; one of no length does.

    >>> lies_on_the_side((40, 5), 90), lies_on_the_side((-40, 5), 90)
    (True, False)
    """
    if way == (0, 0):
        return True
    bearing = math.radians(bearing_deg)
    return snapped_ft(way[0] * math.sin(bearing) + way[1] * math.cos(bearing)) > 0


def shared_width_ft(one: Piece, other: Piece) -> float:
    """Return how wide the ground that two pieces share is where it is the widest, 0 for none.

    >>> from generator.geometry.pieces import strip_piece
    >>> strip, beside = strip_piece([(0, 0), (400, 0)], 24), strip_piece([(0, 15), (400, 15)], 24)
    >>> shared_width_ft(strip, beside)
    9.0
    """
    return snapped_ft(_widest_ft(shared_by(one, other)))


def _is_as_wide_as(piece: Piece, width_ft: float) -> bool:
    return not piece.buffer((SAME_FT - width_ft) / 2).is_empty


def _widest_ft(piece: Piece) -> float:
    """Return the width of the widest round spot in a piece: twice as far as it can be narrowed."""
    if piece.area == 0:
        return 0.0
    west, south, east, north = piece.bounds
    least_ft, most_ft = 0.0, min(east - west, north - south) / 2
    while most_ft - least_ft > SAME_FT / 8:
        middle_ft = (least_ft + most_ft) / 2
        if piece.buffer(-middle_ft).is_empty:
            most_ft = middle_ft
        else:
            least_ft = middle_ft
    return float(2 * most_ft)
