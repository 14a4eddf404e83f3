"""Lines on things that share what is said of them: the first by name, of more how many they are."""

from collections.abc import Callable, Hashable, Iterable, Sequence
from typing import TypeVar

from markupsafe import Markup

from generator.book.pages.written import Listed
from generator.dataclass import dataclass

NamedPage = tuple[str, Markup]
_Row = TypeVar("_Row")
_Key = TypeVar("_Key", bound=Hashable)


@dataclass(frozen=True, slots=True)
class NamedLine:
    """One line: its head, the first of what it is about with their pages, and how many more."""

    head: str
    named: tuple[NamedPage, ...]
    more: int


def line_of(head: str, named: Sequence[NamedPage], most: int) -> NamedLine:
    """Return a line that names at most so many."""
    return NamedLine(head, tuple(named[:most]), max(0, len(named) - most))


def sheet_of(row: Listed) -> NamedPage:
    """Return the thing a job is done on, with the page of its sheet."""
    return row[2].name, Markup("work/{}.html").format(row[0].address)


def in_groups(rows: Iterable[_Row], alike: Callable[[_Row], _Key]) -> dict[_Key, list[_Row]]:
    """Return rows in groups of what is alike in them, in the order they come."""
    groups: dict[_Key, list[_Row]] = {}
    for row in rows:
        groups.setdefault(alike(row), []).append(row)
    return groups
