"""Degree days of one day from its high and its low, by each method that has a name."""

import math

from generator.working import formula

# Floor and ceiling of the modified method (source key ohio_agf_101).
FLOOR_F = 50
CEILING_F = 86


def simple_degree_days_f(high_f: float, low_f: float, base_f: float) -> float:
    """Degree days of a day by the simple average, in degrees F.

    Formula: max(0, (high_f + low_f) / 2 - base_f)
    Valid for: high_f of at least low_f
    Source: what the simple average means (source key wrcc_degree_days)

    >>> simple_degree_days_f(70, 50, 50)
    10.0
    """
    return max(0, (high_f + low_f) / 2 - base_f)


def modified_degree_days_f(high_f: float, low_f: float) -> float:
    """Degree days of a day by the modified method for corn, in degrees F over 50.

    Formula: (max(50, min(86, high_f)) + max(50, min(86, low_f))) / 2 - 50
    Valid for: high_f of at least low_f
    Source: the 86/50 method, Ohio State University (source key ohio_agf_101)

    >>> modified_degree_days_f(90, 65)
    25.5
    """
    high_f = max(FLOOR_F, min(CEILING_F, high_f))
    low_f = max(FLOOR_F, min(CEILING_F, low_f))
    return (high_f + low_f) / 2 - FLOOR_F


def sine_degree_days_f(high_f: float, low_f: float, base_f: float) -> float:
    """Degree days of a day by the single sine, in degrees F.

    The day's warmth is a sine from the low to the high and back; what lies over the base counts.

    Formula: ((mean - base) * (pi / 2 - angle) + half range * cos(angle)) / pi
    Valid for: high_f of at least low_f
    Source: single sine, Oregon State University (source key ippc_methods)

    >>> round(sine_degree_days_f(60, 40, 50), 4)
    3.1831
    """
    mean_f, half_f = (high_f + low_f) / 2, (high_f - low_f) / 2
    if base_f <= low_f:
        return mean_f - base_f
    if base_f >= high_f:
        return 0
    # between low and high alone: a day as cold as it is warm has no half range to divide by
    angle = math.asin((base_f - mean_f) / half_f)
    return ((mean_f - base_f) * (math.pi / 2 - angle) + half_f * math.cos(angle)) / math.pi


def cut_sine_degree_days_f(high_f: float, low_f: float, base_f: float, top_f: float) -> float:
    """Degree days of a day by the single sine with a horizontal cut, in degrees F.

    Warmth over the top does no more than the top does.

    Formula: single sine over base_f, less the single sine over top_f
    Valid for: high_f of at least low_f, top_f of at least base_f
    Source: single sine, Oregon State University (source key ippc_methods)

    >>> round(cut_sine_degree_days_f(90, 65, 50, 86), 4)
    26.8095
    """
    over_base_f = sine_degree_days_f(high_f, low_f, base_f)
    return over_base_f - sine_degree_days_f(high_f, low_f, top_f)


SIMPLE = formula(simple_degree_days_f, "Degree days, simple average")
MODIFIED = formula(modified_degree_days_f, "Degree days, modified 86/50")
