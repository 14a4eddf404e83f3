"""Rows of trees and shrubs: plants in a row, in all, and how many may have to be replaced."""

from generator.working import formula, whole_down, whole_up


def plants_in_row_count(row_ft: float, spacing_ft: float) -> float:
    """Plants in one row with a plant at both ends, a count.

    Formula: whole_down(row_ft / spacing_ft) + 1
    Valid for: row_ft at least 0, spacing_ft above 0
    Source: gaps that fit, and one plant more than gaps (source key arithmetic)

    >>> plants_in_row_count(100, 8)
    13.0
    """
    return whole_down(row_ft / spacing_ft) + 1


def plants_count(plants_in_row_count: float, rows_count: float) -> float:
    """Plants in all rows, a count.

    Formula: plants_in_row_count * rows_count
    Valid for: rows of one length
    Source: as many in every row (source key arithmetic)

    >>> plants_count(13, 2)
    26
    """
    return plants_in_row_count * rows_count


def replaced_count(plants_count: float, replace_fraction: float) -> float:
    """Plants that may have to be replaced, a whole count.

    Formula: whole_up(plants_count * replace_fraction)
    Valid for: a fraction from 0 to 1
    Source: part of a count, no part of a plant (source key arithmetic)

    >>> replaced_count(26, 0.15)
    4.0
    """
    return whole_up(plants_count * replace_fraction)


def rows_width_ft(rows_count: float, rows_apart_ft: float) -> float:
    """Ground from the first row to the last, in feet.

    Formula: (rows_count - 1) * rows_apart_ft
    Valid for: one row or more, evenly apart
    Source: gaps between rows (source key arithmetic)

    >>> rows_width_ft(3, 16)
    32
    """
    return (rows_count - 1) * rows_apart_ft


IN_ROW = formula(plants_in_row_count, "Plants in one row")
PLANTS = formula(plants_count, "Plants")
REPLACED = formula(replaced_count, "Plants to replace")
ROWS_WIDTH = formula(rows_width_ft, "From first row to last")
