"""Open dates of a step in a season, from season signs, on the careful side."""

import datetime

from generator.inventory.schema import SeasonSigns
from generator.inventory.season import FIRST_MONTH_OF_A_SEASON
from generator.plan.model import DateReason, OpenDates
from generator.plan.sign_found import FoundSigns
from generator.reference.steps import Bound, Step


def day_in_season(month_day: tuple[int, int], season: int) -> datetime.date:
    """Return the calendar day of a month and day within a season; 29 February falls on the 28th.

    >>> day_in_season((10, 15), 2027), day_in_season((3, 14), 2027)
    (datetime.date(2026, 10, 15), datetime.date(2027, 3, 14))
    """
    month, day = month_day
    year = season - 1 if month >= FIRST_MONTH_OF_A_SEASON else season
    try:
        return datetime.date(year, month, day)
    except ValueError:
        return datetime.date(year, month, day - 1)


def open_dates(step: Step, season: int, signs: SeasonSigns | None) -> OpenDates:
    """Return the latest of the step's openings and the earliest of its closings.

    An end that waits for a sign that is not known is None, and the sign is named.
    """
    opens, missing_first = _reasons(step.opens, season, signs)
    closes, missing_last = _reasons(step.closes, season, signs)
    return OpenDates(
        max(one.day for one in opens) if opens and not missing_first else None,
        min(one.day for one in closes) if closes and not missing_last else None,
        opens,
        closes,
        tuple(dict.fromkeys(missing_first + missing_last)),
    )


def _reasons(
    bounds: tuple[Bound, ...], season: int, signs: SeasonSigns | None
) -> tuple[tuple[DateReason, ...], tuple[str, ...]]:
    reasons: list[DateReason] = []
    missing: list[str] = []
    for bound in bounds:
        month_day, rests_on = bound.month_day, None
        if bound.sign is not None:
            sign = getattr(signs, bound.sign) if signs is not None else None
            if sign is None:
                missing.append(bound.sign)
                continue
            month_day = getattr(sign, bound.by)
            rests_on = signs.found[bound.sign] if isinstance(signs, FoundSigns) else None
        assert month_day is not None
        day = day_in_season(month_day, season) + datetime.timedelta(days=bound.offset_days)
        reasons.append(
            DateReason(day, bound.sign, bound.by, bound.offset_days, bound.source, rests_on)
        )
    return tuple(reasons), tuple(missing)
