"""What a tank held before, and whether a trace of it would harm what grows on the place."""

from collections.abc import Sequence

from generator.inventory.equipment import LastLoad, Sprayer
from generator.inventory.label import ActiveStrength
from generator.inventory.schema import Inventory
from generator.plan.asked import JobAsked
from generator.plan.findings import finding
from generator.plan.model import Finding
from generator.plan.reasons import Caution, Stop
from generator.reference.load import known_actives, species, ways_of_working


def works_of(active: ActiveStrength) -> frozenset[str]:
    """Return what an active does, as typed and as known of its name; empty where neither says."""
    return frozenset(active.works_as) | known_actives().get(
        active.active.strip().casefold(), frozenset()
    )


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
    if last.cleaned_out_on is not None and last.cleaned_out_on >= last.sprayed_on:
        return [], []
    harmful = _harmful(last, inventory, {one.active for one in going_in})
    grown = {asked.kind, *(species()[one].kind for one in asked.species)}
    for works in sorted(harmful):
        if works == UNKNOWN or grown & ways_of_working()[works].harms:
            told = "what is not known" if works == UNKNOWN else ways_of_working()[works].name
            stop = finding(
                Stop.TANK_NOT_CLEANED, asked.job_id, last.where, item=sprayer.name, held=told
            )
            return [stop], []
    return [], []


UNKNOWN = "unknown"


def _harmful(last: LastLoad, inventory: Inventory, going_in: set[str]) -> set[str]:
    """Return the ways in which what was in the tank works, without what goes in again."""
    harmful = set(last.works_as)
    held = [one for one in inventory.products if one.id in last.product]
    for product in held:
        for active in product.label.actives if product.label is not None else ():
            if active.active not in going_in:
                harmful |= works_of(active) or {UNKNOWN}
    known = [one for one in held if one.label is not None and one.label.actives]
    if len(known) < len(held) or not (harmful or held):
        harmful.add(UNKNOWN)
    return harmful
