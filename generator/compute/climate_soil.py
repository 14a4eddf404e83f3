"""Temperature four inches down in the soil, from that of the air."""

from collections.abc import Sequence
from operator import mul

# Days the air of which counts, the last the most (source key biome_bgc_soil).
RUNNING_DAYS = 11


def soil_f(mean_f: Sequence[float]) -> list[float]:
    """Mean temperature of every day ten centimeters down, in degrees F.

    The mean of the air over eleven days, today's eleven times as heavy as that of ten days ago.

    Formula: total(weight * mean_f) / total(weight), weights 1 to 11 rising to the day itself
    Valid for: bare or grassed ground without snow; off by about 3 F either way
    Source: soil temperature of the daily model of ecosystems (source key biome_bgc_soil)

    >>> round(soil_f(range(1, 12))[-1], 3)
    7.667
    """
    warmth_f: list[float] = []
    weights = range(1, RUNNING_DAYS + 1)
    for n in range(len(mean_f)):
        running_f = mean_f[max(0, n + 1 - RUNNING_DAYS) : n + 1]
        # Before there are eleven days the ramp is shorter and begins at one too.
        ramp = weights[: len(running_f)]
        warmth_f.append(sum(map(mul, ramp, running_f)) / sum(ramp))
    return warmth_f
