"""Wind and dry hours that every label in a tank allows: the tightest that is typed counts."""

from generator.dataclass import dataclass
from generator.inventory.label import WindRange
from generator.plan.model.work import Mix
from generator.working import Given


@dataclass(frozen=True, slots=True)
class Wind:
    """The least and most wind by the labels in a tank; `silent` are products without a range."""

    low: Given
    high: Given
    silent: tuple[str, ...]


def tightest_wind(mix: Mix) -> Wind | None:
    """Return the wind in which every label that prints a range lets one spray, or None.

    Where two ranges do not meet, the least is above the most, and no wind is within both.
    """
    ranges = [part.use.wind_mph for part in mix.parts if isinstance(part.use.wind_mph, WindRange)]
    if not ranges:
        return None
    return Wind(
        max((wind.low_mph for wind in ranges), key=lambda limit: limit.value),
        min((wind.high_mph for wind in ranges), key=lambda limit: limit.value),
        tuple(
            part.product.name for part in mix.parts if not isinstance(part.use.wind_mph, WindRange)
        ),
    )


def longest_dry(mix: Mix) -> Given | None:
    """Return the longest time without rain that a label in the tank asks for, or None."""
    typed = [
        part.card.rainfast_hours
        for part in mix.parts
        if isinstance(part.card.rainfast_hours, Given)
    ]
    return max(typed, key=lambda hours: hours.value, default=None)
