"""Grain drills: from what a few rows gave over a distance to the rate on an acre."""

from generator.units import G_PER_LB, IN_PER_FT, SQ_FT_PER_AC
from generator.working import formula


def turned_distance_ft(wheel_turns: float, wheel_circumference_ft: float) -> float:
    """Distance that turns of the drive wheel stand for, in feet.

    Formula: wheel_turns * wheel_circumference_ft
    Valid for: the circumference under load, without slip
    Source: calibrating a grain drill by turning its wheel (source key soil_health_drill)

    >>> turned_distance_ft(20, 8)
    160
    """
    return wheel_turns * wheel_circumference_ft


def distance_turns(distance_ft: float, wheel_circumference_ft: float) -> float:
    """Turns of the drive wheel over a distance.

    Formula: distance_ft / wheel_circumference_ft
    Valid for: wheel_circumference_ft above 0
    Source: calibrating a grain drill, University of Maryland (source key umd_drill)

    >>> round(distance_turns(100, 7.85), 2)
    12.74
    """
    return distance_ft / wheel_circumference_ft


def drill_width_ft(rows_count: float, row_spacing_in: float) -> float:
    """Width that one pass of a drill sows, in feet.

    Formula: rows_count * row_spacing_in / 12
    Valid for: rows evenly apart, half a space beside the outer ones
    Source: rows times the space between them (source key arithmetic)

    >>> drill_width_ft(12, 7.5)
    7.5
    """
    return rows_count * row_spacing_in / IN_PER_FT


def rows_ground_sq_ft(distance_ft: float, row_spacing_in: float, rows_count: float) -> float:
    """Ground that rows cover over a distance, in square feet.

    Formula: distance_ft * row_spacing_in / 12 * rows_count
    Valid for: rows evenly apart
    Source: calibrating a grain drill by turning its wheel (source key soil_health_drill)

    >>> rows_ground_sq_ft(160, 7.5, 1)
    100.0
    """
    return distance_ft * row_spacing_in / IN_PER_FT * rows_count


def drilled_rate_lb_per_ac(caught_lb: float, ground_sq_ft: float) -> float:
    """Pounds per acre that the drill put down in its catch test.

    Formula: caught_lb * 43560 / ground_sq_ft
    Valid for: the setting and the seed of the catch test
    Source: rate is what was caught over the ground covered, Virginia Cooperative Extension
        (source key vce_418_121)

    >>> round(drilled_rate_lb_per_ac(0.0574, 100), 1)
    25.0
    """
    return caught_lb * SQ_FT_PER_AC / ground_sq_ft


def drill_correction_fraction(bulk_rate_lb_per_ac: float, drilled_rate_lb_per_ac: float) -> float:
    """What the drill must put down, as a share of what it put down in its catch test.

    Formula: bulk_rate_lb_per_ac / drilled_rate_lb_per_ac
    Valid for: drilled_rate_lb_per_ac above 0
    Source: wanted rate over caught rate, Virginia Cooperative Extension (source key vce_418_121)

    >>> round(drill_correction_fraction(9, 10), 2)
    0.9
    """
    return bulk_rate_lb_per_ac / drilled_rate_lb_per_ac


def row_catch_g(bulk_rate_lb_per_ac: float, row_spacing_in: float, distance_ft: float) -> float:
    """Grams that each row must give over the test distance.

    Formula: bulk_rate_lb_per_ac * row_spacing_in / 12 * distance_ft / 43560 * 453.59237
    Valid for: rows evenly apart
    Source: grams from a row for a rate on an acre, University of Kentucky factors
        (source key uky_drill)

    >>> round(row_catch_g(1, 6, 150), 2)
    0.78
    """
    # in the order of the formula: another order comes to another last digit
    rate_by_width = bulk_rate_lb_per_ac * row_spacing_in / IN_PER_FT
    return rate_by_width * distance_ft / SQ_FT_PER_AC * G_PER_LB


TURNED_DISTANCE = formula(turned_distance_ft, "Distance of the catch test")
DISTANCE_TURNS = formula(distance_turns, "Turns of the drive wheel over that distance")
DRILL_WIDTH = formula(drill_width_ft, "Width of one pass", read_as="tape")
ROWS_GROUND = formula(rows_ground_sq_ft, "Ground of the rows caught")
DRILLED_RATE = formula(drilled_rate_lb_per_ac, "The drill put down in its catch test")
DRILL_CORRECTION = formula(
    drill_correction_fraction, "The drill must put down, of what the catch test put down"
)
ROW_CATCH = formula(row_catch_g, "Each row must give over that distance")
