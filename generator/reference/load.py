"""Reference data: species, kinds of planting, step plans, signs, sources and words, as records."""

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from generator.working import Reference

_DATA = Path(__file__).parent / "data"
_Loader: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)


@dataclass(frozen=True, slots=True)
class Source:
    """Where a value or a formula comes from; `trust` says how far."""

    key: str
    title: str
    publisher: str
    year: str
    address: str
    trust: str
    note: str


@dataclass(frozen=True, slots=True)
class Species:
    """A species a planting may name."""

    id: str
    name: str
    kind: str
    dormancy: bool
    legume: bool
    inoculant_group: str
    inoculant_source: str


@dataclass(frozen=True, slots=True)
class Bound:
    """One end of the open dates: a day of the year or a sign of the season, moved by days."""

    month_day: tuple[int, int] | None
    sign: str | None
    by: str
    offset_days: int
    source: str


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a plan: what is done, in which dates, with which settings and ticks.

    `only_with` names what a planting must ask for, fertilizer or lime, before the step is a job.
    `seasons_later` counts from the season of the planting to the season the step is done in.
    """

    id: str
    name: str
    operation: str
    timing: str
    why: str
    why_source: str
    opens: tuple[Bound, ...]
    closes: tuple[Bound, ...]
    settings: tuple[Reference, ...]
    ticks: tuple[str, ...]
    if_missed: str
    only_with: str | None = None
    seasons_later: int = 0


@dataclass(frozen=True, slots=True)
class StepPlan:
    """What one kind of planting needs over its years."""

    id: str
    name: str
    kind: str
    steps: tuple[Step, ...]


@dataclass(frozen=True, slots=True)
class WayOfWorking:
    """How an active works, in words, and the kinds of planting a trace of it harms."""

    id: str
    name: str
    harms: frozenset[str]


@dataclass(frozen=True, slots=True)
class MixingStep:
    """One place in the order in which the parts of a tank go in."""

    id: str
    name: str
    source: str


def _data(name: str) -> Any:
    return yaml.load((_DATA / name).read_text(encoding="utf-8"), Loader=_Loader)


def _names(name: str) -> dict[str, str]:
    return {entry["id"]: entry["name"] for entry in _data(name)}


@cache
def sources() -> dict[str, Source]:
    """Return every source by its key."""
    return {
        key: Source(
            key,
            entry["title"],
            entry.get("publisher", ""),
            entry.get("year", ""),
            entry.get("address", ""),
            entry["trust"],
            entry.get("note", ""),
        )
        for key, entry in _data("sources.yaml").items()
    }


@cache
def species() -> dict[str, Species]:
    """Return every species by its id."""
    return {
        entry["id"]: Species(
            entry["id"],
            entry["name"],
            entry["kind"],
            entry["dormancy"] == "true",
            entry.get("legume") == "true",
            entry.get("inoculant_group", ""),
            entry.get("source", ""),
        )
        for entry in _data("species.yaml")
    }


@cache
def planting_kinds() -> dict[str, str]:
    """Return the name of every kind of planting by its id."""
    return _names("kinds.yaml")


@cache
def operations() -> dict[str, str]:
    """Return the name of every operation by its id."""
    return _names("operations.yaml")


@cache
def cautions_of(operation: str) -> str:
    """Return the name of the cautions that hang on an operation: its own, or another's."""
    entry = next(one for one in _data("operations.yaml") if one["id"] == operation)
    return str(entry.get("cautions_of", operation))


@cache
def sign_names() -> dict[str, str]:
    """Return the name of every season sign by its id."""
    return _names("signs.yaml")


@cache
def emergency_numbers() -> dict[str, str]:
    """Return the telephone number of every line that is the same everywhere, by its id."""
    return _names("emergency.yaml")


@cache
def words() -> dict[str, str]:
    """Return what every word of the glossary means."""
    return {entry["word"]: entry["meaning"] for entry in _data("words.yaml")}


@dataclass(frozen=True, slots=True)
class Method:
    """How a number is measured, in words, and the key of the source that describes it."""

    words: str
    source: str


@cache
def methods() -> dict[str, Method]:
    """Return how numbers are measured that no line of formula gives, by the number's name."""
    return {
        entry["name"]: Method(entry["words"], entry["source"]) for entry in _data("methods.yaml")
    }


@cache
def values() -> dict[str, Reference]:
    """Return every value that chapters and callouts may show, by its name."""
    settings = (_setting(entry) for entry in _data("values.yaml"))
    return {one.name: one for one in settings}


@cache
def ways_of_working() -> dict[str, WayOfWorking]:
    """Return every way in which an active works by its id."""
    return {
        entry["id"]: WayOfWorking(entry["id"], entry["name"], frozenset(entry["harms"]))
        for entry in _data("works.yaml")
    }


@cache
def known_actives() -> dict[str, frozenset[str]]:
    """Return how the actives known by name work; names in small letters."""
    return {entry["id"]: frozenset(entry["works_as"]) for entry in _data("actives.yaml")}


@cache
def mixing_steps() -> tuple[MixingStep, ...]:
    """Return the order in which the parts of a tank go in."""
    return tuple(
        MixingStep(entry["id"], entry["name"], entry["source"]) for entry in _data("mixing.yaml")
    )


@cache
def step_plans() -> dict[str, StepPlan]:
    """Return every step plan by its id."""
    plans = (_step_plan(_data(f"steps/{one.name}")) for one in sorted((_DATA / "steps").iterdir()))
    return {plan.id: plan for plan in plans}


def _step_plan(entry: dict[str, Any]) -> StepPlan:
    steps = tuple(_step(one) for one in entry["steps"])
    return StepPlan(entry["id"], entry["name"], entry["kind"], steps)


def _step(entry: dict[str, Any]) -> Step:
    return Step(
        id=entry["id"],
        name=entry["name"],
        operation=entry["operation"],
        timing=entry["timing"],
        why=entry["why"],
        why_source=entry["why_source"],
        opens=tuple(_bound(one) for one in entry["opens"]),
        closes=tuple(_bound(one) for one in entry["closes"]),
        settings=tuple(_setting(one) for one in entry["settings"]),
        ticks=tuple(entry["ticks"]),
        if_missed=entry["if_missed"],
        only_with=entry.get("only_with"),
        seasons_later=int(entry.get("seasons_later", "0")),
    )


def _bound(entry: dict[str, str]) -> Bound:
    month_day = None
    if "date" in entry:
        month, day = entry["date"].split("-")
        month_day = (int(month), int(day))
    return Bound(
        month_day,
        entry.get("sign"),
        entry.get("by", "typical"),
        int(entry.get("offset_days", "0")),
        entry["source"],
    )


def _setting(entry: dict[str, str]) -> Reference:
    return Reference(
        entry["name"], float(entry["value"]), entry["unit"], entry["source"], entry["locator"]
    )
