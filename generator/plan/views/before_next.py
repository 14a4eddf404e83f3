"""Which findings stand before the next jobs, which leave time, and which come too late."""

import datetime
from collections.abc import Callable
from typing import Literal

from generator.plan.findings.about_after import AfterCaution
from generator.plan.model.finding import Finding
from generator.plan.model.job import Job, UpkeepJob
from generator.plan.model.plan import Plan

When = Literal["next", "later", "over"]

NEXT = datetime.timedelta(days=30)
# These hold on their ground on any day, whatever work is planned there.
ON_ANY_DAY = {
    reason.value.code
    for reason in (
        AfterCaution.KEEP_OUT,
        AfterCaution.WAITS_STILL,
        AfterCaution.HUNTED_IN_WAIT,
        AfterCaution.WAITING_NOT_KNOWN,
        AfterCaution.SORGHUM_AND_STOCK,
    )
}


def next_until(plan: Plan) -> datetime.date:
    """Return the last day on which a job may open and still be one of the next."""
    return plan.as_of + NEXT


def when_needed(plan: Plan) -> Callable[[Finding], When]:
    """Return the function that says when a finding has to be seen to.

    A finding on something that is not known to leave time counts as one before the next jobs.
    """
    everything: tuple[Job | UpkeepJob, ...] = (*plan.jobs, *plan.upkeep)
    jobs = {job.id: job for job in everything}
    until = next_until(plan)
    near = [job for job in plan.jobs if _is_near(job, until)]
    places = {job.place_id for job in near}
    steps = {(job.planting_id, job.step.id) for job in near}
    items = {item.id for item in plan.items if item.taken & steps}

    def when(finding: Finding) -> When:
        subject = finding.subject
        if subject in jobs:
            job = jobs[subject]
            if not job.state.is_ahead:
                return "over"
            return "next" if _is_near(job, until) else "later"
        match subject.kind:
            case "place":
                is_next = subject.id in places or finding.code in ON_ANY_DAY
            case "item":
                is_next = subject.id in items
            case kind:
                # what is logged is over: an entry that a job rests on stops the job itself
                is_next = kind != "entry"
        return "next" if is_next else "later"

    return when


def _is_near(job: Job | UpkeepJob, until: datetime.date) -> bool:
    """Whether a job is open or opens soon; of one without dates nobody can say that it does not."""
    return job.state.is_ahead and (job.dates.opens is None or job.dates.opens <= until)
