"""The days a label asks for between a spraying and the sowing of its own planting."""

import datetime
import math
from collections.abc import Iterator

from generator.inventory.label import Use
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.day_words import day_words
from generator.plan.findings import finding
from generator.plan.model import Finding
from generator.plan.stops import Stop
from generator.working import Given

BEFORE = "before_sowing"
# Common practice: nearer than this, the day to spray and the day to sow are chosen together.
MEETS_DAYS = 28


def sown_too_soon(asked: JobAsked, use: Use) -> Iterator[Finding]:
    """Yield a stop where the sowing cannot wait as long as the label asks.

    A spraying after the sowing is not held by it. Where the open dates of the two meet, both days
    are still to be chosen: it is stopped if no two of them lie far enough apart.
    """
    interval = _held_by(asked, use)
    if interval is None or _leaves_days(interval, asked):
        return
    if not _meet(asked) or _latest_that_leaves(interval, asked) is None:
        yield finding(Stop.SOWN_TOO_SOON, asked.job_id, use.where)


def wait_cautions(asked: JobAsked, use: Use) -> Iterator[Finding]:
    """Yield by when to spray, where the open dates of spraying and sowing meet."""
    interval = _held_by(asked, use)
    if interval is None or _leaves_days(interval, asked):
        return
    latest = _latest_that_leaves(interval, asked)
    if latest is not None:
        figures = (("The label asks for", interval),)
        words = day_words(latest)
        yield finding(Caution.WAIT_BEFORE_SOWING, asked.job_id, use.where, figures, latest=words)


def _held_by(asked: JobAsked, use: Use) -> Given | None:
    interval = use.seeding_interval_days
    asks = asked.step.timing == BEFORE and isinstance(interval, Given) and interval.value > 0
    return interval if asks and isinstance(interval, Given) else None


def _leaves_days(interval: Given, asked: JobAsked) -> bool:
    """Whether every open day of the spraying leaves every open day of the sowing long enough."""
    closes, sown_from = asked.dates.closes, asked.sowing_opens
    return (
        closes is not None and sown_from is not None and _days(closes, sown_from) >= interval.value
    )


def _meet(asked: JobAsked) -> bool:
    """Whether spraying and sowing are open at once, or within weeks of each other."""
    closes, sown_from = asked.dates.closes, asked.sowing_opens
    return closes is not None and sown_from is not None and _days(closes, sown_from) < MEETS_DAYS


def _latest_that_leaves(interval: Given, asked: JobAsked) -> datetime.date | None:
    """Return the last day to spray that leaves a day to sow; None where there is none."""
    opens, closes, sown_by = asked.dates.opens, asked.dates.closes, asked.sowing_closes
    if opens is None or closes is None or sown_by is None or _days(opens, sown_by) < interval.value:
        return None
    return min(closes, sown_by - datetime.timedelta(days=math.ceil(interval.value)))


def _days(first: datetime.date, last: datetime.date) -> int:
    return (last - first).days
