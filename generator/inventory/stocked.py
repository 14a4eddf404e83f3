"""What everything that is bought and kept has: its price, what is there, and when it comes."""

import datetime
from typing import Any

from generator.dataclass import dataclass
from generator.inventory.fields import Limits, Record, day, measure, text
from generator.working import Given

_LEAD = Limits(at_least=0, at_most=730)
_NONE_OR_MORE = Limits(at_least=0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stocked(Record):
    """A thing that is bought and kept, whatever it is; how it is packed it says itself."""

    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    priced_on: datetime.date | None = day("money", "price asked on")
    counted_on: datetime.date | None = day("money", "counted on")
    lead_days: Given | None = measure("money", "days from order to hand", "days", _LEAD)
    note: str | None = text("note", "a note of your own")


def price_of(package: str) -> Any:
    """Declare the price of a package, by what it is called."""
    return measure("money", f"price of {package}", "usd", _NONE_OR_MORE)


def on_hand(unit: str, words: str = "on hand") -> Any:
    """Declare how much there is, in the unit it is counted in."""
    return measure("money", words, unit, _NONE_OR_MORE)
