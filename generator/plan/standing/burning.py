"""Burning and mowing of standing screens: how much at once, how often, and what then hides."""

from collections.abc import Iterator, Mapping

from generator.compute.area import SHARE_OF_PLACE
from generator.inventory.log import LogEntry
from generator.inventory.places import Route, hidden_by
from generator.plan.findings.about_places import PlaceCaution, PlaceStop
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.log.done import entries_on
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.job import JobState
from generator.reference.steps import step_plans
from generator.units import convert
from generator.working import Figure, Reference

_GRASS = "native_grass"
_STANDING = "established_dormant"
MOST = "most_burnt_pct"  # what the shipped step of burning calls it
# Shares are printed in whole percent: a third of the place is 33 of a hundred.
HALF_A_PERCENT = 0.005


def burning_findings(
    requests: tuple[JobRequest, ...],
    ever: tuple[JobRequest, ...],
    routes: tuple[Route, ...],
    entries: tuple[LogEntry, ...],
    states: Mapping[str, JobState],
) -> Iterator[Finding]:
    """Yield what is against burning or mowing a standing screen, job by job.

    `requests` are the jobs of the season, `ever` those of every season.
    """
    for request in requests:
        if not shears_standing(request) or states[request.job_id].is_settled:
            continue
        if request.step.does.uses_fire:
            yield from _too_much(request, _burns_beside(request, ever, states))
            yield from _again(request, ever, entries, states)
        yield from _hides_nobody(request, routes)


def shears_standing(request: JobRequest) -> bool:
    """Return whether a job burns or mows the standing grass of a screen."""
    cut = request.step.does.shears is not None and request.step.timing == _STANDING
    return cut and request.kind == _GRASS


def _burns_beside(
    request: JobRequest, ever: tuple[JobRequest, ...], states: Mapping[str, JobState]
) -> tuple[JobRequest, ...]:
    """Return the burns of the same screen in the same season, done or still to come."""
    return tuple(
        other
        for other in ever
        if (other.ground.id, other.season) == (request.ground.id, request.season)
        and other.job_id != request.job_id
        and other.step.does.uses_fire
        and shears_standing(other)
        # what was missed burned nothing
        and (states[other.job_id].is_ahead or states[other.job_id].kind == "done")
    )


def _too_much(request: JobRequest, beside: tuple[JobRequest, ...]) -> Iterator[Finding]:
    most = _most_burnt(request)
    where = request.work.where if request.work is not None else request.planting.where
    figures: tuple[tuple[str, Figure], ...] = (("At most", most),)
    parts = [
        each.work.treated_sq_ft if each.work is not None else None for each in (request, *beside)
    ]
    measured = tuple(part for part in parts if part is not None)
    # a part that is not measured may be the whole screen, however small the others are
    if len(measured) < len(parts):
        yield finding(PlaceStop.BURNS_TOO_MUCH, about_job(request.job_id), where, figures)
        return
    share = SHARE_OF_PLACE(
        f"{request.job_id}/share_of_place_fraction", treated_sq_ft=measured, area_ac=request.area
    )
    if share.value >= convert(most.value, most.unit, "fraction") + HALF_A_PERCENT:
        yield finding(
            PlaceStop.BURNS_TOO_MUCH,
            about_job(request.job_id),
            where,
            (("Burns this season", share), *figures),
        )


def _most_burnt(request: JobRequest) -> Reference:
    """Return the most of a screen that burns in a season: as the step says, else as ours does."""
    shipped = (step for plan in step_plans().values() for step in plan.steps)
    figures = (each for step in (request.step, *shipped) for each in step.settings)
    return next(each for each in figures if each.name == MOST)


def _again(
    request: JobRequest,
    ever: tuple[JobRequest, ...],
    entries: tuple[LogEntry, ...],
    states: Mapping[str, JobState],
) -> Iterator[Finding]:
    before = (
        other
        for other in ever
        if (other.ground.id, other.season) == (request.ground.id, request.season - 1)
        and other.step.does.uses_fire
    )
    parts = [part for other in before for part in _parts(other, entries, states)]
    mine = _same(request.work.part if request.work is not None else None)
    # a part that is not told may be the same one
    if any(mine is None or part is None or _same(part) == mine for part in parts):
        where = request.work.where if request.work is not None else request.planting.where
        yield finding(PlaceStop.BURNS_AGAIN, about_job(request.job_id), where)


def _parts(
    request: JobRequest, entries: tuple[LogEntry, ...], states: Mapping[str, JobState]
) -> Iterator[str | None]:
    """Yield the parts that a burn took by the log, else is to take; None where unsaid."""
    logged = entries_on(request, entries)
    for entry in logged:
        yield entry.burned.part if entry.burned is not None else None
    if not logged and states[request.job_id].is_ahead:
        yield request.work.part if request.work is not None else None


def _same(part: str | None) -> str | None:
    return " ".join(part.split()).casefold() if part is not None else None


def _hides_nobody(request: JobRequest, routes: tuple[Route, ...]) -> Iterator[Finding]:
    names = [route.name for route in routes if route.id in hidden_by(request.ground)]
    if names:
        assert request.step.does.shears is not None
        yield finding(
            PlaceCaution.HIDES_NOBODY,
            about_job(request.job_id),
            request.ground.where,
            routes=" and ".join(names),
            cut=request.step.does.shears,
        )
