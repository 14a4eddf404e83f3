"""Money: what is used at its price, hire, and what a contract pays back."""

from generator.working import formula, total


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


USED = formula(used_usd, "Cost of what is used")
HIRE_BY_AREA = formula(hire_by_area_usd, "Charge by the acre")
HIRE_BY_TIME = formula(hire_by_time_usd, "Charge by the hour")
AT_LEAST = formula(at_least_usd, "Charge with its minimum")
PART = formula(part_of, "Part of a shared cost", unit="usd")
PART_DAYS = formula(part_of, "Part of the days of rent", unit="days")
SHARE_BY_AREA = formula(share_by_area_usd, "Payment by the acre")
SHARE_OF_COST = formula(share_of_cost_usd, "Payment as a share")
CAPPED = formula(capped_usd, "Payment with its cap")
NET = formula(net_usd, "Cost less what is paid back")
