"""How a planting is sown, in words, and what is to be said where the way does not fit the days."""

from collections.abc import Iterator, Mapping

from generator.inventory.schema import Inventory
from generator.plan.asked import JobAsked, work_of
from generator.plan.cautions import Caution
from generator.plan.findings import finding
from generator.plan.model import Finding
from generator.plan.notes import Note

AT_SOWING = "at_sowing"
METHOD_WORDS: Mapping[str, str] = {
    "frost_seed": "spread on frozen ground, and left to frost and thaw",
    "broadcast": "spread on a prepared bed, then worked in shallow or pressed in",
    "drill": "drilled",
    "plant": "planted in rows",
}
# Common practice: a sowing that opens between these days meets no nights of frost that follow.
WARM_FROM, WARM_UNTIL = (4, 15), (11, 1)


def method_of(asked: JobAsked) -> str | None:
    """Return how a planting is sown, of the sowing it begins with; None of any later one."""
    return asked.planting.method if asked.step.timing == AT_SOWING else None


def way_findings(asked: JobAsked, inventory: Inventory) -> Iterator[Finding]:
    """Yield what is to be said of the way in which a planting is sown."""
    method, opens = method_of(asked), asked.dates.opens or asked.dates.closes
    where = asked.planting.where
    if method == "frost_seed" and opens is not None:
        if WARM_FROM <= (opens.month, opens.day) < WARM_UNTIL:
            yield finding(Caution.NO_FROST, asked.job_id, where)
    elif method == "broadcast" and not _is_packed(asked, inventory):
        yield finding(Note.NOT_PRESSED_IN, asked.job_id, where)


def _is_packed(asked: JobAsked, inventory: Inventory) -> bool:
    """Return whether the planting has a step that packs the ground, asked for where it must be."""
    packing = (one for one in inventory.steps_of(asked.planting) if one.operation == "roll")
    return any(one.only_with is None or work_of(asked.planting, one) is not None for one in packing)
