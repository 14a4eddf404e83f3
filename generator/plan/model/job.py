"""Jobs: dates, state, what goes into a tank, what is sown, spread and planted."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, replace
from typing import Literal

from generator.inventory.drill import Drill, DrillTest
from generator.inventory.equipment import Measure, Sprayer, SprayerTest, Spreader, SpreaderTest
from generator.inventory.label import LabelCard, Use
from generator.inventory.schema import KeptUp
from generator.inventory.stock import Adjuvant, Product, SeedLot
from generator.inventory.woody import Guard, Plant
from generator.plan.model.days import Span
from generator.plan.model.finding import SafetyLine
from generator.plan.model.markers import MarkerFound
from generator.plan.model.spread import LimeAsked, Nutrient, Spreading
from generator.reference.steps import Answer, Step
from generator.working import Figure, Quantity


@dataclass(frozen=True, slots=True)
class DateReason:
    """How one end of the open dates came about; `sign` names a season sign.

    `rests_on` says where the sign is from, for the owner alone.
    """

    day: datetime.date
    sign: str | None
    by: str
    offset_days: int
    source: str
    rests_on: MarkerFound | None = None


@dataclass(frozen=True, slots=True)
class YearDates:
    """Open dates in an early, a typical or a late year; `closes` before `opens`: not open at all.

    An end that waits for nothing is None.
    """

    year: Literal["early", "typical", "late"]
    opens: datetime.date | None
    closes: datetime.date | None


@dataclass(frozen=True, slots=True)
class OpenDates:
    """First and last day on which a job works; None where a sign is not known.

    They are on the careful side; `by_year` are those of an early, a typical and a late year, none
    where they wait for no sign of the season or for one that is not known.
    """

    opens: datetime.date | None
    closes: datetime.date | None
    opens_reasons: tuple[DateReason, ...]
    closes_reasons: tuple[DateReason, ...]
    missing_signs: tuple[str, ...]
    by_year: tuple[YearDates, ...] = ()


@dataclass(frozen=True, slots=True)
class JobState:
    """Where a job stands on the plan's day.

    `day` is the day it was done, its last day where it is open or missed, its first day or the day
    to decide where it waits; None where that is not known or not for the reader. `step` is the
    name of the step that decides, with the `question` that waits or the `answer` it had.
    """

    kind: Literal["done", "not_needed", "missed", "undated", "waiting", "open"]
    day: datetime.date | None = None
    step: str | None = None
    question: str | None = None
    answer: Answer | None = None

    @property
    def is_settled(self) -> bool:
        """Whether nothing of the job is left to do, whatever its dates."""
        return self.kind in ("done", "not_needed")

    @property
    def is_ahead(self) -> bool:
        """Whether the job can still come: it takes seed, product, hours and money."""
        # of an undated job nobody can say that it is over, so it counts
        return self.kind in ("open", "waiting", "undated")


@dataclass(frozen=True, slots=True)
class Dose:
    """What is measured of one thing into a load, and the rate it gives on an acre."""

    name: str
    amount: Quantity
    rate: Quantity


@dataclass(frozen=True, slots=True)
class Load:
    """One kind of tank load: how many of it, spray mix, what to measure into it.

    `poured` is the spray mix in gallons, quarts and ounces, as tanks and pails are marked; empty
    where the tank is full.
    """

    name: str
    count: Figure | None
    spray: Figure
    doses: tuple[Dose, ...]
    poured: tuple[Quantity, ...] = ()


@dataclass(frozen=True, slots=True)
class MixPart:
    """One cleared product of a tank: the card and use it rests on, and what the place takes."""

    product: Product
    card: LabelCard
    use: Use
    measure: Measure
    in_all: Quantity


@dataclass(frozen=True, slots=True)
class AdjuvantPart:
    """An adjuvant of a tank and what the place takes of it."""

    adjuvant: Adjuvant
    measure: Measure
    in_all: Quantity


@dataclass(frozen=True, slots=True)
class Mix:
    """What goes into a sprayer's tank, every product of it cleared; `order` names what goes first.

    `order` is empty where one product goes in alone or a formulation is not known.
    """

    parts: tuple[MixPart, ...]
    adjuvants: tuple[AdjuvantPart, ...]
    sprayer: Sprayer
    test: SprayerTest
    loads: tuple[Load, ...]
    small_place: tuple[Load, ...]
    order: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Sowing:
    """One lot in a sowing, with its numbers by name."""

    lot: SeedLot
    rate: Figure
    numbers: dict[str, Quantity]


@dataclass(frozen=True, slots=True)
class RowPlanted:
    """Rows of one kind of plant in a job, with their numbers by name."""

    plant: Plant
    guard: Guard | None
    spacing: Figure
    rows_apart: Figure | None
    numbers: dict[str, Quantity]


@dataclass(frozen=True, slots=True)
class JobDays:
    """What dates take of the open dates of a job.

    `not_on` are the days on which it must not be done, `left` those that remain, `last_before` the
    last of them before the first that is taken; `why` is what takes them, the first to begin first,
    for the owner alone.
    """

    not_on: tuple[Span, ...]
    left: tuple[Span, ...]
    last_before: datetime.date | None
    why: tuple[tuple[str, tuple[Span, ...]], ...] = ()


@dataclass(frozen=True, slots=True)
class Job:
    """One step on one planting in one season.

    `id` is `place/season/step`; `address` is the sheet's file name without its ending; `part` is
    what the owner calls the part of the place it is done on; `needs` are the ids of what it uses
    up, for the owner alone; `method` is how the sowing is done that a planting begins with.
    `had_left` are the days that dates left of it, of a settled job alone: calendars had those.
    """

    id: str
    address: str
    place_id: str
    planting_id: str
    season: int
    step: Step
    dates: OpenDates
    state: JobState
    numbers: dict[str, Quantity]
    sowings: tuple[Sowing, ...]
    note: str | None
    part: str | None
    needs: tuple[str, ...]
    mix: Mix | None
    spreader: Spreader | None
    spreader_test: SpreaderTest | None
    safety: tuple[SafetyLine, ...]
    drill: Drill | None = None
    drill_test: DrillTest | None = None
    spreadings: tuple[Spreading, ...] = ()
    nutrients: tuple[Nutrient, ...] = ()
    lime_asked: LimeAsked | None = None
    rows: tuple[RowPlanted, ...] = ()
    days: JobDays | None = None
    had_left: tuple[Span, ...] = ()
    method: str | None = None

    def without_amounts(self) -> Job:
        """Return the job without any amount: by what is left nobody can measure or spread."""
        return replace(
            self,
            numbers={},
            sowings=(),
            mix=None,
            spreader=None,
            spreader_test=None,
            drill=None,
            drill_test=None,
            spreadings=(),
            nutrients=(),
            lime_asked=None,
            rows=(),
        )


@dataclass(frozen=True, slots=True)
class JobAhead:
    """A job of a season after the plan's: looked at, with dates and state, and no amounts."""

    id: str
    place_id: str
    planting_id: str
    season: int
    step: Step
    dates: OpenDates
    state: JobState


@dataclass(frozen=True, slots=True)
class UpkeepJob:
    """One step of the upkeep of a stand, a walk or a water hole in one season.

    `id` is `subject/season/step`; `kind` is stand, route or water_hole; `safety` are the lines
    that no reader's sheet may lose.
    """

    id: str
    address: str
    subject: KeptUp
    kind: str
    season: int
    step: Step
    dates: OpenDates
    state: JobState
    safety: tuple[SafetyLine, ...] = ()
