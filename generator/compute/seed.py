"""Pure live seed: from the tag to the pounds in the bag."""

from generator.units import SQ_FT_PER_AC
from generator.working import formula


def pls_fraction(
    purity_fraction: float,
    germination_fraction: float,
    hard_fraction: float,
    dormant_fraction: float,
) -> float:
    """Share of the bag's weight that is pure live seed, as the tag counts it.

    Formula: purity_fraction * (germination_fraction + hard_fraction + dormant_fraction)
    Valid for: fractions in 0 to 1 whose viable parts add to at most 1
    Source: what pure live seed means, University of Georgia (source key uga_pls)

    >>> round(pls_fraction(0.98, 0.40, 0.0, 0.50), 3)
    0.882
    """
    return purity_fraction * (germination_fraction + hard_fraction + dormant_fraction)


def viable_fraction(
    germination_fraction: float, hard_fraction: float, dormant_fraction: float
) -> float:
    """Share of the pure seed that is alive, as the tag counts it.

    Formula: germination_fraction + hard_fraction + dormant_fraction
    Valid for: parts that add to at most 1
    Source: viability takes in hard and dormant seed, University of Georgia (source key uga_pls)

    >>> round(viable_fraction(0.40, 0.0, 0.50), 2)
    0.9
    """
    return germination_fraction + hard_fraction + dormant_fraction


def bulk_seed_lb(area_ac: float, rate_pls_lb_per_ac: float, pls_fraction: float) -> float:
    """Seed off the bag, in pounds, for a rate stated as pure live seed.

    Formula: area_ac * rate_pls_lb_per_ac / pls_fraction
    Valid for: pls_fraction in (0, 1]
    Source: what pure live seed means, University of Georgia (source key uga_pls)

    >>> round(bulk_seed_lb(10, 5, 0.60), 1)
    83.3
    """
    return area_ac * rate_pls_lb_per_ac / pls_fraction


def bulk_rate_lb_per_ac(rate_pls_lb_per_ac: float, pls_fraction: float) -> float:
    """Bulk pounds per acre for a rate stated as pure live seed.

    Formula: rate_pls_lb_per_ac / pls_fraction
    Valid for: pls_fraction in (0, 1]
    Source: what pure live seed means, University of Georgia (source key uga_pls)

    >>> round(bulk_rate_lb_per_ac(8, 0.882), 2)
    9.07
    """
    return rate_pls_lb_per_ac / pls_fraction


def dormant_share_fraction(
    germination_fraction: float, hard_fraction: float, dormant_fraction: float
) -> float:
    """Share of the live seed that the test found asleep.

    Formula: dormant_fraction / (germination_fraction + hard_fraction + dormant_fraction)
    Valid for: viable parts that add to more than 0
    Source: dormant seed is viable seed, not hard, that did not sprout in the test
        (source key cfr_201_57a)

    >>> round(dormant_share_fraction(0.40, 0.0, 0.50), 4)
    0.5556
    """
    return dormant_fraction / (germination_fraction + hard_fraction + dormant_fraction)


def ready_rate_pls_lb_per_ac(
    rate_pls_lb_per_ac: float,
    germination_fraction: float,
    hard_fraction: float,
    dormant_fraction: float,
) -> float:
    """Part of the tag's pure live seed that would sprout without a winter, pounds per acre.

    Formula: rate_pls_lb_per_ac * germination_fraction
        / (germination_fraction + hard_fraction + dormant_fraction)
    Valid for: viable parts that add to more than 0; it never changes the pounds to buy or spread
    Source: hard seed took up no water in the test, and dormant seed is viable seed, not hard, that
        did not sprout in it (source key cfr_201_57a)

    >>> round(ready_rate_pls_lb_per_ac(8, 0.20, 0.10, 0.50), 2)
    2.0
    """
    viable_fraction = germination_fraction + hard_fraction + dormant_fraction
    return rate_pls_lb_per_ac * germination_fraction / viable_fraction


def seeds_per_sq_ft(rate_pls_lb_per_ac: float, live_seeds_per_lb: float) -> float:
    """Live seeds on each square foot.

    Formula: rate_pls_lb_per_ac * live_seeds_per_lb / 43560
    Valid for: rates and counts above 0
    Source: West Virginia University seeding rates (source key wvu_rates)

    >>> round(seeds_per_sq_ft(1, 200000), 2)
    4.59
    """
    return rate_pls_lb_per_ac * live_seeds_per_lb / SQ_FT_PER_AC


PLS_FRACTION = formula(pls_fraction, "Pure live seed on the tag")
VIABLE = formula(viable_fraction, "Alive on the tag")
BULK_SEED = formula(bulk_seed_lb, "Seed off the bag")
BULK_RATE = formula(bulk_rate_lb_per_ac, "Seed off the bag to an acre")
DORMANT_SHARE = formula(dormant_share_fraction, "Share of the live seed asleep in the test")
READY_RATE = formula(ready_rate_pls_lb_per_ac, "Ready to grow without a winter")
SEEDS_PER_SQ_FT = formula(seeds_per_sq_ft, "Live seeds on a square foot", unit="seeds_per_sq_ft")
