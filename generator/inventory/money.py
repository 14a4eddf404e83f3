"""Money other than prices of things: work that is hired, and cost that somebody shares."""

import datetime
from dataclasses import field

from generator.dataclass import dataclass
from generator.inventory.fields import (
    A_YEAR_LONG_AGO,
    POSITIVE,
    Record,
    amount,
    day,
    identity,
    measure,
    record,
    reference,
    text,
)
from generator.inventory.jobs_named import JobsNamed
from generator.working import Given

HIRE_UNITS = ("usd", "usd_per_ac", "usd_per_hour")
SHARE_UNITS = ("usd", "usd_per_ac", "fraction")


@dataclass(frozen=True, slots=True, kw_only=True)
class HiredJobs(Record):
    """Jobs of one planting that are hired."""

    planting: str = reference("place", "planting", "planting", required=True)
    steps: tuple[str, ...] = reference(
        "place", "steps, or all", "step", "all", many=True, required=True
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Hire(Record):
    """Work done by somebody for money: by the acre, by the hour, or for one sum."""

    id: str = identity("id of the hire")
    name: str | None = text("person", "who is hired")
    jobs: tuple[HiredJobs, ...] = record(
        "place", "jobs that are hired", HiredJobs, many=True, required=True
    )
    price: Given = amount(
        "money", "price to an acre, an hour, or for all of it", HIRE_UNITS, required=True
    )
    minimum_usd: Given | None = measure("money", "least that is charged", "usd", POSITIVE)
    priced_on: datetime.date | None = day("money", "price asked on")
    note: str | None = text("note", "a note of your own")
    _named: JobsNamed = field(init=False, repr=False, compare=False, default_factory=JobsNamed)

    def has(self, planting_id: str, step_id: str) -> bool:
        """Return whether a step of a planting is hired."""
        return self._named.has(self.jobs, planting_id, step_id)


@dataclass(frozen=True, slots=True, kw_only=True)
class CostShare(Record):
    """A contract that pays part of a planting back."""

    id: str = identity("id of the cost-share")
    name: str = text("money", "contract as it is written", required=True)
    planting: str = reference("place", "planting it pays for", "planting", required=True)
    pays: Given = amount(
        "money", "a sum, a sum to an acre, or a share of the cost", SHARE_UNITS, required=True
    )
    cap_usd: Given | None = measure("money", "most it pays", "usd", POSITIVE)
    approved_on: datetime.date | None = day("money", "approved in writing on", A_YEAR_LONG_AGO)
    note: str | None = text("note", "a note of your own")
