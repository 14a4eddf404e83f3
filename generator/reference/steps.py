"""Step plans: what a planting, a stand, a route or a water hole needs over its years."""

from functools import cache
from typing import Any, Literal

from generator.dataclass import dataclass
from generator.reference.operations import Operation, operations
from generator.reference.read import DATA, read_data, value_of
from generator.working import Reference

Answer = Literal["yes", "no"]


@dataclass(frozen=True, slots=True)
class Bound:
    """One end of the open dates: a day of the year or a sign of the season, moved by days."""

    month_day: tuple[int, int] | None
    sign: str | None
    by: str
    offset_days: int
    source: str


@dataclass(frozen=True, slots=True)
class AnswerNeeded:
    """An answer that another step of the plan must have had."""

    step: str
    answer: Answer


@dataclass(frozen=True, slots=True)
class Instead:
    """What can still be sown when a sowing is missed, and until which day of the year."""

    plan: str
    until: tuple[int, int]
    why: str
    source: str


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a plan: what is done, in which dates, with which settings and ticks.

    `only_with` names what a planting must ask for before the step is a job: fertilizer, lime, or
    work, the owner's own word on the step. `seasons_later` counts from the season of the planting.
    `asks` is a question the log answers; `needs` are answers this step waits for; `excludes` are
    steps that, once done, leave nothing to do here; `instead` is what to sow when this is missed.
    `chapters` are the names of those that say how it is done, the nearest first; `suits` names what
    a day must be like, None where any day will do.
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
    asks: str | None = None
    needs: tuple[AnswerNeeded, ...] = ()
    excludes: tuple[str, ...] = ()
    instead: tuple[Instead, ...] = ()
    chapters: tuple[str, ...] = ()
    suits: str | None = None

    @property
    def does(self) -> Operation:
        """The kind of work it is, with its traits."""
        return operations()[self.operation]


@dataclass(frozen=True, slots=True)
class Latitudes:
    """From where to where, in degrees north, the calendar days of a step plan are written for."""

    south: Reference
    north: Reference

    def hold(self, latitude_deg: float) -> bool:
        """Return whether the days are written for a latitude; both ends are."""
        return self.south.value <= latitude_deg <= self.north.value


@dataclass(frozen=True, slots=True)
class StepPlan:
    """What one kind of planting needs over its years, or one kind of thing in every season.

    `kind` is a kind of planting, None where the plan is for a `subject`: stand, route, water_hole.
    `yearly_from` is how many seasons after its own a planting begins to need the steps in every
    season; None where each step is done once. `latitudes` are those its calendar days are written
    for, None in a plan whose days are the owner's own.
    """

    id: str
    name: str
    kind: str | None
    steps: tuple[Step, ...]
    subject: str | None = None
    yearly_from: int | None = None
    latitudes: Latitudes | None = None


@cache
def step_plans() -> dict[str, StepPlan]:
    """Return every shipped step plan by its id."""
    names = sorted(path.name for path in (DATA / "steps").iterdir())
    plans = (_step_plan(read_data(f"steps/{name}")) for name in names)
    return {plan.id: plan for plan in plans}


def _step_plan(entry: dict[str, Any]) -> StepPlan:
    return StepPlan(
        entry["id"],
        entry["name"],
        entry.get("kind"),
        tuple(_step(step) for step in entry["steps"]),
        entry.get("subject"),
        int(entry["yearly_from"]) if "yearly_from" in entry else None,
        Latitudes(
            _end(entry["latitudes"]["south"], "south_latitude_deg"),
            _end(entry["latitudes"]["north"], "north_latitude_deg"),
        ),
    )


def _end(entry: dict[str, str], name: str) -> Reference:
    return value_of(entry | {"name": name})


def _step(entry: dict[str, Any]) -> Step:
    does = operations()[entry["operation"]]
    return Step(
        id=entry["id"],
        name=entry["name"],
        operation=entry["operation"],
        timing=entry["timing"],
        why=entry["why"],
        why_source=entry["why_source"],
        opens=tuple(_bound(bound) for bound in entry["opens"]),
        closes=tuple(_bound(bound) for bound in entry["closes"]),
        settings=(
            *(value_of(setting) for setting in entry.get("settings", ())),
            *does.settings,
        ),
        ticks=(*does.ticks, *entry["ticks"]),
        if_missed=entry["if_missed"],
        only_with=entry.get("only_with"),
        seasons_later=int(entry.get("seasons_later", "0")),
        asks=entry.get("asks"),
        needs=tuple(AnswerNeeded(need["step"], need["answer"]) for need in entry.get("needs", ())),
        excludes=tuple(entry.get("excludes", ())),
        instead=tuple(_instead(choice) for choice in entry.get("instead", ())),
        chapters=tuple(dict.fromkeys((*entry.get("chapters", ()), *does.chapters))),
        suits=entry.get("suits", does.suits),
    )


def _bound(entry: dict[str, str]) -> Bound:
    return Bound(
        _month_day(entry["date"]) if "date" in entry else None,
        entry.get("sign"),
        entry.get("by", "typical"),
        int(entry.get("offset_days", "0")),
        entry["source"],
    )


def _instead(entry: dict[str, str]) -> Instead:
    return Instead(entry["plan"], _month_day(entry["until"]), entry["why"], entry["source"])


def _month_day(text: str) -> tuple[int, int]:
    month, day = text.split("-")
    return int(month), int(day)
