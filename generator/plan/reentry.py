"""Ground that was sprayed so lately that nobody may be back on it yet."""

import datetime
import math
from collections.abc import Iterable, Iterator

from generator.inventory.label import Reentry
from generator.plan.cautions import Caution
from generator.plan.day_words import day_words
from generator.plan.findings import finding
from generator.plan.model import Finding, Job
from generator.plan.spray_record import SprayRecord
from generator.units import convert
from generator.working import Figure, Given


def reentry_findings(
    records: tuple[SprayRecord, ...], jobs: Iterable[Job], as_of: datetime.date
) -> Iterator[Finding]:
    """Yield a caution on a sprayed place, and on its jobs, while a label may keep people out.

    The hour of a spraying need not be known, so the days after it are counted whole. A card that
    says nothing of hours keeps people out on the day itself.
    """
    by_place = tuple(jobs)
    for one in records:
        last = keeps_out_until(one)
        if one.place is None or last < as_of:
            continue
        subjects = [one.place.id]
        subjects += [
            job.id
            for job in by_place
            if job.place_id == one.place.id
            and job.state.is_ahead
            and (job.dates.opens is None or job.dates.opens <= last)
        ]
        names = " and ".join(product.name for product, _ in one.products)
        for subject in subjects:
            yield finding(
                Caution.KEEP_OUT,
                subject,
                one.entry.where,
                tuple(_figures(one)),
                product=names or "A product that is not written down",
                day=day_words(one.entry.done_on),
                last=day_words(last),
            )


def keeps_out_until(one: SprayRecord) -> datetime.date:
    """Return the last day on which a label may still keep people off the ground."""
    hours = [_hours(entry) for entry in _entries(one)]
    days = [math.ceil(convert(at.value, "hours", "days")) for at in hours if at is not None]
    return one.entry.done_on + datetime.timedelta(days=max(days, default=0))


def _entries(one: SprayRecord) -> list[Reentry]:
    cards = [product.label for product, _ in one.products if product.label is not None]
    return [card.reentry for card in cards if isinstance(card.reentry, Reentry)]


def _hours(entry: Reentry) -> Given | None:
    return entry.agricultural_hours if isinstance(entry.agricultural_hours, Given) else None


def _figures(one: SprayRecord) -> Iterator[tuple[str, Figure]]:
    for product, _ in one.products:
        entry = product.label.reentry if product.label is not None else None
        hours = _hours(entry) if isinstance(entry, Reentry) else None
        if hours is not None:
            yield f"{product.name}, farm use, nobody back for", hours
