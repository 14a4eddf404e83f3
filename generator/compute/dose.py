"""Product for ground, spray and loads; a liquid in fluid ounces, a dry one in ounces by weight."""

from generator.units import FL_OZ_PER_GAL, OZ_WT_PER_LB, SQ_FT_PER_AC
from generator.working import formula, whole_down, whole_up

GAL_IN_A_HUNDRED = 100  # adjuvant rates by weight are printed for 100 gallons of spray


def product_fl_oz(area_ac: float, rate_product_fl_oz_per_ac: float) -> float:
    """Liquid product for the whole place, in fluid ounces.

    Formula: area_ac * rate_product_fl_oz_per_ac
    Valid for: the ground that is sprayed, not the gross ground
    Source: worked example, Agrochemical and Pesticide Safety handbook (source key aps_handbook)

    >>> product_fl_oz(3.5, 3)
    10.5
    """
    return area_ac * rate_product_fl_oz_per_ac


def product_oz_wt(area_ac: float, rate_product_lb_per_ac: float) -> float:
    """Dry product for the whole place, in ounces by weight.

    Formula: area_ac * rate_product_lb_per_ac * 16
    Valid for: the ground that is sprayed, not the gross ground
    Source: worked example, Agrochemical and Pesticide Safety handbook (source key aps_handbook)

    >>> product_oz_wt(3.5, 3)
    168.0
    """
    return area_ac * rate_product_lb_per_ac * OZ_WT_PER_LB


def load_product_fl_oz(
    load_gal: float, carrier_gal_per_ac: float, rate_product_fl_oz_per_ac: float
) -> float:
    """Liquid product in one load, in fluid ounces, before rounding to a mark.

    Formula: load_gal / carrier_gal_per_ac * rate_product_fl_oz_per_ac
    Valid for: the catch test's gallons per acre
    Source: per-acre mixing sheet (source key mixing_sheet)

    >>> round(load_product_fl_oz(25, 15, 32), 1)
    53.3
    """
    return load_gal / carrier_gal_per_ac * rate_product_fl_oz_per_ac


def load_product_oz_wt(
    load_gal: float, carrier_gal_per_ac: float, rate_product_lb_per_ac: float
) -> float:
    """Dry product in one load, in ounces by weight, before rounding to a mark.

    Formula: load_gal / carrier_gal_per_ac * rate_product_lb_per_ac * 16
    Valid for: the catch test's gallons per acre
    Source: per-acre mixing sheet (source key mixing_sheet)

    >>> load_product_oz_wt(30, 15, 0.5)
    16.0
    """
    return load_gal / carrier_gal_per_ac * rate_product_lb_per_ac * OZ_WT_PER_LB


def active_rate_lb_per_ac(rate_product_fl_oz_per_ac: float, strength_lb_per_gal: float) -> float:
    """Active ingredient or acid equivalent put on an acre by a liquid, in pounds.

    Formula: rate_product_fl_oz_per_ac / 128 * strength_lb_per_gal
    Valid for: the basis (ai or ae) in which the strength is stated
    Source: weights and measures, Pacific Northwest handbook (source key pnw_measures)

    >>> active_rate_lb_per_ac(32, 4)
    1.0
    """
    return rate_product_fl_oz_per_ac / FL_OZ_PER_GAL * strength_lb_per_gal


def dry_active_rate_lb_per_ac(rate_product_lb_per_ac: float, strength_fraction: float) -> float:
    """Active ingredient or acid equivalent put on an acre by a dry product, in pounds.

    Formula: rate_product_lb_per_ac * strength_fraction
    Valid for: the basis (ai or ae) in which the strength is stated
    Source: worked example, Agrochemical and Pesticide Safety handbook (source key aps_handbook)

    >>> dry_active_rate_lb_per_ac(2.5, 0.80)
    2.0
    """
    return rate_product_lb_per_ac * strength_fraction


def product_rate_fl_oz_per_ac(rate_lb_per_ac: float, strength_lb_per_gal: float) -> float:
    """Liquid product to an acre for a rate of active ingredient or acid equivalent.

    Formula: rate_lb_per_ac / strength_lb_per_gal * 128
    Valid for: the basis (ai or ae) in which the strength is stated
    Source: weights and measures, Pacific Northwest handbook (source key pnw_measures)

    >>> product_rate_fl_oz_per_ac(1.5, 4)
    48.0
    """
    return rate_lb_per_ac / strength_lb_per_gal * FL_OZ_PER_GAL


