"""What is spread to feed or sweeten the ground: fertilizers by grade, limes by strength."""

import datetime
from dataclasses import dataclass

from generator.inventory.fields import (
    POSITIVE,
    SHARE,
    Limits,
    Record,
    day,
    identity,
    measure,
    text,
    yes_no,
)
from generator.inventory.ground import LIME_STRENGTH
from generator.working import Given

# A ton holds two thousand pounds, and no lime works as more than its own weight of lime.
ENM = Limits(above=0, at_most=2000)
_LEAD = Limits(at_least=0, at_most=730)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fertilizer(Record):
    """A dry fertilizer; its grade is the three numbers on the bag, in percent."""

    id: str = identity("id of the fertilizer")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("page", "name, by grade", required=True)
    n_fraction: Given = measure(
        "page", "nitrogen (N), the first number", "fraction", SHARE, required=True
    )
    p2o5_fraction: Given = measure(
        "page", "phosphate (P2O5), the second number", "fraction", SHARE, required=True
    )
    k2o_fraction: Given = measure(
        "page", "potash (K2O), the third number", "fraction", SHARE, required=True
    )
    package_lb: Given | None = measure("page", "a bag holds", "lb", POSITIVE)
    price_usd: Given | None = measure("money", "price of a bag", "usd", Limits(at_least=0))
    priced_on: datetime.date | None = day("money", "price asked on")
    on_hand_lb: Given | None = measure("money", "on hand", "lb", Limits(at_least=0))
    counted_on: datetime.date | None = day("money", "counted on")
    lead_days: Given | None = measure("money", "days from order to hand", "days", _LEAD)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Lime(Record):
    """A lime; its strength in the figures its seller states, one or several."""

    id: str = identity("id of the lime")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("page", "name you use", required=True)
    enm_lb_per_ton: Given | None = measure(
        "page", "effective neutralizing material (ENM)", "lb_per_ton", ENM
    )
    cce_fraction: Given | None = measure(
        "page", "calcium carbonate equivalent (CCE)", "fraction", LIME_STRENGTH
    )
    ecce_fraction: Given | None = measure(
        "page", "effective calcium carbonate equivalent (ECCE)", "fraction", LIME_STRENGTH
    )
    loose: bool | None = yes_no("page", "true where it comes loose, by the truck")
    package_lb: Given | None = measure("page", "a bag holds, or is sold by", "lb", POSITIVE)
    price_usd: Given | None = measure("money", "price of that much", "usd", Limits(at_least=0))
    priced_on: datetime.date | None = day("money", "price asked on")
    on_hand_lb: Given | None = measure("money", "on hand", "lb", Limits(at_least=0))
    counted_on: datetime.date | None = day("money", "counted on")
    lead_days: Given | None = measure("money", "days from order to hand", "days", _LEAD)
    note: str | None = text("note", "a note of your own")
