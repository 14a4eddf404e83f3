"""Ground of a place that is left to spray beside what labels keep the spray from."""

import math

from generator.working import formula, whole_down, whole_up


def reach_ft(kept_ft: float, thing_off_ft: float, place_off_ft: float) -> float:
    """Distance that is left out around a thing, in feet, its points and the place's both off.

    Formula: kept_ft + thing_off_ft + place_off_ft
    Valid for: points that are off by no more than that, toward each other
    Source: addition (source key arithmetic)

    >>> reach_ft(66, 16, 1)
    83
    """
    return kept_ft + thing_off_ft + place_off_ft


def left_out_ft(kept_ft: float, near_edge_ft: float) -> float:
    """Width of a place that is left out along one side, in feet.

    Formula: max(0, kept_ft - near_edge_ft)
    Valid for: near_edge_ft measured to the edge of the place that is nearest
    Source: subtraction (source key arithmetic)

    >>> left_out_ft(66, 50), left_out_ft(66, 80)
    (16, 0)
    """
    return max(0, kept_ft - near_edge_ft)


def left_width_ft(width_ft: float, left_out_ft: list[float]) -> float:
    """Width of a place that is left to spray, in feet.

    Formula: max(0, width_ft - total(left_out_ft))
    Valid for: what is left out along other sides, each as far as its farthest
    Source: subtraction (source key arithmetic)

    >>> left_width_ft(30, [16])
    14.0
    """
    return max(0, width_ft - math.fsum(left_out_ft))


def left_by_width_fraction(left_width_ft: float, width_ft: float) -> float:
    """Part of the ground of a place that is left to spray, by its width.

    Formula: left_width_ft / width_ft
    Valid for: width_ft above 0, what is left out along the whole length
    Source: the same length, less wide (source key arithmetic)

    >>> left_by_width_fraction(15, 30)
    0.5
    """
    return left_width_ft / width_ft


def both_left_fraction(left_fraction: float, left_by_width_fraction: float) -> float:
    """Part of a place that is left where some is left out by points and some by its width.

    Formula: max(0, left_fraction + left_by_width_fraction - 1)
    Valid for: parts left out of which nobody knows that they lie on the same ground
    Source: both parts are left out (source key arithmetic)

    >>> both_left_fraction(0.75, 0.5), both_left_fraction(0.25, 0.5)
    (0.25, 0)
    """
    return max(0, left_fraction + left_by_width_fraction - 1)


def left_ac(area_ac: float, left_fraction: float) -> float:
    """Ground of a place that is left to spray, in acres.

    Formula: area_ac * left_fraction
    Valid for: the ground of the place that counts, left_fraction in [0, 1]
    Source: part of the ground (source key arithmetic)

    >>> left_ac(0.5, 0.25)
    0.125
    """
    return area_ac * left_fraction


def lost_ac(area_ac: float, lost_fraction: float) -> float:
    """Ground of a place that is left out beside one thing, in acres.

    Formula: area_ac * lost_fraction
    Valid for: the ground of the place that counts, lost_fraction in [0, 1]
    Source: part of the ground (source key arithmetic)

    >>> lost_ac(0.5, 0.75)
    0.375
    """
    return area_ac * lost_fraction


def lost_beside_ac(area_ac: float, left_out_ft: float, width_ft: float) -> float:
    """Ground of a place that is left out along one side, in acres.

    Formula: area_ac * min(left_out_ft, width_ft) / width_ft
    Valid for: width_ft above 0, what is left out along the whole length
    Source: the same length, less wide (source key arithmetic)

    >>> lost_beside_ac(0.5, 15, 30)
    0.25
    """
    return area_ac * min(left_out_ft, width_ft) / width_ft


def left_along_ft(width_ft: float, left_fraction: float) -> float:
    """Width of a place that is left to spray where as much is left out all along it, in feet.

    Formula: width_ft * left_fraction
    Valid for: what is left out along the whole length, as wide everywhere
    Source: the same length, less wide (source key arithmetic)

    >>> left_along_ft(30, 0.5)
    15.0
    """
    return width_ft * left_fraction


def stretch_from_ft(along_ft: float) -> float:
    """Where a stretch that is left out begins, in whole feet along a place.

    Formula: whole_down(along_ft)
    Valid for: feet from one end of the place
    Source: rounded so that the stretch is never short (source key arithmetic)

    >>> stretch_from_ft(120.7)
    120.0
    """
    return whole_down(along_ft)


def stretch_to_ft(along_ft: float) -> float:
    """Where a stretch that is left out ends, in whole feet along a place.

    Formula: whole_up(along_ft)
    Valid for: feet from one end of the place
    Source: rounded so that the stretch is never short (source key arithmetic)

    >>> stretch_to_ft(180.2)
    181.0
    """
    return whole_up(along_ft)


def stretch_width_ft(across_ft: float) -> float:
    """How wide a stretch that is left out is at the most, in whole feet.

    Formula: whole_up(across_ft)
    Valid for: feet from the side it lies along
    Source: rounded so that the stretch is never short (source key arithmetic)

    >>> stretch_width_ft(15.2)
    16.0
    """
    return whole_up(across_ft)


REACH = formula(reach_ft, "Left out around it")
WIDTH_LEFT_OUT = formula(left_out_ft, "Width left out", read_as="tape")
LEFT_WIDTH = formula(left_width_ft, "Width left to spray", read_as="tape")
LEFT_BY_WIDTH = formula(left_by_width_fraction, "Part left to spray")
BOTH_LEFT = formula(both_left_fraction, "Part left to spray")
GROUND_LEFT = formula(left_ac, "Ground to spray")
LOST = formula(lost_ac, "Ground left out beside it")
LOST_BESIDE = formula(lost_beside_ac, "Ground left out beside it")
LEFT_ALONG = formula(left_along_ft, "Width left to spray", read_as="tape")
STRETCH_FROM = formula(stretch_from_ft, "Left out from")
STRETCH_TO = formula(stretch_to_ft, "Left out to")
STRETCH_WIDTH = formula(stretch_width_ft, "Left out at the widest")
