"""Pictures in columns: acres by age, jobs by kind of work, hours by weekend."""

import datetime
from itertools import pairwise

from markupsafe import Markup

from generator.book.charts.columns import Column, ColumnPart, Columns, columns_drawn
from generator.book.charts.drawing import Fill, key
from generator.dataclass import dataclass
from generator.plan.model.days import MONTHS
from generator.plan.money.weekends import Weekend
from generator.plan.standing.cover_by_season import AGES, Age, SeasonAcres
from generator.plan.views.years_ahead import SeasonAhead
from generator.reference.operations import work_groups

MONTHS_NAMED = 6
AGE_FILLS: dict[Age, Fill] = {
    "first": "empty",
    "second": "dots",
    "third": "hatch",
    "later": "solid",
    "woody": "cross",
    "food": "bars",
}
# One for each group of work, in their order.
WORK_FILLS: tuple[Fill, ...] = ("hatch", "solid", "cross", "bars", "empty", "dots")


@dataclass(frozen=True, slots=True)
class Pictured:
    """A picture with its key: a sample of each fill and what it stands for."""

    svg: Markup
    key: tuple[tuple[Markup, str], ...]


def acres_picture(acres: tuple[SeasonAcres, ...]) -> Pictured | None:
    """Return the ground by age as columns, one to a season; None where nothing grows."""
    ages = [age for age in AGES if any(age in season.acres for season in acres)]
    if not ages:
        return None
    columns = tuple(
        Column(
            str(season.season),
            tuple(
                ColumnPart(season.acres[age].value, AGE_FILLS[age], season.acres[age].identity)
                for age in ages
                if age in season.acres
            ),
        )
        for season in acres
    )
    told = "Acres by season. The table below holds the same numbers."
    svg = columns_drawn(Columns("acres", "Acres by age over five seasons", told, columns))
    return Pictured(svg, tuple((key("acres", AGE_FILLS[age]), AGES[age]) for age in ages))


def work_picture(seasons: tuple[SeasonAhead, ...]) -> Pictured | None:
    """Return the jobs of seasons by kind of work, as columns; None where there are none."""
    # strict: a new group without a fill of its own fails here, not on the page
    fills: dict[str, Fill] = dict(
        zip((group.name for group in work_groups().values()), WORK_FILLS, strict=True)
    )
    columns = tuple(
        Column(
            str(season.season),
            tuple(
                ColumnPart(group.count.value, fills[group.title], group.count.identity)
                for group in season.work
            ),
        )
        for season in seasons
    )
    met = {group.title for season in seasons for group in season.work}
    if not met:
        return None
    told = "Jobs by season. The table below holds the same numbers."
    svg = columns_drawn(Columns("work", "Jobs by kind of work over five seasons", told, columns))
    shown = tuple((key("work", fill), title) for title, fill in fills.items() if title in met)
    return Pictured(svg, shown)


def weekends_picture(weekends: tuple[Weekend, ...]) -> Pictured | None:
    """Return the work of each weekend under its free hours; None where nobody's are typed."""
    if not weekends:
        return None
    names = _month_names(weekends)
    columns = []
    for weekend in weekends:
        work = (
            (ColumnPart(weekend.work.value, "solid", weekend.work.identity),)
            if weekend.work
            else ()
        )
        free = ColumnPart(weekend.free.value, "empty", weekend.free.identity)
        columns.append(Column(names.get(weekend.saturday, ""), work, free))
    told = "Hours on each weekend to the end of the season. The list below holds the same numbers."
    svg = columns_drawn(
        Columns("weekends", "Hours by weekend against free hours", told, tuple(columns))
    )
    return Pictured(svg, ((key("weekends", "solid"), "work"), (key("weekends", "above"), "free")))


def _month_names(weekends: tuple[Weekend, ...]) -> dict[datetime.date, str]:
    """Return the names of months by their first weekends, as many as stand beside each other."""
    firsts = [
        after.saturday
        for before, after in pairwise(weekends)
        if before.saturday.month != after.saturday.month
    ]
    step = -(-len(firsts) // MONTHS_NAMED)
    return {first: MONTHS[first.month - 1][:3] for first in firsts[::step]} if firsts else {}
