"""What a record of hourly wind says: how often it blew from where, and which sits were whole.

A report in tens of degrees is anywhere within five of it on either side. Counted as it stands, some
sectors would hold three tens and others two; spread, each holds what blew there.
"""

import math
from collections import Counter
from collections.abc import Sequence

_CIRCLE_DEG = 360


def winds_fraction(
    reports_deg: Sequence[float], step_deg: float, sectors_count: int
) -> list[float]:
    """Share of all reports in each sector, north first; each is spread over what it is rounded to.

    Formula: mean of the overlap of report - step_deg / 2 to report + step_deg / 2 with each sector,
        divided by step_deg
    Valid for: at least one report; step_deg above 0; calms and winds that turn about counted apart
    Source: each report is uniform over what it is rounded to (source key arithmetic)

    >>> winds_fraction([90, 270], 10, 4)
    [0.0, 0.5, 0.0, 0.5]
    """
    by_sector = zip(
        *(
            [times * fraction for fraction in _sector_fractions(one, step_deg, sectors_count)]
            for one, times in Counter(reports_deg).items()
        ),
        strict=True,
    )
    return [math.fsum(fractions) / len(reports_deg) for fractions in by_sector]


def whole_sit_fraction(by_hour_fraction: Sequence[float | None]) -> float | None:
    """Chance that every hour of a sit was right, from the chance of each of its hours.

    Formula: by_hour_fraction[0] * by_hour_fraction[1] and so on
    Valid for: hours rounded apart from one another; one hour that nobody knows leaves the sit open
    Source: all of several (source key arithmetic)

    >>> whole_sit_fraction([1, 0.5, 0.5, 1]), whole_sit_fraction([1, None])
    (0.25, None)
    """
    product = 1.0
    for one in by_hour_fraction:
        if one is None:
            return None
        product *= one
    return product if by_hour_fraction else None


def _sector_fractions(from_deg: float, step_deg: float, sectors_count: int) -> list[float]:
    """Return the share of one report in each sector, north first."""
    width_deg = _CIRCLE_DEG / sectors_count
    fractions = [0.0] * sectors_count
    # sectors lie half to each side of their middle; positions are counted from where north begins
    begins_deg = (from_deg - step_deg / 2 + width_deg / 2) % _CIRCLE_DEG
    ends_deg = begins_deg + step_deg
    first = math.floor(begins_deg / width_deg)
    for sector in range(first, math.ceil(ends_deg / width_deg)):
        low_deg = max(begins_deg, sector * width_deg)
        high_deg = min(ends_deg, (sector + 1) * width_deg)
        fractions[sector % sectors_count] += (high_deg - low_deg) / step_deg
    return fractions
