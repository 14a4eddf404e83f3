"""A water hole as the plan keeps it."""

from generator.dataclass import dataclass
from generator.inventory.ground import WaterHole
from generator.working import Given, Quantity


@dataclass(frozen=True, slots=True)
class DeerWater:
    """What deer drink at a hole and how long it lasts them, for one need: `careful` is the most."""

    careful: bool
    daily: Quantity
    lasts: Quantity
    refills: Quantity | None


@dataclass(frozen=True, slots=True)
class Water:
    """A water hole, its numbers by name, and what deer take from it, least need first."""

    hole: WaterHole
    numbers: dict[str, Quantity]
    drunk: tuple[DeerWater, ...]

    def load(self) -> Given | Quantity | None:
        """Return what one load brings in: all of it, or no more than the hole holds."""
        held, brought = self.numbers["water_gal"], self.hole.refill_gal
        return held if brought is not None and brought.value > held.value else brought

    def all_numbers(self) -> tuple[Quantity, ...]:
        """Return every number of the hole."""
        taken = [(need.daily, need.lasts, need.refills) for need in self.drunk]
        return (*self.numbers.values(), *(q for some in taken for q in some if q is not None))
