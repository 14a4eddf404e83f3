"""Columns side by side: what several things come to, season by season or weekend by weekend."""

from markupsafe import Markup

from generator.book.charts.drawing import Fill, box, paint, percent, picture, pixels, text_line
from generator.book.charts.scale import (
    FOOT_LINE_PX,
    FOOT_PX,
    HEAD_PX,
    PLOT_PX,
    down_px,
    levels,
    scale_top,
)
from generator.dataclass import dataclass

LEVEL_PX = 3
_FILLED = 0.8  # of the room a column has


@dataclass(frozen=True, slots=True)
class ColumnPart:
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
    pieces: tuple[ColumnPart, ...]
    above: ColumnPart | None = None


@dataclass(frozen=True, slots=True)
class Columns:
    """A picture of columns: an id of our own, its title, what is heard, and the columns."""

    name: str
    title: str
    told: str
    columns: tuple[Column, ...]


def columns_drawn(chart: Columns) -> Markup:
    """Return the picture; the highest value reaches just under its upper edge."""
    top = scale_top(max((_height(one) for one in chart.columns), default=0.0))
    fills = {piece.fill for one in chart.columns for piece in one.pieces}
    count = max(len(chart.columns), 1)
    parts = levels(top)
    for number, column in enumerate(chart.columns):
        left, wide = number / count, 1 / count
        parts += _column(chart.name, column, left, wide, top)
        if column.label:
            foot = pixels(FOOT_LINE_PX)
            centred = percent(left + wide / 2)
            parts.append(text_line(centred, foot, column.label, "middle"))
    height = HEAD_PX + PLOT_PX + FOOT_PX
    return picture(chart.name, height, chart.title, chart.told, parts, sorted(fills))


def _height(column: Column) -> float:
    stacked = sum(piece.value for piece in column.pieces)
    return max(stacked, column.above.value if column.above is not None else 0.0)


def _column(
    name: str, column: Column, left_fraction: float, wide_fraction: float, top: float
) -> list[Markup]:
    x = percent(left_fraction + wide_fraction * (1 - _FILLED) / 2)
    width = percent(wide_fraction * _FILLED)
    parts, below_px = [], 0.0
    for piece in column.pieces:
        height_px = PLOT_PX * piece.value / top
        y = pixels(down_px(0, top) - below_px - height_px)
        painted = paint(name, piece.fill)
        parts.append(box(x, y, width, pixels(height_px), painted, _data(piece)))
        below_px += height_px
    if column.above is not None:
        y = pixels(down_px(column.above.value, top) - LEVEL_PX / 2)
        left, wide = percent(left_fraction), percent(wide_fraction)
        data = _data(column.above)
        parts.append(box(left, y, wide, pixels(LEVEL_PX), 'class="above"', data))
    return parts


def _data(piece: ColumnPart) -> dict[str, str]:
    return {"value": repr(float(piece.value)), "q": piece.identity}
