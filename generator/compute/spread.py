"""Hand-crank spreaders: from the catch test to fills and passes."""

from generator.units import OZ_WT_PER_LB, SQ_FT_PER_AC
from generator.working import formula, whole_down, whole_up


def caught_rate_lb_per_ac(caught_lb: float, swath_ft: float, distance_ft: float) -> float:
    """Pounds per acre that one pass of the catch test put down.

    Formula: caught_lb * 43560 / (swath_ft * distance_ft)
    Valid for: the setting, pace and seed of the catch test
    Source: rate is what was caught over the ground covered, Virginia Cooperative Extension
        (source key vce_418_121)

    >>> round(caught_rate_lb_per_ac(0.875, 20, 100), 2)
    19.06
    """
    return caught_lb * SQ_FT_PER_AC / (swath_ft * distance_ft)


def lanes_count(width_ft: float, swath_ft: float) -> float:
    """Lanes side by side that cover the width.

    Formula: whole_up(width_ft / swath_ft)
    Valid for: swath_ft above 0
    Source: lanes that cover a width (source key arithmetic)

    >>> lanes_count(24, 12)
    2.0
    """
    return whole_up(width_ft / swath_ft)


def times_over_count(bulk_rate_lb_per_ac: float, caught_rate_lb_per_ac: float) -> float:
    """How often each lane is walked, to the nearest whole time and at least once.

    Formula: max(1, whole_down(bulk_rate_lb_per_ac / caught_rate_lb_per_ac + 1 / 2))
    Valid for: caught_rate_lb_per_ac above 0
    Source: nearest whole number of times (source key arithmetic)

    >>> times_over_count(9.07, 4.6)
    2.0
    """
    return max(1, whole_down(bulk_rate_lb_per_ac / caught_rate_lb_per_ac + 1 / 2))


def passes_count(lanes_count: float, times_over_count: float) -> float:
    """Passes to walk over the whole place.

    Formula: lanes_count * times_over_count
    Valid for: whole counts
    Source: lanes, each walked so many times (source key arithmetic)

    >>> passes_count(2, 2)
    4
    """
    return lanes_count * times_over_count


def correction_fraction(
    bulk_rate_lb_per_ac: float, caught_rate_lb_per_ac: float, times_over_count: float
) -> float:
    """What one pass must put down, as a share of what the catch test put down.

    Formula: bulk_rate_lb_per_ac / (caught_rate_lb_per_ac * times_over_count)
    Valid for: caught_rate_lb_per_ac above 0
    Source: wanted rate over caught rate, Virginia Cooperative Extension (source key vce_418_121)

    >>> round(correction_fraction(9.0, 5.0, 2), 2)
    0.9
    """
    return bulk_rate_lb_per_ac / (caught_rate_lb_per_ac * times_over_count)


def pass_catch_oz_wt(caught_lb: float, correction_fraction: float) -> float:
    """What one pass must catch over the distance of the catch test, in ounces by weight.

    Formula: caught_lb * 16 * correction_fraction
    Valid for: the distance and the width of the test that caught caught_lb
    Source: share of a weight, ounces in a pound (source key arithmetic)

    >>> round(pass_catch_oz_wt(0.14, 0.75), 2)
    1.68
    """
    return caught_lb * OZ_WT_PER_LB * correction_fraction


def fills_count(bulk_lb: float, hopper_lb: float) -> float:
    """Hopper fills, the last part fill counted.

    Formula: whole_up(bulk_lb / hopper_lb)
    Valid for: hopper_lb above 0
    Source: fills that hold an amount (source key arithmetic)

    >>> fills_count(7.5, 5)
    2.0
    """
    return whole_up(bulk_lb / hopper_lb)


def fill_lb(bulk_lb: float, fills_count: float) -> float:
    """Seed in each fill when all fills are alike, in pounds.

    Formula: bulk_lb / fills_count
    Valid for: fills_count of at least 1
    Source: equal parts (source key arithmetic)

    >>> fill_lb(7.5, 2)
    3.75
    """
    return bulk_lb / fills_count


CAUGHT_RATE = formula(caught_rate_lb_per_ac, "One pass of the catch test put down")
LANES = formula(lanes_count, "Lanes side by side")
TIMES_OVER = formula(times_over_count, "Times over each lane")
PASSES = formula(passes_count, "Passes in all")
CORRECTION = formula(correction_fraction, "One pass must put down, of what the catch test put down")
PASS_CATCH = formula(pass_catch_oz_wt, "One pass must catch, over the distance of the catch test")
FILLS = formula(fills_count, "Hopper fills")
FILL = formula(fill_lb, "Seed in each fill")
