"""Ground of a strip, and the length that covers a part of an acre."""

from generator.units import IN_PER_FT, SQ_FT_PER_AC
from generator.working import Formula


def strip_area_ac(length_ft: float, width_ft: float) -> float:
    """Ground of a strip in acres.

    Formula: length_ft * width_ft / 43560
    Valid for: a strip of even width, measured along the ground
    Source: an acre is 43,560 square feet (source key nist_811)

    >>> round(strip_area_ac(726, 60), 6)
    1.0
    """
    return length_ft * width_ft / SQ_FT_PER_AC


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


STRIP_AREA = Formula(
    strip_area_ac, "ac", "length_ft * width_ft / 43560", "Ground to treat", "nist_811"
)
COURSE_LENGTH = Formula(
    course_length_ft,
    "ft",
    "part_of_acre_fraction * 43560 * 12 / width_in",
    "Length of the course",
    "nist_811",
)
