"""Sprayers: from the catch test to spray on an acre, spray in all, and tank loads."""

from collections.abc import Sequence

from generator.units import FL_OZ_PER_GAL, IN_PER_FT, SECONDS_PER_MINUTE, SQ_FT_PER_AC
from generator.working import formula, mean, total, whole_down, whole_up

GAL_PER_AC_FACTOR = 5940  # sq ft an acre x in a foot / ft a minute at 1 mph (source key ifas_5940)

EIGHTHS_IN_AN_ACRE = 8


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


def pattern_flow_gal_per_minute(caught_fl_oz: Sequence[float], caught_in_seconds: float) -> float:
    """Flow of a whole spray pattern, all its nozzles together, in gallons a minute.

    Formula: total(caught_fl_oz) * 60 / (caught_in_seconds * 128)
    Valid for: every nozzle caught over the same time
    Source: stationary calibration, Mesa County (source key mesa_boom)

    >>> pattern_flow_gal_per_minute([240, 240], 60)
    3.75
    """
    return total(caught_fl_oz) * SECONDS_PER_MINUTE / (caught_in_seconds * FL_OZ_PER_GAL)


def swath_carrier_gal_per_ac(
    flow_gal_per_minute: float, speed_mph: float, swath_ft: float
) -> float:
    """Spray put on an acre by a pattern without a boom, in gallons.

    Formula: 5940 * flow_gal_per_minute / (speed_mph * swath_ft * 12)
    Valid for: the speed, nozzles, pressure and swath of the catch test
    Source: calibrating with the 5940 method, University of Florida (source key ifas_5940)

    >>> round(swath_carrier_gal_per_ac(3.75, 5, 18.5), 2)
    20.07
    """
    return GAL_PER_AC_FACTOR * flow_gal_per_minute / (speed_mph * swath_ft * IN_PER_FT)


def hand_carrier_gal_per_ac(caught_fl_oz: Sequence[float], covered_sq_ft: float) -> float:
    """Spray put on an acre by hand, from what a measured patch took, in gallons.

    Formula: total(caught_fl_oz) * 43560 / (128 * covered_sq_ft)
    Valid for: the pace, nozzle and pressure of the test
    Source: the method of one 128th of an acre for hand sprayers (source key hand_128)

    >>> round(hand_carrier_gal_per_ac([40], 340.3125), 1)
    40.0
    """
    return total(caught_fl_oz) * SQ_FT_PER_AC / (FL_OZ_PER_GAL * covered_sq_ft)


def spray_gal(area_ac: float, carrier_gal_per_ac: float) -> float:
    """Spray mix for the whole place, in gallons.

    Formula: area_ac * carrier_gal_per_ac
    Valid for: the ground that is sprayed, not the gross ground
    Source: worked example, Agrochemical and Pesticide Safety handbook (source key aps_handbook)

    >>> spray_gal(3.5, 15)
    52.5
    """
    return area_ac * carrier_gal_per_ac


def eighth_gal(carrier_gal_per_ac: float) -> float:
    """Spray that an eighth of an acre takes, in gallons: the pints a test catches there.

    Formula: carrier_gal_per_ac / 8
    Valid for: the catch test's gallons per acre
    Source: a part of an acre takes that part of its spray (source key arithmetic)

    >>> eighth_gal(40)
    5.0
    """
    return carrier_gal_per_ac / EIGHTHS_IN_AN_ACRE


def loads_count(spray_gal: float, tank_gal: float) -> float:
    """Tank loads, the last part load counted.

    Formula: whole_up(spray_gal / tank_gal)
    Valid for: tank_gal above 0
    Source: per-acre mixing sheet (source key mixing_sheet)

    >>> loads_count(48, 25)
    2.0
    """
    return whole_up(spray_gal / tank_gal)


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


def nozzles_count(caught_fl_oz: Sequence[float]) -> float:
    """Nozzles that were caught under, a count.

    Formula: whole_down(total(caught_fl_oz) / mean(caught_fl_oz) + 1 / 2)
    Valid for: at least one catch, each above 0
    Source: a total over its mean is how many there are (source key arithmetic)

    >>> nozzles_count([16, 17, 15])
    3.0
    """
    return whole_down(total(caught_fl_oz) / mean(caught_fl_oz) + 1 / 2)


def farthest_nozzle_fraction(caught_fl_oz: Sequence[float]) -> float:
    """How far the nozzle that differs most lies from the mean of all, as a share of the mean.

    Formula: max(max(caught_fl_oz) - mean(caught_fl_oz),
        mean(caught_fl_oz) - min(caught_fl_oz)) / mean(caught_fl_oz)
    Valid for: every nozzle caught over the same time, each above 0
    Source: a difference over the mean (source key arithmetic)

    >>> farthest_nozzle_fraction([16, 18, 14, 16])
    0.125
    """
    middle = mean(caught_fl_oz)
    return max(max(caught_fl_oz) - middle, middle - min(caught_fl_oz)) / middle


def boom_width_ft(nozzles_count: float, nozzle_spacing_in: float) -> float:
    """Width that one pass of a boom sprays, in feet.

    Formula: nozzles_count * nozzle_spacing_in / 12
    Valid for: nozzles evenly apart, every one of them open; the outer two spray half a space beyond
    Source: what one nozzle sprays, as many times as there are nozzles (source key arithmetic)

    >>> boom_width_ft(6, 20)
    10.0
    """
    return nozzles_count * nozzle_spacing_in / IN_PER_FT


NOZZLE_FLOW = formula(nozzle_flow_gal_per_minute, "Flow of one nozzle")


CARRIER = formula(carrier_gal_per_ac, "Spray to an acre")


PATTERN_FLOW = formula(pattern_flow_gal_per_minute, "Flow of the whole pattern")
SWATH_CARRIER = formula(swath_carrier_gal_per_ac, "Spray to an acre")
HAND_CARRIER = formula(hand_carrier_gal_per_ac, "Spray to an acre")
EIGHTH = formula(eighth_gal, "Spray for an eighth of an acre")
SPRAY_GAL = formula(spray_gal, "Spray mix in all")


LOADS = formula(loads_count, "Tank loads")


EQUAL_LOAD = formula(equal_load_gal, "Spray mix in each of the equal loads")


FULL_LOADS = formula(full_loads_count, "Full loads")


LAST_LOAD = formula(last_load_gal, "Spray mix in the last load")
NOZZLES = formula(nozzles_count, "Nozzles caught under")
BOOM_WIDTH = formula(boom_width_ft, "Width of one pass", read_as="tape")
FARTHEST_NOZZLE = formula(farthest_nozzle_fraction, "The nozzle that differs most, from the mean")
