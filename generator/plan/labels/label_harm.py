"""What a product in the tank does to what grows on the place, beside what its label allows."""

from collections.abc import Iterator

from generator.inventory.label import LabelCard, Use
from generator.plan.findings.about_labels import LabelCaution, LabelStop
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.history import works_of
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.work import Mix, MixPart
from generator.reference.active_names import known_to_be_hard_on
from generator.reference.library import planting_kinds, sources, species, ways_of_working

AUXIN = "auxin"
_GRASS = "native_grass"
NOT_UP = "after_sowing_before_emergence"
SEEDLINGS = "seedlings"


def seedling_stops(request: JobRequest, card: LabelCard, use: Use) -> Iterator[Finding]:
    """Yield a stop for an auxin between sowing and four leaves that the use does not name.

    The use names it by the leaves that seedlings must have; by 0 it allows spraying before they
    are up.
    """
    if request.kind != _GRASS or request.step.timing not in (NOT_UP, SEEDLINGS):
        return
    leaves = use.seedling_leaves_at_least
    # before they are up only a 0 allows it: seed has no leaves to count
    if isinstance(leaves, int) and (request.step.timing == SEEDLINGS or leaves == 0):
        return
    for active in card.actives:
        if AUXIN in works_of(active):
            yield finding(
                LabelStop.SEEDLINGS_NOT_NAMED,
                about_job(request.job_id),
                use.where,
                active=active.active.capitalize(),
            )


def harm_cautions(request: JobRequest, part: MixPart) -> Iterator[Finding]:
    """Yield what a cleared product is known to do to a kind or a species that grows here."""
    # cautions and no stops: the card was cleared, so its label is said to allow this here
    grown = {request.kind, *(species()[species_id].kind for species_id in request.species)}
    for active in part.card.actives:
        if AUXIN in works_of(active):
            near = request.ground.near
            neighbours = near.neighbours if near is not None else None
            yield finding(
                LabelCaution.DRIFTS_FAR,
                about_job(request.job_id),
                part.use.where,
                active=active.active,
                neighbours=neighbours or "not written down.",
            )
        for works in sorted(works_of(active)):
            for kind in sorted(grown & ways_of_working()[works].harms):
                yield finding(
                    LabelCaution.HARMS_WHAT_GROWS,
                    about_job(request.job_id),
                    part.use.where,
                    active=active.active,
                    works=ways_of_working()[works].name,
                    kind=planting_kinds()[kind].lower(),
                )
        for species_id, source in known_to_be_hard_on(active.active):
            if species_id in request.species:
                yield finding(
                    LabelCaution.HARD_ON_SPECIES,
                    about_job(request.job_id),
                    part.use.where,
                    active=active.active,
                    species=species()[species_id].name.lower(),
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
