"""Sprayings without their wind, or in a wind outside what the label names."""

from collections.abc import Iterator, Mapping

from generator.inventory.label import Use, WindRange
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.inventory.woody import Plant
from generator.plan.after.records import spray_records
from generator.plan.days.contracts import land_of
from generator.plan.doubts.doubt import Confirmed, Doubt, day_of, is_confirmed
from generator.plan.findings.about_doubts import DoubtCaution
from generator.plan.jobs.request import species_of, work_of
from generator.plan.labels.clearance import Asked, matching_uses
from generator.plan.labels.rates import ROUNDING
from generator.plan.model.spray_record import SprayRecord
from generator.reference.steps import StepPlan
from generator.working import Given


def winds_in_question(
    inventory: Inventory, entries: tuple[LogEntry, ...], confirmed: Confirmed
) -> Iterator[Doubt]:
    """Yield every spraying whose label names a wind, and whose record has none or another."""
    # no ground is given: sizes are no matter here
    for record in spray_records(inventory, entries, {}):
        if not is_confirmed(confirmed, record.entry):
            yield from _of(record, inventory.plants, inventory.plans())


def _of(
    record: SprayRecord, plants: tuple[Plant, ...], plans: Mapping[str, StepPlan]
) -> Iterator[Doubt]:
    said = record.entry.sprayed
    wind = said.wind_mph if said is not None else None
    # wind cannot be measured afterward, so that it was not is an answer
    if wind is None and said is not None and said.wind_not_measured:
        return
    for product, _ in record.products:
        uses, sure = _uses(record, product, plants, plans)
        ranges = [use.wind_mph for use in uses if isinstance(use.wind_mph, WindRange)]
        if not ranges:
            continue
        words = {"product": product.name, "day": day_of(record.entry), "entry": record.entry.id}
        if wind is None:
            yield Doubt(DoubtCaution.NO_WIND, record.entry, words)
            continue
        beyond = [limits for limits in ranges if not _holds(limits, wind)]
        # Where it is not known which use it was, a wind that one of them allows may be right.
        if beyond and (sure or len(beyond) == len(uses)):
            limits = beyond[0]
            figures = (
                ("Wind written down", wind),
                ("Least wind", limits.low_mph),
                ("Most wind", limits.high_mph),
            )
            yield Doubt(DoubtCaution.WIND_OUTSIDE, record.entry, words, figures)


def _uses(
    record: SprayRecord, product: Product, plants: tuple[Plant, ...], plans: Mapping[str, StepPlan]
) -> tuple[tuple[Use, ...], bool]:
    """Return the uses a spraying may rest on, and whether they are those of its job."""
    card = product.label
    if card is None:
        return (), False
    place, planting, step = record.place, record.planting, record.step
    if place is None or planting is None or step is None:
        return card.uses, False
    work, said = work_of(planting, step), record.entry.sprayed
    spot = "spot" if said is not None and said.spot else None
    asked = Asked(
        plans[planting.steps].kind or "",
        species_of(planting, plants),
        place.id,
        land_of(place),
        step.timing,
        spot or (work.method if work is not None else None) or "broadcast",
    )
    matching = matching_uses(card, asked)
    # a job that fits no use may still have gone by one of them
    return (matching, True) if matching else (card.uses, False)


def _holds(limits: WindRange, wind: Given) -> bool:
    # both ends are in it, in whatever unit they were typed
    low, high = limits.low_mph.value * (1 - ROUNDING), limits.high_mph.value * (1 + ROUNDING)
    return low <= wind.value <= high
