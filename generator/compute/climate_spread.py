"""What many years say of a day of the year: early, typical and late; gaps filled, normals drawn."""

import math
from collections.abc import Sequence

MIDDLE_FRACTION = 0.5


def at_share_days(days: Sequence[float], share_fraction: float) -> float:
    """Day before which a share of the years falls, each year at i / (n + 1), straight between.

    Formula: sorted(days) at position share_fraction * (n + 1)
    Valid for: at least one year; a share beyond the outermost years gives the outermost year
    Source: one year in ten is the tenth percentile (source key mrcc_freeze)

    >>> round(at_share_days([110, 115, 118, 120, 121, 124, 125, 127, 130, 140], 0.5), 1)
    122.5
    """
    ordered = sorted(days)
    position = share_fraction * (len(ordered) + 1)
    if position <= 1:
        return ordered[0]
    if position >= len(ordered):
        return ordered[-1]
    below = math.floor(position)
    part = position - below
    return ordered[below - 1] + part * (ordered[below] - ordered[below - 1])


def filled_f(values_f: Sequence[float | None]) -> list[float]:
    """Values of every day: a gap is drawn straight from the day before it to the day after it.

    Formula: before + (after - before) * days into the gap / length of the gap and one
    Valid for: at least one value; a gap at an end takes the nearest value
    Source: a straight line over a gap (source key arithmetic)

    >>> filled_f([None, 40, None, None, 46, None])
    [40, 40, 42.0, 44.0, 46, 46]
    """
    whole_f = [one for one in values_f if one is not None]
    if len(whole_f) == len(values_f):
        return whole_f
    known = [n for n, one in enumerate(values_f) if one is not None]
    whole_f = []
    at = 0
    for n, one in enumerate(values_f):
        while at < len(known) and known[at] < n:
            at += 1
        before = values_f[known[at - 1]] if at > 0 else None
        after = values_f[known[at]] if at < len(known) else None
        if one is not None:
            whole_f.append(one)
        elif before is None or after is None:
            nearest = after if before is None else before
            if nearest is None:
                raise ValueError("no value to fill a gap from")
            whole_f.append(nearest)
        else:
            into = (n - known[at - 1]) / (known[at] - known[at - 1])
            whole_f.append(before + (after - before) * into)
    return whole_f


def daily_from_months_f(months_f: Sequence[float], lengths: Sequence[int]) -> list[float]:
    """Temperature of every day from means of months, which the days of each month mean again.

    Straight lines between the middles of months, the middles moved until the means are right.

    Formula: lines between middles, with the mean over each month's days equal to its normal
    Valid for: twelve months around the year, each as many days long as said
    Source: a mean kept over each month (source key arithmetic)

    >>> round(sum(daily_from_months_f([30, 40] * 6, [30] * 12)[:30]) / 30, 6)
    30.0
    """
    middles = list(months_f)
    # Each round takes away most of what the means are off by; it ends once nothing is left.
    while True:
        days = _lines(middles, lengths)
        off = [
            month - sum(part) / len(part)
            for month, part in zip(months_f, _by_month(days, lengths), strict=True)
        ]
        if max(map(abs, off)) < MEAN_IS_RIGHT_F:
            return days
        middles = [one + more for one, more in zip(middles, off, strict=True)]


MEAN_IS_RIGHT_F = 1e-9


def _by_month(days: Sequence[float], lengths: Sequence[int]) -> list[Sequence[float]]:
    ends = [sum(lengths[: n + 1]) for n in range(len(lengths))]
    return [days[end - length : end] for end, length in zip(ends, lengths, strict=True)]


def _lines(middles_f: Sequence[float], lengths: Sequence[int]) -> list[float]:
    drawn_f: list[float] = []
    count = len(lengths)
    for month, length in enumerate(lengths):
        for day in range(length):
            off = (day + MIDDLE_FRACTION) - length / 2
            other = (month + (1 if off >= 0 else -1)) % count
            apart = (length + lengths[other]) / 2
            drawn_f.append(
                middles_f[month] + (middles_f[other] - middles_f[month]) * abs(off) / apart
            )
    return drawn_f
