"""What is spread in a job: fertilizer or lime, its numbers, and what the ground asked for."""

from dataclasses import dataclass

from generator.inventory.spreadable import Fertilizer, Lime
from generator.working import Figure, Quantity


@dataclass(frozen=True, slots=True)
class Spreading:
    """One fertilizer or lime on a place, with its numbers by name."""

    item: Fertilizer | Lime
    numbers: dict[str, Quantity]


@dataclass(frozen=True, slots=True)
class Nutrient:
    """One nutrient to an acre: asked for, what goes on, what is short: all, if none goes on.

    `over` is what goes on beyond what is asked for, where more does.
    """

    name: str
    need: Figure
    got: Quantity | None
    short: Figure | None
    over: Quantity | None

    def numbers(self) -> tuple[Quantity, ...]:
        """Return what of it is computed."""
        return tuple(
            figure for figure in (self.got, self.short, self.over) if isinstance(figure, Quantity)
        )


@dataclass(frozen=True, slots=True)
class LimeAsked:
    """The lab's lime need as printed: base, its percent where it has one, and the lime's own."""

    base: str
    need: Figure
    base_strength: Figure | None
    own_strength: Figure
