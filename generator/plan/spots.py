"""Ground that is sprayed where it is not the whole place, and mixes stated in percent."""

from collections.abc import Iterator

from generator.compute import dose
from generator.inventory.label import LabelCard
from generator.plan.asked import JobAsked
from generator.plan.findings import finding
from generator.plan.history import works_of
from generator.plan.model import Finding
from generator.plan.rates import ROUNDING
from generator.plan.spray_stops import Chosen
from generator.plan.stops import Stop
from generator.working import Quantity

RESIDUAL = {"soil_residual", "sulfonylurea"}


def treated_ground(asked: JobAsked) -> Quantity:
    """Return the ground that is sprayed: what the owner measured, else the whole place."""
    treated = asked.work.treated_sq_ft if asked.work else None
    if treated is None:
        return asked.area
    return dose.TREATED(f"{asked.job_id}/treated_ac", treated_sq_ft=treated)


def treated_stops(asked: JobAsked) -> Iterator[Finding]:
    """Yield a stop for spots without measured ground, and for more ground than the place has."""
    work = asked.work
    if work is None:
        return
    if work.method == "spot" and work.treated_sq_ft is None:
        yield finding(Stop.NO_TREATED_GROUND, asked.job_id, work.where)
    if treated_ground(asked).value > asked.area.value * (1 + ROUNDING):
        yield finding(Stop.MORE_THAN_THE_PLACE, asked.job_id, work.where)


def spot_stops(asked: JobAsked, chosen: Chosen, card: LabelCard) -> Iterator[Finding]:
    """Yield a stop for a percent mix of what works through the soil, or may."""
    if chosen.typed.mix_fraction is None:
        return
    for active in card.actives:
        works = works_of(active)
        if not works or RESIDUAL & works:
            name = chosen.product.name
            yield finding(Stop.PERCENT_OF_RESIDUAL, asked.job_id, chosen.where, product=name)
            return
