"""The page of tank loads: every spraying that is ahead, with what is mixed for it in all."""

from generator.book.pages.written import YEAR, Written, from_template, jobs_with_places
from generator.plan.model.plan import Plan


def tanks_page(plan: Plan) -> Written:
    """Return the sprayings that are ahead, those with a tank and those that none may be mixed for.

    Amounts to measure stand on the sheets alone.
    """
    ahead = [job for job in plan.jobs if job.step.does.sprays and job.state.is_ahead]
    rows = jobs_with_places(plan, ahead)
    return from_template(
        plan,
        "tanks.md",
        "Tank loads",
        YEAR,
        "tanks",
        ["tank", "loads", "gallons"],
        filled=[(job, place) for job, _, place in rows if job.mix is not None],
        empty=[(job, stopped, place) for job, stopped, place in rows if job.mix is None],
    )
