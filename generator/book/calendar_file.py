"""What of a reader's plan goes into calendars: open days of jobs, days to keep, days to order by.

Two files: one of single days with reminders, to subscribe to, in which a span is its first day and
its last; one of the spans themselves, to look at. Everything comes from the plan of that reader,
so nothing is in the files that is not on the pages. UIDs are made from the addresses of sheets,
which never move, and from nothing a reader does not see. No amount and no product stands in an
event: those are the sheet's.
"""

import uuid
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from generator.book.icalendar_text import Event, Reminder, as_icalendar
from generator.book.mornings import spared
from generator.book.pages.dates import DATE_KINDS, placed
from generator.book.pages.written import CALENDAR, CALENDAR_SPANS, everything_to_do
from generator.book.text import clean
from generator.dataclass import dataclass
from generator.plan.jobs.job_days import FIRST_OF_SEASON, LAST_OF_SEASON
from generator.plan.model.days import ONE_DAY, Span, comes_back, day_words, in_words
from generator.plan.model.job import Job, UpkeepJob
from generator.plan.model.plan import Plan
from generator.plan.season.open_dates import day_in_season

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


@dataclass(frozen=True, slots=True)
class _Span:
    """Days from a first to a last one as one event, and what entries of single days say of it.

    `between` is for what must be seen on each of its days.
    """

    whole: Event
    first_day: str
    last_day: str
    only_day: str
    between: str | None = None
    reminded: bool = False


def calendar_file(plan: Plan) -> Mapping[str, bytes]:
    """Return the calendars of a reader by their addresses."""
    spans = list(_spans(plan))
    days = [day for span in spans for day in _single_days(span)]
    single = spared([*days, *_orders(plan)], plan.as_of, _as_of(plan))
    # keys of their own: both files can be taken into one calendar, where a UID is of one entry
    whole = [replace(span.whole, key=f"span/{span.whole.key}") for span in spans]
    return {
        CALENDAR: _written(plan, plan.title, single),
        CALENDAR_SPANS: _written(plan, f"{plan.title}: from first day to last", whole),
    }


def _written(plan: Plan, name: str, events: Iterable[Event]) -> bytes:
    ordered = sorted(events, key=lambda event: (event.first, event.last, event.key))
    # the kind of reader is part of it: files of two readers share no entry either
    named = [(str(uuid.uuid5(NAMESPACE, f"{plan.reader}/{event.key}")), event) for event in ordered]
    return as_icalendar(name, plan.as_of, named)


def _spans(plan: Plan) -> Iterator[_Span]:
    for job, is_stopped, place in everything_to_do(plan):
        yield from _of_job(plan, job, clean(place.name), is_stopped=is_stopped)
    yield from _kept_out(plan)
    yield from _dates(plan)
    yield from _others_out(plan)


def _single_days(span: _Span) -> Iterator[Event]:
    """Yield the entry of the first day and of the last, each with its reminder."""
    whole = span.whole
    first, last = whole.first, whole.last
    told = (f"{day_words(first)} to {day_words(last)}.", *whole.description)
    opens = Reminder(BEFORE_OPENING, f"Opens {day_words(first)}. {whole.summary}")
    closes = Reminder(BEFORE_LAST_DAY, f"Last day {day_words(last)}. {whole.summary}")
    if first == last:
        reminders = (opens, closes) if span.reminded else ()
        yield replace(whole, summary=span.only_day, reminders=reminders)
        return
    entry = replace(whole, description=told)
    yield replace(
        entry, last=first, summary=span.first_day, reminders=(opens,) if span.reminded else ()
    )
    for count in range(1, (last - first).days if span.between is not None else 1):
        day = first + count * ONE_DAY
        yield replace(
            entry, key=f"{whole.key}/{day}", first=day, last=day, summary=span.between or ""
        )
    yield replace(
        entry,
        # by what it is, not by its day: a last day that moves is the same entry on another day
        key=f"{whole.key}/last",
        first=last,
        summary=span.last_day,
        reminders=(closes,) if span.reminded else (),
    )


def _of_job(plan: Plan, job: Job | UpkeepJob, where: str, *, is_stopped: bool) -> Iterator[_Span]:
    """Yield a span for each window of a job, or what calls each of its older ones off."""
    opens, closes = job.dates.opens, job.dates.closes
    if opens is None or closes is None or closes < opens:
        return
    title = f"{clean(job.step.name)}: {where}"
    whole = Event(f"job/{job.address}", opens, closes, title, _told(plan, job, title), where)
    windows = _windows(job, (opens, closes))
    # kept as called off: an entry that is merely left out stays on a phone that has it
    if job.state.kind in SETTLED:
        for event in _in_windows(whole, windows or ((opens, closes),)):
            yield _called_off(event, f"{SETTLED[job.state.kind]}: {title}")
        return
    if not windows:
        told = (NO_DAY_LEFT, *whole.description)
        yield _called_off(replace(whole, description=told), f"No day left: {title}")
    before = "Stop, not yet. " if is_stopped else ""
    for window in _in_windows(whole, windows):
        event = replace(
            window,
            summary=f"{before}{title}",
            description=(STOPPED, *whole.description) if is_stopped else whole.description,
            status="TENTATIVE" if is_stopped else "CONFIRMED",
        )
        yield _Span(
            event,
            first_day=f"{before}Opens: {title}",
            last_day=f"{before}Last day: {title}",
            only_day=f"{before}Opens, and last day: {title}",
            reminded=True,
        )


