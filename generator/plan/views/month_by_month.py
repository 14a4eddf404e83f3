"""The season month by month: what is open and what must be ordered."""

import datetime

from generator.dataclass import dataclass
from generator.plan.jobs.job_days import LAST_OF_SEASON
from generator.plan.model.buying import Purchase
from generator.plan.model.days import ONE_DAY, Span, inside_of
from generator.plan.model.job import Job, UpkeepJob
from generator.plan.model.plan import Plan
from generator.plan.season.open_dates import day_in_season

# longer than any month, shorter than two: from a first day always into the next
WELL_INTO_NEXT_MONTH = datetime.timedelta(days=32)


@dataclass(frozen=True, slots=True)
class InMonth:
    """A job that can be done in a month, and the days of that month that are left for it."""

    job: Job | UpkeepJob
    days: tuple[Span, ...]


@dataclass(frozen=True, slots=True)
class MonthOfWork:
    """A month from `first` to `last` with its jobs and what to order in it.

    The first month begins on the plan's day.
    """

    first: datetime.date
    last: datetime.date
    jobs: tuple[InMonth, ...]
    orders: tuple[Purchase, ...]


def month_by_month(plan: Plan) -> tuple[MonthOfWork, ...]:
    """Return the months from the plan's day to the end of its season, quiet months too."""
    found: list[MonthOfWork] = []
    last_of_season = day_in_season(LAST_OF_SEASON, plan.season)
    orders = [purchase for purchase in plan.buying.purchases if not purchase.nothing]
    first = plan.as_of
    while first <= last_of_season:
        following = (first.replace(day=1) + WELL_INTO_NEXT_MONTH).replace(day=1)
        last = following - ONE_DAY
        found.append(
            MonthOfWork(
                first,
                last,
                _jobs(plan, first, last),
                tuple(
                    purchase
                    for purchase in orders
                    if first <= _to_order(purchase, plan.as_of) <= last
                ),
            )
        )
        first = following
    return tuple(found)


def _to_order(purchase: Purchase, as_of: datetime.date) -> datetime.date:
    """Return the day by which to order; what is late or has no day is to be ordered at once."""
    return max(purchase.order.by or as_of, as_of)


def _jobs(plan: Plan, first: datetime.date, last: datetime.date) -> tuple[InMonth, ...]:
    ahead: list[tuple[datetime.date, str, InMonth]] = []
    jobs: tuple[Job | UpkeepJob, ...] = (*plan.jobs, *plan.upkeep)
    for job in jobs:
        # dates that do not meet have no month; a stop says so
        if job.state.is_settled:
            continue
        days = tuple(part for span in job.usable for part in inside_of(span, (first, last)))
        if days:
            ahead.append((job.usable[-1][1], job.id, InMonth(job, days)))
    return tuple(in_month for _, _, in_month in sorted(ahead, key=lambda entry: entry[:2]))
