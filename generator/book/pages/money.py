"""Pages of money: what is planned, spent and paid back, and what each planting and thing costs."""

from collections.abc import Iterable

from generator.book.money_views import money_rows, places_apart, season_row
from generator.book.number_subjects import planting_words
from generator.book.pages.by_rule import said_alike
from generator.book.pages.written import (
    BUDGET_CSV,
    BUDGET_XLSX,
    MONEY,
    Written,
    from_template,
    jobs_with_places,
)
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.plan.money.budget import Total
from generator.plan.money.field_work import hire_charge, hired_jobs, rentings
from generator.plan.money.money_hours import (
    hours_in_all,
    money_by_season,
    payments,
    spent,
    to_pay,
)
from generator.plan.money.weekends import weekends

LEFT_OUT = ("stopped", "missed", "done", "not_needed")
BY_PLANTING, BY_THING = "Costs by planting", "Costs by thing"


def money_page(plan: Plan) -> Written:
    """Return what is planned, spent and paid back in all; hours have pages of their own."""
    season = season_row(plan)
    seasons = money_by_season(plan, season)
    words = planting_words(plan)
    return from_template(
        plan,
        "money.md",
        "Money and hours",
        MONEY,
        "money",
        ["cost", "hours", "hire", "rent", "fuel", "paid back", "cost-share"],
        pay=to_pay(plan),
        unpriced=any(purchase.cost is None for purchase in plan.buying.purchases),
        season=season,
        spent=spent(plan),
        hours=hours_in_all(plan.times, plan.season),
        payments=[(payment, words[payment.planting_id]) for payment in payments(plan)],
        unfinished=any(payment.unfinished for payment in payments(plan)),
        without_room=weekends(plan).without_room,
        hires=[
            (
                hire,
                hire_charge(plan, hire),
                _steps(hired_jobs(plan.findings, plan.jobs, hire)),
            )
            for hire in plan.land.hires
        ],
        rented=[(renting, _steps_of(plan, renting.job_ids)) for renting in rentings(plan)],
        findings=said_alike(
            finding
            for finding in plan.findings
            if finding.subject.kind in ("machine", "hire", "cost_share", "hours")
        ),
        seasons=seasons,
        files=(BUDGET_CSV, BUDGET_XLSX),
    )


def _steps(jobs: Iterable[Job]) -> list[str]:
    return list(dict.fromkeys(job.step.name for job in jobs))


def _steps_of(plan: Plan, job_ids: Iterable[str]) -> list[str]:
    jobs = {job.id: job for job in plan.jobs}
    return _steps(jobs[job_id] for job_id in job_ids)


def costs_page(plan: Plan) -> Written:
    """Return what each planting costs, what is paid back of it, and which jobs are in no sum."""
    words, stopped = planting_words(plan), plan.stopped()
    places = {place.id: place.name for place in plan.places}
    jobs = {job.id: (job, place) for job, _, place in jobs_with_places(plan, plan.jobs)}
    return from_template(
        plan,
        "costs.md",
        BY_PLANTING,
        MONEY,
        "costs",
        ["cost", "planting", "place", *words.values()],
        places=[(row, places[row.total.key]) for row in places_apart(plan)],
        plantings=[(row, words[row.total.key]) for row in money_rows(plan, "planting")],
        left_out=[
            (why, [jobs[job.id] for job in plan.jobs if _why_left_out(job, stopped) == why])
            for why in LEFT_OUT
        ],
    )


def costs_by_thing_page(plan: Plan) -> Written:
    """Return what each thing comes to over all that takes it."""
    words = {item.id: item.words for item in plan.items}
    words |= {machine.id: machine.name for machine in plan.land.machines}
    words |= {hire.id: hire.name or hire.id for hire in plan.land.hires}
    rows = [(row.total, _item_words(row.total, words)) for row in money_rows(plan, "item")]
    return from_template(
        plan,
        "costs-by-thing.md",
        BY_THING,
        MONEY,
        "costs_by_thing",
        ["cost", *words.values()],
        items=rows,
    )


def _why_left_out(job: Job, stopped: frozenset[str]) -> str | None:
    """Return why nothing of a job stands in the money and hours, None where it does."""
    if not job.state.is_ahead:
        return job.state.kind
    return "stopped" if job.id in stopped else None


def _item_words(total: Total, words: dict[str, str]) -> str:
    kinds = ", ".join(dict.fromkeys(line.kind for line in total.lines))
    return f"{words[total.key]} ({kinds})"
