"""Days a label asks to wait between a spraying and a sowing, against the days there are."""

from generator.working import formula


def days_short_days(wait_days: float, between_days: float) -> float:
    """Days that are missing between a spraying and the first open day of a sowing.

    Formula: wait_days - between_days
    Valid for: days counted from the last day the spraying may fall on; above 0 it is too soon
    Source: what is asked less what is there (source key arithmetic)

    >>> days_short_days(120, 90)
    30
    """
    return wait_days - between_days


DAYS_SHORT = formula(days_short_days, "Days too soon")
