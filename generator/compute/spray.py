"""Boom sprayers: from the catch test to water and product in each load."""

from collections.abc import Sequence

from generator.units import FL_OZ_PER_GAL, SECONDS_PER_MINUTE
from generator.working import Formula, mean, whole_down, whole_up

GAL_PER_AC_FACTOR = 5940  # sq ft an acre x in a foot / ft a minute at 1 mph (source key ifas_5940)


def nozzle_flow_gal_per_minute(caught_fl_oz: Sequence[float], caught_in_seconds: float) -> float:
    """Mean flow of one nozzle in gallons a minute.

    Formula: mean(caught_fl_oz) * 60 / (caught_in_seconds * 128)
    Valid for: every nozzle caught over the same time
    Source: calibrating with the 5940 method, University of Florida (source key ifas_5940)

    >>> nozzle_flow_gal_per_minute([16, 16, 16], 60)
    0.125
    """
    return mean(caught_fl_oz) * SECONDS_PER_MINUTE / (caught_in_seconds * FL_OZ_PER_GAL)


def carrier_gal_per_ac(
    flow_gal_per_minute: float, speed_mph: float, nozzle_spacing_in: float
) -> float:
    """Spray put on an acre, in gallons.

    Formula: 5940 * flow_gal_per_minute / (speed_mph * nozzle_spacing_in)
    Valid for: the speed, nozzle and pressure of the catch test
    Source: calibrating with the 5940 method, University of Florida (source key ifas_5940)

    >>> round(carrier_gal_per_ac(3.75, 5, 222), 2)
    20.07
    """
    return GAL_PER_AC_FACTOR * flow_gal_per_minute / (speed_mph * nozzle_spacing_in)


def spray_gal(area_ac: float, carrier_gal_per_ac: float) -> float:
    """Spray mix for the whole place, in gallons.

    Formula: area_ac * carrier_gal_per_ac
    Valid for: the ground that is sprayed, not the gross ground
    Source: worked example, Agrochemical and Pesticide Safety handbook (source key aps_handbook)

    >>> spray_gal(3.5, 15)
    52.5
    """
    return area_ac * carrier_gal_per_ac


def loads_count(spray_gal: float, tank_gal: float) -> float:
    """Tank loads, the last part load counted.

    Formula: whole_up(spray_gal / tank_gal)
    Valid for: tank_gal above 0
    Source: per-acre mixing sheet (source key mixing_sheet)

    >>> loads_count(48, 25)
    2.0
    """
    return whole_up(spray_gal / tank_gal)


def load_product_fl_oz(
    load_gal: float, carrier_gal_per_ac: float, rate_product_fl_oz_per_ac: float
) -> float:
    """Product in one load, in fluid ounces, before rounding to a mark.

    Formula: load_gal / carrier_gal_per_ac * rate_product_fl_oz_per_ac
    Valid for: the catch test's gallons per acre
    Source: per-acre mixing sheet (source key mixing_sheet)

    >>> round(load_product_fl_oz(25, 15, 32), 1)
    53.3
    """
    return load_gal / carrier_gal_per_ac * rate_product_fl_oz_per_ac


def full_loads_count(loads_count: float) -> float:
    """Loads that fill the tank: all but the last.

    Formula: loads_count - 1
    Valid for: at least one load
    Source: the last load is made up apart (source key mixing_sheet)

    >>> full_loads_count(2)
    1
    """
    return loads_count - 1


def last_load_gal(spray_gal: float, tank_gal: float, loads_count: float) -> float:
    """Spray mix in the last load, in gallons.

    Formula: spray_gal - (loads_count - 1) * tank_gal
    Valid for: loads_count as counted from the same gallons
    Source: per-acre mixing sheet (source key mixing_sheet)

    >>> last_load_gal(48, 25, 2)
    23
    """
    return spray_gal - (loads_count - 1) * tank_gal


def equal_load_gal(spray_gal: float, loads_count: float) -> float:
    """Spray mix in each load when all loads are alike, in gallons.

    Formula: spray_gal / loads_count
    Valid for: loads_count of at least 1
    Source: equal parts (source key arithmetic)

    >>> equal_load_gal(48, 2)
    24.0
    """
    return spray_gal / loads_count


def product_fl_oz(area_ac: float, rate_product_fl_oz_per_ac: float) -> float:
    """Product for the whole place, in fluid ounces.

    Formula: area_ac * rate_product_fl_oz_per_ac
    Valid for: the ground that is sprayed, not the gross ground
    Source: worked example, Agrochemical and Pesticide Safety handbook (source key aps_handbook)

    >>> product_fl_oz(3.5, 3)
    10.5
    """
    return area_ac * rate_product_fl_oz_per_ac


