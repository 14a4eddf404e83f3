"""Shapes as they lie on the sheet of a drawing, and where their names may stand there."""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from operator import itemgetter

from generator.book.charts.ground_frame import (
    Frame,
    PlaneSpot,
    SheetBox,
    box_around,
    cut_line,
    cut_outline,
    strip_sides,
)
from generator.book.charts.ground_names import Anchor
from generator.book.charts.ground_signs import KIND_SIGNS, Sign
from generator.dataclass import dataclass
from generator.plan.land.drawn import GroundShape, fewer_corners

SIGN_PX, GAP_PX = 5.0, 7.0
# Narrower ground is drawn as a line, smaller as the sign of a point.
LEAST_STRIP_PX, LEAST_GROUND_PX = 3.0, 7.0
OVER_PX = 4.0  # of an outline that is cut lies beyond the edge, so that no line runs along it
LAID_OFF_PX = 0.2  # how far a line is laid from where it runs, before it is thinned to be drawn
LED_PX = (18.0, 30.0, 45.0, 65.0)  # how far from a shape a number with a line to it may stand
_LEAST_CORNERS, _ROUND_SIDES = 3, 24
_CHORDS, _ALONG = (
    (0.5, 0.35, 0.65, 0.2, 0.8),
    (0.5, 0.3, 0.7, 0.15, 0.85, 0.4, 0.6, 0.05, 0.95, 0.22, 0.78),
)

_ACROSS, _DOWN = itemgetter(0), itemgetter(1)


@dataclass(frozen=True, slots=True)
class LaidShape:
    """A shape on the sheet: ground in an outline, or lines, or a sign at a spot.

    `lines` of ground are the parts of its outline that are on the sheet, `holes` outlines in it
    that are none of it.
    """

    shape: GroundShape
    sign: Sign
    outline: list[PlaneSpot]
    lines: list[list[PlaneSpot]]
    spot: PlaneSpot
    holes: Sequence[list[PlaneSpot]] = ()

    @property
    def is_sign(self) -> bool:
        """Whether a sign at a spot is all that is drawn of it."""
        return not self.outline and not self.lines

    def sign_box(self) -> SheetBox:
        """Return the room that a sign takes at its spot."""
        x, y = self.spot
        return SheetBox(x, y, x, y).grown(SIGN_PX)


def laid_on(shape: GroundShape, frame: Frame) -> LaidShape | None:
    """Return a shape as it lies on a sheet; None where it lies beside it."""
    sign, half_px = KIND_SIGNS[shape.kind], shape.half_width_ft * frame.px_per_ft
    spots = frame.laid(shape.spots_ft)
    if shape.is_outline:
        return _ground(shape, sign, spots, frame)
    if len(spots) == 1:
        if half_px < SIGN_PX:
            return _at_a_spot(shape, sign, spots[0], frame)
        return _ground(shape, sign, _round(spots[0], half_px), frame)
    if 2 * half_px >= LEAST_STRIP_PX:
        return _ground(shape, sign, strip_sides(fewer_corners(spots, LAID_OFF_PX), half_px), frame)
    lines = [fewer_corners(line, LAID_OFF_PX) for line in cut_line(spots, frame.sheet)]
    if not lines:
        return None
    return LaidShape(shape, sign, [], lines, _part_way(max(lines, key=_length_px), 0.5))


def _at_a_spot(shape: GroundShape, sign: Sign, spot: PlaneSpot, frame: Frame) -> LaidShape | None:
    laid = LaidShape(shape, sign, [], [], spot)
    return laid if frame.sheet.holds(laid.sign_box()) else None


def _ground(
    shape: GroundShape, sign: Sign, spots: list[PlaneSpot], frame: Frame
) -> LaidShape | None:
    outline = cut_outline(spots, frame.sheet.grown(OVER_PX))
    if not outline:
        return None
    around = box_around(outline)
    if not around.meets(frame.sheet):
        return None
    across, down = around.right_px - around.left_px, around.bottom_px - around.top_px
    middle = (around.left_px + around.right_px) / 2, (around.top_px + around.bottom_px) / 2
    if len(outline) < _LEAST_CORNERS or max(across, down) < LEAST_GROUND_PX:
        return _at_a_spot(shape, sign, middle, frame)
    closed = fewer_corners([*outline, outline[0]], LAID_OFF_PX)
    outline, edges = closed[:-1], list(cut_line(closed, frame.sheet))
    # of what has no pattern nothing is seen where its edge is not
    if not edges and not sign.ground:
        return None
    return LaidShape(shape, sign, outline, edges, middle, list(_holes(shape, frame)))


