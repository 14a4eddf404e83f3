"""What the log says of a job: finished, begun, or nothing."""

import datetime

from generator.inventory.log import LogEntry
from generator.inventory.season import season_of
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.findings import finding
from generator.plan.log import entries_about
from generator.plan.model import Finding


def entries_on(asked: JobAsked, entries: tuple[LogEntry, ...]) -> tuple[LogEntry, ...]:
    """Return the entries about a job, of those that count on the plan's day.

    Of a step that comes back every season, those of the job's own season.
    """
    about = entries_about(asked.planting.id, asked.step.id, entries)
    if asked.plan.yearly_from is None:
        return about
    return tuple(one for one in about if _counts_for(one) == asked.season)


def _counts_for(entry: LogEntry) -> int:
    """Return the season an entry about a job counts for: the one it names, else its day's."""
    named = entry.job.season if entry.job is not None else None
    return season_of(entry.done_on) if named is None else named


def finished_on(on_job: tuple[LogEntry, ...]) -> datetime.date | None:
    """Return the day a job was finished, None while something of it is left to do."""
    days = [one.done_on for one in on_job if one.job is not None and one.job.finished]
    return max(days, default=None)


def begun_findings(asked: JobAsked, on_job: tuple[LogEntry, ...]) -> list[Finding]:
    """Return a caution on a job that is begun and not finished: its sheet is for all of it."""
    if not on_job:
        return []
    return [finding(Caution.BEGUN, asked.job_id, on_job[-1].where)]
