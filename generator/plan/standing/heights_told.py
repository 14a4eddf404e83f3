"""The heights that pages tell: of which plantings, on which days of a season's growth."""

import datetime

from generator.dataclass import dataclass
from generator.plan.model.plan import Plan
from generator.plan.standing.heights import Heights, heights_on
from generator.plan.standing.heights_measured import (
    is_enough_to_lift,
    measured_days,
    stations_wanted,
)
from generator.plan.standing.planting_curves import FIRST_MONTH_OF_GROWTH, Growing, standing_growth
from generator.reference.growth import CURVES
from generator.working import Quantity

# One day of the full height, before winter lays grass down, and one of what is left of it.
HUNTED_DAYS = ((11, 15), (1, 15))
_SEASONS_TOLD = 2  # the one that stands, and the next


@dataclass(frozen=True, slots=True)
class LastMeasured:
    """The last day on which a planting was measured, and whether that may raise the low curve.

    `wanted` is how many stations that takes, None where the length of the place is not known.
    """

    day: datetime.date
    wanted: Quantity | None
    lifts: bool


def told_days(season: int) -> tuple[datetime.date, ...]:
    """Return the days of a season's growth that a page tells: of summer, fall and winter."""
    return (
        datetime.date(season, 6, 30),
        datetime.date(season, 7, 31),
        datetime.date(season, 8, 31),
        *(
            datetime.date(season + (month < FIRST_MONTH_OF_GROWTH), month, day)
            for month, day in HUNTED_DAYS
        ),
    )


def is_hunted(day: datetime.date) -> bool:
    """Return whether a told day is one on which a hunter asks: of late fall or of winter."""
    return (day.month, day.day) in HUNTED_DAYS


def told_heights(plan: Plan, growing: Growing) -> tuple[Heights, ...]:
    """Return what a page tells of a planting: the season of growth that stands, and the next.

    What grew in a summer stands until the last told day of the winter after it.
    """
    return heights_of_years(plan, growing, _SEASONS_TOLD)


def heights_of_years(plan: Plan, growing: Growing, seasons_count: int) -> tuple[Heights, ...]:
    """Return the heights of a planting on the told days of so many seasons of growth."""
    first = _first_season(plan)
    days = (day for number in range(seasons_count) for day in told_days(first + number))
    ahead = (day for day in days if day >= plan.as_of)
    return tuple(found for day in ahead if (found := heights_on(growing, day, CURVES)) is not None)


def _first_season(plan: Plan) -> int:
    stands = plan.as_of.year - (told_days(plan.as_of.year - 1)[-1] >= plan.as_of)
    return max(stands, plan.season - 1)


def last_day_of_years(plan: Plan, seasons_count: int) -> datetime.date:
    """Return the last told day of so many seasons of growth."""
    return told_days(_first_season(plan) + seasons_count - 1)[-1]


def last_measured(growing: Growing) -> LastMeasured | None:
    """Return the last day on which a planting was measured; None where it never was."""
    last = next(iter(measured_days(growing)), None)
    if last is None:
        return None
    return LastMeasured(last.day, stations_wanted(growing, last), is_enough_to_lift(growing, last))


def height_numbers(plan: Plan) -> list[Quantity]:
    """Return every computed number of heights that stands on a page."""
    numbers: list[Quantity] = []
    for place in plan.places:
        for growing in standing_growth(plan, place):
            told, last = told_heights(plan, growing), last_measured(growing)
            numbers += (number for found in told for number in found.by_curve.values())
            if told and last is not None and not last.lifts and last.wanted is not None:
                numbers.append(last.wanted)
    return numbers
