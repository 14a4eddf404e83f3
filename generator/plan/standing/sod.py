"""Sowing into living sod: a stop unless a kill is logged or planned before it."""

from collections.abc import Iterator, Mapping

from generator.inventory.places import CoverNow
from generator.plan.findings.about_places import PlaceCaution, PlaceStop
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.job import JobState

# What nobody is sure of counts as sod, and so does a place where no cover is typed.
LIVING_SOD = ("perennial_sod", "unsure")


def sod_findings(
    requests: tuple[JobRequest, ...],
    ever: tuple[JobRequest, ...],
    states: Mapping[str, JobState],
    stopped: frozenset[str],
) -> Iterator[Finding]:
    """Yield what living sod says against the sowings of a season.

    `ever` are the jobs of every season and `stopped` the ids of those on which a stop stands.
    """
    before_sowing: dict[tuple[str, str], list[JobRequest]] = {}
    for request in ever:
        if request.step.does.kills_sod and request.step.timing == "before_sowing":
            before_sowing.setdefault((request.planting.id, request.plan.id), []).append(request)
    for sowing in requests:
        cover = sowing.ground.cover_now
        if not sowing.step.does.sows or states[sowing.job_id].is_settled:
            continue
        if cover is not None and cover.kind not in LIVING_SOD:
            continue
        # its owner says what stands there; sod that was seen says otherwise, and counts
        if cover is None and sowing.planting.standing_since is not None:
            continue
        of_planting = before_sowing.get((sowing.planting.id, sowing.plan.id), [])
        kills = [kill for kill in of_planting if kill.season <= sowing.season]
        if any(states[kill.job_id].kind == "done" for kill in kills):
            continue
        planned = [kill for kill in kills if states[kill.job_id].is_ahead and _is_planned(kill)]
        if not planned:
            yield _not_planned(sowing, kills, states, cover)
        elif all(kill.job_id in stopped for kill in planned):
            # a caution alone: the stop stands on the kill, and one cause is to be one stop
            where = cover.where if cover is not None else None
            yield finding(PlaceCaution.SOD_NOT_CLEARED, about_job(sowing.job_id), where)


def _is_planned(kill: JobRequest) -> bool:
    # a spraying is no plan before it names what is sprayed
    return not kill.step.does.sprays or (kill.work is not None and kill.work.product is not None)


def _not_planned(
    sowing: JobRequest,
    kills: list[JobRequest],
    states: Mapping[str, JobState],
    cover: CoverNow | None,
) -> Finding:
    """Return the stop, with the fall that a kill needs: the one before, or the next to come."""
    in_time = any(states[kill.job_id].is_ahead for kill in kills)
    fall = sowing.season - 1 if in_time else sowing.season
    where = cover.where if cover is not None else sowing.ground.where
    return finding(
        PlaceStop.LIVING_SOD,
        about_job(sowing.job_id),
        where,
        fall=str(fall),
        season=str(fall + 1),
    )
