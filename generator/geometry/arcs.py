"""How far what lies on the ground is from the arc that shots from a stand may cross.

Laid on the plane that touches the ground at the stand, of a round earth: right to one percent for
some miles. The outer side of an arc is drawn with straight sides that lie on it or outside of it,
so that no ground of it is left out.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise

from generator.dataclass import dataclass
from generator.geometry.crossing import Spot, lies_inside, lines_meet, on_the_plane
from generator.units import LatLon, convert

MEAN_RADIUS_M = 6371008.8  # mean radius (2 a + b) / 3 of the ellipsoid of GPS, WGS 84
_WHOLE_TURN_DEG = 360
_REMEMBERED = 1 << 12
SIDE_DEG = 5  # of the turn that one straight side of the outer edge stands for, at the most


@dataclass(frozen=True, slots=True)
class Fire:
    """The ground that shots from a stand may cross, clockwise from one bearing to the other."""

    at_lat_lon: LatLon
    from_deg: float
    to_deg: float
    reach_ft: float

    @property
    def turn_deg(self) -> float:
        """How far it turns, all around where both sides are one bearing."""
        return (self.to_deg - self.from_deg) % _WHOLE_TURN_DEG or _WHOLE_TURN_DEG


@dataclass(frozen=True, slots=True)
class OnGround:
    """What lies on the ground: a point, a line so wide to either side, or an outline.

    Holes in an outline are none of its ground, but a shot into one may cross it.
    """

    points_lat_lon: tuple[LatLon, ...]
    is_outline: bool = False
    half_width_ft: float = 0.0
    holes_lat_lon: tuple[tuple[LatLon, ...], ...] = ()


# of one stand the same arc is asked for each of its sits
@lru_cache(maxsize=_REMEMBERED)
def apart_ft(fire: Fire, other: Fire | OnGround) -> float:
    """Return how far an arc is from another or from what lies there, in feet, 0 where they meet.

    >>> south = Fire((41.0, -93.0), 135, 225, 600)
    >>> round(apart_ft(south, OnGround(((40.99, -93.001), (40.99, -92.999)))))
    3048
    >>> apart_ft(south, OnGround(((40.999, -93.01), (40.999, -92.99))))
    0.0
    """
    one = arc_outline(fire)
    if isinstance(other, Fire):
        (east, north), *_ = _laid((other.at_lat_lon,), fire)
        outline = [(east + spot[0], north + spot[1]) for spot in arc_outline(other)]
        return _between(one, outline, is_outline=True)
    spots = _laid(other.points_lat_lon, fire)
    gap_ft = _between(one, spots, is_outline=other.is_outline)
    return max(0.0, gap_ft - other.half_width_ft)


def arc_outline(fire: Fire) -> list[Spot]:
    """Return an arc as an outline in feet east and north of its stand.

    >>> [(round(east), round(north)) for east, north in arc_outline(Fire((41, -93), 0, 5, 1000))]
    [(0, 0), (0, 1001), (87, 997)]
    """
    sides = math.ceil(fire.turn_deg / SIDE_DEG)
    # so far out that the middle of a straight side lies on the edge
    out_ft = fire.reach_ft / math.cos(math.radians(fire.turn_deg / sides / 2))
    bearings = [math.radians(fire.from_deg + fire.turn_deg * n / sides) for n in range(sides + 1)]
    edge = [(out_ft * math.sin(bearing), out_ft * math.cos(bearing)) for bearing in bearings]
    return edge[:-1] if fire.turn_deg == _WHOLE_TURN_DEG else [(0.0, 0.0), *edge]


def _laid(points_lat_lon: Sequence[LatLon], fire: Fire) -> list[Spot]:
    radius_ft = convert(MEAN_RADIUS_M, "m", "ft")
    return [
        (east * radius_ft, north * radius_ft)
        for east, north in on_the_plane(points_lat_lon, fire.at_lat_lon)
    ]


def _between(arc: Sequence[Spot], spots: Sequence[Spot], *, is_outline: bool) -> float:
    """Return how far an arc is from a line of spots, or from the outline that they are."""
    holds = lies_inside(spots[0], arc) or (is_outline and lies_inside(arc[0], spots))
    if holds:
        return 0.0
    lines = list(_lines(spots, is_outline=is_outline))
    return min(_gap_ft(side, line) for side in _sides_of(arc) for line in lines)


def _lines(spots: Sequence[Spot], *, is_outline: bool) -> Iterator[tuple[Spot, Spot]]:
    if is_outline:
        yield from _sides_of(spots)
    elif len(spots) == 1:
        yield spots[0], spots[0]
    else:
        yield from pairwise(spots)


def _gap_ft(one: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> float:
    if lines_meet(one, other):
        return 0.0
    ends = [from_side_ft(spot, *other) for spot in one] + [
        from_side_ft(spot, *one) for spot in other
    ]
    return min(ends)


def _sides_of(outline: Sequence[Spot]) -> Iterator[tuple[Spot, Spot]]:
    yield from pairwise((*outline, outline[0]))


def from_side_ft(spot: Spot, begins: Spot, ends: Spot) -> float:
    """Return how far a spot in feet lies from the nearest part of a side."""
    along = (ends[0] - begins[0], ends[1] - begins[1])
    length_2 = along[0] ** 2 + along[1] ** 2
    out = (spot[0] - begins[0], spot[1] - begins[1])
    # a side of no length is its corner
    part = (out[0] * along[0] + out[1] * along[1]) / length_2 if length_2 else 0.0
    part = min(max(part, 0.0), 1.0)
    return math.hypot(out[0] - part * along[0], out[1] - part * along[1])
