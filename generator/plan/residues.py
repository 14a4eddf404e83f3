"""What was and will be sprayed on a place, with the uses of the cards it may rest on."""

import datetime
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from generator.inventory.label import ActiveStrength, Use
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.asked import JobAsked
from generator.plan.clearance import matching_uses
from generator.plan.decided import Spraying
from generator.plan.done import entries_on, finished_on
from generator.plan.history import works_of
from generator.plan.spray_stops import asked_of_label
from generator.plan.spraying import chosen_products

SPRAY = "spray"
UP_TO_SOWING = ("before_sowing", "at_sowing")


@dataclass(frozen=True, slots=True)
class Residue:
    """A spraying with its product and the uses of the card it may rest on.

    `timing` is that of its step, and `job_id` its job's; both empty where it is none of a plan.
    `matched` says that these uses are the job's own: without one it is stopped itself.
    """

    spraying: Spraying
    product: Product | None
    uses: tuple[Use, ...]
    timing: str = ""
    job_id: str = ""
    matched: bool = False

    @property
    def after_sowing(self) -> bool:
        """Whether its step comes after the sowing of its own planting."""
        return self.timing not in ("", *UP_TO_SOWING)


def residues(
    ever: Iterable[JobAsked], inventory: Inventory, entries: tuple[LogEntry, ...]
) -> tuple[Residue, ...]:
    """Return every spraying logged, and every planned one that the log does not say is finished."""
    jobs = [one for one in ever if one.step.operation == SPRAY]
    planned = [one for one in jobs if finished_on(entries_on(one, entries)) is None]
    return (
        *(residue for entry in entries for residue in _logged(entry, jobs, inventory)),
        *(
            _residue(one, chosen.product, None)
            for one in planned
            for chosen in chosen_products(one, inventory)
        ),
    )


def sprayed_nowhere(inventory: Inventory, entries: tuple[LogEntry, ...]) -> tuple[LogEntry, ...]:
    """Return the log entries that used a herbicide and name neither a job nor a place."""
    products = {one.id for one in inventory.products}
    return tuple(
        one
        for one in entries
        if one.job is None
        and (one.sprayed is None or one.sprayed.place is None)
        and any(used.item in products for used in one.used)
    )


def _logged(entry: LogEntry, jobs: list[JobAsked], inventory: Inventory) -> Iterator[Residue]:
    by_id = {one.id: one for one in inventory.products}
    used = [by_id[one.item] for one in entry.used if one.item in by_id]
    about = (entry.job.planting, entry.job.step) if entry.job is not None else ("", "")
    asked = next((one for one in jobs if (one.planting.id, one.step.id) == about), None)
    if asked is None:
        place = _place_of(entry, inventory)
        if place is not None:
            yield from (_by_hand(place, about, one, entry.done_on) for one in used)
        return
    chosen = [one.product for one in chosen_products(asked, inventory)]
    products: list[Product | None] = [*(used or chosen)]
    for product in products or [None]:
        yield _residue(asked, product, entry.done_on)


def _place_of(entry: LogEntry, inventory: Inventory) -> str | None:
    """Return the place of an entry's job, else the place it says was sprayed."""
    if entry.job is None:
        return entry.sprayed.place if entry.sprayed is not None else None
    plantings = {one.id: place.id for place in inventory.places() for one in place.plantings}
    return plantings[entry.job.planting]


def _by_hand(
    place_id: str, about: tuple[str, str], product: Product, day: datetime.date
) -> Residue:
    """Return a spraying that is no spray job of a step plan: any use of the card may be its."""
    planting, step = about
    spraying = Spraying(
        place_id,
        planting,
        step,
        step.replace("_", " ").capitalize() or "Sprayed outside a step plan",
        product.id,
        product.name,
        logged=True,
        first=day,
        last=day,
        works=_works(product),
    )
    uses = product.label.uses if product.label is not None else ()
    return Residue(spraying, product, uses)


def _residue(asked: JobAsked, product: Product | None, day: datetime.date | None) -> Residue:
    card = product.label if product is not None else None
    matching = matching_uses(card, asked_of_label(asked)) if card and asked.work else ()
    spraying = Spraying(
        place_id=asked.ground.id,
        planting_id=asked.planting.id,
        step_id=asked.step.id,
        step_name=asked.step.name,
        product_id=product.id if product is not None else "",
        product_name=product.name if product is not None else "a product that is not typed",
        logged=day is not None,
        first=day or asked.dates.opens,
        last=day or asked.dates.closes,
        works=_works(product),
    )
    return Residue(
        spraying,
        product,
        matching or (card.uses if card is not None else ()),
        asked.step.timing,
        asked.job_id,
        matched=bool(matching),
    )


def _works(product: Product | None) -> tuple[str, ...]:
    """Return how the actives of a product work; nothing where that of one is not known."""
    works = [works_of(one) for one in _actives(product)]
    return tuple(sorted(frozenset().union(*works))) if all(works) else ()


def _actives(product: Product | None) -> tuple[ActiveStrength, ...]:
    return product.label.actives if product is not None and product.label is not None else ()
