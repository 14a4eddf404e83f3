"""Passes of a sprayer over a width: how many, how much of it open, where, what is laid twice.

A part is what shuts on its own: one nozzle of a boom, one side of a pattern, or the whole of it.
"""

from generator.units import IN_PER_FT
from generator.working import formula, whole_up


def lapped_lanes_count(width_ft: float, pass_width_ft: float, least_lap_in: float) -> float:
    """Lanes side by side that cover the width and lap by so much at least.

    Formula: max(1, whole_up((width_ft - least_lap_in / 12) / (pass_width_ft - least_lap_in / 12)))
    Valid for: least_lap_in less than the pass is wide
    Source: every lane but the first adds its width less the lap (source key arithmetic)

    >>> lapped_lanes_count(60, 10, 6)
    7.0
    """
    lap_ft = least_lap_in / IN_PER_FT
    # a place no wider than the lap would come to no lane at all
    return max(1, whole_up((width_ft - lap_ft) / (pass_width_ft - lap_ft)))


def one_more_count(lanes_count: float) -> float:
    """Lanes side by side with one more: each laps less, of fewer parts that are open.

    Formula: lanes_count + 1
    Valid for: lanes_count of at least 1
    Source: addition (source key arithmetic)

    >>> one_more_count(2)
    3
    """
    return lanes_count + 1


def parts_count(width_ft: float, part_ft: float) -> float:
    """Parts that cover the width, over all passes.

    Formula: whole_up(width_ft / part_ft)
    Valid for: part_ft above 0
    Source: parts that cover a width (source key arithmetic)

    >>> parts_count(24, 2.5)
    10.0
    """
    return whole_up(width_ft / part_ft)


def lapped_parts_count(
    width_ft: float, lanes_count: float, least_lap_in: float, part_ft: float
) -> float:
    """Parts that cover the width and the laps between the lanes, over all passes.

    Formula: whole_up((width_ft + (lanes_count - 1) * least_lap_in / 12) / part_ft)
    Valid for: lanes_count of at least 1
    Source: parts that cover a width (source key arithmetic)

    >>> lapped_parts_count(24, 3, 6, 2.5)
    10.0
    """
    return whole_up((width_ft + (lanes_count - 1) * least_lap_in / IN_PER_FT) / part_ft)


def open_count(parts_count: float, lanes_count: float) -> float:
    """Parts to have open on a pass, so that all passes but the last are alike.

    Formula: whole_up(parts_count / lanes_count)
    Valid for: lanes_count of at least 1
    Source: whole parts shared out over passes (source key arithmetic)

    >>> open_count(15, 3)
    5.0
    """
    return whole_up(parts_count / lanes_count)


def open_last_count(parts_count: float, lanes_count: float, open_count: float) -> float:
    """Parts to have open on the last pass.

    Formula: parts_count - (lanes_count - 1) * open_count
    Valid for: no fewer lanes than the parts need
    Source: what the other passes leave (source key arithmetic)

    >>> open_last_count(16, 3, 6)
    4
    """
    return parts_count - (lanes_count - 1) * open_count


def shut_count(nozzles_count: float, open_count: float) -> float:
    """Parts to shut on a pass.

    Formula: nozzles_count - open_count
    Valid for: no more open than there are
    Source: subtraction (source key arithmetic)

    >>> shut_count(6, 5)
    1
    """
    return nozzles_count - open_count


def nozzle_ft(nozzle_spacing_in: float) -> float:
    """Width that one nozzle of a boom adds to a pass, in feet.

    Formula: nozzle_spacing_in / 12
    Valid for: nozzles evenly apart
    Source: half a space to each side of a nozzle (source key arithmetic)

    >>> nozzle_ft(30)
    2.5
    """
    return nozzle_spacing_in / IN_PER_FT


def side_ft(swath_ft: float) -> float:
    """Width that one side of a pattern sprays, in feet.

    Formula: swath_ft / 2
    Valid for: two sides that are alike
    Source: equal parts (source key arithmetic)

    >>> side_ft(30)
    15.0
    """
    return swath_ft / 2


def pass_width_ft(open_count: float, part_ft: float) -> float:
    """Width of a pass with so many parts open, in feet.

    Formula: open_count * part_ft
    Valid for: parts side by side; the outer two nozzles spray half a space beyond
    Source: what one part sprays, as many times as are open (source key arithmetic)

    >>> pass_width_ft(5, 2.5)
    12.5
    """
    return open_count * part_ft


