"""The times of the sun: sunrise, sunset and civil twilight at a place on a day.

Too long for a line of formula: `methods.yaml` holds what a page says of them. All times are in
minutes after 0:00 UTC of the calendar day and belong to the sun's own day at that longitude, so
they may be below 0 or past the end of the day; a clock's zone is no business of these functions.
"""

import math
from collections.abc import Sequence
from functools import lru_cache

# Right to this many seconds between 65 degrees south and north, and to a third of it between 50
# degrees south and north: compared with the JPL ephemeris DE421, see tests/published/sun.yaml.
MAY_BE_OFF_SECONDS = 15

_REMEMBERED = 1 << 12  # a season's sunrises and sunsets, for each set of hunting dates

# Zenith distance of the middle of the sun when its upper edge stands on the horizon (34 minutes of
# arc of refraction, 16 of radius), and at civil twilight: Almanac for Computers.
HORIZON_DEG = 90 + 50 / 60
CIVIL_TWILIGHT_DEG = 96

# Coefficients of the NOAA solar calculator, after Astronomical Algorithms: of the mean longitude,
# the mean anomaly, the equation of the center in one, two and three times the anomaly, the
# ascending node of the moon, the obliquity of the ecliptic; by powers of centuries from noon of
# Jan 1, 2000.
MEAN_LONGITUDE_DEG = (280.46646, 36000.76983, 0.0003032)
MEAN_ANOMALY_DEG = (357.52911, 35999.05029, -0.0001537)
CENTRE_DEG = ((1.914602, -0.004817, -0.000014), (0.019993, -0.000101), (0.000289,))
NODE_DEG = (125.04, -1934.136)
OBLIQUITY_DEG = (23 + 26 / 60 + 21.448 / 3600, -46.815 / 3600, -0.00059 / 3600, 0.001813 / 3600)
ABERRATION_DEG = 0.00569
NUTATION_DEG = 0.00478
NUTATION_OF_OBLIQUITY_DEG = 0.00256

DAYS_PER_CENTURY = 36525
MINUTES_PER_DAY = 1440
MINUTES_PER_DEG = 4
NOON_MINUTES = 720
FULL_TURN_DEG = 360
HALF_TURN_DEG = 180
# The time found says where the sun stands, and that gives a better time.
ROUNDS = 8


def sunrise_minutes(
    latitude_deg: float, longitude_deg: float, after_2000_days: float
) -> float | None:
    """Sunrise, in minutes after 0:00 UTC of the day; None where the sun does not rise or set.

    Formula: 720 - 4 * longitude_deg - equation_of_time - 4 * hour_angle(90 degrees 50 minutes),
        solved again at the time found
    Valid for: years 1900 to 2100, level horizon; after_2000_days from Jan 1, 2000 to the day
    Source: solar calculation details, National Oceanic and Atmospheric Administration
        (source key noaa_solar)

    >>> round(sunrise_minutes(39.78, -89.65, 9450), 1)
    763.7
    """
    return _crossing(latitude_deg, longitude_deg, after_2000_days, HORIZON_DEG, -1)


def sunset_minutes(
    latitude_deg: float, longitude_deg: float, after_2000_days: float
) -> float | None:
    """Sunset, in minutes after 0:00 UTC of the day; None where the sun does not rise or set.

    Formula: 720 - 4 * longitude_deg - equation_of_time + 4 * hour_angle(90 degrees 50 minutes),
        solved again at the time found
    Valid for: years 1900 to 2100, level horizon; after_2000_days from Jan 1, 2000 to the day
    Source: solar calculation details, National Oceanic and Atmospheric Administration
        (source key noaa_solar)

    >>> round(sunset_minutes(39.78, -89.65, 9450), 1)
    1362.5
    """
    return _crossing(latitude_deg, longitude_deg, after_2000_days, HORIZON_DEG, 1)


def civil_dawn_minutes(
    latitude_deg: float, longitude_deg: float, after_2000_days: float
) -> float | None:
    """Begin of civil twilight, in minutes after 0:00 UTC of the day; None where there is none.

    Formula: 720 - 4 * longitude_deg - equation_of_time - 4 * hour_angle(96 degrees),
        solved again at the time found
    Valid for: years 1900 to 2100, level horizon; after_2000_days from Jan 1, 2000 to the day
    Source: solar calculation details, National Oceanic and Atmospheric Administration
        (source key noaa_solar)

    >>> round(civil_dawn_minutes(39.78, -89.65, 9450), 1)
    734.7
    """
    return _crossing(latitude_deg, longitude_deg, after_2000_days, CIVIL_TWILIGHT_DEG, -1)


