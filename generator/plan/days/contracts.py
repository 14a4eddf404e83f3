"""What papers say of a job: the contracts its ground is under, and leave given in writing."""

import datetime

from generator.inventory.papers import Contract, Permit
from generator.inventory.places import PlantedGround
from generator.plan.model.days import holds_on
from generator.plan.model.job import Job

NO_CONTRACT = "none"


def land_of(ground: PlantedGround) -> str | None:
    """Return contract or not_contract, None where the owner has not said."""
    if ground.contract is None:
        return None
    return "not_contract" if ground.contract.strip().casefold() == NO_CONTRACT else "contract"


def contracts_on(place_id: str, contracts: tuple[Contract, ...]) -> tuple[Contract, ...]:
    """Return the contracts typed for a place."""
    return tuple(contract for contract in contracts if holds_on(contract.places, place_id))


def is_contract_land(place: PlantedGround, contracts: tuple[Contract, ...]) -> bool:
    """Return whether a place is under a contract: by its own word, or by a contract typed."""
    # either is enough: a paper that is not typed yet must not lift what the contract forbids
    return land_of(place) == "contract" or bool(contracts_on(place.id, contracts))


def approval_of(paper: Contract | Permit, as_of: datetime.date) -> datetime.date | None:
    """Return the day a paper was approved; None while that day has not come."""
    approved = paper.approved_on
    return approved if approved is not None and approved <= as_of else None


def names_job(words: tuple[str, ...], job: Job) -> bool:
    """Return whether a paper names the step of a job or its kind of work."""
    return not {job.step.id, job.step.operation}.isdisjoint(words)


def allows_in_nesting(
    job: Job, first: datetime.date, contracts: tuple[Contract, ...], as_of: datetime.date
) -> bool:
    """Return whether a contract gave leave in writing, before the first day it is needed."""
    return any(
        names_job(contract.written_permission_for, job)
        and contract.permission_on is not None
        # a letter dated after the plan's day is not there yet
        and contract.permission_on <= min(first, as_of)
        for contract in contracts_on(job.place_id, contracts)
    )


def is_permitted(permit: Permit, job: Job, as_of: datetime.date) -> bool:
    """Return whether a permit is given for the place and good on every open day of a job."""
    if not holds_on(permit.places, job.place_id) or approval_of(permit, as_of) is None:
        return False
    closes = job.dates.closes
    # without a last open day nobody can say that a permit lasts as long
    return permit.expires_on is None or (closes is not None and closes <= permit.expires_on)
