"""The year on one leaf: a row for each kind of dates and each step, and its days along the months.

Rows are as high as lets them stand on one sheet of paper. A name stands on the left with its days;
a bar on the right, hatched where dates are kept.
"""

import datetime
from collections.abc import Iterable, Iterator

from markupsafe import Markup

from generator.book.charts.bands import Season
from generator.book.charts.drawing import box, paint, percent, picture, pixels, rule, text_line
from generator.dataclass import dataclass
from generator.plan.model.days import MONTHS, Span

# A letter sheet between its margins, less the head of the page.
SHEET_PX, HEAD_PX = 790, 16
LEAST_ROW_PX, MOST_ROW_PX, GROUP_PX = 11, 18, 4
# Where the days of a row end, and where the year begins as a share of the width.
DAYS, YEAR_FRACTION = "58%", 0.6


@dataclass(frozen=True, slots=True)
class LeafRow:
    """A row: its name, its days in words, and the spans; `is_kept` where they are dates to keep."""

    name: str
    days: str
    spans: tuple[Span, ...]
    is_kept: bool = False


_Placed = tuple[LeafRow, float]  # with how many pixels down the row begins


@dataclass(frozen=True, slots=True)
class Leaf:
    """A season on one leaf: rows in groups, with the plan's day."""

    name: str
    title: str
    told: str
    season: int
    today: datetime.date
    groups: tuple[tuple[LeafRow, ...], ...]


def leaf_drawn(chart: Leaf) -> Markup:
    """Return the picture: months over rows, a thin line between two groups."""
    laid = Season(chart.season)
    count = sum(len(rows) for rows in chart.groups)
    room_px = SHEET_PX - HEAD_PX - GROUP_PX * len(chart.groups)
    row_px = min(max(room_px / max(count, 1), LEAST_ROW_PX), MOST_ROW_PX)
    foot_px = HEAD_PX + row_px * count + GROUP_PX * len(chart.groups)
    parts = [*_months(laid, foot_px)]
    rows: list[_Placed] = []
    down_px: float = HEAD_PX
    for group in chart.groups:
        y = pixels(down_px + GROUP_PX / 2)
        parts.append(rule("0", y, "100%", y, "level"))
        down_px += GROUP_PX
        for row in group:
            rows.append((row, down_px))
            down_px += row_px
    parts += [*_words(rows, row_px), _open(rows, laid, row_px, foot_px)]
    parts += _kept(chart.name, rows, laid, row_px)
    # outside the season it is drawn too, unseen, as in the bands
    kind_of_now = "now" if laid.first <= chart.today <= laid.last else "now out"
    x = _x(laid.share(chart.today))
    parts.append(rule(x, pixels(HEAD_PX), x, pixels(foot_px), kind_of_now))
    data = {
        "first": laid.first.isoformat(),
        "last": laid.last.isoformat(),
        "left": f"{100 * YEAR_FRACTION:g}",
        "across": f"{100 * (1 - YEAR_FRACTION):g}",
    }
    return picture(chart.name, foot_px, chart.title, chart.told, parts, ("hatch",), data)


def _x(season_fraction: float) -> str:
    return percent(YEAR_FRACTION + (1 - YEAR_FRACTION) * season_fraction)


def _months(laid: Season, foot_px: float) -> Iterator[Markup]:
    for first in laid.months():
        x = _x(laid.share(first))
        yield rule(x, "2", x, pixels(foot_px), "month")
        yield text_line(x, "11", MONTHS[first.month - 1][:3], kind="month", beside_px=2)


def _words(rows: Iterable[_Placed], row_px: float) -> Iterator[Markup]:
    """Yield the names of the rows at the left, and their days up to where the year begins."""
    lines = [(row, pixels(down_px + row_px - 3)) for row, down_px in rows]
    names = Markup("").join(text_line("0", y, row.name) for row, y in lines)
    yield Markup('<g class="names">{}</g>').format(names)
    days = Markup("").join(text_line(DAYS, y, row.days) for row, y in lines)
    yield Markup('<g text-anchor="end">{}</g>').format(days)


def _open(rows: Iterable[_Placed], laid: Season, row_px: float, foot_px: float) -> Markup:
    """Return every open day as one shape, on a sheet of its own as wide as the days are many."""
    thick = pixels(row_px - 4)
    bars = "".join(
        f"M{(first - laid.first).days},{pixels(down_px + 2)}h{(last - first).days + 1}v{thick}"
        f"h-{(last - first).days + 1}z"
        for row, down_px in rows
        if not row.is_kept
        for first, last in row.spans
    )
    return Markup(
        f'<svg x="{_x(0)}" width="{percent(1 - YEAR_FRACTION)}" height="{pixels(foot_px)}"'
        f' viewBox="0 0 {laid.days} {pixels(foot_px)}" preserveAspectRatio="none">'
        f'<path class="open" d="{bars}"/></svg>'
    )


def _kept(name: str, rows: Iterable[_Placed], laid: Season, row_px: float) -> Iterator[Markup]:
    for row, down_px in rows:
        for first, last in row.spans if row.is_kept else ():
            top, height = pixels(down_px + 2), pixels(row_px - 4)
            width = percent((1 - YEAR_FRACTION) * laid.width((first, last)))
            data = {"from": first.isoformat(), "to": last.isoformat()}
            x = _x(laid.share(first))
            yield box(x, top, width, height, paint(name, "hatch"), data)
