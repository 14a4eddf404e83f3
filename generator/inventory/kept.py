"""What of the property folder is bought, kept and used up, and the units it is counted in."""

from typing import Any

from generator.inventory.schema import Inventory
from generator.units import UNITS


def kept_lists(inventory: Inventory) -> tuple[tuple[Any, ...], ...]:
    """Return the lists of the property folder whose entries can be bought, kept and used up."""
    return (
        inventory.lots,
        inventory.plants,
        inventory.guards,
        inventory.products,
        inventory.adjuvants,
        inventory.fertilizers,
        inventory.limes,
    )


def kept_units(record: Any) -> tuple[str, ...]:
    """Return the units a kept thing is counted in: those typed, else all that could be."""
    known = [unit for unit in UNITS if hasattr(record, f"package_{unit}")]
    typed = [
        unit
        for unit in known
        if getattr(record, f"package_{unit}") is not None
        or getattr(record, f"on_hand_{unit}") is not None
    ]
    return tuple(typed or known)
