"""Kinds of work and their traits: what is asked of a job because of what is done."""

from functools import cache
from typing import Any, Literal

from generator.dataclass import dataclass
from generator.reference.library import values
from generator.reference.read import read_data, value_of
from generator.working import Reference

PutsDown = Literal["spray", "seed", "fertilizer", "lime", "plants", "plants_again", "nothing"]

_NO, _YES = "no", "yes"


@dataclass(frozen=True, slots=True)
class WorkGroup:
    """A head under which kinds of work stand in the year."""

    id: str
    name: str


@dataclass(frozen=True, slots=True)
class Operation:
    """A kind of work: what hangs on it, and the traits that operations.yaml says of every one.

    `cautions` names the callout; `settings`, `ticks` and `chapters` hold for every step of it;
    `suits` is what a day must be like, None where any will do. A trait that is words is None where
    the kind of work has none.
    """

    id: str
    name: str
    cautions: str
    settings: tuple[Reference, ...]
    ticks: tuple[str, ...]
    chapters: tuple[str, ...]
    suits: str | None
    group: WorkGroup
    puts_down: PutsDown
    digs: bool
    by_machine: bool
    machine_ranges: bool
    uses_fire: bool
    kills_sod: bool
    packs: bool
    shears: str | None
    lays_down: str | None
    meets_stock: bool
    disturbs_nests: bool
    needs_leave: bool
    logged_as: str | None
    asks_sound: bool
    not_alone: str | None
    rain: str | None
    sign_off: str | None
    decides: str | None

    @property
    def sprays(self) -> bool:
        """Whether something goes through a sprayer."""
        return self.puts_down == "spray"

    @property
    def sows(self) -> bool:
        """Whether seed is put down."""
        return self.puts_down == "seed"

    @property
    def spreads(self) -> bool:
        """Whether fertilizer or lime is put down."""
        return self.puts_down in ("fertilizer", "lime")

    @property
    def begins_planting(self) -> bool:
        """Whether what a planting is made of comes into the ground with it for the first time."""
        return self.puts_down in ("seed", "plants")

    @property
    def brings_plants(self) -> bool:
        """Whether seed or plants come into the ground, which what was sprayed there may harm."""
        return self.puts_down in ("seed", "plants", "plants_again")


@cache
def work_groups() -> dict[str, WorkGroup]:
    """Return the heads under which work stands, by id and in their order."""
    return {entry["id"]: WorkGroup(**entry) for entry in read_data("work_groups.yaml")}


@cache
def operations() -> dict[str, Operation]:
    """Return every kind of work by its id.

    Raises TypeError for a row that leaves a trait out, KeyError for a word that no trait has.
    """
    return {entry["id"]: _operation(entry) for entry in read_data("operations.yaml")}


def _operation(entry: dict[str, Any]) -> Operation:
    traits = dict(entry["traits"])
    own = tuple(value_of(setting) for setting in entry.get("settings", ()))
    return Operation(
        id=entry["id"],
        name=entry["name"],
        cautions=entry.get("cautions_of", entry["id"]),
        settings=(*own, *(values()[name] for name in entry.get("values", ()))),
        ticks=tuple(entry.get("ticks", ())),
        chapters=tuple(entry.get("chapters", ())),
        suits=entry.get("suits"),
        group=work_groups()[traits.pop("group")],
        puts_down=traits.pop("puts_down"),
        **{name: _TRAITS[name](said) for name, said in traits.items()},
    )


def _is_so(said: str) -> bool:
    return {_YES: True, _NO: False}[said]


def _words(said: str) -> str | None:
    return None if said == _NO else said


_TRAITS: dict[str, Any] = {
    **dict.fromkeys(
        (
            "digs",
            "by_machine",
            "machine_ranges",
            "uses_fire",
            "kills_sod",
            "packs",
            "meets_stock",
            "disturbs_nests",
            "needs_leave",
            "asks_sound",
        ),
        _is_so,
    ),
    **dict.fromkeys(
        ("shears", "lays_down", "logged_as", "not_alone", "rain", "sign_off", "decides"), _words
    ),
}
