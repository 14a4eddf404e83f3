"""Rows of trees and shrubs: what is bought for them and how they stand on a place."""

from generator.dataclass import dataclass
from generator.inventory.fields import (
    POSITIVE,
    Limits,
    Record,
    choice,
    identity,
    measure,
    reference,
    text,
)
from generator.inventory.stocked import Stocked, on_hand, price_of
from generator.working import Given

AT_LEAST_ONE = Limits(at_least=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Plant(Stocked):
    """Young trees or shrubs of one kind from one nursery."""

    id: str = identity("id of the plants")
    name: str = text("page", "kind and size, as the nursery lists it", required=True)
    species: str = reference("page", "species", "species", required=True)
    root: str = choice("page", "how they come", "bare_root", "plug", "container", required=True)
    package_count: Given | None = measure("money", "a bundle holds", "count", AT_LEAST_ONE)
    price_usd: Given | None = price_of("a bundle")
    on_hand_count: Given | None = on_hand("count")


@dataclass(frozen=True, slots=True, kw_only=True)
class Guard(Stocked):
    """A tube, cage or wrap that keeps deer and mice from one plant, with its stake."""

    id: str = identity("id of the browse cages or tubes")
    name: str = text("page", "what it is, in plain words", required=True)
    package_count: Given | None = measure("money", "a package holds", "count", AT_LEAST_ONE)
    price_usd: Given | None = price_of("a package")
    on_hand_count: Given | None = on_hand("count")


@dataclass(frozen=True, slots=True, kw_only=True)
class WoodyRow(Record):
    """Rows of one kind of plant on a place, both ends planted."""

    plants: str = reference("page", "what is planted", "plant", required=True)
    rows_count: Given = measure("page", "rows side by side", "count", AT_LEAST_ONE, required=True)
    spacing_ft: Given = measure(
        "page", "from plant to plant in the row", "ft", POSITIVE, required=True
    )
    rows_apart_ft: Given | None = measure("page", "from row to row", "ft", POSITIVE)
    row_ft: Given | None = measure(
        "page", "length of one row, where it is not the place's", "ft", POSITIVE
    )
    guards: str | None = reference("page", "browse cage or tube put on every plant", "guard")
    replace_fraction: Given | None = measure(
        "page", "share that may have to be replaced", "fraction", Limits(at_least=0, at_most=1)
    )
