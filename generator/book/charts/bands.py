"""Bands over the twelve months of a season: when something is open, and when it must rest."""

import datetime
from collections.abc import Iterable

from markupsafe import Markup

from generator.book.charts.drawing import box, percent, pixels, rule, text_line, unspoken
from generator.plan.jobs.job_days import FIRST_OF_SEASON, LAST_OF_SEASON
from generator.plan.model.days import MONTHS, ONE_DAY, Span
from generator.plan.season.open_dates import day_in_season

MONTHS_OF_A_YEAR = 12
SCALE_PX, BAND_PX, ROOM_PX = 18, 10, 3


class Season:
    """The days of one season laid out from left to right."""

    def __init__(self, season: int) -> None:
        self.first = day_in_season(FIRST_OF_SEASON, season)
        self.last = day_in_season(LAST_OF_SEASON, season)
        self.days = (self.last - self.first).days + 1

    def share(self, day: datetime.date) -> float:
        """Return how far into the season a day begins, from 0 to 1.

        >>> Season(2027).share(datetime.date(2026, 9, 1))
        0.0
        """
        return min(max((day - self.first).days / self.days, 0.0), 1.0)

    def width(self, span: Span) -> float:
        """Return the share of the season that a span of days takes, its last day included.

        >>> Season(2027).width((datetime.date(2026, 8, 1), datetime.date(2027, 8, 31)))
        1.0
        """
        return self.share(span[1] + ONE_DAY) - self.share(span[0])

    def months(self) -> tuple[datetime.date, ...]:
        """Return the first day of each month."""
        first = self.first.month - 1
        return tuple(
            datetime.date(
                self.first.year + (first + number) // MONTHS_OF_A_YEAR,
                (first + number) % MONTHS_OF_A_YEAR + 1,
                1,
            )
            for number in range(MONTHS_OF_A_YEAR)
        )


def month_scale(season: int) -> Markup:
    """Return the names of the months above the bands."""
    laid = Season(season)
    parts = [
        text_line(percent(laid.share(first)), "13", MONTHS[first.month - 1][:3])
        for first in laid.months()
    ]
    return unspoken(SCALE_PX, parts)


def band(
    season: int,
    spans: Iterable[Span],
    today: datetime.date,
    years: Iterable[Span] = (),
    kind: str = "open",
) -> Markup:
    """Return one band of days, cut open where a day is none of them.

    A thin line goes from the first day of an early year to the last of a late one, `years`. Days
    before and after the season are cut off.
    """
    laid = Season(season)
    height = BAND_PX + 2 * ROOM_PX
    lines = [
        rule(percent(laid.share(first)), "0", percent(laid.share(first)), pixels(height), "month")
        for first in laid.months()
    ]
    thin = [_bar(laid, span, "years") for span in years if laid.width(span) > 0]
    marks = [_bar(laid, span, kind) for span in spans if laid.width(span) > 0]
    # outside the season it is drawn too, unseen: the device's day may lie inside
    kind_of_now = "now" if laid.first <= today <= laid.last else "now out"
    at = percent(laid.share(today))
    return unspoken(height, [*lines, *thin, *marks, rule(at, "0", at, pixels(height), kind_of_now)])


def _bar(laid: Season, span: Span, kind: str) -> Markup:
    data = {"first": span[0].isoformat(), "last": span[1].isoformat()}
    x, width = percent(laid.share(span[0])), percent(laid.width(span))
    if kind != "years":
        return box(x, pixels(ROOM_PX), width, pixels(BAND_PX), f'class="{kind}"', data)
    return box(x, pixels(ROOM_PX + BAND_PX / 2 - 2), width, "4", f'class="{kind}"', data)
