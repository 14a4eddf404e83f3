"""Days of jobs that do not go with them: outside their season, or answered before asked."""

import datetime
from collections.abc import Callable, Iterator, Mapping

from generator.inventory.log import LogEntry
from generator.inventory.places import PlantedGround
from generator.inventory.schema import SeasonMarkers
from generator.inventory.season import FIRST_MONTH_OF_A_SEASON
from generator.plan.doubts.doubt import (
    Confirmed,
    Doubt,
    StepLogged,
    about,
    day_of,
    is_confirmed,
    steps_to_log,
)
from generator.plan.findings.about_doubts import DoubtCaution
from generator.plan.log.entries import entries_about
from generator.plan.model.days import Span, day_words
from generator.plan.model.job import OpenDates
from generator.plan.season.open_dates import open_dates
from generator.plan.season.season_markers import markers_for
from generator.reference.steps import StepPlan

Markers = Callable[[], SeasonMarkers | None]


def days_that_do_not_fit(
    places: tuple[PlantedGround, ...],
    plans: Mapping[str, StepPlan],
    entries: tuple[LogEntry, ...],
    signs: Markers,
    confirmed: Confirmed,
) -> Iterator[Doubt]:
    """Yield every entry of a job on a day outside its season, or before what it answers.

    Signs are asked for where a day is in question alone: finding them in a weather record takes
    time.
    """
    steps = steps_to_log(places, plans)
    for entry in entries:
        job = about(entry, steps)
        if job is None or is_confirmed(confirmed, entry):
            continue
        found = _answered_before(entry, job, entries, signs)
        # one question for one day: putting it right may answer both
        found = found or _outside(entry, job, signs)
        if found is not None:
            yield found


def season_span(season: int) -> Span:
    """Return the first and the last day of a season.

    >>> [str(day) for day in season_span(2027)]
    ['2026-09-01', '2027-08-31']
    """
    first = datetime.date(season - 1, FIRST_MONTH_OF_A_SEASON, 1)
    return first, first.replace(year=season) - datetime.timedelta(days=1)


def _answered_before(
    entry: LogEntry, job: StepLogged, entries: tuple[LogEntry, ...], signs: Markers
) -> Doubt | None:
    if entry.job is None or entry.job.answer is None or job.step.asks is None:
        return None
    # what the log itself says comes first, and needs no signs
    why = _done_later(entry, job, entries)
    if not why:
        opens, _ = _widest(_dates(entry, job, signs))
        if opens is None or entry.done_on >= opens:
            return None
        why = f"it can be asked from {day_words(opens)} on"
    words = {"job": job.words, "day": day_of(entry), "why": why, "entry": entry.id}
    return Doubt(DoubtCaution.ANSWERED_BEFORE, entry, words)


def _done_later(entry: LogEntry, job: StepLogged, entries: tuple[LogEntry, ...]) -> str:
    """Return what the question is about and was finished after it was answered, or nothing."""
    order = [step.id for step in job.plan.steps]
    # a question is about what stands before it in its plan
    for step in job.plan.steps[: order.index(job.step.id)]:
        # what a later step of a plan can ask about: it is answered once this is done
        if not (step.does.sprays or step.does.begins_planting):
            continue
        for work in entries_about(job.planting.id, step.id, entries):
            assert work.job is not None
            same = job.season_for(work) == job.season_for(entry) or job.plan.yearly_from is None
            if work.job.finished and same and work.done_on > entry.done_on:
                return f"{step.name} was finished on {day_of(work)}"
    return ""


def _outside(entry: LogEntry, job: StepLogged, signs: Markers) -> Doubt | None:
    assert entry.job is not None
    season = job.season_for(entry)
    # put off, so nothing was done on the day
    if entry.job.decide_on is not None:
        return None
    if job.plan.yearly_from is not None:
        wrong = not _is_kept_up_in(season, job)
    else:
        first, last = season_span(season)
        # open dates last: their signs may have to be found in a weather record
        wrong = not first <= entry.done_on <= last and not _is_open(entry, job, signs)
    if not wrong:
        return None
    words = {
        "job": job.words,
        "day": day_of(entry),
        "why": _why(season, job),
        "entry": entry.id,
    }
    return Doubt(DoubtCaution.OUT_OF_SEASON, entry, words, season=season)


def _why(season: int, job: StepLogged) -> str:
    if job.plan.yearly_from is not None:
        return f"is no job of season {season} on that planting"
    first, last = season_span(season)
    return f"belongs to season {season}, from {day_words(first)} to {day_words(last)}"


def _is_kept_up_in(season: int, job: StepLogged) -> bool:
    """Whether a planting has its yearly steps in a season: until a later one takes its place."""
    planting = job.planting
    later = [other.season for other in job.place.plantings if other.season > planting.season]
    first = planting.season + (job.plan.yearly_from or 0)
    return first <= season < min(later, default=season + 1)


def _is_open(entry: LogEntry, job: StepLogged, signs: Markers) -> bool:
    """Whether the open dates of a step reach over the end of its season, to the day of an entry."""
    opens, closes = _widest(_dates(entry, job, signs))
    return opens is not None and closes is not None and opens <= entry.done_on <= closes


def _dates(entry: LogEntry, job: StepLogged, signs: Markers) -> OpenDates:
    return open_dates(job.step, job.season_for(entry), markers_for(job.planting, signs()))


def _widest(dates: OpenDates) -> tuple[datetime.date | None, datetime.date | None]:
    """Return the first day of any year, early ones included, and the last."""
    # the widest of all years: a doubt must not rest on how early one spring came
    opens = [dates.opens, *(year.opens for year in dates.by_year)]
    closes = [dates.closes, *(year.closes for year in dates.by_year)]
    return (
        min((day for day in opens if day is not None), default=None),
        max((day for day in closes if day is not None), default=None),
    )
