"""Sprayings planned before another through the same sprayer, whose trace would harm its place."""

import datetime
from collections.abc import Iterable, Iterator, Mapping

from generator.dataclass import dataclass
from generator.inventory.equipment import Sprayer
from generator.inventory.stock import Product
from generator.plan.findings.about_spraying import SprayCaution
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.history import Harm, harm_of
from generator.plan.labels.spray_stops import chosen_products
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.job import JobState
from generator.reference.active_names import ActiveName

# The two that open first: the one that asks may be one of them.
ENOUGH_BEFORE = 2


def tank_before_findings(
    requests: Iterable[JobRequest],
    ever: Iterable[JobRequest],
    states: Mapping[str, JobState],
    products: tuple[Product, ...],
    sprayers: tuple[Sprayer, ...],
) -> Iterator[Finding]:
    """Yield a caution on each spraying before which another may go through its sprayer.

    What is logged already is judged as what the tank held last. Of jobs whose days overlap, or are
    not known, each may be the first.
    """
    ahead = _by_sprayer(
        (request, _products(request, products))
        for request in ever
        if request.step.does.sprays and states[request.job_id].is_ahead
    )
    for mine in requests:
        if not mine.step.does.sprays or states[mine.job_id].is_settled or mine.work is None:
            continue
        going_in = [name for product in _products(mine, products) for name in _actives(product)]
        first = _first_harm(mine, going_in, ahead.get(mine.work.sprayer, {}))
        if first is not None:
            other, product, held = first
            yield finding(
                SprayCaution.CLEAN_OUT_BETWEEN,
                about_job(mine.job_id),
                mine.work.where,
                thing=_sprayer_name(mine, sprayers),
                item=_sprayer_name(mine, sprayers),
                product=product.name,
                held=_why(held),
                or_type=""
                if held.works
                else f"; or type actives: with works_as: on the card of {product.name}",
                other=f"{other.step.name}, {other.ground.name}",
            )


@dataclass(frozen=True, slots=True)
class _Through:
    """A spraying that puts a product through a sprayer, numbered in the order they are told in."""

    number: tuple[int, int]
    other: JobRequest
    product: Product

    @property
    def opens(self) -> datetime.date:
        """Its first day; one that is not known may be any."""
        return self.other.dates.opens or datetime.date.min


def _by_sprayer(
    ahead: Iterable[tuple[JobRequest, list[Product]]],
) -> dict[str | None, dict[str, list[_Through]]]:
    """Return by sprayer and product those sprayings that may be the first to come before another.

    One that opens no sooner than two named before it never is, even where one of them asks.
    """
    found: dict[str | None, dict[str, list[_Through]]] = {}
    for number, (other, products) in enumerate(ahead):
        # without a sprayer it has a stop for that, and no tank to ask about
        if other.work is None or other.work.sprayer is None:
            continue
        by_product = found.setdefault(other.work.sprayer, {})
        for place, product in enumerate(products):
            through = _Through((number, place), other, product)
            before = by_product.setdefault(product.id, [])
            if sum(one.opens <= through.opens for one in before) < ENOUGH_BEFORE:
                before.append(through)
    return found


def _first_harm(
    mine: JobRequest, going_in: list[ActiveName], ahead: Mapping[str, list[_Through]]
) -> tuple[JobRequest, Product, Harm] | None:
    """Return the first spraying that may come before and would harm, with its product and how."""
    firsts = (
        next((one for one in through if _may_come_before(one.other, mine)), None)
        for through in ahead.values()
    )
    for first in sorted(filter(None, firsts), key=lambda one: one.number):
        harm = harm_of(mine, [first.product], going_in)
        if harm is not None:
            return first.other, first.product, harm
    return None


def _why(held: Harm) -> str:
    """Return why what may be in the tank does harm, as sentences."""
    if held.works is None:
        return (
            "How it works is not known from its card, so a trace of it counts as harmful to what "
            "grows on this place."
        )
    return f"It is {held.words}: a trace of it harms what grows on this place."


def _may_come_before(other: JobRequest, mine: JobRequest) -> bool:
    if other.job_id == mine.job_id:
        return False
    opens, closes = other.dates.opens, mine.dates.closes
    # on the same day either may be the first
    return opens is None or closes is None or opens <= closes


def _products(request: JobRequest, products: tuple[Product, ...]) -> list[Product]:
    return [chosen.product for chosen in chosen_products(request, products)]


def _actives(product: Product) -> tuple[ActiveName, ...]:
    return product.label.named_actives if product.label else ()


def _sprayer_name(request: JobRequest, sprayers: tuple[Sprayer, ...]) -> str:
    assert request.work is not None
    return next(sprayer.name for sprayer in sprayers if sprayer.id == request.work.sprayer)
