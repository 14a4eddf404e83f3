"""The inoculant that comes with a lot of legume seed."""

import datetime

from generator.dataclass import dataclass
from generator.inventory.fields import Record, day, text


@dataclass(frozen=True, slots=True, kw_only=True)
class Inoculant(Record):
    """What the package of the inoculant prints."""

    group: str = text("page", "group or plants it is for", required=True)
    expires_on: datetime.date | None = day(
        "page", "last day it is good; a month counts from its first day", month_too=True
    )
