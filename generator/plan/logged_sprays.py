"""Sprayings as the log says they went, in place of what was planned, for a label's year.

The larger amount decides, and what the log leaves out is not guessed: a finished spraying counts
by what was used on the ground it was used on, one that is begun by the larger of that and its
plan, and one without an amount or its ground counts as not known.
"""

import datetime
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from generator.compute import applied
from generator.compute.buying import TOTAL_FL_OZ_PER_AC, TOTAL_RATE
from generator.inventory.label import LabelCard
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.asked import JobAsked
from generator.plan.done import entries_on, finished_on
from generator.plan.rates import ROUNDING, JobRate, is_dry, rate_of_product
from generator.plan.spots import treated_ground
from generator.plan.years import PlannedSpray
from generator.working import Given, Quantity

SPRAY = "spray"
OUTSIDE = "log/"  # what the id of a spraying begins with that is no job


@dataclass(frozen=True, slots=True)
class _Put:
    """So much of a product, and the ground it was put on where the log says it."""

    entry: LogEntry
    used: Given
    area: Given | None


def as_logged(
    sprays: tuple[PlannedSpray, ...],
    ever: Iterable[JobAsked],
    inventory: Inventory,
    entries: tuple[LogEntry, ...],
) -> tuple[PlannedSpray, ...]:
    """Return the sprayings of a property, those in the log as they went."""
    products = {one.id: one for one in inventory.products}
    found: list[PlannedSpray] = []
    counted: set[str] = set()
    for one in ever:
        if one.step.operation != SPRAY:
            continue
        planned = tuple(spray for spray in sprays if spray.job_id == one.job_id)
        on_job = tuple(
            entry for entry in entries_on(one, entries) if _tells_of_spraying(entry, products)
        )
        counted |= {entry.id for entry in on_job}
        found += _of_a_job(one, planned, on_job, products) if on_job else planned
    places = {one.id: place.id for place in inventory.places() for one in place.plantings}
    for entry in entries:
        if entry.id not in counted:
            found += _outside(entry, places, products)
    return tuple(found)


def _tells_of_spraying(entry: LogEntry, products: Mapping[str, Product]) -> bool:
    """Whether an entry about a job tells of spraying."""
    assert entry.job is not None
    told = entry.sprayed is not None or entry.job.finished or entry.job.area_ac is not None
    return bool(told) or any(one.item in products for one in entry.used)


def _of_a_job(
    asked: JobAsked,
    planned: tuple[PlannedSpray, ...],
    on_job: tuple[LogEntry, ...],
    products: Mapping[str, Product],
) -> Iterator[PlannedSpray]:
    by_product = {one.product_id: one for one in planned}
    used = [one.item for entry in on_job for one in entry.used if one.item in products]
    if used:
        by_product.pop("", None)
    finished = finished_on(on_job) is not None
    days = [entry.done_on for entry in on_job]
    for product_id in dict.fromkeys([*by_product, *used]):
        mine = by_product.get(product_id)
        spray = mine or _spray(asked.job_id, asked.ground.id, asked.planting.id,
                               products[product_id])  # fmt: skip
        puts = tuple(_puts(product_id, on_job))
        if finished:
            spray = replace(spray, opens=min(days), closes=max(days), by_log=True)
            known = bool(puts) and all(one.area is not None for one in puts)
            rate = _rate(asked, products[product_id], puts) if known else None
            # without an amount at least what was planned is shown; nothing is cleared by it
            yield replace(spray, rate=rate or spray.rate, unknown_by_log=rate is None)
        else:
            yield _begun(asked, spray, puts, products, days)


def _begun(
    asked: JobAsked,
    spray: PlannedSpray,
    puts: tuple[_Put, ...],
    products: Mapping[str, Product],
    days: list[datetime.date],
) -> PlannedSpray:
    """Return a begun spraying at the larger of what was used and what was planned."""
    opens = min([spray.opens, *days]) if spray.opens is not None else None
    closes = max([spray.closes, *days]) if spray.closes is not None else None
    spray = replace(spray, opens=opens, closes=closes)
    if not puts:
        return spray
    rate = _rate(asked, products[spray.product_id], puts)
    if rate is None:
        return replace(spray, rate=None, unknown_by_log=True)
    planned = spray.rate
    larger = planned is None or _value(rate.product) > _value(planned.product)
    return replace(spray, rate=rate if larger else planned)


