"""What stands on the ground: screens, strips and plots with their plantings; stands, routes."""

import datetime
from typing import ClassVar

from generator.dataclass import dataclass
from generator.inventory.fields import (
    POSITIVE,
    Limits,
    Points,
    Record,
    amount,
    choice,
    day,
    direction,
    identity,
    lat_lon,
    measure,
    points,
    record,
    reference,
    text,
    whole,
)
from generator.inventory.ground import (
    FAR,
    MAY_BE_OFF,
    NO,
    YES,
    NutrientNeed,
    ShapeInFile,
    how_got,
    shape_in_file,
)
from generator.inventory.label import RATE_UNITS
from generator.inventory.season import WHAT_STANDS, a_season
from generator.inventory.sits import ArcOfFire, KeepsOff
from generator.inventory.winds import (
    DeerSpot,
    what_lies_around,
    winds_it_is_for,
    winds_it_is_not_for,
)
from generator.inventory.woody import WoodyRow
from generator.units import LatLon
from generator.working import Given, Measured

MIX = Limits(above=0, at_most=1)
SEED_RATE = Limits(above=0, at_most=300)


@dataclass(frozen=True, slots=True, kw_only=True)
class CoverNow(Record):
    """What grows on a place now."""

    kind: str = choice(
        "page",
        "what grows there now",
        "perennial_sod",
        "annual_weeds",
        "stubble",
        "bare",
        "native_grass",
        "clover",
        "brush",
        "unsure",
        required=True,
    )
    seen_on: datetime.date | None = day("page", "seen on")
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Hazards(Record):
    """What can hurt or be hurt near a place; what is left out prints as a bold blank."""

    water_and_wells: str | None = text("page", "water, wells, tile inlets near", safety=True)
    slope: str | None = text("page", "slopes and soft ground", safety=True)
    slope_pct: Given | Measured | None = measure(
        "page", "steepest slope, as measured", "pct", Limits(at_least=0, at_most=100), safety=True
    )
    falls_to: Given | Measured | None = direction("page", "the way the ground falls there")
    lines: str | None = text("page", "lines above and below ground", safety=True)
    neighbours: str | None = text("page", "sensitive crops, bees, dwellings near", safety=True)
    others: str | None = text("page", "others present or hunting on work days", safety=True)
    block_lat_lon: LatLon | None = lat_lon("page", "where the work begins", safety=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class SownSeed(Record):
    """One kind of seed in a planting."""

    species: str = reference("page", "species", "species", required=True)
    lot: str = reference("page", "seed lot", "lot", required=True)
    rate_pls_lb_per_ac: Given | None = measure(
        "page",
        "pure live seed on the tag, pounds to an acre",
        "lb_per_ac",
        SEED_RATE,
    )
    rate_seeds_per_sq_ft: Given | None = measure(
        "page", "live seeds on a square foot", "seeds_per_sq_ft", Limits(above=0, at_most=2000)
    )
    share_fraction: Given | None = measure("page", "share of the mixture", "fraction", MIX)


@dataclass(frozen=True, slots=True, kw_only=True)
class Partner(Record):
    """Another herbicide in the same tank."""

    product: str = reference("page", "product to spray", "product", required=True)
    rate_product: Given | None = amount("page", "product to an acre", RATE_UNITS)
    rate_ai_lb_per_ac: Given | None = measure(
        "page", "active ingredient to an acre", "lb_per_ac", POSITIVE
    )
    rate_ae_lb_per_ac: Given | None = measure(
        "page", "acid equivalent to an acre", "lb_per_ac", POSITIVE
    )
    mix_fraction: Given | None = measure("page", "share of the spray, for spots", "fraction", MIX)


@dataclass(frozen=True, slots=True, kw_only=True)
class AdjuvantUsed(Record):
    """An adjuvant in the tank, at the rate the herbicide's label asks for."""

    adjuvant: str = reference("page", "adjuvant", "adjuvant", required=True)
    rate_product: Given | None = amount("page", "adjuvant to an acre", RATE_UNITS)
    mix_fraction: Given | None = measure("page", "share of the spray", "fraction", MIX)
    rate_lb_per_100_gal: Given | None = measure(
        "page", "weight in a hundred gallons of spray", "lb_per_100_gal", POSITIVE
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Work(Record):
    """How the owner means to do one step: with what and how much."""

    step: str = reference("page", "step of the step plan", "step", required=True)
    product: str | None = reference("page", "product to spray", "product")
    rate_product: Given | None = amount("page", "product to an acre", RATE_UNITS)
    rate_ai_lb_per_ac: Given | None = measure(
        "page", "active ingredient to an acre", "lb_per_ac", POSITIVE
    )
    rate_ae_lb_per_ac: Given | None = measure(
        "page", "acid equivalent to an acre", "lb_per_ac", POSITIVE
    )
    mix_fraction: Given | None = measure("page", "share of the spray, for spots", "fraction", MIX)
    partners: tuple[Partner, ...] = record(
        "page", "other herbicides in the same tank", Partner, many=True
    )
    adjuvants: tuple[AdjuvantUsed, ...] = record(
        "page", "adjuvants in the tank", AdjuvantUsed, many=True
    )
    treated_sq_ft: Given | None = measure(
        "page", "ground sprayed or burned, where it is not the whole place", "sq_ft", POSITIVE
    )
    part: str | None = text("page", "part of the place it is done on, as you call it")
    method: str | None = choice(
        "page", "broadcast, as where it is left out, or spot", "broadcast", "spot"
    )
    sprayer: str | None = reference("page", "sprayer", "sprayer")
    spreader: str | None = reference("page", "spreader", "spreader")
    drill: str | None = reference("page", "drill", "drill")
    machine: str | None = reference("page", "machine that covers the ground", "machine")
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Planting(Record):
    """What grows on a place from one season on."""

    id: str = identity("id of the planting")
    season: int = a_season(
        "page", "season it is sown, named by its spring", WHAT_STANDS, required=True,
        unless="standing_since",
    )  # fmt: skip
    standing_since: int | None = a_season(
        "page", "season from which on it stands, of what stood before you planned", WHAT_STANDS
    )
    species: tuple[str, ...] = reference(
        "page", "what stands there, where nothing says it was sown", "species", many=True
    )
    seed: tuple[SownSeed, ...] = record("page", "what is sown", SownSeed, many=True)
    woody: tuple[WoodyRow, ...] = record("page", "rows of trees or shrubs", WoodyRow, many=True)
    mix_rate_pls_lb_per_ac: Given | None = measure(
        "page",
        "pure live seed on the tags, pounds of the mixture to an acre",
        "lb_per_ac",
        SEED_RATE,
    )
    priority: int | None = whole(
        "page", "its turn when seed is short, 1 first", Limits(at_least=1, at_most=1000)
    )
    method: str | None = choice(
        "page",
        "how it is sown or planted",
        "frost_seed",
        "broadcast",
        "drill",
        "plant",
        required=True,
        unless="standing_since",
    )
    steps: str = reference("page", "step plan", "step_plan", required=True)
    upkeep: str | None = reference("page", "step plan of every season once it stands", "step_plan")
    soil_test: str | None = reference("place", "soil test it rests on", "soil_test")
    need: NutrientNeed | None = record(
        "page", "fertilizer needed, where there is no soil test", NutrientNeed
    )
    fertilizers: tuple[str, ...] = reference(
        "page", "fertilizers to meet the need with", "fertilizer", many=True
    )
    lime: str | None = reference("page", "lime to spread", "lime")
    winter_share_fraction: Given | None = measure(
        "page", "part of its full height that stands through winter", "fraction", MIX
    )
    work: tuple[Work, ...] = record("page", "how each step is done", Work, many=True)
    note: str | None = text("note", "a note of your own")

    @property
    def once(self) -> str | None:
        """The step plan from its sowing on; of what stood before anybody planned, none."""
        return self.steps if self.standing_since is None else None

    @property
    def yearly(self) -> str | None:
        """The step plan of every season; of what stood before anybody planned, its only one."""
        return self.upkeep if self.standing_since is None else self.steps


@dataclass(frozen=True, slots=True, kw_only=True)
class CropBeside(Record):
    """A crop beside a walk or a screen that hides whoever walks there, until it is cut."""

    id: str = identity("id of the crop")
    kind: str = text("place", "what stands there, such as field corn", required=True)
    harvest_planned_on: datetime.date | None = day("place", "day it is meant to be cut")
    harvested_on: datetime.date | None = day("place", "day it was cut")
    stubble_in: Given | None = measure("place", "how tall the stubble is after it", "in", POSITIVE)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantedGround(Record):
    """Ground with a shape, on which plantings come and go: what all places share."""

    IN_WORDS: ClassVar[str] = "place"

    id: str = identity("id of the place")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("place", "name you use", required=True)
    known_as: str | None = text("page", "name other readers see")
    length_ft: Given | None = measure("place", "measured length", "ft", POSITIVE)
    width_ft: Given | None = measure("page", "taped width", "ft", POSITIVE)
    line_lat_lon: Points | None = points("place", "center line, from one end to the other", 2)
    area_lat_lon: Points | None = points("place", "outline, once around", 3)
    shape: ShapeInFile | None = shape_in_file()
    area_ac: Given | None = measure("page", "ground as stated", "ac", POSITIVE)
    got: str | None = how_got()
    outline_error_ft: Given | None = measure(
        "place", "how far each side of the outline may be off", "ft", POSITIVE
    )
    same_ground_as: tuple[str, ...] = reference(
        "place", "other places of yours that lie on some of the same ground", "place", many=True
    )
    far: str | None = choice("place", FAR, YES, NO)
    contract: str | None = text("page", "contract the ground is under, or none")
    soil: str | None = choice(
        "page",
        "how things grow on its soil: good, ordinary or poor; poor where left out",
        "good",
        "ordinary",
        "poor",
    )
    cover_now: CoverNow | None = record("page", "what grows there now", CoverNow)
    near: Hazards | None = record("page", "what to watch for", Hazards, safety=True)
    plantings: tuple[Planting, ...] = record("page", "plantings", Planting, many=True)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Screen(PlantedGround):
    """A place for cover."""

    IN_WORDS: ClassVar[str] = "screen"

    hides: tuple[str, ...] = reference("place", "routes it hides", "route", many=True)
    height_needed_ft: Given | None = measure(
        "page",
        "height that hides a person or a vehicle there, as judged on the ground",
        "ft",
        POSITIVE,
    )
    crops_beside: tuple[CropBeside, ...] = record(
        "place", "crops beside it that hide its walks too", CropBeside, many=True
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip(PlantedGround):
    """A place for food."""

    IN_WORDS: ClassVar[str] = "strip or plot"


def hidden_by(ground: PlantedGround) -> tuple[str, ...]:
    """Return the ids of the routes that a place hides; a place for food hides none."""
    return ground.hides if isinstance(ground, Screen) else ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand(Record):
    """A hunting stand."""

    id: str = identity("id of the stand")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("place", "name you use", required=True)
    known_as: str | None = text("page", "name other readers see, where not this one")
    at_lat_lon: LatLon | None = lat_lon("place", "where it stands")
    shape: ShapeInFile | None = shape_in_file()
    got: str | None = how_got()
    off_ft: Given | None = measure("place", MAY_BE_OFF, "ft", POSITIVE)
    coordinates: str | None = choice(
        "place",
        "whether a partner handed it sees its coordinates; no where left out",
        YES,
        NO,
    )
    far: str | None = choice("place", FAR, YES, NO)
    seat_height_ft: Given | None = measure("place", "height of the seat", "ft", POSITIVE)
    arc_of_fire: ArcOfFire | None = record(
        "place", "where shots from it may go, and nobody else may be", ArcOfFire
    )
    rest_days: Given | None = measure(
        "place", "days it rests after a sit", "days", Limits(at_least=1, at_most=365)
    )
    keeps_off: tuple[KeepsOff, ...] = record(
        "place", "houses, roads and lines that shots must keep off by law", KeepsOff, many=True
    )
    straps_checked_on: datetime.date | None = day("place", "straps and harness inspected on")
    winds_for: tuple[Given, ...] = winds_it_is_for()
    winds_against: tuple[Given, ...] = winds_it_is_not_for()
    lies: str | None = what_lies_around()
    falls_to: Given | None = direction("place", "the way the hill falls there")
    fall_pct: Given | None = measure(
        "place", "how steep it falls", "pct", Limits(at_least=0, at_most=100)
    )
    deer_come_from: tuple[Given, ...] = direction("place", "where deer come from", many=True)
    beds: tuple[DeerSpot, ...] = record("place", "where deer bed", DeerSpot, many=True)
    food: tuple[DeerSpot, ...] = record("place", "where deer feed", DeerSpot, many=True)
    downwind_reach_yd: Given | None = measure(
        "place", "how far your scent carries from it", "yd", POSITIVE
    )
    upkeep: str | None = reference("place", "step plan of every season", "step_plan")
    asked_for: tuple[str, ...] = reference(
        "place", "steps of it that are done only where you ask for them", "step", many=True
    )
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Route(Record):
    """A way to walk to stands."""

    id: str = identity("id of the route")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("place", "name you use", required=True)
    known_as: str | None = text("page", "name other readers see, where not this one")
    serves: tuple[str, ...] = reference("place", "stands it leads to", "stand", many=True)
    coordinates: str | None = choice(
        "place",
        "whether a partner handed it sees its coordinates; no where left out",
        YES,
        NO,
    )
    length_ft: Given | None = measure("place", "measured length", "ft", POSITIVE)
    line_lat_lon: Points | None = points("place", "the walk, from one end to the other", 2)
    shape: ShapeInFile | None = shape_in_file()
    parking_lat_lon: LatLon | None = lat_lon("place", "where to park for it")
    gate_lat_lon: LatLon | None = lat_lon("place", "the gate it goes in by")
    got: str | None = how_got()
    off_ft: Given | None = measure("place", MAY_BE_OFF, "ft", POSITIVE)
    far: str | None = choice("place", FAR, YES, NO)
    walked_on: datetime.date | None = day("place", "last walked on")
    winds_for: tuple[Given, ...] = winds_it_is_for()
    winds_against: tuple[Given, ...] = winds_it_is_not_for()
    lies: str | None = what_lies_around()
    crops_beside: tuple[CropBeside, ...] = record(
        "place", "crops beside it that hide whoever walks it", CropBeside, many=True
    )
    lane_width_ft: Given | None = measure(
        "place", "width of the lane that is kept short by machine", "ft", POSITIVE
    )
    machine: str | None = reference("place", "machine that keeps it short", "machine")
    upkeep: str | None = reference("place", "step plan of every season", "step_plan")
    asked_for: tuple[str, ...] = reference(
        "place", "steps of it that are done only where you ask for them", "step", many=True
    )
    note: str | None = text("note", "a note of your own")
