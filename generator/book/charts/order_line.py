"""A line of time from the plan's day on: by which day each thing is to be ordered."""

import datetime
from collections.abc import Iterable

from markupsafe import Markup

from generator.book.charts.drawing import dot, percent, pixels, rule, text_line, unspoken
from generator.dataclass import dataclass
from generator.plan.model.days import MONTHS

SCALE_PX, LINE_PX, MIDDLE_PX = 18, 16, 8
# Where names of months would run into each other, every other one is left out, or two of three.
NAMES_AT_MOST = 12


@dataclass(frozen=True, slots=True)
class TimeLine:
    """Whole months from the one of the first day to the one of the last."""

    first: datetime.date
    last: datetime.date

    def months(self) -> tuple[datetime.date, ...]:
        """Return the first day of each month, and of the one after them."""
        count = 12 * (self.last.year - self.first.year) + self.last.month - self.first.month + 2
        begins = self.first.month - 1
        return tuple(
            datetime.date(self.first.year + (begins + n) // 12, (begins + n) % 12 + 1, 1)
            for n in range(count)
        )

    def share(self, day: datetime.date) -> float:
        """Return how far along the months a day begins."""
        begins, *_, ends = self.months()
        return (day - begins).days / (ends - begins).days


def time_scale(line: TimeLine) -> Markup:
    """Return the names of the months over the lines."""
    *months, _ = line.months()
    step = -(-len(months) // NAMES_AT_MOST)
    return unspoken(
        SCALE_PX,
        [
            text_line(percent(line.share(month)), "13", MONTHS[month.month - 1][:3])
            for month in months[::step]
        ],
    )


def order_line(line: TimeLine, days: Iterable[datetime.date]) -> Markup:
    """Return the line of some days: from the plan's day, with a dot on each."""
    laid = sorted(days)
    middle, ends = pixels(MIDDLE_PX), percent(line.share(laid[-1]))
    parts = [rule(percent(line.share(line.first)), middle, ends, middle, "until")]
    parts += [dot(percent(line.share(by)), middle, {"by": by.isoformat()}) for by in laid]
    return unspoken(LINE_PX, parts)
