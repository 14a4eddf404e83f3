"""Days on which work must stop, wait, or look out for others."""

import datetime

from generator.dataclass import dataclass
from generator.inventory.fields import (
    Limits,
    Record,
    choice,
    day,
    identity,
    measure,
    reference,
    text,
    yes_no,
)
from generator.working import Given

ALL_PLACES = "all"
# What dates and papers may hold on: ground, and what has work of its own.
ALL_GROUND = ("place", "stand", "route", "water_hole", ALL_PLACES)
HUNTED = ("hunting", "turkey")
_DATE_KINDS = ("quiet", "hunting", "turkey", "fawning", "nesting", "burn_ban", "dry_spell")
# Of a rule for shooting hours, in minutes.
OFFSET = Limits(at_least=0, at_most=180)
CLOCK = "clock"


@dataclass(frozen=True, slots=True, kw_only=True)
class DateRange(Record):
    """First and last day of one kind of dates, on some places or all of them.

    Both are full dates, so that dates over the new year can be read one way only; `every_year`
    brings them back in every other year too.
    """

    id: str = identity("id of the dates")
    kind: str = choice("place", "what the dates are", *_DATE_KINDS, required=True)
    first: datetime.date = day("place", "first day", required=True)
    last: datetime.date = day("place", "last day", required=True)
    every_year: bool | None = yes_no("place", "true where they come back every year")
    places: tuple[str, ...] = reference(
        "place", "places they hold on, or all", *ALL_GROUND, many=True, required=True
    )
    source: str | None = text("place", "where they were looked up")
    looked_up_on: datetime.date | None = day("place", "looked up on")
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class ShootingHours(Record):
    """The rule for the hours of a day in which game may be taken, as the owner looked it up.

    They begin so long before sunrise or civil dawn, and end so long after sunset or civil dusk, or
    at a time of the clock.
    """

    id: str = identity("id of the shooting hours")
    dates: tuple[str, ...] = reference(
        "place", "hunting dates they hold on", "dates", many=True, required=True
    )
    begins: str = choice("place", "what they begin by", "sunrise", "civil_dawn", required=True)
    begins_before_minutes: Given = measure(
        "place",
        "how long before sunrise or dawn they begin, 0 for none",
        "minutes",
        OFFSET,
        required=True,
    )
    ends: str = choice("place", "what they end by", "sunset", "civil_dusk", CLOCK, required=True)
    ends_after_minutes: Given | None = measure(
        "place", "how long after sunset or dusk they end, 0 for none", "minutes", OFFSET
    )
    ends_at: str | None = text("place", "time of day they end at, like 13:00, with ends: clock")
    source: str = text("place", "where they were looked up", required=True)
    looked_up_on: datetime.date = day("place", "looked up on", required=True)
    note: str | None = text("note", "a note of your own")
