"""What a tank is filled to: a load rounded up to a mark, in gallons, quarts and ounces."""

from generator.units import FL_OZ_PER_GAL, QT_PER_GAL
from generator.working import formula, whole_down, whole_up


def load_at_mark_gal(load_gal: float, mark_fl_oz: float, tank_gal: float) -> float:
    """Spray mix in a load at the mark above, in gallons; never more than the tank holds.

    Formula: min(tank_gal, whole_up(load_gal * 128 / mark_fl_oz) * mark_fl_oz / 128)
    Valid for: a load that the tank holds, mark_fl_oz above 0
    Source: rounding up to a mark, so that no load is short (source key arithmetic)

    >>> load_at_mark_gal(2.6, 8, 8)
    2.625
    """
    return min(
        tank_gal, whole_up(load_gal * FL_OZ_PER_GAL / mark_fl_oz) * mark_fl_oz / FL_OZ_PER_GAL
    )


def whole_gal(load_gal: float) -> float:
    """Whole gallons in a load.

    Formula: whole_down(load_gal)
    Valid for: a load of at least nothing
    Source: the whole part (source key arithmetic)

    >>> whole_gal(2.625)
    2.0
    """
    return whole_down(load_gal)


def whole_qt(load_gal: float) -> float:
    """Whole quarts that a load holds beyond whole gallons.

    Formula: whole_down((load_gal - whole_down(load_gal)) * 4)
    Valid for: a load of at least nothing
    Source: four quarts are a gallon, Pacific Northwest handbook (source key pnw_measures)

    >>> whole_qt(2.625)
    2.0
    """
    return whole_down((load_gal - whole_down(load_gal)) * QT_PER_GAL)


def left_fl_oz(load_gal: float) -> float:
    """Fluid ounces that a load holds beyond whole quarts.

    Formula: (load_gal - whole_down(load_gal * 4) / 4) * 128
    Valid for: a load at a mark of whole ounces
    Source: weights and measures, Pacific Northwest handbook (source key pnw_measures)

    >>> left_fl_oz(2.625)
    16.0
    """
    return (load_gal - whole_down(load_gal * QT_PER_GAL) / QT_PER_GAL) * FL_OZ_PER_GAL


LOAD_AT_MARK = formula(load_at_mark_gal, "Spray mix in the load, at the mark above")
WHOLE_GAL = formula(whole_gal, "Whole gallons")
WHOLE_QT = formula(whole_qt, "And quarts")
LEFT_FL_OZ = formula(left_fl_oz, "And fluid ounces")
