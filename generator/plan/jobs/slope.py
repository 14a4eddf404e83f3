"""Steep ground: against what a label allows, and against the owner's own limit for machines."""

from collections.abc import Iterator

from generator.inventory.equipment import Sprayer
from generator.inventory.label import Use
from generator.inventory.schema import Inventory
from generator.plan.findings.about_places import PlaceCaution, PlaceStop
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.job import Job
from generator.working import Given, Measured

BY_HAND = ("hand_gun", "backpack")


SLOPE_HERE = "near.slope_pct"


def slope_of(request: JobRequest) -> Given | Measured | None:
    """Return the steepest slope of the job's place, None where nothing says it."""
    near = request.ground.near
    return near.slope_pct if near is not None else None


def steep_stops(request: JobRequest, use: Use) -> Iterator[Finding]:
    """Yield a stop where the place is steeper than the use on the card allows."""
    here, most = slope_of(request), use.slope_limit_pct
    if here is not None and isinstance(most, Given) and here.value > most.value:
        figures = (("Steepest here", here), ("Steepest on the card", most))
        yield finding(PlaceStop.TOO_STEEP, about_job(request.job_id), use.where, figures)


def steep_cautions(request: JobRequest, inventory: Inventory) -> Iterator[Finding]:
    """Yield a caution where a machine goes onto ground steeper than the owner's limit."""
    here, most = slope_of(request), inventory.property.slope_limit_pct
    if here is None or most is None or here.value <= most.value:
        return
    if _by_machine(request, inventory.sprayers):
        figures = (("Steepest here", here), ("Your limit", most))
        assert request.ground.near is not None
        yield finding(
            PlaceCaution.STEEP, about_job(request.job_id), request.ground.near.where, figures
        )


def _by_machine(request: JobRequest, sprayers: tuple[Sprayer, ...]) -> bool:
    if request.step.does.by_machine:
        return True
    work = request.work
    if work is None:
        return False
    driven = {sprayer.id for sprayer in sprayers if sprayer.kind not in BY_HAND}
    return work.machine is not None or work.drill is not None or work.sprayer in driven


def slope_to_measure(job: Job) -> tuple[Given, ...]:
    """Return the lowest slope limit of the labels in a tank where no slope is typed, else none."""
    measured = any(line.key == SLOPE_HERE and line.figure is not None for line in job.safety)
    parts = job.mix.parts if job.mix is not None and not measured else ()
    typed = [part.use.slope_limit_pct for part in parts]
    limits = [limit for limit in typed if isinstance(limit, Given)]
    # the strictest label of a tank holds for all that is in it
    return tuple(sorted(limits, key=lambda limit: limit.value)[:1])
