"""What some crops are to others: sorghum to stock, and mown grain to those who hunt birds."""

from collections.abc import Iterator, Mapping, Sequence

from generator.inventory.places import Planting
from generator.inventory.schema import Inventory
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.findings import finding
from generator.plan.model import Finding, JobState
from generator.reference.load import species

SORGHUM = "sorghum_screen"
GRAIN = frozenset({SORGHUM, "small_grain", "beans_or_corn"})
MEETS_STOCK = ("sow", "mow")
LAYS_DOWN = ("mow", "roll", "till", "burn")
STANDS = ("established_dormant", "established_growing")


def crop_cautions(
    asked: Sequence[JobAsked],
    states: Mapping[str, JobState],
    inventory: Inventory,
    season: int,
) -> Iterator[Finding]:
    """Yield a caution of stock on places with sorghum, and of bait where grain is laid down.

    Sorghum of the season before still stands, or grows again, in the season after.
    """
    for place in inventory.places():
        for planting in place.plantings:
            if SORGHUM in _kinds(planting, inventory) and season - planting.season in (0, 1):
                yield finding(Caution.SORGHUM_AND_STOCK, place.id, planting.where)
    for one in asked:
        if not states[one.job_id].is_ahead:
            continue
        sown = {one.kind, *(species()[name].kind for name in one.species)}
        if SORGHUM in sown and one.step.operation in MEETS_STOCK:
            yield finding(Caution.SORGHUM_AND_STOCK, one.job_id, one.planting.where)
        if sown & GRAIN and _lays_down(one):
            yield finding(Caution.MOWN_GRAIN, one.job_id, one.planting.where)


def _kinds(planting: Planting, inventory: Inventory) -> frozenset[str]:
    kind = inventory.plans()[planting.steps].kind
    return frozenset({kind or "", *(species()[one.species].kind for one in planting.seed)})


def _lays_down(one: JobAsked) -> bool:
    """Whether a job lays a standing crop down: every mowing, and other work once it stands."""
    operation = one.step.operation
    return operation == "mow" or (operation in LAYS_DOWN and one.step.timing in STANDS)
