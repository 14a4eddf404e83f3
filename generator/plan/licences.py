"""Who does a job, and whether their licence is good for it on its last open day."""

import datetime

from generator.inventory.people import Applicator
from generator.inventory.schema import PARTNER, Inventory
from generator.plan.readers import is_handed

ALL_STEPS = "all"
NO_LICENCE, FOR_HIRE = "none", "commercial"


def readers_of(planting_id: str, step_id: str, inventory: Inventory) -> tuple[str, ...]:
    """Return the readers a job is handed to."""
    return tuple(one.id for one in inventory.readers if is_handed(one, planting_id, step_id))


def is_handed_to_a_contractor(planting_id: str, step_id: str, inventory: Inventory) -> bool:
    """Return whether a job is handed to somebody who works for pay."""
    return any(
        is_handed(one, planting_id, step_id) for one in inventory.readers if one.kind != PARTNER
    )


def is_hired(planting_id: str, step_id: str, inventory: Inventory) -> bool:
    """Return whether a job is hired."""
    return any(
        one.planting == planting_id and (step_id in one.steps or ALL_STEPS in one.steps)
        for hire in inventory.hires
        for one in hire.jobs
    )


def doers_of(planting_id: str, step_id: str, inventory: Inventory) -> tuple[Applicator, ...]:
    """Return the applicators who may be the ones that do a job.

    Of a job handed to a reader it is the one who is that reader, a contractor only where the
    licence is for hire; of one that is hired anybody who sprays for hire; of any other, somebody
    who is no reader.
    """
    readers = readers_of(planting_id, step_id, inventory)
    if readers:
        known = (one for one in inventory.applicators if one.reader in readers)
        return tuple(one for one in known if is_partner(one, inventory) or _for_hire(one))
    if is_hired(planting_id, step_id, inventory):
        return tuple(one for one in inventory.applicators if _for_hire(one))
    return tuple(one for one in inventory.applicators if one.reader is None)


def is_partner(one: Applicator, inventory: Inventory) -> bool:
    """Return whether an applicator is a partner, who works without pay."""
    return any(reader.id == one.reader and reader.kind == PARTNER for reader in inventory.readers)


def _for_hire(one: Applicator) -> bool:
    return one.licence_class == FOR_HIRE and one.for_hire is True


def is_good(one: Applicator, last_day: datetime.date | None) -> bool:
    """Return whether a licence is held and good on a day; never on one that is not known."""
    if one.licence_class == NO_LICENCE or one.licence_expires_on is None or last_day is None:
        return False
    return last_day <= one.licence_expires_on


def may_be_restricted(
    product_id: str,
    planting_id: str,
    step_id: str,
    last_day: datetime.date | None,
    inventory: Inventory,
) -> bool:
    """Return whether whoever does a job holds a licence that fits a restricted product."""
    return any(
        product_id in one.fits and one.asked_on is not None and is_good(one, last_day)
        for one in doers_of(planting_id, step_id, inventory)
    )
