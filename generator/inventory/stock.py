"""What is bought and kept: seed lots with their tags, products with their label cards."""

import datetime
from dataclasses import dataclass

from generator.inventory.fields import (
    POSITIVE,
    SHARE,
    Limits,
    Record,
    day,
    identity,
    measure,
    record,
    reference,
    text,
    yes_no,
)
from generator.inventory.label import LabelCard
from generator.working import Given


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
