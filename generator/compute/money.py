"""Money: what is used at its price, hire, and what a contract pays back."""

from generator.working import Formula, total


def used_usd(amount: float, package_size: float, price_usd: float) -> float:
    """Cost of what is used of a package, the rest of it left over.

    Formula: amount * price_usd / package_size
    Valid for: amount and package_size in one unit, package_size above 0
    Source: the same price for every part of a package (source key arithmetic)

    >>> used_usd(5, 10, 118.5)
    59.25
    """
    return amount * price_usd / package_size


def hire_by_area_usd(area_ac: float, price_usd_per_ac: float) -> float:
    """Charge for hired work by the acre, all jobs of the hire together.

    Formula: area_ac * price_usd_per_ac
    Valid for: acres as they are settled with who is hired
    Source: acres times price (source key arithmetic)

    >>> hire_by_area_usd(1.5, 30)
    45.0
    """
    return area_ac * price_usd_per_ac


def hire_by_time_usd(work_hours: float, price_usd_per_hour: float) -> float:
    """Charge for hired work by the hour, all jobs of the hire together.

    Formula: work_hours * price_usd_per_hour
    Valid for: hours on the ground, without the way there
    Source: hours times price (source key arithmetic)

    >>> hire_by_time_usd(1.5, 90)
    135.0
    """
    return work_hours * price_usd_per_hour


def at_least_usd(charge_usd: float, minimum_usd: float) -> float:
    """Charge, and no less than the least that is charged.

    Formula: max(charge_usd, minimum_usd)
    Valid for: one minimum for all jobs of a hire
    Source: what a minimum means (source key arithmetic)

    >>> at_least_usd(60, 150)
    150
    """
    return max(charge_usd, minimum_usd)


def part_of(whole: float, part: float, together: float) -> float:
    """One job's part of dollars or days that several jobs have together.

    Formula: whole * part / together
    Valid for: part and together in one unit, together above 0
    Source: shares of a whole (source key arithmetic)

    >>> part_of(150, 1, 3)
    50.0
    """
    return whole * part / together


def share_by_area_usd(area_ac: float, pays_usd_per_ac: float) -> float:
    """What a contract pays for so many acres.

    Formula: area_ac * pays_usd_per_ac
    Valid for: acres as the contract counts them
    Source: acres times payment (source key arithmetic)

    >>> share_by_area_usd(2, 85.5)
    171.0
    """
    return area_ac * pays_usd_per_ac


def share_of_cost_usd(cost_usd: float, pays_fraction: float) -> float:
    """What a contract pays of a cost.

    Formula: cost_usd * pays_fraction
    Valid for: pays_fraction in (0, 1]
    Source: share of a whole (source key arithmetic)

    >>> share_of_cost_usd(200, 0.75)
    150.0
    """
    return cost_usd * pays_fraction


def capped_usd(paid_usd: float, cap_usd: float) -> float:
    """What a contract pays, and no more than the most it pays.

    Formula: min(paid_usd, cap_usd)
    Valid for: a cap on this contract alone
    Source: what a cap means (source key arithmetic)

    >>> capped_usd(171, 150)
    150
    """
    return min(paid_usd, cap_usd)


def net_usd(cost_usd: float, paid_back_usd: list[float]) -> float:
    """Cost less what is paid back; below 0 where more is paid than the work costs.

    Formula: cost_usd - total(paid_back_usd)
    Valid for: payments that are not counted twice
    Source: subtraction (source key arithmetic)

    >>> net_usd(200, [100.0, 50.0])
    50.0
    """
    return cost_usd - total(paid_back_usd)


USED = Formula(
    used_usd, "usd", "amount * price_usd / package_size", "Cost of what is used", "arithmetic"
)
HIRE_BY_AREA = Formula(
    hire_by_area_usd, "usd", "area_ac * price_usd_per_ac", "Charge by the acre", "arithmetic"
)
HIRE_BY_TIME = Formula(
    hire_by_time_usd, "usd", "work_hours * price_usd_per_hour", "Charge by the hour", "arithmetic"
)
AT_LEAST = Formula(
    at_least_usd, "usd", "max(charge_usd, minimum_usd)", "Charge with its minimum", "arithmetic"
)
PART = Formula(part_of, "usd", "whole * part / together", "Part of a shared cost", "arithmetic")
PART_DAYS = Formula(
    part_of, "days", "whole * part / together", "Part of the days of rent", "arithmetic"
)
SHARE_BY_AREA = Formula(
    share_by_area_usd, "usd", "area_ac * pays_usd_per_ac", "Payment by the acre", "arithmetic"
)
SHARE_OF_COST = Formula(
    share_of_cost_usd, "usd", "cost_usd * pays_fraction", "Payment as a share", "arithmetic"
)
CAPPED = Formula(capped_usd, "usd", "min(paid_usd, cap_usd)", "Payment with its cap", "arithmetic")
NET = Formula(
    net_usd, "usd", "cost_usd - total(paid_back_usd)", "Cost less what is paid back", "arithmetic"
)
