"""What was and will be sprayed on a place, with the uses of the cards it may rest on."""

import datetime
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from generator.dataclass import dataclass
from generator.inventory.label import ActiveStrength, Use
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.clearance import matching_uses
from generator.plan.labels.history import works_of
from generator.plan.labels.spray_stops import asked_of_label, chosen_products
from generator.plan.log.done import entries_on, finished_on
from generator.plan.log.told import Sprayings, latest_day, sprayings_of
from generator.plan.model.counts import Spraying

NOT_TYPED = "a product that is not typed"
UP_TO_SOWING = ("before_sowing", "at_sowing")


@dataclass(frozen=True, slots=True)
class Residue:
    """A spraying with its product and the uses of the card it may rest on.

    `timing` is that of its step, and `job_id` its job's; both empty where it is none of a plan.
    `matched` says that these uses are the job's own: without one it is stopped itself. `places` are
    those it was or may have been on, and `nowhere` that the log names none of them.
    """

    spraying: Spraying
    product: Product | None
    uses: tuple[Use, ...]
    timing: str = ""
    job_id: str = ""
    matched: bool = False
    places: frozenset[str] = frozenset()
    nowhere: bool = False

    @property
    def after_sowing(self) -> bool:
        """Whether its step comes after the sowing of its own planting."""
        return self.timing not in ("", *UP_TO_SOWING)


def residues(
    ever: Iterable[JobRequest],
    inventory: Inventory,
    entries: tuple[LogEntry, ...],
    grounds: Mapping[str, frozenset[str]],
) -> tuple[Residue, ...]:
    """Return every spraying logged, and every planned one that the log does not say is finished.

    `grounds` are the places on whose ground each place lies: a spraying is on all of them, and one
    that names no place may be on any.
    """
    told = sprayings_of(inventory)
    jobs = [request for request in ever if request.step.does.sprays]
    planned = [request for request in jobs if finished_on(entries_on(request, entries)) is None]
    found = [
        *(
            residue
            for entry in entries
            if told.tells(entry)
            for residue in _logged(entry, jobs, told)
        ),
        *(
            # it may come on the last of its open days, and waits are counted from there
            _residue(
                request, chosen.product, request.dates.opens, request.dates.closes, logged=False
            )
            for request in planned
            for chosen in chosen_products(request, inventory.products)
        ),
    ]
    return tuple(
        _at(residue, place_id) for residue in found for place_id in sorted(_where(residue, grounds))
    )


def _where(residue: Residue, grounds: Mapping[str, frozenset[str]]) -> frozenset[str]:
    places = residue.places or {residue.spraying.place_id}
    return frozenset().union(*(grounds[place] for place in places))


def _at(residue: Residue, place_id: str) -> Residue:
    return replace(residue, spraying=replace(residue.spraying, place_id=place_id))


def sprayed_nowhere(inventory: Inventory, entries: tuple[LogEntry, ...]) -> tuple[LogEntry, ...]:
    """Return the sprayings in the log that are on no place, or name none."""
    told = sprayings_of(inventory)
    return tuple(entry for entry in entries if told.tells(entry) and told.place_of(entry) is None)


def _logged(entry: LogEntry, jobs: list[JobRequest], told: Sprayings) -> Iterator[Residue]:
    named = told.products_of(entry)
    # a spraying of nothing known is one to ask about, not one to leave out
    products: list[Product | None] = [told.products[product_id] for product_id in named] or [None]
    about = (entry.job.planting, entry.job.step) if entry.job is not None else ("", "")
    asked = next(
        (request for request in jobs if (request.planting.id, request.step.id) == about), None
    )
    places = told.places_of(entry)
    nowhere = told.place_of(entry) is None and entry.unknown is None
    # no places: by the owner's words it was on other ground
    for product in products if places else ():
        if asked is None:
            found = _by_hand(about, product, entry.done_on, latest_day(entry))
        else:
            found = _residue(asked, product, entry.done_on, latest_day(entry), logged=True)
        yield replace(found, places=places, nowhere=nowhere)


def _by_hand(
    about: tuple[str, str],
    product: Product | None,
    first: datetime.date,
    last: datetime.date,
) -> Residue:
    """Return a spraying that is no spray job of a step plan: any use of the card may be its."""
    planting, step = about
    spraying = Spraying(
        "",
        planting,
        step,
        step.replace("_", " ").capitalize() or "Sprayed outside a step plan",
        product.id if product is not None else "",
        product.name if product is not None else NOT_TYPED,
        logged=True,
        first=first,
        last=last,
        works=_works(product),
    )
    uses = product.label.uses if product is not None and product.label is not None else ()
    return Residue(spraying, product, uses)


def _residue(
    request: JobRequest,
    product: Product | None,
    first: datetime.date | None,
    last: datetime.date | None,
    *,
    logged: bool,
) -> Residue:
    card = product.label if product is not None else None
    matching = matching_uses(card, asked_of_label(request)) if card and request.work else ()
    spraying = Spraying(
        place_id=request.ground.id,
        planting_id=request.planting.id,
        step_id=request.step.id,
        step_name=request.step.name,
        product_id=product.id if product is not None else "",
        product_name=product.name if product is not None else NOT_TYPED,
        logged=logged,
        first=first,
        last=last,
        works=_works(product),
    )
    return Residue(
        spraying,
        product,
        # where none fits the job, any of them may be what it was sprayed by
        matching or (card.uses if card is not None else ()),
        request.step.timing,
        request.job_id,
        matched=bool(matching),
    )


def _works(product: Product | None) -> tuple[str, ...]:
    """Return how the actives of a product work; nothing where that of one is not known."""
    works = [works_of(active) for active in _actives(product)]
    # told in part, the way that is not known would pass for none
    return tuple(sorted(frozenset().union(*works))) if all(works) else ()


def _actives(product: Product | None) -> tuple[ActiveStrength, ...]:
    return product.label.actives if product is not None and product.label is not None else ()
