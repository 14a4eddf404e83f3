"""What is planned on one piece of ground in a year, for the limits a label sets on a year.

Where the day of a job is open within its dates, every year the dates touch is counted: the larger
amount decides.
"""

import datetime
from collections.abc import Iterable
from itertools import product
from typing import Literal

from generator.compute.buying import TOTAL_FL_OZ_PER_AC, TOTAL_RATE
from generator.dataclass import dataclass
from generator.inventory.label import LabelCard, YearlyLimit
from generator.plan.labels.crops import Crop
from generator.plan.labels.rates import ActiveRate, JobRate, as_product, counted_basis, is_dry
from generator.plan.model.plan import ActiveTotal
from generator.reference.active_names import ActiveName, Alike, most_alike
from generator.working import Figure, Given, Quantity

LAST_DAY = datetime.date.max
Gap = Literal["amount", "product", "place", "area"]
_How = Literal["known", "possible"]


@dataclass(frozen=True, slots=True)
class PlannedSpray:
    """One product of a spraying planned on a place, cleared or not, or of one in the log.

    `grounds` are the ids of the places on whose ground it lies or may lie; `gaps` are what the log
    leaves out of it, so that nobody can say what it adds; `most` is the rate where entries that
    may be of the same ground are; `times` is how often it went, or may have gone, over the same
    ground; `part` is what the owner calls the part of the place; `laid_times` is how often
    its passes lay the same ground in one go.
    """

    job_id: str
    place_id: str
    grounds: frozenset[str]
    crop: Crop
    product_id: str
    product_name: str
    actives: tuple[ActiveName, ...]
    pooled: tuple[ActiveName, ...]
    rate: JobRate | None
    opens: datetime.date | None
    closes: datetime.date | None
    by_log: bool = False
    gaps: frozenset[Gap] = frozenset()
    most: JobRate | None = None
    times: int = 1
    part: str | None = None
    laid_times: int = 1

    def is_apart_from(self, other: "PlannedSpray") -> bool:
        """Whether both name a part of the same place, and another one."""
        # a part that nobody named may be any of them
        named = self.part is not None and other.part is not None
        return named and self.place_id == other.place_id and _folded(self) != _folded(other)


def _folded(spray: PlannedSpray) -> str:
    return " ".join((spray.part or "").split()).casefold()


@dataclass(frozen=True, slots=True)
class Together:
    """What is put on an acre in all, and by how many sprayings or products of a tank."""

    amount: Given | Quantity
    count: int


def likeness(
    mine: PlannedSpray, other: PlannedSpray, wanted: Iterable[ActiveName] | None = None
) -> Alike:
    """Return whether a spraying holds what the label of another counts with it, or may hold it.

    `wanted` are the names that count, by default the label's actives and what it pools with them.
    """
    # asked before the names: a product counts with itself, whatever its card leaves out
    if other.product_id and other.product_id == mine.product_id:
        return "same"
    if "product" in other.gaps:
        return "asked"
    names = (*mine.actives, *mine.pooled) if wanted is None else tuple(wanted)
    return most_alike(names, other.actives)


def shares_ground_with_others(mine: PlannedSpray, here: tuple[PlannedSpray, ...]) -> bool:
    """Whether another product is planned on the place that either label counts with this one."""
    return any(
        spray.product_id != mine.product_id
        and not likeness(mine, spray) == likeness(spray, mine) == "other"
        for spray in here
    )


def as_laid(here: Iterable[PlannedSpray]) -> tuple[PlannedSpray, ...]:
    """Return sprayings as the ground gets them that passes lap on: each as often as it is laid."""
    return tuple(spray for spray in here for _ in range(spray.laid_times))


def amount_in_a_year(
    mine: PlannedSpray,
    here: tuple[PlannedSpray, ...],
    card: LabelCard,
    basis: str,
    limit: YearlyLimit,
    how: _How = "known",
) -> Together | None:
    """Return what is planned together with this job in the worst year, or None if unknown.

    Counts every spraying on the ground that shares an active, pooled actives and the actives of
    premixes included. Where the label counts product, another product with the same active counts
    by that active. `possible` counts what may be of the same active or ground too.
    """
    near = _in_the_year(mine, here, limit)
    identity = f"{mine.job_id}/{mine.product_id}.year_{basis}"
    return _sum(identity, mine, near, (*mine.actives, *mine.pooled), card, basis, how)


