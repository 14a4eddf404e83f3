"""Pages of money: what to buy, and what everything costs in dollars and hours."""

import itertools
from collections.abc import Iterable

from generator.book.money_views import money_rows, places_apart, season_row
from generator.book.pages.pictures import weekends_picture
from generator.book.pages.pictures_orders import orders_picture
from generator.book.pages.written import (
    BUDGET_CSV,
    BUDGET_XLSX,
    BUY_CSV,
    MONEY,
    Written,
    from_template,
    jobs_with_places,
)
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.plan.money.budget import (
    Total,
    cost_in_all,
)
from generator.plan.money.field_work import hire_charge, hired_jobs, rentings
from generator.plan.money.free_hours import own_months
from generator.plan.money.money_hours import (
    hours_in_all,
    money_by_season,
    months,
    payments,
    spent,
    to_pay,
)
from generator.plan.money.weekends import Weekend, weekends

LEFT_OUT = ("stopped", "missed", "done", "not_needed")


def buy_page(plan: Plan) -> Written:
    """Return what to buy by when, and what not to buy yet."""
    bought, late = plan.buying.purchases, plan.buying.too_late
    # Things that are bought, or would be if they came in time.
    told = {purchase.item.id for purchase in bought} | {thing.item.id for thing in late}
    return from_template(
        plan,
        "buy.md",
        "What to buy",
        MONEY,
        "buy",
        [purchase.item.words for purchase in bought],
        bought=bought,
        orders=orders_picture(plan),
        cost=cost_in_all(plan),
        too_late=[
            (thing.item.words, [(need, job, plan.place(job.place_id)) for need, job in thing.needs])
            for thing in late
        ],
        missed=[
            (
                thing.item.words,
                [(job, place) for job, _, place in jobs_with_places(plan, thing.jobs)],
            )
            for thing in plan.buying.missed
        ],
        waiting=[item.words for item in plan.buying.not_yet],
        findings=[finding for finding in plan.findings if finding.subject in told],
        files=(BUY_CSV, BUDGET_XLSX),
    )


def money_page(plan: Plan) -> Written:
    """Return what is planned, spent and paid back, and the hours by job and month."""
    words, bought, stopped = _words(plan), plan.buying.purchases, plan.stopped()
    jobs = {job.id: (job, place) for job, _, place in jobs_with_places(plan, plan.jobs)}
    hirers = {
        job.id: hire
        for hire in plan.land.hires
        for job in hired_jobs(plan.findings, plan.jobs, hire)
    }
    season = season_row(plan)
    seasons, filled = money_by_season(plan, season), weekends(plan)
    return from_template(
        plan,
        "money.md",
        "Money and hours",
        MONEY,
        "money",
        ["cost", "hours", "hire", "rent", "fuel", *words.values()],
        pay=to_pay(plan),
        unpriced=any(purchase.cost is None for purchase in bought),
        season=season,
        spent=spent(plan),
        hours=hours_in_all(plan.times, plan.season),
        places=[(row, words[row.total.key]) for row in places_apart(plan)],
        plantings=[(row, words[row.total.key]) for row in money_rows(plan, "planting")],
        items=[(row.total, _item_words(row.total, words)) for row in money_rows(plan, "item")],
        payments=[(payment, words[payment.planting_id]) for payment in payments(plan)],
        unfinished=any(payment.unfinished for payment in payments(plan)),
        times=[(time, *jobs[time.job_id], hirers.get(time.job_id)) for time in plan.times],
        months=[(month, [jobs[time.job_id] for time in month.times]) for month in months(plan)],
        hires=[
            (
                hire,
                hire_charge(plan, hire),
                [jobs[job.id] for job in hired_jobs(plan.findings, plan.jobs, hire)],
            )
            for hire in plan.land.hires
        ],
        rented=[
            (renting, [jobs[job_id] for job_id in renting.job_ids]) for renting in rentings(plan)
        ],
        left_out=[
            (why, [jobs[job.id] for job in plan.jobs if _why_left_out(job, stopped) == why])
            for why in LEFT_OUT
        ],
        findings=[
            finding
            for finding in plan.findings
            if finding.subject.kind in ("machine", "hire", "cost_share", "entry", "hours")
        ],
        own_months=own_months(plan),
        seasons=seasons,
        weekends=_by_month(filled.weekends),
        without_room=[(part, jobs[part.job.id]) for part in filled.without_room],
        weekends_picture=weekends_picture(filled.weekends),
        files=(BUDGET_CSV, BUDGET_XLSX),
    )


def _by_month(weekends: Iterable[Weekend]) -> list[tuple[Weekend, list[Weekend]]]:
    """Return the months, each by its first weekend, with the weekends that work falls on."""
    months = itertools.groupby(weekends, key=lambda weekend: weekend.saturday.replace(day=1))
    listed = [list(group) for _, group in months]
    return [(group[0], [weekend for weekend in group if weekend.jobs]) for group in listed]


def _why_left_out(job: Job, stopped: frozenset[str]) -> str | None:
    """Return why nothing of a job stands in the money and hours, None where it does."""
    if not job.state.is_ahead:
        return job.state.kind
    return "stopped" if job.id in stopped else None


def _words(plan: Plan) -> dict[str, str]:
    """Return what the things of the budget are called, by their ids."""
    words = {place.id: place.name for place in plan.places}
    for job in plan.jobs:
        words[job.planting_id] = f"{words[job.place_id]}, {job.planting_id}"
    words |= {item.id: item.words for item in plan.items}
    words |= {machine.id: machine.name for machine in plan.land.machines}
    return words | {hire.id: hire.name or hire.id for hire in plan.land.hires}


def _item_words(total: Total, words: dict[str, str]) -> str:
    kinds = ", ".join(dict.fromkeys(line.kind for line in total.lines))
    return f"{words[total.key]} ({kinds})"
