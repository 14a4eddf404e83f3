"""Pictures of the plan's numbers: acres by age, hours by weekend, money by season, heights."""

from markupsafe import Markup

from generator.book.charts.columns import Column, Columns, Piece, columns_drawn
from generator.book.charts.drawing import Fill, dot_sample, key, line_sample
from generator.book.charts.heights import Height, HeightPicture, Line
from generator.book.charts.heights import heights_drawn as heights
from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.inventory.places import Planting
from generator.inventory.season import season_of
from generator.plan.model.days import MONTHS
from generator.plan.model.plan import Plan
from generator.plan.money.money_hours import SeasonMoney
from generator.plan.money.weekends import Weekend
from generator.plan.standing.cover_by_season import AGES, Age, SeasonAcres
from generator.plan.standing.heights import bends, heights_on
from generator.plan.standing.planting_curves import Growing
from generator.plan.views.years_ahead import SeasonAhead
from generator.reference.growth import CURVES, Curve
from generator.reference.operations import work_groups
from generator.units import convert

SEASONS_BACK = 2
CURVE_WORDS: dict[Curve, str] = {
    "low": "low: what you may count on",
    "typical": "typical",
    "high": "high: good ground, good year",
}
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
                Piece(season.acres[age].value, AGE_FILLS[age], season.acres[age].identity)
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
                Piece(group.count.value, fills[group.title], group.count.identity)
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
    columns, month = [], 0
    for weekend in weekends:
        name = MONTHS[weekend.saturday.month - 1][:3] if weekend.saturday.month != month else ""
        month = weekend.saturday.month
        work = (Piece(weekend.work.value, "solid", weekend.work.identity),) if weekend.work else ()
        columns.append(
            Column(name, work, Piece(weekend.free.value, "empty", weekend.free.identity))
        )
    told = "Hours on each weekend to the end of the season. The list below holds the same numbers."
    svg = columns_drawn(
        Columns("weekends", "Hours by weekend against free hours", told, tuple(columns))
    )
    return Pictured(svg, ((key("weekends", "solid"), "work"), (key("weekends", "above"), "free")))


def heights_picture(
    plan: Plan, planting: Planting, growth: Growing | None, entries: list[LogEntry]
) -> Pictured | None:
    """Return the curves of a planting and its measured heights; None where there is neither."""
    first = max(planting.season, plan.season - SEASONS_BACK)
    measured = tuple(
        Height(entry.done_on, convert(reading.height_in.value, "in", "ft"), reading.height_in.value)
        for entry in entries
        if entry.measured is not None
        if entry.measured.planting == planting.id
        if season_of(entry.done_on) >= first
        for reading in entry.measured.readings
    )
    last = max([plan.season + 1, *(season_of(height.day) for height in measured)])
    lines = _lines(growth, first, last) if growth is not None else ()
    if not measured and not any(line.points_ft for line in lines):
        return None
    name = f"heights-{planting.id}"
    svg = heights(HeightPicture(name, "Height by season", first, last, measured, lines))
    told = [(line_sample(curve), CURVE_WORDS[curve]) for curve in (CURVES if lines else ())]
    seen = [(dot_sample(), "measured")] if measured else []
    return Pictured(svg, (*told, *seen))


def _lines(growth: Growing, first: int, last: int) -> tuple[Line, ...]:
    """Return the curves, drawn through every day on which one of them bends."""
    days = [day for season in range(first, last + 1) for day in bends(growth, season)]
    found = [point for day in days if (point := heights_on(growth, day, CURVES)) is not None]
    return tuple(
        Line(
            curve,
            tuple((point.day, convert(point.by_curve[curve].value, "in", "ft")) for point in found),
        )
        for curve in CURVES
    )


def money_picture(seasons: tuple[SeasonMoney, ...]) -> Pictured | None:
    """Return dollars by season: spent, still to pay, and paid back; None where there are none."""
    fills: dict[str, Fill] = {"Spent": "solid", "Still to pay": "hatch", "Paid back": "dots"}
    columns: list[Column] = []
    for season in seasons:
        out = [(season.spent, fills["Spent"]), (season.to_pay, fills["Still to pay"])]
        pieces = tuple(Piece(n.value, fill, n.identity) for n, fill in out if n is not None)
        columns.append(Column(str(season.season), pieces))
        if season.paid_back is not None:
            back = Piece(season.paid_back.value, fills["Paid back"], season.paid_back.identity)
            columns.append(Column("paid back", (back,)))
    if not any(column.pieces for column in columns):
        return None
    told = "Dollars by season. The table below holds the same numbers."
    svg = columns_drawn(Columns("dollars", "Money by season", told, tuple(columns)))
    return Pictured(svg, tuple((key("dollars", fill), words) for words, fill in fills.items()))