def _in_windows(whole: Event, windows: tuple[Span, ...]) -> Iterator[Event]:
    """Yield an event for each window, the first under the key of the whole."""
    for number, (first, last) in enumerate(windows, 1):
        key = whole.key if number == 1 else f"{whole.key}/{number}"
        yield replace(whole, key=key, first=first, last=last)


def _called_off(whole: Event, summary: str) -> _Span:
    event = replace(whole, summary=summary, status="CANCELLED")
    return _Span(event, first_day=summary, last_day=summary, only_day=summary)


def _windows(job: Job | UpkeepJob, whole: Span) -> tuple[Span, ...]:
    if not isinstance(job, Job):
        return job.usable or (whole,)
    if job.state.is_settled:
        return job.had_left or (whole,)
    return job.days.left if job.days is not None else (whole,)


def _told(plan: Plan, job: Job | UpkeepJob, title: str) -> tuple[str, ...]:
    lines = [GO_BY_THE_SHEET]
    if job.step.does.sprays:
        lines.append(LABEL)
    if job.days is not None:
        lines.append(f"Not on {in_words(job.days.not_on)}.")
    lines.append(f"Sheet: {title}, work/{job.address}.html")
    return (*lines, _as_of(plan))


def _as_of(plan: Plan) -> str:
    return f"As of {day_words(plan.as_of)}. A file of a later day replaces this one."


def _kept_out(plan: Plan) -> Iterator[_Span]:
    """Yield the days on which a label may still keep people out of what was sprayed."""
    for record in plan.records:
        last = record.keep_out.until()
        # its last day counts: at which hour of it people may go back, the plan does not know
        if record.place is not None and last >= plan.as_of:
            summary = f"Keep out until the label lets you back: {record.place.name}"
            told = (
                f"Sprayed {day_words(record.entry.done_on)}. The label may keep people and dogs "
                f"out until some time on {day_words(last)}.",
                LABEL,
                _as_of(plan),
            )
            key = f"keep-out/{record.entry.id}"
            whole = Event(key, record.entry.done_on, last, summary, told, record.place.name)
            yield _Span(whole, summary, f"Last day. {summary}", summary, between=summary)


def _dates(plan: Plan) -> Iterator[_Span]:
    """Yield quiet dates, seasons, nesting and bans, which the owner alone has."""
    where = placed(plan)
    for dates in plan.land.dates:
        for first, last in comes_back(dates, _season(plan)):
            told = [f"Holds on: {where(dates.places)}"]
            if dates.looked_up_on is not None:
                told.append(f"Looked up {day_words(dates.looked_up_on)}.")
            told.append(_as_of(plan))
            key = f"dates/{dates.id}/{first.year}"
            yield _kept(
                key, (first, last), DATE_KINDS[dates.kind], where(dates.places), tuple(told)
            )


def _others_out(plan: Plan) -> Iterator[_Span]:
    """Yield the days a partner is told of, on what is handed over."""
    where = placed(plan)
    for others in plan.others_out:
        on = where(others.on) if others.on else "all ground"
        for number, span in enumerate(others.spans, 1):
            key = f"others/{others.kind}/{'+'.join(others.on)}/{others.looked_up_on}/{number}"
            yield _kept(key, span, DATE_KINDS[others.kind], on, (_as_of(plan),))


def _kept(key: str, span: Span, kind: str, on: str, told: tuple[str, ...]) -> _Span:
    """Return days to keep, of a kind and on some ground."""
    summary = f"{kind}: {on}"
    return _Span(
        Event(key, *span, summary, told),
        first_day=f"{kind}, first day: {on}",
        last_day=f"{kind}, last day: {on}",
        only_day=summary,
    )


def _orders(plan: Plan) -> Iterator[Event]:
    """Yield the day to order by of everything that is still to be bought."""
    for purchase in plan.buying.purchases:
        order = purchase.order
        if purchase.nothing or order.by is None or order.state not in ("by", "now"):
            continue
        # an order-by day gone by stands today: an entry in the past reminds nobody
        day, what = max(order.by, plan.as_of), purchase.item.words
        summary = f"Last day to order: {what}" if order.state == "by" else f"Order now: {what}"
        told = ["Packages, cost and what it is for: What to buy, buy.html."]
        if order.needed_from is not None:
            told.append(f"Needed from {day_words(order.needed_from)} on.")
        reminders = tuple(
            Reminder(days, f"Order by {day_words(day)}: {what}") for days in (BEFORE_ORDER, 0)
        )
        key = f"order/{plan.season}/{purchase.item.kind}/{purchase.item.id}"
        yield Event(key, day, day, summary, (*told, _as_of(plan)), reminders=reminders)


def _season(plan: Plan) -> Span:
    return (
        day_in_season(FIRST_OF_SEASON, plan.season),
        day_in_season(LAST_OF_SEASON, plan.season),
    )
