"""Lime: each way a lab prints the need, to tons of the lime at hand."""

from generator.units import LB_PER_TON, SQ_FT_PER_AC
from generator.working import formula, whole_up


def lime_by_enm_ton_per_ac(need_enm_lb_per_ac: float, enm_lb_per_ton: float) -> float:
    """Lime for a need that the lab prints in pounds of effective neutralizing material.

    Formula: need_enm_lb_per_ac / enm_lb_per_ton
    Valid for: enm_lb_per_ton above 0, as the quarry states it
    Source: University of Missouri, how much lime to apply (source key mu_lime)

    >>> lime_by_enm_ton_per_ac(1200, 400)
    3.0
    """
    return need_enm_lb_per_ac / enm_lb_per_ton


def lime_by_cce_ton_per_ac(
    need_lb_per_ac: float, base_cce_fraction: float, cce_fraction: float
) -> float:
    """Lime for a need that the lab prints as lime of a stated calcium carbonate equivalent.

    Formula: need_lb_per_ac * base_cce_fraction / cce_fraction / 2000
    Valid for: cce_fraction above 0; both figures are CCE, without fineness
    Source: Pennsylvania State University soil laboratory (source key psu_lime)

    >>> round(lime_by_cce_ton_per_ac(4000, 1, 0.8), 2)
    2.5
    """
    return need_lb_per_ac * base_cce_fraction / cce_fraction / LB_PER_TON


def lime_by_ecce_ton_per_ac(
    need_lb_per_ac: float, base_ecce_fraction: float, ecce_fraction: float
) -> float:
    """Lime for a need printed as lime of a stated effective calcium carbonate equivalent.

    Formula: need_lb_per_ac * base_ecce_fraction / ecce_fraction / 2000
    Valid for: ecce_fraction above 0; both figures are ECCE, fineness counted in
    Source: Kansas county extension, choosing liming materials (source key geary_lime)

    >>> round(lime_by_ecce_ton_per_ac(2000, 0.8, 0.65), 3)
    1.231
    """
    return need_lb_per_ac * base_ecce_fraction / ecce_fraction / LB_PER_TON


def lime_now_ton_per_ac(lime_ton_per_ac: float, at_once_ton_per_ac: float) -> float:
    """What goes on at the first time: all of it, or as much as may lie on top at once.

    Formula: min(lime_ton_per_ac, at_once_ton_per_ac)
    Valid for: lime left on the surface
    Source: University of Missouri, how much lime to apply (source key mu_lime)

    >>> lime_now_ton_per_ac(3, 2)
    2
    """
    return min(lime_ton_per_ac, at_once_ton_per_ac)


def lime_later_ton_per_ac(lime_ton_per_ac: float, now_ton_per_ac: float) -> float:
    """What is left for later times.

    Formula: max(0, lime_ton_per_ac - now_ton_per_ac)
    Valid for: lime left on the surface
    Source: University of Missouri, how much lime to apply (source key mu_lime)

    >>> lime_later_ton_per_ac(3, 2)
    1
    """
    return max(0, lime_ton_per_ac - now_ton_per_ac)


def applications_count(lime_ton_per_ac: float, at_once_ton_per_ac: float) -> float:
    """How many times lime goes on, when no more than so much may lie on top at once.

    Formula: whole_up(lime_ton_per_ac / at_once_ton_per_ac)
    Valid for: at_once_ton_per_ac above 0
    Source: University of Missouri, how much lime to apply (source key mu_lime)

    >>> applications_count(4.5, 2)
    3.0
    """
    return whole_up(lime_ton_per_ac / at_once_ton_per_ac)


def lime_ton(area_ac: float, lime_ton_per_ac: float) -> float:
    """Lime for a piece of ground, in tons.

    Formula: area_ac * lime_ton_per_ac
    Valid for: areas and rates of 0 and above
    Source: ground times rate (source key arithmetic)

    >>> lime_ton(0.5, 3)
    1.5
    """
    return area_ac * lime_ton_per_ac


def lime_lb(area_ac: float, lime_ton_per_ac: float) -> float:
    """Lime for a piece of ground, in pounds, as bags count it.

    Formula: area_ac * lime_ton_per_ac * 2000
    Valid for: areas and rates of 0 and above
    Source: ground times rate (source key arithmetic)

    >>> lime_lb(0.5, 3)
    3000.0
    """
    return area_ac * lime_ton_per_ac * LB_PER_TON


def lime_stretch_lb(lime_ton_per_ac: float, width_ft: float, stretch_ft: float) -> float:
    """Lime that goes on a stretch of a strip, in pounds.

    Formula: lime_ton_per_ac * 2000 * width_ft * stretch_ft / 43560
    Valid for: a strip as wide as its taped width over the whole stretch
    Source: square feet over those of an acre (source key arithmetic)

    >>> lime_stretch_lb(1, 43.56, 100)
    200.0
    """
    return lime_ton_per_ac * LB_PER_TON * width_ft * stretch_ft / SQ_FT_PER_AC


LIME_BY_ENM = formula(lime_by_enm_ton_per_ac, "Lime to an acre, by ENM")
LIME_BY_CCE = formula(lime_by_cce_ton_per_ac, "Lime to an acre, by CCE")
LIME_BY_ECCE = formula(lime_by_ecce_ton_per_ac, "Lime to an acre, by ECCE")
LIME_NOW = formula(lime_now_ton_per_ac, "Lime to an acre this time")
LIME_LATER = formula(lime_later_ton_per_ac, "Lime to an acre later")
APPLICATIONS = formula(applications_count, "Times it is spread")
LIME_TON = formula(lime_ton, "Lime for the place")
LIME_LB = formula(lime_lb, "Lime for the place in pounds")
LIME_STRETCH = formula(lime_stretch_lb, "Lime on a stretch of the strip")
