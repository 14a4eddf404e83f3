"""Ground of a place, how far an outline may be off, and lengths that cover part of an acre."""

import math

from generator.units import IN_PER_FT, SQ_FT_PER_AC
from generator.working import formula, whole_down


def strip_area_ac(length_ft: float, width_ft: float) -> float:
    """Ground of a strip in acres.

    Formula: length_ft * width_ft / 43560
    Valid for: a strip of even width, measured along the ground
    Source: an acre is 43,560 square feet (source key nist_811)

    >>> round(strip_area_ac(726, 60), 6)
    1.0
    """
    return length_ft * width_ft / SQ_FT_PER_AC


def strip_length_ft(area_ac: float, width_ft: float) -> float:
    """Length of a strip from its ground and its width, to the nearest foot.

    Formula: whole_down(area_ac * 43560 / width_ft + 1 / 2)
    Valid for: width_ft above 0, ground that counts by its width
    Source: ground over width (source key arithmetic)

    >>> strip_length_ft(1, 60)
    726.0
    """
    return whole_down(area_ac * SQ_FT_PER_AC / width_ft + 1 / 2)


def course_length_ft(part_of_acre_fraction: float, width_in: float) -> float:
    """Length that covers a part of an acre at a width, in feet.

    The width is that between two rows or two nozzles, or that of a swath.

    Formula: part_of_acre_fraction * 43560 * 12 / width_in
    Valid for: width_in above 0, measured along the ground
    Source: an acre is 43,560 square feet (source key nist_811)

    >>> round(course_length_ft(1 / 128, 20), 1)
    204.2
    """
    return part_of_acre_fraction * SQ_FT_PER_AC * IN_PER_FT / width_in


def outline_ground_ac(outline_area_ac: float) -> float:
    """Ground inside an outline in acres, as measured.

    Formula: outline_area_ac
    Valid for: an outline walked at the edge of what is treated
    Source: taken over as measured (source key arithmetic)

    >>> outline_ground_ac(0.33)
    0.33
    """
    return outline_area_ac


def stated_ground_ac(area_ac: float) -> float:
    """Ground in acres, as the owner states it.

    Formula: area_ac
    Valid for: the ground that is treated, not the gross ground
    Source: taken over as typed (source key arithmetic)

    >>> stated_ground_ac(0.33)
    0.33
    """
    return area_ac


def mean_width_ft(area_ac: float, perimeter_ft: float) -> float:
    """Mean width inside an outline in feet: its area over half the way around it.

    Formula: area_ac * 43560 / (perimeter_ft / 2)
    Valid for: long narrow outlines; of others it is the width that counts for the likely error
    Source: an acre is 43,560 square feet (source key nist_811)

    >>> round(mean_width_ft(1, 1572), 1)
    55.4
    """
    return area_ac * SQ_FT_PER_AC / (perimeter_ft / 2)


def outline_error_fraction(outline_error_ft: float, width_ft: float) -> float:
    """Likely error of the ground inside an outline, as a share of it.

    Both long sides may be off by as much, and to the same side of the truth.

    Formula: 2 * outline_error_ft / width_ft
    Valid for: width_ft above 0, the mean width of the outline or the taped width
    Source: common practice with strips walked around (source key common_practice)

    >>> round(outline_error_fraction(5, 24), 3)
    0.417
    """
    return 2 * outline_error_ft / width_ft


def line_error_fraction(off_ft: float, length_ft: float) -> float:
    """Likely error of the ground of a strip whose length is that of a line, as a share of it.

    Either end may be off by as much, and both along the line. The width is taped.

    Formula: 2 * off_ft / length_ft
    Valid for: length_ft above 0, the length of the line
    Source: the error of both ends over the length (source key arithmetic)

    >>> line_error_fraction(16, 640)
    0.05
    """
    return 2 * off_ft / length_ft


def least_ground_ac(area_ac: float, outline_error_fraction: float) -> float:
    """Least ground there may be in truth, in acres.

    Formula: area_ac * (1 - min(outline_error_fraction, 1))
    Valid for: an error of at least 0; one of more than the whole leaves no ground
    Source: the share taken away (source key arithmetic)

    >>> round(least_ground_ac(0.3306, 0.4167), 2)
    0.19
    """
    return area_ac * (1 - min(outline_error_fraction, 1))


def most_ground_ac(area_ac: float, outline_error_fraction: float) -> float:
    """Most ground there may be in truth, in acres.

    Formula: area_ac * (1 + outline_error_fraction)
    Valid for: an error of at least 0
    Source: the share put on (source key arithmetic)

    >>> round(most_ground_ac(0.3306, 0.4167), 2)
    0.47
    """
    return area_ac * (1 + outline_error_fraction)


def grounds_apart_fraction(area_ac: float, other_area_ac: float) -> float:
    """How far another way to the ground is from the one that counts, as a share of the latter.

    Formula: (max(area_ac, other_area_ac) - min(area_ac, other_area_ac)) / area_ac
    Valid for: area_ac above 0, the ground that counts
    Source: difference over what counts (source key arithmetic)

    >>> round(grounds_apart_fraction(0.5, 0.6), 2)
    0.2
    """
    return (max(area_ac, other_area_ac) - min(area_ac, other_area_ac)) / area_ac


def share_of_place_fraction(treated_sq_ft: list[float], area_ac: float) -> float:
    """Parts of a place that are worked on, together as a share of its ground.

    Formula: total(treated_sq_ft) / 43560 / area_ac
    Valid for: area_ac above 0, parts that do not overlap
    Source: an acre is 43,560 square feet (source key nist_811)

    >>> share_of_place_fraction([10890, 5445], 1)
    0.375
    """
    return math.fsum(treated_sq_ft) / SQ_FT_PER_AC / area_ac


STRIP_AREA = formula(strip_area_ac, "Ground to treat")
STRIP_LENGTH = formula(strip_length_ft, "Length, from ground and width", read_as="tape")
COURSE_LENGTH = formula(course_length_ft, "Length of the course")
OUTLINE_GROUND = formula(outline_ground_ac, "Ground to treat")
STATED_GROUND = formula(stated_ground_ac, "Ground to treat")
MEAN_WIDTH = formula(mean_width_ft, "Mean width of the outline")
OUTLINE_ERROR = formula(outline_error_fraction, "Likely error of the outline")
LINE_ERROR = formula(line_error_fraction, "Likely error of the line")
LEAST_GROUND = formula(least_ground_ac, "Least ground there may be")
MOST_GROUND = formula(most_ground_ac, "Most ground there may be")
GROUNDS_APART = formula(grounds_apart_fraction, "Apart from the ground that counts")
SHARE_OF_PLACE = formula(share_of_place_fraction, "Part of the place")
