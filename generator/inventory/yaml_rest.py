"""What is left of a YAML file around the lines that cannot be read, so that it is looked at too."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence

from generator.dataclass import dataclass
from generator.inventory.problems import Problem
from generator.inventory.yaml_document import FileRead, Unread
from generator.inventory.yaml_lines import is_blank

# For each the file is read anew.
_MOST_FAULTS = 20
Read = Callable[[tuple[str, ...]], FileRead]
_WITH_VALUE = re.compile(r"[^\s#][^#]*:[ \t]+[^\s#]")


@dataclass(frozen=True, slots=True)
class Rest:
    """The reading of a file without some of its lines, which stand in `left_out`, 0-based.

    It is not complete where the file holds what cannot be left out: another document, brackets
    without end.
    """

    reading: FileRead
    left_out: tuple[int, ...]
    problems: frozenset[Problem]


def read_around(whole: FileRead, read: Read) -> Rest:
    """Return what is left of a file that could not be read whole, with every fault in it."""
    reading, problems, left_out = whole, _told(whole, 0), set[int]()
    for _ in range(_MOST_FAULTS):
        found = None if reading.complete else _next_reading(reading, read)
        if found is None:
            break
        left_out |= {n for n, line in enumerate(reading.lines) if line != found.lines[n]}
        problems |= _told(found, min(unread.line for unread in reading.unread) + 1)
        reading = found
    return Rest(reading, tuple(sorted(left_out)), frozenset(problems))


def _told(reading: FileRead, first: int) -> set[Problem]:
    """Return the faults from a 0-based line on, without those of what belongs to an unread line.

    What the lines below an unread one seem to be comes of its fault.
    """
    blocks = [(unread.line, _end_of_block(reading.lines, unread)) for unread in reading.unread]
    return {
        problem
        for problem in reading.problems
        if problem.line > first
        and not any(begin + 1 < problem.line <= end for begin, end in blocks)
    }


def _next_reading(before: FileRead, read: Read) -> FileRead | None:
    """Return a reading that gets past what stopped the one before, None where none does."""
    if not before.unread:
        return None
    end = max(_end_of_block(before.lines, unread) for unread in before.unread)
    for without in _ways(before):
        # emptied, not taken out: every line keeps its number
        lines = ("" if n in without else line for n, line in enumerate(before.lines))
        found = read(tuple(lines))
        # one that stops no further on would be tried again without end
        if found.complete or (found.unread and min(unread.line for unread in found.unread) >= end):
            return found
    return None


def _ways(before: FileRead) -> Iterator[set[int]]:
    """Yield which lines to leave out: those with a value alone, then all that belongs to them."""
    lines = before.lines
    # the least first: where they hold their values, what stands below them is kept
    if all(
        _WITH_VALUE.search(lines[unread.line]) and not _opens(lines, unread)
        for unread in before.unread
    ):
        yield {unread.line for unread in before.unread}
    ends = ((unread.line, _end_of_block(lines, unread)) for unread in before.unread)
    yield {line for first, end in ends for line in range(first, end)}


def _opens(lines: Sequence[str], unread: Unread) -> bool:
    return unread.misplaced or _is_entry(lines[unread.line])


def _end_of_block(lines: Sequence[str], unread: Unread) -> int:
    """Return the line behind an unread line and behind all that belongs to it."""
    first, depth = unread.line, _depth(lines[unread.line])
    filled = [n for n in range(first + 1, len(lines)) if not is_blank(lines[n])]
    least = depth if unread.misplaced else depth + 1
    if filled and _depth(lines[filled[0]]) <= depth:
        below = lines[filled[0]]
        has_more_below = not _WITH_VALUE.search(lines[first]) if unread.misplaced else False
        if has_more_below or (_is_entry(lines[first]) and not _is_entry(below)):
            least = min(least, _depth(below))
    for number in filled:
        text = lines[number]
        # the dashes of a list may stand in the column of its key
        listed = _is_entry(text) and not _is_entry(lines[first]) and _depth(text) == depth
        if _depth(text) < least and not listed:
            return number
    return len(lines)


def _is_entry(text: str) -> bool:
    return text.lstrip().startswith("-")


def _depth(text: str) -> int:
    return len(text) - len(text.lstrip(" "))
