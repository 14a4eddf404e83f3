"""Ground that passes lay more than once, or beside the place, and widths that lay none so."""

from generator.units import IN_PER_FT
from generator.working import formula, whole_down, whole_up

TENTHS = 10  # a tape is read to a tenth of a foot


def laid_times_count(lanes_count: float, pass_width_ft: float, passes_apart_ft: float) -> float:
    """Passes that lie over the ground which most of them lie over.

    Formula: min(lanes_count, whole_up(pass_width_ft / passes_apart_ft))
    Valid for: passes evenly apart, passes_apart_ft above 0; a last pass that is narrower begins
        where a whole one would
    Source: passes that begin within the width of one (source key arithmetic)

    >>> laid_times_count(6, 100, 40)
    3.0
    """
    return min(lanes_count, whole_up(pass_width_ft / passes_apart_ft))


def lap_fraction(lap_in: float, pass_width_ft: float) -> float:
    """What is laid twice between two passes, as a share of the width of one.

    Formula: lap_in / 12 / pass_width_ft
    Valid for: pass_width_ft above 0
    Source: a part over the whole (source key arithmetic)

    >>> lap_fraction(6, 10)
    0.05
    """
    return lap_in / IN_PER_FT / pass_width_ft


def beside_in(laid_width_ft: float, width_ft: float) -> float:
    """What a single pass along the middle sprays beyond each edge, in inches.

    Formula: (laid_width_ft - width_ft) / 2 * 12
    Valid for: one pass, at least as wide as the place
    Source: half of what is too wide, to each side (source key arithmetic)

    >>> beside_in(10, 8)
    12.0
    """
    return (laid_width_ft - width_ft) / 2 * IN_PER_FT


def beside_fraction(beside_in: float, pass_width_ft: float) -> float:
    """What falls beside the place on both sides, as a share of the pass.

    Formula: 2 * beside_in / 12 / pass_width_ft
    Valid for: one pass
    Source: a part over the whole (source key arithmetic)

    >>> beside_fraction(12, 10)
    0.2
    """
    return 2 * beside_in / IN_PER_FT / pass_width_ft


def fewer_parts_count(parts_count: float) -> float:
    """Parts that a narrower place would need: one less.

    Formula: parts_count - 1
    Valid for: parts_count of at least 2
    Source: subtraction (source key arithmetic)

    >>> fewer_parts_count(15)
    14
    """
    return parts_count - 1


def fitting_width_ft(parts_count: float, part_ft: float) -> float:
    """Width that so many parts just cover side by side, in feet, down to a tenth that is taped.

    Formula: whole_down(parts_count * part_ft * 10) / 10
    Valid for: part_ft above 0
    Source: rounding down, so that no part more is needed (source key arithmetic)

    >>> fitting_width_ft(10, 1.669)
    16.6
    """
    return whole_down(parts_count * part_ft * TENTHS) / TENTHS


def lapped_width_ft(
    parts_count: float, part_ft: float, full_width_ft: float, least_lap_in: float
) -> float:
    """Width that so many parts cover when their passes lap by what was typed, in feet.

    Formula: whole_down((parts_count * part_ft
        - (whole_up(parts_count * part_ft / full_width_ft) - 1) * least_lap_in / 12) * 10) / 10
    Valid for: passes of full_width_ft at most; down to a tenth of a foot
    Source: parts side by side less the laps between passes (source key arithmetic)

    >>> lapped_width_ft(12, 2.5, 10, 6)
    29.0
    """
    side_by_side_ft = parts_count * part_ft
    laps = whole_up(side_by_side_ft / full_width_ft) - 1
    return whole_down((side_by_side_ft - laps * least_lap_in / IN_PER_FT) * TENTHS) / TENTHS


def fitting_swath_ft(width_ft: float, lanes_count: float) -> float:
    """Width of a pattern of which so many passes cover the place, in feet, up to a tenth.

    Formula: whole_up(width_ft / lanes_count * 10) / 10
    Valid for: lanes_count of at least 1
    Source: equal parts, rounded up so that they cover it (source key arithmetic)

    >>> fitting_swath_ft(22, 3)
    7.4
    """
    return whole_up(width_ft / lanes_count * TENTHS) / TENTHS


LAID_TIMES = formula(laid_times_count, "Passes over the same ground, at most")


LAP_SHARE = formula(lap_fraction, "Lap, of the width of a pass")


BESIDE = formula(beside_in, "Falls beside the place on each side", read_as="tape")


BESIDE_SHARE = formula(beside_fraction, "Falls beside the place, of the width of the pass")


FEWER_PARTS = formula(fewer_parts_count, "One less open")


FITTING_WIDTH = formula(fitting_width_ft, "A width that fits", read_as="both")


LAPPED_WIDTH = formula(lapped_width_ft, "A width that fits", read_as="both")


FITTING_SWATH = formula(fitting_swath_ft, "A pattern that fits", read_as="both")
