"""One file of the property folder as plain data, with the place of every key and value."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import yaml

from generator.inventory.problems import Problem
from generator.inventory.yaml_document import Path_, Place, Reading, Unfinished
from generator.inventory.yaml_parser import PlainParser, fast_parser, parsed
from generator.inventory.yaml_syntax import explain, last_read, spot_of
from generator.inventory.yaml_text import read_text

__all__ = ["Document", "Mark", "Path_", "read_document"]


@dataclass(frozen=True, slots=True)
class Mark:
    """A place in a file: line and column, both counted from 1 and in characters."""

    line: int
    column: int


@dataclass(frozen=True, slots=True)
class Document:
    """What one file says: dictionaries, lists, text, numbers, true, false and None.

    A path leads from the top to a value: `("screens", 0, "width_ft")`.
    """

    file: str
    data: object
    value_marks: Mapping[Path_, Mark]
    key_marks: Mapping[Path_, Mark]

    def mark(self, path: Path_) -> Mark:
        """Where a value begins; where it is missing, its key or what it should stand in."""
        return self._nearest(path, self.value_marks, self.key_marks)

    def key_mark(self, path: Path_) -> Mark:
        """Where a value's key begins; an entry of a list has none and is its own place."""
        return self._nearest(path, self.key_marks, self.value_marks)

    def _nearest(
        self, path: Path_, first: Mapping[Path_, Mark], second: Mapping[Path_, Mark]
    ) -> Mark:
        found = first.get(path) or second.get(path)
        for length in range(len(path) - 1, -1, -1):
            if found is not None:
                return found
            found = self.value_marks.get(path[:length]) or self.key_marks.get(path[:length])
        return found or Mark(1, 1)


def read_document(raw: bytes, file: str) -> tuple[Document | None, tuple[Problem, ...]]:
    """Read the bytes of one file; never raises for what stands in them.

    The document is None where the file cannot be read to its end, or where a link or merged key
    leaves a value unknown. Beside other problems it holds what could be read: the first of two
    equal keys, a value without the text that a # took away.
    """
    text, problems = read_text(raw, file)
    if text is None:
        return None, problems
    text = text if text.endswith("\n") else text + "\n"  # so both parsers see the same end
    lines = tuple(text.split("\n"))
    reading = _fast_reading(text, lines, file) or _plain_reading(text, lines, file)
    document = _document(reading) if reading.complete else None
    return document, tuple(sorted({*problems, *reading.problems}))


def _fast_reading(text: str, lines: tuple[str, ...], file: str) -> Reading | None:
    """The reading of a text that has no fault of syntax, else None.

    The fast parser places faults in its own way, so they are always looked at with the plain one.
    """
    reading = Reading(file, lines)
    try:
        for event in parsed(fast_parser()(text)):
            reading.take(event)
    except Unfinished:
        reading.complete = False
    except (yaml.YAMLError, ValueError, OverflowError):
        return None
    return reading


def _plain_reading(text: str, lines: tuple[str, ...], file: str) -> Reading:
    """The reading up to the first fault of syntax, with that fault explained."""
    reading = Reading(file, lines)
    last = None
    parser = PlainParser(text)
    try:
        for event in parsed(parser):
            reading.take(event)
            last = last_read(event)
    except Unfinished:
        reading.complete = False
    except (yaml.YAMLError, ValueError, OverflowError) as fault:
        # An escape such as "\\UFFFFFFFF" ends in an error of Python itself, without a place.
        reached = (parser.line, parser.column)
        line, column, sentence = explain(spot_of(lines, fault, last, reached))
        places = {(problem.line, problem.column) for problem in reading.problems}
        if (line + 1, column + 1) not in places:
            reading.add(line, column, sentence)
        reading.complete = False
    return reading


def _document(reading: Reading) -> Document:
    return Document(
        reading.file,
        reading.data,
        {path: _mark(place) for path, place in reading.value_places.items()},
        {path: _mark(place) for path, place in reading.key_places.items()},
    )


def _mark(place: Place) -> Mark:
    return Mark(place[0] + 1, place[1] + 1)
