"""Jobs that must wait: a year's sum, a wait or a re-entry rests on an entry that is in question."""

import datetime
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from generator.dataclass import dataclass
from generator.inventory.label import LabelCard, Use, YearlyLimit
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.after.plant_back import held_back
from generator.plan.after.records import spray_records
from generator.plan.after.residues import residues
from generator.plan.doubts.doubt import Doubt
from generator.plan.doubts.doubt_days import season_span
from generator.plan.findings.about_doubts import DoubtCaution, DoubtStop
from generator.plan.findings.order import finding
from generator.plan.findings.words import Reason, Stop
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.clearance import matching_uses
from generator.plan.labels.spray_stops import asked_of_label, chosen_products
from generator.plan.labels.yearly_sums import a_year_after
from generator.plan.log.done import entries_on
from generator.plan.log.longest import bound_of_a_sowing
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.job import JobState
from generator.plan.model.spray_record import SprayRecord
from generator.reference.active_names import most_alike

CROP = "crop"  # a limit that counts a planting from its sowing to its end
RESTS: dict[Reason, DoubtStop] = {
    DoubtCaution.MORE_USED_THAN_THERE: DoubtStop.AMOUNT_IN_QUESTION,
    DoubtCaution.SAID_TWICE: DoubtStop.SPRAYING_SAID_TWICE,
    DoubtCaution.OUT_OF_SEASON: DoubtStop.DAY_IN_QUESTION,
}


@dataclass(frozen=True, slots=True)
class _Asked:
    """A spraying in question: its record, the last day it may have been, and places it was on."""

    doubt: Doubt
    record: SprayRecord
    last: datetime.date
    here: frozenset[str]


def doubt_stops(
    doubts: Iterable[Doubt],
    jobs: tuple[JobRequest, ...],
    states: Mapping[str, JobState],
    inventory: Inventory,
    as_of: datetime.date,
    grounds: Mapping[str, frozenset[str]],
) -> Iterator[Finding]:
    """Yield a stop on every job still to come that rests on a spraying in question.

    `grounds` are the places on whose ground each place lies.
    """
    ahead = tuple(job for job in jobs if not states[job.job_id].is_settled)
    for asked in _sprayings(doubts, inventory, as_of, grounds):
        about = (asked.doubt.entry,)
        for job in ahead:
            if asked.doubt.reason is DoubtCaution.OUT_OF_SEASON and entries_on(job, about):
                continue  # what is begun of a job counts by its plan, whatever the day
            if job.step.does.sprays and _adds_up(job, asked, inventory.products):
                yield _stop(RESTS[asked.doubt.reason], job, asked)
            if asked.doubt.reason is not DoubtCaution.OUT_OF_SEASON:
                continue
            if job.step.does.brings_plants and _has_to_wait(
                job, asked, jobs, inventory, as_of, grounds
            ):
                yield _stop(DoubtStop.WAIT_IN_QUESTION, job, asked)
            if states[job.job_id].is_ahead and _may_be_kept_out(job, asked, as_of):
                yield _stop(DoubtStop.REENTRY_IN_QUESTION, job, asked)


def _stop(stop: Stop, job: JobRequest, asked: _Asked) -> Finding:
    return finding(stop, about_job(job.job_id), asked.doubt.entry.where, (), **asked.doubt.words)


def _sprayings(
    doubts: Iterable[Doubt],
    inventory: Inventory,
    as_of: datetime.date,
    grounds: Mapping[str, frozenset[str]],
) -> Iterator[_Asked]:
    for doubt in doubts:
        if doubt.reason not in RESTS or not doubt.is_of_work:
            continue
        if not _is_of_a_herbicide(doubt, inventory.products):
            continue
        for record in spray_records(inventory, (doubt.entry,), {}):
            place = record.place
            here = grounds[place.id] if place is not None else frozenset[str]()
            yield _Asked(doubt, record, _last_day(doubt, as_of), here)


def _is_of_a_herbicide(doubt: Doubt, products: tuple[Product, ...]) -> bool:
    return doubt.item is None or any(product.id == doubt.item for product in products)


