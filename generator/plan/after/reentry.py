"""Ground that was sprayed so lately that nobody may be back on it yet."""

import datetime
from collections.abc import Iterable, Iterator, Mapping

from generator.plan.findings.about_after import AfterCaution, AfterStop
from generator.plan.findings.order import finding
from generator.plan.log.told import Sprayings
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding, Subject, about_job, about_place
from generator.plan.model.job import Job
from generator.plan.model.spray_record import SprayRecord
from generator.working import Figure


def reentry_findings(
    records: tuple[SprayRecord, ...],
    jobs: Iterable[Job],
    as_of: datetime.date,
    told: Sprayings,
    grounds: Mapping[str, frozenset[str]],
) -> Iterator[Finding]:
    """Yield a caution on sprayed ground and its jobs while a label may keep people out.

    The hour of a spraying need not be known, so the days after it are counted whole. A card that
    says nothing of hours keeps people out on the day itself. Where it is not known what was
    sprayed, where, or what its card says, it is a stop, no longer than any card keeps people out.
    """
    by_place = tuple(jobs)
    for record in records:
        where = frozenset().union(*(grounds[at] for at in told.places_of(record.entry)))
        # what unknown: bounds counts as known ground; without it a place is a guess at most
        nowhere = record.place is None and record.entry.unknown is None
        until = record.keep_out.until() if nowhere else record.keep_out.known_until()
        # that day counts too, up to an hour that nobody here knows
        if not nowhere and until >= as_of:
            kept_out = (about_job(job.id) for job in _kept_out(by_place, where, until))
            for subject in (*map(about_place, sorted(where)), *kept_out):
                yield _caution(record, subject, until)
        last = record.keep_out.until()
        # not known is a stop and no caution: nobody goes back onto ground by a guess
        if (nowhere or record.keep_out.unknown) and last >= as_of:
            for job in _kept_out(by_place, where, last):
                yield _stop(record, job, last)


def _kept_out(jobs: Iterable[Job], where: frozenset[str], last: datetime.date) -> Iterator[Job]:
    """Yield the jobs on some ground that can be done by a day."""
    for job in jobs:
        opens = job.dates.opens
        # without open dates it may be begun today
        if job.place_id in where and job.state.is_ahead and (opens is None or opens <= last):
            yield job


def _caution(record: SprayRecord, subject: Subject, last: datetime.date) -> Finding:
    names = " and ".join(product.name for product, _ in record.products)
    return finding(
        AfterCaution.KEEP_OUT,
        subject,
        record.entry.where,
        tuple(_figures(record)),
        product=names or "A product that is not written down",
        day=day_words(record.entry.done_on),
        last=day_words(last),
    )


def _stop(record: SprayRecord, job: Job, last: datetime.date) -> Finding:
    return finding(
        AfterStop.REENTRY_NOT_KNOWN,
        about_job(job.id),
        record.entry.where,
        day=day_words(record.entry.done_on),
        last=day_words(last),
    )


def _figures(record: SprayRecord) -> Iterator[tuple[str, Figure]]:
    for product, hours in record.keep_out.hours:
        yield f"{product}, farm use, nobody back for", hours
