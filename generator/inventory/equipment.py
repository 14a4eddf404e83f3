"""Machines with their catch tests, and measures."""

import datetime
from dataclasses import dataclass

from generator.inventory.fields import (
    POSITIVE,
    Record,
    day,
    identity,
    measure,
    record,
    reference,
    text,
)
from generator.working import Given


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
