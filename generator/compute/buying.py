"""What to buy: whole packages beyond what is on hand."""

import math

from generator.working import formula, whole_down, whole_up

# No package is bought for less of it than this share (common practice).
LET_GO_FRACTION = 0.01


def packages_count(needed: float, on_hand: float, package_size: float) -> float:
    """Whole packages to buy, none for less than a hundredth of it; all amounts in one unit.

    Formula: max(0, whole_down((needed - max(0, on_hand)) / package_size + 1 - 0.01))
    Valid for: package_size above 0; less than nothing on hand, by a slip of the log, is nothing
    Source: whole packages that cover a shortfall, but for a hundredth of the last one
        (source key common_practice)

    >>> packages_count(83.3, 10, 50), packages_count(10.05, 0, 10)
    (2.0, 1.0)
    """
    packages = (needed - max(0, on_hand)) / package_size
    return max(0, whole_down(packages + 1 - LET_GO_FRACTION))


def cost_usd(packages_count: float, price_usd: float) -> float:
    """Cost of the packages, in dollars.

    Formula: packages_count * price_usd
    Valid for: the price of one package on the day it was noted
    Source: count times price (source key arithmetic)

    >>> cost_usd(2, 96.5)
    193.0
    """
    return packages_count * price_usd


def loose_cost_usd(amount: float, package_size: float, price_usd: float) -> float:
    """Cost of a thing sold loose, to the weight, in dollars.

    Formula: amount * price_usd / package_size
    Valid for: amount and package_size in one unit, package_size above 0, price_usd of so much
    Source: the same price for every part of a load (source key arithmetic)

    >>> loose_cost_usd(4700, 2000, 38)
    89.3
    """
    return amount * price_usd / package_size


def none_count(needed: float, on_hand: float) -> float:
    """Packages to buy where what is there covers the need, whatever a package holds.

    Formula: max(0, whole_up(needed - on_hand))
    Valid for: on_hand of at least needed
    Source: nothing is short (source key arithmetic)

    >>> none_count(33, 40)
    0
    """
    return max(0, whole_up(needed - on_hand))


def none_usd(packages_count: float) -> float:
    """Cost where nothing is bought, whatever the price, in dollars.

    Formula: 0 * packages_count
    Valid for: packages_count of 0
    Source: nothing costs nothing (source key arithmetic)

    >>> none_usd(0)
    0
    """
    return 0 * packages_count


def sum_of(parts: list[float]) -> float:
    """Sum of parts that are all in one unit.

    Formula: total(parts)
    Valid for: parts in the unit of the sum
    Source: addition (source key arithmetic)

    >>> sum_of([0.1] * 10)
    1.0
    """
    return math.fsum(parts)


PACKAGES = formula(packages_count, "Packages to buy")
COST = formula(cost_usd, "Cost")
LOOSE_COST = formula(loose_cost_usd, "Cost, sold loose")
NONE_TO_BUY = formula(none_count, "Packages to buy")
COST_OF_NONE = formula(none_usd, "Cost")
TOTAL_LB = formula(sum_of, "Seed off the bag in all", unit="lb")
TOTAL_FL_OZ = formula(sum_of, "Product in all", unit="fl_oz")
TOTAL_USD = formula(sum_of, "Cost in all", unit="usd")
NEEDED = formula(sum_of, "Needed in all", unit="lb")
TOTAL_AC = formula(sum_of, "Ground of these jobs", unit="ac")
TOTAL_GROUND = formula(sum_of, "Ground in all", unit="ac")
TOTAL_COUNT = formula(sum_of, "Together", unit="count")
TOTAL_HOURS = formula(sum_of, "Hours in all", unit="hours")
TOTAL_RATE = formula(sum_of, "Together to an acre", unit="lb_per_ac")
TOTAL_FL_OZ_PER_AC = formula(sum_of, "Product together to an acre", unit="fl_oz_per_ac")
TOTAL_STRENGTH = formula(sum_of, "Actives together", unit="lb_per_gal")
TOTAL_FRACTION = formula(sum_of, "Actives together", unit="fraction")
TOTAL_OZ_WT = formula(sum_of, "Product in all", unit="oz_wt")
