"""Ground that is sprayed where it is not the whole place, and mixes stated in percent."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from generator.compute import dose
from generator.inventory.fields import Where
from generator.inventory.label import LabelCard, Use
from generator.inventory.places import PlantedGround, Work
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.findings.about_spraying import SprayCaution, SprayStop
from generator.plan.findings.order import finding
from generator.plan.findings.words import Stop
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.clearance import cleared_use
from generator.plan.labels.distances import listed_setbacks, longest_kept
from generator.plan.labels.history import works_of
from generator.plan.labels.rates import ROUNDING
from generator.plan.labels.spray_stops import Chosen, asked_of_label, chosen_products
from generator.plan.land.kept_kinds import EDGE_DOUBT_TIMES, edge_words
from generator.plan.land.kept_off import GroundLeft, all_left, ground_left
from generator.plan.land.kept_things import Around, Lies, around, near_to
from generator.plan.land.off_points import off_ft
from generator.plan.model.finding import Finding, about_job
from generator.working import Quantity

RESIDUAL = {"soil_residual", "sulfonylurea"}


def left_to_spray(requests: Iterable[JobRequest], inventory: Inventory) -> dict[str, GroundLeft]:
    """Return what labels leave of the ground of each spraying, by the id of its job."""
    land, farthest_ft = around(inventory), _farthest_ft(inventory.products)
    near: dict[str, Around] = {}
    found: dict[str, GroundLeft] = {}
    for request in requests:
        if not request.step.does.sprays:
            continue
        ground = request.ground
        if ground.id not in near:
            within_ft = EDGE_DOUBT_TIMES * (farthest_ft + off_ft(ground).value)
            near[ground.id] = replace(land, things=_within(ground, land, within_ft))
        found[request.job_id] = _left_of(request, inventory.products, near[ground.id])
    return found


def _farthest_ft(products: Iterable[Product]) -> float:
    """Return the longest distance that any card keeps the spray from anything."""
    uses = (use for product in products if product.label for use in product.label.uses)
    kept = (setback for use in uses for setback in listed_setbacks(use.setbacks_ft))
    return max((setback.distance_ft.value for setback in kept), default=0.0)


def _within(ground: PlantedGround, land: Around, within_ft: float) -> tuple[Lies, ...]:
    most_off_ft = max((lies.off.value for lies in land.things), default=0.0)
    return near_to(ground, land.things, within_ft + EDGE_DOUBT_TIMES * most_off_ft)


def _left_of(request: JobRequest, products: tuple[Product, ...], land: Around) -> GroundLeft:
    """Return what the labels in the tank of a job leave of its place, as far as it is cleared."""
    uses = [use for use in _uses_in_tank(request, products) if isinstance(use, Use)]
    kept = longest_kept(setback for use in uses for setback in listed_setbacks(use.setbacks_ft))
    if not kept:
        return all_left(request.ground, request.area)
    return ground_left(request.job_id, request.ground, request.area, kept, land)


def _uses_in_tank(request: JobRequest, products: tuple[Product, ...]) -> Iterator[Use | Stop]:
    for chosen in chosen_products(request, products):
        if chosen.product.label is not None:
            yield cleared_use(chosen.product.label, asked_of_label(request))


def treated(request: JobRequest, left: GroundLeft | None = None) -> Quantity:
    """Return what a job treats: what was measured, else what is left of the place, else all."""
    measured = request.work.treated_sq_ft if request.work else None
    if measured is None:
        return left.ground if left is not None else request.area
    return dose.TREATED(f"{request.job_id}/treated_ac", treated_sq_ft=measured)


def treated_stops(request: JobRequest, left: GroundLeft) -> Iterator[Finding]:
    """Yield a stop for ground that is not measured, more than there is, or that none is left of."""
    work = request.work
    if work is None:
        return
    job = about_job(request.job_id)
    if work.method == "spot" and work.treated_sq_ft is None:
        yield finding(SprayStop.NO_TREATED_GROUND, job, work.where)
    if treated(request).value > request.area.value * (1 + ROUNDING):
        yield finding(SprayStop.MORE_THAN_THE_PLACE, job, work.where)
        return
    yield from _left_stops(request, left, work)


def _left_stops(request: JobRequest, left: GroundLeft, work: Work) -> Iterator[Finding]:
    """Yield a stop where labels leave none of the place, less than is meant, or nobody can say."""
    job = about_job(request.job_id)
    for doubt in left.in_doubt:
        counted = edge_words(doubt.setback.counts_from)
        yield finding(
            SprayStop.EDGE_IN_DOUBT,
            job,
            doubt.where,
            (("The label keeps", doubt.setback.distance_ft),),
            item=doubt.thing,
            counted=counted,
            measured=edge_words(doubt.measured) or "an edge that is not named",
            edge=str(doubt.setback.counts_from),
        )
    if left.needs_width is not None:
        yield finding(SprayStop.NO_WIDTH_TO_LEAVE_OUT, job, left.needs_width.where)
    lost = tuple((one.name, one.lost) for one in left.kept_off)
    things = ", ".join(dict.fromkeys(one.name for one in left.kept_off))
    if left.is_none:
        yield finding(SprayStop.NOTHING_LEFT, job, request.ground.where, lost, things=things)
    elif treated(request, left).value > left.ground.value * (1 + ROUNDING):
        figures = (("Meant to be sprayed", treated(request, left)), ("Left", left.ground), *lost)
        yield finding(SprayStop.MORE_THAN_IS_LEFT, job, work.where, figures, things=things)


def left_cautions(request: JobRequest, where: Where, left: GroundLeft) -> Iterator[Finding]:
    """Yield what is left out, and that nothing is set back from what nobody says where it lies."""
    job = about_job(request.job_id)
    if left.kept_off:
        things = ", ".join(dict.fromkeys(one.name for one in left.kept_off))
        figures = (("Left to spray", left.ground), *((one.name, one.lost) for one in left.kept_off))
        yield finding(SprayCaution.LEFT_OUT, job, request.ground.where, figures, things=things)
    if left.not_told:
        words = ", ".join(setback.words for setback in left.not_told)
        yield finding(SprayCaution.NOTHING_SET_BACK, job, where, kept=words)


def spot_stops(request: JobRequest, chosen: Chosen, card: LabelCard) -> Iterator[Finding]:
    """Yield a stop for a percent mix of what works through the soil, or may."""
    if chosen.typed.mix_fraction is None:
        return
    for active in card.actives:
        works = works_of(active)
        # wetted by eye an acre may get far more than was meant, and this stays in the soil
        if not works or RESIDUAL & works:
            name = chosen.product.name
            yield finding(
                SprayStop.PERCENT_OF_RESIDUAL, about_job(request.job_id), chosen.where, product=name
            )
            return
