"""What the low curve of a planting comes to on a day in feet, and by which fall it is enough."""

import datetime
import math
from collections.abc import Iterable, Mapping

from generator.compute.growth import STANDING
from generator.dataclass import dataclass
from generator.inventory.places import Screen
from generator.plan.model.plan import Plan
from generator.plan.standing.heights import heights_on
from generator.plan.standing.heights_told import HUNTED_DAYS
from generator.plan.standing.planting_curves import Growing, standing_growth
from generator.plan.standing.verdicts import needed_on
from generator.units import convert
from generator.working import Given, Quantity

FALLS_TOLD = 3


@dataclass(frozen=True, slots=True)
class LowHeight:
    """What the low curve has on a day; `height` is None before the planting grows.

    `is_no_screen` says that it is the first season of what lives on, which hides nobody.
    """

    day: datetime.date
    height: Quantity | None
    is_no_screen: bool


@dataclass(frozen=True, slots=True)
class Reached:
    """The low curve in the first fall in which it is as tall as needed, or the last one told."""

    fall: int
    height: Quantity
    needed: Given | None


@dataclass(frozen=True, slots=True)
class LowCurve:
    """The low curve on the plan's day and in the two falls after it, and when it is enough."""

    told: tuple[LowHeight, ...]
    reached: Reached | None


def falls_ahead(as_of: datetime.date) -> tuple[datetime.date, ...]:
    """Return the day of full height of the falls to come, the plan's own day among them.

    >>> [str(day) for day in falls_ahead(datetime.date(2026, 11, 16))]
    ['2027-11-15', '2028-11-15', '2029-11-15']
    """
    month, day = HUNTED_DAYS[0]
    first = as_of.year + (as_of > datetime.date(as_of.year, month, day))
    return tuple(datetime.date(first + number, month, day) for number in range(FALLS_TOLD))


def low_on(growing: Growing, day: datetime.date) -> LowHeight:
    """Return what the low curve of a planting has on a day."""
    found = heights_on(growing, day, ("low",))
    if found is None:
        return LowHeight(day, None, False)
    name = f"height/{growing.planting.id}/{day.isoformat()}/low_ft"
    height = STANDING(name, height_in=found.by_curve["low"])
    return LowHeight(day, height, found.year == 1 and growing.growth.lives_on)


def low_curves(plan: Plan) -> Mapping[str, LowCurve]:
    """Return the low curves of the screens that stand in the season, by planting."""
    return plan.once("low curves", _low_curves)


def _low_curves(plan: Plan) -> Mapping[str, LowCurve]:
    return {
        growing.planting.id: _low_curve(growing, plan.as_of)
        for place in plan.places
        if isinstance(place.typed, Screen)
        for growing in standing_growth(plan, place)
    }


def _low_curve(growing: Growing, as_of: datetime.date) -> LowCurve:
    falls = tuple(_low_on(growing, day) for day in falls_ahead(as_of))
    return LowCurve((_low_on(growing, as_of), *falls[:2]), _reached(growing, falls))


def _low_on(growing: Growing, day: datetime.date) -> LowHeight:
    found = heights_on(growing, day, ("low",))
    if found is None:
        return LowHeight(day, None, False)
    name = f"height/{growing.planting.id}/{day.isoformat()}/low_ft"
    height = STANDING(name, height_in=found.by_curve["low"])
    return LowHeight(day, height, found.year == 1 and growing.growth.lives_on)


def _reached(growing: Growing, falls: Iterable[LowHeight]) -> Reached | None:
    """Return by which fall a planting is as tall as needed; None where none stands to come."""
    needed = needed_on(growing.place)
    least_ft = convert(needed.value, needed.unit, "ft") if needed is not None else math.inf
    told = None
    for low in falls:
        if low.height is not None:
            told = Reached(low.day.year, low.height, needed)
            if not low.is_no_screen and low.height.value >= least_ft:
                break
    return told


def low_numbers(plan: Plan) -> list[Quantity]:
    """Return every computed number of low curves that stands on a page."""
    numbers: list[Quantity] = []
    for curve in low_curves(plan).values():
        numbers += (low.height for low in curve.told if low.height is not None)
        if curve.reached is not None:
            numbers.append(curve.reached.height)
    return numbers
