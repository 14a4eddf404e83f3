"""What to look at where the days that past years left for a job are few."""

from collections.abc import Iterable, Mapping

from generator.plan.cautions import Caution
from generator.plan.counted import CountedDays
from generator.plan.findings import finding
from generator.plan.model import Finding, Job


def count_findings(jobs: Iterable[Job], count_on: Mapping[str, CountedDays]) -> list[Finding]:
    """Return the cautions on jobs that had no suited day in one year of ten, or in half of them."""
    found = []
    for job in jobs:
        counted = count_on.get(job.id)
        if counted is None:
            continue
        if counted.typical == 0:
            found.append(finding(Caution.HARDLY_A_DAY, job.id, missed=job.step.if_missed))
        elif counted.least == 0:
            found.append(finding(Caution.NO_DAY_IN_SOME_YEARS, job.id, missed=job.step.if_missed))
    return found