def _value(product: Given | Quantity) -> float:
    return product.value


def _puts(product_id: str, entries: Iterable[LogEntry]) -> Iterator[_Put]:
    for entry in entries:
        for one in entry.used:
            if one.item == product_id:
                yield _Put(entry, one.amount, _area(entry))


def _area(entry: LogEntry) -> Given | None:
    if entry.job is not None:
        return entry.job.area_ac
    return entry.sprayed.treated_ac if entry.sprayed is not None else None


def _rate(asked: JobAsked, product: Product, puts: tuple[_Put, ...]) -> JobRate | None:
    """Return the most that an acre of a job got, None where it cannot be had.

    Entries whose ground together fits onto the job's may each be of other ground, and the one
    that put down most counts; where it does not fit, some ground was sprayed twice, and all of
    them count together. Ground that is not said is the job's, of which it can be a part only.
    """
    card = product.label
    if card is None:
        return None
    ground = treated_ground(asked)
    base = f"{asked.job_id}/{product.id}."
    rates: list[Quantity] = []
    for number, one in enumerate(puts, 1):
        whole = one.area is None or one.area.value > ground.value
        rate = _applied(f"{base}logged_{number}", card, one.used, ground if whole else one.area)
        if rate is None:
            return None
        rates.append(rate)
    areas = [ground.value if one.area is None else one.area.value for one in puts]
    apart = all(one.area is not None for one in puts) and sum(areas) <= ground.value * (
        1 + ROUNDING
    )
    most = max(rates, key=_value)
    if not apart and len(rates) > 1:
        most = _together(f"{base}logged", card, rates)
    return rate_of_product(f"{base}logged_", most, card)


def _applied(
    base: str, card: LabelCard, used: Given, area: Given | Quantity | None
) -> Quantity | None:
    dry = is_dry(card)
    if area is None or used.unit != ("lb" if dry else "fl_oz"):
        return None
    if dry:
        return applied.APPLIED_LB(f"{base}_lb_per_ac", used_lb=used, area_ac=area)
    return applied.APPLIED_FL_OZ(f"{base}_fl_oz_per_ac", used_fl_oz=used, area_ac=area)


def _together(base: str, card: LabelCard, rates: Sequence[Quantity]) -> Quantity:
    if is_dry(card):
        return TOTAL_RATE(f"{base}_lb_per_ac", parts=tuple(rates))
    return TOTAL_FL_OZ_PER_AC(f"{base}_fl_oz_per_ac", parts=tuple(rates))


def _outside(
    entry: LogEntry, places: Mapping[str, str], products: Mapping[str, Product]
) -> Iterator[PlannedSpray]:
    """Yield what an entry put on a place that is no job of the plan's."""
    planting = entry.job.planting if entry.job is not None else ""
    place = places.get(planting) or (entry.sprayed.place if entry.sprayed is not None else None)
    if place is None:
        return
    for number, put in enumerate(_puts_of_any(entry, products), 1):
        product = products[put[0]]
        spray = _spray(f"{OUTSIDE}{entry.id}", place, planting, product)
        base = f"{place}/{entry.id}/{product.id}.logged_{number}"
        rate = _applied(base, product.label, put[1].used, put[1].area) if product.label else None
        yield replace(
            spray,
            rate=rate_of_product(f"{base}_", rate, product.label)
            if rate is not None and product.label is not None
            else None,
            opens=entry.done_on,
            closes=entry.done_on,
            by_log=True,
            unknown_by_log=rate is None,
        )


def _puts_of_any(entry: LogEntry, products: Mapping[str, Product]) -> Iterator[tuple[str, _Put]]:
    for one in entry.used:
        if one.item in products:
            yield one.item, _Put(entry, one.amount, _area(entry))


def _spray(job_id: str, place: str, planting: str, product: Product) -> PlannedSpray:
    card = product.label
    actives = card.active_keys if card else frozenset()
    pooled = card.pooled_keys if card else frozenset()
    return PlannedSpray(job_id, place, planting, product.id, actives, pooled, None, None, None)