def dry_product_rate_lb_per_ac(rate_lb_per_ac: float, strength_fraction: float) -> float:
    """Dry product to an acre for a rate of active ingredient or acid equivalent, in pounds.

    Formula: rate_lb_per_ac / strength_fraction
    Valid for: the basis (ai or ae) in which the strength is stated
    Source: worked example, Agrochemical and Pesticide Safety handbook (source key aps_handbook)

    >>> dry_product_rate_lb_per_ac(2, 0.80)
    2.5
    """
    return rate_lb_per_ac / strength_fraction


def measured_fl_oz(amount_fl_oz: float, mark_fl_oz: float) -> float:
    """Amount at the nearest mark of the measure, in fluid ounces.

    Formula: whole_down(amount_fl_oz / mark_fl_oz + 1 / 2) * mark_fl_oz
    Valid for: mark_fl_oz above 0
    Source: rounding to the nearest mark (source key arithmetic)

    >>> measured_fl_oz(53.3, 1)
    53.0
    """
    # not round(): it takes a half to the even mark, which no line of formula says
    return whole_down(amount_fl_oz / mark_fl_oz + 1 / 2) * mark_fl_oz


def mark_below_fl_oz(amount_fl_oz: float, mark_fl_oz: float) -> float:
    """Amount at the mark below, in fluid ounces: used where the nearest would be too much.

    Formula: whole_down(amount_fl_oz / mark_fl_oz) * mark_fl_oz
    Valid for: mark_fl_oz above 0
    Source: rounding down to a mark (source key arithmetic)

    >>> mark_below_fl_oz(53.9, 1)
    53.0
    """
    return whole_down(amount_fl_oz / mark_fl_oz) * mark_fl_oz


def mark_above_fl_oz(amount_fl_oz: float, mark_fl_oz: float) -> float:
    """Amount at the mark above, in fluid ounces: used where the nearest would be too little.

    Formula: whole_up(amount_fl_oz / mark_fl_oz) * mark_fl_oz
    Valid for: mark_fl_oz above 0
    Source: rounding up to a mark (source key arithmetic)

    >>> mark_above_fl_oz(53.1, 1)
    54.0
    """
    return whole_up(amount_fl_oz / mark_fl_oz) * mark_fl_oz


def weighed_oz_wt(amount_oz_wt: float, mark_oz_wt: float) -> float:
    """Amount at the nearest mark of the scale, in ounces by weight.

    Formula: whole_down(amount_oz_wt / mark_oz_wt + 1 / 2) * mark_oz_wt
    Valid for: mark_oz_wt above 0
    Source: rounding to the nearest mark (source key arithmetic)

    >>> weighed_oz_wt(7.3, 0.5)
    7.5
    """
    return whole_down(amount_oz_wt / mark_oz_wt + 1 / 2) * mark_oz_wt


def weighed_below_oz_wt(amount_oz_wt: float, mark_oz_wt: float) -> float:
    """Amount at the mark of the scale below: used where the nearest would be too much.

    Formula: whole_down(amount_oz_wt / mark_oz_wt) * mark_oz_wt
    Valid for: mark_oz_wt above 0
    Source: rounding down to a mark (source key arithmetic)

    >>> weighed_below_oz_wt(7.4, 0.5)
    7.0
    """
    return whole_down(amount_oz_wt / mark_oz_wt) * mark_oz_wt


def weighed_above_oz_wt(amount_oz_wt: float, mark_oz_wt: float) -> float:
    """Amount at the mark of the scale above: used where the nearest would be too little.

    Formula: whole_up(amount_oz_wt / mark_oz_wt) * mark_oz_wt
    Valid for: mark_oz_wt above 0
    Source: rounding up to a mark (source key arithmetic)

    >>> weighed_above_oz_wt(7.1, 0.5)
    7.5
    """
    return whole_up(amount_oz_wt / mark_oz_wt) * mark_oz_wt


