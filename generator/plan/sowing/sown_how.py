"""How a planting is sown, in words, and what is to be said where the way does not fit the days."""

from collections.abc import Iterator, Mapping

from generator.inventory.schema import Inventory
from generator.plan.findings.about_sowing import SowCaution, SowNote
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest, work_of
from generator.plan.model.finding import Finding, about_job

_AT_SOWING = "at_sowing"
METHOD_WORDS: Mapping[str, str] = {
    "frost_seed": "spread on frozen ground, and left to frost and thaw",
    "broadcast": "spread on a prepared bed, then worked in shallow or pressed in",
    "drill": "drilled",
    "plant": "planted in rows",
}
# Common practice: a sowing that opens between these days meets no nights of frost that follow.
WARM_FROM, WARM_UNTIL = (4, 15), (11, 1)


def method_of(request: JobRequest) -> str | None:
    """Return how a planting is sown, of the sowing it begins with; None of any later one."""
    return request.planting.method if request.step.timing == _AT_SOWING else None


def way_findings(request: JobRequest, inventory: Inventory) -> Iterator[Finding]:
    """Yield what is to be said of the way in which a planting is sown."""
    method, opens = method_of(request), request.dates.opens or request.dates.closes
    where = request.planting.where
    if method == "frost_seed" and opens is not None:
        if WARM_FROM <= (opens.month, opens.day) < WARM_UNTIL:
            yield finding(SowCaution.NO_FROST, about_job(request.job_id), where)
    elif method == "broadcast" and not _is_packed(request, inventory):
        yield finding(SowNote.NOT_PRESSED_IN, about_job(request.job_id), where)


def _is_packed(request: JobRequest, inventory: Inventory) -> bool:
    """Return whether the planting has a step that packs the ground, asked for where it must be."""
    packing = (step for step in inventory.steps_of(request.planting) if step.does.packs)
    return any(
        step.only_with is None or work_of(request.planting, step) is not None for step in packing
    )
