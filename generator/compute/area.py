"""Ground of a strip from its taped length and width."""

from generator.units import SQ_FT_PER_AC
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


STRIP_AREA = Formula(
    strip_area_ac, "ac", "length_ft * width_ft / 43560", "Ground to treat", "nist_811"
)
