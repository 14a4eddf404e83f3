"""Papers the work rests on: permits, contracts, and requests to mark buried lines."""

import datetime

from generator.dataclass import dataclass
from generator.inventory.dates import ALL_GROUND
from generator.inventory.fields import (
    A_YEAR_LONG_AGO,
    Record,
    choice,
    day,
    identity,
    reference,
    text,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Permit(Record):
    """Leave given in writing to do one kind of work on some ground."""

    id: str = identity("id of the permit")
    kind: str = choice("place", "what it permits", "burn", "water", "other", required=True)
    name: str | None = text("place", "permit as it is written")
    places: tuple[str, ...] = reference(
        "place", "places it is for, or all", *ALL_GROUND, many=True, required=True
    )
    approved_on: datetime.date | None = day("place", "given in writing on", A_YEAR_LONG_AGO)
    expires_on: datetime.date | None = day("place", "its last day", A_YEAR_LONG_AGO)
    limits: str | None = text("page", "limits it sets, as written")
    source: str | None = text("place", "office that gave it")
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Contract(Record):
    """A contract that ground is under, and what it lets be done there.

    Steps are named by id or by their kind of work, so that `mow` stands for every mowing.
    """

    id: str = identity("id of the contract")
    name: str = text("place", "contract as it is written", required=True)
    places: tuple[str, ...] = reference(
        "place", "places under it, or all", *ALL_GROUND, many=True, required=True
    )
    cost_share: tuple[str, ...] = reference(
        "place", "entries of money.yaml that it pays", "cost-share", many=True
    )
    approved_on: datetime.date | None = day("place", "approved in writing on", A_YEAR_LONG_AGO)
    expires_on: datetime.date | None = day("place", "its last day", A_YEAR_LONG_AGO)
    work_allowed: tuple[str, ...] = reference(
        "place", "steps or kinds of work its written plan names", "step", "operation", many=True
    )
    written_permission_for: tuple[str, ...] = reference(
        "place", "steps or kinds of work allowed in nesting dates", "step", "operation", many=True
    )
    permission_on: datetime.date | None = day(
        "place", "that permission given in writing on", A_YEAR_LONG_AGO
    )
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class OneCall(Record):
    """A request to have buried lines marked before digging."""

    id: str = identity("id of the request")
    places: tuple[str, ...] = reference(
        "place", "places it is for, or all", *ALL_GROUND, many=True, required=True
    )
    asked_on: datetime.date | None = day("place", "asked on")
    number: str | None = text("page", "number of the request", numbered=True)
    clear_on: datetime.date | None = day("page", "first day to dig")
    expires_on: datetime.date | None = day("page", "last day the marks are good for")
    note: str | None = text("note", "a note of your own")
