"""The days to order by as lines of time, one for each day."""

import datetime
from itertools import groupby

from markupsafe import Markup

from generator.book.charts.order_line import TimeLine, order_line, time_scale
from generator.dataclass import dataclass
from generator.plan.model.plan import Plan

ROOM = datetime.timedelta(days=7)  # so that the last dot does not reach over the edge


@dataclass(frozen=True, slots=True)
class OrderMonth:
    """A month with the days to order by in it, what is ordered by each, and the line to them.

    `is_now` is the row of what is to be ordered at once.
    """

    days: tuple[tuple[datetime.date, tuple[str, ...]], ...]
    is_now: bool
    svg: Markup


@dataclass(frozen=True, slots=True)
class OrdersPictured:
    """The days to order by, month by month, under the names of the months."""

    scale: Markup
    months: tuple[OrderMonth, ...]


def orders_picture(plan: Plan) -> OrdersPictured | None:
    """Return the days to order by from the plan's day on; None where no day is known."""
    waiting = (
        (one.order.state != "now", max(one.order.by, plan.as_of), one.item.words)
        for one in plan.buying.purchases
        if not one.nothing and one.order.by is not None and one.order.state in ("by", "now")
    )
    # of one day in the order of the list: it does not hang on what somebody calls a thing
    dated = sorted(waiting, key=lambda one: one[:2])
    if not dated:
        return None
    line = TimeLine(plan.as_of, max(by for _, by, _ in dated) + ROOM)
    months = []
    for (waits, _, _), rows in groupby(dated, lambda one: (one[0], one[1].year, one[1].month)):
        by_day: dict[datetime.date, list[str]] = {}
        for _, by, words in rows:
            by_day.setdefault(by, []).append(words)
        days = tuple((by, tuple(words)) for by, words in by_day.items())
        months.append(OrderMonth(days, not waits, order_line(line, by_day)))
    return OrdersPictured(time_scale(line), tuple(months))
