"""Names of stands, walks, places and water holes that a reader is not told, and texts with them."""

import re
from collections.abc import Container, Iterable, Iterator
from functools import lru_cache

from generator.dataclass import dataclass
from generator.inventory.ground import YES, WaterHole
from generator.inventory.land import LandThing
from generator.inventory.places import PlantedGround, Route, Stand
from generator.inventory.schema import Inventory, Reader
from generator.plan.readers.land_shown import may_see_kind
from generator.units import LatLon

Named = Stand | Route | PlantedGround | WaterHole | LandThing
# An id of one word is an ordinary word more often than a name: it counts before one of these alone.
AFTER_AN_ID = {
    "stand": ("stand", "ladder", "blind", "hang on", "tripod", "tower", "box"),
    "walk": ("walk", "route", "way", "path", "trail", "lane"),
    "place": ("place", "screen", "strip", "plot", "field", "row", "patch"),
    "thing of the land": (
        "creek",
        "pond",
        "well",
        "woods",
        "fence",
        "gate",
        "road",
        "house",
        "line",
        "bedding",
        "field",
        "crossing",
    ),
    "water hole": ("hole", "water hole", "pond"),
}
# What a thing is called by others is one of these, so the two are looked at together.
NAMES = ("name", "known_as")
# A name of one or two letters stands in many a text by chance.
SHORTEST = 3
# Fewer decimals than three say no more than the neighborhood.
DEGREES = re.compile(r"\d{1,3}\.\d{3,}")
# The same texts are held against the names of several readers, and again at the next save.
_REMEMBERED = 1 << 13
_NO_WORD = re.compile(r"[\W_]+")


@dataclass(frozen=True, slots=True)
class KeptName:
    """A name that a reader is not told: as typed, what it is, and the words it is found by.

    `point` stands in place of words where it is the coordinates that are kept.
    """

    name: str
    what: str
    thing: str
    found_by: tuple[str, ...]
    point: LatLon | None = None

    def stands_in(self, text: str, shown: Iterable[str]) -> bool:
        """Return whether a text holds it, not counting what is inside a name that is shown."""
        if self.point is not None:
            return _holds_point(text, self.point)
        words = in_plain_words(text)
        # taking shown names out of a text never puts another one together
        here = (phrase for phrase in self.found_by if phrase in words)
        return any(phrase in _without(words, shown, phrase) for phrase in here)


@lru_cache(maxsize=_REMEMBERED)
def in_plain_words(text: str) -> str:
    """Return the words of a text in small letters, with one space around each.

    >>> in_plain_words("Behind the Oak-ladder, 40 ft")
    ' behind the oak ladder 40 ft '
    """
    return f" {_NO_WORD.sub(' ', text.casefold()).strip()} "


def handed_ids(places: tuple[PlantedGround, ...], reader: Reader) -> frozenset[str]:
    """Return the ids of the places, stands and walks that a reader knows of, in any season."""
    plantings = {jobs.planting for jobs in reader.jobs}
    known = (
        place.id for place in places if plantings & {planting.id for planting in place.plantings}
    )
    return frozenset({*known, *reader.stands, *reader.routes})


def shown_names(inventory: Inventory, handed: frozenset[str]) -> tuple[str, ...]:
    """Return the names that what is handed over goes by."""
    return tuple(
        name
        for thing, _ in _everything_named(inventory)
        if thing.id in handed and (name := name_for_others(thing)) is not None
    )


def name_for_others(thing: Named) -> str | None:
    """Return the name a thing goes by once it is handed over; None where it has none yet."""
    if isinstance(thing, Stand | Route):
        return thing.known_as or thing.name
    return thing.known_as if isinstance(thing, PlantedGround | LandThing) else None


def kept_names(inventory: Inventory, handed: frozenset[str]) -> tuple[KeptName, ...]:
    """Return the names and ids that a reader is not told who is handed some things, once each."""
    shown = {in_plain_words(name) for name in shown_names(inventory, handed)}
    found: dict[tuple[str, ...], KeptName] = {}
    for thing, kind in _everything_named(inventory):
        for kept in _names_of(thing, kind, is_handed=thing.id in handed):
            if in_plain_words(kept.name) not in shown:
                found.setdefault(kept.found_by, kept)
    return tuple(found.values())


def _everything_named(inventory: Inventory) -> Iterator[tuple[Named, str]]:
    yield from ((stand, "stand") for stand in inventory.stands)
    yield from ((route, "walk") for route in inventory.routes)
    yield from ((place, "place") for place in inventory.places())
    yield from ((hole, "water hole") for hole in inventory.water_holes)
    yield from ((thing, "thing of the land") for thing in inventory.land)


