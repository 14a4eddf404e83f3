"""Hours that somebody has free for the work."""

from generator.working import Formula


def free_hours(weekends_count: float, weekend_hours: float) -> float:
    """Hours free on so many weekends.

    Formula: weekends_count * weekend_hours
    Valid for: both of at least 0
    Source: count times hours (source key arithmetic)

    >>> free_hours(4, 6.5)
    26.0
    """
    return weekends_count * weekend_hours


FREE = Formula(free_hours, "hours", "weekends_count * weekend_hours", "Hours free", "arithmetic")
