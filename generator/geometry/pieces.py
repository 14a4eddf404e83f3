"""Pieces of ground on a plane: strips, reaches around things, what is left, what is shared.

Spots are in feet on one plane. A strip is as wide as typed, with flat ends and mitred bends. A
reach never falls short of its distance: its straight sides lie on the round edge or outside of it.
The library is imported when the first piece is made: a check of a property needs none.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import TYPE_CHECKING, TypeAlias

from generator.geometry.crossing import Spot

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

# Ground or a line on a plane, in feet.
Piece: TypeAlias = "BaseGeometry"

SIDES_OF_A_QUARTER = 16  # of the turn around a point that straight sides stand for
FINE_SIDES_OF_A_QUARTER = 64  # where acres are made of it: within a ten-thousandth of round
SHARPEST_MITRE = 5  # how far out the outer corner of a bend may lie, in half widths
FINE_OF_A_WIDTH = 1 / 20  # of the width: what a center line may lose of its wandering
GRID_FT = 1 / 2**20  # corners of pieces come to lie on this grid, far finer than a millimeter


def outline_piece(outline: Sequence[Spot], holes: Sequence[Sequence[Spot]] = ()) -> Piece:
    """Return the ground inside an outline and outside of holes in it."""
    from shapely import Polygon

    return _on_grid(Polygon(outline, holes))


def line_piece(line: Sequence[Spot]) -> Piece:
    """Return a line, or a point where there is one spot alone."""
    from shapely import LineString, Point

    return _on_grid(Point(line[0]) if len(line) == 1 else LineString(line))


def strip_piece(line: Sequence[Spot], width_ft: float) -> Piece:
    """Return the ground of a strip along its center line: no ground is added at ends or bends.

    What of the line is finer than a part of the width is left out: points nearer to each other than
    the sides lie apart would tear the bends.

    >>> round(strip_piece([(0, 0), (400, 0)], 30).area)
    12000
    """
    middle = line_piece(line).simplify(width_ft * FINE_OF_A_WIDTH)
    return _on_grid(
        middle.buffer(
            width_ft / 2, cap_style="flat", join_style="mitre", mitre_limit=SHARPEST_MITRE
        )
    )


def may_lie_on_itself(line: Sequence[Spot], width_ft: float) -> bool:
    """Return whether a strip may lie on itself anywhere; False is certain, and needs no library.

    It cannot where the line turns by a right angle at most, taken together, and every stretch of
    it is at least as long as the strip is wide.

    >>> may_lie_on_itself([(0, 0), (300, 0), (600, 90)], 24)
    False
    >>> may_lie_on_itself([(0, 0), (300, 0), (90, 15)], 24)
    True
    """
    stretches = [(east - x, north - y) for (x, y), (east, north) in pairwise(line)]
    turned = [
        abs(math.atan2(x * north - y * east, x * east + y * north))
        for (x, y), (east, north) in pairwise(stretches)
    ]
    return math.fsum(turned) > math.pi / 2 or (
        len(stretches) > 1 and min(math.hypot(*stretch) for stretch in stretches) < width_ft
    )


def reach_piece(
    piece: Piece, distance_ft: float, sides_of_a_quarter: int = SIDES_OF_A_QUARTER
) -> Piece:
    """Return the ground within a distance of a piece, its own ground among it; never less of it.

    >>> round(reach_piece(line_piece([(0, 0)]), 100).area)  # pi times 10,000, and a little over
    31441
    """
    if distance_ft <= 0:
        return piece
    # laid out so that neither straight sides nor the grid fall short of it
    out_ft = distance_ft / math.cos(math.pi / (4 * sides_of_a_quarter)) + GRID_FT
    return _on_grid(piece.buffer(out_ft, quad_segs=sides_of_a_quarter))


def corners_of(piece: Piece) -> list[Spot]:
    """Return the corners of a piece of ground in one part, its first again at the end.

    >>> sorted(corners_of(outline_piece([(0, 0), (3, 0), (0, 4)]))[:-1])
    [(0.0, 0.0), (0.0, 4.0), (3.0, 0.0)]
    """
    from shapely import get_coordinates, get_exterior_ring

    return [(float(x), float(y)) for x, y in get_coordinates(get_exterior_ring(piece))]


def joined_piece(pieces: Iterable[Piece]) -> Piece:
    """Return the ground of several pieces as one."""
    from shapely import union_all

    return union_all(list(pieces), grid_size=GRID_FT)


def left_of(piece: Piece, without: Piece) -> Piece:
    """Return what of a piece lies outside of another."""
    from shapely import difference

    return difference(piece, without, grid_size=GRID_FT)


def shared_by(one: Piece, other: Piece) -> Piece:
    """Return the ground that lies in both of two pieces."""
    from shapely import intersection

    return intersection(one, other, grid_size=GRID_FT)


def between_pieces_ft(piece: Piece, other: Piece) -> float:
    """Return how far two pieces lie apart from edge to edge, 0 where they touch or lie in another.

    >>> round(between_pieces_ft(strip_piece([(0, 0), (400, 0)], 30), line_piece([(50, 65)])))
    50
    """
    return float(piece.distance(other))


def _on_grid(piece: Piece) -> Piece:
    from shapely import set_precision

    return set_precision(piece, GRID_FT)
