"""The owner's and helpers' free hours, month by month, against the work that falls to them."""

import calendar
import datetime
import itertools
from collections.abc import Iterable

from generator.compute.buying import TOTAL_HOURS
from generator.compute.free_hours import FREE
from generator.dataclass import dataclass
from generator.inventory.people import MONTH_KEYS as MONTH_KEYS
from generator.inventory.people import Helper
from generator.plan.findings.about_money import MoneyCaution
from generator.plan.findings.order import finding
from generator.plan.model.days import MONTHS
from generator.plan.model.finding import Finding, Subject
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.plan.money.field_work import hired_jobs
from generator.plan.money.money_hours import open_months
from generator.working import Figure, Given, Quantity, Reference

Months = tuple[datetime.date, ...]  # the first day of each


@dataclass(frozen=True, slots=True)
class OwnWork:
    """One job's hours and the months, from the plan's on, in which it can be done."""

    job: Job
    hours: Quantity
    months: Months


@dataclass(frozen=True, slots=True)
class OwnMonth:
    """A month with the work that falls to the owner and helpers, and the hours they have free.

    `work` is of all jobs open in it, `only` of those open in no other; None where there is none.
    """

    first: datetime.date
    work: Quantity
    only: Quantity | None
    free: Quantity


@dataclass(frozen=True, slots=True)
class Overfull:
    """Months in a row in which more has to be done than there are hours free."""

    first: datetime.date
    last: datetime.date
    work: Quantity
    free: Quantity


def own_work(plan: Plan) -> tuple[OwnWork, ...]:
    """Return the hours of the jobs that nobody else does: not hired, not handed to a reader."""
    others = {
        job.id for hire in plan.land.hires for job in hired_jobs(plan.findings, plan.jobs, hire)
    }
    others |= {job_id for reader in plan.handed for job_id in reader.job_ids}
    jobs = {job.id: job for job in plan.jobs}
    now = plan.as_of.replace(day=1)
    return tuple(
        OwnWork(
            jobs[time.job_id],
            time.hours,
            # the month that runs counts too: the job may be done in what is left of it
            tuple(month for month in open_months(jobs[time.job_id]) if month >= now),
        )
        for time in plan.times
        if time.job_id not in others
    )


def own_months(plan: Plan) -> tuple[OwnMonth, ...]:
    """Return the months in which own work is open; none where nobody's hours are typed."""
    work = own_work(plan)
    return tuple(
        OwnMonth(
            month,
            _sum(
                plan.season, (month,), "open", [task.hours for task in work if month in task.months]
            ),
            _to_be_done(plan.season, work, (month,)),
            free_in(plan, (month,)),
        )
        for month in _months(work)
        if plan.land.helpers
    )


def _months(work: tuple[OwnWork, ...]) -> Months:
    return tuple(sorted({month for task in work for month in task.months}))


def _sum(season: int, months: Months, what: str, parts: Iterable[Figure]) -> Quantity:
    base = f"hours/{season}/{months[0]:%Y-%m}/{months[-1]:%Y-%m}"
    return TOTAL_HOURS(f"{base}/{what}_hours", parts=tuple(parts))


def _to_be_done(season: int, work: tuple[OwnWork, ...], months: Months) -> Quantity | None:
    """Return the hours of the work that can be done in no other months."""
    # with one month outside these, the work may all be done there
    parts = [task.hours for task in work if task.months and set(task.months) <= set(months)]
    return _sum(season, months, "only_then", parts) if parts else None


def free_in(plan: Plan, months: Months) -> Quantity:
    """Return the hours that the owner and helpers have free in months, from the plan's day on."""
    parts = [
        _free(plan.season, plan.as_of, helper, month)
        for month in months
        for helper in plan.land.helpers
    ]
    return _sum(plan.season, months, "free", [hours for hours in parts if hours is not None])


def _free(
    season: int, as_of: datetime.date, helper: Helper, month: datetime.date
) -> Given | Quantity | None:
    typed = (
        typed_month
        for typed_month in helper.months
        if MONTH_KEYS.index(typed_month.month) + 1 == month.month
    )
    for typed_month in typed:
        return typed_month.free_hours
    if helper.weekend_hours is None:
        return None
    return FREE(
        f"hours/{season}/{month:%Y-%m}/{helper.id}_hours",
        weekends_count=weekends_of(month, as_of),
        weekend_hours=helper.weekend_hours,
    )


def weekends_of(month: datetime.date, as_of: datetime.date) -> Reference:
    """Return how many Saturdays a month has, from the plan's day on."""
    _, length = calendar.monthrange(month.year, month.month)
    days = (month.replace(day=number) for number in range(1, length + 1))
    count = sum(day.weekday() == calendar.SATURDAY and day >= as_of for day in days)
    name = f"weekends_in_{MONTH_KEYS[month.month - 1]}_count"
    return Reference(name, float(count), "count", "arithmetic", "Saturdays in the month")


def overfull(plan: Plan) -> tuple[Overfull, ...]:
    """Return the shortest runs of months in which more has to be done than there are hours.

    All the work fits, weekend by weekend left aside, if and only if there is no such run.
    """
    if not plan.land.helpers:
        return ()
    work = own_work(plan)
    months = _months(work)
    runs = [months[first:last] for first, last in itertools.combinations(range(len(months) + 1), 2)]
    found: list[tuple[Months, Overfull]] = []
    # the shortest first: a longer run around one that is told says nothing more
    for run in sorted(runs, key=lambda run: (len(run), run)):
        to_do, free = _to_be_done(plan.season, work, run), free_in(plan, run)
        inside = any(set(shorter) <= set(run) for shorter, _ in found)
        if to_do is not None and to_do.value > free.value and not inside:
            found.append((run, Overfull(run[0], run[-1], to_do, free)))
    return tuple(over for _, over in found)


def hour_findings(plan: Plan) -> list[Finding]:
    """Return a caution for every run of months that holds more work than free hours."""
    return [
        finding(
            MoneyCaution.TOO_FEW_HOURS,
            Subject("hours", f"{run.first:%Y-%m}"),
            plan.land.helpers[0].where,
            (("Hours of work", run.work), ("Hours free", run.free)),
            months=_in_words(run.first, run.last),
        )
        for run in overfull(plan)
    ]


def _in_words(first: datetime.date, last: datetime.date) -> str:
    begins, ends = (f"{MONTHS[day.month - 1]} {day.year}" for day in (first, last))
    return begins if first == last else f"{begins} to {ends}"


def hour_numbers(plan: Plan) -> list[Quantity | None]:
    """Return every number of free hours that stands on a page."""
    numbers: list[Quantity | None] = []
    for month in own_months(plan):
        numbers += [month.work, month.only, month.free]
    for run in overfull(plan):
        numbers += [run.work, run.free]
    return numbers
