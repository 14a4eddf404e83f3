"""From feet on the ground to the sheet of a drawing: its scale, and lines cut and thinned to it."""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import TypeAlias

from generator.dataclass import dataclass

PlaneSpot: TypeAlias = tuple[float, float]
# The southwestern and the northeastern corner of some ground, in feet.
Corners: TypeAlias = tuple[PlaneSpot, PlaneSpot]
LEAST_APART_PX = 1.0  # of two corners of a line that are both drawn
_TENTHS = 10


@dataclass(frozen=True, slots=True)
class SheetBox:
    """An upright rectangle on a sheet, in pixels across and down."""

    left_px: float
    top_px: float
    right_px: float
    bottom_px: float

    def grown(self, by_px: float) -> "SheetBox":
        """Return the box with so much more on each of its sides."""
        return SheetBox(
            self.left_px - by_px,
            self.top_px - by_px,
            self.right_px + by_px,
            self.bottom_px + by_px,
        )

    def meets(self, other: "SheetBox") -> bool:
        """Return whether two boxes share more than an edge."""
        return (
            self.left_px < other.right_px
            and other.left_px < self.right_px
            and self.top_px < other.bottom_px
            and other.top_px < self.bottom_px
        )

    def holds(self, other: "SheetBox") -> bool:
        """Return whether another box lies inside of this one, or is the same."""
        return (
            self.left_px <= other.left_px
            and other.right_px <= self.right_px
            and self.top_px <= other.top_px
            and other.bottom_px <= self.bottom_px
        )


def box_around(spots: Sequence[PlaneSpot]) -> SheetBox:
    """Return the smallest box around some spots of a sheet."""
    across, down = zip(*spots, strict=True)
    return SheetBox(min(across), min(down), max(across), max(down))


@dataclass(frozen=True, slots=True)
class Frame:
    """The sheet of a drawing: where its upper left corner lies on the ground, and its scale."""

    west_ft: float
    north_ft: float
    px_per_ft: float
    wide_px: float
    high_px: float

    @property
    def sheet(self) -> SheetBox:
        """The whole sheet."""
        return SheetBox(0.0, 0.0, self.wide_px, self.high_px)

    @property
    def corners(self) -> Corners:
        """The ground it shows."""
        south_ft = self.north_ft - self.high_px / self.px_per_ft
        east_ft = self.west_ft + self.wide_px / self.px_per_ft
        return (self.west_ft, south_ft), (east_ft, self.north_ft)

    def at(self, spot_ft: PlaneSpot) -> PlaneSpot:
        """Return where a spot of the ground lies on the sheet, in pixels across and down."""
        east_ft, north_ft = spot_ft
        return (
            (east_ft - self.west_ft) * self.px_per_ft,
            (self.north_ft - north_ft) * self.px_per_ft,
        )

    def laid(self, spots_ft: Sequence[PlaneSpot]) -> list[PlaneSpot]:
        """Return a line on the sheet, without corners too near the one before to be seen apart."""
        west_ft, north_ft, scale = self.west_ft, self.north_ft, self.px_per_ft
        laid: list[PlaneSpot] = []
        x_px = y_px = -math.inf
        for east, north in spots_ft:
            across_px, down_px = (east - west_ft) * scale, (north_ft - north) * scale
            if abs(across_px - x_px) + abs(down_px - y_px) >= LEAST_APART_PX:
                x_px, y_px = across_px, down_px
                laid.append((x_px, y_px))
        return laid


def frame_around(ground: Corners, wide_px: float, least_px: float, most_px: float) -> Frame:
    """Return the frame that shows some ground as large as a sheet so wide, and no higher, can.

    >>> frame_around(((0, 0), (400, 100)), 200, 100, 300)
    Frame(west_ft=0.0, north_ft=150.0, px_per_ft=0.5, wide_px=200, high_px=100)
    """
    (west_ft, south_ft), (east_ft, north_ft) = ground
    across_ft, up_ft = east_ft - west_ft, north_ft - south_ft
    scale = min(wide_px / across_ft, most_px / up_ft)
    high_px = min(most_px, max(least_px, math.ceil(up_ft * scale)))
    return Frame(
        (west_ft + east_ft) / 2 - wide_px / scale / 2,
        (south_ft + north_ft) / 2 + high_px / scale / 2,
        scale,
        wide_px,
        high_px,
    )


def cut_line(line: Sequence[PlaneSpot], box: SheetBox) -> Iterator[list[PlaneSpot]]:
    """Yield the parts of a line that lie in a box."""
    part: list[PlaneSpot] = []
    for begins, ends in pairwise(line):
        inside = _inside(begins, ends, box)
        if inside is None:
            continue
        if not part or part[-1] != inside[0]:
            if part:
                yield part
            part = [inside[0]]
        part.append(inside[1])
        if inside[1] != ends:
            yield part
            part = []
    if part:
        yield part


