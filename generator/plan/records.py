"""Spray records: what the log says of every spraying, and what a record of it leaves out."""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass

from generator.inventory.label import LabelCard
from generator.inventory.log import LogEntry, Used
from generator.inventory.people import Applicator
from generator.inventory.places import Planting, Screen
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.day_words import day_words
from generator.plan.findings import finding
from generator.plan.licences import is_hired, readers_of
from generator.plan.log import standing
from generator.plan.model import Finding
from generator.plan.reasons import Caution, Note
from generator.reference.load import planting_kinds, values
from generator.reference.steps import Step
from generator.units import convert
from generator.working import Given

SPRAY = "spray"
LOGGED = "log/"
# What is good to have on a record, as the log names it and as a page does.
EXTRAS = (
    ("started_at", "time begun"),
    ("stopped_at", "time ended"),
    ("wind_mph", "wind speed"),
    ("wind_from_deg", "wind direction"),
    ("temperature_f", "temperature"),
    ("humidity_fraction", "humidity"),
    ("sprayer", "sprayer"),
    ("nozzle", "nozzle"),
    ("carrier_gal_per_ac", "spray to an acre"),
    ("weeds", "weeds"),
    ("growth_stage", "how far they were"),
    ("lot_number", "lot number"),
    ("neighbour_told", "whether the neighbour was told"),
)


@dataclass(frozen=True, slots=True)
class SprayRecord:
    """One spraying in the log: what its record says, None or nothing where it is left out."""

    entry: LogEntry
    place: Screen | None
    planting: Planting | None
    step: Step | None
    products: tuple[tuple[Product, Used], ...]
    site: str | None
    area: Given | None
    location: str | None
    applicator: Applicator | None
    who: str | None
    licence_number: str | None
    hired: bool

    @property
    def restricted(self) -> bool:
        """Whether a restricted use product was sprayed, as far as the cards say."""
        return any(one.label is not None and one.label.restricted_use for one, _ in self.products)


def spray_records(inventory: Inventory, entries: tuple[LogEntry, ...]) -> tuple[SprayRecord, ...]:
    """Return the record of every spraying among entries that count, in their order."""
    return tuple(found for one in entries if (found := _record(one, inventory)) is not None)


def _record(entry: LogEntry, inventory: Inventory) -> SprayRecord | None:
    place, planting, step = _job(entry, inventory)
    used = _products(entry, inventory)
    on_a_spray_job = step is not None and step.operation == SPRAY
    told = entry.job is not None and (entry.job.finished or entry.job.area_ac is not None)
    if entry.sprayed is None and not (on_a_spray_job and (used or told)):
        return None
    said = entry.sprayed
    people = {one.id: one for one in inventory.applicators}
    applicator = people[said.applicator] if said and said.applicator else None
    typed_site = said.site if said is not None else None
    kind = inventory.plans()[planting.steps].kind if planting is not None else None
    return SprayRecord(
        entry=entry,
        place=place,
        planting=planting,
        step=step,
        products=used,
        site=typed_site or (planting_kinds()[kind] if kind else None),
        area=_area(entry),
        location=place.name if place is not None else (said.location if said else None),
        applicator=applicator,
        who=(applicator.name or applicator.id) if applicator is not None else entry.by,
        licence_number=(said.licence_number if said else None)
        or (applicator.licence_number if applicator is not None else None),
        hired=entry.job is not None and _is_hired(entry.job.planting, entry.job.step, inventory),
    )


def _job(
    entry: LogEntry, inventory: Inventory
) -> tuple[Screen | None, Planting | None, Step | None]:
    wanted = entry.sprayed.place if entry.sprayed is not None else None
    for screen in inventory.screens:
        for planting in screen.plantings:
            if entry.job is not None and entry.job.planting == planting.id:
                steps = inventory.steps_of(planting)
                step = next(one for one in steps if one.id == entry.job.step)
                return screen, planting, step
        if screen.id == wanted:
            return screen, None, None
    return None, None, None


