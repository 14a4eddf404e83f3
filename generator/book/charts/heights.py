"""Heights of a planting over its seasons: its curves, and what was measured where it was."""

import datetime
from collections.abc import Sequence

from markupsafe import Markup

from generator.book.charts.drawing import dot, percent, picture, pixels, rule, text_line
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
from generator.plan.jobs.job_days import FIRST_OF_SEASON
from generator.plan.season.open_dates import day_in_season

WIDE = 1000


@dataclass(frozen=True, slots=True)
class Height:
    """A height in feet on a day; `height_in` is the number as it was typed, in inches."""

    day: datetime.date
    height_ft: float
    height_in: float


@dataclass(frozen=True, slots=True)
class Line:
    """A curve: the kind of line it is drawn as, and its heights day by day in feet."""

    kind: str
    points_ft: tuple[tuple[datetime.date, float], ...]


@dataclass(frozen=True, slots=True)
class HeightPicture:
    """A picture of heights from one season to another: an id of our own, a title, what is seen."""

    name: str
    title: str
    first_season: int
    last_season: int
    measured: tuple[Height, ...]
    lines: tuple[Line, ...] = ()


def heights_drawn(chart: HeightPicture) -> Markup:
    """Return the picture: a column of room for each season, a dot for each height."""
    first = day_in_season(FIRST_OF_SEASON, chart.first_season)
    last = day_in_season(FIRST_OF_SEASON, chart.last_season + 1)
    drawn_ft = [height for line in chart.lines for _, height in line.points_ft]
    top = scale_top(max([*drawn_ft, *(height.height_ft for height in chart.measured)]))
    parts = [*levels(top), *_seasons(chart, first, last)]
    parts += [_line(line, first, last, top) for line in chart.lines if line.points_ft]
    for measured in chart.measured:
        x, y = percent(_share(measured.day, first, last)), pixels(down_px(measured.height_ft, top))
        parts.append(
            dot(x, y, {"value": repr(measured.height_in), "day": measured.day.isoformat()})
        )
    told = "Heights in feet by season. The tables and lists below hold the same numbers."
    return picture(chart.name, HEAD_PX + PLOT_PX + FOOT_PX, chart.title, told, parts)


def _line(line: Line, first: datetime.date, last: datetime.date, top_ft: float) -> Markup:
    """Return a curve; it is drawn on a sheet of its own that is pulled to the width of the page."""
    placed = [
        f"{pixels(WIDE * _share(day, first, last))},{pixels(down_px(height, top_ft))}"
        for day, height in line.points_ft
    ]
    days = " ".join(day.isoformat() for day, _ in line.points_ft)
    heights = " ".join(repr(height) for _, height in line.points_ft)
    height_px = HEAD_PX + PLOT_PX
    return Markup(
        f'<svg width="100%" height="{height_px}" viewBox="0 0 {WIDE} {height_px}"'
        f' preserveAspectRatio="none"><polyline class="curve {line.kind}"'
        f' points="{" ".join(placed)}" vector-effect="non-scaling-stroke"'
        f' data-days="{days}" data-heights="{heights}"/></svg>'
    )


def _share(day: datetime.date, first: datetime.date, last: datetime.date) -> float:
    return (day - first).days / (last - first).days


def _seasons(chart: HeightPicture, first: datetime.date, last: datetime.date) -> Sequence[Markup]:
    parts = []
    for season in range(chart.first_season, chart.last_season + 1):
        begins = _share(day_in_season(FIRST_OF_SEASON, season), first, last)
        ends = _share(day_in_season(FIRST_OF_SEASON, season + 1), first, last)
        x = percent(begins)
        parts.append(rule(x, pixels(HEAD_PX), x, pixels(HEAD_PX + PLOT_PX), "season"))
        foot = pixels(FOOT_LINE_PX)
        parts.append(text_line(percent((begins + ends) / 2), foot, str(season), "middle"))
    return parts
