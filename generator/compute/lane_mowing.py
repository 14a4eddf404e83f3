"""A lane kept short by machine: passes side by side, the way to drive, the time it takes."""

from generator.units import FT_PER_MINUTE_PER_MPH
from generator.working import formula, whole_up


def mowing_passes_count(lane_width_ft: float, machine_width_ft: float) -> float:
    """Passes of a machine that cover the width of a lane.

    Formula: whole_up(lane_width_ft / machine_width_ft)
    Valid for: machine_width_ft above 0
    Source: whole passes that cover a width (source key arithmetic)

    >>> mowing_passes_count(9, 5)
    2.0
    """
    return whole_up(lane_width_ft / machine_width_ft)


def mowing_ft(length_ft: float, mowing_passes_count: float) -> float:
    """Way to drive over all passes, in feet, without the way there and back.

    Formula: length_ft * mowing_passes_count
    Valid for: passes as long as the lane
    Source: a length as many times as it is driven (source key arithmetic)

    >>> mowing_ft(880, 2)
    1760
    """
    return length_ft * mowing_passes_count


def mowing_minutes(mowing_ft: float, speed_mph: float, efficiency_fraction: float) -> float:
    """Minutes on the lane, turns and stops counted in.

    Formula: mowing_ft / (speed_mph * 88 * efficiency_fraction)
    Valid for: speed_mph above 0; efficiency_fraction in (0, 1]
    Source: a way over a speed, a mile an hour being 88 feet a minute (source key arithmetic)

    >>> round(mowing_minutes(1760, 3, 0.7), 1)
    9.5
    """
    return mowing_ft / (speed_mph * FT_PER_MINUTE_PER_MPH * efficiency_fraction)


MOWING_PASSES = formula(mowing_passes_count, "Passes side by side")
MOWING_WAY = formula(mowing_ft, "To drive in all")
MOWING_MINUTES = formula(mowing_minutes, "Minutes on the walk")
