"""Weeds: how each lives and looks, when it is weak, and which ways of working kill it."""

from functools import cache
from typing import Any, Literal, cast

from generator.dataclass import dataclass
from generator.reference.library import ways_of_working
from generator.reference.read import read_data

OTHER = "other"
Cycle = Literal["annual", "biennial", "perennial"]
Form = Literal["grass", "broadleaf", "sedge"]


@dataclass(frozen=True, slots=True)
class Weed:
    """A weed. `looks`, `weak` and `works` each name the key of the source they are from."""

    id: str
    name: str
    cycle: Cycle
    form: Form
    looks: str
    source: str
    weak: str
    weak_source: str
    works: tuple[str, ...]
    works_source: str

    def spares(self, kinds: frozenset[str]) -> tuple[str, ...]:
        """Return the ways that kill this weed and spare kinds of planting.

        What is known by no other word than `other` may kill anything, so it spares nothing.
        """
        return tuple(
            way for way in self.works if way != OTHER and not ways_of_working()[way].harms & kinds
        )


@cache
def weeds() -> dict[str, Weed]:
    """Return every weed by its id, in the order of the list."""
    return {entry["id"]: _weed(entry) for entry in read_data("weeds.yaml")}


def _weed(entry: dict[str, Any]) -> Weed:
    return Weed(
        id=entry["id"],
        name=entry["name"],
        cycle=cast(Cycle, entry["cycle"]),
        form=cast(Form, entry["form"]),
        looks=entry["looks"],
        source=entry["source"],
        weak=entry["weak"],
        weak_source=entry["weak_source"],
        works=tuple(entry["works"]),
        works_source=entry["works_source"],
    )


def weed_named(words: str) -> Weed | None:
    """Return the weed an owner's words mean: its id or its name; None where neither fits."""
    wanted = words.strip().casefold()
    found = (weed for weed in weeds().values() if wanted in (weed.id, weed.name.casefold()))
    return next(found, None)
