"""Ground that is sprayed where it is not the whole place, and mixes stated in percent."""

from collections.abc import Iterable, Iterator

from generator.compute import dose
from generator.dataclass import dataclass
from generator.inventory.label import LabelCard, Setback, Use
from generator.plan.findings.about_spraying import SprayStop
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.distances import listed_setbacks, longest_kept
from generator.plan.labels.history import works_of
from generator.plan.labels.rates import ROUNDING
from generator.plan.labels.spray_stops import Chosen
from generator.plan.model.finding import Finding, about_job
from generator.working import Quantity

RESIDUAL = {"soil_residual", "sulfonylurea"}


@dataclass(frozen=True, slots=True)
class Treated:
    """The ground a job treats, and the distances of labels that are not taken out of it."""

    ground: Quantity
    not_set_back: tuple[Setback, ...]


def treated(request: JobRequest, uses: Iterable[Use] = ()) -> Treated:
    """Return what a job with these uses in its tank treats: what was measured, else the place.

    Where water, wells and neighbors lie has no shape yet, so no distance is taken out.
    """
    kept = longest_kept(setback for use in uses for setback in listed_setbacks(use.setbacks_ft))
    measured = request.work.treated_sq_ft if request.work else None
    if measured is None:
        return Treated(request.area, kept)
    return Treated(dose.TREATED(f"{request.job_id}/treated_ac", treated_sq_ft=measured), kept)


def treated_stops(request: JobRequest) -> Iterator[Finding]:
    """Yield a stop for spots without measured ground, and for more ground than the place has."""
    work = request.work
    if work is None:
        return
    if work.method == "spot" and work.treated_sq_ft is None:
        yield finding(SprayStop.NO_TREATED_GROUND, about_job(request.job_id), work.where)
    if treated(request).ground.value > request.area.value * (1 + ROUNDING):
        yield finding(SprayStop.MORE_THAN_THE_PLACE, about_job(request.job_id), work.where)


def spot_stops(request: JobRequest, chosen: Chosen, card: LabelCard) -> Iterator[Finding]:
    """Yield a stop for a percent mix of what works through the soil, or may."""
    if chosen.typed.mix_fraction is None:
        return
    for active in card.actives:
        works = works_of(active)
        # wetted by eye an acre may get far more than was meant, and this stays in the soil
        if not works or RESIDUAL & works:
            name = chosen.product.name
            yield finding(
                SprayStop.PERCENT_OF_RESIDUAL, about_job(request.job_id), chosen.where, product=name
            )
            return
