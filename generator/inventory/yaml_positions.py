"""One file of the property folder as plain data, with the place of every key and value."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Set

import yaml

from generator.dataclass import dataclass
from generator.inventory.problems import Problem, Sentence
from generator.inventory.yaml_document import FileRead, LineColumn, Path_, Unfinished
from generator.inventory.yaml_lines import drawn_near
from generator.inventory.yaml_parser import PlainParser, fast_parser, parsed
from generator.inventory.yaml_rest import read_around
from generator.inventory.yaml_strays import put_back, stray_keys
from generator.inventory.yaml_syntax import last_read, spot_of, syntax_fault
from generator.inventory.yaml_text import read_text

# A line that begins in no column where one may, and a list where none may stand.
MISPLACED = ("F107", "F121")
LEFT_OPEN = "F109"
# Each time the file is read anew; so often nobody puts a space behind a minus.
MOST_DRAWN_NEAR = 20

__all__ = ["Document", "FilePosition", "Path_", "read_document"]


@dataclass(frozen=True, slots=True)
class FilePosition:
    """A place in a file: line and column, both counted from 1 and in characters."""

    line: int
    column: int


@dataclass(frozen=True, slots=True)
class Document:
    """What one file says: dictionaries, lists, text, numbers, true, false and None.

    A path leads from the top to a value: `("screens", 0, "width_ft")`. What stands at a path in
    `doubtful` is not whole: lines in it could not be read.
    """

    file: str
    data: object
    value_marks: Mapping[Path_, FilePosition]
    key_marks: Mapping[Path_, FilePosition]
    doubtful: Set[Path_] = frozenset()

    def mark(self, path: Path_) -> FilePosition:
        """Where a value begins; where it is missing, its key or what it should stand in."""
        return self._nearest(path, self.value_marks, self.key_marks)

    def key_mark(self, path: Path_) -> FilePosition:
        """Where a value's key begins; an entry of a list has none and is its own place."""
        return self._nearest(path, self.key_marks, self.value_marks)

    def _nearest(
        self, path: Path_, first: Mapping[Path_, FilePosition], second: Mapping[Path_, FilePosition]
    ) -> FilePosition:
        found = first.get(path) or second.get(path)
        for length in range(len(path) - 1, -1, -1):
            if found is not None:
                return found
            found = self.value_marks.get(path[:length]) or self.key_marks.get(path[:length])
        return found or FilePosition(1, 1)


def read_document(
    raw: bytes, file: str, inside: Collection[str] = ()
) -> tuple[Document | None, tuple[Problem, ...]]:
    """Read the bytes of one file; never raises for what stands in them.

    `inside` are keys that the file's entries use and the file itself does not.
    Beside problems the document holds what could be read: the first of two equal keys, a value
    without the text that a # took away, the file without the lines that are no YAML, a link or a
    merged key. It is None where not even that can be told.
    """
    text, problems = read_text(raw, file)
    if text is None:
        return None, problems
    text = text if text.endswith("\n") else text + "\n"  # so both parsers see the same end
    whole = _reading_of(tuple(text.split("\n")), file)
    # most files read whole and have no such key at their top: nothing to look for
    strays = stray_keys(whole.lines, inside) if _may_have_strays(whole, inside) else []
    back = put_back(whole.lines, strays, file)
    if strays:
        whole = _reading_of(back.lines, file)
    told = {*problems, *back.problems}
    if whole.complete:
        return _document(whole, back.left_out), tuple(sorted({*told, *whole.problems}))
    rest = read_around(whole, lambda lines: _reading_of(lines, file))
    left_out = (*rest.left_out, *back.left_out)
    document = _document(rest.reading, left_out) if rest.reading.complete else None
    return document, tuple(sorted({*told, *rest.problems}))


def _may_have_strays(whole: FileRead, inside: Collection[str]) -> bool:
    at_the_top = whole.data if isinstance(whole.data, dict) else {}
    return not whole.complete or not at_the_top.keys().isdisjoint(inside)


def _reading_of(lines: tuple[str, ...], file: str, near: int = MOST_DRAWN_NEAR) -> FileRead:
    text = "\n".join(lines)
    return _fast_reading(text, lines, file) or _plain_reading(text, lines, file, near)


def _fast_reading(text: str, lines: tuple[str, ...], file: str) -> FileRead | None:
    """The reading of a text that has no fault of syntax, else None.

    The fast parser places faults in its own way, so they are always looked at with the plain one.
    """
    reading = FileRead(file, lines)
    try:
        for event in parsed(fast_parser()(text)):
            reading.take(event)
    except Unfinished:
        reading.complete = False
    except (yaml.YAMLError, ValueError, OverflowError):
        return None
    return reading


def _plain_reading(text: str, lines: tuple[str, ...], file: str, near: int) -> FileRead:
    """The reading up to the first fault of syntax, with that fault explained.

    A minus that stands apart from its number is no fault: it is read as if it did not.
    """
    reading = FileRead(file, lines)
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
        spot = spot_of(lines, fault, last, reached)
        line, column, sentence = syntax_fault(spot)
        drawn = drawn_near(lines[line], column) if near else lines[line]
        if drawn != lines[line]:
            return _reading_of((*lines[:line], drawn, *lines[line + 1 :]), file, near - 1)
        _add_cause(reading, line, column, sentence)
        misplaced = sentence.code in MISPLACED and line == spot.line
        reading.leave_out(line, misplaced=misplaced)
    return reading


def _add_cause(reading: FileRead, line: int, column: int, sentence: Sentence) -> None:
    """Add what stopped the parser; of several faults in its line the first is the cause.

    Where brackets are left open, all behind them was taken for theirs.
    """
    last = len(reading.lines) if sentence.code == LEFT_OPEN else line + 1
    reading.problems = [
        problem
        for problem in reading.problems
        if (problem.line, problem.column) <= (line + 1, column + 1) or problem.line > last
    ]
    if all(problem.line != line + 1 for problem in reading.problems):
        reading.add(line, column, sentence)


def _document(reading: FileRead, left_out: Iterable[int]) -> Document:
    return Document(
        reading.file,
        reading.data,
        {path: _mark(place) for path, place in reading.value_places.items()},
        {path: _mark(place) for path, place in reading.key_places.items()},
        reading.doubtful.union(*(_around(reading, line) for line in left_out)),
    )


def _around(reading: FileRead, line: int) -> Iterator[Path_]:
    """Yield the paths of what a 0-based line that was left out may belong to."""
    marks = (*reading.value_places.items(), *reading.key_places.items())
    before = [(place, path) for path, place in marks if place[0] < line]
    # a group and its first key begin at one place: the deeper of the two is meant
    _, last = max(before, default=((0, 0), ()), key=lambda pair: (pair[0], len(pair[1])))
    yield from (last[:length] for length in range(len(last) + 1))


def _mark(place: LineColumn) -> FilePosition:
    return FilePosition(place[0] + 1, place[1] + 1)
