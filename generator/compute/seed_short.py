"""Seed that does not reach: what is left for a place, and the acres it sows at full rate."""

from generator.working import formula, total, whole_down


def supply_lb(on_hand_lb: float, most_to_be_had_lb: float) -> float:
    """Seed of a lot that can be sown in all, in pounds.

    Formula: on_hand_lb + most_to_be_had_lb
    Valid for: amounts of one lot
    Source: addition (source key arithmetic)

    >>> supply_lb(4, 10)
    14
    """
    return on_hand_lb + most_to_be_had_lb


def still_to_be_had_lb(most_to_be_had_lb: float, bought_lb: list[float]) -> float:
    """Seed of a lot that can still be bought after what was bought since the count, in pounds.

    Formula: max(0, most_to_be_had_lb - total(bought_lb))
    Valid for: most_to_be_had_lb as it was on the day of the count
    Source: what was to be had less what was bought of it (source key arithmetic)

    >>> still_to_be_had_lb(12, [12.0])
    0
    """
    return max(0, most_to_be_had_lb - total(bought_lb))


def in_whole_bags_lb(to_be_had_lb: float, package_lb: float) -> float:
    """Seed that can be bought where it is sold by the bag, in pounds.

    Formula: package_lb * whole_down(to_be_had_lb / package_lb)
    Valid for: package_lb above 0
    Source: nobody sells part of a bag (source key arithmetic)

    >>> in_whole_bags_lb(12, 10)
    10.0
    """
    return package_lb * whole_down(to_be_had_lb / package_lb)


def for_place_lb(left_lb: float, used_lb: list[float]) -> float:
    """Seed that a place has in all where it is begun, in pounds: what is sown, and what is left.

    Formula: left_lb + total(used_lb)
    Valid for: amounts of one lot, used on the place up to now
    Source: addition (source key arithmetic)

    >>> for_place_lb(3, [4.0, 1.0])
    8.0
    """
    return left_lb + total(used_lb)


def taken_lb(whole_place_lb: float, sown_area_ac: float, area_ac: float) -> float:
    """Seed that a place takes when part of it is sown, in pounds.

    Formula: whole_place_lb * sown_area_ac / area_ac
    Valid for: sown_area_ac of at most area_ac
    Source: full rate over part of the ground (source key arithmetic)

    >>> taken_lb(12, 0.5, 2)
    3.0
    """
    return whole_place_lb * sown_area_ac / area_ac


def left_lb(left_lb: float, taken_lb: float) -> float:
    """Seed that is left for the places after this one, in pounds.

    Formula: max(0, left_lb - taken_lb)
    Valid for: amounts of one lot
    Source: what is there less what is taken (source key arithmetic)

    >>> left_lb(14, 11)
    3
    """
    return max(0, left_lb - taken_lb)


def sown_area_ac(area_ac: float, left_lb: float, whole_place_lb: float) -> float:
    """Acres that what is left sows at the full rate.

    Formula: area_ac * min(1, left_lb / whole_place_lb)
    Valid for: whole_place_lb above 0
    Source: full rate over part of the ground (source key arithmetic)

    >>> sown_area_ac(2, 3, 12)
    0.5
    """
    return area_ac * min(1, left_lb / whole_place_lb)


def not_sown_area_ac(area_ac: float, sown_area_ac: float) -> float:
    """Acres that are not sown.

    Formula: area_ac - sown_area_ac
    Valid for: sown_area_ac of at most area_ac
    Source: what is left of the ground (source key arithmetic)

    >>> not_sown_area_ac(2, 0.5)
    1.5
    """
    return area_ac - sown_area_ac


def waiting_area_ac(area_ac: float) -> float:
    """Acres of a place that waits as a whole.

    Formula: area_ac
    Valid for: any ground
    Source: the whole of the ground (source key arithmetic)

    >>> waiting_area_ac(2)
    2
    """
    return area_ac


SUPPLY = formula(supply_lb, "Seed to be had in all")
STILL_TO_BE_HAD = formula(still_to_be_had_lb, "Can still be had")
IN_WHOLE_BAGS = formula(in_whole_bags_lb, "To be had in whole bags")
FOR_PLACE = formula(for_place_lb, "Sown here and left for here")
TAKEN = formula(taken_lb, "Seed this place takes")
LEFT = formula(left_lb, "Seed left for places after it")
SOWN_AREA = formula(sown_area_ac, "Sown this season")
NOT_SOWN_AREA = formula(not_sown_area_ac, "Not sown this season")
WAITING_AREA = formula(waiting_area_ac, "Not sown this season")
