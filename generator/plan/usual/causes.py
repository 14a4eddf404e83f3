"""What rests on a catch test that is told as far from what is usual points at it."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from generator.inventory.equipment import Sprayer
from generator.inventory.stock import Product
from generator.plan.findings.about_labels import LabelStop
from generator.plan.findings.about_spraying import SprayCaution, SprayStop
from generator.plan.findings.about_usual import UsualCaution
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.spray_stops import chosen_products
from generator.plan.model.finding import Finding
from generator.working import Given

# what changes the spray on an acre, or the loads it takes, for every job of a sprayer
SLIPS = {
    reason.value.code
    for reason in (
        UsualCaution.MACHINE_OUT_OF_USUAL,
        UsualCaution.CARRIER_OUT_OF_USUAL,
        UsualCaution.NOZZLE_FAR_OFF,
    )
}
# What the spray on an acre decides, whatever the rate; and what it decides of a percent of it.
OF_LOADS = {
    reason.value.code for reason in (SprayStop.MARK_TOO_COARSE, SprayCaution.MARKS_MISS_THE_RATE)
}
BY_SPRAY = {SprayStop.CARRIER_OUTSIDE.value.code} | OF_LOADS
_BY_PERCENT = {
    reason.value.code
    for reason in (LabelStop.RATE_OUTSIDE, LabelStop.OVER_ONE_TIME, LabelStop.OVER_YEAR)
}
TANK = "tank_gal"
FIRST = (
    "First look at {cause}: its catch test, or what that rests on, is far from what is usual, and "
    "this may come of it. If that is right: {cure}"
)


def with_causes(
    findings: Sequence[Finding],
    requests: Iterable[JobRequest],
    sprayers: tuple[Sprayer, ...],
    products: tuple[Product, ...],
) -> list[Finding]:
    """Return findings in which what a slip of the job's sprayer makes names that slip.

    A stop stays what it is: nothing of the job is printed until the slip is mended.
    """
    names = {sprayer.id: sprayer.name for sprayer in sprayers}
    slips = [found for found in findings if found.code in SLIPS and found.subject in names]
    by_job = {request.job_id: request for request in requests} if slips else {}
    told = []
    for found in findings:
        job = by_job.get(found.subject)
        slip = _cause(found, job, slips, products) if job is not None else None
        told.append(found if slip is None else _pointed(found, slip, names[slip.subject]))
    return told


def _cause(
    found: Finding, job: JobRequest, slips: Sequence[Finding], products: tuple[Product, ...]
) -> Finding | None:
    """Return the slip of a job's sprayer that a finding on the job may come of."""
    if job.work is None or found.code not in (*BY_SPRAY, *_BY_PERCENT):
        return None
    by_percent = any(part.typed.mix_fraction for part in chosen_products(job, products))
    # a rate to an acre is wrong by itself, whatever the sprayer puts out
    if found.code in _BY_PERCENT and not by_percent:
        return None
    mine = (slip for slip in slips if slip.subject == job.work.sprayer)
    # a tank is a cause of loads and marks alone: it changes nothing that falls on an acre
    return next((slip for slip in mine if found.code in OF_LOADS or not _is_of_tank(slip)), None)


def _is_of_tank(slip: Finding) -> bool:
    """Whether a slip is in what the tank holds: it changes loads, and nothing on an acre."""
    return any(isinstance(figure, Given) and figure.name == TANK for _, figure in slip.figures)


def _pointed(found: Finding, slip: Finding, machine: str) -> Finding:
    cause = f"{slip.code} on {machine}"
    return replace(found, cause=slip.id, cure=FIRST.format(cause=cause, cure=found.cure))
