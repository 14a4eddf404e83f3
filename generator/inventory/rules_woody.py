"""Rules on rows of trees and shrubs."""

from collections.abc import Iterator

from generator.inventory.places import Planting
from generator.inventory.problems import shown_value
from generator.inventory.rule import Broken, Rule, typed_at
from generator.inventory.schema import Inventory
from generator.inventory.woody import Guard, Plant
from generator.reference.library import species

_WOODY = "woody_row"
PLANT = "plant"


def _plantings(inventory: Inventory) -> Iterator[Planting]:
    for place in inventory.places():
        yield from place.plantings


def _sown_or_planted(inventory: Inventory) -> Iterator[Broken]:
    for planting in _plantings(inventory):
        # what stands already need not be sown
        if planting.once is not None and bool(planting.seed) == bool(planting.woody):
            both = bool(planting.seed)
            what = "seed and rows in one planting" if both else "nothing is sown or planted"
            where = planting.where_of("woody")
            yield Broken(where, what, "seed: for what is sown, woody: for rows planted")


def _goes_with_its_plan(inventory: Inventory) -> Iterator[Broken]:
    for planting in _plantings(inventory):
        if not planting.seed and not planting.woody:
            continue  # told by F360
        asked = {
            ("steps", "the step plan"): inventory.plans()[planting.steps].kind == _WOODY,
            ("method", f"method {planting.method}"): planting.method == PLANT,
        }
        for (name, told), woody in asked.items():
            if woody != bool(planting.woody):
                what = f"{told} is {'' if woody else 'not '}for rows of trees and shrubs"
                accepted = "woody: with method: plant and steps: of a woody row"
                yield Broken(planting.where_of(name), what, accepted)
                break  # plan and method most often go wrong together


def _woody_species(inventory: Inventory) -> Iterator[Broken]:
    for plant in inventory.plants:
        if species()[plant.species].kind != _WOODY:
            what = f"{shown_value(plant.species)} is sown, not planted in rows"
            yield Broken(
                plant.where_of("species"),
                what,
                "a tree or shrub; seed of others stands under lots:",
            )
    for lot in inventory.lots:
        if species()[lot.species].kind == _WOODY:
            what = f"{shown_value(lot.species)} is planted in rows, not sown"
            yield Broken(lot.where_of("species"), what, "trees and shrubs stand under plants:")


def _whole_counts(inventory: Inventory) -> Iterator[Broken]:
    counts = [row.rows_count for planting in _plantings(inventory) for row in planting.woody]
    stocked: list[Plant | Guard] = [*inventory.plants, *inventory.guards]
    for kept in stocked:
        counts += [given for given in (kept.package_count, kept.on_hand_count) if given is not None]
    for count in counts:
        if count.value != int(count.value):
            yield Broken(typed_at(count), f"a part of one: {count.typed:g}", "a whole number")


def _each_plant_once(inventory: Inventory) -> Iterator[Broken]:
    for planting in _plantings(inventory):
        seen: set[str] = set()
        for row in planting.woody:
            if row.plants in seen:
                what = f"{shown_value(row.plants)} stands twice in this planting"
                yield Broken(row.where_of("plants"), what, "each once, with all its rows")
            seen.add(row.plants)


WOODY_RULES = (
    Rule("F360", "A planting is sown or planted.", _sown_or_planted, alone=True),
    Rule("F361", "Rows are planted by a plan for rows.", _goes_with_its_plan),
    Rule("F362", "Trees are planted and seed is sown.", _woody_species),
    Rule("F363", "Rows and plants are whole.", _whole_counts),
    Rule("F364", "A row's numbers are known by its plants.", _each_plant_once, alone=True),
)
