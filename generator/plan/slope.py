"""Steep ground: against what a label allows, and against the owner's own limit for machines."""

from collections.abc import Iterator

from generator.inventory.label import Use
from generator.inventory.schema import Inventory
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.findings import finding
from generator.plan.model import Finding, Job
from generator.plan.stops import Stop
from generator.plan.tank import BY_HAND
from generator.working import Given

SLOPE_HERE = "near.slope_pct"
ALWAYS_BY_MACHINE = ("mow", "roll")


def slope_of(asked: JobAsked) -> Given | None:
    """Return the steepest slope of the job's place, None where it is not typed."""
    near = asked.ground.near
    return near.slope_pct if near is not None else None


def steep_stops(asked: JobAsked, use: Use) -> Iterator[Finding]:
    """Yield a stop where the place is steeper than the use on the card allows."""
    here, most = slope_of(asked), use.slope_limit_pct
    if here is not None and isinstance(most, Given) and here.value > most.value:
        figures = (("Steepest here", here), ("Steepest on the card", most))
        yield finding(Stop.TOO_STEEP, asked.job_id, use.where, figures)


def steep_cautions(asked: JobAsked, inventory: Inventory) -> Iterator[Finding]:
    """Yield a caution where a machine goes onto ground steeper than the owner's limit."""
    here, most = slope_of(asked), inventory.property.slope_limit_pct
    if here is None or most is None or here.value <= most.value:
        return
    if _by_machine(asked, inventory):
        figures = (("Steepest here", here), ("Your limit", most))
        assert asked.ground.near is not None
        yield finding(Caution.STEEP, asked.job_id, asked.ground.near.where, figures)


def _by_machine(asked: JobAsked, inventory: Inventory) -> bool:
    if asked.step.operation in ALWAYS_BY_MACHINE:
        return True
    work = asked.work
    if work is None:
        return False
    sprayers = {one.id for one in inventory.sprayers if one.kind not in BY_HAND}
    return work.machine is not None or work.drill is not None or work.sprayer in sprayers


def slope_to_measure(job: Job) -> tuple[Given, ...]:
    """Return the lowest slope limit of the labels in a tank where no slope is typed, else none."""
    measured = any(one.key == SLOPE_HERE and one.figure is not None for one in job.safety)
    parts = job.mix.parts if job.mix is not None and not measured else ()
    typed = [part.use.slope_limit_pct for part in parts]
    limits = [one for one in typed if isinstance(one, Given)]
    return tuple(sorted(limits, key=lambda one: one.value)[:1])
