"""What to buy: whole packages beyond what is on hand."""

import math

from generator.working import Formula, whole_up


def packages_count(needed: float, on_hand: float, package_size: float) -> float:
    """Whole packages to buy; all three amounts are in the same unit.

    Formula: max(0, whole_up((needed - max(0, on_hand)) / package_size))
    Valid for: package_size above 0; less than nothing on hand, by a slip of the log, is nothing
    Source: whole packages that cover a shortfall (source key arithmetic)

    >>> packages_count(83.3, 10, 50)
    2.0
    """
    return max(0, whole_up((needed - max(0, on_hand)) / package_size))


def cost_usd(packages_count: float, price_usd: float) -> float:
    """Cost of the packages, in dollars.

    Formula: packages_count * price_usd
    Valid for: the price of one package on the day it was noted
    Source: count times price (source key arithmetic)

    >>> cost_usd(2, 96.5)
    193.0
    """
    return packages_count * price_usd


def sum_of(parts: list[float]) -> float:
    """Sum of parts that are all in one unit.

    Formula: total(parts)
    Valid for: parts in the unit of the sum
    Source: addition (source key arithmetic)

    >>> sum_of([0.1] * 10)
    1.0
    """
    return math.fsum(parts)


PACKAGES = Formula(
    packages_count,
    "count",
    "max(0, whole_up((needed - max(0, on_hand)) / package_size))",
    "Packages to buy",
    "arithmetic",
)
COST = Formula(cost_usd, "usd", "packages_count * price_usd", "Cost", "arithmetic")
TOTAL_LB = Formula(sum_of, "lb", "total(parts)", "Seed off the bag in all", "arithmetic")
TOTAL_FL_OZ = Formula(sum_of, "fl_oz", "total(parts)", "Product in all", "arithmetic")
TOTAL_USD = Formula(sum_of, "usd", "total(parts)", "Cost in all", "arithmetic")
NEEDED = Formula(sum_of, "lb", "total(parts)", "Needed in all", "arithmetic")
TOTAL_AC = Formula(sum_of, "ac", "total(parts)", "Ground of these jobs", "arithmetic")
TOTAL_COUNT = Formula(sum_of, "count", "total(parts)", "Together", "arithmetic")
TOTAL_HOURS = Formula(sum_of, "hours", "total(parts)", "Hours in all", "arithmetic")
TOTAL_RATE = Formula(sum_of, "lb_per_ac", "total(parts)", "Together to an acre", "arithmetic")
TOTAL_FL_OZ_PER_AC = Formula(
    sum_of, "fl_oz_per_ac", "total(parts)", "Product together to an acre", "arithmetic"
)
TOTAL_STRENGTH = Formula(sum_of, "lb_per_gal", "total(parts)", "Actives together", "arithmetic")
TOTAL_FRACTION = Formula(sum_of, "fraction", "total(parts)", "Actives together", "arithmetic")
TOTAL_OZ_WT = Formula(sum_of, "oz_wt", "total(parts)", "Product in all", "arithmetic")
