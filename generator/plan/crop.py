"""The crop a spraying is for, as far as it is known, for labels that count by crop."""

import datetime
import math
from dataclasses import dataclass

from generator.inventory.places import PlantedGround, Planting
from generator.inventory.season import season_of


@dataclass(frozen=True, slots=True)
class Crop:
    """The planting a spraying is for, and the seasons in which it has the ground.

    `planting_id` is empty for a spraying outside any job: it may be for whatever has the ground.
    """

    place_id: str
    planting_id: str
    first_season: float
    last_season: float

    def may_be(self, other: "Crop") -> bool:
        """Whether two sprayings on some of the same ground may be for the same crop."""
        if self.planting_id and other.planting_id and self.place_id == other.place_id:
            return self.planting_id == other.planting_id
        return self.first_season <= other.last_season and other.first_season <= self.last_season


def crop_of(ground: PlantedGround, planting: Planting) -> Crop:
    """Return the crop of a planting: from the season before, until another takes the ground."""
    seasons = [one.season for one in ground.plantings]
    before = max((one for one in seasons if one < planting.season), default=-math.inf)
    after = min((one for one in seasons if one > planting.season), default=math.inf)
    first = max(before + 1, planting.season - 1)
    return Crop(ground.id, planting.id, first, after - 1)


def crop_on(place_id: str, first: datetime.date, last: datetime.date) -> Crop:
    """Return the crop of a spraying outside any job, of which its days alone are known."""
    return Crop(place_id, "", season_of(first), season_of(last))
