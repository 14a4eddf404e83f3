"""What a property folder holds: one frozen record per kind of thing."""

import datetime
from dataclasses import dataclass

from generator.inventory.fields import (
    Limits,
    Record,
    SeasonSign,
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
    yes_no,
)
from generator.inventory.label import LabelCard
from generator.working import Given

FORMAT = 1
POSITIVE = Limits(above=0)
SHARE = Limits(at_least=0, at_most=1)
LatLon = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonSigns(Record):
    """The typed signs; one that is left out leaves the dates that wait for it open."""

    first_hard_freeze: SeasonSign | None = sign("page", "first 28 F night of autumn")
    freeze_thaw_ends: SeasonSign | None = sign("page", "last week of freezing nights and thaws")
    weed_green_up: SeasonSign | None = sign("page", "cool-season weeds green and growing")
    grass_emergence: SeasonSign | None = sign("page", "first seedlings of the sown grass")


@dataclass(frozen=True, slots=True, kw_only=True)
class EmergencyCard(Record):
    """What rescuers need; a line left out prints as a bold blank for every reader."""

    address_911: str | None = text("page", "address to give to 911", safety=True)
    gate_lat_lon: LatLon | None = lat_lon("page", "gate rescuers come through", safety=True)
    gate_words: str | None = text("page", "how to find and open the gate", safety=True)
    hospital: str | None = text("page", "nearest emergency room and drive", safety=True)
    neighbour: str | None = text("page", "neighbour or caretaker and telephone", safety=True)
    owner_telephone: str | None = text("page", "telephone of the owner", safety=True)
    signal: str | None = text("page", "where a telephone has signal", safety=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Property(Record):
    """The property as a whole."""

    format: int = whole("page", "format of these files", Limits(at_least=1), required=True)
    name: str = text("place", "name of the property", required=True)
    season: int = whole(
        "page",
        "season to plan, named by its spring",
        Limits(at_least=1990, at_most=2100),
        required=True,
    )
    as_of: datetime.date | None = day("page", "day the plan is made for")
    location_lat_lon: LatLon | None = lat_lon("place", "middle of the property")
    season_signs: SeasonSigns | None = record("page", "signs of the season", SeasonSigns)
    signs_looked_up_on: datetime.date | None = day(
        "page", "season signs looked up on", recorded=True
    )
    emergency: EmergencyCard | None = record("page", "emergency card", EmergencyCard, safety=True)
    note: str | None = text("note", "a note of your own")


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
    seen_on: datetime.date | None = day("page", "seen on", recorded=True)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Hazards(Record):
    """What can hurt or be hurt near a place; what is left out prints as a bold blank."""

    water_and_wells: str | None = text("page", "water, wells, tile inlets near", safety=True)
    slope: str | None = text("page", "slopes and soft ground", safety=True)
    lines: str | None = text("page", "lines above and below ground", safety=True)
    neighbours: str | None = text("page", "sensitive crops, bees, dwellings near", safety=True)
    others: str | None = text("page", "others present or hunting on work days", safety=True)
    block_lat_lon: LatLon | None = lat_lon("page", "where the work begins", safety=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class SownSeed(Record):
    """One kind of seed in a planting."""

    species: str = reference("page", "species", "species", required=True)
    lot: str = reference("page", "seed lot", "lot", required=True)
    rate_pls_lb_per_ac: Given = measure(
        "page",
        "pure live seed on the tag, pounds to an acre",
        "lb_per_ac",
        Limits(above=0, at_most=300),
        required=True,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Work(Record):
    """How the owner means to do one step: with what and how much."""

    step: str = reference("page", "step of the step plan", "step", required=True)
    product: str | None = reference("page", "product to spray", "product")
    rate_product: Given | None = measure("page", "product to an acre", "fl_oz_per_ac", POSITIVE)
    rate_ai_lb_per_ac: Given | None = measure(
        "page", "active ingredient to an acre", "lb_per_ac", POSITIVE
    )
    rate_ae_lb_per_ac: Given | None = measure(
        "page", "acid equivalent to an acre", "lb_per_ac", POSITIVE
    )
    method: str | None = choice("page", "broadcast or spot", "broadcast", "spot")
    sprayer: str | None = reference("page", "sprayer", "sprayer")
    spreader: str | None = reference("page", "spreader", "spreader")
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Planting(Record):
    """What grows on a place from one season on."""

    id: str = identity("id of the planting")
    season: int = whole(
        "page",
        "season it is sown, named by its spring",
        Limits(at_least=1990, at_most=2100),
        required=True,
    )
    seed: tuple[SownSeed, ...] = record("page", "what is sown", SownSeed, many=True, required=True)
    method: str = choice("page", "how it is sown", "frost_seed", required=True)
    steps: str = reference("page", "step plan", "step_plan", required=True)
    work: tuple[Work, ...] = record("page", "how each step is done", Work, many=True)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Screen(Record):
    """A strip of cover: ground with a shape."""

    id: str = identity("id of the place")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("place", "name you use", required=True)
    known_as: str | None = text("page", "name other readers see")
    length_ft: Given = measure("place", "measured length", "ft", POSITIVE, required=True)
    width_ft: Given = measure("page", "taped width", "ft", POSITIVE, required=True)
    hides: tuple[str, ...] = reference("place", "routes it hides", "route", many=True)
    contract: str | None = text("page", "contract the ground is under, or none")
    cover_now: CoverNow | None = record("page", "what grows there now", CoverNow)
    near: Hazards | None = record("page", "what to watch for", Hazards, safety=True)
    plantings: tuple[Planting, ...] = record("page", "plantings", Planting, many=True)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand(Record):
    """A hunting stand."""

    id: str = identity("id of the stand")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("place", "name you use", required=True)
    at_lat_lon: LatLon | None = lat_lon("place", "where it stands")
    seat_height_ft: Given | None = measure("place", "height of the seat", "ft", POSITIVE)
    straps_checked_on: datetime.date | None = day(
        "place", "straps and harness looked over on", recorded=True
    )
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Route(Record):
    """A way to walk to stands."""

    id: str = identity("id of the route")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("place", "name you use", required=True)
    serves: tuple[str, ...] = reference("place", "stands it leads to", "stand", many=True)
    length_ft: Given | None = measure("place", "measured length", "ft", POSITIVE)
    walked_on: datetime.date | None = day("place", "last walked on", recorded=True)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class SeedTag(Record):
    """What the seed tag prints."""

    variety: str | None = text("page", "variety")
    origin: str | None = text("page", "origin")
    purity_fraction: Given = measure("page", "pure seed", "fraction", SHARE, required=True)
    germination_fraction: Given = measure("page", "germination", "fraction", SHARE, required=True)
    hard_fraction: Given = measure("page", "hard seed", "fraction", SHARE, required=True)
    dormant_fraction: Given = measure("page", "dormant seed", "fraction", SHARE, required=True)
    tested_on: datetime.date | None = day("page", "seed test", recorded=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class SeedLot(Record):
    """One lot of seed with its tag."""

    id: str = identity("id of the lot")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    species: str = reference("page", "species", "species", required=True)
    tag: SeedTag = record("page", "what the tag prints", SeedTag, required=True)
    live_seeds_per_lb: Given | None = measure("page", "seeds in a pound", "seeds_per_lb", POSITIVE)
    package_lb: Given | None = measure("money", "a bag holds", "lb", POSITIVE)
    price_usd: Given | None = measure("money", "price of a bag", "usd", Limits(at_least=0))
    priced_on: datetime.date | None = day("money", "price asked on", recorded=True)
    on_hand_lb: Given | None = measure("money", "on hand", "lb", Limits(at_least=0))
    counted_on: datetime.date | None = day("money", "counted on", recorded=True)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Product(Record):
    """A liquid herbicide and its label card."""

    id: str = identity("id of the product")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("page", "name, by active ingredient", required=True)
    invented: bool | None = yes_no("page", "true for a made-up product of an example")
    label: LabelCard | None = record("page", "label card", LabelCard)
    package_fl_oz: Given | None = measure("money", "a container holds", "fl_oz", POSITIVE)
    price_usd: Given | None = measure("money", "price of a container", "usd", Limits(at_least=0))
    priced_on: datetime.date | None = day("money", "price asked on", recorded=True)
    on_hand_fl_oz: Given | None = measure("money", "on hand", "fl_oz", Limits(at_least=0))
    counted_on: datetime.date | None = day("money", "counted on", recorded=True)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class SprayerTest(Record):
    """A catch test: what each nozzle gave in a time, at a speed."""

    tested_on: datetime.date = day("page", "tested on", required=True, recorded=True)
    caught_fl_oz: tuple[Given, ...] = measure(
        "page", "caught under each nozzle", "fl_oz", POSITIVE, many=True, required=True
    )
    caught_in_seconds: Given = measure("page", "over", "seconds", POSITIVE, required=True)
    speed_mph: Given = measure("page", "speed", "mph", POSITIVE, required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sprayer(Record):
    """A boom sprayer."""

    id: str = identity("id of the sprayer")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("page", "name you use", required=True)
    tank_gal: Given = measure("page", "tank holds", "gal", POSITIVE, required=True)
    nozzle: str | None = text("page", "nozzle")
    nozzle_spacing_in: Given = measure("page", "between nozzles", "in", POSITIVE, required=True)
    measure: str | None = reference("page", "measure you pour with", "measure")
    catch_tests: tuple[SprayerTest, ...] = record("page", "catch tests", SprayerTest, many=True)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class SpreaderTest(Record):
    """A catch test: what one pass over a measured distance put down."""

    tested_on: datetime.date = day("page", "tested on", required=True, recorded=True)
    lot: str = reference("page", "seed it was tested with", "lot", required=True)
    setting: str = text("page", "setting of the opening", required=True)
    caught_lb: Given = measure("page", "put down", "lb", POSITIVE, required=True)
    swath_ft: Given = measure("page", "width it threw evenly", "ft", POSITIVE, required=True)
    distance_ft: Given = measure("page", "distance walked", "ft", POSITIVE, required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Spreader(Record):
    """A hand-crank spreader."""

    id: str = identity("id of the spreader")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("page", "name you use", required=True)
    hopper_lb: Given = measure("page", "seed the hopper holds", "lb", POSITIVE, required=True)
    catch_tests: tuple[SpreaderTest, ...] = record("page", "catch tests", SpreaderTest, many=True)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure(Record):
    """A jug or cup with marks."""

    id: str = identity("id of the measure")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("page", "name you use", required=True)
    mark_fl_oz: Given = measure("page", "between two marks", "fl_oz", POSITIVE, required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class ReaderJobs(Record):
    """Jobs of one planting a reader may see."""

    planting: str = reference("place", "planting", "planting", required=True)
    steps: tuple[str, ...] = reference("place", "steps, or all", "step", "all", many=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Reader(Record):
    """Someone a build is made for, beside the owner."""

    id: str = identity("id of the reader")
    kind: str = choice("person", "who it is", "contractor", required=True)
    name: str | None = text("person", "name")
    jobs: tuple[ReaderJobs, ...] = record("place", "jobs handed over", ReaderJobs, many=True)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Inventory:
    """The whole property folder, checked."""

    property: Property
    screens: tuple[Screen, ...] = ()
    stands: tuple[Stand, ...] = ()
    routes: tuple[Route, ...] = ()
    lots: tuple[SeedLot, ...] = ()
    products: tuple[Product, ...] = ()
    sprayers: tuple[Sprayer, ...] = ()
    spreaders: tuple[Spreader, ...] = ()
    measures: tuple[Measure, ...] = ()
    readers: tuple[Reader, ...] = ()
