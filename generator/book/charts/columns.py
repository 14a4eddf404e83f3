"""Columns side by side: what several things come to, season by season or weekend by weekend."""

import math
from dataclasses import dataclass

from markupsafe import Markup

from generator.book.charts.drawing import (
    Fill,
    box,
    paint,
    percent,
    picture,
    pixels,
    rule,
    words,
)

PLOT_PX, HEAD_PX, FOOT_PX, LEVEL_PX = 180, 22, 24, 3
FILLED = 0.8  # of the room a column has
STEPS = (1, 2, 2.5, 5, 10)
LINES_AT_MOST = 5


@dataclass(frozen=True, slots=True)
class Piece:
    """A part of a column: its value, its fill, and the id of the number it stands for."""

    value: float
    fill: Fill
    identity: str


@dataclass(frozen=True, slots=True)
class Column:
    """Pieces stacked from the ground up under one label; `above` is a level drawn across them.

    A label of nothing leaves the column without one.
    """

    label: str
    pieces: tuple[Piece, ...]
    above: Piece | None = None


@dataclass(frozen=True, slots=True)
class Columns:
    """A picture of columns: an id of our own, its title, what is heard, and the columns."""

    name: str
    title: str
    told: str
    columns: tuple[Column, ...]


def drawn(chart: Columns) -> Markup:
    """Return the picture; the highest value reaches just under its upper edge."""
    top = scale_top(max((_height(one) for one in chart.columns), default=0.0))
    fills = {piece.fill for one in chart.columns for piece in one.pieces}
    count = max(len(chart.columns), 1)
    parts = _levels(top)
    for number, column in enumerate(chart.columns):
        left, wide = number / count, 1 / count
        parts += _column(chart.name, column, left, wide, top)
        if column.label:
            foot = pixels(HEAD_PX + PLOT_PX + 16)
            centred = percent(left + wide / 2)
            parts.append(words(centred, foot, column.label, "middle"))
    height = HEAD_PX + PLOT_PX + FOOT_PX
    return picture(chart.name, height, chart.title, chart.told, parts, sorted(fills))


def scale_top(highest: float) -> float:
    """Return the round number that the scale goes up to.

    >>> scale_top(7.2), scale_top(0.34), scale_top(0)
    (8.0, 0.4, 1.0)
    """
    if highest <= 0:
        return 1.0
    step = level_step(highest)
    return float(f"{step * math.ceil(highest / step):.6g}")


def level_step(highest: float) -> float:
    """Return the round step between two levels of a scale, so that there are a few of them.

    >>> level_step(7.2), level_step(1134)
    (2.0, 250.0)
    """
    power = 10.0 ** math.floor(math.log10(highest / LINES_AT_MOST))
    steps = (step * power for step in STEPS)
    return next(float(f"{one:.6g}") for one in steps if one * LINES_AT_MOST >= highest)


def _height(column: Column) -> float:
    stacked = sum(piece.value for piece in column.pieces)
    return max(stacked, column.above.value if column.above is not None else 0.0)


def _levels(top: float) -> list[Markup]:
    step, parts = level_step(top), []
    count = round(top / step)
    for number in range(count + 1):
        y = HEAD_PX + PLOT_PX * (1 - number / count)
        parts.append(rule("0", pixels(y), "100%", pixels(y), "level" if number else "ground-line"))
        if number:
            parts.append(words("0", pixels(y - 3), f"{step * number:,.6g}", "start", "scale"))
    return parts


def _column(
    name: str, column: Column, left_fraction: float, wide_fraction: float, top: float
) -> list[Markup]:
    x = percent(left_fraction + wide_fraction * (1 - FILLED) / 2)
    width = percent(wide_fraction * FILLED)
    parts, below_px = [], 0.0
    for piece in column.pieces:
        height_px = PLOT_PX * piece.value / top
        y = pixels(HEAD_PX + PLOT_PX - below_px - height_px)
        painted = paint(name, piece.fill)
        parts.append(box(x, y, width, pixels(height_px), painted, _data(piece)))
        below_px += height_px
    if column.above is not None:
        y = pixels(HEAD_PX + PLOT_PX * (1 - column.above.value / top) - LEVEL_PX / 2)
        left, wide = percent(left_fraction), percent(wide_fraction)
        data = _data(column.above)
        parts.append(box(left, y, wide, pixels(LEVEL_PX), 'class="above"', data))
    return parts


def _data(piece: Piece) -> dict[str, str]:
    return {"value": repr(float(piece.value)), "q": piece.identity}
