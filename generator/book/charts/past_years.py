"""Every year of a record along the months: a dot for the day on which each reached a sign."""

import datetime
from collections.abc import Sequence

from markupsafe import Markup

from generator.book.charts.drawing import dot, percent, picture, pixels, rule, text_line
from generator.dataclass import dataclass
from generator.plan.model.days import MONTHS

HEAD_PX, FOOT_PX, STEP_PX, EDGE_PX = 54, 24, 11, 8
# Days that lie near each other have their words one below the other.
WORDS_PX, WORDS_STEP_PX, ROWS = 13, 15, 3
# Dots nearer to each other than this stand one over the other, so that none hides another.
APART_FRACTION = 0.014
# Months as long as in most years: February 29 stands where March 1 does.
COMMON_YEAR = 2001
_MonthDay = tuple[int, int]


@dataclass(frozen=True, slots=True)
class YearDots:
    """A picture of days, one of each year, and of lines with words at days of the year."""

    name: str
    title: str
    days: tuple[datetime.date, ...]
    lines: tuple[tuple[str, _MonthDay], ...]


@dataclass(frozen=True, slots=True)
class _Placed:
    """A dot: its day, how far along the picture it stands, how many dots stand under it."""

    day: datetime.date
    across_fraction: float
    level: int


def years_drawn(chart: YearDots) -> Markup:
    """Return the picture: whole months, dots that never hide one another, lines behind them."""
    months = [day.month for day in chart.days] + [month for _, (month, _) in chart.lines]
    first, last = min(months), max(months)
    placed = _stacked(chart.days, first, last)
    foot = HEAD_PX + EDGE_PX + STEP_PX * (max(spot.level for spot in placed) + 1)
    parts = [*_months(first, last, foot), *_lines(chart.lines, first, last, foot)]
    for spot in placed:
        y = foot - EDGE_PX - STEP_PX * spot.level
        parts.append(dot(percent(spot.across_fraction), pixels(y), {"value": str(spot.day)}))
    told = "One dot for each year, along the months. The list below holds the same days."
    return picture(chart.name, foot + FOOT_PX, chart.title, told, parts)


def _stacked(days: Sequence[datetime.date], first: int, last: int) -> list[_Placed]:
    """Return each day where its dot stands, none over another."""
    placed: list[_Placed] = []
    for day in sorted(days, key=lambda one: (one.month, one.day, one.year)):
        share = _share((day.month, day.day), first, last)
        near = {spot.level for spot in placed if share - spot.across_fraction < APART_FRACTION}
        level = next(number for number in range(len(placed) + 1) if number not in near)
        placed.append(_Placed(day, share, level))
    return placed


def _share(day: _MonthDay, first: int, last: int) -> float:
    begins, ends = _month_begins(first), _month_begins(last + 1)
    month, number = day
    at = _month_begins(month) + datetime.timedelta(days=number - 1)
    return (at - begins).days / (ends - begins).days


def _month_begins(month: int) -> datetime.date:
    over, number = divmod(month - 1, len(MONTHS))
    return datetime.date(COMMON_YEAR + over, number + 1, 1)


def _months(first: int, last: int, foot_px: float) -> list[Markup]:
    parts = [rule("0", pixels(foot_px), "100%", pixels(foot_px), "ground-line")]
    for month in range(first, last + 1):
        begins, ends = _share((month, 1), first, last), _share_of_end(month, first, last)
        x = percent(begins)
        parts.append(rule(x, pixels(HEAD_PX), x, pixels(foot_px), "season"))
        middle = percent((begins + ends) / 2)
        parts.append(text_line(middle, pixels(foot_px + 16), MONTHS[month - 1][:3], "middle"))
    return parts


def _share_of_end(month: int, first: int, last: int) -> float:
    return _share((month + 1, 1), first, last) if month < last else 1


def _lines(
    lines: Sequence[tuple[str, _MonthDay]], first: int, last: int, foot_px: float
) -> list[Markup]:
    parts = []
    for turn, (told, day) in enumerate(lines):
        x, y = percent(_share(day, first, last)), WORDS_PX + WORDS_STEP_PX * (turn % ROWS)
        parts.append(rule(x, pixels(y + 3), x, pixels(foot_px), "level"))
        parts.append(text_line(x, pixels(y), told, "middle", "scale"))
    return parts