def _products(entry: LogEntry, inventory: Inventory) -> tuple[tuple[Product, Used], ...]:
    by_id = {one.id: one for one in inventory.products}
    return tuple((by_id[one.item], one) for one in entry.used if one.item in by_id)


def _area(entry: LogEntry) -> Given | None:
    if entry.job is not None:
        return entry.job.area_ac
    return entry.sprayed.treated_ac if entry.sprayed is not None else None


def _is_hired(planting: str, step: str, inventory: Inventory) -> bool:
    return bool(readers_of(planting, step, inventory)) or is_hired(planting, step, inventory)


def missing_by_rule(one: SprayRecord) -> tuple[str, ...]:
    """Return what the record leaves out of what federal rules ask for (source cfr_110_3)."""
    cards = [product.label for product, _ in one.products]
    wanted = (
        ("product and the amount used", bool(one.products)),
        ("EPA registration number", all(_has_number(card) for card in cards)),
        ("location", one.location is not None),
        ("size of the ground", one.area is not None or _is_small_spot(one)),
        ("crop or site", one.site is not None),
        ("who sprayed", one.who is not None),
        ("number of the licence", one.licence_number is not None or not one.restricted),
    )
    return tuple(name for name, there in wanted if not there)


def _has_number(card: LabelCard | None) -> bool:
    return card is not None and bool(card.epa_reg_no)


def _is_small_spot(one: SprayRecord) -> bool:
    """Whether it was spots, for which the rules ask no size where they are small together."""
    said = one.entry.sprayed
    most = values()["spot_record_ac"].value
    return bool(said and said.spot) and (one.area is None or one.area.value < most)


def missing_extras(one: SprayRecord) -> tuple[str, ...]:
    """Return what the record leaves out of what is good to have."""
    said = one.entry.sprayed
    return tuple(words for name, words in EXTRAS if said is None or getattr(said, name) is None)


def record_findings(
    inventory: Inventory, entries: tuple[LogEntry, ...], as_of: datetime.date
) -> list[Finding]:
    """Return what spray records leave out, and what was written down or handed over late."""
    return [found for one in spray_records(inventory, entries) for found in _of_record(one, as_of)]


def _of_record(one: SprayRecord, as_of: datetime.date) -> Iterator[Finding]:
    subject, where = f"{LOGGED}{one.entry.id}", one.entry.where
    day = day_words(one.entry.done_on)
    missing = missing_by_rule(one)
    if missing:
        yield finding(Caution.RECORD_GAPS, subject, where, day=day, missing=", ".join(missing))
    days, late = _days("spray_record_days"), _recorded_late(one)
    if late:
        yield finding(Caution.RECORDED_LATE, subject, where, day=day, late=late, days=f"{days}")
    owed, given = _days("spray_record_copy_days"), _copy_late(one, as_of)
    if given:
        yield finding(Caution.NO_COPY, subject, where, day=day, late=given, days=f"{owed}")
    extras = missing_extras(one)
    if extras:
        yield finding(Note.RECORD_EXTRAS, subject, where, day=day, missing=", ".join(extras))


def _recorded_late(one: SprayRecord) -> str:
    written = one.entry.recorded_on
    if not one.restricted or written is None:
        return ""
    took = (written - one.entry.done_on).days
    return f"after {took} days" if took > _days("spray_record_days") else ""


def _copy_late(one: SprayRecord, as_of: datetime.date) -> str:
    if not one.hired:
        return ""
    given = one.entry.sprayed.copy_given_on if one.entry.sprayed is not None else None
    took = ((given or as_of) - one.entry.done_on).days
    if took <= _days("spray_record_copy_days"):
        return ""
    return f"its record came after {took} days" if given else "no copy of its record has come"


def _days(name: str) -> int:
    return round(convert(values()[name].value, values()[name].unit, "days"))


def records_until(inventory: Inventory, as_of: datetime.date) -> tuple[SprayRecord, ...]:
    """Return the records of entries that count on a day."""
    return spray_records(inventory, standing(inventory.entries, as_of))
