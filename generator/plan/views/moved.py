"""Which jobs an entry of the log moved, that says a season marker was seen or takes that back."""

import datetime
from collections.abc import Mapping
from dataclasses import replace

from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.inventory.season import season_of
from generator.plan.jobs.ground import place_on_its_ground
from generator.plan.jobs.request import every_job
from generator.plan.jobs.soil import is_asked_for
from generator.plan.log.entries import entries_in_force
from generator.plan.log.state import states_of
from generator.plan.log.told import sprayings_of
from generator.plan.log.upkeep import upkeep_jobs
from generator.plan.model.days import day_words, span_words
from generator.plan.model.job import OpenDates
from generator.plan.season.season_markers import with_markers
from generator.plan.season.seen_signs import with_seen


@dataclass(frozen=True, slots=True)
class Moved:
    """A job whose open dates an entry moved, with its dates before and after."""

    words: str
    before: OpenDates
    after: OpenDates

    def told(self) -> str:
        """Return in one line how it moved."""
        return f"Moved: {self.words}, {_dates(self.after)}; it was {_dates(self.before)}."


def _dates(dates: OpenDates) -> str:
    opens, closes = dates.opens, dates.closes
    if opens is not None and closes is not None:
        return span_words(opens, closes) if opens <= closes else "no day"
    if opens is not None:
        return f"from {day_words(opens)}, last day not known"
    return f"until {day_words(closes)}, first day not known" if closes else "dates not known"


def jobs_moved(inventory: Inventory, entry: LogEntry) -> tuple[Moved, ...]:
    """Return the jobs still to do whose open dates are others with an entry than without it."""
    without = replace(
        inventory, entries=tuple(one for one in inventory.entries if one.id != entry.id)
    )
    # an entry that takes one back counts for the season of what it takes back
    at = {entry.done_on} | {one.done_on for one in inventory.entries if one.id == entry.corrects}
    as_of = max(one.done_on for one in inventory.entries)
    found: list[Moved] = []
    for season in sorted({season_of(day) for day in at}):
        before, after = (_open(one, season, as_of) for one in (without, inventory))
        found += (
            Moved(words, before[job_id][1], dates)
            for job_id, (words, dates) in after.items()
            if job_id in before and _ends(before[job_id][1]) != _ends(dates)
        )
    return tuple(found)


def _ends(dates: OpenDates) -> tuple[datetime.date | None, datetime.date | None]:
    return dates.opens, dates.closes


def _open(
    inventory: Inventory, season: int, as_of: datetime.date
) -> Mapping[str, tuple[str, OpenDates]]:
    """Return the jobs of a season that are not settled, by id: in words, with their dates."""
    entries = entries_in_force(inventory.entries, as_of, sprayings_of(inventory))
    marked = with_seen(with_markers(inventory)[0], entries)
    areas = {place.id: place_on_its_ground(place, season).area for place in marked.places()}
    requests = tuple(
        request
        for request in every_job(marked, areas, (season,))
        if request.season == season
        and is_asked_for(request.step, request.planting, marked.soil_tests)
    )
    states = states_of(requests, entries, as_of)
    found = {
        request.job_id: (f"{request.step.name}, {request.ground.name}", request.dates)
        for request in requests
        if not states[request.job_id].is_settled
    }
    upkeep = {
        job.id: (f"{job.step.name}, {job.subject.name or job.subject.id}", job.dates)
        for job in upkeep_jobs(marked, (season,), entries, as_of)
        if not job.state.is_settled
    }
    return {**found, **upkeep}