def _holes(shape: GroundShape, frame: Frame) -> Iterator[list[PlaneSpot]]:
    """Yield the holes of ground that are on the sheet and large enough to be seen."""
    for hole in shape.holes_ft:
        cut = cut_outline(frame.laid(hole), frame.sheet.grown(OVER_PX))
        if len(cut) < _LEAST_CORNERS:
            continue
        around = box_around(cut)
        across, down = around.right_px - around.left_px, around.bottom_px - around.top_px
        if max(across, down) >= LEAST_GROUND_PX and around.meets(frame.sheet):
            yield fewer_corners([*cut, cut[0]], LAID_OFF_PX)[:-1]


def _round(spot: PlaneSpot, around_px: float) -> list[PlaneSpot]:
    """Return the outline of round ground."""
    turns = [2 * math.pi * number / _ROUND_SIDES for number in range(_ROUND_SIDES)]
    return [
        (spot[0] + around_px * math.cos(turn), spot[1] + around_px * math.sin(turn))
        for turn in turns
    ]


def places_for(one: LaidShape, wide_px: float) -> Iterator[Anchor]:
    """Yield where a name so wide may stand, the clearest places first."""
    if one.is_sign:
        yield Anchor(one.spot, SIGN_PX + 2)
        return
    # of what lies around all else the name stands at its edge
    if one.outline and not one.sign.is_edge:
        yield from _chords(one.outline, wide_px)
    if one.lines:
        longest = max(one.lines, key=_length_px)
        yield from (Anchor(_part_way(longest, share), GAP_PX) for share in _ALONG)
        yield from (Anchor(end, GAP_PX) for end in _ends(longest))


def places_led_to(one: LaidShape) -> Iterator[Anchor]:
    """Yield where a number may stand away from a shape, with a line that leads to it."""
    spot = one.spot
    if one.lines:
        longest = max(one.lines, key=_length_px)
        spot = _part_way(longest, 0.5)
    yield from (Anchor(spot, away_px) for away_px in LED_PX)


def _ends(line: Sequence[PlaneSpot]) -> list[PlaneSpot]:
    """Return the spots of a line that lie farthest left and right, and farthest up and down."""
    return [pick(line, key=axis) for axis in (_ACROSS, _DOWN) for pick in (min, max)]


def _chords(outline: list[PlaneSpot], wide_px: float) -> Iterator[Anchor]:
    """Yield spots inside an outline with so much room to their sides."""
    around = box_around(outline)
    for share in _CHORDS:
        y = around.top_px + share * (around.bottom_px - around.top_px)
        crossed = sorted(_crossed_at(outline, y))
        rooms = list(zip(crossed[::2], crossed[1::2], strict=False))
        begins, ends = max(rooms, key=lambda room: room[1] - room[0], default=(0.0, 0.0))
        if ends - begins > wide_px:
            yield Anchor(((begins + ends) / 2, y))


def _crossed_at(outline: list[PlaneSpot], at_px: float) -> Iterator[float]:
    for (x, y), (to_x, to_y) in pairwise([*outline, outline[0]]):
        if (y <= at_px) != (to_y <= at_px):
            yield x + (at_px - y) / (to_y - y) * (to_x - x)


def _length_px(line: Sequence[PlaneSpot]) -> float:
    return sum(math.dist(*side) for side in pairwise(line))


def _part_way(line: Sequence[PlaneSpot], way_fraction: float) -> PlaneSpot:
    """Return the spot at a share of the way along a line."""
    left_px = way_fraction * _length_px(line)
    for begins, ends in pairwise(line):
        side_px = math.dist(begins, ends)
        if side_px >= left_px > 0:
            part = left_px / side_px
            return (
                begins[0] + part * (ends[0] - begins[0]),
                begins[1] + part * (ends[1] - begins[1]),
            )
        left_px -= side_px
    return line[0]
