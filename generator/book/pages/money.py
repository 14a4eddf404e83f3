"""Pages of money: what to buy, and what everything costs in dollars and hours."""

import itertools
from collections.abc import Iterable

from generator.book.exports import BUDGET_CSV, BUDGET_XLSX, BUY_CSV
from generator.book.pages.pictures import money_picture, weekends_picture
from generator.book.pages.written import LOG_ADDRESS, Written, from_template, jobs_with_places
from generator.plan.model.finding import stopped_in
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.plan.money.budget import (
    Total,
    cost_in_all,
    missed,
    not_to_buy_yet,
    purchases,
    too_late,
)
from generator.plan.money.field_work import hire_charge, hired_jobs, rentings
from generator.plan.money.free_hours import HOURS_SUBJECT, own_months
from generator.plan.money.money_hours import (
    hours_in_all,
    money_by_season,
    months,
    payments,
    places_apart,
    rows,
    season_row,
    spent,
    to_pay,
)
from generator.plan.money.weekends import Weekend, weekends

LEFT_OUT = ("stopped", "missed", "done", "not_needed")


def buy_page(plan: Plan) -> Written:
    """Return what to buy by when, and what not to buy yet."""
    bought, late = purchases(plan), too_late(plan)
    # Things that are bought, or would be if they came in time.
    told = {one.item.id for one in bought} | {one.item.id for one in late}
    return from_template(
        plan,
        "buy.md",
        "What to buy",
        "",
        "buy",
        [one.item.words for one in bought],
        bought=bought,
        cost=cost_in_all(plan, bought),
        too_late=[
            (one.item.words, [(need, job, plan.place(job.place_id)) for need, job in one.needs])
            for one in late
        ],
        missed=[
            (one.item.words, [(job, place) for job, _, place in jobs_with_places(plan, one.jobs)])
            for one in missed(plan)
        ],
        waiting=[one.words for one in not_to_buy_yet(plan)],
        findings=[one for one in plan.findings if one.subject in told],
        files=(BUY_CSV, BUDGET_XLSX),
    )


def money_page(plan: Plan) -> Written:
    """Return what is planned, spent and paid back, and the hours by job and month."""
    words, bought, stopped = _words(plan), purchases(plan), stopped_in(plan.findings)
    jobs = {job.id: (job, place) for job, _, place in jobs_with_places(plan, plan.jobs)}
    hirers = {job.id: hire for hire in plan.hires for job in hired_jobs(plan, hire)}
    subjects = {one.id for one in plan.machines} | {one.id for one in plan.hires}
    subjects |= {one.id for one in plan.cost_share}
    seasons, filled = money_by_season(plan), weekends(plan)
    return from_template(
        plan,
        "money.md",
        "Money and hours",
        "",
        "money",
        ["cost", "hours", "hire", "rent", "fuel", *words.values()],
        pay=to_pay(plan, bought),
        unpriced=any(one.cost is None for one in bought),
        season=season_row(plan),
        spent=spent(plan),
        hours=hours_in_all(plan),
        places=[(one, words[one.total.key]) for one in places_apart(plan)],
        plantings=[(one, words[one.total.key]) for one in rows(plan, "planting")],
        items=[(one.total, _item_words(one.total, words)) for one in rows(plan, "item")],
        payments=[(one, words[one.planting_id]) for one in payments(plan)],
        unfinished=any(one.unfinished for one in payments(plan)),
        times=[(one, *jobs[one.job_id], hirers.get(one.job_id)) for one in plan.times],
        months=[(one, [jobs[time.job_id] for time in one.times]) for one in months(plan)],
        hires=[
            (one, hire_charge(plan, one), [jobs[job.id] for job in hired_jobs(plan, one)])
            for one in plan.hires
        ],
        rented=[(one, [jobs[job_id] for job_id in one.job_ids]) for one in rentings(plan)],
        left_out=[
            (why, [jobs[job.id] for job in plan.jobs if _why_left_out(job, stopped) == why])
            for why in LEFT_OUT
        ],
        findings=[
            one
            for one in plan.findings
            if one.subject in subjects or one.subject.startswith((LOG_ADDRESS, HOURS_SUBJECT))
        ],
        own_months=own_months(plan),
        seasons=seasons,
        seasons_picture=money_picture(seasons),
        weekends=_by_month(filled.weekends),
        without_room=[(part, jobs[part.job.id]) for part in filled.without_room],
        weekends_picture=weekends_picture(filled.weekends),
        files=(BUDGET_CSV, BUDGET_XLSX),
    )


def _by_month(weekends: Iterable[Weekend]) -> list[tuple[Weekend, list[Weekend]]]:
    """Return the months, each by its first weekend, with the weekends that work falls on."""
    months = itertools.groupby(weekends, key=lambda one: one.saturday.replace(day=1))
    listed = [list(group) for _, group in months]
    return [(group[0], [one for one in group if one.jobs]) for group in listed]


def _why_left_out(job: Job, stopped: frozenset[str]) -> str | None:
    """Return why nothing of a job stands in the money and hours, None where it does."""
    if not job.state.is_ahead:
        return job.state.kind
    return "stopped" if job.id in stopped else None


def _words(plan: Plan) -> dict[str, str]:
    """Return what the things of the budget are called, by their ids."""
    words = {one.id: one.name for one in plan.places}
    for job in plan.jobs:
        words[job.planting_id] = f"{words[job.place_id]}, {job.planting_id}"
    words |= {one.id: one.words for one in plan.items}
    words |= {one.id: one.name for one in plan.machines}
    return words | {one.id: one.name or one.id for one in plan.hires}


def _item_words(total: Total, words: dict[str, str]) -> str:
    kinds = ", ".join(dict.fromkeys(line.kind for line in total.lines))
    return f"{words[total.key]} ({kinds})"
