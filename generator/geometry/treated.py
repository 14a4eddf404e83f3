"""What reaches around things take of a piece of ground: its share, and the stretches along it.

Shares are rounded to a billionth, so that the same ground gives the same share on every machine.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from generator.dataclass import dataclass
from generator.geometry.crossing import Spot
from generator.geometry.pieces import Piece, corners_of, joined_piece, shared_by
from generator.geometry.plane import snapped_ft

TAKEN_DECIMALS = 9
VERDICT_DECIMALS = 3  # less than that of a place is nothing left
LONG_TIMES = 2  # an outline so many times as long as wide has two ends
EVEN_WITHIN = 0.01  # share by which a cut along a whole place may differ from an even one
_TURN_DEG, _EIGHTH_DEG, _SQUARE_DEG = 360, 45, 90


@dataclass(frozen=True, slots=True)
class Axis:
    """The line along a piece of ground from its one end to the other, and how wide the piece is.

    `turn_deg` is how far the frame it is laid in turns away from the compass.
    """

    line: tuple[Spot, ...]
    width_ft: float
    turn_deg: float = 0.0

    @property
    def length_ft(self) -> float:
        """How long it is."""
        return math.fsum(math.dist(*side) for side in pairwise(self.line))

    @property
    def start_deg(self) -> float:
        """On which side of the piece its first end lies, to an eighth of the compass."""
        east = (self.line[0][0] + self.line[-1][0]) / 2
        north = (self.line[0][1] + self.line[-1][1]) / 2
        return _eighth(_bearing((east, north), self.line[0]) + self.turn_deg)


@dataclass(frozen=True, slots=True)
class OwnFrame:
    """A frame of a place's own: from its first spot, along the way to the spot farthest from it.

    What is measured in it does not change by a digit where the place and all about it are moved or
    turned together.
    """

    origin: Spot
    toward: Spot

    @property
    def turn_deg(self) -> float:
        """How far it turns away from the compass."""
        return _bearing(self.origin, self.toward) - _SQUARE_DEG

    def laid(self, spots: Sequence[Spot]) -> list[Spot]:
        """Return spots of the plane in this frame."""
        reach = math.dist(self.origin, self.toward)
        east = (self.toward[0] - self.origin[0]) / reach
        north = (self.toward[1] - self.origin[1]) / reach
        moved = [(over - self.origin[0], up - self.origin[1]) for over, up in spots]
        return [(over * east + up * north, up * east - over * north) for over, up in moved]


def frame_of(spots: Sequence[Spot]) -> OwnFrame:
    """Return the own frame of a place.

    >>> frame_of([(10, 10), (10, 40)]).laid([(10, 40), (0, 10)])
    [(30.0, 0.0), (0.0, 10.0)]
    """
    return OwnFrame(spots[0], max(spots, key=lambda spot: math.dist(spots[0], spot)))


@dataclass(frozen=True, slots=True)
class TakenStretch:
    """A stretch that is taken of a piece: where along its axis, how wide at the most.

    `side_deg` is the side it lies along, to an eighth of the compass; None where it reaches across
    the whole width.
    """

    first_ft: float
    last_ft: float
    widest_ft: float
    side_deg: float | None


def share_taken(place: Piece, reaches: Sequence[Piece]) -> float:
    """Return the share of a place that reaches take together.

    >>> from generator.geometry.pieces import outline_piece
    >>> field = outline_piece([(0, 0), (100, 0), (100, 60), (0, 60)])
    >>> share_taken(field, [outline_piece([(0, 0), (25, 0), (25, 90), (0, 90)])])
    0.25
    """
    if not reaches:
        return 0.0
    taken = shared_by(place, joined_piece(reaches))
    return min(1.0, round(taken.area / place.area, TAKEN_DECIMALS))


def is_nothing(left_fraction: float) -> bool:
    """Return whether a share of a place is too little to count as ground.

    >>> is_nothing(0.0004), is_nothing(0.0006)
    (True, False)
    """
    return round(left_fraction, VERDICT_DECIMALS) == 0


def axis_of_outline(spots: Sequence[Spot], piece: Piece, turn_deg: float = 0.0) -> Axis | None:
    """Return the line along an outline, from the end its first corner lies at.

    None where it is not much longer than wide, so that nobody could say which its ends are.
    """
    from shapely import oriented_envelope

    corners = corners_of(oriented_envelope(piece))[:-1]
    sides = [math.dist(corners[n], corners[(n + 1) % 4]) for n in range(4)]
    if max(sides) < LONG_TIMES * min(sides):
        return None
    # from the middle of one short side to that of the other
    turn = 0 if sides[0] < sides[1] else 1
    ends = [_middle(corners[n % 4], corners[(n + 1) % 4]) for n in (turn, turn + 2)]
    ends.sort(key=lambda end: math.dist(end, spots[0]))
    return Axis(tuple(ends), min(sides), turn_deg)


def stretches_taken(axis: Axis, place: Piece, reaches: Sequence[Piece]) -> tuple[TakenStretch, ...]:
    """Return the stretches that reaches take together of a place, in their order along its axis."""
    taken = shared_by(place, joined_piece(reaches))
    found = [_stretch(axis, part) for part in _parts(taken)]
    # what is no wider was left by rounding
    wide = (stretch for stretch in found if stretch.widest_ft > 0)
    return tuple(sorted(wide, key=lambda stretch: (stretch.first_ft, stretch.last_ft)))


def runs_along(axis: Axis, place: Piece, reaches: Sequence[Piece]) -> bool:
    """Return whether what reaches take runs along the whole place, and is as wide everywhere."""
    taken = shared_by(place, joined_piece(reaches))
    parts = [(part, _stretch(axis, part)) for part in _parts(taken)]
    return bool(parts) and all(
        stretch.side_deg is not None
        and part.area >= axis.length_ft * stretch.widest_ft * (1 - EVEN_WITHIN)
        for part, stretch in parts
    )


def _parts(taken: Piece) -> Iterator[Piece]:
    """Yield each piece of ground by itself: lines and points at which things touch are none."""
    for part in getattr(taken, "geoms", [taken]):
        if part.area > 0:
            yield part


def _stretch(axis: Axis, part: Piece) -> TakenStretch:
    seen = [_along(axis.line, spot) for spot in corners_of(part)]
    firsts, offsets = [along for along, _, _ in seen], [across for _, across, _ in seen]
    widest = max(offsets) - min(offsets)
    side = None
    if widest < axis.width_ft * (1 - EVEN_WITHIN):
        # to the left of the line where most of it lies there
        on_the_left = max(offsets) + min(offsets) > 0
        middle = (min(firsts) + max(firsts)) / 2
        bearing = min(seen, key=lambda one: abs(one[0] - middle))[2]
        across = -_SQUARE_DEG if on_the_left else _SQUARE_DEG
        side = _eighth(bearing + across + axis.turn_deg)
    return TakenStretch(snapped_ft(min(firsts)), snapped_ft(max(firsts)), snapped_ft(widest), side)


def _along(line: Sequence[Spot], spot: Spot) -> tuple[float, float, float]:
    """Return how far along a line a spot lies, how far to its left, and where the line runs."""
    _, along, left, bearing = min(_beside(line, spot), key=lambda one: one[0])
    return along, left, bearing


def _beside(line: Sequence[Spot], spot: Spot) -> Iterator[tuple[float, float, float, float]]:
    """Yield of each stretch of a line how far a spot is from it, and what `_along` says by it."""
    before = 0.0
    for one, other in pairwise(line):
        length = math.dist(one, other)
        if not length:
            continue  # a phone that stands still writes one spot again and again
        east, north = (other[0] - one[0]) / length, (other[1] - one[1]) / length
        over, up = spot[0] - one[0], spot[1] - one[1]
        along = min(max(over * east + up * north, 0.0), length)
        gap = math.hypot(over - along * east, up - along * north)
        left = gap if east * up - north * over >= 0 else -gap
        yield gap, before + along, left, _bearing(one, other)
        before += length


def _bearing(one: Spot, other: Spot) -> float:
    return math.degrees(math.atan2(other[0] - one[0], other[1] - one[1])) % _TURN_DEG


def _eighth(bearing_deg: float) -> float:
    return round(bearing_deg / _EIGHTH_DEG) * _EIGHTH_DEG % _TURN_DEG


def _middle(one: Spot, other: Spot) -> Spot:
    return (one[0] + other[0]) / 2, (one[1] + other[1]) / 2