def _last_day(doubt: Doubt, as_of: datetime.date) -> datetime.date:
    """Return the last day on which the work may have been done: of its season, up to the plan's."""
    day = doubt.entry.done_on
    if doubt.season is None:
        return day
    first, last = season_span(doubt.season)
    # never before the day written down: a doubt makes no wait shorter
    return max(day, min(last, as_of)) if first <= as_of else day


def _adds_up(job: JobRequest, asked: _Asked, products: tuple[Product, ...]) -> bool:
    """Whether what a spraying adds to a label's year is counted together with one in question."""
    chosen = [part.product for part in chosen_products(job, products)]
    uses = [use for product in chosen for use in _uses(job, product.label)]
    # without a limit to a year nothing is added up that could come out wrong
    if not _has_a_year(uses) or not _is_near(job, asked, uses):
        return False
    # the ground may be the slip as well, so the product is asked about wherever it goes
    if any(product.id == asked.doubt.item for product in chosen):
        return True
    here = not asked.here or job.ground.id in asked.here
    used: list[Product | None] = [product for product, _ in asked.record.products]
    return here and any(_may_share(mine, other) for mine in chosen for other in used or [None])


def _uses(job: JobRequest, card: LabelCard | None) -> tuple[Use, ...]:
    if card is None or job.work is None:
        return ()
    # none that fits is a stop of its own: till it is mended, any may be meant
    return matching_uses(card, asked_of_label(job)) or card.uses


def _has_a_year(uses: Iterable[Use]) -> bool:
    return any(
        isinstance(use.max_per_year, YearlyLimit) or isinstance(use.times_per_year, int)
        for use in uses
    )


def _is_near(job: JobRequest, asked: _Asked, uses: Iterable[Use]) -> bool:
    """Whether a label's year can hold both, in whatever way it is counted."""
    planting, opens = asked.record.planting, job.dates.opens
    limits = [use.max_per_year for use in uses if isinstance(use.max_per_year, YearlyLimit)]
    of_crop = any(limit.counted == CROP for limit in limits)
    # a crop's limit knows no turn of the year
    if opens is None or (of_crop and planting is not None and planting.id == job.planting.id):
        return True
    # by the calendar or by twelve months: a card may mean either
    return asked.last.year >= opens.year or a_year_after(asked.last) >= opens


def _may_share(mine: Product, other: Product | None) -> bool:
    """Whether two products may hold an active that is counted together; not known is may."""
    cards = (mine.label, other.label if other is not None else None)
    first, second = cards
    if first is None or second is None or not first.actives or not second.actives:
        return True
    counted, others = ((*card.named_actives, *card.named_pooled) for card in (first, second))
    # from both sides: each card says for itself what it counts together
    ways = most_alike(counted, second.named_actives), most_alike(others, first.named_actives)
    return ways != ("other", "other")


def _has_to_wait(
    job: JobRequest,
    asked: _Asked,
    jobs: tuple[JobRequest, ...],
    inventory: Inventory,
    as_of: datetime.date,
    grounds: Mapping[str, frozenset[str]],
) -> bool:
    """Whether a sowing would be held back, had the spraying been on the last day it may have."""
    if job.ground.id not in asked.here:
        return False
    as_late = _on(asked.doubt.entry, asked.last)
    logged = [
        residue
        for residue in residues(jobs, inventory, (as_late,), grounds)
        if residue.spraying.logged
    ]
    bound = bound_of_a_sowing(inventory.products)
    return any(
        told.severity == "stop" for told in held_back(job, enumerate(logged, 1), bound, as_of)
    )


def _may_be_kept_out(job: JobRequest, asked: _Asked, as_of: datetime.date) -> bool:
    if job.ground.id not in asked.here:
        return False
    # counted from the last day it may have been, as the wait before a sowing is
    until = replace(asked.record.keep_out, day=asked.last).until()
    return until >= as_of and (job.dates.opens is None or job.dates.opens <= until)


def _on(entry: LogEntry, day: datetime.date) -> LogEntry:
    return replace(entry, done_on=day)
