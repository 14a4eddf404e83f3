"""What a plan is made of: jobs, places, lines to buy, findings, all immutable."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

from generator.inventory.dates import DateRange, ShootingHours
from generator.inventory.drill import Drill, DrillTest
from generator.inventory.equipment import Measure, Sprayer, SprayerTest, Spreader, SpreaderTest
from generator.inventory.fields import Where
from generator.inventory.ground import SoilTest
from generator.inventory.label import LabelCard, Use
from generator.inventory.log import LogEntry
from generator.inventory.machine import Machine
from generator.inventory.money import CostShare, Hire
from generator.inventory.papers import Contract, OneCall, Permit
from generator.inventory.people import Applicator, Contractor, Helper
from generator.inventory.places import PlantedGround, Route, Stand
from generator.inventory.schema import EmergencyCard, KeptUp, SeasonSigns
from generator.inventory.spreadable import Fertilizer, Lime
from generator.inventory.stock import Adjuvant, Product, SeedLot
from generator.inventory.woody import Guard, Plant
from generator.plan.counted import CountedDays, WindUse
from generator.plan.decided import NOTHING_DECIDED, Decided
from generator.plan.holes import Water
from generator.plan.items import StockItem
from generator.plan.same_ground import SharedGround
from generator.plan.sign_found import SignFound, WeatherSeen
from generator.plan.spray_record import SprayRecord
from generator.plan.spreading import LimeAsked, Nutrient, Spreading
from generator.reference.steps import Answer, Step, StepPlan
from generator.working import Figure, Quantity

Severity = Literal["stop", "caution", "note"]
Span = tuple[datetime.date, datetime.date]  # first and last day


FOLDER = "property folder"  # the subject of what is said of the folder as a whole


@dataclass(frozen=True, slots=True)
class Finding:
    """A stop, caution or note on a subject (a job, place or thing by its id).

    `words` and `figures` are the owner's; other readers see `words_for_others` alone. `place` is
    file and line in the owner's files, `column` counts from 1 and is 0 where it is not known.
    `cause` is the id of a finding whose slip, most likely, is what makes this one.
    """

    code: str
    severity: Severity
    subject: str
    words: str
    words_for_others: str
    cure: str
    place: str = ""
    figures: tuple[tuple[str, Figure], ...] = ()
    chapter: str = ""
    source: str = ""
    cause: str = ""
    column: int = field(default=0, compare=False)

    @property
    def id(self) -> str:
        """What another finding names it by: its code and its subject."""
        return f"{self.code} {self.subject}"


@dataclass(frozen=True, slots=True)
class Unanswered:
    """What cannot be said, what to type so that it can, and the places it is about by their ids."""

    asks: str
    cure: str
    place_ids: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SafetyLine:
    """A line no reader's sheet may lose; `text` None prints as a bold blank.

    `product` names the product whose label says it, where several are in one tank.
    """

    key: str
    label: str
    text: str | None = None
    figure: Figure | None = None
    product: str | None = None


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
    rests_on: SignFound | None = None


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


@dataclass(frozen=True, slots=True)
class GroundWay:
    """One way to the ground of a place; `apart` is how far from the one that counts."""

    kind: Literal["tape", "line", "outline", "stated"]
    area: Quantity
    apart: Quantity | None
    where: Where


@dataclass(frozen=True, slots=True)
class OutlineError:
    """How far the ground inside an outline may be off, and the least and most there may be."""

    share: Quantity
    least: Quantity
    most: Quantity


@dataclass(frozen=True, slots=True)
class Ground:
    """Every way to the ground of a place that is given, the one that counts first."""

    ways: tuple[GroundWay, ...]
    outline_error: OutlineError | None
    line_without_width: bool

    def numbers(self) -> tuple[Quantity, ...]:
        """Return every number beside the ground that counts."""
        error = self.outline_error
        return (
            *(one.area for one in self.ways[1:]),
            *(one.apart for one in self.ways if one.apart is not None),
            *((error.share, error.least, error.most) if error is not None else ()),
        )


@dataclass(frozen=True, slots=True)
class Place:
    """A place as a reader sees it: `typed` and `ground` are there for the owner alone.

    `typed` is the place as the owner typed it: a screen, or a strip or plot.
    """

    id: str
    address: str
    name: str
    area: Quantity
    typed: PlantedGround | None
    ground: Ground | None = None


@dataclass(frozen=True, slots=True)
class BudgetLine:
    """One job's need of one thing: `kind` says what sort of thing `item_id` names.

    `cost` is what so much of it costs, None where a price is not noted.
    """

    job_id: str
    place_id: str
    planting_id: str
    season: int
    kind: str
    item_id: str
    amount: Quantity
    cost: Quantity | None = None


@dataclass(frozen=True, slots=True)
class WorkTime:
    """The hours a machine takes for a job."""

    job_id: str
    machine: Machine
    rate: Quantity
    hours: Quantity


@dataclass(frozen=True, slots=True)
class ActiveTotal:
    """Pounds of one active on an acre of a place in a calendar year, over its cleared jobs."""

    place_id: str
    year: int
    active: str
    basis: str
    total: Quantity


@dataclass(frozen=True, slots=True)
class WindowTold:
    """Private dates that a handed job's days give away: their record, and what of it is told.

    `spans` are the days of them inside the open dates; `ends` those first and last days of the
    record that are seen there, none where the dates hold on all open days.
    """

    job_id: str
    dates: DateRange
    spans: tuple[Span, ...]
    ends: tuple[datetime.date, ...]


@dataclass(frozen=True, slots=True)
class Handed:
    """What one other reader is handed: by id, with what of the hidden it gives away.

    That is numbers that rest on hidden inputs, and windows that end where private dates begin.
    """

    reader: str
    kind: str
    name: str | None
    note: str | None
    job_ids: tuple[str, ...]
    rest_on_hidden: tuple[tuple[Quantity, tuple[str, ...]], ...]
    stand_ids: tuple[str, ...] = ()
    route_ids: tuple[str, ...] = ()
    windows: tuple[WindowTold, ...] = ()


@dataclass(frozen=True, slots=True)
class OthersOut:
    """Days of hunting, nesting or a burn ban, as a partner is told them.

    `on` are the ids of what is handed over and they hold on; none where they hold on all ground.
    """

    kind: str
    spans: tuple[Span, ...]
    on: tuple[str, ...]
    looked_up_on: datetime.date | None


@dataclass(frozen=True, slots=True)
class HuntedDay:
    """One day of hunting dates: when the sun is up, when game may be taken, by the clock there.

    None where the sun does not rise or set, or where no rule was looked up.
    """

    day: datetime.date
    sunrise: datetime.datetime | None
    sunset: datetime.datetime | None
    starts: datetime.datetime | None
    ends: datetime.datetime | None


@dataclass(frozen=True, slots=True)
class HuntedWeek:
    """Days in a row with the latest beginning and the earliest end of any of them."""

    first: datetime.date
    last: datetime.date
    sunrise: datetime.time | None
    sunset: datetime.time | None
    starts: datetime.time | None
    ends: datetime.time | None


@dataclass(frozen=True, slots=True)
class HuntedDates:
    """Hunting dates in the season, their rule where one was looked up, and their days."""

    dates: DateRange
    spans: tuple[Span, ...]
    hours: ShootingHours | None
    days: tuple[HuntedDay, ...]


@dataclass(frozen=True, slots=True)
class Plan:
    """Everything one reader's book is made from."""

    reader: str
    title: str
    season: int
    as_of: datetime.date
    emergency: EmergencyCard | None
    signs: SeasonSigns | None
    signs_looked_up_on: datetime.date | None
    note: str | None
    location_lat_lon: tuple[float, float] | None
    places: tuple[Place, ...]
    jobs: tuple[Job, ...]
    findings: tuple[Finding, ...]
    lines: tuple[BudgetLine, ...] = ()
    items: tuple[StockItem, ...] = ()
    entries: tuple[LogEntry, ...] = ()
    records: tuple[SprayRecord, ...] = ()
    machines: tuple[Machine, ...] = ()
    times: tuple[WorkTime, ...] = ()
    hires: tuple[Hire, ...] = ()
    cost_share: tuple[CostShare, ...] = ()
    soil_tests: tuple[SoilTest, ...] = ()
    fertilizers: tuple[Fertilizer, ...] = ()
    limes: tuple[Lime, ...] = ()
    water: tuple[Water, ...] = ()
    actives: tuple[ActiveTotal, ...] = ()
    lots: tuple[SeedLot, ...] = ()
    plants: tuple[Plant, ...] = ()
    guards: tuple[Guard, ...] = ()
    products: tuple[Product, ...] = ()
    sprayers: tuple[Sprayer, ...] = ()
    spreaders: tuple[Spreader, ...] = ()
    drills: tuple[Drill, ...] = ()
    measures: tuple[Measure, ...] = ()
    stands: tuple[Stand, ...] = ()
    routes: tuple[Route, ...] = ()
    step_plans: tuple[StepPlan, ...] = ()
    handed: tuple[Handed, ...] = ()
    decided: Decided = NOTHING_DECIDED
    dates: tuple[DateRange, ...] = ()
    applicators: tuple[Applicator, ...] = ()
    helpers: tuple[Helper, ...] = ()
    contractors: tuple[Contractor, ...] = ()
    permits: tuple[Permit, ...] = ()
    contracts: tuple[Contract, ...] = ()
    one_calls: tuple[OneCall, ...] = ()
    unanswered: tuple[Unanswered, ...] = ()
    upkeep: tuple[UpkeepJob, ...] = ()
    ahead: tuple[JobAhead, ...] = ()
    others_out: tuple[OthersOut, ...] = ()
    hunted: tuple[HuntedDates, ...] = ()
    time_zone: str | None = None
    weather: WeatherSeen | None = None
    shared_grounds: tuple[SharedGround, ...] = ()
    count_on: Mapping[str, CountedDays] = field(default_factory=dict)
    wind_use: Mapping[str, WindUse] = field(default_factory=dict)

    def findings_on(self, subject: str) -> tuple[Finding, ...]:
        """Return the findings on one job, place or thing, the gravest first."""
        return tuple(one for one in self.findings if one.subject == subject)

    def place(self, place_id: str) -> Place:
        """Return the place of this id. Raises StopIteration for an unknown one."""
        return next(one for one in self.places if one.id == place_id)


def stopped_in(findings: Iterable[Finding]) -> frozenset[str]:
    """Return the jobs, places and things on which a stop stands."""
    return frozenset(one.subject for one in findings if one.severity == "stop")
