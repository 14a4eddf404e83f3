"""People who do the work: their licenses, their free hours, their insurance."""

import datetime

from generator.dataclass import dataclass
from generator.inventory.fields import (
    Limits,
    Record,
    choice,
    day,
    identity,
    measure,
    record,
    reference,
    text,
    yes_no,
)
from generator.working import Given

LICENCES = ("private", "commercial", "noncommercial", "none")
MONTH_KEYS = ("january", "february", "march", "april", "may", "june", "july", "august", "september",
          "october", "november", "december")  # fmt: skip
_FREE = Limits(at_least=0, at_most=744)


@dataclass(frozen=True, slots=True, kw_only=True)
class Applicator(Record):
    """Somebody who sprays, with the license they hold.

    Which license fits a restricted product is the state's to say: `fits` names the products the
    owner asked about, and `asked_on` the day of the answer.
    """

    id: str = identity("id of the applicator")
    name: str | None = text("person", "name")
    reader: str | None = reference("person", "reader of yours it is", "reader")
    licence_class: str = choice("person", "class of the license", *LICENCES, required=True)
    categories: tuple[str, ...] = text("person", "categories on the license", many=True)
    licence_number: str | None = text("person", "number of the license", numbered=True)
    licence_expires_on: datetime.date | None = day("person", "last day of the license")
    for_hire: bool | None = yes_no("person", "true where it covers spraying for pay")
    fits: tuple[str, ...] = reference(
        "person", "restricted products the license is good for", "product", many=True
    )
    asked_on: datetime.date | None = day("person", "the state agency said so on")
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class FreeMonth(Record):
    """The hours somebody has in one month of the season."""

    month: str = choice("person", "the month", *MONTH_KEYS, required=True)
    free_hours: Given = measure("person", "hours free in it", "hours", _FREE, required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Helper(Record):
    """Somebody who works without being hired, the owner among them."""

    id: str = identity("id of the helper")
    name: str | None = text("person", "name")
    weekend_hours: Given | None = measure(
        "person", "hours free on a weekend", "hours", Limits(at_least=0, at_most=48)
    )
    months: tuple[FreeMonth, ...] = record(
        "person", "months that are otherwise", FreeMonth, many=True
    )
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Contractor(Record):
    """Somebody who is hired, and what they have shown."""

    id: str = identity("id of the contractor")
    name: str | None = text("person", "name")
    reader: str | None = reference("person", "reader of yours it is", "reader")
    insured: bool | None = yes_no("person", "true where you have seen proof of insurance")
    insured_until: datetime.date | None = day("person", "last day of the insurance")
    note: str | None = text("note", "a note of your own")
