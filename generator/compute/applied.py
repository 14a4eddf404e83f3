"""What was really put on an acre, from what was used and the ground it was put on."""

from generator.working import formula


def applied_fl_oz_per_ac(used_fl_oz: float, area_ac: float) -> float:
    """Product that was put on an acre, in fluid ounces.

    Formula: used_fl_oz / area_ac
    Valid for: area_ac above 0
    Source: an amount spread over ground (source key arithmetic)

    >>> applied_fl_oz_per_ac(16, 0.5)
    32.0
    """
    return used_fl_oz / area_ac


def applied_lb_per_ac(used_lb: float, area_ac: float) -> float:
    """Dry product that was put on an acre, in pounds.

    Formula: used_lb / area_ac
    Valid for: area_ac above 0
    Source: a weight spread over ground (source key arithmetic)

    >>> applied_lb_per_ac(3, 1.5)
    2.0
    """
    return used_lb / area_ac


APPLIED_FL_OZ = formula(applied_fl_oz_per_ac, "Product really put on an acre")
APPLIED_LB = formula(applied_lb_per_ac, "Product really put on an acre")
