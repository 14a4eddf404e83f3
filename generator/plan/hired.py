"""Whether somebody sprayed for hire, as an entry of the log or the job it is about says."""

from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.plan.licences import is_handed_to_a_contractor, is_hired, is_partner


def was_hired(entry: LogEntry, inventory: Inventory) -> bool:
    """Return whether somebody sprayed for hire: who is named, else whom the job was meant for."""
    said = entry.sprayed.applicator if entry.sprayed is not None else None
    applicator = next((one for one in inventory.applicators if one.id == said), None)
    if applicator is not None:
        by_reader = applicator.reader is not None and not is_partner(applicator, inventory)
        return by_reader or applicator.for_hire is True
    job = entry.job
    if job is None:
        return False
    handed = is_handed_to_a_contractor(job.planting, job.step, inventory)
    return handed or is_hired(job.planting, job.step, inventory)
