"""Temperature four inches down in the soil, from that of the air."""

from collections.abc import Sequence

# Days the air of which counts, the last the most (source key biome_bgc_soil).
RUNNING_DAYS = 11


def soil_f(mean_f: Sequence[float]) -> list[float]:
    """Mean temperature of every day ten centimetres down, in degrees F.

    The mean of the air over eleven days, today's eleven times as heavy as that of ten days ago.

    Formula: total(weight * mean_f) / total(weight), weights 1 to 11 rising to the day itself
    Valid for: bare or grassed ground without snow; off by about 3 F either way
    Source: soil temperature of the daily model of ecosystems (source key biome_bgc_soil)

    >>> round(soil_f(range(1, 12))[-1], 3)
    7.667
    """
    warmth_f: list[float] = []
    for n in range(len(mean_f)):
        first = max(0, n + 1 - RUNNING_DAYS)
        # Before there are eleven days the ramp is shorter and ends at the same height.
        weighted = [(one - first + 1, mean_f[one]) for one in range(first, n + 1)]
        together = sum(weight for weight, _ in weighted)
        warmth_f.append(sum(weight * mean for weight, mean in weighted) / together)
    return warmth_f
