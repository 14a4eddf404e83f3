"""Second stage: the jobs of a season, each with its work and what is said of it alone."""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping

from generator.dataclass import dataclass
from generator.inventory.ground import SoilTest
from generator.inventory.schema import Reader
from generator.inventory.season import season_of
from generator.plan.build.planned_job import planned_job
from generator.plan.build.typed_and_logged import Logged
from generator.plan.findings.about_places import PlaceCaution, PlaceNote, PlaceStop
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest, every_job, yearly_jobs
from generator.plan.jobs.slope import steep_cautions
from generator.plan.jobs.soil import is_asked_for
from generator.plan.labels.yearly_sums import PlannedSpray
from generator.plan.land.kept_off import GroundLeft
from generator.plan.log.done import begun_findings, entries_on
from generator.plan.log.state import states_of
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.job import Job, JobState
from generator.plan.season.open_dates import do_not_meet
from generator.plan.sowing.sow_job import season_reaches
from generator.plan.spraying.logged_sprays import as_logged
from generator.plan.spraying.spots import left_to_spray
from generator.plan.spraying.spray_job import planned_sprays
from generator.plan.usual.causes import with_causes
from generator.plan.usual.usual_findings import usual_findings
from generator.plan.views.years_ahead import seasons_ahead
from generator.reference.library import marker_names


@dataclass(frozen=True, slots=True)
class SeasonJobs:
    """The jobs of a season and of those about it, as asked for and as planned.

    `every` are asked for in the seasons before, of and after the plan's, and `states` say where
    each stands; `requests` are those that are planned, `jobs` what is planned of them, in the same
    order. `later` come back every season and are looked at alone. `sprays` are what is put on the
    ground, as planned or as the log says.
    """

    every: tuple[JobRequest, ...]
    requests: tuple[JobRequest, ...]
    later: tuple[JobRequest, ...]
    states: Mapping[str, JobState]
    sprays: tuple[PlannedSpray, ...]
    jobs: tuple[Job, ...]
    findings: tuple[Finding, ...]

    def still_ahead(self) -> tuple[JobRequest, ...]:
        """Return the jobs of other seasons that can still come."""
        return tuple(job for job in self.not_planned() if self.states[job.job_id].is_ahead)

    def not_planned(self) -> tuple[JobRequest, ...]:
        """Return the jobs of other seasons, which stand in none of the season's lists."""
        planned = {request.job_id for request in self.requests}
        return tuple(request for request in self.every if request.job_id not in planned)


def season_jobs(logged: Logged) -> SeasonJobs:
    """Return the jobs of a season with their work, worked out as if nothing stopped them."""
    inventory, season, as_of = logged.inventory, logged.season, logged.as_of
    # a label's year takes in the sprayings of the seasons before and after
    every = _asked_for(
        every_job(inventory, logged.areas, (season - 1, season, season + 1)), inventory.soil_tests
    )
    # looked at alone: what comes back every season is planned no further than the next
    later = _asked_for(
        yearly_jobs(inventory, logged.areas, seasons_ahead(season)[2:]), inventory.soil_tests
    )
    states = states_of(every, logged.entries, as_of)
    requests = tuple(
        request
        for request in every
        if request.season == season or _is_owed(request, states[request.job_id], season, as_of)
    )
    left = left_to_spray(every, inventory)
    sprays = _sprays(every, logged, left)
    on_ground = _by_ground(sprays)
    reached = season_reaches(requests, season, inventory, logged.entries, as_of, states)
    planned = [
        planned_job(
            request,
            states[request.job_id],
            inventory,
            on_ground.get(request.ground.id, ()),
            reached,
            left.get(request.job_id),
        )
        for request in requests
    ]
    jobs = tuple(job for job, _ in planned)
    found = [
        *(
            told
            for request, (job, of_work) in zip(requests, planned, strict=True)
            # of what is done or not needed nothing is asked any more
            if not job.state.is_settled
            for told in (*_of_request(request, logged), *of_work)
        ),
        *usual_findings(requests, jobs, logged.places.values(), inventory, season),
    ]
    return SeasonJobs(
        every=every,
        requests=requests,
        later=later,
        states={**states_of(later, logged.entries, as_of), **states},
        sprays=sprays,
        jobs=jobs,
        # where stops of jobs and slips of sprayers are both there to be joined
        findings=tuple(with_causes(found, requests, inventory.sprayers, inventory.products)),
    )


def _asked_for(
    requests: Iterable[JobRequest], soil_tests: tuple[SoilTest, ...]
) -> tuple[JobRequest, ...]:
    return tuple(
        request for request in requests if is_asked_for(request.step, request.planting, soil_tests)
    )


def _is_owed(request: JobRequest, state: JobState, season: int, as_of: datetime.date) -> bool:
    """Return whether the season before, while it runs, still owes a job to a season's plan."""
    return request.season == season - 1 == season_of(as_of) and state.is_ahead


def _sprays(
    every: tuple[JobRequest, ...], logged: Logged, left: Mapping[str, GroundLeft]
) -> tuple[PlannedSpray, ...]:
    planned = tuple(
        spray
        for request in every
        if request.step.does.sprays
        for spray in planned_sprays(
            request,
            logged.inventory,
            logged.grounds[request.ground.id],
            left[request.job_id],
        )
    )
    # before labels are asked: a year adds up what was sprayed, not what was planned of it
    return as_logged(
        planned, every, logged.inventory, logged.entries, logged.grounds, logged.areas, left
    )


def _by_ground(sprays: Iterable[PlannedSpray]) -> Mapping[str, tuple[PlannedSpray, ...]]:
    """Return the sprayings by the places on whose ground each lies or may lie, in their order."""
    found: dict[str, list[PlannedSpray]] = defaultdict(list)
    for spray in sprays:
        for place_id in spray.grounds:
            found[place_id].append(spray)
    return {place_id: tuple(here) for place_id, here in found.items()}


def _of_request(request: JobRequest, logged: Logged) -> Iterator[Finding]:
    """Yield what is to be said of a job before its work is looked at."""
    yield from begun_findings(request, entries_on(request, logged.entries))
    yield from steep_cautions(request, logged.inventory)
    yield from _date_findings(request, logged.as_of)
    yield from _name_findings(request, logged.inventory.readers)


def _date_findings(request: JobRequest, as_of: datetime.date) -> Iterator[Finding]:
    dates = request.dates
    if dates.missing_signs:
        signs = ", ".join(marker_names()[sign].lower() for sign in dates.missing_signs)
        yield finding(PlaceCaution.DATES_OPEN, about_job(request.job_id), signs=signs)
    elif do_not_meet(dates):
        assert dates.opens is not None
        assert dates.closes is not None
        opens, closes = day_words(dates.opens), day_words(dates.closes)
        yield finding(
            PlaceStop.DATES_DO_NOT_MEET, about_job(request.job_id), opens=opens, closes=closes
        )
    elif dates.closes and dates.closes < as_of:
        yield finding(PlaceNote.PAST, about_job(request.job_id))


def _name_findings(request: JobRequest, readers: tuple[Reader, ...]) -> Iterator[Finding]:
    if request.ground.known_as is None and any(
        reader.has(request.planting.id, request.step.id) for reader in readers
    ):
        yield finding(PlaceStop.NO_NAME_FOR_OTHERS, about_job(request.job_id), request.ground.where)
