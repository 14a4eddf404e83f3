"""What a product in the tank does to what grows on the place, beside what its label allows."""

from collections.abc import Iterator

from generator.inventory.label import LabelCard, Use
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.findings import finding
from generator.plan.history import works_of
from generator.plan.model import Finding, Mix, MixPart
from generator.plan.stops import Stop
from generator.reference.active_names import known_to_be_hard_on
from generator.reference.load import (
    planting_kinds,
    sources,
    species,
    ways_of_working,
)

AUXIN = "auxin"
GRASS = "native_grass"
NOT_UP = "after_sowing_before_emergence"
SEEDLINGS = "seedlings"


def seedling_stops(asked: JobAsked, card: LabelCard, use: Use) -> Iterator[Finding]:
    """Yield a stop for an auxin between sowing and four leaves that the use does not name.

    The use names it by the leaves that seedlings must have; by 0 it allows spraying before they
    are up.
    """
    if asked.kind != GRASS or asked.step.timing not in (NOT_UP, SEEDLINGS):
        return
    leaves = use.seedling_leaves_at_least
    if isinstance(leaves, int) and (asked.step.timing == SEEDLINGS or leaves == 0):
        return
    for active in card.actives:
        if AUXIN in works_of(active):
            yield finding(
                Stop.SEEDLINGS_NOT_NAMED, asked.job_id, use.where, active=active.active.capitalize()
            )


def harm_cautions(asked: JobAsked, part: MixPart) -> Iterator[Finding]:
    """Yield what a cleared product is known to do to a kind or a species that grows here."""
    grown = {asked.kind, *(species()[one].kind for one in asked.species)}
    for active in part.card.actives:
        if AUXIN in works_of(active):
            near = asked.ground.near
            neighbours = near.neighbours if near is not None else None
            yield finding(
                Caution.DRIFTS_FAR,
                asked.job_id,
                part.use.where,
                active=active.active,
                neighbours=neighbours or "not written down.",
            )
        for works in sorted(works_of(active)):
            for kind in sorted(grown & ways_of_working()[works].harms):
                yield finding(
                    Caution.HARMS_WHAT_GROWS,
                    asked.job_id,
                    part.use.where,
                    active=active.active,
                    works=ways_of_working()[works].name,
                    kind=planting_kinds()[kind].lower(),
                )
        for one, source in known_to_be_hard_on(active.active):
            if one in asked.species:
                yield finding(
                    Caution.HARD_ON_SPECIES,
                    asked.job_id,
                    part.use.where,
                    active=active.active,
                    species=species()[one].name.lower(),
                    source=sources()[source].title,
                )


def leaves_asked(mix: Mix) -> tuple[tuple[str, int], ...]:
    """Return the products whose use wants seedlings to have leaves, with how many."""
    return tuple(
        (part.product.name, part.use.seedling_leaves_at_least)
        for part in mix.parts
        if isinstance(part.use.seedling_leaves_at_least, int)
        and part.use.seedling_leaves_at_least > 0
    )
