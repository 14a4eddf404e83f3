"""Machines that cover ground: what they do in an hour, burn, and cost to rent."""

from generator.dataclass import dataclass
from generator.inventory.fields import POSITIVE, Limits, Record, identity, measure, text
from generator.working import Given

EFFICIENCY = Limits(above=0, at_most=1)
DAY = Limits(above=0, at_most=24)


@dataclass(frozen=True, slots=True, kw_only=True)
class Machine(Record):
    """A mower, tractor with a tool, or cart; for one that comes with a hire, no fuel or rent."""

    id: str = identity("id of the machine")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("page", "name you use", required=True)
    width_ft: Given = measure("page", "width it works at once", "ft", POSITIVE, required=True)
    speed_mph: Given = measure("page", "speed at work", "mph", POSITIVE, required=True)
    efficiency_fraction: Given = measure(
        "page", "share of the time it covers new ground", "fraction", EFFICIENCY, required=True
    )
    fuel_gal_per_hour: Given | None = measure("money", "fuel it burns", "gal_per_hour", POSITIVE)
    fuel_usd_per_gal: Given | None = measure(
        "money", "price of fuel", "usd_per_gal", Limits(at_least=0)
    )
    rent_usd_per_day: Given | None = measure(
        "money", "rent for a day", "usd_per_day", Limits(at_least=0)
    )
    work_day_hours: Given | None = measure("money", "hours you work on a day of rent", "hours", DAY)
    note: str | None = text("note", "a note of your own")
