"""Work that closed without a record: its last day is over, and the log does not say it was done."""

import datetime
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace

from generator.dataclass import dataclass
from generator.inventory.dates import DateRange
from generator.inventory.log import LogEntry
from generator.plan.jobs.job_days import days_of_job
from generator.plan.jobs.request import JobRequest
from generator.plan.model.job import Job, JobBefore, JobState, UpkeepJob
from generator.plan.model.plan import Plan
from generator.reference.steps import Step, StepPlan

_PUT_DOWN = ("seed", "plants")


@dataclass(frozen=True, slots=True)
class ClosedJob:
    """A job that closed without a record.

    `thing_id` is the place, stand, walk or water hole; `planting_id` is None but of a planting.
    `address` is its sheet's, None where the season is over and no sheet is made; `settled_by` is a
    later record after which nothing of it is left to do. It `is_optional` where it was to be done
    only after an answer that never came. It is `before_log` where it is of the season before and
    closed before its owner wrote down anything: nobody is asked for a record of that.
    """

    id: str
    thing_id: str
    planting_id: str | None
    season: int
    step: Step
    last_day: datetime.date
    address: str | None
    settled_by: LogEntry | None
    is_optional: bool
    before_log: bool = False


def jobs_before(
    season: int,
    requests: Iterable[JobRequest],
    states: Mapping[str, JobState],
    upkeep: Iterable[UpkeepJob],
    dates: Iterable[DateRange],
) -> tuple[JobBefore, ...]:
    """Return the jobs of the season before that were missed, the first to close first.

    `requests` are jobs of plantings and `upkeep` those of stands, walks and water holes that stand
    in no list of the season's own.
    """
    known = tuple(dates)
    of_plantings = (
        JobBefore(
            request.job_id,
            request.ground.id,
            request.planting.id,
            request.season,
            request.step,
            _last_left(request, closes, known),
        )
        for request in requests
        if request.season == season - 1 and states[request.job_id].kind == "missed"
        if (closes := request.dates.closes) is not None
    )
    of_upkeep = (
        JobBefore(job.id, job.subject.id, None, job.season, job.step, job.state.day)
        for job in upkeep
        if job.state.kind == "missed" and job.state.day is not None
    )
    found = (*of_plantings, *of_upkeep)
    return tuple(sorted(found, key=lambda job: (job.last_day, job.id)))


def _last_left(
    request: JobRequest, closes: datetime.date, dates: tuple[DateRange, ...]
) -> datetime.date:
    """Return the last open day that dates left of a job; its last one where they left none."""
    opens = request.dates.opens
    if opens is None or opens > closes:
        return closes
    left = days_of_job(dates, request.step, request.ground.id, (opens, closes)).left
    return left[-1][1] if left else closes


def closed_without_record(plan: Plan) -> tuple[ClosedJob, ...]:
    """Return the work that closed without a record by the plan's day, the last to close first."""
    settled = _settled_by(plan.entries, _sowing(plan.land.step_plans))
    found = [*_of_plantings(plan.jobs, settled, plan.entries), *_of_upkeep(plan.upkeep, settled)]
    found += [
        ClosedJob(
            job.id, job.thing_id, job.planting_id, job.season, job.step, job.last_day, None,
            settled(job.planting_id or job.thing_id, job.step, job.last_day),
            _waits(job.planting_id, job.step, plan.entries),
        )
        for job in plan.before
    ]  # fmt: skip
    begins = log_begins(plan)
    found = [
        replace(job, before_log=job.season < plan.season and job.last_day < begins) for job in found
    ]
    return tuple(sorted(found, key=lambda job: (-job.last_day.toordinal(), job.id)))


def log_begins(plan: Plan) -> datetime.date:
    """Return the day of the first record; without one the plan's day, for the owner alone.

    Others are not told when the owner's log begins: of theirs every job is asked for.
    """
    if plan.reader != "owner":
        return datetime.date.min
    return min((entry.done_on for entry in plan.entries), default=plan.as_of)


_Settled = Callable[[str, Step, datetime.date], LogEntry | None]


def _waits(planting_id: str | None, step: Step, entries: tuple[LogEntry, ...]) -> bool:
    """Return whether a step waits for an answer that no entry has given."""
    answered = {
        (entry.job.step, entry.job.answer)
        for entry in entries
        if entry.job is not None and entry.job.planting == planting_id
    }
    return any((need.step, need.answer) not in answered for need in step.needs)


def _of_plantings(
    jobs: Iterable[Job], settled: _Settled, entries: tuple[LogEntry, ...]
) -> Iterator[ClosedJob]:
    for job in jobs:
        if job.state.kind == "missed" and job.state.day is not None:
            day = job.state.day
            yield ClosedJob(
                job.id, job.place_id, job.planting_id, job.season, job.step, day, job.address,
                settled(job.planting_id, job.step, day),
                _waits(job.planting_id, job.step, entries),
            )  # fmt: skip


def _of_upkeep(jobs: Iterable[UpkeepJob], settled: _Settled) -> Iterator[ClosedJob]:
    for job in jobs:
        if job.state.kind == "missed" and job.state.day is not None:
            day, thing = job.state.day, job.subject.id
            yield ClosedJob(
                job.id, thing, None, job.season, job.step, day, job.address,
                settled(thing, job.step, day), False,
            )  # fmt: skip


def _sowing(step_plans: Iterable[StepPlan]) -> frozenset[str]:
    """Return the steps that put seed or plants into the ground, by id."""
    steps = (step for step_plan in step_plans for step in step_plan.steps)
    return frozenset(step.id for step in steps if step.does.puts_down in _PUT_DOWN)


def _settled_by(entries: tuple[LogEntry, ...], sowing: frozenset[str]) -> _Settled:
    """Return what finds the first record after a day that settles a step of a thing.

    The same step done later; an inspection of the thing, where the step only inspects; all its seed
    or plants in the ground, where the step made ready for them.
    """

    def found(thing_id: str, step: Step, day: datetime.date) -> LogEntry | None:
        later = (entry for entry in entries if entry.done_on > day)
        return next((entry for entry in later if _settles(entry, thing_id, step, sowing)), None)

    return found


def _settles(entry: LogEntry, thing_id: str, step: Step, sowing: frozenset[str]) -> bool:
    job = entry.job
    if job is not None and job.planting == thing_id:
        is_sown = job.step in sowing and bool(job.finished)
        if job.step == step.id or (is_sown and step.timing == "before_sowing"):
            return True
    if any((done.at, done.step) == (thing_id, step.id) for done in entry.upkeep):
        return True
    looked = entry.inspected is not None and thing_id in entry.inspected.what
    return looked and step.does.asks_sound
