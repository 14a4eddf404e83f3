"""By when a thing must be ordered, to be there on the first day of the first job short of it."""

import datetime
import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from generator.plan.items import StockItem
from generator.plan.model import Job, OpenDates
from generator.working import Given, Quantity, whole_up

State = Literal["by", "now", "late", "no_lead", "no_dates"]


@dataclass(frozen=True, slots=True)
class Order:
    """By when to order for the first open day: `by` None where that is not known.

    `state`: by, ordered on the plan's day it comes by the first open day; now, it comes while the
    job is open; late, it comes after the last open day; no_lead, no_dates: what is missing to know
    it. `comes` is when it would come, ordered on the plan's day; `needed_from` and `needed_until`
    are the open dates of the first job that is short.
    """

    state: State
    by: datetime.date | None = None
    comes: datetime.date | None = None
    needed_from: datetime.date | None = None
    needed_until: datetime.date | None = None


def order_by(item: StockItem, short: Sequence[Job], as_of: datetime.date) -> Order:
    """Return by when to order what jobs lack, the first job that lacks it first."""
    if not short or short[0].dates.opens is None:
        return Order("no_dates")
    first, last = short[0].dates.opens, short[0].dates.closes
    if item.lead_days is None:
        return Order("no_lead", None, None, first, last)
    lead = datetime.timedelta(days=whole_up(item.lead_days.value))
    comes = as_of + lead
    late = last is not None and comes > last
    state: State = "by" if comes <= first else "late" if late else "now"
    return Order(state, first - lead, comes, first, last)


def is_over(dates: OpenDates, as_of: datetime.date) -> bool:
    """Return whether the last open day has passed; not where it is not known."""
    return dates.closes is not None and dates.closes < as_of


def short_jobs(
    needs: Sequence[tuple[Quantity, Job]], there: Given | Quantity | None
) -> tuple[Job, ...]:
    """Return the jobs that what is there does not reach, in the order in which they open.

    What is there goes to the jobs that open first. A job of which it is not known when it opens
    may be the first of all.
    """
    waiting = sorted((one for one in needs if one[0].value > 0), key=lambda one: _opening(one[1]))
    had = there.value if there is not None else 0.0
    for at in range(len(waiting)):
        lacking = math.fsum(need.value for need, _ in waiting[: at + 1]) - had
        if whole_up(lacking) > 0:
            return tuple(job for _, job in waiting[at:])
    return ()


def _opening(job: Job) -> tuple[datetime.date, datetime.date, str]:
    opens, closes = job.dates.opens, job.dates.closes
    return (opens or datetime.date.min, closes or datetime.date.max, job.id)
