"""Things that are bought and kept, whatever list they stand in, and the steps that use them."""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

from generator.dataclass import dataclass
from generator.inventory.fields import Where
from generator.inventory.kept import kept_lists, kept_units
from generator.inventory.places import PlantedGround, Planting, Work
from generator.inventory.schema import Inventory
from generator.inventory.stock import SeedLot
from generator.reference.library import species
from generator.reference.steps import Step, StepPlan
from generator.units import convert
from generator.working import Formula, Given

Taking = tuple[str, str]  # planting and step


def steps_using(
    places: tuple[PlantedGround, ...], plans: Mapping[str, StepPlan]
) -> Mapping[str, frozenset[Taking]]:
    """Return by the id of each thing the steps that take of it, whatever season they stand in."""
    found: dict[str, set[Taking]] = {}
    for place in places:
        for planting in place.plantings:
            named = (planting.steps, planting.upkeep)
            for step in (step for name in named if name is not None for step in plans[name].steps):
                for item in _taken(planting, step):
                    found.setdefault(item, set()).add((planting.id, step.id))
    return {item: frozenset(steps) for item, steps in found.items()}


def _taken(planting: Planting, step: Step) -> Iterator[str]:
    """Yield the ids of what a step of a planting takes."""
    does = step.does
    if does.sows:
        yield from (seed.lot for seed in planting.seed)
    elif does.puts_down == "fertilizer":
        yield from planting.fertilizers
    elif does.puts_down == "lime" and planting.lime is not None:
        yield planting.lime
    elif does.brings_plants:
        yield from (row.plants for row in planting.woody)
    elif does.sprays:
        for work in planting.work:
            yield from _sprayed(work) if work.step == step.id else ()
    if does.puts_down == "plants":
        yield from (row.guards for row in planting.woody if row.guards is not None)


def _sprayed(work: Work) -> Iterator[str]:
    if work.product is not None:
        yield work.product
    yield from (partner.product for partner in work.partners)
    yield from (entry.adjuvant for entry in work.adjuvants)


@dataclass(frozen=True, slots=True)
class StockItem:
    """One thing to buy: `kind` is the word of its list, all its amounts are in `unit`.

    A thing that is `loose` is bought to the weight; its price is for so much as a package. `taken`
    holds the steps of plantings that take of it, in whatever season.
    """

    id: str
    kind: str
    words: str
    unit: str
    package: Given | None
    price_usd: Given | None
    priced_on: datetime.date | None
    on_hand: Given | None
    counted_on: datetime.date | None
    lead_days: Given | None
    where: Where
    loose: bool = False
    taken: frozenset[Taking] = frozenset()


def stock_items(inventory: Inventory) -> tuple[StockItem, ...]:
    """Return everything the property folder lists to buy, in the order of its lists."""
    taken = steps_using(inventory.places(), inventory.plans())
    return tuple(
        _item(record, taken.get(record.id, frozenset()))
        for kept in kept_lists(inventory)
        for record in kept
    )


def _item(record: Any, taken: frozenset[Taking]) -> StockItem:
    unit = kept_units(record)[0]
    return StockItem(
        id=record.id,
        kind="seed" if isinstance(record, SeedLot) else type(record).__name__.lower(),
        words=_words(record),
        unit=unit,
        package=getattr(record, f"package_{unit}"),
        price_usd=record.price_usd,
        priced_on=record.priced_on,
        on_hand=getattr(record, f"on_hand_{unit}"),
        counted_on=record.counted_on,
        lead_days=record.lead_days,
        where=record.where,
        loose=bool(getattr(record, "loose", None)),
        taken=taken,
    )


def _words(record: Any) -> str:
    """Return what a thing is called: its name, or its species and lot."""
    name: str | None = getattr(record, "name", None)
    return name or f"{species()[record.species].name}, lot {record.id}"


def in_unit(formula: Formula, unit: str) -> Formula:
    """Return a formula of amounts in the unit of the thing it is used for."""
    return replace(formula, unit=unit)


def amount_in(given: Given, unit: str) -> Given:
    """Return a logged amount in the unit its thing is counted in; what was typed stays."""
    if given.unit == unit:
        return given
    stem = given.name.removesuffix(f"_{given.unit}")
    value = convert(given.value, given.unit, unit)
    return replace(given, name=f"{stem}_{unit}", unit=unit, value=value)
