"""Heights of a planting over its seasons: its curves against what is needed, and what was measured.

The curves lie on the left of the picture, and their names stand at their ends, never one over the
other. What is needed is a line of its own, the days of hunting are a shaded ground.
"""

import datetime
from collections.abc import Iterator, Sequence

from markupsafe import Markup

from generator.book.charts.drawing import (
    Fill,
    box,
    dot,
    kept_apart,
    paint,
    percent,
    picture,
    pixels,
    rule,
    text_line,
)
from generator.book.charts.scale import PLOT_PX, level_step, scale_top
from generator.dataclass import dataclass
from generator.plan.jobs.job_days import FIRST_OF_SEASON
from generator.plan.model.days import ONE_DAY, Span
from generator.plan.season.open_dates import day_in_season

DAY_OF_PLAN = "day of this plan"
STRAIGHT_PX = 0.01  # nearer to a straight line than this nothing bends
# The part of the width that the days take; the names of the curves stand in the rest.
DAYS_FRACTION = 0.78
HEAD_PX, FOOT_PX, LINE_PX, NAME_PX = 52, 24, 14, 6
DAY_LINE_PX, HUNTED_LINE_PX = 32, 14


@dataclass(frozen=True, slots=True)
class Height:
    """A height in feet on a day; `height_in` is the number as it was typed, in inches."""

    day: datetime.date
    height_ft: float
    height_in: float


@dataclass(frozen=True, slots=True)
class DrawnCurve:
    """A curve: the kind of line it is drawn as, and its heights day by day in feet."""

    kind: str
    points_ft: tuple[tuple[datetime.date, float], ...]


@dataclass(frozen=True, slots=True)
class HeightPicture:
    """A picture of heights from one season to another: an id of our own, a title, what is seen.

    The words under it say what is found.
    """

    name: str
    title: str
    first_season: int
    last_season: int
    as_of: datetime.date
    measured: tuple[Height, ...]
    lines: tuple[DrawnCurve, ...] = ()
    needed_ft: float | None = None
    hunted: tuple[Span, ...] = ()


class _Laid:
    """Where days and heights lie in a picture."""

    def __init__(self, chart: HeightPicture) -> None:
        opens = day_in_season(FIRST_OF_SEASON, chart.first_season)
        # so that the plan's day is seen where the first season is still to come
        self.first = min(opens, chart.as_of.replace(day=1))
        self.end = day_in_season(FIRST_OF_SEASON, chart.last_season + 1)
        self.days = (self.end - self.first).days
        heights_ft = [height for line in chart.lines for _, height in line.points_ft]
        heights_ft += (height.height_ft for height in chart.measured)
        if chart.needed_ft is not None:
            heights_ft.append(chart.needed_ft)
        self.top_ft = scale_top(max(heights_ft))

    def share(self, day: datetime.date) -> float:
        """Return how far along the days a day begins."""
        return (day - self.first).days / self.days

    def x(self, day: datetime.date) -> str:
        """Return where a day begins in the whole picture."""
        return percent(DAYS_FRACTION * self.share(day))

    def down_px(self, height_ft: float) -> float:
        """Return how far down a height lies."""
        return HEAD_PX + PLOT_PX * (1 - height_ft / self.top_ft)


def heights_drawn(chart: HeightPicture) -> Markup:
    """Return the picture: a column of room for each season, a curve and its name, dots."""
    laid = _Laid(chart)
    parts = [*_hunted(chart, laid), *_levels(laid), *_seasons(chart, laid)]
    parts += [*_needed(chart, laid), *_curves(chart, laid), *_names(chart, laid)]
    for measured in chart.measured:
        x, y = laid.x(measured.day), pixels(laid.down_px(measured.height_ft))
        data = {"value": repr(measured.height_in), "day": measured.day.isoformat()}
        parts.append(dot(x, y, data))
    parts += _today(chart, laid)
    data = {
        "first": laid.first.isoformat(),
        "last": (laid.end - ONE_DAY).isoformat(),
        "across": f"{100 * DAYS_FRACTION:g}",
    }
    fills: tuple[Fill, ...] = ("hatch",) if chart.hunted else ()
    height_px = HEAD_PX + PLOT_PX + FOOT_PX
    return picture(chart.name, height_px, chart.title, "", parts, fills, data)


