"""Stops, cautions and notes of the calendar: quiet, hunting, nesting, burn bans, re-entry."""

import datetime
from collections.abc import Iterator

from generator.inventory.dates import HUNTED, DateRange
from generator.inventory.fields import Where
from generator.inventory.schema import Inventory, Reader
from generator.inventory.stock import Product
from generator.plan.days.contracts import allows_in_nesting, is_contract_land
from generator.plan.findings.about_days import DayCaution, DayNote, DayStop
from generator.plan.findings.order import finding
from generator.plan.jobs.job_days import days_left, days_of_job, taken_by
from generator.plan.jobs.licenses import readers_of
from generator.plan.model.days import (
    Span,
    day_words,
    days_left_of,
    days_of,
    first_record,
    in_words,
    joined,
    last_day_kept_out,
)
from generator.plan.model.finding import Finding, Subject, about_job
from generator.plan.model.job import Job
from generator.working import Given

NESTS = ("nesting", "fawning")
# Why a residual waits for rain (common practice).
_RESIDUAL_DRY = "With no rain in sight a residual lies on top and is lost."
LOOKED_UP = ("hunting", "turkey", "fawning", "nesting", "burn_ban")


def day_findings(jobs: list[Job], inventory: Inventory, as_of: datetime.date) -> list[Finding]:
    """Return what the dates of the property folder say against jobs still to be done."""
    found: list[Finding] = [
        finding(DayNote.NOT_LOOKED_UP, Subject("dates", dates.id), dates.where, dates=dates.id)
        for dates in inventory.dates
        if dates.kind in LOOKED_UP and dates.looked_up_on is None
    ]
    for job in jobs:
        span = days_left(job, as_of)
        if job.state.is_settled or span is None:
            continue
        found += _quiet(job, inventory.dates, span)
        found += _burn_bans(job, inventory.dates, span, as_of)
        found += _dry(job, inventory.dates, span)
        found += _hunting(job, inventory.dates, inventory.readers, span)
        found += _nesting(job, inventory, span, as_of)
        found += _reentry(job, inventory.products, inventory.dates, span)
    return found


def _typed_at(
    dates: tuple[DateRange, ...], kinds: tuple[str, ...], job: Job, span: Span
) -> Where | None:
    record = first_record(dates, kinds, job.place_id, span)
    return record.where if record is not None else None


def _quiet(job: Job, dates: tuple[DateRange, ...], span: Span) -> Iterator[Finding]:
    quiet = days_of(dates, ("quiet",), job.place_id, span)
    if not quiet:
        return
    days = days_of_job(dates, job.step, job.place_id, span)
    where = _typed_at(dates, ("quiet",), job, span)
    if not days_left_of(span, quiet):
        yield finding(DayCaution.ALL_QUIET, about_job(job.id), where, days=in_words(quiet))
    elif days.left:
        # what all dates leave, not the quiet ones alone: a day under a ban is none to work on
        last = days.last_before
        cure = (
            f"The last day to do it before they begin is {day_words(last)}."
            if last is not None
            else f"Do it from {day_words(days.left[0][0])} on."
        )
        yield finding(
            DayNote.PART_QUIET, about_job(job.id), where, left=in_words(days.left), cure=cure
        )


def _burn_bans(
    job: Job, dates: tuple[DateRange, ...], span: Span, as_of: datetime.date
) -> Iterator[Finding]:
    if "burn_ban" not in taken_by(job.step):
        return
    banned = days_of(dates, ("burn_ban",), job.place_id, span)
    where = _typed_at(dates, ("burn_ban",), job, span)
    today = days_of(dates, ("burn_ban",), job.place_id, (as_of, as_of))
    # in force on the plan's day it is a stop, whatever is left: the book is read today
    if banned and (today or not days_left_of(span, banned)):
        yield finding(DayStop.BURN_BANNED, about_job(job.id), where, days=in_words(banned))
    elif banned:
        yield finding(DayCaution.BAN_IN_PART, about_job(job.id), where, days=in_words(banned))


def _dry(job: Job, dates: tuple[DateRange, ...], span: Span) -> Iterator[Finding]:
    """Yield a caution where a dry spell holds a job back, with why it does that kind of work."""
    dry = days_of(dates, ("dry_spell",), job.place_id, span)
    why = _RESIDUAL_DRY if job.step.suits == "residual" else job.step.does.rain
    if dry and why is not None and "dry_spell" in taken_by(job.step):
        where = _typed_at(dates, ("dry_spell",), job, span)
        missed = job.step.if_missed
        yield finding(
            DayCaution.DRY_SPELL,
            about_job(job.id),
            where,
            days=in_words(dry),
            why=why,
            missed=missed,
        )


def _hunting(
    job: Job, dates: tuple[DateRange, ...], readers: tuple[Reader, ...], span: Span
) -> Iterator[Finding]:
    hunted = days_of(dates, HUNTED, job.place_id, span)
    # only of what is handed over: the owner knows who hunts, whoever else works there may not
    if hunted and readers_of(job.planting_id, job.step.id, readers):
        where = _typed_at(dates, HUNTED, job, span)
        yield finding(DayCaution.OTHERS_HUNTING, about_job(job.id), where, days=in_words(hunted))


def _nesting(job: Job, inventory: Inventory, span: Span, as_of: datetime.date) -> Iterator[Finding]:
    does = job.step.does
    disturbed = days_of(inventory.dates, NESTS, job.place_id, span)
    if not does.disturbs_nests or not disturbed:
        return
    where = _typed_at(inventory.dates, NESTS, job, span)
    yield finding(DayNote.NESTING, about_job(job.id), where, days=in_words(disturbed))
    nesting = days_of(inventory.dates, ("nesting",), job.place_id, span)
    if not nesting or not does.needs_leave:
        return
    place = next(place for place in inventory.places() if place.id == job.place_id)
    asks = is_contract_land(place, inventory.contracts)
    if asks and not allows_in_nesting(job, nesting[0][0], inventory.contracts, as_of):
        where = _typed_at(inventory.dates, ("nesting",), job, span)
        yield finding(DayStop.NESTING_ON_CONTRACT, about_job(job.id), where, days=in_words(nesting))


def _reentry(
    job: Job, products: tuple[Product, ...], dates: tuple[DateRange, ...], span: Span
) -> Iterator[Finding]:
    """Yield a caution where people must still keep out when the hunting begins."""
    if not job.step.does.sprays:
        return
    hours = [
        _entry_hours(product) for product in products if product.id in job.needs and product.label
    ]
    known = [wait for wait in hours if wait is not None]
    if not known:
        return
    # the latest it can be: sprayed on the last open day, by the longest of the labels
    until = last_day_kept_out(span[1], max(known))
    hunted = joined(days_of(dates, HUNTED, job.place_id, (span[0], until)))
    if hunted:
        where, first = _typed_at(dates, HUNTED, job, (span[0], until)), day_words(hunted[0][0])
        yield finding(
            DayCaution.ENTRY_IN_HUNTING,
            about_job(job.id),
            where,
            until=day_words(until),
            first=first,
        )


def _entry_hours(product: Product) -> float | None:
    reentry = product.label.reentry if product.label is not None else None
    hours = reentry.agricultural_hours if reentry is not None else None
    return hours.value if isinstance(hours, Given) else None
