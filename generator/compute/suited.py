"""Days that suit a kind of work, out of a series of days; a day that is not known is None."""

from collections.abc import Sequence
from itertools import accumulate

Flags = list[bool | None]
# Rain is read to the hundredth of an inch: what a sum is off by beyond this decides nothing.
KEPT_PLACES_COUNT = 4


def at_least_days(values_f: Sequence[float | None], threshold_f: float) -> Flags:
    """Which days are at or over a threshold.

    Formula: values_f[n] >= threshold_f
    Valid for: temperatures of one kind: highs, or lows
    Source: a comparison (source key arithmetic)

    >>> at_least_days([59, 60, None], 60)
    [False, True, None]
    """
    return [one >= threshold_f if one is not None else None for one in values_f]


def at_most_days(values_f: Sequence[float | None], threshold_f: float) -> Flags:
    """Which days are at or below a threshold.

    Formula: values_f[n] <= threshold_f
    Valid for: temperatures of one kind: highs, or lows
    Source: a comparison (source key arithmetic)

    >>> at_most_days([27, 28, 29, None], 28)
    [True, True, False, None]
    """
    return [one <= threshold_f if one is not None else None for one in values_f]


def night_after_days(low_f: Sequence[float | None], threshold_f: float) -> Flags:
    """Which days have a night after them at or over a threshold: the low of the next day.

    Formula: low_f[n + 1] >= threshold_f
    Valid for: lows of the morning; the night after the last day is not known
    Source: a comparison (source key arithmetic)

    >>> night_after_days([30, 41, 39], 40)
    [True, False, None]
    """
    return [*at_least_days(low_f, threshold_f)[1:], None] if low_f else []


def dry_days(rain_in: Sequence[float | None], at_most_in: float) -> Flags:
    """Which days had no more rain than so much.

    Formula: rain_in[n] <= at_most_in
    Valid for: rain in inches
    Source: a comparison (source key arithmetic)

    >>> dry_days([0, 0.05, 0.06, None], 0.05)
    [True, True, False, None]
    """
    return [one <= at_most_in if one is not None else None for one in rain_in]


def dry_before_days(rain_in: Sequence[float | None], days: int, at_most_in: float) -> Flags:
    """Which days had no more rain on the days before them together than so much.

    Formula: total(rain_in[n - days] to rain_in[n - 1]) <= at_most_in
    Valid for: rain in inches; not known where one of the days before is not
    Source: a sum and a comparison (source key arithmetic)

    >>> dry_before_days([0.3, 0.2, 0.1, None, 0], 2, 0.4)
    [None, None, False, True, None]
    """
    # the first days of a record have too few before them
    before = _spans(rain_in, days)[: max(0, len(rain_in) - days)]
    flags: Flags = [None] * (len(rain_in) - len(before))
    flags += [_total_in(known_in) <= at_most_in if whole else None for known_in, whole in before]
    return flags


def rain_after_days(rain_in: Sequence[float | None], days: int, wanted_in: float) -> Flags:
    """Which days had so much rain on the days after them together.

    Formula: total(rain_in[n + 1] to rain_in[n + days]) >= wanted_in
    Valid for: rain in inches; what is known may suffice, else a day not known leaves it open
    Source: a sum and a comparison (source key arithmetic)

    >>> rain_after_days([0, None, 0.3, 0.2, 0], 2, 0.5)
    [None, True, False, None, None]
    """
    flags: Flags = []
    for known_in, whole in _spans(rain_in, days)[1:]:
        enough = _total_in(known_in) >= wanted_in
        flags.append(enough if enough or whole else None)
    return flags


def storm_after_days(rain_in: Sequence[float | None], days: int, storm_in: float) -> Flags:
    """Which days had a storm on one of the days after them: so much rain in one day.

    Formula: largest of rain_in[n + 1] to rain_in[n + days] >= storm_in
    Valid for: rain in inches; a day not known leaves it open where the others had none
    Source: a comparison (source key arithmetic)

    >>> storm_after_days([0, 1.5, 0, 0, None], 2, 1.5)
    [True, False, None, None, None]
    """
    flags: Flags = []
    for known_in, whole in _spans(rain_in, days)[1:]:
        storm = max(known_in, default=0.0) >= storm_in
        flags.append(storm if storm or whole else None)
    return flags


def all_of_days(asked: Sequence[Flags]) -> Flags:
    """Which days have all that is asked; one thing that fails decides, one not known leaves open.

    Formula: asked[0][n] and asked[1][n] and so on
    Valid for: lists of one length
    Source: all of several (source key arithmetic)

    >>> all_of_days([[True, True, False], [True, None, None]])
    [True, None, False]
    """
    return [
        False if False in day else None if None in day else True for day in zip(*asked, strict=True)
    ]


def running_days(flags: Flags, wanted: bool | None) -> list[int]:
    """How many of the days before each, and before the end, have a flag of one kind.

    Formula: number of flags[0] to flags[n - 1] that equal wanted
    Valid for: any flags; days from a to b have counts[b] - counts[a]
    Source: a running sum (source key arithmetic)

    >>> running_days([True, None, True], True)
    [0, 1, 1, 2]
    """
    return list(accumulate([one is wanted for one in flags], initial=0))


def is_run_of_hours(
    speeds_mph: Sequence[float | None], low_mph: float, high_mph: float, hours: int
) -> bool:
    """Whether so many hours in a row have a wind within a range.

    Formula: some n with low_mph <= speeds_mph[n] to speeds_mph[n + hours - 1] <= high_mph
    Valid for: hours in order; an hour not known ends a run
    Source: a comparison (source key arithmetic)

    >>> is_run_of_hours([2, 4, 5, 9, 12], 3, 10, 3), is_run_of_hours([4, 5, None, 6], 3, 10, 3)
    (True, False)
    """
    run = 0
    for one in speeds_mph:
        run = run + 1 if one is not None and low_mph <= one <= high_mph else 0
        if run >= hours:
            return True
    return False


def _spans(rain_in: Sequence[float | None], days: int) -> list[tuple[list[float], bool]]:
    """Return the rain of so many days from each day on, and whether all of it is known.

    What is not known is 0, and adds nothing. The last span begins behind the last day.
    """
    known_in = [0.0 if one is None else one for one in rain_in]
    unknown = [0, *accumulate(one is None for one in rain_in)]
    return [
        (
            known_in[begins : begins + days],
            begins + days <= len(rain_in) and unknown[begins] == unknown[begins + days],
        )
        for begins in range(len(rain_in) + 1)
    ]


def _total_in(rain_in: Sequence[float]) -> float:
    return round(sum(rain_in), KEPT_PLACES_COUNT)
