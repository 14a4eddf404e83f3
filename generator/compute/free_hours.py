"""Hours that somebody has free for the work, and how the work falls into them."""

from collections.abc import Sequence

from generator.working import formula, total


def free_hours(weekends_count: float, weekend_hours: float) -> float:
    """Hours free on so many weekends.

    Formula: weekends_count * weekend_hours
    Valid for: both of at least 0
    Source: count times hours (source key arithmetic)

    >>> free_hours(4, 6.5)
    26.0
    """
    return weekends_count * weekend_hours


def free_on_a_weekend_hours(free_hours: float, weekends_count: float) -> float:
    """Hours of a month that fall to each of its weekends.

    Formula: free_hours / weekends_count
    Valid for: weekends_count of at least 1; a month whose weekends are alike
    Source: a whole shared out evenly (source key arithmetic)

    >>> free_on_a_weekend_hours(10, 4)
    2.5
    """
    return free_hours / weekends_count


def done_on_a_weekend_hours(job_hours: float, weekend_hours: float) -> float:
    """Hours of one job that a weekend takes: what is left of the job, or of the weekend.

    Formula: min(job_hours, weekend_hours)
    Valid for: both what is left after weekends before, and after jobs that close sooner
    Source: work filled into free hours, what closes first going first (source key arithmetic)

    >>> done_on_a_weekend_hours(3, 2)
    2
    """
    return min(job_hours, weekend_hours)


def left_hours(whole_hours: float, taken_hours: Sequence[float]) -> float:
    """Hours of a job, or of a weekend, that are left.

    Formula: max(0, whole_hours - total(taken_hours))
    Valid for: taken_hours out of the whole
    Source: what is left of a whole (source key arithmetic)

    >>> left_hours(5, [1, 3])
    1.0
    """
    return max(0, whole_hours - total(taken_hours))


FREE = formula(free_hours, "Hours free")
FREE_ON_A_WEEKEND = formula(free_on_a_weekend_hours, "Hours free on a weekend")
DONE_ON_A_WEEKEND = formula(done_on_a_weekend_hours, "Hours of the job on this weekend")
HOURS_LEFT = formula(left_hours, "Hours left")
