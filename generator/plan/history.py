"""What a tank held before, and whether a trace of it would harm what grows on the place."""

import datetime
from collections.abc import Sequence

from generator.inventory.equipment import LastLoad, Sprayer
from generator.inventory.label import ActiveStrength
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.findings import finding
from generator.plan.model import Finding
from generator.plan.stops import Stop
from generator.reference.load import known_actives, species, ways_of_working

UNKNOWN = "unknown"


def works_of(active: ActiveStrength) -> frozenset[str]:
    """Return what an active does, as typed and as known of its name; empty where neither says."""
    return frozenset(active.works_as) | known_actives().get(active.key, frozenset())


def tank_findings(
    asked: JobAsked,
    sprayer: Sprayer,
    inventory: Inventory,
    going_in: Sequence[ActiveStrength],
) -> tuple[list[Finding], list[Finding]]:
    """Return the stops and the cautions of what the tank held last before this job.

    Auxins harm legumes and brassicas, grass killers harm grass. A last load whose actives are not
    known counts as harmful. What the job itself sprays there is judged by its label, not here.
    """
    last = sprayer.last_load
    if last is None:
        where = sprayer.where
        return [], [finding(Caution.NO_TANK_HISTORY, asked.job_id, where, item=sprayer.name)]
    if _is_clean(last, asked.dates.closes):
        return [], []
    held = [one for one in inventory.products if one.id in last.product]
    harm = harm_of(asked, held, {one.key for one in going_in}, frozenset(last.works_as))
    if harm is None:
        return [], []
    stop = finding(Stop.TANK_NOT_CLEANED, asked.job_id, last.where, item=sprayer.name, held=harm)
    return [stop], []


def _is_clean(last: LastLoad, closes: datetime.date | None) -> bool:
    """Whether the tank is clean on a job's last day: a later clean-out does that job no good."""
    cleaned = last.cleaned_out_on
    if cleaned is None or cleaned < last.sprayed_on:
        return False
    return closes is None or cleaned <= closes


def harm_of(
    asked: JobAsked,
    held: Sequence[Product],
    going_in: set[str],
    works_as: frozenset[str] = frozenset(),
) -> str | None:
    """Return how what a tank held would harm what grows on a job's place, None where it would not.

    `going_in` are the actives the job sprays itself; `works_as` is what is said of a load whose
    product is not listed. A load of which nothing is known counts as harmful.
    """
    grown = {asked.kind, *(species()[one].kind for one in asked.species)}
    for works in sorted(_harmful(held, going_in, works_as)):
        if works == UNKNOWN:
            return "what is not known"
        if grown & ways_of_working()[works].harms:
            return ways_of_working()[works].name
    return None


def _harmful(
    held: Sequence[Product], going_in: set[str], works_as: frozenset[str]
) -> frozenset[str]:
    """Return the ways in which what was in the tank works, without what goes in again."""
    harmful = set(works_as)
    for product in held:
        for active in product.label.actives if product.label is not None else ():
            if active.key not in going_in:
                harmful |= works_of(active) or {UNKNOWN}
    known = [one for one in held if one.label is not None and one.label.actives]
    if len(known) < len(held) or not (harmful or held):
        harmful.add(UNKNOWN)
    return frozenset(harmful)
