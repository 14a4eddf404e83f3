"""What some crops are to others: sorghum to stock, and mown grain to those who hunt birds."""

from collections.abc import Iterator, Mapping, Sequence

from generator.inventory.places import PlantedGround, Planting
from generator.plan.findings.about_after import AfterCaution
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import Finding, about_job, about_place
from generator.plan.model.job import JobState
from generator.reference.library import species
from generator.reference.steps import StepPlan

SORGHUM = "sorghum_screen"
GRAIN = frozenset({SORGHUM, "small_grain", "beans_or_corn"})
STANDS = ("established_dormant", "established_growing")


def crop_cautions(
    requests: Sequence[JobRequest],
    states: Mapping[str, JobState],
    places: tuple[PlantedGround, ...],
    plans: Mapping[str, StepPlan],
    season: int,
) -> Iterator[Finding]:
    """Yield a caution of stock on places with sorghum, and of bait where grain is laid down.

    Sorghum of the season before still stands, or grows again, in the season after.
    """
    for place in places:
        for planting in place.plantings:
            if SORGHUM in _kinds(planting, plans) and season - planting.season in (0, 1):
                yield finding(AfterCaution.SORGHUM_AND_STOCK, about_place(place.id), planting.where)
    for request in requests:
        if not states[request.job_id].is_ahead:
            continue
        # a mixture may hold what its step plan is not named for
        sown = {request.kind, *(species()[name].kind for name in request.species)}
        if SORGHUM in sown and request.step.does.meets_stock:
            yield finding(
                AfterCaution.SORGHUM_AND_STOCK, about_job(request.job_id), request.planting.where
            )
        if sown & GRAIN and _lays_down(request):
            yield finding(
                AfterCaution.MOWN_GRAIN, about_job(request.job_id), request.planting.where
            )


def _kinds(planting: Planting, plans: Mapping[str, StepPlan]) -> frozenset[str]:
    kind = plans[planting.steps].kind
    return frozenset({kind or "", *(species()[seed.species].kind for seed in planting.seed)})


def _lays_down(request: JobRequest) -> bool:
    """Whether a job lays a standing crop down: every mowing, and other work once it stands."""
    how = request.step.does.lays_down
    return how == "always" or (how == "standing" and request.step.timing in STANDS)
