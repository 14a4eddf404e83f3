"""The order in which the parts of a tank go in."""

from generator.inventory.stock import Adjuvant, Product
from generator.reference.load import mixing_steps


def mixing_order(parts: list[Product | Adjuvant]) -> tuple[str, ...] | None:
    """Return the names in the order they go in, or None where a formulation is not known.

    A part that goes in alone needs no order.
    """
    if len(parts) == 1:
        return ()
    place = {step.id: number for number, step in enumerate(mixing_steps())}
    if any(one.formulation is None for one in parts):
        return None
    ordered = sorted(parts, key=lambda one: place[str(one.formulation)])
    return tuple(one.name for one in ordered)
