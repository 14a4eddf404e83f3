"""Jobs that a stand, a walk or a water hole asks for in every season."""

import datetime
from collections.abc import Iterable

from generator.inventory.log import LogEntry
from generator.inventory.schema import SUBJECTS, Inventory, KeptUp
from generator.inventory.season import season_of
from generator.plan.jobs.ground import first_name
from generator.plan.jobs.job_days import days_of_job, on_usable_days, others_hunting, span_of
from generator.plan.jobs.safety import emergency_lines
from generator.plan.log.state import state_of, why_left_out
from generator.plan.model.job import UpkeepJob
from generator.plan.season.open_dates import open_dates
from generator.reference.steps import Step

_ASKED_FOR = "work"


def upkeep_jobs(
    inventory: Inventory,
    seasons: tuple[int, ...],
    entries: tuple[LogEntry, ...],
    as_of: datetime.date,
) -> tuple[UpkeepJob, ...]:
    """Return the jobs of everything with an upkeep in some seasons, by their open dates."""
    plans = inventory.plans()
    jobs = [
        _job(subject, step, inventory, year, entries, as_of)
        for subject in inventory.kept_up()
        if subject.upkeep is not None
        for step in plans[subject.upkeep].steps
        if step.only_with != _ASKED_FOR or step.id in subject.asked_for
        for year in seasons
    ]
    return upkeep_by_dates(jobs)


def upkeep_by_dates(jobs: Iterable[UpkeepJob]) -> tuple[UpkeepJob, ...]:
    """Return jobs by their open dates."""
    last = datetime.date.max
    return tuple(
        sorted(jobs, key=lambda job: (job.dates.opens or last, job.dates.closes or last, job.id))
    )


def _job(
    subject: KeptUp,
    step: Step,
    inventory: Inventory,
    season: int,
    entries: tuple[LogEntry, ...],
    as_of: datetime.date,
) -> UpkeepJob:
    dates = open_dates(step, season, inventory.property.season_signs)
    span = span_of(dates, season)
    others = others_hunting(inventory.dates, subject.id, span)
    done = _done_on(subject.id, step.id, season, entries)
    left_out = why_left_out(subject.id, step.id, season, entries)
    state = state_of(dates, done, None, (), as_of, left_out)
    days = days_of_job(inventory.dates, step, subject.id, span) if span[0] <= span[1] else None
    return UpkeepJob(
        id=f"{subject.id}/{season}/{step.id}",
        address=f"{first_name(subject.id, subject.was)}-{season}-{step.id}",
        subject=subject,
        kind=SUBJECTS[type(subject)],
        season=season,
        step=step,
        dates=dates,
        state=on_usable_days(state, days, as_of) if days is not None else state,
        safety=(*others, *emergency_lines(inventory.property.emergency)),
        days=days if days is not None and days.not_on else None,
    )


def _done_on(
    subject_id: str, step_id: str, season: int, entries: tuple[LogEntry, ...]
) -> datetime.date | None:
    """Return the last day on which the log has the step done there, for the season."""
    days = (
        entry.done_on
        for entry in entries
        for done in entry.upkeep
        if (done.at, done.step) == (subject_id, step_id)
        and (done.season or season_of(entry.done_on)) == season
    )
    return max(days, default=None)
