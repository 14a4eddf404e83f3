"""A plan: everything one reader's book is made from, immutable."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterable, Mapping
from dataclasses import field
from typing import Any, TypeVar

from generator.dataclass import dataclass
from generator.inventory.dates import DateRange, ShootingHours
from generator.inventory.drill import Drill
from generator.inventory.equipment import Measure, Sprayer, Spreader
from generator.inventory.ground import SoilTest
from generator.inventory.land import LandThing
from generator.inventory.law import AfterTheShot, LookedUp
from generator.inventory.log import LogEntry
from generator.inventory.machine import Machine
from generator.inventory.money import CostShare, Hire
from generator.inventory.papers import Contract, OneCall, Permit
from generator.inventory.people import Applicator, Contractor, Helper
from generator.inventory.places import Route, Stand
from generator.inventory.schema import EmergencyCard, SeasonMarkers
from generator.inventory.spreadable import Fertilizer, Lime
from generator.inventory.stock import Product, SeedLot
from generator.inventory.woody import Guard, Plant
from generator.plan.model.buying import NOTHING_BOUGHT, Buying
from generator.plan.model.counts import NOTHING_DECIDED, Decided
from generator.plan.model.days import Span
from generator.plan.model.finding import Finding, Unanswered, stopped_in
from generator.plan.model.items import StockItem
from generator.plan.model.job import Job, JobAhead, JobBefore, UpkeepJob
from generator.plan.model.markers import MarkerSeen, WeatherSeen
from generator.plan.model.place import OpenWalk, Place, SharedGround, Water
from generator.plan.model.sits import KeepAway, SitAhead, StandAnswer
from generator.plan.model.spray_record import SprayRecord
from generator.plan.model.suited_days import CountedDays, WindUse
from generator.plan.model.work import Run
from generator.reference.steps import StepPlan
from generator.working import Given, Quantity


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
class ThingTold:
    """A thing of the land that a reader sees, by its id, and why.

    `near` are the places of their jobs that it lies near, by id; `is_shown` that the owner shows it
    to them; `with_coordinates` that they may take its coordinates along.
    """

    thing_id: str
    near: tuple[str, ...]
    is_shown: bool
    with_coordinates: bool


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
    upkeep_ids: tuple[str, ...] = ()
    kept_away: tuple[KeepAway, ...] = ()
    things: tuple[ThingTold, ...] = ()


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
    """Days in a row with the latest beginning and the earliest end of any of them.

    `closed` says that other dates keep everybody out on all of them.
    """

    first: datetime.date
    last: datetime.date
    sunrise: datetime.time | None
    sunset: datetime.time | None
    starts: datetime.time | None
    ends: datetime.time | None
    closed: bool = False


@dataclass(frozen=True, slots=True)
class HuntedDates:
    """Hunting dates in the season, their rule where one was looked up, and their days."""

    dates: DateRange
    spans: tuple[Span, ...]
    hours: ShootingHours | None
    days: tuple[HuntedDay, ...]


@dataclass(frozen=True, slots=True)
class Land:
    """What the files of a property list, as one reader may see it; what is kept back is empty."""

    emergency: EmergencyCard | None = None
    signs: SeasonMarkers | None = None
    signs_looked_up_on: datetime.date | None = None
    note: str | None = None
    location_lat_lon: tuple[float, float] | None = None
    machines: tuple[Machine, ...] = ()
    hires: tuple[Hire, ...] = ()
    cost_share: tuple[CostShare, ...] = ()
    soil_tests: tuple[SoilTest, ...] = ()
    fertilizers: tuple[Fertilizer, ...] = ()
    limes: tuple[Lime, ...] = ()
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
    things: tuple[LandThing, ...] = ()
    all_drawn: tuple[str, ...] = ()
    dates: tuple[DateRange, ...] = ()
    shooting_hours: tuple[ShootingHours, ...] = ()
    looked_up: tuple[LookedUp, ...] = ()
    after_the_shot: AfterTheShot | None = None
    morning_sit_hours: Given | None = None
    evening_sit_hours: Given | None = None
    time_zone: str | None = None
    applicators: tuple[Applicator, ...] = ()
    helpers: tuple[Helper, ...] = ()
    contractors: tuple[Contractor, ...] = ()
    permits: tuple[Permit, ...] = ()
    contracts: tuple[Contract, ...] = ()
    one_calls: tuple[OneCall, ...] = ()
    step_plans: tuple[StepPlan, ...] = ()


Made = TypeVar("Made")


@dataclass(frozen=True, slots=True)
class Plan:
    """Everything one reader's book is made from."""

    reader: str
    title: str
    season: int
    as_of: datetime.date
    old_after: datetime.date
    land: Land
    places: tuple[Place, ...]
    jobs: tuple[Job, ...]
    findings: tuple[Finding, ...]
    lines: tuple[BudgetLine, ...] = ()
    items: tuple[StockItem, ...] = ()
    buying: Buying = NOTHING_BOUGHT
    entries: tuple[LogEntry, ...] = ()
    records: tuple[SprayRecord, ...] = ()
    times: tuple[WorkTime, ...] = ()
    water: tuple[Water, ...] = ()
    actives: tuple[ActiveTotal, ...] = ()
    handed: tuple[Handed, ...] = ()
    decided: Decided = NOTHING_DECIDED
    unanswered: tuple[Unanswered, ...] = ()
    upkeep: tuple[UpkeepJob, ...] = ()
    ahead: tuple[JobAhead, ...] = ()
    before: tuple[JobBefore, ...] = ()
    others_out: tuple[OthersOut, ...] = ()
    hunted: tuple[HuntedDates, ...] = ()
    sits: tuple[SitAhead, ...] = ()
    keep_away: tuple[KeepAway, ...] = ()
    answers: Mapping[str, tuple[StandAnswer, ...]] = field(default_factory=dict)
    weather: WeatherSeen | None = None
    shared_grounds: tuple[SharedGround, ...] = ()
    suited_days: Mapping[str, CountedDays] = field(default_factory=dict)
    wind_use: Mapping[str, WindUse] = field(default_factory=dict)
    runs: tuple[Run, ...] = ()
    open_walks: tuple[OpenWalk, ...] = ()
    seen: tuple[MarkerSeen, ...] = ()

    _made: dict[str, Any] = field(init=False, repr=False, compare=False, default_factory=dict)

    def once(self, name: str, make: Callable[[Plan], Made]) -> Made:
        """Return what `make` makes of this plan, made when it is first asked for by its name."""
        if name not in self._made:
            self._made[name] = make(self)
        found: Made = self._made[name]
        return found

    def findings_on(self, subject: str) -> tuple[Finding, ...]:
        """Return the findings on one job, place or thing, the gravest first."""
        return self.once("findings", _findings_by_subject).get(subject, ())

    def stopped(self) -> frozenset[str]:
        """Return the jobs, places and things on which a stop stands."""
        return self.once("stopped", lambda plan: stopped_in(plan.findings))

    def to_act_on(self) -> tuple[Finding, ...]:
        """Return the findings but those on jobs that were missed, which nobody does any more."""
        jobs: tuple[Job | UpkeepJob, ...] = (*self.jobs, *self.upkeep)
        missed = {job.id for job in jobs if job.state.kind == "missed"}
        return tuple(finding for finding in self.findings if finding.subject.id not in missed)

    def upkeep_of(self, subject_id: str) -> tuple[UpkeepJob, ...]:
        """Return the jobs of a stand, a walk or a water hole, in their order."""
        return self.once("upkeep", _upkeep_by_subject).get(subject_id, ())

    def away_on(self, thing_id: str) -> tuple[KeepAway, ...]:
        """Return the hours in which nobody but who sits there goes to or on a thing."""
        return self.once("keep away", _away_by_thing).get(thing_id, ())

    def jobs_on(self, place_id: str) -> tuple[Job, ...]:
        """Return the jobs of a place, in their order."""
        return self.once("jobs", _jobs_by_place).get(place_id, ())

    def run_of(self, job_id: str) -> Run | None:
        """Return the run that a job is done in, or None."""
        return self.once("runs", _runs_by_job).get(job_id)

    def place(self, place_id: str) -> Place:
        """Return the place of this id. Raises KeyError for an unknown one."""
        return self.once("places", _places_by_id)[place_id]


def _findings_by_subject(plan: Plan) -> dict[str, tuple[Finding, ...]]:
    return grouped((finding.subject, finding) for finding in plan.findings)


def _upkeep_by_subject(plan: Plan) -> dict[str, tuple[UpkeepJob, ...]]:
    return grouped((job.subject.id, job) for job in plan.upkeep)


def _away_by_thing(plan: Plan) -> dict[str, tuple[KeepAway, ...]]:
    return grouped((keep.subject.id, keep) for keep in plan.keep_away)


def _jobs_by_place(plan: Plan) -> dict[str, tuple[Job, ...]]:
    return grouped((job.place_id, job) for job in plan.jobs)


def _runs_by_job(plan: Plan) -> dict[str, Run]:
    return {place.job_id: run for run in plan.runs for place in run.places}


def _places_by_id(plan: Plan) -> dict[str, Place]:
    return {place.id: place for place in plan.places}


def grouped(pairs: Iterable[tuple[str, Made]]) -> dict[str, tuple[Made, ...]]:
    """Return things by their keys, in their order."""
    found: dict[str, list[Made]] = {}
    for key, thing in pairs:
        found.setdefault(key, []).append(thing)
    return {key: tuple(things) for key, things in found.items()}
