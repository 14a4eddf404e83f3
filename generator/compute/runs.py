"""One mix or one fill for several places: all they take, and what is left on leaving each."""

from collections.abc import Sequence

from generator.working import formula, total, whole_down, whole_up

THOUSANDTHS_IN_ONE = 1000


def run_ground_ac(each_ac: Sequence[float]) -> float:
    """Ground of all places of a run, in acres.

    Formula: total(each_ac)
    Valid for: places that do not share ground
    Source: places added (source key arithmetic)

    >>> run_ground_ac([0.125, 0.10, 0.08])
    0.305
    """
    return total(each_ac)


def run_spray_gal(each_gal: Sequence[float]) -> float:
    """Spray mix that all places of a run take, in gallons.

    Formula: total(each_gal)
    Valid for: the same sprayer at the same gallons to an acre on every place
    Source: places added (source key arithmetic)

    >>> run_spray_gal([1.875, 1.5, 1.2])
    4.575
    """
    return total(each_gal)


def run_product_fl_oz(each_fl_oz: Sequence[float]) -> float:
    """Liquid that all places of a run take, in fluid ounces.

    Formula: total(each_fl_oz)
    Valid for: the same rate on every place
    Source: places added (source key arithmetic)

    >>> run_product_fl_oz([8, 6.4, 5.12])
    19.52
    """
    return total(each_fl_oz)


def run_product_oz_wt(each_oz_wt: Sequence[float]) -> float:
    """Dry product that all places of a run take, in ounces by weight.

    Formula: total(each_oz_wt)
    Valid for: the same rate on every place
    Source: places added (source key arithmetic)

    >>> run_product_oz_wt([2, 1.5, 0.25])
    3.75
    """
    return total(each_oz_wt)


def run_seed_lb(each_lb: Sequence[float]) -> float:
    """Seed that all places of a run take, in pounds off the bag.

    Formula: total(each_lb)
    Valid for: the same lots at the same rate on every place
    Source: places added (source key arithmetic)

    >>> run_seed_lb([2, 1.5, 0.25])
    3.75
    """
    return total(each_lb)


def loads_begun_count(used_gal: float, load_gal: float, loads_count: float) -> float:
    """Loads mixed by the time so much is sprayed; a load is mixed once the one before is empty.

    Formula: min(loads_count, whole_up(used_gal / load_gal))
    Valid for: load_gal of every load but the last, above 0
    Source: whole loads that cover what is sprayed (source key arithmetic)

    >>> loads_begun_count(3.375, 4, 2), loads_begun_count(4.575, 4, 2)
    (1.0, 2)
    """
    return min(loads_count, whole_up(used_gal / load_gal))


def left_in_tank_gal(
    used_gal: float,
    loads_begun_count: float,
    loads_count: float,
    load_gal: float,
    last_gal: float,
) -> float:
    """Spray mix left in the tank once so much is sprayed, in gallons to the thousandth.

    Formula: whole_down(max(0, min(loads_begun_count, loads_count - 1) * load_gal
        + max(0, loads_begun_count - loads_count + 1) * last_gal - used_gal) * 1000 + 1 / 2) / 1000
    Valid for: load_gal of every load but the last, last_gal of the last
    Source: what was mixed less what is sprayed (source key arithmetic)

    >>> left_in_tank_gal(1.875, 1, 1, 4.625, 4.625), left_in_tank_gal(4.575, 2, 2, 4, 0.625)
    (2.75, 0.05)
    """
    mixed = min(loads_begun_count, loads_count - 1) * load_gal
    mixed += max(0, loads_begun_count - loads_count + 1) * last_gal
    left = max(0, mixed - used_gal)
    return whole_down(left * THOUSANDTHS_IN_ONE + 1 / 2) / THOUSANDTHS_IN_ONE


def fills_begun_count(used_lb: float, fill_lb: float) -> float:
    """Fills of the hopper by the time so much is sown; it is filled again once it is empty.

    Formula: whole_up(used_lb / fill_lb)
    Valid for: equal fills, fill_lb above 0
    Source: whole fills that cover what is sown (source key arithmetic)

    >>> fills_begun_count(2, 2.5), fills_begun_count(5, 2.5)
    (1.0, 2.0)
    """
    return whole_up(used_lb / fill_lb)


def left_in_hopper_lb(used_lb: float, fills_begun_count: float, fill_lb: float) -> float:
    """Seed left in the hopper once so much is sown, in pounds to the thousandth.

    Formula: whole_down(max(0, fills_begun_count * fill_lb - used_lb) * 1000 + 1 / 2) / 1000
    Valid for: equal fills
    Source: what was filled in less what is sown (source key arithmetic)

    >>> left_in_hopper_lb(2, 1, 3.75)
    1.75
    """
    left = max(0, fills_begun_count * fill_lb - used_lb)
    return whole_down(left * THOUSANDTHS_IN_ONE + 1 / 2) / THOUSANDTHS_IN_ONE


RUN_GROUND = formula(run_ground_ac, "Ground of the run")
RUN_SPRAY = formula(run_spray_gal, "Spray mix for the run")
RUN_PRODUCT = formula(run_product_fl_oz, "Product for the run")
RUN_DRY_PRODUCT = formula(run_product_oz_wt, "Product for the run")
RUN_SEED = formula(run_seed_lb, "Seed for the run")
SPRAYED_SO_FAR = formula(run_spray_gal, "Sprayed up to this gate")
SOWN_SO_FAR = formula(run_seed_lb, "Sown up to this gate")
LOADS_BEGUN = formula(loads_begun_count, "Loads mixed up to this gate")
LEFT_IN_TANK = formula(left_in_tank_gal, "Left in the tank at the gate")
FILLS_BEGUN = formula(fills_begun_count, "Fills up to this gate")
LEFT_IN_HOPPER = formula(left_in_hopper_lb, "Left in the hopper at the gate")