def civil_dusk_minutes(
    latitude_deg: float, longitude_deg: float, after_2000_days: float
) -> float | None:
    """End of civil twilight, in minutes after 0:00 UTC of the day; None where there is none.

    Formula: 720 - 4 * longitude_deg - equation_of_time + 4 * hour_angle(96 degrees),
        solved again at the time found
    Valid for: years 1900 to 2100, level horizon; after_2000_days from Jan 1, 2000 to the day
    Source: solar calculation details, National Oceanic and Atmospheric Administration
        (source key noaa_solar)

    >>> round(civil_dusk_minutes(39.78, -89.65, 9450), 1)
    1391.4
    """
    return _crossing(latitude_deg, longitude_deg, after_2000_days, CIVIL_TWILIGHT_DEG, 1)


# the same sunrise is asked for again, as of hours that begin so long before it
@lru_cache(maxsize=_REMEMBERED)
def _crossing(
    latitude_deg: float, longitude_deg: float, after_2000_days: float, zenith_deg: float, side: int
) -> float | None:
    """Return when the sun stands at a zenith distance, before its noon or after it."""
    noon_minutes = NOON_MINUTES - MINUTES_PER_DEG * longitude_deg
    found_minutes = noon_minutes
    for _ in range(ROUNDS):
        since_noon_days = after_2000_days + (found_minutes - NOON_MINUTES) / MINUTES_PER_DAY
        declination_deg, ahead_deg = _sun(since_noon_days)
        turned_deg = _hour_angle_deg(latitude_deg, declination_deg, zenith_deg)
        if turned_deg is None:
            return None
        found_minutes = noon_minutes + MINUTES_PER_DEG * (side * turned_deg - ahead_deg)
    return found_minutes


def _hour_angle_deg(latitude_deg: float, declination_deg: float, zenith_deg: float) -> float | None:
    """Return how far the sun turns from noon to a zenith distance; None where it never does."""
    latitude, declination = math.radians(latitude_deg), math.radians(declination_deg)
    high = math.cos(latitude) * math.cos(declination)
    lift = math.cos(math.radians(zenith_deg)) - math.sin(latitude) * math.sin(declination)
    # equal too: a sun that only touches that height does not cross it
    if abs(lift) >= abs(high):
        return None
    return math.degrees(math.acos(lift / high))


def _sun(since_noon_days: float) -> tuple[float, float]:
    """Return the sun's declination and how far it is ahead of the mean sun, both in degrees."""
    centuries = since_noon_days / DAYS_PER_CENTURY
    mean_deg = _power_series(MEAN_LONGITUDE_DEG, centuries)
    anomaly = math.radians(_power_series(MEAN_ANOMALY_DEG, centuries))
    node = math.radians(_power_series(NODE_DEG, centuries))
    centre_deg = math.fsum(
        [
            _power_series(one, centuries) * math.sin(times * anomaly)
            for times, one in enumerate(CENTRE_DEG, 1)
        ]
    )
    nutation_deg = -NUTATION_DEG * math.sin(node)
    longitude = math.radians(mean_deg + centre_deg - ABERRATION_DEG + nutation_deg)
    tilt = math.radians(
        _power_series(OBLIQUITY_DEG, centuries) + NUTATION_OF_OBLIQUITY_DEG * math.cos(node)
    )
    ascension_deg = math.degrees(
        math.atan2(math.cos(tilt) * math.sin(longitude), math.cos(longitude))
    )
    declination_deg = math.degrees(math.asin(math.sin(tilt) * math.sin(longitude)))
    ahead_deg = mean_deg - ABERRATION_DEG - ascension_deg + nutation_deg * math.cos(tilt)
    # the mean longitude counts on from 2000, so whole turns are taken out
    return declination_deg, (ahead_deg + HALF_TURN_DEG) % FULL_TURN_DEG - HALF_TURN_DEG


def _power_series(coefficients: Sequence[float], centuries: float) -> float:
    """Return a polynomial of the centuries, its coefficients from the constant one up."""
    return math.fsum([one * centuries**power for power, one in enumerate(coefficients)])
