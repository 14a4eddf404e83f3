"""What to buy: whole packages beyond what is on hand."""

import math

from generator.working import Formula, whole_down, whole_up

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


PACKAGES = Formula(
    packages_count,
    "count",
    "max(0, whole_down((needed - max(0, on_hand)) / package_size + 1 - 0.01))",
    "Packages to buy",
    "common_practice",
)
COST = Formula(cost_usd, "usd", "packages_count * price_usd", "Cost", "arithmetic")
LOOSE_COST = Formula(
    loose_cost_usd, "usd", "amount * price_usd / package_size", "Cost, sold loose", "arithmetic"
)
NONE_TO_BUY = Formula(
    none_count, "count", "max(0, whole_up(needed - on_hand))", "Packages to buy", "arithmetic"
)
COST_OF_NONE = Formula(none_usd, "usd", "0 * packages_count", "Cost", "arithmetic")
TOTAL_LB = Formula(sum_of, "lb", "total(parts)", "Seed off the bag in all", "arithmetic")
TOTAL_FL_OZ = Formula(sum_of, "fl_oz", "total(parts)", "Product in all", "arithmetic")
TOTAL_USD = Formula(sum_of, "usd", "total(parts)", "Cost in all", "arithmetic")
NEEDED = Formula(sum_of, "lb", "total(parts)", "Needed in all", "arithmetic")
TOTAL_AC = Formula(sum_of, "ac", "total(parts)", "Ground of these jobs", "arithmetic")
TOTAL_GROUND = Formula(sum_of, "ac", "total(parts)", "Ground in all", "arithmetic")
TOTAL_COUNT = Formula(sum_of, "count", "total(parts)", "Together", "arithmetic")
TOTAL_HOURS = Formula(sum_of, "hours", "total(parts)", "Hours in all", "arithmetic")
TOTAL_RATE = Formula(sum_of, "lb_per_ac", "total(parts)", "Together to an acre", "arithmetic")
TOTAL_FL_OZ_PER_AC = Formula(
    sum_of, "fl_oz_per_ac", "total(parts)", "Product together to an acre", "arithmetic"
)
TOTAL_STRENGTH = Formula(sum_of, "lb_per_gal", "total(parts)", "Actives together", "arithmetic")
TOTAL_FRACTION = Formula(sum_of, "fraction", "total(parts)", "Actives together", "arithmetic")
TOTAL_OZ_WT = Formula(sum_of, "oz_wt", "total(parts)", "Product in all", "arithmetic")