def whole_pass_ft(swath_ft: float) -> float:
    """Width of a pass of which no part is shut, in feet.

    Formula: swath_ft
    Valid for: a pattern without parts that shut on their own
    Source: the pattern as it was measured (source key arithmetic)

    >>> whole_pass_ft(18.5)
    18.5
    """
    return swath_ft


def laid_width_ft(parts_count: float, part_ft: float) -> float:
    """Width of all passes together, in feet.

    Formula: parts_count * part_ft
    Valid for: parts open over all passes
    Source: what one part sprays, as many times as are open (source key arithmetic)

    >>> laid_width_ft(10, 2.5)
    25.0
    """
    return parts_count * part_ft


def lap_in(laid_width_ft: float, width_ft: float, lanes_count: float) -> float:
    """What each pass lays again of the one before, in inches.

    Formula: (laid_width_ft - width_ft) * 12 / (lanes_count - 1)
    Valid for: lanes_count of at least 2; the outer passes end at the edges, the laps are alike
    Source: what is laid beyond the width, shared out between the lanes (source key arithmetic)

    >>> lap_in(25, 24, 3)
    6.0
    """
    return (laid_width_ft - width_ft) * IN_PER_FT / (lanes_count - 1)


def passes_apart_ft(pass_width_ft: float, lap_in: float) -> float:
    """Distance from the middle of a pass to the middle of the next, in feet.

    Formula: pass_width_ft - lap_in / 12
    Valid for: passes of one width
    Source: the width of a pass less what it laps (source key arithmetic)

    >>> passes_apart_ft(10, 6)
    9.5
    """
    return pass_width_ft - lap_in / IN_PER_FT


def middle_ft(width_ft: float) -> float:
    """Distance from an edge to the middle, in feet: of a place, or of a pass that ends there.

    Formula: width_ft / 2
    Valid for: what is alike on both sides
    Source: half of a width (source key arithmetic)

    >>> middle_ft(6)
    3.0
    """
    return width_ft / 2


def laid_ac(area_ac: float, laid_width_ft: float, width_ft: float) -> float:
    """Ground that the passes spray, in acres, what they lay twice or beside counted each time.

    Formula: area_ac * laid_width_ft / width_ft
    Valid for: passes along the whole length of the place
    Source: the same length, as wide as the passes (source key arithmetic)

    >>> laid_ac(0.96, 25, 24)
    1.0
    """
    return area_ac * laid_width_ft / width_ft


def all_open_gal(
    area_ac: float,
    width_ft: float,
    lanes_count: float,
    full_width_ft: float,
    carrier_gal_per_ac: float,
) -> float:
    """Spray that as many passes would take with everything open, in gallons.

    Formula: area_ac * lanes_count * full_width_ft / width_ft * carrier_gal_per_ac
    Valid for: passes along the whole length of the place
    Source: the same length, as wide as the passes (source key arithmetic)

    >>> all_open_gal(0.5, 20, 3, 10, 16)
    12.0
    """
    return area_ac * lanes_count * full_width_ft / width_ft * carrier_gal_per_ac


LAPPED_LANES = formula(lapped_lanes_count, "Passes side by side")
ONE_MORE = formula(one_more_count, "Passes side by side, one more so that they lap less")
PARTS = formula(parts_count, "Open over all passes")
LAPPED_PARTS = formula(lapped_parts_count, "Open over all passes")
OPEN = formula(open_count, "Open on a pass")
OPEN_LAST = formula(open_last_count, "Open on the last pass")
SHUT = formula(shut_count, "Shut on every pass")
SHUT_LAST = formula(shut_count, "Shut on the last pass")
NOZZLE_WIDTH = formula(nozzle_ft, "Width one nozzle adds", read_as="tape")
SIDE_WIDTH = formula(side_ft, "Width of one side", read_as="tape")
PASS_WIDTH = formula(pass_width_ft, "Width of one pass", read_as="tape")
WHOLE_PASS = formula(whole_pass_ft, "Width of one pass", read_as="tape")
LAID_WIDTH = formula(laid_width_ft, "Width of all passes together", read_as="tape")
LAP = formula(lap_in, "Lap between two passes", read_as="tape")
APART = formula(passes_apart_ft, "From pass to pass", read_as="tape")
MIDDLE = formula(middle_ft, "The pass from either edge", read_as="tape")
LAST_WIDTH = formula(pass_width_ft, "Width of the last pass", read_as="tape")
LAST_PASS = formula(middle_ft, "The last pass from the far edge", read_as="tape")
FIRST_PASS = formula(middle_ft, "The first pass from the edge", read_as="tape")
LAID = formula(laid_ac, "Ground the passes spray")
ALL_OPEN = formula(all_open_gal, "The same passes with everything open")
