"""Which jobs what is there reaches, and by when the rest must be ordered to be there in time."""

import datetime
from collections.abc import Sequence

from generator.dataclass import dataclass
from generator.plan.model.buying import JobNeed, Order, OrderState
from generator.plan.model.items import StockItem
from generator.plan.model.job import Job
from generator.plan.money.packages import is_let_go
from generator.plan.season.open_dates import last_day_at_most
from generator.working import Given, Quantity, whole_up


@dataclass(frozen=True, slots=True)
class Shared:
    """Needs of jobs, in the order in which they open, by whether what is there reaches them.

    `short` lack something that can still come in time; `too_late` lack it, and ordered on the
    plan's day it comes after their last open day. What is there is not kept for those.
    """

    covered: tuple[JobNeed, ...]
    short: tuple[JobNeed, ...]
    too_late: tuple[JobNeed, ...]


def order_by(item: StockItem, short: Sequence[JobNeed], as_of: datetime.date) -> Order:
    """Return by when to order what jobs lack, by the first of them that can still get it.

    A job whose first day is not known decides nothing where another is known; it is named.
    """
    jobs = [job for _, job in short]
    # named, not left out: no day known is no day far off
    undated = tuple(job for job in jobs if job.dates.opens is None)
    dated = [job for job in jobs if job.dates.opens is not None]
    in_time = [job for job in dated if not comes_too_late(item, job, as_of)]
    # none in time: the first of all tells how late it is
    decides = next(iter(in_time or dated), None)
    if decides is None or decides.dates.opens is None:
        return Order("no_dates", undated=undated)
    first, last = decides.dates.opens, decides.dates.closes
    comes = comes_on(item, as_of)
    if comes is None:
        return Order("no_lead", None, None, first, last, undated)
    # what comes on the first open day is there for it
    state: OrderState = "by" if comes <= first else "now" if in_time else "late"
    return Order(state, first - (comes - as_of), comes, first, last, undated)


def comes_on(item: StockItem, as_of: datetime.date) -> datetime.date | None:
    """Return when a thing comes if it is ordered on the plan's day; None where nobody knows."""
    if item.lead_days is None:
        return None
    return as_of + datetime.timedelta(days=whole_up(item.lead_days.value))


def comes_too_late(item: StockItem, job: Job, as_of: datetime.date) -> bool:
    """Return whether a thing ordered on the plan's day comes after the last day of a job."""
    comes, last = comes_on(item, as_of), last_day_at_most(job.dates)
    return comes is not None and last is not None and comes > last


def shared_out(
    item: StockItem,
    needs: Sequence[JobNeed],
    there: Given | Quantity | None,
    as_of: datetime.date,
) -> Shared:
    """Return how what is there goes to the jobs that open first, those without a day last.

    Where it is not known what is there, every job may be short and none is given up. No job is
    given up for so little that nothing would be bought for it.
    """
    left = there.value if there is not None else 0.0
    covered: list[JobNeed] = []
    short: list[JobNeed] = []
    too_late: list[JobNeed] = []
    for job_need in sorted(needs, key=lambda job_need: _opening(job_need[1])):
        need, job = job_need
        missing, late = need.value - left, comes_too_late(item, job, as_of)
        # so little is let go when it is bought, so no job is given up for it
        if whole_up(missing) <= 0 or (late and is_let_go(item, missing)):
            covered.append(job_need)
            left = max(0.0, left - need.value)
        # what is left stays for the next job, which may be whole with it
        elif there is not None and late:
            too_late.append(job_need)
        else:
            short.append(job_need)
            # the rest is bought anyway: it uses up what is there, and later jobs start from nothing
            left = 0.0
    return Shared(tuple(covered), tuple(short), tuple(too_late))


def _opening(job: Job) -> tuple[datetime.date, datetime.date, str]:
    last = datetime.date.max
    return (job.dates.opens or last, job.dates.closes or last, job.id)
