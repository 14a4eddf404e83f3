"""Ground that was sprayed so lately that nobody may be back on it yet."""

import datetime
from collections.abc import Iterable, Iterator, Mapping

from generator.plan.findings.about_after import AfterCaution, AfterStop
from generator.plan.findings.order import finding
from generator.plan.log.told import Sprayings
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding
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
    for one in records:
        where = frozenset().union(*(grounds[at] for at in told.places_of(one.entry)))
        nowhere = one.place is None and one.entry.unknown is None
        until = one.keep_out.until() if nowhere else one.keep_out.known_until()
        if not nowhere and until >= as_of:
            for subject in [*sorted(where), *(job.id for job in _kept_out(by_place, where, until))]:
                yield _caution(one, subject, until)
        last = one.keep_out.until()
        if (nowhere or one.keep_out.unknown) and last >= as_of:
            for job in _kept_out(by_place, where, last):
                yield _stop(one, job, last)


def _kept_out(jobs: Iterable[Job], where: frozenset[str], last: datetime.date) -> Iterator[Job]:
    """Yield the jobs on some ground that can be done by a day."""
    for job in jobs:
        opens = job.dates.opens
        if job.place_id in where and job.state.is_ahead and (opens is None or opens <= last):
            yield job


def _caution(one: SprayRecord, subject: str, last: datetime.date) -> Finding:
    names = " and ".join(product.name for product, _ in one.products)
    return finding(
        AfterCaution.KEEP_OUT,
        subject,
        one.entry.where,
        tuple(_figures(one)),
        product=names or "A product that is not written down",
        day=day_words(one.entry.done_on),
        last=day_words(last),
    )


def _stop(one: SprayRecord, job: Job, last: datetime.date) -> Finding:
    return finding(
        AfterStop.REENTRY_NOT_KNOWN,
        job.id,
        one.entry.where,
        day=day_words(one.entry.done_on),
        last=day_words(last),
    )


def _figures(one: SprayRecord) -> Iterator[tuple[str, Figure]]:
    for product, hours in one.keep_out.hours:
        yield f"{product}, farm use, nobody back for", hours
