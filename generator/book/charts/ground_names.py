"""Where names stand on a drawing: over no other name or sign, off no edge, over few lines."""

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from itertools import accumulate, pairwise

from generator.book.charts.ground_frame import PlaneSpot, SheetBox
from generator.dataclass import dataclass

# As high as the letters of a name are set, the line they stand in, and where in it they stand.
LETTERS_PX, LINE_PX, BASE_PX = 12.5, 16.0, 12.0
ASIDE_PX = 2.0  # kept free to both sides of a name
# Cells by which names are held against each other, and against the lines that are drawn.
_CELL_PX, _STEP_PX = 24.0, 8.0


@dataclass(frozen=True, slots=True)
class Anchor:
    """Where a name may stand: on a spot, or `away_px` beside it."""

    spot: PlaneSpot
    away_px: float = 0.0


@dataclass(frozen=True, slots=True)
class Name:
    """A name as it stands: its letters begin, end or have their middle at a place of the sheet."""

    words: str
    x_px: float
    y_px: float
    anchor: str
    box: SheetBox
    is_bold: bool = False
    leads_to: PlaneSpot | None = None


class Lettering:
    """The names of one sheet, placed one after the other."""

    def __init__(self, sheet: SheetBox, lines: Iterable[Sequence[PlaneSpot]]) -> None:
        self._sheet = sheet
        self._taken: defaultdict[tuple[int, int], list[SheetBox]] = defaultdict(list)
        self._over = _summed(sheet, lines)

    def take(self, box: SheetBox) -> None:
        """Keep names off what stands here."""
        for cell in _cells(box, _CELL_PX):
            self._taken[cell].append(box)

    def release(self, name: Name) -> None:
        """Take a name away again."""
        for cell in _cells(name.box, _CELL_PX):
            self._taken[cell].remove(name.box)

    def place(
        self, words: str, wide_px: float, anchors: Iterable[Anchor], most_lines: int
    ) -> Name | None:
        """Return a name where it lies over the fewest lines, the first of such places.

        None where it would lie over another name, off the sheet, or over more lines than so many.
        """
        best: Name | None = None
        least = most_lines + 1
        for anchor in anchors:
            for name in _beside(words, wide_px + 2 * ASIDE_PX, anchor):
                if not self._sheet.holds(name.box):
                    continue
                over = self._lines_under(name.box)
                if over < least and self._is_free(name.box):
                    best, least = name, over
            if least == 0:
                break
        if best is not None:
            self.take(best.box)
        return best

    def _is_free(self, box: SheetBox) -> bool:
        return not any(
            box.meets(other) for cell in _cells(box, _CELL_PX) for other in self._taken[cell]
        )

    def _lines_under(self, box: SheetBox) -> int:
        left, right = int(box.left_px // _STEP_PX), int(box.right_px // _STEP_PX) + 1
        above, below = self._over[int(box.top_px // _STEP_PX)], int(box.bottom_px // _STEP_PX) + 1
        return self._over[below][right] - self._over[below][left] - above[right] + above[left]


def _summed(sheet: SheetBox, lines: Iterable[Sequence[PlaneSpot]]) -> list[list[int]]:
    """Return how many cells of lines lie above and to the left of each corner of cells.

    The sheet is that of a drawing, within a pixel of whose corner it begins.
    """
    columns, rows = int(sheet.right_px // _STEP_PX) + 1, int(sheet.bottom_px // _STEP_PX) + 1
    counts = [[0] * columns for _ in range(rows)]
    for line in lines:
        for x, y in _along(line):
            column, row = int(x // _STEP_PX), int(y // _STEP_PX)
            if 0 <= column < columns and 0 <= row < rows:
                counts[row][column] += 1
    summed = [[0] * (columns + 1)]
    for counted in counts:
        before = summed[-1]
        summed.append(
            [
                so_far + above
                for so_far, above in zip(accumulate(counted, initial=0), before, strict=True)
            ]
        )
    return summed


def _cells(box: SheetBox, cell_px: float) -> Iterator[tuple[int, int]]:
    rows = range(int(box.top_px // cell_px), int(box.bottom_px // cell_px) + 1)
    for column in range(int(box.left_px // cell_px), int(box.right_px // cell_px) + 1):
        for row in rows:
            yield column, row


def _along(line: Sequence[PlaneSpot]) -> Iterator[PlaneSpot]:
    """Yield spots along a line, so near each other that none of its cells is passed over."""
    for (x, y), (to_x, to_y) in pairwise(line):
        steps = int(max(abs(to_x - x), abs(to_y - y)) // _STEP_PX) + 1
        for step in range(steps):
            yield x + (to_x - x) * step / steps, y + (to_y - y) * step / steps


def _beside(words: str, wide_px: float, anchor: Anchor) -> Iterator[Name]:
    """Yield a name on a spot, or at the eight places beside it, those to its sides first."""
    x, y = anchor.spot
    away, half = anchor.away_px, LINE_PX / 2
    if not away:
        yield _name(words, x - wide_px / 2, y - half, wide_px, "middle")
        return
    aslant = away * math.sqrt(0.5)
    yield _name(words, x + away, y - half, wide_px, "start")
    yield _name(words, x - away - wide_px, y - half, wide_px, "end")
    yield _name(words, x - wide_px / 2, y - away - LINE_PX, wide_px, "middle")
    yield _name(words, x - wide_px / 2, y + away, wide_px, "middle")
    for down in (y - aslant - LINE_PX, y + aslant):
        yield _name(words, x + aslant, down, wide_px, "start")
        yield _name(words, x - aslant - wide_px, down, wide_px, "end")


def _name(words: str, left_px: float, top_px: float, wide_px: float, anchor: str) -> Name:
    box = SheetBox(left_px, top_px, left_px + wide_px, top_px + LINE_PX)
    at = {
        "start": left_px + ASIDE_PX,
        "middle": left_px + wide_px / 2,
        "end": box.right_px - ASIDE_PX,
    }
    return Name(words, at[anchor], top_px + BASE_PX, anchor, box)
