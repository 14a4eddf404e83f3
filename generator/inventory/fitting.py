"""What can stand where a word names nothing: a plan for that ground, a lot of that seed."""

from collections.abc import Iterable, Mapping
from typing import Any

from generator.inventory.reading_found import Mention, Path, Reading
from generator.reference.steps import StepPlan, step_plans

# The lists whose entries have an upkeep of every season, and what a plan for them is for.
_KEPT = {"stands": "stand", "routes": "route", "water_holes": "water_hole"}


def fitting(mention: Mention, words: Iterable[str], readings: Iterable[Reading]) -> list[str]:
    """Return those of some words that fit where a mention stands.

    A plan of the owner's own, of which nothing is known before all is read, is let pass.
    """
    name, every = mention.path[-1], list(readings)
    if name == "lot":
        # a lot of another species would only be the next fault
        wanted = _beside(mention, every).get("species")
        species = dict(_species_of_lots(every))
        return [word for word in words if wanted is None or species.get(word) == wanted]
    if "step_plan" in mention.refers_to:
        shipped = step_plans()
        return [
            word
            for word in words
            if word not in shipped or _is_for(shipped[word], mention.path, name)
        ]
    return list(words)


def _is_for(plan: StepPlan, path: Path, name: str | int) -> bool:
    subject = _KEPT.get(str(path[0]))
    if subject is not None:
        return plan.subject == subject
    # upkeep comes back every season, and no other field takes a plan that does
    return plan.subject is None and (plan.yearly_from is not None) == (name == "upkeep")


def _beside(mention: Mention, readings: Iterable[Reading]) -> Mapping[str, Any]:
    """Return the keys beside a mention, as they were typed."""
    # out of the text: an entry with another fault in it has no record
    documents = (reading.document for reading in readings)
    found: Any = next(
        document.data for document in documents if document.file == mention.where.file
    )
    for part in mention.path[:-1]:
        found = found[part]
    return found if isinstance(found, dict) else {}


def _species_of_lots(readings: Iterable[Reading]) -> Iterable[tuple[str, object]]:
    for reading in readings:
        data = reading.document.data
        lots = data.get("lots") if isinstance(data, dict) else None
        for lot in lots if isinstance(lots, list) else ():
            if isinstance(lot, dict):
                yield str(lot.get("id")), lot.get("species")