def _names_of(thing: Named, kind: str, *, is_handed: bool) -> Iterator[KeptName]:
    """Yield what a thing is called; where it is not handed over, its name for others and ids."""
    known_as = None if isinstance(thing, WaterHole) else thing.known_as
    names = [thing.name, *([known_as] if known_as is not None and not is_handed else [])]
    for name in names:
        words = in_plain_words(name)
        if len(words.strip()) >= SHORTEST:
            yield KeptName(name, f"the name of a {kind}", thing.id, (words,))
    for identity in () if is_handed else (thing.id, *thing.was):
        words = in_plain_words(identity)
        if " " in words.strip():
            yield KeptName(identity, f"the id of a {kind}", thing.id, (words,))
        else:
            found_by = tuple(f"{words}{after} " for after in AFTER_AN_ID[kind])
            yield KeptName(identity, f"the id of a {kind}", thing.id, found_by)


class KeptNames:
    """Kept names by the words they are found by, so that a text is held against few of them.

    Both the names and the texts of a property are as many as its places.
    """

    def __init__(self, kept: tuple[KeptName, ...], shown: tuple[str, ...]) -> None:
        self.kept, self.shown = kept, shown
        self.by_first_word: dict[str, list[tuple[str, int]]] = {}
        for number, name in enumerate(kept):
            for phrase in name.found_by:
                first, *_ = phrase.split()
                self.by_first_word.setdefault(first, []).append((phrase, number))
        self.points = [number for number, name in enumerate(kept) if name.point is not None]

    def names_in(self, text: str) -> tuple[KeptName, ...]:
        """Return the kept names in a text, one of each thing; those inside a shown name aside.

        Kept names of one thing are looked for in their order, its ids last.
        """
        found: dict[str, KeptName] = {}
        for number in sorted(self._may_stand_in(text)):
            name = self.kept[number]
            if name.stands_in(text, self.shown):
                found.setdefault(name.thing, name)
        return tuple(found.values())

    def _may_stand_in(self, text: str) -> set[int]:
        words = in_plain_words(text)
        numbers = set(self.points if DEGREES.search(text) else ())
        for first in self.by_first_word.keys() & set(words.split()):
            numbers.update(
                number for phrase, number in self.by_first_word[first] if phrase in words
            )
        return numbers


def coordinates_pass(thing: object, reader: Reader, handed: Container[str]) -> bool:
    """Return whether a reader may take the coordinates of a thing along.

    Of a place of their jobs always; of all else by the owner's word alone.
    """
    match thing:
        case PlantedGround():
            return thing.id in handed
        case Stand() | Route():
            return thing.id in handed and thing.coordinates == YES
        case LandThing():
            return reader.id in thing.coordinates_for and may_see_kind(thing.kind, reader)
    return False


def kept_points(
    inventory: Inventory, reader: Reader, handed: Container[str]
) -> tuple[KeptName, ...]:
    """Return the coordinates of stands and of points of the land that a reader is not told."""
    points: tuple[tuple[Stand | LandThing, str], ...] = (
        *((stand, "stand") for stand in inventory.stands),
        *((thing, "thing of the land") for thing in inventory.land),
    )
    return tuple(
        KeptName(
            f"{lat}, {lon}", f"the coordinates of the {kind} {thing.id}", thing.id, (), (lat, lon)
        )
        for thing, kind in points
        if thing.at_lat_lon is not None and not coordinates_pass(thing, reader, handed)
        for lat, lon in (thing.at_lat_lon,)
    )


def _holds_point(text: str, point: LatLon) -> bool:
    """Return whether latitude and longitude stand in a text, to the decimals it gives."""
    # signs aside: west is told by a minus or by a letter
    typed = DEGREES.findall(text)
    return all(any(_is_cut_of(number, abs(part_deg)) for number in typed) for part_deg in point)


def _is_cut_of(typed: str, exact_deg: float) -> bool:
    decimals = len(typed.partition(".")[2])
    # cut off or rounded, it gives the point away alike
    return bool(abs(float(typed) - exact_deg) < 10**-decimals)


def _without(words: str, shown: Iterable[str], found: str) -> str:
    """Return words without the shown names that hold what is looked for, unless they are all."""
    # longest first: a short name taken out of a long one would leave its rest behind
    for name in sorted(shown, key=len, reverse=True):
        plain = in_plain_words(name)
        # a text that is a shown name and no more is not excused: that name itself gives it away
        if found in plain and plain != words:
            words = words.replace(plain, " | ")
    return words