def active_rate_lb_per_ac(rate_product_fl_oz_per_ac: float, strength_lb_per_gal: float) -> float:
    """Active ingredient or acid equivalent put on an acre by a liquid, in pounds.

    Formula: rate_product_fl_oz_per_ac / 128 * strength_lb_per_gal
    Valid for: the basis (ai or ae) in which the strength is stated
    Source: weights and measures, Pacific Northwest handbook (source key pnw_measures)

    >>> active_rate_lb_per_ac(32, 4)
    1.0
    """
    return rate_product_fl_oz_per_ac / FL_OZ_PER_GAL * strength_lb_per_gal


def product_rate_fl_oz_per_ac(rate_lb_per_ac: float, strength_lb_per_gal: float) -> float:
    """Liquid product to an acre for a rate of active ingredient or acid equivalent.

    Formula: rate_lb_per_ac / strength_lb_per_gal * 128
    Valid for: the basis (ai or ae) in which the strength is stated
    Source: weights and measures, Pacific Northwest handbook (source key pnw_measures)

    >>> product_rate_fl_oz_per_ac(1.5, 4)
    48.0
    """
    return rate_lb_per_ac / strength_lb_per_gal * FL_OZ_PER_GAL


def measured_fl_oz(amount_fl_oz: float, mark_fl_oz: float) -> float:
    """Amount at the nearest mark of the measure, in fluid ounces.

    Formula: whole_down(amount_fl_oz / mark_fl_oz + 1 / 2) * mark_fl_oz
    Valid for: mark_fl_oz above 0
    Source: rounding to the nearest mark (source key arithmetic)

    >>> measured_fl_oz(53.3, 1)
    53.0
    """
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


NOZZLE_FLOW = Formula(
    nozzle_flow_gal_per_minute,
    "gal_per_minute",
    "mean(caught_fl_oz) * 60 / (caught_in_seconds * 128)",
    "Flow of one nozzle",
    "ifas_5940",
)
CARRIER = Formula(
    carrier_gal_per_ac,
    "gal_per_ac",
    "5940 * flow_gal_per_minute / (speed_mph * nozzle_spacing_in)",
    "Spray to an acre",
    "ifas_5940",
)
SPRAY = Formula(
    spray_gal, "gal", "area_ac * carrier_gal_per_ac", "Spray mix in all", "aps_handbook"
)
LOADS = Formula(
    loads_count, "count", "whole_up(spray_gal / tank_gal)", "Tank loads", "mixing_sheet"
)
EQUAL_LOAD = Formula(
    equal_load_gal,
    "gal",
    "spray_gal / loads_count",
    "Spray mix in each of the equal loads",
    "arithmetic",
)
LOAD_PRODUCT = Formula(
    load_product_fl_oz,
    "fl_oz",
    "load_gal / carrier_gal_per_ac * rate_product_fl_oz_per_ac",
    "Product in a load, before rounding to a mark",
    "mixing_sheet",
)
FULL_LOADS = Formula(full_loads_count, "count", "loads_count - 1", "Full loads", "mixing_sheet")
LAST_LOAD = Formula(
    last_load_gal,
    "gal",
    "spray_gal - (loads_count - 1) * tank_gal",
    "Spray mix in the last load",
    "mixing_sheet",
)
PRODUCT = Formula(
    product_fl_oz,
    "fl_oz",
    "area_ac * rate_product_fl_oz_per_ac",
    "Product in all",
    "aps_handbook",
)
ACTIVE_RATE = Formula(
    active_rate_lb_per_ac,
    "lb_per_ac",
    "rate_product_fl_oz_per_ac / 128 * strength_lb_per_gal",
    "Active on an acre",
    "pnw_measures",
)
PRODUCT_RATE = Formula(
    product_rate_fl_oz_per_ac,
    "fl_oz_per_ac",
    "rate_lb_per_ac / strength_lb_per_gal * 128",
    "Product to an acre",
    "pnw_measures",
)
MEASURED = Formula(
    measured_fl_oz,
    "fl_oz",
    "whole_down(amount_fl_oz / mark_fl_oz + 1 / 2) * mark_fl_oz",
    "Measure into the tank",
    "arithmetic",
)
MARK_BELOW = Formula(
    mark_below_fl_oz,
    "fl_oz",
    "whole_down(amount_fl_oz / mark_fl_oz) * mark_fl_oz",
    "Measure into the tank",
    "arithmetic",
)
RATE_GIVEN = Formula(
    rate_given_fl_oz_per_ac,
    "fl_oz_per_ac",
    "measured_fl_oz / (load_gal / carrier_gal_per_ac)",
    "Rate this amount gives",
    "mixing_sheet",
)