def rate_given_fl_oz_per_ac(
    measured_fl_oz: float, load_gal: float, carrier_gal_per_ac: float
) -> float:
    """Rate the measured amount gives in a load, in fluid ounces of product to an acre.

    Formula: measured_fl_oz / (load_gal / carrier_gal_per_ac)
    Valid for: the catch test's gallons per acre
    Source: per-acre mixing sheet (source key mixing_sheet)

    >>> round(rate_given_fl_oz_per_ac(53, 25, 15), 1)
    31.8
    """
    return measured_fl_oz / (load_gal / carrier_gal_per_ac)


def rate_given_lb_per_ac(
    measured_oz_wt: float, load_gal: float, carrier_gal_per_ac: float
) -> float:
    """Rate the weighed amount gives in a load, in pounds of product to an acre.

    Formula: measured_oz_wt / 16 / (load_gal / carrier_gal_per_ac)
    Valid for: the catch test's gallons per acre
    Source: per-acre mixing sheet (source key mixing_sheet)

    >>> rate_given_lb_per_ac(16, 30, 15)
    0.5
    """
    return measured_oz_wt / OZ_WT_PER_LB / (load_gal / carrier_gal_per_ac)


def percent_rate_fl_oz_per_ac(carrier_gal_per_ac: float, mix_fraction: float) -> float:
    """Liquid product that a percent mix puts on a treated acre, in fluid ounces.

    Formula: carrier_gal_per_ac * 128 * mix_fraction
    Valid for: volume in volume, sprayed at the catch test's gallons per acre
    Source: 1.28 fluid ounces in a gallon are one percent, Pacific Northwest handbook
        (source key pnw_measures)

    >>> percent_rate_fl_oz_per_ac(30, 0.02)
    76.8
    """
    return carrier_gal_per_ac * FL_OZ_PER_GAL * mix_fraction


def adjuvant_rate_lb_per_ac(carrier_gal_per_ac: float, rate_lb_per_100_gal: float) -> float:
    """Dry adjuvant to an acre for a rate by weight in 100 gallons of spray, in pounds.

    Formula: carrier_gal_per_ac * rate_lb_per_100_gal / 100
    Valid for: the catch test's gallons per acre
    Source: ammonium sulfate as a water conditioner, Washington State University
        (source key wsu_ams)

    >>> adjuvant_rate_lb_per_ac(25, 8.5)
    2.125
    """
    return carrier_gal_per_ac * rate_lb_per_100_gal / GAL_IN_A_HUNDRED


def treated_ac(treated_sq_ft: float) -> float:
    """Ground in acres that spots or a small place make together.

    Formula: treated_sq_ft / 43560
    Valid for: ground measured as it is sprayed
    Source: an acre is 43,560 square feet (source key nist_811)

    >>> treated_ac(5445)
    0.125
    """
    return treated_sq_ft / SQ_FT_PER_AC


PRODUCT = formula(product_fl_oz, "Product in all")
DRY_PRODUCT = formula(product_oz_wt, "Product in all")
LOAD_PRODUCT = formula(load_product_fl_oz, "Product in a load, before rounding to a mark")
DRY_LOAD_PRODUCT = formula(load_product_oz_wt, "Product in a load, before rounding to a mark")
ACTIVE_RATE = formula(active_rate_lb_per_ac, "Active on an acre")
DRY_ACTIVE_RATE = formula(dry_active_rate_lb_per_ac, "Active on an acre")
PRODUCT_RATE = formula(product_rate_fl_oz_per_ac, "Product to an acre")
DRY_PRODUCT_RATE = formula(dry_product_rate_lb_per_ac, "Product to an acre")
MEASURED = formula(measured_fl_oz, "Measure in")
MARK_BELOW = formula(mark_below_fl_oz, "Measure in")
MARK_ABOVE = formula(mark_above_fl_oz, "Measure in")
WEIGHED = formula(weighed_oz_wt, "Weigh in")
WEIGHED_BELOW = formula(weighed_below_oz_wt, "Weigh in")
WEIGHED_ABOVE = formula(weighed_above_oz_wt, "Weigh in")
RATE_GIVEN = formula(rate_given_fl_oz_per_ac, "Rate this amount gives")
DRY_RATE_GIVEN = formula(rate_given_lb_per_ac, "Rate this amount gives")
PERCENT_RATE = formula(percent_rate_fl_oz_per_ac, "Product the percent mix puts on a treated acre")
ADJUVANT_RATE = formula(adjuvant_rate_lb_per_ac, "Adjuvant to an acre")
TREATED = formula(treated_ac, "Ground to spray")
