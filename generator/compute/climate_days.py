"""Days on which a series of daily temperatures reaches something, counted from its first day.

A day without a value is None and is passed over; how many may be missing is for whoever asks.
"""

from collections.abc import Sequence

# Warmest and coldest of a day that freezes and thaws (source key freeze_thaw_1987): 0 C and -2.2 C.
THAWS_F = 32
FREEZES_F = 28
# So many of them in so many days are a time of freezing and thawing (common practice).
CLUSTER_COUNT = 3
CLUSTER_DAYS = 7


def first_freeze_days(low_f: Sequence[float | None], threshold_f: float) -> int | None:
    """Days from the first to the first day with a low at or below a threshold; None without one.

    Formula: first n with low_f[n] <= threshold_f
    Valid for: lows from a day of summer on
    Source: first day of fall at or below the threshold (source key mrcc_freeze)

    >>> first_freeze_days([40, 33, None, 32, 20], 32)
    3
    """
    found = (n for n, low in enumerate(low_f) if low is not None and low <= threshold_f)
    return next(found, None)


def last_freeze_days(low_f: Sequence[float | None], threshold_f: float) -> int | None:
    """Days from the first to the last day with a low at or below a threshold; None without one.

    Formula: last n with low_f[n] <= threshold_f
    Valid for: lows up to a day of summer
    Source: last day of spring at or below the threshold (source key mrcc_freeze)

    >>> last_freeze_days([20, 32, None, 33, 40], 32)
    1
    """
    found = [n for n, low in enumerate(low_f) if low is not None and low <= threshold_f]
    return found[-1] if found else None


def freeze_thaw_count(high_f: Sequence[float | None], low_f: Sequence[float | None]) -> int:
    """Days that freeze and thaw: the high at or over 32 F and the low at or under 28 F.

    Formula: number of n with high_f[n] >= 32 and low_f[n] <= 28
    Valid for: air at the height of a shelter; near the ground there are more
    Source: freeze-thaw days of the northeastern states (source key freeze_thaw_1987)

    >>> freeze_thaw_count([33, 32, 31, 40, 50], [27, 28, 20, 29, 10])
    3
    """
    return sum(_freeze_thaw(high_f, low_f))


def freeze_thaw_ends_days(
    high_f: Sequence[float | None], low_f: Sequence[float | None]
) -> int | None:
    """Days from the first to the last freeze-thaw day that is the third in seven days.

    Formula: last n with freeze-thaw at n and 3 or more of them in the 7 days up to n
    Valid for: days up to a day of summer
    Source: three such days in a week (source key common_practice)

    >>> freeze_thaw_ends_days([40] * 9, [20, 20, 20, 30, 30, 30, 30, 30, 20])
    2
    """
    such = _freeze_thaw(high_f, low_f)
    found = [
        n
        for n, one in enumerate(such)
        if one and sum(such[max(0, n + 1 - CLUSTER_DAYS) : n + 1]) >= CLUSTER_COUNT
    ]
    return found[-1] if found else None


def sum_reached_days(degree_days_f: Sequence[float], wanted_degree_days_f: float) -> int | None:
    """Days from the first to the day on which a sum of degree days is reached; None if never.

    Formula: first n with total(degree_days_f[0 .. n]) >= wanted_degree_days_f
    Valid for: degree days of every day, none missing
    Source: thermal time, a sum that is reached (source key osu_tsum)

    >>> sum_reached_days([0, 5, 0, 5, 5], 10)
    3
    """
    together_f = 0.0
    for n, one in enumerate(degree_days_f):
        together_f += one
        if together_f >= wanted_degree_days_f:
            return n
    return None


def held_days(warmth_f: Sequence[float], threshold_f: float, run_days: int) -> int | None:
    """Days from the first to the day that ends the first run at or over a threshold; None if never.

    Formula: first n with warmth_f[n - run_days + 1 .. n] all >= threshold_f
    Valid for: a value of every day, run_days of at least 1
    Source: a temperature that holds for so many days (source key common_practice)

    >>> held_days([59, 60, 61, 59, 60, 60, 62], 60, 3)
    6
    """
    run = 0
    for n, one in enumerate(warmth_f):
        run = run + 1 if one >= threshold_f else 0
        if run == run_days:
            return n
    return None


def emergence_days(
    soil_f: Sequence[float], threshold_f: float, run_days: int, waiting_days: int
) -> int | None:
    """Days from the first to seedlings, after the first of a run of warm soil; None if never.

    Formula: held_days(soil_f, threshold_f, run_days) - run_days + 1 + waiting_days
    Valid for: seed that lies in the ground by then and is awake; run_days of at least 1
    Source: no sum to emergence is published (source key common_practice)

    >>> emergence_days([50, 50, 50, 40], 50, 3, 14)
    14
    """
    held = held_days(soil_f, threshold_f, run_days)
    return None if held is None else held - run_days + 1 + waiting_days


def thawed_days(soil_f: Sequence[float]) -> int | None:
    """Days from the first to the day after the last with soil at or under 32 F; None without one.

    Formula: 1 + last n with soil_f[n] <= 32
    Valid for: days up to a day of summer
    Source: ground is thawed once it is frozen no more (source key common_practice)

    >>> thawed_days([30, 33, 32, 34, 40])
    3
    """
    found = [n for n, one in enumerate(soil_f) if one <= THAWS_F]
    return found[-1] + 1 if found else None


def _freeze_thaw(high_f: Sequence[float | None], low_f: Sequence[float | None]) -> list[bool]:
    return [
        high is not None and low is not None and high >= THAWS_F and low <= FREEZES_F
        for high, low in zip(high_f, low_f, strict=True)
    ]
