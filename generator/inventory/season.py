"""The season a day lies in. A season begins in fall and is named by its spring."""

import datetime
from typing import Any

from generator.inventory.fields import A_YEAR_LONG_AGO, YEAR_LIMITS, Limits, whole
from generator.working import Visible

FIRST_MONTH_OF_A_SEASON = 9
# Trees and old prairie stand for longer than anybody has planned.
WHAT_STANDS = A_YEAR_LONG_AGO


def a_season(visible: Visible, help: str, years: Limits = YEAR_LIMITS, **more: Any) -> Any:
    """Declare a season, named by its spring."""
    return whole(visible, help, years, **more)


def season_of(day: datetime.date) -> int:
    """Return the season a day lies in, named by its spring.

    >>> season_of(datetime.date(2026, 10, 15)), season_of(datetime.date(2027, 3, 14))
    (2027, 2027)
    """
    return day.year + (day.month >= FIRST_MONTH_OF_A_SEASON)
