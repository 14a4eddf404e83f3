"""Machines with their catch tests, and measures."""

import datetime

from generator.dataclass import dataclass
from generator.inventory.fields import (
    POSITIVE,
    Limits,
    Record,
    choice,
    day,
    identity,
    measure,
    record,
    reference,
    text,
    yes_no,
)
from generator.inventory.label import WORKS
from generator.working import Given

SPRAYER_KINDS = ("boom", "boomless", "hand_gun", "backpack")


@dataclass(frozen=True, slots=True, kw_only=True)
class SprayerTest(Record):
    """A catch test: what the nozzles gave in a time, at a speed; by hand, on a measured patch."""

    tested_on: datetime.date = day("page", "tested on", required=True)
    caught_fl_oz: tuple[Given, ...] = measure(
        "page", "caught under each nozzle", "fl_oz", POSITIVE, many=True, required=True
    )
    caught_in_seconds: Given | None = measure("page", "over", "seconds", POSITIVE)
    speed_mph: Given | None = measure("page", "speed", "mph", POSITIVE)
    covered_sq_ft: Given | None = measure("page", "ground that took it, by hand", "sq_ft", POSITIVE)


@dataclass(frozen=True, slots=True, kw_only=True)
class LastLoad(Record):
    """What the tank held last, and whether it was cleaned out since."""

    sprayed_on: datetime.date = day("page", "sprayed on", required=True)
    product: tuple[str, ...] = reference("page", "products of yours it was", "product", many=True)
    works_as: tuple[str, ...] = choice(
        "page", "what its actives do, for a product not listed", *WORKS, many=True
    )
    unknown: bool | None = yes_no("page", "true where it may have held something else too")
    cleaned_out_on: datetime.date | None = day("page", "tank cleaned out after this load on")


@dataclass(frozen=True, slots=True, kw_only=True)
class Sprayer(Record):
    """A sprayer: boom, pattern without a boom, hand gun or backpack."""

    id: str = identity("id of the sprayer")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("page", "name you use", required=True)
    kind: str = choice("page", "kind of sprayer", *SPRAYER_KINDS, required=True)
    tank_gal: Given = measure("page", "tank holds", "gal", POSITIVE, required=True)
    nozzle: str | None = text("page", "nozzle")
    nozzle_spacing_in: Given | None = measure("page", "between nozzles", "in", POSITIVE)
    swath_ft: Given | None = measure("page", "width of the pattern", "ft", POSITIVE)
    lap_in: Given | None = measure("page", "passes lap by", "in", Limits(at_least=0))
    sides_shut: bool | None = yes_no(
        "page", "true where each side of a pattern without a boom shuts on its own"
    )
    measure: tuple[str, ...] = reference(
        "page", "measures you pour and weigh with", "measure", many=True
    )
    catch_tests: tuple[SprayerTest, ...] = record("page", "catch tests", SprayerTest, many=True)
    last_load: LastLoad | None = record("page", "what the tank held last", LastLoad)
    new: bool | None = yes_no("page", "true for one that never held anything")
    cleaned_out_on: datetime.date | None = day(
        "page", "cleaned out on, where it is not known what it held"
    )
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class SpreaderTest(Record):
    """A catch test: what one pass over a measured distance put down."""

    tested_on: datetime.date = day("page", "tested on", required=True)
    lot: str = reference("page", "seed it was tested with", "lot", required=True)
    mixed_with: tuple[str, ...] = reference(
        "page", "other lots mixed in as they are sown", "lot", many=True
    )
    setting: str = text("page", "setting of the opening", required=True, numbered=True)
    caught_lb: Given | None = measure("page", "put down", "lb", POSITIVE)
    put_in_lb: Given | None = measure("page", "weighed into the hopper before", "lb", POSITIVE)
    left_lb: Given | None = measure("page", "left in the hopper after", "lb", Limits(at_least=0))
    swath_ft: Given = measure("page", "width it threw evenly", "ft", POSITIVE, required=True)
    distance_ft: Given = measure("page", "distance walked", "ft", POSITIVE, required=True)
    walked_in_seconds: Given | None = measure("page", "time for that distance", "seconds", POSITIVE)


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
    """A jug or cup with marks, or a scale."""

    id: str = identity("id of the measure")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("page", "name you use", required=True)
    mark_fl_oz: Given | None = measure("page", "between two marks", "fl_oz", POSITIVE)
    mark_oz_wt: Given | None = measure("page", "between two marks of a scale", "oz_wt", POSITIVE)
