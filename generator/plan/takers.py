"""Which steps of which plantings take a thing that is kept: seed, product, plants and the rest."""

from collections.abc import Iterator, Mapping

from generator.inventory.places import Planting, Work
from generator.inventory.schema import Inventory
from generator.reference.steps import Step

Taking = tuple[str, str]  # planting and step


def takers(inventory: Inventory) -> Mapping[str, frozenset[Taking]]:
    """Return by the id of each thing the steps that take of it, whatever season they stand in."""
    plans = inventory.plans()
    found: dict[str, set[Taking]] = {}
    for place in inventory.places():
        for planting in place.plantings:
            named = (planting.steps, planting.upkeep)
            for step in (one for name in named if name is not None for one in plans[name].steps):
                for item in _taken(planting, step):
                    found.setdefault(item, set()).add((planting.id, step.id))
    return {item: frozenset(steps) for item, steps in found.items()}


def _taken(planting: Planting, step: Step) -> Iterator[str]:
    """Yield the ids of what a step of a planting takes."""
    if step.operation == "sow":
        yield from (one.lot for one in planting.seed)
    elif step.operation == "fertilize":
        yield from planting.fertilizers
    elif step.operation == "lime" and planting.lime is not None:
        yield planting.lime
    elif step.operation in ("plant", "replant"):
        yield from (one.plants for one in planting.woody)
    elif step.operation == "spray":
        for work in planting.work:
            yield from _sprayed(work) if work.step == step.id else ()
    if step.operation == "plant":
        yield from (one.guards for one in planting.woody if one.guards is not None)


def _sprayed(work: Work) -> Iterator[str]:
    if work.product is not None:
        yield work.product
    yield from (one.product for one in work.partners)
    yield from (one.adjuvant for one in work.adjuvants)
