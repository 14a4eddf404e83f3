"""What was and will be sprayed on a place, and how long each label asks to wait to sow there."""

import datetime
import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from generator.inventory.label import ActiveStrength, CropDays, Use
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.asked import JobAsked
from generator.plan.clearance import matching_uses
from generator.plan.decided import Earliest, PlaceWaits, Spraying
from generator.plan.done import entries_on, finished_on
from generator.plan.history import works_of
from generator.plan.spray_stops import asked_of_label
from generator.plan.spraying import chosen_products
from generator.reference.load import planting_kinds, species
from generator.working import Given

SPRAY = "spray"
LASTING = "soil_residual"
UP_TO_SOWING = ("before_sowing", "at_sowing")
# A use at one of these times is for ground on which the planting is being sown.
ESTABLISHING = ("before_sowing", "at_sowing", "after_sowing_before_emergence")


@dataclass(frozen=True, slots=True)
class Residue:
    """A spraying with its product and the uses of the card it may rest on."""

    spraying: Spraying
    product: Product | None
    uses: tuple[Use, ...]
    after_sowing: bool


@dataclass(frozen=True, slots=True)
class Wait:
    """What a card asks for: days, or none where `days` is None; `unknown` says what is missing."""

    days: Given | None = None
    unknown: str = ""


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is to be sown: the kinds it makes and its species, none where any of the kind."""

    kinds: frozenset[str]
    species: tuple[str, ...] = ()


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
    return Residue(spraying, product, uses, after_sowing=False)


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
        after_sowing=asked.step.timing not in UP_TO_SOWING,
    )


def wait_of(residue: Residue, wanted: Wanted) -> Wait:
    """Return the longest wait the card's uses ask for, or what is not known of one of them."""
    product = residue.product
    name = residue.spraying.product_name
    if product is None:
        return Wait(unknown=f"{residue.spraying.step_name}: {name}. Type used: with the product.")
    if not residue.uses:
        return Wait(unknown=f"The label card of {name} has no uses. Type them from the label.")
    waits = [_wait_of_use(one, wanted, product) for one in residue.uses]
    unknown = next((one for one in waits if one.unknown), None)
    if unknown is not None:
        return unknown
    return max(waits, key=lambda one: one.days.value if one.days is not None else -1)


def _wait_of_use(use: Use, wanted: Wanted, product: Product) -> Wait:
    covered = _covers(use, wanted)
    interval = use.seeding_interval_days if covered else "not_on_label"
    listed = use.plant_back_days
    missing = [
        name
        for name, value in (("seeding_interval_days", interval), ("plant_back_days", listed))
        if value is None or value == ()
    ]
    if missing:
        told = ", ".join(missing)
        return Wait(
            unknown=f"The label card of {product.name}, use {use.site_words}, leaves out: {told}."
        )
    days = [interval] if isinstance(interval, Given) else []
    establishing = covered and use.timing in ESTABLISHING
    if isinstance(listed, tuple):
        days += _crop_days(listed, wanted, instead=not days and not establishing)
    if days:
        return Wait(max(days, key=lambda one: one.value))
    if not establishing and _may_last(product):
        return Wait(
            unknown=f"{product.name} works through the soil, or its card does not say how it "
            "works, and the card says plant_back_days: not_on_label. Read the label again; ask "
            "its maker or an extension office."
        )
    return Wait()


def _covers(use: Use, wanted: Wanted) -> bool:
    covers = use.covers
    if covers is None or not wanted.kinds <= set(covers.kinds):
        return False
    if "any" in covers.species:
        return True
    return bool(wanted.species) and set(wanted.species) <= set(covers.species)


def _crop_days(listed: tuple[CropDays, ...], wanted: Wanted, *, instead: bool) -> list[Given]:
    """Return the days of crops that are meant; of a kind that is not listed, the longest.

    The longest stands only `instead` of a use or an interval for the planting itself.
    """
    days: list[Given] = []
    for kind in sorted(wanted.kinds):
        names = {planting_kinds()[kind].casefold()}
        names |= {
            species()[one].name.casefold() for one in wanted.species if species()[one].kind == kind
        }
        meant = [one.wait_days for one in listed if one.crop.strip().casefold() in names]
        if meant or not instead:
            days += meant
        else:
            days.append(max((one.wait_days for one in listed), key=lambda one: one.value))
    return days


def _may_last(product: Product) -> bool:
    works = [works_of(one) for one in _actives(product)]
    return not works or any(not one or LASTING in one for one in works)


def _works(product: Product | None) -> tuple[str, ...]:
    """Return how the actives of a product work; nothing where that of one is not known."""
    works = [works_of(one) for one in _actives(product)]
    return tuple(sorted(frozenset().union(*works))) if all(works) else ()


def _actives(product: Product | None) -> tuple[ActiveStrength, ...]:
    return product.label.actives if product is not None and product.label is not None else ()


def place_waits(inventory: Inventory, all_residues: tuple[Residue, ...]) -> tuple[PlaceWaits, ...]:
    """Return for every place what was and will be sprayed, and the first day for every kind."""
    return tuple(_place_waits(place.id, all_residues) for place in inventory.places())


def _place_waits(place_id: str, all_residues: tuple[Residue, ...]) -> PlaceWaits:
    here = [one for one in all_residues if one.spraying.place_id == place_id]
    here.sort(key=lambda one: (one.spraying.last or datetime.date.max, one.spraying.product_id))
    logged = [one for one in here if one.spraying.logged]
    return PlaceWaits(
        place_id,
        tuple(one.spraying for one in here),
        tuple(earliest(kind, logged) for kind in planting_kinds()),
        tuple(earliest(kind, here) for kind in planting_kinds()),
    )


def earliest(kind: str, sprayed: Iterable[Residue]) -> Earliest:
    """Return the first day a kind may be sown after these sprayings, as far as cards tell."""
    wanted = Wanted(frozenset({kind}))
    found: list[tuple[datetime.date, Spraying, Given]] = []
    unknown: list[str] = []
    for one in sprayed:
        wait = wait_of(one, wanted)
        if wait.unknown:
            unknown.append(wait.unknown)
        elif wait.days is not None and one.spraying.last is None:
            unknown.append(f"{one.spraying.step_name}: its open dates are not known.")
        elif wait.days is not None and one.spraying.last is not None:
            found.append((day_after(one.spraying.last, wait.days), one.spraying, wait.days))
    day, by, asked = max(found, key=lambda one: one[0], default=(None, None, None))
    if unknown:
        return Earliest(kind, None, None, None, tuple(dict.fromkeys(unknown)))
    return Earliest(kind, day, by, asked, ())


def day_after(sprayed_on: datetime.date, wait: Given) -> datetime.date:
    """Return the first day on which so many whole days have passed, or the last there is."""
    last = (datetime.date.max - sprayed_on).days
    return sprayed_on + datetime.timedelta(days=min(math.ceil(wait.value), last))
