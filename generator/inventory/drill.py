"""Grain drills with their catch tests."""

import datetime

from generator.dataclass import dataclass
from generator.inventory.fields import (
    POSITIVE,
    Limits,
    Record,
    day,
    identity,
    measure,
    record,
    reference,
    text,
)
from generator.working import Given

ROWS = Limits(at_least=1, at_most=200)


@dataclass(frozen=True, slots=True, kw_only=True)
class DrillTest(Record):
    """A catch test: what some of the rows gave over a distance, or over turns of the wheel."""

    tested_on: datetime.date = day("page", "tested on", required=True)
    lot: str = reference("page", "seed it was tested with", "lot", required=True)
    mixed_with: tuple[str, ...] = reference(
        "page", "other lots mixed in as they are sown", "lot", many=True
    )
    setting: str = text("page", "setting of the drill", required=True, numbered=True)
    caught_lb: Given = measure("page", "caught from these rows", "lb", POSITIVE, required=True)
    rows_caught_count: Given = measure("page", "rows caught", "count", ROWS, required=True)
    distance_ft: Given | None = measure("page", "distance driven", "ft", POSITIVE)
    wheel_turns: Given | None = measure("page", "turns of the drive wheel", "turns", POSITIVE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Drill(Record):
    """A grain drill."""

    id: str = identity("id of the drill")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    name: str = text("page", "name you use", required=True)
    row_spacing_in: Given = measure("page", "between rows", "in", POSITIVE, required=True)
    rows_count: Given = measure("page", "rows", "count", ROWS, required=True)
    wheel_circumference_ft: Given | None = measure(
        "page", "once round the drive wheel, under load", "ft", POSITIVE
    )
    catch_tests: tuple[DrillTest, ...] = record("page", "catch tests", DrillTest, many=True)
    note: str | None = text("note", "a note of your own")
