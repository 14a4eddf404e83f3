"""What is known of a job's days where a season sign is not typed."""

import datetime

from generator.inventory.season import FIRST_MONTH_OF_A_SEASON
from generator.plan.calendar import day_in_season
from generator.plan.model import OpenDates


def last_day_at_most(dates: OpenDates) -> datetime.date | None:
    """Return the day a job is over by at the latest: a missing sign only closes it sooner."""
    return min((one.day for one in dates.closes_reasons), default=None)


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
    return dates.closes or dates.opens or max((one.day for one in known), default=begins)
