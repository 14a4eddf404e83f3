"""Counts of plants: from cells of a frame, or plants in a row, to how thick a planting stands."""

from generator.units import IN_PER_FT, SQ_FT_PER_AC, SQ_M_PER_SQ_FT
from generator.working import formula, whole_up

# One laying of the frame, five cells by five (source key vogel_masters_grid).
CELLS_IN_FRAME = 25
# A cell of 15 by 15 cm (source key glbrc_stand_count).
CELL_SQ_M = 0.0225
# Plants on a square meter for each percent of cells with a plant (source key vogel_masters_grid).
PLANTS_PER_SQ_M_PER_PCT = 0.4
PCT = 100
# A frame laid at so many places on an acre, at the least (source key osu_stand_check).
PLACEMENTS_PER_AC = 4


def cells_looked_at_count(placements_count: float) -> float:
    """Cells looked at when the whole frame is read at every placement.

    Formula: placements_count * 25
    Valid for: the frame of five cells by five
    Source: the frequency grid, Vogel and Masters 2001 (source key vogel_masters_grid)

    >>> cells_looked_at_count(4)
    100
    """
    return placements_count * CELLS_IN_FRAME


def frequency_fraction(cells_with_plant_count: float, cells_count: float) -> float:
    """Share of the cells looked at that hold a plant of what was sown, one or many.

    Formula: cells_with_plant_count / cells_count
    Valid for: cells_with_plant_count of at most cells_count, cells_count above 0
    Source: evaluating establishment, Oklahoma State University (source key osu_stand_check)

    >>> frequency_fraction(70, 100)
    0.7
    """
    return cells_with_plant_count / cells_count


def careful_plants_per_sq_m(frequency_fraction: float) -> float:
    """Plants on a square meter by the careful conversion: a floor, not an estimate.

    Formula: 0.4 * frequency_fraction * 100
    Valid for: cells of 15 by 15 cm
    Source: the frequency grid, Vogel and Masters 2001 (source key vogel_masters_grid)

    >>> round(careful_plants_per_sq_m(0.7), 1)
    28.0
    """
    return PLANTS_PER_SQ_M_PER_PCT * frequency_fraction * PCT


def one_in_a_cell_plants_per_sq_m(cells_with_plant_count: float, cells_count: float) -> float:
    """Plants on a square meter if every cell with a plant held only one.

    Formula: cells_with_plant_count / (cells_count * 0.0225)
    Valid for: cells of 15 by 15 cm, cells_count above 0
    Source: stand count protocol, Great Lakes Bioenergy Research Center
        (source key glbrc_stand_count)

    >>> round(one_in_a_cell_plants_per_sq_m(70, 100), 1)
    31.1
    """
    return cells_with_plant_count / (cells_count * CELL_SQ_M)


def lower_plants_per_sq_m(
    careful_plants_per_sq_m: float, one_in_a_cell_plants_per_sq_m: float
) -> float:
    """Plants on a square meter that count: the lower of the two conversions.

    Formula: min(careful_plants_per_sq_m, one_in_a_cell_plants_per_sq_m)
    Valid for: two conversions of one count
    Source: the lower of two (source key arithmetic)

    >>> lower_plants_per_sq_m(28, 31.1)
    28
    """
    return min(careful_plants_per_sq_m, one_in_a_cell_plants_per_sq_m)


def plants_per_sq_ft(plants_per_sq_m: float) -> float:
    """Plants on a square foot.

    Formula: plants_per_sq_m * 0.09290304
    Valid for: any count
    Source: the foot of 0.3048 m, squared (source key nist_811)

    >>> round(plants_per_sq_ft(20), 2)
    1.86
    """
    return plants_per_sq_m * SQ_M_PER_SQ_FT


def row_plants_per_sq_m(plants_per_row_ft: float, row_spacing_in: float) -> float:
    """Plants on a square meter from plants counted in a foot of row.

    Formula: plants_per_row_ft * 12 / row_spacing_in / 0.09290304
    Valid for: rows evenly apart, row_spacing_in above 0
    Source: a foot of row stands for its spacing in ground (source key nist_811)

    >>> round(row_plants_per_sq_m(1, 12), 2)
    10.76
    """
    return plants_per_row_ft * IN_PER_FT / row_spacing_in / SQ_M_PER_SQ_FT


def row_plants_per_ac(plants_per_row_ft: float, row_spacing_in: float) -> float:
    """Plants on an acre from plants counted in a foot of row.

    Formula: plants_per_row_ft * 12 / row_spacing_in * 43560
    Valid for: rows evenly apart, row_spacing_in above 0
    Source: planting considerations and stand assessments, Pennsylvania State University
        (source key psu_stand_rows)

    >>> round(row_plants_per_ac(1.7, 30))
    29621
    """
    return plants_per_row_ft * IN_PER_FT / row_spacing_in * SQ_FT_PER_AC


def placements_wanted_count(area_ac: float) -> float:
    """Places at which the frame is to be laid on a piece of ground, at the least.

    Formula: whole_up(area_ac * 4)
    Valid for: ground of one sowing, or a stretch of it
    Source: evaluating establishment, Oklahoma State University (source key osu_stand_check)

    >>> placements_wanted_count(0.6)
    3.0
    """
    return whole_up(area_ac * PLACEMENTS_PER_AC)


def stretch_length_ft(to_ft: float, from_ft: float) -> float:
    """Length of a stretch between two stations, in feet.

    Formula: to_ft - from_ft
    Valid for: stations measured from the same end, to_ft above from_ft
    Source: difference of two stations (source key arithmetic)

    >>> stretch_length_ft(620, 300)
    320
    """
    return to_ft - from_ft


CELLS_LOOKED_AT = formula(cells_looked_at_count, "Cells looked at")
FREQUENCY = formula(frequency_fraction, "Cells with a plant")
CAREFUL = formula(careful_plants_per_sq_m, "By the careful conversion")
ONE_IN_A_CELL = formula(one_in_a_cell_plants_per_sq_m, "If each such cell held one plant")
LOWER = formula(lower_plants_per_sq_m, "Plants that count")
PER_SQ_FT = formula(plants_per_sq_ft, "Plants on a square foot", unit="plants_per_sq_ft")
ROW_PER_SQ_M = formula(row_plants_per_sq_m, "Plants that count")
ROW_PER_AC = formula(row_plants_per_ac, "Plants on an acre")
PLACEMENTS_WANTED = formula(placements_wanted_count, "Places to lay the frame at, at the least")
STRETCH_LENGTH = formula(stretch_length_ft, "Length of the stretch")
