"""Where a wind takes scent: how far a thing lies off the downwind line, and whether it is reached.

All bearings are degrees from true north, clockwise, from 0 to 360; a wind is named by where it
comes from.
"""

from generator.working import formula, whole_down

CIRCLE_DEG = 360
HALF_CIRCLE_DEG = 180


def off_downwind_deg(wind_from_deg: float, toward_deg: float) -> float:
    """How far the bearing toward a thing lies off the downwind line, to either side, in degrees.

    Formula: max(max(wind_from_deg - toward_deg, toward_deg - wind_from_deg) - 180,
        180 - max(wind_from_deg - toward_deg, toward_deg - wind_from_deg))
    Valid for: both bearings from 0 to 360; 0 is straight downwind, 180 straight into the wind
    Source: the downwind line is half a turn from where the wind comes (source key arithmetic)

    >>> off_downwind_deg(315, 160), off_downwind_deg(315, 60), off_downwind_deg(315, 30)
    (25, 75, 105)
    """
    between_deg = max(wind_from_deg - toward_deg, toward_deg - wind_from_deg)
    return max(between_deg - HALF_CIRCLE_DEG, HALF_CIRCLE_DEG - between_deg)


def half_angle_deg(half_sector_deg: float, plume_deg: float, wander_deg: float) -> float:
    """Half of the angle in which scent may go, of a wind known in degrees with its speed and hour.

    Formula: whole_down((half_sector_deg + plume_deg + wander_deg) / half_sector_deg + 1 / 2)
        * half_sector_deg
    Valid for: wind from 4 mph; the sum is told to the nearest half of a sector
    Source: width of the sector told, of the plume and of its wandering (source key common_practice)

    >>> half_angle_deg(11.25, 10, 10)
    33.75
    """
    parts_count = (half_sector_deg + plume_deg + wander_deg) / half_sector_deg
    return whole_down(parts_count + 1 / 2) * half_sector_deg


def blows_to(
    off_deg: float, within_deg: float, doubt_deg: float, distance_yd: float | None, reach_yd: float
) -> bool | None:
    """Whether a wind blows to a thing so far off the downwind line; None where nobody can say.

    Formula: off_deg <= within_deg, not known up to doubt_deg more, and none beyond
    Valid for: distance_yd None where it is not known; beyond the reach nobody can say
    Source: widths of trade practice (source key common_practice)

    >>> [blows_to(off_deg, 67.5, 22.5, 180, 300) for off_deg in (25, 75, 105)]
    [True, None, False]
    """
    if off_deg > within_deg + doubt_deg:
        return False
    if distance_yd is None or distance_yd > reach_yd or off_deg > within_deg:
        return None
    return True


def sector_count(bearing_deg: float, sectors_count: int) -> int:
    """Which of equal sectors a bearing lies in, counted from north, clockwise, north being 0.

    Formula: whole part of bearing_deg * sectors_count / 360 + 1 / 2, the last being the first
    Valid for: any bearing; a bearing on the border of two sectors belongs to the later one
    Source: the first sector lies to both sides of north (source key ncdc_sectors)

    >>> [sector_count(bearing_deg, 16) for bearing_deg in (11.24, 11.25, 348.75)]
    [0, 1, 0]
    """
    return int(bearing_deg % CIRCLE_DEG * sectors_count / CIRCLE_DEG + 1 / 2) % sectors_count


OFF_DOWNWIND = formula(off_downwind_deg, "Off the downwind line")
HALF_ANGLE = formula(half_angle_deg, "Half-angle of the scent")
