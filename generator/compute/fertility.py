"""Fertilizer: from what a lab prints to pounds of product and bags."""

from generator.units import SQ_FT_PER_AC
from generator.working import formula, total, whole_down


def product_rate_lb_per_ac(nutrient_lb_per_ac: float, nutrient_fraction: float) -> float:
    """Fertilizer to an acre that carries so much of a nutrient.

    Formula: nutrient_lb_per_ac / nutrient_fraction
    Valid for: nutrient_fraction in (0, 1], the part of the grade that is this nutrient
    Source: Manitoba soil fertility guide (source key mb_fertility)

    >>> round(product_rate_lb_per_ac(40, 0.52), 2)
    76.92
    """
    return nutrient_lb_per_ac / nutrient_fraction


def stretch_lb(product_lb_per_ac: float, width_ft: float, stretch_ft: float) -> float:
    """Fertilizer that goes on a stretch of a strip, in pounds.

    Formula: product_lb_per_ac * width_ft * stretch_ft / 43560
    Valid for: a strip as wide as its taped width over the whole stretch
    Source: square feet over those of an acre (source key arithmetic)

    >>> stretch_lb(100, 43.56, 100)
    10.0
    """
    return product_lb_per_ac * width_ft * stretch_ft / SQ_FT_PER_AC


def carried_lb_per_ac(product_lb_per_ac: float, nutrient_fraction: float) -> float:
    """Nutrient that a fertilizer brings to an acre, wanted or not.

    Formula: product_lb_per_ac * nutrient_fraction
    Valid for: nutrient_fraction in 0 to 1
    Source: Manitoba soil fertility guide (source key mb_fertility)

    >>> round(carried_lb_per_ac(77, 0.11), 2)
    8.47
    """
    return product_lb_per_ac * nutrient_fraction


def still_needed_lb_per_ac(need_lb_per_ac: float, credits_lb_per_ac: list[float]) -> float:
    """Need of a nutrient less what other fertilizers already bring, never below 0.

    Formula: max(0, need_lb_per_ac - total(credits_lb_per_ac))
    Valid for: all in pounds of the same nutrient to an acre
    Source: Manitoba soil fertility guide (source key mb_fertility)

    >>> still_needed_lb_per_ac(60, [8.5, 1.5])
    50.0
    """
    return max(0, need_lb_per_ac - total(credits_lb_per_ac))


def beyond_lb_per_ac(got_lb_per_ac: float, need_lb_per_ac: float) -> float:
    """Nutrient that goes on beyond what is asked for, never below 0.

    Formula: max(0, got_lb_per_ac - need_lb_per_ac)
    Valid for: both in pounds of the same nutrient to an acre
    Source: a difference (source key arithmetic)

    >>> beyond_lb_per_ac(60, 15)
    45
    """
    return max(0, got_lb_per_ac - need_lb_per_ac)


def together_lb_per_ac(parts_lb_per_ac: list[float]) -> float:
    """Sum of parts that all go onto the same acre.

    Formula: total(parts_lb_per_ac)
    Valid for: parts of one product or of one nutrient
    Source: addition (source key arithmetic)

    >>> together_lb_per_ac([8.5, 12])
    20.5
    """
    return total(parts_lb_per_ac)


def product_lb(area_ac: float, product_lb_per_ac: float) -> float:
    """Product for a piece of ground.

    Formula: area_ac * product_lb_per_ac
    Valid for: areas and rates of 0 and above
    Source: ground times rate (source key arithmetic)

    >>> product_lb(0.5, 150)
    75.0
    """
    return area_ac * product_lb_per_ac


def whole_bags_count(product_lb: float, package_lb: float) -> float:
    """Whole bags in an amount.

    Formula: whole_down(product_lb / package_lb)
    Valid for: package_lb above 0
    Source: whole bags, the rest weighed from one more (source key arithmetic)

    >>> whole_bags_count(120, 50)
    2.0
    """
    return whole_down(product_lb / package_lb)


def part_bag_lb(product_lb: float, bags_count: float, package_lb: float) -> float:
    """What is weighed from one more bag after the whole ones.

    Formula: max(0, product_lb - bags_count * package_lb)
    Valid for: bags_count whole bags that fit into the amount
    Source: whole bags, the rest weighed from one more (source key arithmetic)

    >>> part_bag_lb(120, 2, 50)
    20
    """
    return max(0, product_lb - bags_count * package_lb)


def nutrient_price_usd(price_usd: float, package_lb: float, nutrient_fraction: float) -> float:
    """What one pound of a nutrient costs in a fertilizer that carries no other.

    Formula: price_usd / (package_lb * nutrient_fraction)
    Valid for: package_lb and nutrient_fraction above 0
    Source: Manitoba soil fertility guide (source key mb_fertility)

    >>> round(nutrient_price_usd(367, 2204, 0.46), 3)
    0.362
    """
    return price_usd / (package_lb * nutrient_fraction)


FERTILIZER_RATE = formula(product_rate_lb_per_ac, "Fertilizer to an acre for this nutrient")
CARRIED = formula(carried_lb_per_ac, "Nutrient it carries to an acre")
STILL_NEEDED = formula(still_needed_lb_per_ac, "Still needed to an acre")
BEYOND = formula(beyond_lb_per_ac, "More than asked, to an acre")
NUTRIENT_TOGETHER = formula(together_lb_per_ac, "Nutrient put on an acre")
PRODUCT_TOGETHER = formula(together_lb_per_ac, "Fertilizer to an acre")
FERTILIZER_LB = formula(product_lb, "Fertilizer for the place")
WHOLE_BAGS = formula(whole_bags_count, "Whole bags")
PART_BAG = formula(part_bag_lb, "From one more bag")
NUTRIENT_PRICE = formula(nutrient_price_usd, "A pound of its nutrient costs")
FERTILIZER_STRETCH = formula(stretch_lb, "On a stretch of the strip")