def _hunted(chart: HeightPicture, laid: _Laid) -> Iterator[Markup]:
    for number, (first, last) in enumerate(chart.hunted):
        width = DAYS_FRACTION * (laid.share(last + ONE_DAY) - laid.share(first))
        data = {"from": first.isoformat(), "to": last.isoformat()}
        painted = paint(chart.name, "hatch").replace("drawn", "hunted")
        yield box(laid.x(first), pixels(HEAD_PX), percent(width), str(PLOT_PX), painted, data)
        if not number:
            yield text_line(laid.x(first), str(HUNTED_LINE_PX), "hunting")


def _levels(laid: _Laid) -> Iterator[Markup]:
    step = level_step(laid.top_ft)
    for number in range(round(laid.top_ft / step) + 1):
        y = laid.down_px(step * number)
        kind = "level" if number else "ground-line"
        yield rule("0", pixels(y), percent(DAYS_FRACTION), pixels(y), kind)
        if number:
            yield text_line("0", pixels(y - 3), f"{step * number:g} ft", kind="scale")


def _seasons(chart: HeightPicture, laid: _Laid) -> Iterator[Markup]:
    foot = str(HEAD_PX + PLOT_PX + 16)
    for season in range(chart.first_season, chart.last_season + 1):
        begins = laid.share(day_in_season(FIRST_OF_SEASON, season))
        ends = laid.share(day_in_season(FIRST_OF_SEASON, season + 1))
        x = percent(DAYS_FRACTION * begins)
        yield rule(x, str(HEAD_PX), x, str(HEAD_PX + PLOT_PX), "season")
        middle = percent(DAYS_FRACTION * (begins + ends) / 2)
        yield text_line(middle, foot, str(season), "middle")


def _needed(chart: HeightPicture, laid: _Laid) -> Iterator[Markup]:
    if chart.needed_ft is not None:
        y = pixels(laid.down_px(chart.needed_ft))
        data = {"feet": repr(chart.needed_ft)}
        yield rule("0", y, percent(DAYS_FRACTION), y, "needed", data)


def _curves(chart: HeightPicture, laid: _Laid) -> Iterator[Markup]:
    """Yield the curves, drawn on a sheet of their own that is as wide as the days are many."""
    height_px = HEAD_PX + PLOT_PX
    drawn = "".join(
        f'<polyline class="curve {line.kind}" points="{_points(line, laid)}"'
        ' vector-effect="non-scaling-stroke"/>'
        for line in chart.lines
        if line.points_ft
    )
    if drawn:
        yield Markup(
            f'<svg width="{percent(DAYS_FRACTION)}" height="{height_px}"'
            f' viewBox="0 0 {laid.days} {height_px}" preserveAspectRatio="none">{drawn}</svg>'
        )


def _points(line: DrawnCurve, laid: _Laid) -> str:
    placed = [((day - laid.first).days, laid.down_px(height)) for day, height in line.points_ft]
    return " ".join(f"{x},{pixels(y)}" for x, y in _bends(placed))


def _bends(points_px: Sequence[tuple[int, float]]) -> Iterator[tuple[int, float]]:
    """Yield the points at which a line begins, bends and ends."""
    for number, (x, y) in enumerate(points_px):
        if 0 < number < len(points_px) - 1:
            (before, high), (after, low) = points_px[number - 1], points_px[number + 1]
            straight = high + (low - high) * (x - before) / (after - before)
            if abs(straight - y) < STRAIGHT_PX:
                continue
        yield x, y


def _names(chart: HeightPicture, laid: _Laid) -> Iterator[Markup]:
    """Yield the names of the lines at their ends, those that end together apart."""
    # of two that end at one height the higher curve is named first
    lines = [line for line in reversed(chart.lines) if line.points_ft]
    ends = [(line.kind, line.points_ft[-1]) for line in lines]
    if chart.needed_ft is not None:
        ends.append(("needed", (laid.end, chart.needed_ft)))
    places_px = kept_apart([laid.down_px(height) for _, (_, height) in ends], LINE_PX)
    for (name, (day, _)), y in zip(ends, places_px, strict=True):
        yield text_line(laid.x(day), pixels(y + 4), name, kind="scale", beside_px=NAME_PX)


def _today(chart: HeightPicture, laid: _Laid) -> Iterator[Markup]:
    """Yield the plan's day; a script moves it to the day of the device."""
    out = "" if laid.first <= chart.as_of < laid.end else " out"
    x = laid.x(chart.as_of)
    yield rule(x, str(DAY_LINE_PX + 4), x, str(HEAD_PX + PLOT_PX), f"now{out}")
    anchor = "end" if laid.share(chart.as_of) > 1 / 2 else "start"
    yield text_line(x, str(DAY_LINE_PX), DAY_OF_PLAN, anchor, f"now{out}")
