"""Crops: the one a spraying is for, and which kinds and species of ours a card's crop means."""

import datetime
import unicodedata
from collections.abc import Mapping
from functools import cache

from generator.dataclass import dataclass
from generator.inventory.label import ALL_OTHER_KINDS, NO_KIND, CropDays
from generator.inventory.places import PlantedGround, Planting
from generator.inventory.season import season_of
from generator.reference.library import planting_kinds, species

HYPHENS = "-_\u2010\u2011\u2012\u2013\u2014\u2212"


def plain_name(name: str) -> str:
    """Return a name as names of crops are compared.

    >>> plain_name("  Native-Grass ") == plain_name("native grass")
    True
    >>> plain_name("Switch grass") == plain_name("Switchgrass")
    False
    """
    text = unicodedata.normalize("NFKC", name).casefold()
    for hyphen in HYPHENS:
        text = text.replace(hyphen, " ")
    return " ".join(text.split())


@cache
def ids_by_name() -> Mapping[str, frozenset[str]]:
    """Return the ids of kinds and species by their plain names, and by the ids themselves."""
    found: dict[str, frozenset[str]] = {}
    names = [*planting_kinds().items(), *((plant.id, plant.name) for plant in species().values())]
    for identity, name in names:
        for word in (plain_name(name), plain_name(identity)):
            found[word] = found.get(word, frozenset()) | {identity}
    return found


def meant_by(line: CropDays) -> frozenset[str] | None:
    """Return the ids a line means, None where nobody has said; none of ours is an empty set."""
    named = ids_by_name().get(plain_name(line.crop), frozenset())
    said = frozenset(line.means)
    # said to mean none of ours is an answer; where nothing is said, the line is asked about
    return (named | said) - {NO_KIND} if named or said else None


def lines_for(lines: tuple[CropDays, ...], kind: str, species_id: str) -> tuple[CropDays, ...]:
    """Return the lines for a species of a kind: those that name either, else those for all."""
    meant = [(line, meant_by(line) or frozenset()) for line in lines]
    named = tuple(line for line, ids in meant if ids & {kind, species_id})
    return named or tuple(line for line, ids in meant if ALL_OTHER_KINDS in ids)


def means_in_words(line: CropDays) -> str:
    """Return what the owner says a line means, in words; empty where nothing is said."""
    names = {NO_KIND: "no planting of this book", ALL_OTHER_KINDS: "all that no other line names"}
    kinds = {**planting_kinds(), **{plant.id: plant.name for plant in species().values()}, **names}
    return ", ".join(kinds[identity] for identity in line.means)


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
            # the ids tell crops apart on one place alone: another place that shares its ground has
            # plantings of its own, and there the seasons decide
            return self.planting_id == other.planting_id
        return self._begins_before_the_end_of(other) and other._begins_before_the_end_of(self)

    def _begins_before_the_end_of(self, other: "Crop") -> bool:
        return other.last_season is None or self.first_season <= other.last_season


def crop_of(ground: PlantedGround, planting: Planting) -> Crop:
    """Return the crop of a planting: from the season before, until another takes the ground."""
    before = [other.season for other in ground.plantings if other.season < planting.season]
    after = [other.season for other in ground.plantings if other.season > planting.season]
    first = max([planting.season - 1, *(season + 1 for season in before)])
    return Crop(ground.id, planting.id, first, min(after) - 1 if after else None)


def crop_on(place_id: str, first: datetime.date, last: datetime.date) -> Crop:
    """Return the crop of a spraying outside any job, of which its days alone are known."""
    return Crop(place_id, "", season_of(first), season_of(last))
