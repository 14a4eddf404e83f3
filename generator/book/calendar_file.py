"""What of a reader's plan goes into a calendar: open days of jobs, days to keep, days to order by.

Everything comes from the plan of that reader, so nothing is in the file that is not on the pages.
UIDs are made from the addresses of sheets, which never move, and from nothing a reader does not
see. No amount and no product stands in an event: those are the sheet's.
"""

import uuid
from collections.abc import Iterator, Mapping
from dataclasses import replace

from generator.book.icalendar_text import Event, Reminder, as_icalendar
from generator.book.pages.dates import KINDS, placed
from generator.book.pages.written import CALENDAR, everything_to_do
from generator.book.text import clean
from generator.plan.budget import purchases
from generator.plan.calendar import day_in_season
from generator.plan.day_words import day_words
from generator.plan.days import comes_back, in_words
from generator.plan.job_days import FIRST_OF_SEASON, LAST_OF_SEASON
from generator.plan.model import Job, Plan, Span, UpkeepJob

# Of this program alone, made once.
NAMESPACE = uuid.UUID("6a0d5a0e-5c0e-5b43-9d0b-0f1a2c7b9e11")
BEFORE_OPENING, BEFORE_LAST_DAY, BEFORE_ORDER = 7, 3, 7
SETTLED = {"done": "Done", "not_needed": "Not needed", "missed": "Missed"}
STOPPED = "A stop stands on this job. Do not begin it: its sheet says what must be true first."
LABEL = (
    "Read the label on the container again before you begin. It decides over this entry and over "
    "the sheet."
)
GO_BY_THE_SHEET = "Work by the sheet with its numbers and cautions, never by this entry."
NO_DAY_LEFT = "No day is left on which it may be done."


def calendar_file(plan: Plan) -> Mapping[str, bytes]:
    """Return the calendar of a reader by its address."""
    events = sorted(_events(plan), key=lambda one: (one.first, one.last, one.key))
    named = [(str(uuid.uuid5(NAMESPACE, f"{plan.reader}/{one.key}")), one) for one in events]
    return {CALENDAR: as_icalendar(plan.title, plan.as_of, named)}


def _events(plan: Plan) -> Iterator[Event]:
    for job, is_stopped, place in everything_to_do(plan):
        yield from _of_job(plan, job, clean(place.name), is_stopped=is_stopped)
    yield from _kept_out(plan)
    yield from _dates(plan)
    yield from _others_out(plan)
    yield from _orders(plan)


def _of_job(plan: Plan, job: Job | UpkeepJob, where: str, *, is_stopped: bool) -> Iterator[Event]:
    """Yield an event for each window of a job, or one that calls an older one off."""
    opens, closes = job.dates.opens, job.dates.closes
    if opens is None or closes is None or closes < opens:
        return
    title = f"{clean(job.step.name)}: {where}"
    whole = Event(f"job/{job.address}", opens, closes, title, _told(plan, job, title), where)
    if job.state.kind in SETTLED:
        yield replace(whole, summary=f"{SETTLED[job.state.kind]}: {title}", status="CANCELLED")
        return
    windows = _windows(job, (opens, closes))
    if not windows:
        told = (NO_DAY_LEFT, *whole.description)
        yield replace(whole, summary=f"No day left: {title}", description=told, status="CANCELLED")
    for number, (first, last) in enumerate(windows, 1):
        summary = f"Stop, not yet: {title}" if is_stopped else title
        yield replace(
            whole,
            key=whole.key if number == 1 else f"{whole.key}/{number}",
            first=first,
            last=last,
            summary=summary,
            description=(STOPPED, *whole.description) if is_stopped else whole.description,
            status="TENTATIVE" if is_stopped else "CONFIRMED",
            reminders=(
                Reminder(BEFORE_OPENING, False, f"Opens {day_words(first)}. {summary}"),
                Reminder(BEFORE_LAST_DAY, True, f"Last day {day_words(last)}. {summary}"),
            ),
        )


def _windows(job: Job | UpkeepJob, whole: Span) -> tuple[Span, ...]:
    days = job.days if isinstance(job, Job) else None
    return days.left if days is not None else (whole,)


def _told(plan: Plan, job: Job | UpkeepJob, title: str) -> tuple[str, ...]:
    lines = [GO_BY_THE_SHEET]
    if job.step.operation == "spray":
        lines.append(LABEL)
    if isinstance(job, Job) and job.days is not None:
        lines.append(f"Not on {in_words(job.days.not_on)}.")
    lines.append(f"Sheet: {title}, work/{job.address}.html")
    return (*lines, _as_of(plan))


def _as_of(plan: Plan) -> str:
    return f"As of {day_words(plan.as_of)}. A file of a later day replaces this one."


def _kept_out(plan: Plan) -> Iterator[Event]:
    """Yield the days on which a label may still keep people out of what was sprayed."""
    for one in plan.records:
        last = one.keep_out.until()
        if one.place is not None and last >= plan.as_of:
            summary = f"Keep out until the label lets you back: {one.place.name}"
            told = (
                f"Sprayed {day_words(one.entry.done_on)}. The label may keep people and dogs out "
                f"until some time on {day_words(last)}.",
                LABEL,
                _as_of(plan),
            )
            key = f"keep-out/{one.entry.id}"
            yield Event(key, one.entry.done_on, last, summary, told, one.place.name)


def _dates(plan: Plan) -> Iterator[Event]:
    """Yield quiet dates, seasons, nesting and bans, which the owner alone has."""
    where = placed(plan)
    for one in plan.dates:
        for first, last in comes_back(one, _season(plan)):
            told = [f"Holds on: {where(one.places)}"]
            if one.looked_up_on is not None:
                told.append(f"Looked up {day_words(one.looked_up_on)}.")
            summary = f"{KINDS[one.kind]}: {where(one.places)}"
            yield Event(f"dates/{one.id}/{first.year}", first, last, summary, (*told, _as_of(plan)))


def _others_out(plan: Plan) -> Iterator[Event]:
    """Yield the days a partner is told of, on what is handed over."""
    where = placed(plan)
    for one in plan.others_out:
        on = where(one.on) if one.on else "all ground"
        for number, (first, last) in enumerate(one.spans, 1):
            key = f"others/{one.kind}/{'+'.join(one.on)}/{one.looked_up_on}/{number}"
            yield Event(key, first, last, f"{KINDS[one.kind]}: {on}", (_as_of(plan),))


def _orders(plan: Plan) -> Iterator[Event]:
    """Yield the day to order by of everything that is still to be bought."""
    for one in purchases(plan):
        order = one.order
        if one.nothing or order.by is None or order.state not in ("by", "now"):
            continue
        day, what = max(order.by, plan.as_of), one.item.words
        summary = f"Last day to order: {what}" if order.state == "by" else f"Order now: {what}"
        told = ["Packages, cost and what it is for: What to buy, buy.html."]
        if order.needed_from is not None:
            told.append(f"Needed from {day_words(order.needed_from)} on.")
        reminders = tuple(
            Reminder(days, False, f"Order by {day_words(day)}: {what}")
            for days in (BEFORE_ORDER, 0)
        )
        key = f"order/{plan.season}/{one.item.kind}/{one.item.id}"
        yield Event(key, day, day, summary, (*told, _as_of(plan)), reminders=reminders)


def _season(plan: Plan) -> Span:
    return (
        day_in_season(FIRST_OF_SEASON, plan.season),
        day_in_season(LAST_OF_SEASON, plan.season),
    )
