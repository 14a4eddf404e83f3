"""How the work fills the weekends that the owner and helpers have free."""

import datetime
from collections.abc import Iterator

from generator.compute.buying import TOTAL_HOURS
from generator.compute.free_hours import DONE_ON_A_WEEKEND, FREE_ON_A_WEEKEND, HOURS_LEFT
from generator.dataclass import dataclass
from generator.inventory.people import MONTH_KEYS, Helper
from generator.plan.jobs.job_days import LAST_OF_SEASON
from generator.plan.model.days import ONE_DAY
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.plan.money.free_hours import OwnWork, own_work, weekends_of
from generator.plan.season.open_dates import day_in_season
from generator.working import Given, Quantity

SATURDAY = 5
# hours left over by a rounding error are none
DECIMALS = 9
ONE_WEEK = datetime.timedelta(days=7)


@dataclass(frozen=True, slots=True)
class JobHours:
    """Hours of one job: on a weekend, or without room."""

    job: Job
    hours: Quantity


@dataclass(frozen=True, slots=True)
class Weekend:
    """A weekend, its free hours, and the work that falls on it where any does."""

    saturday: datetime.date
    free: Quantity
    work: Quantity | None
    jobs: tuple[JobHours, ...]


@dataclass(frozen=True, slots=True)
class Weekends:
    """Every weekend to the end of the season, and the jobs that do not fit into them."""

    weekends: tuple[Weekend, ...]
    without_room: tuple[JobHours, ...]

    def numbers(self) -> Iterator[Quantity]:
        """Yield every number of it that stands on a page."""
        for weekend in self.weekends:
            yield weekend.free
            yield from (weekend.work,) if weekend.work is not None else ()
            yield from (part.hours for part in weekend.jobs)
        yield from (part.hours for part in self.without_room)


def weekends(plan: Plan) -> Weekends:
    """Return the weekends from the plan's day on, filled by the job that closes first.

    Filled so, work that can be fitted into the free hours is fitted: no other order does better.
    None where nobody's hours are typed.
    """
    if not plan.land.helpers:
        return Weekends((), ())
    work = [task for task in own_work(plan) if task.job.dates.opens and task.job.dates.closes]
    work.sort(key=lambda task: (task.job.dates.closes or datetime.date.max, task.job.id))
    done: dict[str, list[Quantity]] = {task.job.id: [] for task in work}
    filled = tuple(
        _weekend(plan, saturday, work, done) for saturday in _saturdays(plan.season, plan.as_of)
    )
    over = (
        JobHours(task.job, _left(plan.season, task, done[task.job.id]))
        for task in work
        if task.months
    )
    return Weekends(filled, tuple(part for part in over if round(part.hours.value, DECIMALS) > 0))


def _left(season: int, work: OwnWork, done: list[Quantity]) -> Quantity:
    """Return what is left of a job after the weekends before."""
    if not done:
        return work.hours
    base = f"weekends/{season}/{work.job.id}"
    return HOURS_LEFT(
        f"{base}/left_after_{len(done)}_hours", whole_hours=work.hours, taken_hours=tuple(done)
    )


def _saturdays(season: int, as_of: datetime.date) -> Iterator[datetime.date]:
    last = day_in_season(LAST_OF_SEASON, season)
    day = as_of + ONE_DAY * ((SATURDAY - as_of.weekday()) % 7)
    while day <= last:
        yield day
        day += ONE_WEEK


def _weekend(
    plan: Plan, saturday: datetime.date, work: list[OwnWork], done: dict[str, list[Quantity]]
) -> Weekend:
    base = f"weekends/{plan.season}/{saturday.isoformat()}"
    # a weekend over the end of a month is its Saturday's, as where weekends are counted
    free = _free(plan, saturday.replace(day=1))
    given: list[JobHours] = []
    room = free
    for task in (each for each in work if can_be_done(each.job, saturday)):
        left = _left(plan.season, task, done[task.job.id])
        if round(min(left.value, room.value), DECIMALS) > 0:
            hours = DONE_ON_A_WEEKEND(
                f"{base}/{task.job.id}_hours", job_hours=left, weekend_hours=room
            )
            given.append(JobHours(task.job, hours))
            done[task.job.id].append(hours)
            # jobs before others on this weekend close sooner, so they have the hours first
            room = HOURS_LEFT(
                f"{base}/left_beside_{len(given)}_hours", whole_hours=room, taken_hours=(hours,)
            )
    parts = tuple(part.hours for part in given)
    together = TOTAL_HOURS(f"{base}/work_hours", parts=parts) if parts else None
    return Weekend(saturday, free, together, tuple(given))


def can_be_done(job: Job, saturday: datetime.date) -> bool:
    """Return whether a job is open on the Saturday or the Sunday, and dates leave it the day."""
    # a day that dates take is no day to work on, open or not
    return any(
        first <= day <= last for first, last in job.usable for day in (saturday, saturday + ONE_DAY)
    )


def _free(plan: Plan, month: datetime.date) -> Quantity:
    """Return what is free on a weekend of a month, everybody's together."""
    parts = [_of_helper(plan.season, plan.as_of, helper, month) for helper in plan.land.helpers]
    return TOTAL_HOURS(
        f"weekends/{plan.season}/{month:%Y-%m}/free_hours",
        parts=tuple(hours for hours in parts if hours is not None),
    )


def _of_helper(
    season: int, as_of: datetime.date, helper: Helper, month: datetime.date
) -> Given | Quantity | None:
    """Return what a helper has free on a weekend of a month: a part of the month's, if typed."""
    for typed in helper.months:
        # hours of a month typed for itself go before those of any weekend
        if MONTH_KEYS.index(typed.month) + 1 == month.month:
            return FREE_ON_A_WEEKEND(
                f"weekends/{season}/{month:%Y-%m}/{helper.id}_hours",
                free_hours=typed.free_hours,
                weekends_count=weekends_of(month, as_of),
            )
    return helper.weekend_hours
