"""What is usual: ranges with their sources, so that a figure ten times off is seen.

Nothing is worked out from them. What lies outside is asked.
"""

from functools import cache
from typing import Any, Literal

from generator.dataclass import dataclass
from generator.reference.library import values
from generator.reference.read import read_data, value_of
from generator.units import convert
from generator.working import Given, Measured, Quantity, Reference

Beyond = Literal["less", "more"]
_ENDS = ("low", "high")
# How far a figure may pass an end: what typing a figure in another unit leaves of rounding.
_ROUNDING = 1e-9


@dataclass(frozen=True, slots=True)
class Usual:
    """From what to what something usually lies, both in one unit; None is no end."""

    low: Reference | Quantity | None
    high: Reference | Quantity | None

    def beyond(self, figure: Given | Measured | Quantity) -> Beyond | None:
        """Return whether a figure is less or more than is usual."""
        return self.is_beyond(figure.value, figure.unit)

    def is_beyond(self, value: float, unit: str) -> Beyond | None:
        """Return whether a number of a unit is less or more than is usual."""
        low, high = self.low, self.high
        if low is not None and convert(value, unit, low.unit) < low.value * (1 - _ROUNDING):
            return "less"
        if high is not None and convert(value, unit, high.unit) > high.value * (1 + _ROUNDING):
            return "more"
        return None

    def end(self, beyond: Beyond) -> Reference | Quantity:
        """Return the end that a figure lies beyond."""
        found = self.low if beyond == "less" else self.high
        assert found is not None
        return found


@dataclass(frozen=True, slots=True)
class UsualSeed:
    """What is usual of a species sown alone: pounds to an acre, and live seeds in a pound."""

    rate: Usual
    seeds: Usual


@cache
def usual_seed() -> dict[str, UsualSeed]:
    """Return what is usual of every species that is sown, by its id."""
    return {
        entry["id"]: UsualSeed(_ends("usual_rate", entry["rate"]), _ends("usual", entry["seeds"]))
        for entry in read_data("usual_seed.yaml")
    }


def _ends(name: str, entry: dict[str, Any]) -> Usual:
    low, high = (
        value_of(entry[end] | {"name": f"{name}_{end}_{entry[end]['unit']}"}) for end in _ENDS
    )
    return Usual(low, high)


def usual(name: str, unit: str) -> Usual:
    """Return the usual range of a name in values.yaml, with the ends that stand there."""
    low, high = (values().get(f"usual_{name}_{end}_{unit}") for end in _ENDS)
    assert low or high
    return Usual(low, high)
