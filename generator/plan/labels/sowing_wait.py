"""The days a label asks for between a spraying and the sowing of its own planting."""

import datetime
import math
from collections.abc import Iterator

from generator.inventory.label import Use
from generator.plan.findings.about_labels import LabelCaution, LabelStop
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding, about_job
from generator.working import Given

BEFORE = "before_sowing"
# Common practice: nearer than this, the day to spray and the day to sow are chosen together.
MEETS_DAYS = 28


def sown_too_soon(request: JobRequest, use: Use) -> Iterator[Finding]:
    """Yield a stop where the sowing cannot wait as long as the label asks.

    A spraying after the sowing is not held by it. Where the open dates of the two meet, both days
    are still to be chosen: it is stopped if no two of them lie far enough apart.
    """
    interval = _held_by(request, use)
    if interval is None or _leaves_days(interval, request):
        return
    if not _meet(request) or _latest_that_leaves(interval, request) is None:
        yield finding(LabelStop.SOWN_TOO_SOON, about_job(request.job_id), use.where)


def wait_cautions(request: JobRequest, use: Use) -> Iterator[Finding]:
    """Yield by when to spray, where the open dates of spraying and sowing meet."""
    interval = _held_by(request, use)
    if interval is None or _leaves_days(interval, request):
        return
    latest = _latest_that_leaves(interval, request)
    if latest is not None:
        figures = (("The label asks for", interval),)
        words = day_words(latest)
        yield finding(
            LabelCaution.WAIT_BEFORE_SOWING,
            about_job(request.job_id),
            use.where,
            figures,
            latest=words,
        )


def _held_by(request: JobRequest, use: Use) -> Given | None:
    interval = use.seeding_interval_days
    asks = request.step.timing == BEFORE and isinstance(interval, Given) and interval.value > 0
    return interval if asks and isinstance(interval, Given) else None


def _leaves_days(interval: Given, request: JobRequest) -> bool:
    """Whether every open day of the spraying leaves every open day of the sowing long enough."""
    closes, sown_from = request.dates.closes, request.sowing_opens
    # from the last day to spray to the first to sow: whatever days are chosen, it holds
    return (
        closes is not None and sown_from is not None and _days(closes, sown_from) >= interval.value
    )


def _meet(request: JobRequest) -> bool:
    """Whether spraying and sowing are open at once, or within weeks of each other."""
    closes, sown_from = request.dates.closes, request.sowing_opens
    return closes is not None and sown_from is not None and _days(closes, sown_from) < MEETS_DAYS


def _latest_that_leaves(interval: Given, request: JobRequest) -> datetime.date | None:
    """Return the last day to spray that leaves a day to sow; None where there is none."""
    opens, closes, sown_by = request.dates.opens, request.dates.closes, request.sowing_closes
    # the first day to spray and the last to sow are as far apart as the two can be
    if opens is None or closes is None or sown_by is None or _days(opens, sown_by) < interval.value:
        return None
    # a part of a day that is asked for is a day to wait
    return min(closes, sown_by - datetime.timedelta(days=math.ceil(interval.value)))


def _days(first: datetime.date, last: datetime.date) -> int:
    return (last - first).days
