"""The page of work that closed without a record, and of what closes later in the season."""

import datetime
from collections.abc import Iterable, Iterator

from markupsafe import Markup

from generator.book.pages.lines import NamedLine, NamedPage, in_groups, line_of, sheet_of
from generator.book.pages.written import RECORDS, Written, everything_to_do, from_template
from generator.dataclass import dataclass
from generator.plan.model.days import day_words
from generator.plan.model.job import last_day_of
from generator.plan.model.plan import Plan
from generator.plan.views.closed import ClosedJob, closed_without_record, log_begins
from generator.reference.steps import Step

_TITLE = "Closed without a record"


@dataclass(frozen=True, slots=True)
class MissedJob:
    """A job on the page: `ahead` where its last day is still to come on the plan's day."""

    id: str
    named: NamedPage
    step: Step
    last_day: datetime.date
    ahead: bool = False


@dataclass(frozen=True, slots=True)
class MissedStep:
    """One step with the jobs of it by their last day, and what to do now that it is missed."""

    name: str
    anchor: str
    if_missed: str
    example: str
    lines: tuple[tuple[NamedLine, datetime.date, bool], ...]
    all_ahead: bool


def missed_page(plan: Plan) -> Written:
    """Return the page of closed work: what to do now about each step, and what to type."""
    names = _names(plan)
    closed = closed_without_record(plan)
    begins = log_begins(plan)
    unasked = [(_missed(job, names), "") for job in closed if _is_unasked(job)]
    open_still = [job for job in closed if job.settled_by is None and not job.before_log]
    asked = [_missed(job, names) for job in open_still if not job.is_optional]
    waited = [(_missed(job, names), "") for job in open_still if job.is_optional]
    settled = [
        (_missed(job, names), f"record of {day_words(job.settled_by.done_on)}")
        for job in closed
        if job.settled_by is not None
    ]
    steps = _steps([*asked, *_ahead(plan)])
    return from_template(
        plan,
        "missed.md",
        _TITLE,
        RECORDS,
        "closed",
        ["missed", "overdue", "not done", "late", *(step.name for step in steps)],
        steps=steps,
        any_closed=bool(asked),
        log_begins=begins if unasked else None,
        folded=[
            ("Closed before the first record", len(unasked), unasked),
            ("Waited for an answer", len(waited), waited),
            ("Settled by a later record", len(settled), settled),
        ],
    )


def _is_unasked(job: ClosedJob) -> bool:
    return job.before_log and job.settled_by is None


def _names(plan: Plan) -> dict[str, str]:
    names = {place.id: place.name for place in plan.places}
    names |= {stand.id: stand.name for stand in plan.land.stands}
    names |= {route.id: route.name for route in plan.land.routes}
    return names | {water.hole.id: water.hole.name for water in plan.water}


def _missed(job: ClosedJob, names: dict[str, str]) -> MissedJob:
    page = Markup("work/{}.html").format(job.address) if job.address is not None else Markup("")
    return MissedJob(job.id, (names[job.thing_id], page), job.step, job.last_day)


def _ahead(plan: Plan) -> Iterable[MissedJob]:
    """Yield the jobs that close after the plan's day: the device's day tells which have by then."""
    for row in everything_to_do(plan):
        job = row[0]
        last_day = last_day_of(job)
        if job.state.is_ahead and last_day is not None and not job.state.question:
            yield MissedJob(job.id, sheet_of(row), job.step, last_day, ahead=True)


def _steps(jobs: Iterable[MissedJob]) -> list[MissedStep]:
    groups = in_groups(jobs, lambda job: (job.step.name, job.step.if_missed))
    return [
        MissedStep(
            name,
            f"missed-{number}",
            if_missed,
            found[0].id,
            tuple(_lines(found)),
            all(job.ahead for job in found),
        )
        for number, ((name, if_missed), found) in enumerate(groups.items(), start=1)
    ]


def _lines(jobs: Iterable[MissedJob]) -> Iterator[tuple[NamedLine, datetime.date, bool]]:
    for (last_day, ahead), same in in_groups(jobs, lambda job: (job.last_day, job.ahead)).items():
        yield line_of("", [job.named for job in same], len(same)), last_day, ahead
