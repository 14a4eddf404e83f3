"""Spray records of the log, and what they leave out or were late with."""

import datetime
from collections.abc import Iterator, Mapping

from generator.inventory.log import LogEntry
from generator.inventory.places import PlantedGround, Planting
from generator.inventory.schema import Inventory
from generator.plan.findings.about_after import AfterCaution, AfterNote
from generator.plan.findings.order import finding
from generator.plan.jobs.licenses import was_hired
from generator.plan.log.longest import longest_reentry_hours
from generator.plan.log.told import Sprayings, area_of, latest_day, sprayings_of, unsettled
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding, Subject
from generator.plan.model.spray_record import KeepOut, SprayRecord, missing_by_rule, missing_extras
from generator.plan.spraying.tank_log import sprayer_of
from generator.reference.library import planting_kinds, values
from generator.reference.steps import Step
from generator.units import convert
from generator.working import Given, Quantity

_SPRAY = "spray"


def spray_records(
    inventory: Inventory, entries: tuple[LogEntry, ...], areas: Mapping[str, Quantity]
) -> tuple[SprayRecord, ...]:
    """Return the record of every spraying among entries that count, in their order.

    `areas` are the ground of each place, by its id; where none is given, no size is held to it.
    """
    told = sprayings_of(inventory)
    return tuple(
        _record(entry, inventory, entries, told, areas) for entry in entries if told.tells(entry)
    )


def _record(
    entry: LogEntry,
    inventory: Inventory,
    entries: tuple[LogEntry, ...],
    told: Sprayings,
    areas: Mapping[str, Quantity],
) -> SprayRecord:
    place, planting, step = _job(entry, inventory)
    said = entry.sprayed
    people = {person.id: person for person in inventory.applicators}
    applicator = people[said.applicator] if said and said.applicator else None
    typed_site = said.site if said is not None else None
    kind = inventory.plans()[planting.steps].kind if planting is not None else None
    return SprayRecord(
        entry=entry,
        place=place,
        planting=planting,
        step=step,
        products=tuple((told.products[used.item], used) for used in told.used(entry)),
        site=typed_site or (planting_kinds()[kind] if kind else None),
        area=area_of(entry),
        place_ac=areas.get(place.id) if place is not None else None,
        location=place.name if place is not None else (said.location if said else None),
        applicator=applicator,
        who=(applicator.name or applicator.id) if applicator is not None else entry.by,
        # a license number written down that day goes before the one typed of the person now
        licence_number=(said.licence_number if said else None)
        or (applicator.licence_number if applicator is not None else None),
        hired=was_hired(entry, inventory.workers()),
        sprayer_id=sprayer_of(entry, inventory.places()),
        drift_check=_drift_check(entry, place, entries),
        keep_out=_keep_out(entry, told),
    )


def _keep_out(entry: LogEntry, told: Sprayings) -> KeepOut:
    """Return the hours its labels keep people out, and the most there may be where it is open."""
    products = [told.products[product_id] for product_id in told.products_of(entry)]
    entries = [product.label.reentry if product.label is not None else None for product in products]
    # the longest of a mixture counts, so one open card leaves all of it open
    unknown = not products or any(
        reentry is None or reentry.agricultural_hours is None for reentry in entries
    )
    hours = tuple(
        (product.name, reentry.agricultural_hours)
        for product, reentry in zip(products, entries, strict=True)
        if reentry is not None and isinstance(reentry.agricultural_hours, Given)
    )
    longest = longest_reentry_hours(told.products.values()) if unknown else None
    return KeepOut(latest_day(entry), hours, unknown, longest)


def _drift_check(
    entry: LogEntry, place: PlantedGround | None, entries: tuple[LogEntry, ...]
) -> LogEntry | None:
    """Return the first look for drift on the same ground on the day of a spraying or later."""
    where = place.id if place is not None else None
    # a look before the work has seen nothing of its drift, one on its day may have
    later = (log_entry for log_entry in entries if log_entry.done_on >= entry.done_on)
    looked = (look for look in later if look.drift_checked and look.drift_checked.place == where)
    return next(looked, None)


def _job(
    entry: LogEntry, inventory: Inventory
) -> tuple[PlantedGround | None, Planting | None, Step | None]:
    wanted = entry.sprayed.place if entry.sprayed is not None else None
    for place in inventory.places():
        for planting in place.plantings:
            # a job says more than a place: it brings the planting and the step
            if entry.job is not None and entry.job.planting == planting.id:
                steps = inventory.steps_of(planting)
                step = next(step for step in steps if step.id == entry.job.step)
                return place, planting, step
        if place.id == wanted:
            return place, None, None
    return None, None, None


def correction_findings(
    entries: tuple[LogEntry, ...], told: Sprayings, as_of: datetime.date
) -> Iterator[Finding]:
    """Yield a caution on each spraying that a correction leaves counting."""
    still = unsettled(entries, told, as_of)
    for entry in entries:
        # said where it must be mended: on the spraying that still counts
        if entry.id in still:
            subject, by = Subject("entry", entry.id), still[entry.id].id
            yield finding(AfterCaution.CORRECTED_BY_NO_SPRAYING, subject, entry.where, entry=by)


def record_findings(records: tuple[SprayRecord, ...], as_of: datetime.date) -> list[Finding]:
    """Return what spray records leave out, and what was written down or handed over late."""
    return [found for record in records for found in _of_record(record, as_of)]


def _of_record(record: SprayRecord, as_of: datetime.date) -> Iterator[Finding]:
    subject, where = Subject("entry", record.entry.id), record.entry.where
    day = day_words(record.entry.done_on)
    missing = missing_by_rule(record)
    if missing:
        yield finding(AfterCaution.RECORD_GAPS, subject, where, day=day, missing=", ".join(missing))
    days, late = _days("spray_record_days"), _recorded_late(record)
    if late:
        yield finding(
            AfterCaution.RECORDED_LATE, subject, where, day=day, late=late, days=f"{days}"
        )
    owed, given = _days("spray_record_copy_days"), _copy_late(record, as_of)
    if given:
        yield finding(AfterCaution.NO_COPY, subject, where, day=day, late=given, days=f"{owed}")
    extras = missing_extras(record)
    if extras:
        yield finding(AfterNote.RECORD_EXTRAS, subject, where, day=day, missing=", ".join(extras))


def _recorded_late(record: SprayRecord) -> str:
    written = record.entry.recorded_on
    # the federal span to write it down is for restricted use alone
    if not record.restricted or written is None:
        return ""
    took = (written - record.entry.done_on).days
    return f"after {took} days" if took > _days("spray_record_days") else ""


def _copy_late(record: SprayRecord, as_of: datetime.date) -> str:
    if not record.hired:
        return ""
    given = record.entry.sprayed.copy_given_on if record.entry.sprayed is not None else None
    # one that has not come is as late as the plan's day
    took = ((given or as_of) - record.entry.done_on).days
    if took <= _days("spray_record_copy_days"):
        return ""
    return f"its record came after {took} days" if given else "no copy of its record has come"


def _days(name: str) -> int:
    return round(convert(values()[name].value, values()[name].unit, "days"))
