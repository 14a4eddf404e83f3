"""The crop a spraying is for, as far as it is known, for labels that count by crop."""

import datetime
from dataclasses import dataclass

from generator.inventory.places import PlantedGround, Planting
from generator.inventory.season import season_of


@dataclass(frozen=True, slots=True)
class Crop:
    """The planting a spraying is for, and the seasons in which it has the ground.

    `planting_id` is empty for a spraying outside any job: it may be for whatever has the ground.
    Without a last season it has the ground for good.
    """

    place_id: str
    planting_id: str
    first_season: int
    last_season: int | None

    def may_be(self, other: "Crop") -> bool:
        """Whether two sprayings on some of the same ground may be for the same crop."""
        if self.planting_id and other.planting_id and self.place_id == other.place_id:
            return self.planting_id == other.planting_id
        return self._begins_before_the_end_of(other) and other._begins_before_the_end_of(self)

    def _begins_before_the_end_of(self, other: "Crop") -> bool:
        return other.last_season is None or self.first_season <= other.last_season


def crop_of(ground: PlantedGround, planting: Planting) -> Crop:
    """Return the crop of a planting: from the season before, until another takes the ground."""
    before = [one.season for one in ground.plantings if one.season < planting.season]
    after = [one.season for one in ground.plantings if one.season > planting.season]
    first = max([planting.season - 1, *(one + 1 for one in before)])
    return Crop(ground.id, planting.id, first, min(after) - 1 if after else None)


def crop_on(place_id: str, first: datetime.date, last: datetime.date) -> Crop:
    """Return the crop of a spraying outside any job, of which its days alone are known."""
    return Crop(place_id, "", season_of(first), season_of(last))
