"""What the log says of a job: finished, begun, or nothing."""

import datetime

from generator.inventory.log import LogEntry
from generator.inventory.season import season_of
from generator.plan.findings.about_readers import ReaderCaution
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.log.entries import entries_about
from generator.plan.model.finding import Finding, about_job


def entries_on(request: JobRequest, entries: tuple[LogEntry, ...]) -> tuple[LogEntry, ...]:
    """Return the entries about a job, of those that count on the plan's day.

    Of a step that comes back every season, those of the job's own season.
    """
    about = entries_about(request.planting.id, request.step.id, entries)
    if request.plan.yearly_from is None:
        return about
    return tuple(entry for entry in about if _counts_for(entry) == request.season)


def _counts_for(entry: LogEntry) -> int:
    """Return the season an entry about a job counts for: the one it names, else its day's."""
    # work that was late is logged in the season after the one that it was for
    named = entry.job.season if entry.job is not None else None
    return season_of(entry.done_on) if named is None else named


def finished_on(on_job: tuple[LogEntry, ...]) -> datetime.date | None:
    """Return the day a job was finished, None while something of it is left to do."""
    days = [entry.done_on for entry in on_job if entry.job is not None and entry.job.finished]
    return max(days, default=None)


def begun_findings(request: JobRequest, on_job: tuple[LogEntry, ...]) -> list[Finding]:
    """Return a caution on a job that is begun and not finished: its sheet is for all of it."""
    if not on_job:
        return []
    return [finding(ReaderCaution.BEGUN, about_job(request.job_id), on_job[-1].where)]
