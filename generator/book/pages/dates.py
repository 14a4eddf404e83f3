"""The page of dates, people and papers: what the calendar and the letters say, for the owner."""

import datetime
from collections.abc import Iterable
from typing import Any, NamedTuple

from generator.book.pages.written import YEAR, Written, from_template, jobs_with_places
from generator.inventory.dates import ALL_PLACES, HUNTED, DateRange
from generator.plan.days.day_findings import LOOKED_UP
from generator.plan.days.law import LawRow, law_rows
from generator.plan.jobs.job_days import FIRST_OF_SEASON, LAST_OF_SEASON
from generator.plan.model.days import Span, comes_back
from generator.plan.model.plan import Plan
from generator.plan.season.open_dates import day_in_season
from generator.reference.operations import operations

_TITLE = "Dates, people and papers"
DATE_KINDS = {
    "quiet": "Stay-out dates",
    "hunting": "Hunting",
    "turkey": "Turkey hunting",
    "fawning": "Fawning",
    "nesting": "Nesting",
    "burn_ban": "Burn ban",
    "dry_spell": "Dry spell",
}


class HuntingTold(NamedTuple):
    """Hunting dates as the law's rows tell them: which, their days, where and when looked up."""

    kind: str
    spans: tuple[Span, ...]
    source: str | None
    looked_up_on: datetime.date | None


class Law(NamedTuple):
    """What a page says of the law: hunting dates, then each thing the law decides."""

    hunting: tuple[HuntingTold, ...]
    rows: tuple[LawRow, ...]


def law_told(plan: Plan) -> Law:
    """Return what the law decides for those who hunt, as written down for a reader."""
    own = [
        HuntingTold(
            DATE_KINDS[hunted.dates.kind],
            hunted.spans,
            hunted.dates.source,
            hunted.dates.looked_up_on,
        )
        for hunted in plan.hunted
    ]
    told = [
        HuntingTold(DATE_KINDS[others.kind], others.spans, None, others.looked_up_on)
        for others in plan.others_out
        if others.kind in HUNTED
    ]
    return Law((*own, *told), law_rows(plan.land.looked_up))


def dates_page(plan: Plan) -> Written:
    """Return the dates of the season, what they take of the jobs, the people and the papers."""
    kept: list[Any] = [
        *plan.land.dates,
        *plan.land.applicators,
        *plan.land.helpers,
        *plan.land.contractors,
        *plan.land.permits,
        *plan.land.contracts,
        *plan.land.one_calls,
    ]
    subjects = {record.id for record in kept}
    return from_template(
        plan,
        "dates.md",
        _TITLE,
        YEAR,
        "dates",
        [*DATE_KINDS.values(), "license", "insurance", "permit", "contract", "811"],
        dates=[
            (dates, DATE_KINDS[dates.kind], _in_season(plan, dates)) for dates in plan.land.dates
        ],
        looked_up=LOOKED_UP,
        jobs=[
            (job, place)
            for job, _, place in jobs_with_places(plan, plan.jobs)
            if job.days is not None
        ],
        products={product.id: product.name for product in plan.land.products},
        readers={
            handed.reader: handed.name or handed.reader.replace("-", " ") for handed in plan.handed
        },
        placed=placed(plan),
        work_words=_work_words(plan),
        findings=[finding for finding in plan.findings if finding.subject in subjects],
        kept=kept,
    )


def others_out_page(plan: Plan) -> Written:
    """Return the days of hunting, nesting and burn bans on what a partner is handed."""
    names = {place.id: place.name for place in plan.places}
    names |= {stand.id: stand.name for stand in plan.land.stands} | {
        route.id: route.name for route in plan.land.routes
    }
    return from_template(
        plan,
        "dates.md",
        "Hunting, nesting and burn bans",
        YEAR,
        "others_out",
        [DATE_KINDS[others.kind] for others in plan.others_out],
        dates=[
            (others, DATE_KINDS[others.kind], [names[on] for on in others.on])
            for others in plan.others_out
        ],
        law=plan.once("law told", law_told),
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
    names = {place.id: place.name for place in plan.places}
    names |= {stand.id: stand.name for stand in plan.land.stands} | {
        route.id: route.name for route in plan.land.routes
    }
    names |= {water.hole.id: water.hole.name for water in plan.water}

    def told(ids: Iterable[str]) -> str:
        return ", ".join(
            "all places" if thing_id == ALL_PLACES else names[thing_id] for thing_id in ids
        )

    return told


def _work_words(plan: Plan) -> Any:
    """Return the function that says which steps and kinds of work a paper names."""
    names = {step.id: step.name for step_plan in plan.land.step_plans for step in step_plan.steps}
    names |= {name: operation.name for name, operation in operations().items()}

    def told(ids: Iterable[str]) -> str:
        return ", ".join(names.get(work_id, work_id) for work_id in ids)

    return told
