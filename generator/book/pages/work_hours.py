"""Pages of hours of work: by job, by month, by weekend."""

from generator.book.pages.pictures import weekends_picture
from generator.book.pages.written import MONEY, Written, from_template, jobs_with_places
from generator.plan.model.plan import Plan
from generator.plan.money.field_work import hired_jobs
from generator.plan.money.free_hours import own_months
from generator.plan.money.money_hours import hours_in_all, months
from generator.plan.money.weekends import weekends

BY_JOB, BY_MONTH, BY_WEEKEND = "Hours by job", "Hours by month", "Hours by weekend"


def hours_by_job_page(plan: Plan) -> Written:
    """Return every job that a machine does, with its hours and whose they are."""
    jobs = {job.id: (job, place) for job, _, place in jobs_with_places(plan, plan.jobs)}
    hirers = {
        job.id: hire
        for hire in plan.land.hires
        for job in hired_jobs(plan.findings, plan.jobs, hire)
    }
    return from_template(
        plan,
        "hours-by-job.md",
        BY_JOB,
        MONEY,
        "hours_by_job",
        ["hours", "machine", "time on the ground"],
        hours=hours_in_all(plan.times, plan.season),
        times=[(time, *jobs[time.job_id], hirers.get(time.job_id)) for time in plan.times],
    )


def hours_by_month_page(plan: Plan) -> Written:
    """Return the months with the hours of work that are open in them, and the hours free."""
    return from_template(
        plan,
        "hours-by-month.md",
        BY_MONTH,
        MONEY,
        "hours_by_month",
        ["hours", "months", "free hours"],
        months=months(plan),
        own_months=own_months(plan),
    )


def hours_by_weekend_page(plan: Plan) -> Written:
    """Return the work as it fills the weekends, and what does not fit."""
    filled = weekends(plan)
    places = {job.id: place for job, _, place in jobs_with_places(plan, plan.jobs)}
    return from_template(
        plan,
        "hours-by-weekend.md",
        BY_WEEKEND,
        MONEY,
        "hours_by_weekend",
        ["hours", "weekends", "free hours"],
        busy=[weekend for weekend in filled.weekends if weekend.jobs],
        places=places,
        without_room=[(part, places[part.job.id]) for part in filled.without_room],
        picture=weekends_picture(filled.weekends),
    )
