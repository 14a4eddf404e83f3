"""What a tank held before, and whether a trace of it would harm what grows on the place."""

import datetime
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from generator.dataclass import dataclass
from generator.inventory.equipment import Sprayer
from generator.inventory.label import ActiveStrength
from generator.inventory.stock import Product
from generator.plan.findings.about_labels import LabelStop
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import Finding, about_job
from generator.reference.active_names import ActiveName, alike, works_known
from generator.reference.library import WayOfWorking, species, ways_of_working

UNKNOWN = "unknown"
_STANDING = ("seedlings", "established_dormant", "established_growing")


@dataclass(frozen=True, slots=True)
class Harm:
    """What a tank held that harms, in words, and the source that says so.

    `works` is the way it works; None where that is not known.
    """

    words: str
    source: str
    works: str | None = None


def works_of(active: ActiveStrength) -> frozenset[str]:
    """Return what an active does, as typed and as known of its name; empty where neither says."""
    return frozenset(active.works_as) | works_known(active.active)


def tank_stops(
    request: JobRequest,
    sprayer: Sprayer,
    products: tuple[Product, ...],
    going_in: Sequence[ActiveStrength],
) -> Iterator[Finding]:
    """Yield a stop where a tank may hold a trace that harms what stands or is sown on the place.

    What is not known of a tank counts as harmful. What the job itself sprays there is judged by
    its label, not here.
    """
    last, closes = sprayer.last_load, request.dates.closes
    if last is None:
        if not (sprayer.new or _is_clean(sprayer.cleaned_out_on, None, closes)):
            item = sprayer.name
            yield finding(
                LabelStop.NO_TANK_HISTORY, about_job(request.job_id), sprayer.where, item=item
            )
        return
    if _is_clean(last.cleaned_out_on, last.sprayed_on, closes):
        return
    held = [product for product in products if product.id in last.product]
    names = tuple(active.named for active in going_in)
    harm = harm_of(request, held, names, last.works_as, unknown=last.unknown is True)
    if harm is not None:
        known = harm.works is not None
        found = finding(
            LabelStop.TANK_NOT_CLEANED,
            about_job(request.job_id),
            last.where,
            held=f"{sprayer.name} held {harm.words} last"
            if known
            else f"It is not known how that works which {sprayer.name} held last",
            trace="A trace of it harms" if known else "So a trace of it counts as harmful to",
        )
        yield replace(found, source=harm.source)


def _is_clean(
    cleaned: datetime.date | None, loaded: datetime.date | None, closes: datetime.date | None
) -> bool:
    """Whether the tank is clean on a job's last day: a later clean-out does that job no good."""
    # typed for the day of the load, a clean-out is after it: what was sprayed is cleaned out
    if cleaned is None or (loaded is not None and cleaned < loaded):
        return False
    return closes is None or cleaned <= closes


def harm_of(
    request: JobRequest,
    held: Sequence[Product],
    going_in: Sequence[ActiveName],
    works_as: Iterable[str] = (),
    *,
    unknown: bool = False,
) -> Harm | None:
    """Return how what a tank held would harm what grows on a job's place, None where it would not.

    `going_in` are the actives the job sprays itself; `works_as` is what is said of a load whose
    product is not listed. A load of which something is not known counts as harmful.
    """
    grown = {request.kind, *(species()[species_id].kind for species_id in request.species)}
    again = _products_of(request)
    # sorted: the same tank is told in the same words every time, and what is unknown comes last
    for works in sorted(_harmful(held, again, going_in, works_as, unknown=unknown)):
        if works == UNKNOWN:
            return Harm("what is not known", LabelStop.TANK_NOT_CLEANED.value.source)
        way = ways_of_working()[works]
        if grown & _harmed(way, request.step.timing):
            return Harm(way.name, way.source, works)
    return None


def _harmed(way: WayOfWorking, timing: str) -> frozenset[str]:
    """Return the kinds that a trace harms: as they stand, or where they are still to come up."""
    return way.trace_standing if timing in _STANDING else way.trace_seed


def _products_of(request: JobRequest) -> frozenset[str]:
    """Return the ids of the products that a job puts into the tank itself."""
    work = request.work
    if work is None or work.product is None:
        return frozenset()
    return frozenset({work.product, *(partner.product for partner in work.partners)})


def _harmful(
    held: Sequence[Product],
    again: frozenset[str],
    going_in: Sequence[ActiveName],
    works_as: Iterable[str],
    *,
    unknown: bool,
) -> frozenset[str]:
    """Return the ways in which what was in the tank works, without what goes in again."""
    harmful = set(works_as)
    # a product is itself, whether its card says what is in it or not
    others = [product for product in held if product.id not in again]
    for product in others:
        for active in product.label.actives if product.label is not None else ():
            # a name that is only near may be of another active, so its trace counts
            if not any(alike(active.named, name) == "same" for name in going_in):
                harmful |= works_of(active) or {UNKNOWN}
    known = [product for product in others if product.label is not None and product.label.actives]
    # a load that names neither a product nor how it works held something all the same
    if unknown or len(known) < len(others) or not (harmful or held):
        harmful.add(UNKNOWN)
    return frozenset(harmful)
