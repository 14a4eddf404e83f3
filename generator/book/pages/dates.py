"""The page of dates, people and papers: what the calendar and the letters say, for the owner."""

from collections.abc import Iterable
from typing import Any

from generator.book.pages.written import Written, from_template, jobs_with_places
from generator.inventory.dates import ALL_PLACES, DateRange
from generator.plan.days.day_findings import LOOKED_UP
from generator.plan.jobs.job_days import FIRST_OF_SEASON, LAST_OF_SEASON
from generator.plan.model.days import Span, comes_back
from generator.plan.model.plan import Plan
from generator.plan.season.open_dates import day_in_season
from generator.reference.library import operations

_TITLE = "Dates, people and papers"
_DATE_KINDS = {
    "quiet": "Quiet",
    "hunting": "Hunting",
    "turkey": "Turkey hunting",
    "fawning": "Fawning",
    "nesting": "Nesting",
    "burn_ban": "Burn ban",
    "dry_spell": "Dry spell",
}


def dates_page(plan: Plan) -> Written:
    """Return the dates of the season, what they take of the jobs, the people and the papers."""
    kept: list[Any] = [
        *plan.dates,
        *plan.applicators,
        *plan.helpers,
        *plan.contractors,
        *plan.permits,
        *plan.contracts,
        *plan.one_calls,
    ]
    subjects = {one.id for one in kept}
    return from_template(
        plan,
        "dates.md",
        _TITLE,
        "",
        "dates",
        [*_DATE_KINDS.values(), "licence", "insurance", "permit", "contract", "811"],
        dates=[(one, _DATE_KINDS[one.kind], _in_season(plan, one)) for one in plan.dates],
        looked_up=LOOKED_UP,
        jobs=[
            (job, place)
            for job, _, place in jobs_with_places(plan, plan.jobs)
            if job.days is not None
        ],
        products={one.id: one.name for one in plan.products},
        readers={one.reader: one.name or one.reader for one in plan.handed},
        placed=placed(plan),
        work_words=_work_words(plan),
        findings=[one for one in plan.findings if one.subject in subjects],
        kept=kept,
    )


def others_out_page(plan: Plan) -> Written:
    """Return the days of hunting, nesting and burn bans on what a partner is handed."""
    names = {one.id: one.name for one in plan.places}
    names |= {one.id: one.name for one in plan.stands} | {one.id: one.name for one in plan.routes}
    return from_template(
        plan,
        "dates.md",
        "Hunting, nesting and burn bans",
        "",
        "others_out",
        [_DATE_KINDS[one.kind] for one in plan.others_out],
        dates=[
            (one, _DATE_KINDS[one.kind], [names[on] for on in one.on]) for one in plan.others_out
        ],
    )


def _in_season(plan: Plan, dates: DateRange) -> tuple[Span, ...]:
    """Return the days of a record in the plan's season; as typed where none is in it."""
    season = (
        day_in_season(FIRST_OF_SEASON, plan.season),
        day_in_season(LAST_OF_SEASON, plan.season),
    )
    return comes_back(dates, season)


def placed(plan: Plan) -> Any:
    """Return the function that says on which places something holds."""
    names = {one.id: one.name for one in plan.places}
    names |= {one.id: one.name for one in plan.stands} | {one.id: one.name for one in plan.routes}
    names |= {one.hole.id: one.hole.name for one in plan.water}

    def told(ids: Iterable[str]) -> str:
        return ", ".join("all places" if one == ALL_PLACES else names[one] for one in ids)

    return told


def _work_words(plan: Plan) -> Any:
    """Return the function that says which steps and kinds of work a paper names."""
    names = {step.id: step.name for one in plan.step_plans for step in one.steps}
    names |= operations()

    def told(ids: Iterable[str]) -> str:
        return ", ".join(names.get(one, one) for one in ids)

    return told
