"""What can still be sown in place of a sowing that was missed."""

import datetime

from generator.plan.model.job import Job
from generator.plan.season.open_dates import day_in_season
from generator.reference.steps import Instead, step_plans


def still_to_sow(job: Job, as_of: datetime.date) -> list[tuple[str, datetime.date, Instead]]:
    """Return the plans left for a missed job, the first choice first: name, last day, why.

    A last day of the year that lies before the one that was missed is of the year after it.
    """
    closes = job.dates.closes
    if job.state.kind != "missed" or closes is None:
        return []
    found = []
    for instead in job.step.instead:
        until = day_in_season(instead.until, job.season)
        if until < closes:
            until = day_in_season(instead.until, job.season + 1)
        if until >= as_of:
            found.append((step_plans()[instead.plan].name, until, instead))
    return found
