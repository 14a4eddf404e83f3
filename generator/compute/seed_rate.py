"""Rates of seed: from seeds on a square foot or a share of a mixture to pounds to an acre."""

import math

from generator.units import SQ_FT_PER_AC
from generator.working import formula


def counted_rate_lb_per_ac(rate_seeds_per_sq_ft: float, live_seeds_per_lb: float) -> float:
    """Pure live seed to an acre, in pounds, for a rate counted in live seeds.

    Formula: rate_seeds_per_sq_ft * 43560 / live_seeds_per_lb
    Valid for: live_seeds_per_lb above 0
    Source: West Virginia University seeding rates, turned round (source key wvu_rates)

    >>> round(counted_rate_lb_per_ac(20, 259000), 3)
    3.364
    """
    return rate_seeds_per_sq_ft * SQ_FT_PER_AC / live_seeds_per_lb


def share_rate_lb_per_ac(mix_rate_pls_lb_per_ac: float, share_fraction: float) -> float:
    """Pure live seed to an acre, in pounds, of one kind in a mixture by weight.

    Formula: mix_rate_pls_lb_per_ac * share_fraction
    Valid for: share_fraction in (0, 1]
    Source: a share of a weight (source key arithmetic)

    >>> share_rate_lb_per_ac(10, 0.25)
    2.5
    """
    return mix_rate_pls_lb_per_ac * share_fraction


def share_seeds_per_lb(share_fraction: float, live_seeds_per_lb: float) -> float:
    """Live seeds that one kind brings to a pound of the mixture.

    Formula: share_fraction * live_seeds_per_lb
    Valid for: share_fraction in (0, 1]
    Source: a share of a weight (source key arithmetic)

    >>> share_seeds_per_lb(0.5, 200000)
    100000.0
    """
    return share_fraction * live_seeds_per_lb


def mix_seeds_per_lb(share_seeds_per_lb: list[float]) -> float:
    """Live seeds in a pound of a mixture by weight.

    Formula: total(share_seeds_per_lb)
    Valid for: shares that add up to one
    Source: mixes worked through by Saskatchewan Agriculture (source key sask_forage)

    >>> mix_seeds_per_lb([60000, 6000, 45450])
    111450.0
    """
    return math.fsum(share_seeds_per_lb)


def together_seeds_per_sq_ft(each_seeds_per_sq_ft: list[float]) -> float:
    """Live seeds of all kinds on a square foot.

    Formula: total(each_seeds_per_sq_ft)
    Valid for: counts of seeds sown on the same ground
    Source: addition (source key arithmetic)

    >>> together_seeds_per_sq_ft([20.5, 9.5])
    30.0
    """
    return math.fsum(each_seeds_per_sq_ft)


def alone_share_fraction(rate_pls_lb_per_ac: float, usual_rate_low_lb_per_ac: float) -> float:
    """What is sown of a kind, as a share of the least that is usual of it alone.

    Formula: rate_pls_lb_per_ac / usual_rate_low_lb_per_ac
    Valid for: usual_rate_low_lb_per_ac above 0
    Source: one rate over the other (source key arithmetic)

    >>> alone_share_fraction(1.5, 3)
    0.5
    """
    return rate_pls_lb_per_ac / usual_rate_low_lb_per_ac


def mixture_share_fraction(each_fraction: list[float]) -> float:
    """What is sown of all kinds of a mixture, each as a share of the least it takes alone.

    Formula: total(each_fraction)
    Valid for: the kinds of one mixture
    Source: addition (source key arithmetic)

    >>> mixture_share_fraction([0.5, 0.25])
    0.75
    """
    return math.fsum(each_fraction)


def pls_pound_usd(price_usd: float, package_lb: float, pls_fraction: float) -> float:
    """Cost of one pound of pure live seed, in dollars.

    Formula: price_usd / (package_lb * pls_fraction)
    Valid for: package_lb above 0 and pls_fraction in (0, 1]
    Source: Pennsylvania State University on the price of pure live seed
        (source key psu_pls_price)

    >>> round(pls_pound_usd(1.95, 1, 0.51), 2)
    3.82
    """
    return price_usd / (package_lb * pls_fraction)


COUNTED_RATE = formula(
    counted_rate_lb_per_ac, "Pure live seed to an acre, from seeds on a square foot"
)
SHARE_RATE = formula(share_rate_lb_per_ac, "Pure live seed to an acre, of its share")
SHARE_SEEDS = formula(share_seeds_per_lb, "Its live seeds in a pound of the mixture")
MIX_SEEDS = formula(mix_seeds_per_lb, "Live seeds in a pound of the mixture")
TOGETHER = formula(together_seeds_per_sq_ft, "Live seeds of all kinds on a square foot")
ALONE_SHARE = formula(alone_share_fraction, "Of the least that is usual of it alone")
MIXTURE_SHARE = formula(
    mixture_share_fraction, "The kinds together, each of the least that is usual of it alone"
)
PLS_POUND = formula(pls_pound_usd, "A pound of pure live seed costs")
