"""What an entry of the log says of a sit that is over: hours, wind as measured, deer."""

from generator.dataclass import dataclass
from generator.inventory.fields import Limits, Record, direction, measure, reference, text
from generator.inventory.log_work import AROUND, CALM_OR_MORE, TIME_WORDS
from generator.working import Given

_NONE_OR_MORE = Limits(at_least=0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sat(Record):
    """A sit that is over: what the wind was by a reading there, and what the deer did."""

    stand: str = reference("place", "stand somebody sat at", "stand", required=True)
    walk_in: str | None = reference("place", "walk they went in by", "route")
    walk_out: str | None = reference("place", "walk they came out by", "route")
    began_at: str | None = text("place", f"on the stand, {TIME_WORDS}")
    left_at: str | None = text("place", f"off the stand, {TIME_WORDS}")
    wind_from_deg: Given | None = measure(
        "place", "where the wind came from: 0 north, 90 east", "deg", AROUND
    )
    wind_mph: Given | None = measure("place", "wind", "mph", CALM_OR_MORE)
    deer_count: Given | None = measure("place", "deer seen, 0 for none", "count", _NONE_OR_MORE)
    winded_count: Given | None = measure(
        "place", "deer that winded somebody there, 0 for none", "count", _NONE_OR_MORE
    )
    came_from: tuple[Given, ...] = direction("place", "where deer came from", many=True)
