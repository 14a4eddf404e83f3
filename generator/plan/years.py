"""What is planned on one piece of ground in a year, for the limits a label sets on a year.

Where the day of a job is open within its dates, every year the dates touch is counted: the larger
amount decides.
"""

import datetime
from dataclasses import dataclass

from generator.compute.buying import TOTAL_FL_OZ_PER_AC, TOTAL_RATE
from generator.inventory.label import LabelCard
from generator.plan.rates import ActiveRate, JobRate, as_product, counted_basis, is_dry
from generator.working import Given, Quantity

DAYS_IN_12_MONTHS = 365


@dataclass(frozen=True, slots=True)
class PlannedSpray:
    """One product of a spraying planned on a place, cleared or not, or of one in the log.

    `by_log` says that it is done; `unknown_by_log` that the log leaves out how much it was.
    """

    job_id: str
    place_id: str
    planting_id: str
    product_id: str
    actives: frozenset[str]
    pooled: frozenset[str]
    rate: JobRate | None
    opens: datetime.date | None
    closes: datetime.date | None
    by_log: bool = False
    unknown_by_log: bool = False


@dataclass(frozen=True, slots=True)
class Together:
    """What is put on an acre in all, and by how many sprayings or products of a tank."""

    amount: Given | Quantity
    count: int


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
) -> Together | None:
    """Return what is planned together with this job in the worst year, or None if unknown.

    Counts every spraying on the place that shares an active, pooled actives and the actives of
    premixes included. Where the label counts product, another product with the same active counts
    by that active.
    """
    together = _together(mine, here, counted)
    identity = f"{mine.job_id}/{mine.product_id}.year_{basis}"
    return _sum(identity, mine, together, mine.actives | mine.pooled, card, basis)


def amount_at_one_time(
    mine: PlannedSpray, tank: tuple[PlannedSpray, ...], card: LabelCard, basis: str
) -> Together | None:
    """Return what a tank puts on at one time of what a card counts, or None if unknown.

    Every product of the tank counts that shares an active with the card's. What a card counts
    together in a year it does not count together at one time.
    """
    together = [one for one in tank if one.actives & mine.actives]
    identity = f"{mine.job_id}/{mine.product_id}.once_{basis}"
    return _sum(identity, mine, together, mine.actives, card, basis)


def _sum(
    identity: str,
    mine: PlannedSpray,
    together: list[PlannedSpray],
    names: frozenset[str],
    card: LabelCard,
    basis: str,
) -> Together | None:
    rates: list[Given | Quantity] = []
    for one in together:
        found = _counted(one, mine, names, card, basis)
        if found is None:
            return None
        rates += found
    if len(rates) == 1:
        return Together(rates[0], len(together))
    by_volume = basis == "product" and not is_dry(card)
    formula = TOTAL_FL_OZ_PER_AC if by_volume else TOTAL_RATE
    return Together(formula(identity, parts=tuple(rates)), len(together))


def _together(
    mine: PlannedSpray, here: tuple[PlannedSpray, ...], counted: str
) -> list[PlannedSpray]:
    pooled = mine.actives | mine.pooled
    return [
        one
        for one in here
        if _same_year(mine, one, counted)
        and (one.product_id == mine.product_id or one.actives & pooled)
    ]


def not_said_by_the_log(
    mine: PlannedSpray, here: tuple[PlannedSpray, ...], counted: str
) -> tuple[PlannedSpray, ...]:
    """Return what counts in the job's year and of which the log leaves out how much it was."""
    return tuple(one for one in _together(mine, here, counted) if one.unknown_by_log)


def _counted(
    one: PlannedSpray, mine: PlannedSpray, pooled: frozenset[str], card: LabelCard, basis: str
) -> list[Given | Quantity] | None:
    """Return what one spraying adds, or None where it cannot be counted in the basis."""
    if one.rate is None:
        return None
    if basis == "product" and one.product_id == mine.product_id:
        return [one.rate.product]
    actives = [active for active in one.rate.actives if active.key in pooled]
    wanted = counted_basis(card) if basis == "product" else basis
    if not actives or wanted is None or any(active.basis != wanted for active in actives):
        return None
    if basis != "product":
        return [active.rate for active in _as_counted(one, actives)]
    return [
        as_product(f"{one.job_id}/{one.product_id}.", active.rate, card, f"counted_{number}")
        for number, active in enumerate(actives, 1)
    ]


def _as_counted(one: PlannedSpray, actives: list[ActiveRate]) -> list[ActiveRate]:
    """Return the owner's own figure where a rate was typed as active, else the worked-out ones."""
    assert one.rate is not None
    whole = len(actives) == len(one.rate.actives) and one.rate.counted is not None
    return [one.rate.counted] if whole and one.rate.counted is not None else actives


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
