"""What reading a document has found so far."""

from dataclasses import field
from typing import Any

from generator.dataclass import dataclass
from generator.inventory.fields import Where
from generator.inventory.problems import Problem, Sentence
from generator.inventory.yaml_positions import Document
from generator.units import LatLon

Path = tuple[str | int, ...]


# No value that could be typed: empty text, 0 and nothing are values too.
FAULT = object()


@dataclass(frozen=True, slots=True)
class Mention:
    """A word that must be the id of something: checked once everything is read."""

    word: str
    refers_to: tuple[str, ...]
    where: Where
    path: Path


@dataclass(frozen=True, slots=True)
class TypedPoint:
    """A point an owner typed, by its key: held against the time zone once everything is read."""

    key: str
    lat_lon: LatLon
    where: Where


@dataclass(frozen=True, slots=True)
class NamedThing:
    """An id an owner gave, and to what kind of record."""

    identity: str
    kind: type
    where: Where


@dataclass(slots=True)
class Reading:
    """What reading one document has found so far.

    `unread` are the kinds of which an entry, and so its id, could not be read: what mentions one
    of that kind may be right. `words` are the names that steps of the owner's own go by.
    `us_dates` says that days are typed month/day/year too. `whole` is the record that a document
    is as a whole, with nothing in the place of what could not be read.
    """

    document: Document
    us_dates: bool = False
    problems: list[Problem] = field(default_factory=list)
    mentions: list[Mention] = field(default_factory=list)
    named: list[NamedThing] = field(default_factory=list)
    points: list[TypedPoint] = field(default_factory=list)
    unread: set[type] = field(default_factory=set)
    words: set[str] = field(default_factory=set)
    whole: Any = None

    def where(self, path: Path) -> Where:
        """Return the place of a value."""
        mark = self.document.mark(path)
        return Where(self.document.file, mark.line, mark.column)

    def fault(self, sentence: Sentence, path: Path) -> object:
        """Keep a fault at a value and return the mark of a value that could not be read."""
        mark = self.document.mark(path)
        self.problems.append(sentence.at(self.document.file, mark.line, mark.column))
        return FAULT

    def key_fault(self, sentence: Sentence, path: Path) -> object:
        """Keep a fault at a key."""
        mark = self.document.key_mark(path)
        self.problems.append(sentence.at(self.document.file, mark.line, mark.column))
        return FAULT
