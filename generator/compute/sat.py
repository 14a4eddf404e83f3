"""Sits that are over, counted."""

from collections.abc import Sequence

from generator.working import formula


def sits_count(winds_deg: Sequence[float]) -> float:
    """How many sits had one wind, told by where each wind came from.

    Formula: number_of(winds_deg)
    Valid for: winds in degrees, one for each sit
    Source: a count (source key arithmetic)

    >>> sits_count([310, 322, 315])
    3
    """
    return len(winds_deg)


SITS_COUNT = formula(sits_count, "Sits")
