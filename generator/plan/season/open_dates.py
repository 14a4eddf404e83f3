"""Open dates of a step in a season, from season markers, on the careful side."""

import datetime
from typing import Literal

from generator.inventory.schema import SeasonMarkers
from generator.inventory.season import FIRST_MONTH_OF_A_SEASON
from generator.plan.model.job import DateReason, OpenDates, YearDates
from generator.plan.model.markers import FoundMarkers, MarkerFound
from generator.reference.steps import Bound, Step

Year = Literal["early", "typical", "late"]
SEEN = "seen"  # in the place of a year, where the sign was seen in the season itself
YEARS: tuple[Year, ...] = ("early", "typical", "late")


def day_in_season(month_day: tuple[int, int], season: int) -> datetime.date:
    """Return the calendar day of a month and day within a season; Feb 29 falls on the 28th.

    >>> day_in_season((10, 15), 2027), day_in_season((3, 14), 2027)
    (datetime.date(2026, 10, 15), datetime.date(2027, 3, 14))
    """
    month, day = month_day
    year = season - 1 if month >= FIRST_MONTH_OF_A_SEASON else season
    try:
        return datetime.date(year, month, day)
    except ValueError:
        return datetime.date(year, month, day - 1)


def open_dates(step: Step, season: int, signs: SeasonMarkers | None) -> OpenDates:
    """Return the latest of the step's openings and the earliest of its closings.

    An end that waits for a sign that is not known is None, and the sign is named.
    """
    opens, missing_first = _reasons(step.opens, season, signs)
    closes, missing_last = _reasons(step.closes, season, signs)
    # a sign that is not known may be the one that decides, so the others alone give no end
    missing = tuple(dict.fromkeys(missing_first + missing_last))
    return OpenDates(
        max(reason.day for reason in opens) if opens and not missing_first else None,
        min(reason.day for reason in closes) if closes and not missing_last else None,
        opens,
        closes,
        missing,
        # days of the calendar are the same in every year
        tuple(_in_year(step, season, signs, year) for year in YEARS)
        if signs is not None and _waits_for_known_signs(step, signs)
        else (),
    )


def _waits_for_known_signs(step: Step, signs: SeasonMarkers) -> bool:
    """Whether it waits for signs and all of them are known in any year, seen in this one or not."""
    waits_for = [bound.sign for bound in (*step.opens, *step.closes) if bound.sign is not None]
    return bool(waits_for) and all(getattr(signs, sign) is not None for sign in waits_for)


def _in_year(step: Step, season: int, signs: SeasonMarkers, year: Year) -> YearDates:
    """Return the open dates of a year in which every sign is early, typical or late."""
    opens = [_day(bound, season, signs, year) for bound in step.opens]
    closes = [_day(bound, season, signs, year) for bound in step.closes]
    return YearDates(year, max(opens, default=None), min(closes, default=None))


def _day(bound: Bound, season: int, signs: SeasonMarkers | None, by: str) -> datetime.date:
    month_day = bound.month_day
    if bound.sign is not None:
        month_day = getattr(getattr(signs, bound.sign), by)
    assert month_day is not None
    return day_in_season(month_day, season) + datetime.timedelta(days=bound.offset_days)


def _seen(bound: Bound, season: int, signs: SeasonMarkers | None) -> datetime.date | None:
    """Return the day a bound's sign was seen in a season, on the careful side; None if it was not.

    What must be over before it keeps to the first of several days, what waits for it to the last.
    """
    if bound.sign is None or not isinstance(signs, FoundMarkers) or bound.sign not in signs.seen:
        return None
    days = signs.seen[bound.sign].seasons.get(season)
    if days is None:
        return None
    return days.last if bound.by == "late" else days.first


def _reasons(
    bounds: tuple[Bound, ...], season: int, signs: SeasonMarkers | None
) -> tuple[tuple[DateReason, ...], tuple[str, ...]]:
    reasons: list[DateReason] = []
    missing: list[str] = []
    for bound in bounds:
        rests_on, by = None, bound.by
        seen = _seen(bound, season, signs)
        if seen is not None:
            day = seen + datetime.timedelta(days=bound.offset_days)
            by, rests_on = SEEN, MarkerFound(str(bound.sign), "", "seen", None, years=(seen,))
        elif bound.sign is not None and (signs is None or getattr(signs, bound.sign) is None):
            missing.append(bound.sign)
            continue
        else:
            day = _day(bound, season, signs, bound.by)
            if bound.sign is not None and isinstance(signs, FoundMarkers):
                rests_on = signs.found.get(bound.sign)
        reasons.append(DateReason(day, bound.sign, by, bound.offset_days, bound.source, rests_on))
    return tuple(reasons), tuple(missing)


def is_over(dates: OpenDates, as_of: datetime.date) -> bool:
    """Return whether the last open day has passed; not where it is not known."""
    return dates.closes is not None and dates.closes < as_of


def last_day_at_most(dates: OpenDates) -> datetime.date | None:
    """Return the day a job is over by at the latest: a missing sign only closes it sooner."""
    return min((reason.day for reason in dates.closes_reasons), default=None)


def do_not_meet(dates: OpenDates) -> bool:
    """Return whether a job closes before it opens, so that there is no day for it."""
    return dates.opens is not None and dates.closes is not None and dates.closes < dates.opens


def judged_on(dates: OpenDates, season: int) -> datetime.date:
    """Return the day on which the age of what a job rests on is judged.

    Its last day, else its first, else the last day known, else the first day of its season: what
    is too old on that day is too old whenever the job is done.
    """
    known = (*dates.opens_reasons, *dates.closes_reasons)
    begins = day_in_season((FIRST_MONTH_OF_A_SEASON, 1), season)
    return dates.closes or dates.opens or max((reason.day for reason in known), default=begins)
