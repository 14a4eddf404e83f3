"""How tall plantings grow: heights by season of growth in three curves, and how a season goes."""

from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from generator.reference.read import read_data, value_of
from generator.working import Reference

Curve = Literal["low", "typical", "high"]
CURVES: tuple[Curve, ...] = ("low", "typical", "high")


@dataclass(frozen=True, slots=True)
class GrownBy:
    """The part of a season's growth that is there on a day of the year."""

    month_day: tuple[int, int]
    fraction: Reference


@dataclass(frozen=True, slots=True)
class Growth:
    """How one group of species grows.

    `full` is the height at the end of each season of growth, the last for all after it; empty
    `later_grown` says that the plant lives one season. `winter` is what stands of the full height.
    """

    id: str
    species: tuple[str, ...]
    full: tuple[dict[Curve, Reference], ...]
    first_grown: tuple[GrownBy, ...]
    later_grown: tuple[GrownBy, ...]
    winter: dict[Curve, Reference]

    def full_in(self, year: int, curve: Curve) -> Reference:
        """Return the height at the end of a season of growth, counted from 1."""
        return self.full[min(year, len(self.full)) - 1][curve]

    def grown(self, year: int) -> tuple[GrownBy, ...]:
        """Return how a season of growth goes; nothing where the plant lives no more."""
        return self.first_grown if year == 1 else self.later_grown


@cache
def growths() -> dict[str, Growth]:
    """Return how each species grows, by the species; one that is not in it is not known."""
    found = [_growth(entry) for entry in read_data("growth.yaml")]
    return {species: one for one in found for species in one.species}


def _growth(entry: dict[str, Any]) -> Growth:
    return Growth(
        entry["id"],
        tuple(entry["species"]),
        tuple(
            {curve: _named(f"season_{one['season']}_{curve}_in", one[curve]) for curve in CURVES}
            for one in entry["full"]
        ),
        tuple(_grown_by(one) for one in entry["first_grown"]),
        tuple(_grown_by(one) for one in entry["later_grown"]),
        {curve: _named(f"winter_{curve}_fraction", entry["winter"][curve]) for curve in CURVES},
    )


def _grown_by(entry: dict[str, str]) -> GrownBy:
    month, day = entry["day"].split("-")
    name = f"grown_by_{month}_{day}_fraction"
    return GrownBy((int(month), int(day)), _named(name, entry))


def _named(name: str, entry: dict[str, str]) -> Reference:
    return value_of(entry | {"name": name})
