"""The throw of a hand-crank spreader on a place: run-out tests, lanes, what falls beside, pace."""

import math

from generator.units import FT_PER_MINUTE_PER_MPH, SECONDS_PER_MINUTE
from generator.working import formula


def run_out_lb(put_in_lb: float, left_lb: float) -> float:
    """Seed put down, in pounds, as the difference of two weighings.

    Formula: put_in_lb - left_lb
    Valid for: left_lb of at most put_in_lb
    Source: calibration by difference or by running out, Virginia Cooperative Extension
        (source key vce_418_121)

    >>> run_out_lb(2, 1.25)
    0.75
    """
    return put_in_lb - left_lb


def swath_ground_sq_ft(swath_ft: float, distance_ft: float) -> float:
    """Ground that one pass covers, in square feet.

    Formula: swath_ft * distance_ft
    Valid for: the width that is thrown evenly
    Source: calibrating a spreader by its effective swath (source key spreader_slides)

    >>> swath_ground_sq_ft(10, 100)
    1000
    """
    return swath_ft * distance_ft


def lane_width_ft(width_ft: float, lanes_count: float) -> float:
    """Distance from lane to lane when they share the width alike, in feet.

    Formula: width_ft / lanes_count
    Valid for: lanes_count of at least 1
    Source: equal parts (source key arithmetic)

    >>> lane_width_ft(20, 2)
    10.0
    """
    return width_ft / lanes_count


def first_lane_ft(swath_ft: float) -> float:
    """Distance of the first and the last lane from the edge of the place, in feet.

    Formula: swath_ft / 2
    Valid for: a place at least as wide as the throw, which then ends at its edge
    Source: half the throw to each side of the walker (source key arithmetic)

    >>> first_lane_ft(12)
    6.0
    """
    return swath_ft / 2


def gaps_count(lanes_count: float) -> float:
    """Gaps between lanes, a count.

    Formula: lanes_count - 1
    Valid for: lanes_count of at least 2
    Source: one less than lanes (source key arithmetic)

    >>> gaps_count(2)
    1
    """
    return lanes_count - 1


def lanes_apart_ft(width_ft: float, swath_ft: float, gaps_count: float) -> float:
    """Distance from lane to lane, the first and last half a throw from the edges, in feet.

    Formula: (width_ft - swath_ft) / gaps_count
    Valid for: gaps_count of at least 1, width_ft of at least swath_ft
    Source: equal gaps between the first lane and the last (source key arithmetic)

    >>> lanes_apart_ft(24, 16, 1)
    8.0
    """
    return (width_ft - swath_ft) / gaps_count


def laid_rate_lb_per_ac(caught_rate_lb_per_ac: float, swath_ft: float, lane_ft: float) -> float:
    """Pounds per acre that passes put down when lanes lie closer than the throw is wide.

    Formula: caught_rate_lb_per_ac * swath_ft / lane_ft
    Valid for: lane_ft above 0 and at most swath_ft
    Source: the same seed on less ground (source key arithmetic)

    >>> laid_rate_lb_per_ac(5, 12, 10)
    6.0
    """
    return caught_rate_lb_per_ac * swath_ft / lane_ft


def beside_lb(bulk_seed_lb: float, swath_ft: float, width_ft: float) -> float:
    """Seed that falls beside a place narrower than the throw, in pounds.

    Formula: bulk_seed_lb * max(0, swath_ft / width_ft - 1)
    Valid for: one lane along the middle, the place sown at its full rate
    Source: the part of the throw that misses the place (source key arithmetic)

    >>> beside_lb(4, 12, 8)
    2.0
    """
    return bulk_seed_lb * max(0, swath_ft / width_ft - 1)


def load_lb(bulk_seed_lb: float, beside_lb: float) -> float:
    """Seed to load, in pounds, what falls beside the place counted in.

    Formula: bulk_seed_lb + beside_lb
    Valid for: amounts of one seed
    Source: addition (source key arithmetic)

    >>> load_lb(4, 2)
    6
    """
    return bulk_seed_lb + beside_lb


def in_all_lb(each_lb: list[float]) -> float:
    """Seed of all lots, in pounds.

    Formula: total(each_lb)
    Valid for: amounts that go on the same ground
    Source: addition (source key arithmetic)

    >>> in_all_lb([4, 2])
    6.0
    """
    return math.fsum(each_lb)


def pace_mph(distance_ft: float, walked_in_seconds: float) -> float:
    """Walking pace, in miles per hour.

    Formula: distance_ft * 60 / (walked_in_seconds * 88)
    Valid for: walked_in_seconds above 0
    Source: speed from a timed stretch, Pesticide Environmental Stewardship
        (source key stewardship_speed)

    >>> round(pace_mph(100, 17), 2)
    4.01
    """
    return distance_ft * SECONDS_PER_MINUTE / (walked_in_seconds * FT_PER_MINUTE_PER_MPH)


def stretch_seconds(stretch_ft: float, distance_ft: float, walked_in_seconds: float) -> float:
    """Seconds for a stretch at the pace of the test.

    Formula: stretch_ft * walked_in_seconds / distance_ft
    Valid for: distance_ft above 0
    Source: the same pace over another distance (source key arithmetic)

    >>> stretch_seconds(100, 150, 45)
    30.0
    """
    return stretch_ft * walked_in_seconds / distance_ft


def apart_fraction(one_rate_lb_per_ac: float, other_rate_lb_per_ac: float) -> float:
    """How far two catches lie apart, as a share of the smaller.

    Formula: max(one_rate_lb_per_ac, other_rate_lb_per_ac)
        / min(one_rate_lb_per_ac, other_rate_lb_per_ac) - 1
    Valid for: rates above 0
    Source: the careful of two ways to compare (source key arithmetic)

    >>> round(apart_fraction(5, 6), 3)
    0.2
    """
    larger = max(one_rate_lb_per_ac, other_rate_lb_per_ac)
    return larger / min(one_rate_lb_per_ac, other_rate_lb_per_ac) - 1


RUN_OUT = formula(run_out_lb, "Put down")
SWATH_GROUND = formula(swath_ground_sq_ft, "Ground of one pass")
FIRST_LANE = formula(first_lane_ft, "First lane from the edge", read_as="tape")
GAPS = formula(gaps_count, "Gaps between lanes")
LANES_APART = formula(lanes_apart_ft, "From lane to lane", read_as="tape")
LANE_WIDTH = formula(lane_width_ft, "Width that falls to one lane", read_as="tape")
LAID_RATE = formula(laid_rate_lb_per_ac, "The catch test in lanes this close")
SEED_BESIDE = formula(beside_lb, "Falls beside the place")
LOAD = formula(load_lb, "Seed to load")
BESIDE_IN_ALL = formula(in_all_lb, "Falls beside the place")
LOAD_IN_ALL = formula(in_all_lb, "Seed to load")
PACE = formula(pace_mph, "Walking pace of the test")
STRETCH_SECONDS = formula(stretch_seconds, "Time for a stretch at that pace")
THROW_APART = formula(apart_fraction, "Two catches lie apart")
