"""Crops that hide whoever walks beside them, until they are cut."""

import datetime

from generator.dataclass import dataclass
from generator.inventory.fields import POSITIVE, Record, day, identity, measure, text
from generator.working import Given


@dataclass(frozen=True, slots=True, kw_only=True)
class CropBeside(Record):
    """A crop beside a walk or a screen that hides whoever walks there, until it is cut."""

    id: str = identity("id of the crop")
    kind: str = text("place", "what stands there, such as field corn", required=True)
    harvest_planned_on: datetime.date | None = day("place", "day it is meant to be cut")
    harvested_on: datetime.date | None = day("place", "day it was cut")
    stubble_in: Given | None = measure("place", "how tall the stubble is after it", "in", POSITIVE)
    note: str | None = text("note", "a note of your own")