def amount_at_one_time(
    mine: PlannedSpray,
    tank: tuple[PlannedSpray, ...],
    card: LabelCard,
    basis: str,
    how: _How = "known",
) -> Together | None:
    """Return what a tank puts on at one time of what a card counts, or None if unknown.

    Every product of the tank counts that shares an active with the card's. What a card counts
    together in a year it does not count together at one time.
    """
    identity = f"{mine.job_id}/{mine.product_id}.once_{basis}"
    return _sum(identity, mine, tank, mine.actives, card, basis, how)


def _sum(
    identity: str,
    mine: PlannedSpray,
    near: Iterable[PlannedSpray],
    names: tuple[ActiveName, ...],
    card: LabelCard,
    basis: str,
    how: _How,
) -> Together | None:
    rates: list[Given | Quantity] = []
    together = [spray for spray in near if _counts(mine, spray, names, how)]
    for spray in together:
        rate = spray.most if how == "possible" and spray.most is not None else spray.rate
        found = _counted(spray, rate, mine, names, card, basis, how)
        # a sum of the others would be too small, and would let them pass
        if found is None:
            return None
        rates += found
    # alone it stays the figure as it was typed
    if len(rates) == 1:
        return Together(rates[0], len(together))
    by_volume = basis == "product" and not is_dry(card)
    formula = TOTAL_FL_OZ_PER_AC if by_volume else TOTAL_RATE
    return Together(formula(identity, parts=tuple(rates)), len(together))


def _counts(
    mine: PlannedSpray, other: PlannedSpray, names: tuple[ActiveName, ...], how: _How
) -> bool:
    """Whether a spraying is in a sum; one that adds nothing known is asked for, not added."""
    like = likeness(mine, other, names)
    if (other.rate is None and other.gaps) or (like == "asked" and "product" in other.gaps):
        return False
    if how == "possible":
        return like != "other"
    return like == "same" and not other.gaps & {"place", "area"}


def _in_the_year(
    mine: PlannedSpray, here: Iterable[PlannedSpray], limit: YearlyLimit
) -> list[PlannedSpray]:
    return [spray for spray in here if _same_year(mine, spray, limit.counted, _apart(limit))]


def in_doubt(
    mine: PlannedSpray, here: tuple[PlannedSpray, ...], limit: YearlyLimit
) -> tuple[PlannedSpray, ...]:
    """Return what counts in the job's year, or may, and of which it is not known what it adds.

    What is begun of the job itself counts by its plan.
    """
    return tuple(
        spray
        for spray in _in_the_year(mine, here, limit)
        if (like := likeness(mine, spray)) == "asked"
        or (
            like == "same"
            and spray.job_id != mine.job_id
            and (spray.gaps or spray.most is not None)
        )
    )


def in_doubt_at_once(
    mine: PlannedSpray, tank: tuple[PlannedSpray, ...]
) -> tuple[PlannedSpray, ...]:
    """Return the products of a tank whose actives may be what a card limits at one time."""
    return tuple(spray for spray in tank if likeness(mine, spray, mine.actives) == "asked")


def _counted(
    spray: PlannedSpray,
    rate: JobRate | None,
    mine: PlannedSpray,
    names: tuple[ActiveName, ...],
    card: LabelCard,
    basis: str,
    how: _How,
) -> list[Given | Quantity] | None:
    """Return what one spraying adds, or None where it cannot be counted in the basis."""
    if rate is None:
        return None
    if basis == "product" and spray.product_id == mine.product_id:
        return [rate.product]
    counted = ("same", "asked") if how == "possible" else ("same",)
    actives = [active for active in rate.actives if most_alike(names, (active.named,)) in counted]
    # another product's ounces say nothing of this one's: its active is counted, as this product
    wanted = counted_basis(card) if basis == "product" else basis
    if not actives or wanted is None or any(active.basis != wanted for active in actives):
        return None
    if basis != "product":
        return [active.rate for active in _as_counted(rate, actives)]
    return [
        as_product(f"{spray.job_id}/{spray.product_id}.", active.rate, card, f"counted_{number}")
        for number, active in enumerate(actives, 1)
    ]


