"""A dug water hole: what it holds, what deer drink, how long it lasts."""

import math

from generator.units import (
    CU_IN_PER_CU_FT,
    CU_IN_PER_GAL,
    LB_PER_HUNDREDWEIGHT,
    QT_PER_GAL,
)
from generator.working import formula, whole_up

# A round body between two circles of diameters D and d: pi h / 12 (D D + D d + d d).
TWELFTHS_OF_A_ROUND_BODY = 12
# The prismoidal rule: a sixth of the depth times top, bottom and four times the middle.
SIXTHS_OF_A_PRISMOID = 6
MIDDLES_OF_A_PRISMOID = 4


def round_cu_ft(top_ft: float, bottom_ft: float, depth_ft: float) -> float:
    """Water in a round hole whose sides run straight from a wide top to a flat bottom.

    Formula: 3.141592653589793 * depth_ft / 12 * (top_ft * top_ft + top_ft * bottom_ft
        + bottom_ft * bottom_ft)
    Valid for: diameters and depth of 0 and above
    Source: volume of a cut cone (source key arithmetic)

    >>> round(round_cu_ft(12, 4, 2), 2)
    108.91
    """
    across = top_ft * top_ft + top_ft * bottom_ft + bottom_ft * bottom_ft
    return math.pi * depth_ft / TWELFTHS_OF_A_ROUND_BODY * across


def cone_cu_ft(top_ft: float, depth_ft: float) -> float:
    """Water in a hole that runs to a point.

    Formula: 3.141592653589793 * depth_ft / 12 * (top_ft * top_ft)
    Valid for: diameter and depth of 0 and above
    Source: volume of a cone (source key arithmetic)

    >>> round(cone_cu_ft(10, 3), 1)
    78.5
    """
    return math.pi * depth_ft / TWELFTHS_OF_A_ROUND_BODY * (top_ft * top_ft)


def bottom_edge_ft(top_edge_ft: float, depth_ft: float, side_ft_per_ft: float) -> float:
    """Edge of the bottom of a rectangle, after both sides have come in.

    Formula: top_edge_ft - 2 * side_ft_per_ft * depth_ft
    Valid for: an answer of 0 and above; the sides meet before the bottom otherwise
    Source: mathematics department, a pond with sloping sides (source key uregina_pond)

    >>> bottom_edge_ft(385, 18, 4)
    241
    """
    return top_edge_ft - 2 * side_ft_per_ft * depth_ft


def rectangle_cu_ft(
    length_ft: float, width_ft: float, depth_ft: float, side_ft_per_ft: float
) -> float:
    """Water in a rectangle whose four sides slope alike, by the prismoidal rule.

    Formula: depth_ft / 6 * (length_ft * width_ft
        + 4 * (length_ft - side_ft_per_ft * depth_ft) * (width_ft - side_ft_per_ft * depth_ft)
        + (length_ft - 2 * side_ft_per_ft * depth_ft) * (width_ft - 2 * side_ft_per_ft * depth_ft))
    Valid for: sides that do not meet above the bottom
    Source: Alberta Agriculture, volume of a dugout (source key ab_dugout)

    >>> rectangle_cu_ft(100, 70, 12, 2)
    44256.0
    """
    inward_ft = side_ft_per_ft * depth_ft
    top_sq_ft = length_ft * width_ft
    middle_sq_ft = (length_ft - inward_ft) * (width_ft - inward_ft)
    bottom_sq_ft = (length_ft - 2 * inward_ft) * (width_ft - 2 * inward_ft)
    areas_sq_ft = top_sq_ft + MIDDLES_OF_A_PRISMOID * middle_sq_ft + bottom_sq_ft
    return depth_ft / SIXTHS_OF_A_PRISMOID * areas_sq_ft


def water_gal(volume_cu_ft: float) -> float:
    """Water in gallons.

    Formula: volume_cu_ft * 1728 / 231
    Valid for: volumes of 0 and above
    Source: a gallon is 231 cubic inches (source key nist_811)

    >>> round(water_gal(108.91), 1)
    814.7
    """
    return volume_cu_ft * CU_IN_PER_CU_FT / CU_IN_PER_GAL


def slope_ft_per_ft(top_ft: float, bottom_ft: float, depth_ft: float) -> float:
    """How far the side of a round hole runs out for each foot down.

    Formula: (top_ft - bottom_ft) / 2 / depth_ft
    Valid for: depth_ft above 0
    Source: run over rise (source key arithmetic)

    >>> slope_ft_per_ft(16, 4, 3)
    2.0
    """
    return (top_ft - bottom_ft) / 2 / depth_ft


def ramp_run_ft(depth_ft: float, ramp_ft_per_ft: float) -> float:
    """How far a ramp runs out, measured flat, from the bottom to the edge.

    Formula: depth_ft * ramp_ft_per_ft
    Valid for: depths of 0 and above
    Source: run over rise (source key arithmetic)

    >>> ramp_run_ft(3, 4)
    12
    """
    return depth_ft * ramp_ft_per_ft


def deer_water_gal_per_day(
    deer_count: float, deer_weight_lb: float, need_qt_per_100_lb_per_day: float
) -> float:
    """What so many deer drink in a day.

    Formula: deer_count * deer_weight_lb / 100 * need_qt_per_100_lb_per_day / 4
    Valid for: water drunk at the hole; what they take in with green food is not counted
    Source: weight times need (source key arithmetic)

    >>> deer_water_gal_per_day(10, 150, 3)
    11.25
    """
    hundredweights = deer_count * deer_weight_lb / LB_PER_HUNDREDWEIGHT
    return hundredweights * need_qt_per_100_lb_per_day / QT_PER_GAL


def lasts_days(water_gal: float, deer_water_gal_per_day: float) -> float:
    """How many days a full hole lasts the deer alone.

    Formula: water_gal / deer_water_gal_per_day
    Valid for: no rain, and nothing lost to sun, wind and ground
    Source: stock over daily use (source key arithmetic)

    >>> lasts_days(450, 11.25)
    40.0
    """
    return water_gal / deer_water_gal_per_day


def refills_count(
    deer_water_gal_per_day: float, dry_days: float, water_gal: float, refill_gal: float
) -> float:
    """Truck loads that carry a full hole through a dry spell; a hole takes no more than it holds.

    Formula: max(0, whole_up((deer_water_gal_per_day * dry_days - water_gal)
        / min(refill_gal, water_gal)))
    Valid for: refill_gal and water_gal above 0; nothing lost to sun, wind and ground
    Source: whole loads that cover a shortfall (source key arithmetic)

    >>> refills_count(11.25, 60, 450, 100), refills_count(11.25, 60, 450, 2000)
    (3.0, 1.0)
    """
    short_gal = deer_water_gal_per_day * dry_days - water_gal
    return max(0, whole_up(short_gal / min(refill_gal, water_gal)))


ROUND = formula(round_cu_ft, "Water in the hole")
CONE = formula(cone_cu_ft, "Water in the hole")
RECTANGLE = formula(rectangle_cu_ft, "Water in the hole")
BOTTOM_EDGE = formula(bottom_edge_ft, "Edge of the bottom")
WATER = formula(water_gal, "Water in a full hole")
SLOPE = formula(slope_ft_per_ft, "Sides")
RAMP_RUN = formula(ramp_run_ft, "Ramp runs out")
DEER_WATER = formula(deer_water_gal_per_day, "Deer drink")
LASTS = formula(lasts_days, "A full hole lasts")
REFILLS = formula(refills_count, "Loads of water in a dry spell")
