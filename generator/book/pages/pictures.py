"""Pictures of the plan's numbers: acres by age, hours by weekend, money by season, heights."""

from dataclasses import dataclass

from markupsafe import Markup

from generator.book.charts.columns import Column, Columns, Piece, drawn
from generator.book.charts.drawing import Fill, key
from generator.book.charts.heights import Height, Heights
from generator.book.charts.heights import drawn as heights
from generator.inventory.log import LogEntry
from generator.inventory.season import season_of
from generator.plan.day_words import MONTHS
from generator.plan.grown import AGES, Age, SeasonAcres
from generator.plan.money import SeasonMoney
from generator.plan.weekends import Weekend
from generator.units import convert

AGE_FILLS: dict[Age, Fill] = {
    "first": "empty",
    "second": "dots",
    "third": "hatch",
    "later": "solid",
    "woody": "cross",
    "food": "bars",
}


@dataclass(frozen=True, slots=True)
class Pictured:
    """A picture with its key: a sample of each fill and what it stands for."""

    svg: Markup
    key: tuple[tuple[Markup, str], ...]


def acres_picture(acres: tuple[SeasonAcres, ...]) -> Pictured | None:
    """Return the ground by age as columns, one to a season; None where nothing grows."""
    ages = [age for age in AGES if any(age in one.acres for one in acres)]
    if not ages:
        return None
    columns = tuple(
        Column(
            str(one.season),
            tuple(
                Piece(one.acres[age].value, AGE_FILLS[age], one.acres[age].identity)
                for age in ages
                if age in one.acres
            ),
        )
        for one in acres
    )
    told = "Acres by season. The table below holds the same numbers."
    svg = drawn(Columns("acres", "Acres by age over five seasons", told, columns))
    return Pictured(svg, tuple((key("acres", AGE_FILLS[age]), AGES[age]) for age in ages))


def weekends_picture(weekends: tuple[Weekend, ...]) -> Pictured | None:
    """Return the work of each weekend under its free hours; None where nobody's are typed."""
    if not weekends:
        return None
    columns, month = [], 0
    for one in weekends:
        name = MONTHS[one.saturday.month - 1][:3] if one.saturday.month != month else ""
        month = one.saturday.month
        work = (Piece(one.work.value, "solid", one.work.identity),) if one.work else ()
        columns.append(Column(name, work, Piece(one.free.value, "empty", one.free.identity)))
    told = "Hours on each weekend to the end of the season. The list below holds the same numbers."
    svg = drawn(Columns("weekends", "Hours by weekend against free hours", told, tuple(columns)))
    return Pictured(svg, ((key("weekends", "solid"), "work"), (key("weekends", "above"), "free")))


def heights_picture(
    planting_id: str, season: int, last_season: int, entries: list[LogEntry]
) -> Markup | None:
    """Return the heights measured of a planting over its seasons; None where there are none."""
    measured = tuple(
        Height(one.done_on, convert(inches, "in", "ft"), inches)
        for one in entries
        if one.measured is not None
        if one.measured.planting == planting_id
        if season_of(one.done_on) >= season
        for inches in (one.measured.height_in.value,)
    )
    if not measured:
        return None
    last = max([last_season, *(season_of(one.day) for one in measured)])
    return heights(Heights(f"heights-{planting_id}", "Height by season", season, last, measured))


def money_picture(seasons: tuple[SeasonMoney, ...]) -> Pictured | None:
    """Return dollars by season: spent, still to pay, and paid back; None where there are none."""
    fills: dict[str, Fill] = {"Spent": "solid", "Still to pay": "hatch", "Paid back": "dots"}
    columns: list[Column] = []
    for one in seasons:
        out = [(one.spent, fills["Spent"]), (one.to_pay, fills["Still to pay"])]
        pieces = tuple(Piece(n.value, fill, n.identity) for n, fill in out if n is not None)
        columns.append(Column(str(one.season), pieces))
        if one.paid_back is not None:
            back = Piece(one.paid_back.value, fills["Paid back"], one.paid_back.identity)
            columns.append(Column("paid back", (back,)))
    if not any(column.pieces for column in columns):
        return None
    told = "Dollars by season. The table below holds the same numbers."
    svg = drawn(Columns("dollars", "Money by season", told, tuple(columns)))
    return Pictured(svg, tuple((key("dollars", fill), words) for words, fill in fills.items()))