def _inside(
    begins: PlaneSpot, ends: PlaneSpot, box: SheetBox
) -> tuple[PlaneSpot, PlaneSpot] | None:
    """Return the part of a straight side that lies in a box, by what is left from side to side."""
    (x, y), (to_x, to_y) = begins, ends
    over_x, over_y = to_x - x, to_y - y
    first, last = 0.0, 1.0
    for step, room in (
        (-over_x, x - box.left_px),
        (over_x, box.right_px - x),
        (-over_y, y - box.top_px),
        (over_y, box.bottom_px - y),
    ):
        if step == 0:
            if room < 0:
                return None
            continue
        share = room / step
        if step < 0:
            first = max(first, share)
        else:
            last = min(last, share)
        if first > last:
            return None
    one = begins if first == 0 else (x + first * over_x, y + first * over_y)
    other = ends if last == 1 else (x + last * over_x, y + last * over_y)
    return one, other


def cut_outline(outline: Sequence[PlaneSpot], box: SheetBox) -> list[PlaneSpot]:
    """Return what of an outline lies in a box, cut by one side of the box after the other."""
    spots = list(outline)
    for axis, edge, sign in (
        (0, box.left_px, 1),
        (0, box.right_px, -1),
        (1, box.top_px, 1),
        (1, box.bottom_px, -1),
    ):
        if not spots:
            break
        spots = list(_cut_by(spots, axis, edge, sign))
    return spots


def _cut_by(spots: list[PlaneSpot], axis: int, edge_px: float, sign: int) -> Iterator[PlaneSpot]:
    before = spots[-1]
    was_in = sign * (before[axis] - edge_px) >= 0
    for spot in spots:
        is_in = sign * (spot[axis] - edge_px) >= 0
        if is_in != was_in:
            share = (edge_px - before[axis]) / (spot[axis] - before[axis])
            yield (
                before[0] + share * (spot[0] - before[0]),
                before[1] + share * (spot[1] - before[1]),
            )
        if is_in:
            yield spot
        before, was_in = spot, is_in


def strip_sides(line: Sequence[PlaneSpot], half_px: float) -> list[PlaneSpot]:
    """Return the outline of a strip along a line: flat ends, corners where its sides meet.

    >>> strip_sides([(0, 0), (10, 0)], 2)
    [(0.0, -2.0), (10.0, -2.0), (10.0, 2.0), (0.0, 2.0)]
    """
    ways = [_way(one, other) for one, other in pairwise(line)]
    offsets = [
        _offset(before, after)
        for before, after in zip([ways[0], *ways], [*ways, ways[-1]], strict=True)
    ]
    one = [
        (x + dx * half_px, y + dy * half_px) for (x, y), (dx, dy) in zip(line, offsets, strict=True)
    ]
    other = [
        (x - dx * half_px, y - dy * half_px) for (x, y), (dx, dy) in zip(line, offsets, strict=True)
    ]
    return one + other[::-1]


def _way(one: PlaneSpot, other: PlaneSpot) -> PlaneSpot:
    length = math.dist(one, other)
    return (other[0] - one[0]) / length, (other[1] - one[1]) / length


def _offset(before: PlaneSpot, after: PlaneSpot) -> PlaneSpot:
    """Return how far out a corner of a strip lies, to one side, in half widths."""
    # square to both ways; less far out than a sharp bend would have it
    x, y = before[1] + after[1], -before[0] - after[0]
    squared = max(x * x + y * y, 1.0)
    return 2 * x / squared, 2 * y / squared


def path_of(line: Sequence[PlaneSpot], *, closed: bool) -> str:
    """Return a line as the text of a path, in tenths of a pixel, each corner from the one before.

    >>> path_of([(0, 0), (10, 0.04), (10, 5.5)], closed=True)
    'M0 0l10 0l0 5.5z'
    """
    tenths = [(round(x * _TENTHS), round(y * _TENTHS)) for x, y in line]
    parts = [f"M{_written(tenths[0][0])} {_written(tenths[0][1])}"]
    for (x, y), (to_x, to_y) in pairwise(tenths):
        if (x, y) != (to_x, to_y):
            down = _written(to_y - y)
            parts.append(f"l{_written(to_x - x)}{'' if down[0] == '-' else ' '}{down}")
    return "".join(parts) + ("z" if closed else "")


def _written(tenths: int) -> str:
    whole, rest = divmod(abs(tenths), _TENTHS)
    sign = "-" if tenths < 0 else ""
    return f"{sign}{whole}.{rest}" if rest else f"{sign}{whole}"
