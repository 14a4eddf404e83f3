"""Years ahead: the plan's season and the four after it, in work, ground, money and heights.

A season that is only looked at has jobs with dates and states, and no amounts: no money is worked
out for it, and none is guessed.
"""

import datetime
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import replace

from generator.compute.buying import TOTAL_COUNT
from generator.dataclass import dataclass
from generator.inventory.dates import DateRange
from generator.inventory.money import CostShare
from generator.inventory.places import Screen
from generator.plan.jobs.job_days import days_of_job, on_usable_days, span_of
from generator.plan.jobs.request import JobRequest
from generator.plan.model.items import StockItem
from generator.plan.model.job import Job, JobAhead, JobState, UpkeepJob
from generator.plan.model.place import Place
from generator.plan.model.plan import Land, Plan
from generator.plan.standing.cover_by_season import (
    SEASONS_SHOWN,
    Grown,
    SeasonAcres,
    acres_in,
    grown_in,
)
from generator.plan.standing.heights import Heights, heights_on
from generator.plan.standing.planting_curves import growing_on
from generator.plan.standing.stretches import Stretch, counts_of, thin_stretches
from generator.reference.growth import Curve
from generator.reference.operations import work_groups
from generator.working import Quantity, Reference

FALL_DAY = (11, 15)
# no high curve: a screen that may not be there yet is not counted on
_CAREFUL: tuple[Curve, ...] = ("low", "typical")


@dataclass(frozen=True, slots=True)
class WorkAhead:
    """The jobs of one group of work in a season, by their dates, and how many they are."""

    title: str
    jobs: tuple[Job | JobAhead, ...]
    count: Quantity


@dataclass(frozen=True, slots=True)
class ScreenAhead:
    """A screen with what stands on it and how tall, on one day.

    `grown` is None where nothing stands, `heights` where its growth is not known. What lasts is
    `too_young` in its first season: it hides nobody yet. `thin` are the stretches that hide nobody
    because their last count found too few plants.
    """

    place: Place
    grown: Grown | None
    heights: Heights | None
    too_young: bool
    thin: tuple[Stretch, ...]


@dataclass(frozen=True, slots=True)
class SeasonAhead:
    """What one season brings; what its money comes to is known of the plan's season alone.

    `takes` are the things that jobs still ahead take, `shares` what a contract pays of plantings of
    the season. `standing_on` is the day of `screens`, in the fall after the season's growth.
    """

    season: int
    work: tuple[WorkAhead, ...]
    acres: SeasonAcres
    standing_on: datetime.date
    screens: tuple[ScreenAhead, ...]
    takes: tuple[StockItem, ...]
    shares: tuple[CostShare, ...]

    @property
    def jobs(self) -> tuple[Job | JobAhead, ...]:
        """Every job of the season, group by group."""
        return tuple(job for group in self.work for job in group.jobs)


def seasons_ahead(season: int) -> range:
    """Return the plan's season and those after it that are looked at."""
    return range(season, season + SEASONS_SHOWN)


def jobs_ahead(
    requests: Iterable[JobRequest],
    states: Mapping[str, JobState],
    dates: tuple[DateRange, ...],
    season: int,
    as_of: datetime.date,
) -> tuple[JobAhead, ...]:
    """Return the jobs of the seasons after the plan's, as far as they are looked at.

    `dates` are those typed so far: most stay-out dates of a later season are not.
    """
    later = seasons_ahead(season)[1:]
    return tuple(
        _ahead(request, states[request.job_id], dates, as_of)
        for request in requests
        if request.season in later
    )


def _ahead(
    request: JobRequest, state: JobState, dates: tuple[DateRange, ...], as_of: datetime.date
) -> JobAhead:
    job = JobAhead(
        id=request.job_id,
        place_id=request.ground.id,
        planting_id=request.planting.id,
        season=request.season,
        step=request.step,
        dates=request.dates,
        state=state,
    )
    first, last = span_of(request.dates, request.season)
    if first > last or state.is_settled:
        return job
    days = days_of_job(dates, request.step, request.ground.id, (first, last))
    taken = days if days.not_on else None
    return replace(job, days=taken, state=on_usable_days(state, days, as_of))


def years_ahead(plan: Plan) -> tuple[SeasonAhead, ...]:
    """Return the seasons of the owner's plan that are looked at, its own first."""
    return plan.once("years ahead", _years_ahead)


