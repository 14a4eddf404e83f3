"""Heights of one planting measured at stations: how many are asked, and what of them counts."""

from collections.abc import Sequence

from generator.units import M_PER_FT
from generator.working import formula, mean, whole_up

# One line of the pole method: so many stations, so far apart (source key pole_stations).
STATIONS_ON_A_LINE = 20
STATIONS_APART_M = 10
# No foot is farther than one such space from a station, so two stations are at most two apart.
WIDEST_GAP_FT = 2 * STATIONS_APART_M / M_PER_FT


def stations_wanted_count(length_ft: float) -> float:
    """Stations at which a planting is measured before what is counted on may be raised.

    Formula: max(20, whole_up(length_ft * 0.3048 / 10))
    Valid for: length_ft above 0
    Source: a line of 20 stations, 10 m apart (source key pole_stations)

    >>> stations_wanted_count(620), stations_wanted_count(910)
    (20, 28.0)
    """
    return max(STATIONS_ON_A_LINE, whole_up(length_ft * M_PER_FT / STATIONS_APART_M))


def mean_height_in(heights_in: Sequence[float]) -> float:
    """Height of a planting by all that was measured on a day, in inches.

    Formula: mean(heights_in)
    Valid for: at least one height
    Source: the arithmetic mean (source key arithmetic)

    >>> mean_height_in([60, 66])
    63.0
    """
    return mean(heights_in)


def lowest_height_in(heights_in: Sequence[float]) -> float:
    """Lowest of the heights that were measured, in inches.

    Formula: min(heights_in)
    Valid for: at least one height
    Source: the lowest of some heights (source key arithmetic)

    >>> lowest_height_in([60, 66])
    60
    """
    return min(heights_in)


def unlifted_fraction(pull_fraction: float) -> float:
    """How far the low curve is pulled by fewer stations than are asked: down, never up.

    Formula: min(1, pull_fraction)
    Valid for: pull_fraction above 0
    Source: a few tall spots do not make a tall stand (source key common_practice)

    >>> unlifted_fraction(1.6), unlifted_fraction(0.7)
    (1, 0.7)
    """
    return min(1, pull_fraction)


STATIONS_WANTED = formula(stations_wanted_count, "Stations asked for")
MEAN_HEIGHT = formula(mean_height_in, "Mean of the heights measured")
LOWEST_HEIGHT = formula(lowest_height_in, "Lowest of the heights measured")
UNLIFTED = formula(unlifted_fraction, "Measured against typical, never up")
