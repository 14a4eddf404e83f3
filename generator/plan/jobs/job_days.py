"""What dates take of a job's open days, and who else may be on the ground on them."""

import datetime
from collections.abc import Iterable
from dataclasses import replace

from generator.inventory.dates import HUNTED, DateRange
from generator.inventory.papers import OneCall
from generator.plan.model.days import ONE_DAY, Span, days_left_of, days_of, holds_on, in_words
from generator.plan.model.finding import SafetyLine
from generator.plan.model.job import Job, JobDays, JobState, OpenDates, UpkeepJob
from generator.plan.season.open_dates import day_in_season
from generator.reference.steps import Step

FIRST_OF_SEASON, LAST_OF_SEASON = (9, 1), (8, 31)
WORDS = {"quiet": "stay-out dates", "burn_ban": "a burn ban", "dry_spell": "a dry spell"}
# Seed sown on frost waits for the rain of spring.
WAITS_FOR_SPRING = "frost_seeding"


def taken_by(step: Step) -> tuple[str, ...]:
    """Return the kinds of dates on which a step must not be done."""
    if step.does.uses_fire:
        return ("quiet", "burn_ban")
    held = step.does.rain is not None and step.suits != WAITS_FOR_SPRING
    return ("quiet", "dry_spell") if held else ("quiet",)


def open_span(job: Job | UpkeepJob) -> Span:
    """Return first and last open day; an end that is not known is that of the season."""
    return span_of(job.dates, job.season)


def span_of(dates: OpenDates, season: int) -> Span:
    """Return first and last of open dates; an end that is not known is that of the season."""
    # wide where it is not known: no day on which others hunt may be missed
    opens = dates.opens or day_in_season(FIRST_OF_SEASON, season)
    return opens, dates.closes or day_in_season(LAST_OF_SEASON, season)


def days_left(job: Job, as_of: datetime.date) -> Span | None:
    """Return the open days from the plan's day on; None where an end is unknown or all is over."""
    opens, closes = job.dates.opens, job.dates.closes
    if opens is None or closes is None or max(opens, as_of) > closes:
        return None
    return max(opens, as_of), closes


def days_of_job(dates: Iterable[DateRange], step: Step, place_id: str, span: Span) -> JobDays:
    """Return what dates take of a span of open days of a step on a place."""
    known = tuple(dates)
    kinds = taken_by(step)
    not_on = days_of(known, kinds, place_id, span)
    before = not_on[0][0] - ONE_DAY if not_on else None
    why = [(WORDS[kind], days_of(known, (kind,), place_id, span)) for kind in kinds]
    return JobDays(
        not_on,
        days_left_of(span, not_on),
        before if before is not None and before >= span[0] else None,
        tuple(sorted((taken for taken in why if taken[1]), key=lambda taken: taken[1])),
    )


def with_days(
    jobs: tuple[Job, ...],
    dates: tuple[DateRange, ...],
    one_calls: tuple[OneCall, ...],
    as_of: datetime.date,
) -> tuple[Job, ...]:
    """Return the jobs with the days they must keep free, and lines on who and what is there.

    Of a job that is settled only what it had left, to call off its entries in older calendars.
    """
    return tuple(_with_days(job, dates, one_calls, as_of) for job in jobs)


def _with_days(
    job: Job, dates: tuple[DateRange, ...], one_calls: tuple[OneCall, ...], as_of: datetime.date
) -> Job:
    span = open_span(job)
    # it closes before it opens: there is no open day to take any of
    if span[0] > span[1]:
        return job
    days = days_of_job(dates, job.step, job.place_id, span)
    if job.state.is_settled:
        return replace(job, had_left=days.left)
    lines = (
        *others_hunting(dates, job.place_id, span),
        *_marked(job, one_calls, span),
    )
    return replace(
        job,
        days=days if days.not_on else None,
        state=on_usable_days(job.state, days, as_of),
        safety=(*lines, *job.safety),
    )


def on_usable_days(state: JobState, days: JobDays, as_of: datetime.date) -> JobState:
    """Return where a job stands by the days that dates leave of it.

    Missed once the last of them is over, though its open dates go on; where none was ever left it
    keeps its state, and a caution says so.
    """
    if not days.not_on or not days.left or state.kind not in ("open", "waiting", "missed"):
        return state
    ahead = [span for span in days.left if span[1] >= as_of]
    if not ahead:
        return JobState("missed", days.left[-1][1])
    if state.question is not None:
        return state
    if ahead[0][0] > as_of:
        return replace(state, kind="waiting", day=ahead[0][0])
    return replace(state, kind="open", day=ahead[-1][1])


def others_hunting(dates: tuple[DateRange, ...], where_id: str, span: Span) -> Iterable[SafetyLine]:
    """Yield a line with the days of a span on which a place, stand or walk is hunted."""
    hunted = days_of(dates, HUNTED, where_id, span)
    if hunted:
        yield SafetyLine("dates.others", "Others may be hunting here on", in_words(hunted))


def _marked(job: Job, calls: tuple[OneCall, ...], span: Span) -> Iterable[SafetyLine]:
    """Yield whether buried lines are marked, for work that opens the ground; a blank if not."""
    if not job.step.does.digs:
        return
    good = [call for call in calls if is_clear(call, job.place_id, span)]
    told = "; ".join(_request(call) for call in good)
    yield SafetyLine("dates.lines_marked", "Buried lines marked", told or None)


def is_clear(call: OneCall, place_id: str, span: Span) -> bool:
    """Return whether lines are marked on a place on some of the days."""
    if not holds_on(call.places, place_id) or call.clear_on is None:
        return False
    # some of the days are enough: the line says from when and until when they are marked
    return call.clear_on <= span[1] and (call.expires_on is None or call.expires_on >= span[0])


def _request(call: OneCall) -> str:
    number = f"request {call.number}, " if call.number else ""
    assert call.clear_on is not None
    if call.expires_on is None:
        return f"{number}dig from {in_words(((call.clear_on, call.clear_on),))}"
    return f"{number}dig {in_words(((call.clear_on, call.expires_on),))} only"
