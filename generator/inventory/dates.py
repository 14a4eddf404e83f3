"""Days on which work must stop, wait, or look out for others."""

import datetime
from dataclasses import dataclass

from generator.inventory.fields import Record, choice, day, identity, reference, text, yes_no

ALL_PLACES = "all"
# What dates and papers may hold on: ground, and what has work of its own.
GROUND = ("place", "stand", "route", "water_hole", ALL_PLACES)
DATE_KINDS = ("quiet", "hunting", "turkey", "fawning", "nesting", "burn_ban")


@dataclass(frozen=True, slots=True, kw_only=True)
class DateRange(Record):
    """First and last day of one kind of dates, on some places or all of them.

    Both are full dates, so that dates over the new year can be read one way only; `every_year`
    brings them back in every other year too.
    """

    id: str = identity("id of the dates")
    kind: str = choice("place", "what the dates are", *DATE_KINDS, required=True)
    first: datetime.date = day("place", "first day", required=True)
    last: datetime.date = day("place", "last day", required=True)
    every_year: bool | None = yes_no("place", "true where they come back every year")
    places: tuple[str, ...] = reference(
        "place", "places they hold on, or all", *GROUND, many=True, required=True
    )
    source: str | None = text("place", "where they were looked up")
    looked_up_on: datetime.date | None = day("place", "looked up on", recorded=True)
    note: str | None = text("note", "a note of your own")
