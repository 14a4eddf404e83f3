"""What is bought and kept: seed lots with their tags, products with their label cards."""

import datetime

from generator.dataclass import dataclass
from generator.inventory.fields import (
    POSITIVE,
    SHARE,
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
from generator.inventory.inoculant import Inoculant
from generator.inventory.label import LabelCard
from generator.inventory.stocked import Stocked, on_hand, price_of
from generator.working import Given

FORMULATIONS = (
    "soluble_powder",
    "dry_granule_or_powder",
    "flowable",
    "emulsifiable_concentrate",
    "solution",
    "surfactant_or_oil",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SeedTag(Record):
    """What the seed tag prints."""

    variety: str | None = text("page", "variety")
    origin: str | None = text("page", "origin")
    purity_fraction: Given = measure("page", "pure seed", "fraction", SHARE, required=True)
    germination_fraction: Given = measure("page", "germination", "fraction", SHARE, required=True)
    hard_fraction: Given = measure("page", "hard seed", "fraction", SHARE, required=True)
    dormant_fraction: Given = measure("page", "dormant seed", "fraction", SHARE, required=True)
    other_crop_fraction: Given | None = measure("page", "other crop seed", "fraction", SHARE)
    weed_fraction: Given | None = measure("page", "weed seed", "fraction", SHARE)
    inert_fraction: Given | None = measure("page", "inert matter", "fraction", SHARE)
    noxious_weeds: str | None = text("page", "noxious weed seed the tag lists, by name and count")
    treated: str | None = text("page", "what the tag says the seed is treated with")
    tested_on: datetime.date | None = day("page", "seed test", month_too=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class SeedLot(Stocked):
    """One lot of seed with its tag."""

    id: str = identity("id of the lot")
    species: str = reference("page", "species", "species", required=True)
    ecotype: str | None = choice(
        "page", "kind of switchgrass, as its seller says: upland or lowland", "upland", "lowland"
    )
    tag: SeedTag = record("page", "what the tag prints", SeedTag, required=True)
    inoculant: Inoculant | None = record("page", "inoculant, for a legume", Inoculant)
    live_seeds_per_lb: Given | None = measure("page", "seeds in a pound", "seeds_per_lb", POSITIVE)
    package_lb: Given | None = measure("money", "a bag holds", "lb", POSITIVE)
    price_usd: Given | None = price_of("a bag")
    on_hand_lb: Given | None = on_hand("lb")
    most_to_be_had_lb: Given | None = measure(
        "money",
        "could be had besides what was on hand on the day of the count",
        "lb",
        Limits(at_least=0),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Product(Stocked):
    """A herbicide, liquid or dry, and its label card."""

    id: str = identity("id of the product")
    name: str = text("page", "name, by active ingredient", required=True)
    invented: bool | None = yes_no("page", "true for a made-up product of an example")
    label: LabelCard | None = record("page", "label card", LabelCard)
    formulation: str | None = choice("page", "how it is made up", *FORMULATIONS)
    package_fl_oz: Given | None = measure("money", "a container holds", "fl_oz", POSITIVE)
    package_oz_wt: Given | None = measure("money", "a container holds, dry", "oz_wt", POSITIVE)
    price_usd: Given | None = price_of("a container")
    on_hand_fl_oz: Given | None = on_hand("fl_oz")
    on_hand_oz_wt: Given | None = on_hand("oz_wt", "on hand, dry")


@dataclass(frozen=True, slots=True, kw_only=True)
class Adjuvant(Stocked):
    """A surfactant, oil or water conditioner; the herbicide's label says whether one is used."""

    id: str = identity("id of the adjuvant")
    name: str = text("page", "what it is, in plain words", required=True)
    formulation: str = choice("page", "how it is made up", *FORMULATIONS, required=True)
    package_fl_oz: Given | None = measure("money", "a container holds", "fl_oz", POSITIVE)
    package_oz_wt: Given | None = measure("money", "a container holds, dry", "oz_wt", POSITIVE)
    price_usd: Given | None = price_of("a container")
    on_hand_fl_oz: Given | None = on_hand("fl_oz")
    on_hand_oz_wt: Given | None = on_hand("oz_wt", "on hand, dry")
