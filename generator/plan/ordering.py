"""By when a thing must be ordered, to be there on the first day of the first job that needs it."""

import datetime
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from generator.plan.items import StockItem
from generator.plan.model import Job
from generator.working import whole_up

State = Literal["by", "late", "over", "no_lead", "no_dates"]


@dataclass(frozen=True, slots=True)
class Order:
    """By when to order: `by` None where that is not known or no order can come in time.

    `state`: by, the day lies ahead; late, it has passed; over, the open dates have passed;
    no_lead, no_dates: what is missing to know it. `comes` is when it would come, ordered today.
    """

    state: State
    by: datetime.date | None
    comes: datetime.date | None
    needed_from: datetime.date | None
    needed_until: datetime.date | None


def order_by(item: StockItem, jobs: Iterable[Job], as_of: datetime.date) -> Order:
    """Return by when to order what jobs need; a job whose dates are over cannot wait for it."""
    ahead = [job for job in jobs if job.dates.closes is None or job.dates.closes >= as_of]
    if not ahead:
        return Order("over", None, None, None, None)
    opens = [job.dates.opens for job in ahead if job.dates.opens is not None]
    closes = [job.dates.closes for job in ahead if job.dates.closes is not None]
    until = max(closes, default=None) if len(closes) == len(ahead) else None
    first = min(opens, default=None)
    if first is None or len(opens) < len(ahead):
        return Order("no_dates", None, None, first, until)
    if item.lead_days is None:
        return Order("no_lead", None, None, first, until)
    lead = datetime.timedelta(days=whole_up(item.lead_days.value))
    by = first - lead
    return Order("late" if by < as_of else "by", by, as_of + lead, first, until)