def _years_ahead(plan: Plan) -> tuple[SeasonAhead, ...]:
    return tuple(_season_ahead(plan, season) for season in seasons_ahead(plan.season))


def _season_ahead(plan: Plan, season: int) -> SeasonAhead:
    every: tuple[Job | JobAhead, ...] = (*plan.jobs, *plan.ahead)
    jobs = tuple(job for job in every if job.season == season)
    day = datetime.date(season, *FALL_DAY)
    return SeasonAhead(
        season,
        _work(plan, season, jobs),
        acres_in(plan, season),
        day,
        _screens(plan, season, day),
        _takes(plan.items, jobs),
        _shares(plan.places, plan.land, season),
    )


def _work(plan: Plan, season: int, jobs: tuple[Job | JobAhead, ...]) -> tuple[WorkAhead, ...]:
    found = []
    for group in work_groups().values():
        mine = sorted((job for job in jobs if job.step.does.group == group), key=_by_dates)
        if mine:
            name = f"ahead/{plan.season}/{season}/{group.id}_count"
            count = TOTAL_COUNT(name, parts=_counted(mine))
            found.append(WorkAhead(group.name, tuple(mine), count))
    return tuple(found)


def _by_dates(job: Job | JobAhead) -> tuple[datetime.date, datetime.date, str]:
    last = datetime.date.max
    return (job.dates.opens or last, job.dates.closes or last, job.id)


def _counted(jobs: Iterable[Job | JobAhead]) -> tuple[Reference, ...]:
    """Return how many jobs of each step there are; which they are is listed beside the count."""
    steps = Counter(job.step.name for job in jobs)
    return tuple(
        Reference("job_count", float(count), "count", "arithmetic", name)
        for name, count in steps.items()
    )


def _screens(plan: Plan, season: int, day: datetime.date) -> tuple[ScreenAhead, ...]:
    stands = {grown.place.id: grown for grown in grown_in(plan, season)}
    found = []
    for place in plan.places:
        if not isinstance(place.typed, Screen):
            continue
        grown = stands.get(place.id)
        known = [
            planted
            for planted in growing_on(plan, place)
            if grown and planted.planting.id == grown.planting.id
        ]
        heights = heights_on(known[0], day, _CAREFUL) if known else None
        # of what nobody knows how it grows none hides in its first season
        lasts = not known or known[0].growth.lives_on
        too_young = grown is not None and grown.year == 1 and lasts
        thin = (
            thin_stretches(known[0], counts_of(plan.decided, known[0].planting.id)) if known else ()
        )
        found.append(ScreenAhead(place, grown, heights, too_young, thin))
    return tuple(found)


def _takes(items: tuple[StockItem, ...], jobs: tuple[Job | JobAhead, ...]) -> tuple[StockItem, ...]:
    steps = {(job.planting_id, job.step.id) for job in jobs if job.state.is_ahead}
    return tuple(item for item in items if item.taken & steps)


def _shares(places: tuple[Place, ...], land: Land, season: int) -> tuple[CostShare, ...]:
    plantings = {
        planting.id
        for place in places
        if place.typed is not None
        for planting in place.typed.plantings
        if planting.season == season
    }
    return tuple(share for share in land.cost_share if share.planting in plantings)


def every_year(upkeep: tuple[UpkeepJob, ...], season: int) -> tuple[tuple[UpkeepJob, ...], ...]:
    """Return the upkeep of stands, walks and water holes, one step with the same days a group.

    It comes back in every season on the same days, but for what stay-out dates take of them.
    """
    groups: dict[tuple[str, str, str, str], list[UpkeepJob]] = {}
    for job in upkeep:
        if job.season == season:
            ends = (str(job.dates.opens), str(job.dates.closes))
            groups.setdefault((*ends, job.step.id, str(job.usable)), []).append(job)
    return tuple(tuple(jobs) for _, jobs in sorted(groups.items(), key=lambda entry: entry[0]))


def ahead_numbers(plan: Plan) -> list[Quantity]:
    """Return every computed number of the years ahead that stands on a page."""
    numbers: list[Quantity] = []
    for season in years_ahead(plan):
        numbers += [group.count for group in season.work]
        numbers += season.acres.acres.values()
        shown = (screen.heights for screen in season.screens if not screen.too_young)
        numbers += [number for found in shown if found for number in found.by_curve.values()]
    return numbers
