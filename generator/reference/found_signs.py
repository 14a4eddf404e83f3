"""How signs of the season are found in a weather record, and when grasses come up."""

from functools import cache

from generator.dataclass import dataclass
from generator.reference.library import marker_names, values
from generator.reference.read import read_data, value_of
from generator.working import Reference


@dataclass(frozen=True, slots=True)
class FoundBy:
    """One sign: its name, the name of its method, the values it takes.

    `published` says which freeze it is, where published days of it may be typed.
    """

    id: str
    name: str
    method: str
    values: tuple[Reference, ...]
    published: str | None


@cache
def found_by() -> tuple[FoundBy, ...]:
    """Return how every sign is found, those that jobs wait for first."""
    return tuple(
        FoundBy(
            entry["id"],
            entry.get("name") or marker_names()[entry["id"]],
            entry["method"],
            tuple(values()[name] for name in entry["values"]),
            entry.get("published"),
        )
        for entry in read_data("found_signs.yaml")
    )


@cache
def emergence_soils() -> dict[str, Reference]:
    """Return the soil at which seedlings of a species begin to come up, where that is published."""
    return {entry["species"]: value_of(entry) for entry in read_data("emergence.yaml")}