def _as_counted(rate: JobRate, actives: list[ActiveRate]) -> list[ActiveRate]:
    """Return the owner's own figure where a rate was typed as active, else the worked-out ones."""
    whole = len(actives) == len(rate.actives)
    return [rate.counted] if whole and rate.counted is not None else actives


def times_in_a_year(
    mine: PlannedSpray, here: tuple[PlannedSpray, ...], limit: YearlyLimit | None
) -> int:
    """Return how often the ground is sprayed within the job's year with what the label counts.

    Another product of the same active counts, and so does what may be one; products of one tank
    are one time. Where the card does not say how its year is counted, sprayings close in either
    way count.
    """
    ways = ("calendar_year", "any_12_months") if limit is None else (limit.counted,)
    apart = limit is not None and _apart(limit)
    # by job, and by the most of its products: those of a tank go over the ground together
    times: dict[str, int] = {}
    for one in here:
        near = any(_same_year(mine, one, way, apart) for way in ways)
        if near and likeness(mine, one, mine.actives) != "other":
            times[one.job_id] = max(times.get(one.job_id, 0), one.times)
    return sum(times.values())


def _apart(limit: YearlyLimit) -> bool:
    return limit.same_day_next_year == "apart"


def _same_year(mine: PlannedSpray, other: PlannedSpray, counted: str, apart: bool) -> bool:
    if mine == other:
        return True
    if counted == "crop":
        return mine.crop.may_be(other.crop)
    # a day that nobody knows may lie in the same year
    if not (mine.opens and mine.closes and other.opens and other.closes):
        return True
    if counted == "calendar_year":
        return mine.opens.year <= other.closes.year and other.opens.year <= mine.closes.year
    # from the last day of each to the first of the other: as near as they can come
    return _within_12_months(mine.closes, other.opens, apart) and _within_12_months(
        other.closes, mine.opens, apart
    )


def _within_12_months(last: datetime.date, first: datetime.date, apart: bool) -> bool:
    """Whether a day lies within twelve months after another, or before it."""
    year_later = a_year_after(last)
    return first < year_later or (first == year_later and not apart)


def a_year_after(day: datetime.date) -> datetime.date:
    """Return the same day a year later, the first of March for the 29th of February.

    >>> a_year_after(datetime.date(2028, 2, 29)), a_year_after(datetime.date(2027, 3, 1))
    (datetime.date(2029, 3, 1), datetime.date(2028, 3, 1))
    """
    if day.year == LAST_DAY.year:
        return LAST_DAY
    try:
        return day.replace(year=day.year + 1)
    except ValueError:
        # the later of the days it could be, so that nothing stops counting too early
        return datetime.date(day.year + 1, 3, 1)


def active_totals(
    sprays: tuple[PlannedSpray, ...], cleared: frozenset[str]
) -> tuple[ActiveTotal, ...]:
    """Return each active's pounds on an acre by place and year, over all products and premixes.

    `cleared` are the ids of the jobs that are cleared and still to come; others add nothing here,
    unless the log says that they are done. A job whose open dates touch two years counts in both,
    and a spraying on every place on whose ground it lies.
    """
    rates: dict[tuple[str, int, str, str], list[Figure]] = {}
    printed: dict[str, str] = {}
    for spray in sprays:
        told = (spray.by_log or spray.job_id in cleared) and "place" not in spray.gaps
        if told and spray.rate is not None and spray.opens and spray.closes:
            for year in range(spray.opens.year, spray.closes.year + 1):
                for active_rate, place_id in product(spray.rate.actives, sorted(spray.grounds)):
                    printed.setdefault(active_rate.named.key, active_rate.named.printed)
                    key = (place_id, year, active_rate.named.key, active_rate.basis)
                    rates.setdefault(key, []).append(active_rate.rate)
    return tuple(
        ActiveTotal(
            place,
            year,
            printed[active],
            basis,
            TOTAL_RATE(f"{place}/{year}/actives/total_{number}_lb_per_ac", parts=tuple(parts)),
        )
        for number, ((place, year, active, basis), parts) in enumerate(sorted(rates.items()), 1)
    )
