"""What a property folder holds: one frozen record per kind of thing."""

import datetime
from collections.abc import Mapping
from dataclasses import field

from generator.dataclass import dataclass
from generator.geometry.heights import HeightGrid
from generator.inventory.counted import NoxiousWeed
from generator.inventory.dates import DateRange, ShootingHours
from generator.inventory.drill import Drill
from generator.inventory.elevation import Elevation
from generator.inventory.equipment import Measure, Sprayer, Spreader
from generator.inventory.fields import (
    Limits,
    Record,
    SeasonMarker,
    choice,
    day,
    identity,
    lat_lon,
    measure,
    record,
    reference,
    sign,
    text,
    whole,
)
from generator.inventory.ground import FAR, NO, YES, SoilTest, WaterHole
from generator.inventory.jobs_named import JobsNamed
from generator.inventory.label import KEPT_FROM_KINDS
from generator.inventory.land import LandThing
from generator.inventory.law import AfterTheShot, LookedUp
from generator.inventory.log import LogEntry
from generator.inventory.machine import Machine
from generator.inventory.money import CostShare, Hire
from generator.inventory.papers import Contract, OneCall, Permit
from generator.inventory.people import Applicator, Contractor, Helper
from generator.inventory.places import (
    PlantedGround,
    Planting,
    Route,
    Screen,
    Stand,
    Strip,
)
from generator.inventory.plain_values import US
from generator.inventory.season import a_season
from generator.inventory.sits import Sit
from generator.inventory.spreadable import Fertilizer, Lime
from generator.inventory.steps import OwnPlan, plans_with
from generator.inventory.stock import Adjuvant, Product, SeedLot
from generator.inventory.weather import (
    ON_EARTH_FT,
    DailyRecord,
    Emergence,
    FreezeDates,
    HourlyWind,
    Normals,
    Station,
    WindStation,
)
from generator.inventory.woody import Guard, Plant
from generator.reference.steps import Step, StepPlan
from generator.units import LatLon
from generator.working import Given

