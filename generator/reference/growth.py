"""How tall plantings grow: heights by season of growth in three curves, and how a season goes."""

import re
from dataclasses import replace
from functools import cache
from typing import Any, Literal

from generator.dataclass import dataclass
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
    """How one species grows, or one kind of it, by its ecotype or by a variety.

    `full` is the height at the end of each season of growth, the last for all after it; empty
    `later_grown` says that the plant lives one season. `winter` is what stands of the full height.
    """

    id: str
    name: str
    species: str
    ecotype: str | None
    variety: str | None
    full: tuple[dict[Curve, Reference], ...]
    first_grown: tuple[GrownBy, ...]
    later_grown: tuple[GrownBy, ...]
    winter: dict[Curve, Reference]

    @property
    def lives_on(self) -> bool:
        """Return whether the plant stands for more than one season of growth."""
        return bool(self.later_grown)

    def full_in(self, year: int, curve: Curve) -> Reference:
        """Return the height at the end of a season of growth, counted from 1."""
        return self.full[min(year, len(self.full)) - 1][curve]

    def grown(self, year: int) -> tuple[GrownBy, ...]:
        """Return how a season of growth goes; nothing where the plant lives no more."""
        return self.first_grown if year == 1 else self.later_grown


@cache
def growths() -> tuple[Growth, ...]:
    """Return every kind of every species whose growth is known, a species before its kinds."""
    listed = {entry["id"]: entry for entry in read_data("growth.yaml")}
    return tuple(_growth(_whole(entry, listed)) for entry in listed.values())


def species_growth(species: str) -> Growth | None:
    """Return how a species grows where its kind is not known; None where that is not known."""
    return next((growth for growth in growths() if growth.species == species), None)


def has_kinds(species: str) -> bool:
    """Return whether a species grows differently by its ecotype."""
    return any(growth.species == species and growth.ecotype for growth in growths())


def kind_growth(species: str, ecotype: str | None, variety: str | None) -> Growth | None:
    """Return how a kind of a species grows: by the tag's variety, else by the ecotype.

    Where the tag and what is typed do not agree, nobody knows the kind.
    """
    kinds = [growth for growth in growths() if growth.species == species and growth.ecotype]
    # by whole words: a name inside a longer one is another variety
    words = set(re.findall(r"\w+", (variety or "").casefold()))
    named = [kind for kind in kinds if kind.variety and kind.variety.casefold() in words]
    if named:
        agreed = [kind for kind in named if ecotype in (None, kind.ecotype)]
        return agreed[0] if len(named) == 1 and agreed else species_growth(species)
    by_ecotype = (kind for kind in kinds if kind.ecotype == ecotype and not kind.variety)
    return next(by_ecotype, species_growth(species))


def on_soil(kind: Growth, unknown: Growth, soil: str | None) -> Growth:
    """Return what is counted on from a kind on a class of soil, as growth.yaml says of soil.

    `unknown` is the growth of the species, its kind not known. No soil typed is poor soil.
    """
    if soil == "good":
        return kind
    counted = kind if soil == "ordinary" else unknown
    return replace(
        counted, full=tuple({**heights, "high": heights["typical"]} for heights in counted.full)
    )


def _whole(entry: dict[str, Any], listed: dict[str, dict[str, Any]]) -> dict[str, Any]:
    """Return an entry with what it leaves out taken from the one it is like."""
    if "like" not in entry:
        return entry
    like = listed[entry["like"]]
    own = {season["season"]: season for season in entry["full"]}
    kept = ("first_grown", "later_grown", "winter")
    return {
        **{key: like[key] for key in kept},
        **entry,
        "full": [own.get(season["season"], season) for season in like["full"]],
    }


def _growth(entry: dict[str, Any]) -> Growth:
    return Growth(
        entry["id"],
        entry["name"],
        entry["species"],
        entry.get("ecotype"),
        entry.get("variety"),
        tuple(
            {
                curve: _named(f"season_{season['season']}_{curve}_in", season[curve])
                for curve in CURVES
            }
            for season in entry["full"]
        ),
        tuple(_grown_by(part) for part in entry["first_grown"]),
        tuple(_grown_by(part) for part in entry["later_grown"]),
        {curve: _named(f"winter_{curve}_fraction", entry["winter"][curve]) for curve in CURVES},
    )


def _grown_by(entry: dict[str, str]) -> GrownBy:
    month, day = entry["day"].split("-")
    name = f"grown_by_{month}_{day}_fraction"
    return GrownBy((int(month), int(day)), _named(name, entry))


def _named(name: str, entry: dict[str, str]) -> Reference:
    return value_of(entry | {"name": name})
