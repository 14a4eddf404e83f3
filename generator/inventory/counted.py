"""What an owner counts and sees in a planting: plants by frame or row, weeds, noxious ones."""

import datetime

from generator.dataclass import dataclass
from generator.inventory.fields import (
    POSITIVE,
    Limits,
    Record,
    choice,
    day,
    measure,
    reference,
    text,
)
from generator.working import Given

CELLS_OF_A_PLACEMENT = 25  # five by five; a test holds it against the calculation's
_AT_LEAST_NONE = Limits(at_least=0)
STAGES = ("seedling", "rosette", "growing", "bud_or_flower", "seed", "dormant")
SHARES = ("none", "few", "some", "many", "most")
HEAVY_SHARES = ("many", "most")


@dataclass(frozen=True, slots=True, kw_only=True)
class Counted(Record):
    """One count of what was sown, over the whole place or between two stations.

    By the frame of 25 cells, or in rows. `cells_count` is for a frame that was not read whole;
    left out, every placement counts with all its cells.
    """

    planting: str = reference("place", "planting", "planting", required=True)
    placements_count: Given | None = measure(
        "place", "times the frame was laid down", "count", POSITIVE
    )
    cells_with_plant_count: Given | None = measure(
        "place", "cells with at least one plant of what was sown", "count", _AT_LEAST_NONE
    )
    cells_count: Given | None = measure(
        "place", "cells looked at, where they are fewer than 25 a time", "count", POSITIVE
    )
    mean_plants_per_row_ft: Given | None = measure(
        "place", "plants in a foot of row, the mean of what was counted", "plants_per_row_ft",
        Limits(at_least=0, at_most=100),
    )  # fmt: skip
    row_spacing_in: Given | None = measure("place", "from row to row", "in", POSITIVE)
    from_ft: Given | None = measure(
        "place", "station where the stretch begins, along the strip", "ft", _AT_LEAST_NONE
    )
    to_ft: Given | None = measure("place", "station where the stretch ends", "ft", POSITIVE)


@dataclass(frozen=True, slots=True, kw_only=True)
class WeedSeen(Record):
    """One weed seen in a planting, by an id of our list or in the owner's own words."""

    weed: str = text("place", "id out of the list of weeds, or your own words", required=True)
    planting: str | None = reference(
        "place", "planting, where the entry names no other", "planting"
    )
    stage: str | None = choice("place", "how far it is", *STAGES)
    height_in: Given | None = measure("place", "how tall", "in", POSITIVE)
    share: str | None = choice(
        "place", "how much beside the grass; none: looked for; many: as much; most: more than it",
        *SHARES,
    )  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class NoxiousWeed(Record):
    """A weed the law wants kept down here, as the owner looked it up."""

    weed: str = text("page", "id out of the list of weeds, or the name in the law", required=True)
    looked_up_on: datetime.date = day("page", "looked up on", required=True)
    source: str = text("page", "where it was looked up", required=True)