FORMAT = 1
SIT = Limits(above=0, at_most=12)
ANY_YEAR = Limits(at_least=1, at_most=9999)  # whoever makes the plan says which days it takes
PARTNER = "partner"  # who hunts with the owner: the one kind of reader who is handed stands


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonMarkers(Record):
    """The typed signs; one that is left out leaves the dates that wait for it open."""

    first_hard_freeze: SeasonMarker | None = sign("page", "first 28 F night of fall")
    freeze_thaw_ends: SeasonMarker | None = sign("page", "last week of freezing nights and thaws")
    weed_green_up: SeasonMarker | None = sign("page", "cool-season weeds green and growing")
    grass_emergence: SeasonMarker | None = sign("page", "first seedlings of the sown grass")
    thaw: SeasonMarker | None = sign("page", "ground thawed and firm enough to drive on")
    grass_green_up: SeasonMarker | None = sign(
        "page", "first green at the crowns of standing grass"
    )
    soil_warm: SeasonMarker | None = sign("page", "soil four inches down at 60 F in the morning")
    soil_for_sorghum: SeasonMarker | None = sign(
        "page", "soil four inches down at 65 F in the morning"
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class EmergencyCard(Record):
    """What rescuers need; a line left out prints as a bold blank for every reader."""

    address_911: str | None = text("page", "address to give to 911", safety=True)
    gate_lat_lon: LatLon | None = lat_lon("page", "gate rescuers come through", safety=True)
    far: str | None = choice("place", FAR, YES, NO)
    gate_words: str | None = text("page", "how to find and open the gate", safety=True)
    hospital: str | None = text("page", "nearest emergency room and drive", safety=True)
    neighbour: str | None = text("page", "neighbor or caretaker and phone", safety=True)
    owner_telephone: str | None = text("page", "phone of the owner", safety=True)
    signal: str | None = text("page", "where a phone has signal", safety=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Property(Record):
    """The property as a whole."""

    format: int = whole("page", "format of these files", Limits(at_least=1), required=True)
    name: str = text("place", "name of the property", required=True)
    season: int = a_season("page", "season to plan, named by its spring", required=True)
    as_of: datetime.date | None = day("page", "day the plan is made for", ANY_YEAR)
    old_after: datetime.date | None = day(
        "page", "day after which each book says it is old, if that is before its season ends"
    )
    dates: str | None = choice(
        "page", "us where your days are month/day/year; else they are year-month-day", US
    )
    location_lat_lon: LatLon | None = lat_lon("place", "middle of the property")
    time_zone: str | None = text("place", "time zone by its name, like America/Chicago")
    elevation_ft: Given | None = measure("place", "height above the sea", "ft", ON_EARTH_FT)
    elevation: Elevation | None = record(
        "place", "a grid of heights of the ground, in a file", Elevation
    )
    all_drawn: tuple[str, ...] = choice(
        "page",
        "kinds labels keep from, of which land.yaml holds all near your work",
        *KEPT_FROM_KINDS,
        many=True,
    )
    slope_limit_pct: Given | None = measure(
        "page", "steepest ground you take a machine on", "pct", Limits(above=0, at_most=100)
    )
    morning_sit_hours: Given | None = measure(
        "place", "how long you sit in the morning", "hours", SIT
    )
    evening_sit_hours: Given | None = measure(
        "place", "how long you sit in the evening", "hours", SIT
    )
    season_signs: SeasonMarkers | None = record("page", "signs of the season", SeasonMarkers)
    signs_looked_up_on: datetime.date | None = day("page", "season markers looked up on")
    emergency: EmergencyCard | None = record("page", "emergency card", EmergencyCard, safety=True)
    after_the_shot: AfterTheShot | None = record(
        "page", "whom to call and where to go after a shot", AfterTheShot
    )
    noxious: tuple[NoxiousWeed, ...] = record(
        "page", "weeds the law wants kept down here", NoxiousWeed, many=True
    )
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class ReaderJobs(Record):
    """Jobs of one planting a reader may see."""

    planting: str = reference("place", "planting", "planting", required=True)
    steps: tuple[str, ...] = reference("place", "steps, or all", "step", "all", many=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Reader(Record):
    """Someone a build is made for, beside the owner."""

    id: str = identity("id of the reader")
    kind: str = choice("person", "who it is", "contractor", PARTNER, required=True)
    name: str | None = text("person", "name")
    jobs: tuple[ReaderJobs, ...] = record("place", "jobs handed over", ReaderJobs, many=True)
    stands: tuple[str, ...] = reference(
        "place", "stands handed over, to a partner alone", "stand", many=True
    )
    routes: tuple[str, ...] = reference(
        "place", "routes handed over, to a partner alone", "route", many=True
    )
    note: str | None = text("note", "a note of your own")
    _named: JobsNamed = field(init=False, repr=False, compare=False, default_factory=JobsNamed)

    def has(self, planting_id: str, step_id: str) -> bool:
        """Return whether a step of a planting is handed over."""
        return self._named.has(self.jobs, planting_id, step_id)


KeptUp = Stand | Route | WaterHole
# What step plans call the subjects they are for.
SUBJECTS: Mapping[type[KeptUp], str] = {Stand: "stand", Route: "route", WaterHole: "water_hole"}


@dataclass(frozen=True, slots=True)
class Workers:
    """Whose hands a job may be in: who may spray, what is handed over, what is hired."""

    applicators: tuple[Applicator, ...]
    readers: tuple[Reader, ...]
    hires: tuple[Hire, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Inventory:
    """The whole property folder, checked."""

    property: Property
    screens: tuple[Screen, ...] = ()
    strips: tuple[Strip, ...] = ()
    stands: tuple[Stand, ...] = ()
    routes: tuple[Route, ...] = ()
    land: tuple[LandThing, ...] = ()
    sits: tuple[Sit, ...] = ()
    lots: tuple[SeedLot, ...] = ()
    plants: tuple[Plant, ...] = ()
    guards: tuple[Guard, ...] = ()
    products: tuple[Product, ...] = ()
    adjuvants: tuple[Adjuvant, ...] = ()
    sprayers: tuple[Sprayer, ...] = ()
    spreaders: tuple[Spreader, ...] = ()
    drills: tuple[Drill, ...] = ()
    measures: tuple[Measure, ...] = ()
    readers: tuple[Reader, ...] = ()
    machines: tuple[Machine, ...] = ()
    hires: tuple[Hire, ...] = ()
    cost_share: tuple[CostShare, ...] = ()
    entries: tuple[LogEntry, ...] = ()
    step_plans: tuple[OwnPlan, ...] = ()
    soil_tests: tuple[SoilTest, ...] = ()
    water_holes: tuple[WaterHole, ...] = ()
    fertilizers: tuple[Fertilizer, ...] = ()
    limes: tuple[Lime, ...] = ()

    def places(self) -> tuple[PlantedGround, ...]:
        """Return every place that plantings grow on, in a fixed order: for cover, for food."""
        return (*self.screens, *self.strips)

    def plans(self) -> Mapping[str, StepPlan]:
        """Return every step plan by its id, the owner's own among them."""
        return plans_with(self.step_plans)

    def steps_of(self, planting: Planting) -> tuple[Step, ...]:
        """Return the steps of a planting, those of its upkeep after the others."""
        plans = self.plans()
        named = (name for name in (planting.once, planting.yearly) if name is not None)
        return tuple(step for name in named for step in plans[name].steps)

    def workers(self) -> Workers:
        """Return whose hands a job may be in."""
        return Workers(self.applicators, self.readers, self.hires)

    def kept_up(self) -> tuple[KeptUp, ...]:
        """Return what may have an upkeep of every season beside plantings, in a fixed order."""
        return (*self.stands, *self.routes, *self.water_holes)

    dates: tuple[DateRange, ...] = ()
    shooting_hours: tuple[ShootingHours, ...] = ()
    looked_up: tuple[LookedUp, ...] = ()
    applicators: tuple[Applicator, ...] = ()
    helpers: tuple[Helper, ...] = ()
    contractors: tuple[Contractor, ...] = ()
    permits: tuple[Permit, ...] = ()
    contracts: tuple[Contract, ...] = ()
    one_calls: tuple[OneCall, ...] = ()
    stations: tuple[Station, ...] = ()
    wind_stations: tuple[WindStation, ...] = ()
    freeze_dates: tuple[FreezeDates, ...] = ()
    normals: tuple[Normals, ...] = ()
    emergence: tuple[Emergence, ...] = ()
    daily: tuple[DailyRecord, ...] = ()
    hourly_wind: tuple[HourlyWind, ...] = ()
    heights: HeightGrid | None = None
    # Hidden files and what editors left, by their paths: nothing of them is read.
    passed_over: tuple[str, ...] = ()
