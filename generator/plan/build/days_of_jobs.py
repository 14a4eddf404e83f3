"""Fourth stage: stopped jobs without their work, and on which days each job can be done."""

import datetime
from collections.abc import Mapping
from dataclasses import replace

from generator.dataclass import dataclass
from generator.inventory.places import Hazards
from generator.inventory.schema import Inventory
from generator.plan.build.season_jobs import SeasonJobs
from generator.plan.build.typed_and_logged import Logged
from generator.plan.days.law import law_findings
from generator.plan.days.past_days import count_findings, counted_at, counted_days, ready_for
from generator.plan.days.shooting import hunted_dates, shooting_findings
from generator.plan.days.wind_days import wind_uses
from generator.plan.jobs.job_days import with_days
from generator.plan.jobs.near_lines import with_near
from generator.plan.jobs.safety import safety_lines
from generator.plan.model.finding import Finding
from generator.plan.model.job import Job
from generator.plan.model.plan import HuntedDates
from generator.plan.model.sits import KeepAway, SitAhead
from generator.plan.model.suited_days import CountedDays, WindUse
from generator.plan.sits.kept_away import kept_away, with_hours_away
from generator.plan.sits.sit_findings import sit_findings
from generator.plan.sits.sits_ahead import not_over, sits_ahead


@dataclass(frozen=True, slots=True)
class JobsInTime:
    """Jobs in the order of their dates, a stop in the place of work, with the days that are left.

    `suited` and `wind_use` are by the id of a job.
    """

    jobs: tuple[Job, ...]
    suited: Mapping[str, CountedDays]
    wind_use: Mapping[str, WindUse]
    hunted: tuple[HuntedDates, ...]
    sits: tuple[SitAhead, ...]
    keep_away: tuple[KeepAway, ...]
    findings: tuple[Finding, ...]


def days_of_jobs(logged: Logged, season: SeasonJobs, stopped: frozenset[str]) -> JobsInTime:
    """Return the jobs with their days; `stopped` are the ids of those on which a stop stands."""
    inventory, weather, as_of = logged.inventory, logged.weather, logged.as_of
    near = {place.id: place.near for place in inventory.places()}
    held = tuple(
        _held_back(job, inventory, near[job.place_id]) if job.id in stopped else job
        for job in sorted(season.jobs, key=_by_dates)
    )
    ordered = with_days(
        with_near(held, inventory.places(), inventory.land),
        inventory.dates,
        inventory.one_calls,
        as_of,
    )
    station = counted_at(weather.stations) if weather is not None else None
    ready = ready_for(ordered, station.series) if station is not None else {}
    suited = counted_days(ordered, ready, as_of)
    hunted = hunted_dates(inventory, logged.season)
    sits = not_over(inventory, as_of)
    away = kept_away(inventory, sits)
    return JobsInTime(
        with_hours_away(ordered, away),
        suited,
        wind_uses(ordered, weather.winds if weather else (), ready, as_of),
        hunted,
        sits_ahead(inventory, hunted, as_of),
        away,
        (
            *shooting_findings(hunted),
            *law_findings(hunted, inventory.looked_up),
            *count_findings(ordered, suited),
            *sit_findings(inventory, sits, away),
        ),
    )


def _held_back(job: Job, inventory: Inventory, near: Hazards | None) -> Job:
    """Return a stopped job without any amount: the stop stands in their place."""
    safety = safety_lines(inventory.property.emergency, near, None)
    return replace(job.without_amounts(), safety=safety)


def _by_dates(job: Job) -> tuple[datetime.date, datetime.date, str]:
    last = datetime.date.max
    return (job.dates.opens or last, job.dates.closes or last, job.id)
