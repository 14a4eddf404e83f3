"""What is planned on one piece of ground in a year, for the limits a label sets on a year.

Where the day of a job is open within its dates, every year the dates touch is counted: the larger
amount decides.
"""

import datetime
from dataclasses import dataclass

from generator.compute.buying import TOTAL_FL_OZ_PER_AC, TOTAL_RATE
from generator.compute.spray import PRODUCT_RATE
from generator.inventory.label import LabelCard
from generator.plan.rates import JobRate
from generator.working import Figure, Quantity

DAYS_IN_12_MONTHS = 365


@dataclass(frozen=True, slots=True)
class PlannedSpray:
    """One spraying planned on a place, cleared or not."""

    job_id: str
    place_id: str
    planting_id: str
    product_id: str
    actives: frozenset[str]
    pooled: frozenset[str]
    rate: JobRate | None
    opens: datetime.date | None
    closes: datetime.date | None


def shares_ground_with_others(mine: PlannedSpray, here: tuple[PlannedSpray, ...]) -> bool:
    """Whether another product is planned on the place that either label counts with this one."""
    return any(
        one.product_id != mine.product_id
        and (one.actives & (mine.actives | mine.pooled) or mine.actives & one.pooled)
        for one in here
    )


def amount_in_a_year(
    mine: PlannedSpray,
    here: tuple[PlannedSpray, ...],
    card: LabelCard,
    basis: str,
    counted: str,
) -> Quantity | None:
    """Return what is planned together with this job in the worst year, or None if unknown.

    Counts every spraying on the place that shares an active, pooled actives included. Where the
    label counts product, another product with the same active counts by that active.
    """
    pooled = mine.actives | mine.pooled
    together = [
        one
        for one in here
        if _same_year(mine, one, counted)
        and (one.product_id == mine.product_id or one.actives & pooled)
    ]
    rates: list[Figure] = []
    for one in together:
        rate = _counted(one, mine, card, basis)
        if rate is None:
            return None
        rates.append(rate)
    formula = TOTAL_FL_OZ_PER_AC if basis == "product" else TOTAL_RATE
    return formula(f"{mine.job_id}/year_{basis}", parts=tuple(rates))


def _counted(one: PlannedSpray, mine: PlannedSpray, card: LabelCard, basis: str) -> Figure | None:
    if one.rate is None:
        return None
    if basis != "product" or one.product_id == mine.product_id:
        return one.rate.in_basis(basis)
    only = card.actives[0] if len(card.actives) == 1 else None
    if only is None or one.rate.active is None or one.rate.basis != only.basis:
        return None
    return PRODUCT_RATE(
        f"{one.job_id}/counted_as_product_fl_oz_per_ac",
        rate_lb_per_ac=one.rate.active,
        strength_lb_per_gal=only.strength_lb_per_gal,
    )


def times_in_a_year(mine: PlannedSpray, here: tuple[PlannedSpray, ...], counted: str | None) -> int:
    """Return how often the product is planned on the place within the job's year.

    Where the card does not say how its year is counted, sprayings close in either way count.
    """
    ways = ("calendar_year", "any_12_months") if counted is None else (counted,)
    return sum(
        one.product_id == mine.product_id and any(_same_year(mine, one, way) for way in ways)
        for one in here
    )


def _same_year(mine: PlannedSpray, other: PlannedSpray, counted: str) -> bool:
    if counted == "crop":
        return mine.planting_id == other.planting_id
    if not (mine.opens and mine.closes and other.opens and other.closes):
        return True
    if counted == "calendar_year":
        return mine.opens.year <= other.closes.year and other.opens.year <= mine.closes.year
    near = datetime.timedelta(days=DAYS_IN_12_MONTHS)
    return other.opens - mine.closes < near and mine.opens - other.closes < near
