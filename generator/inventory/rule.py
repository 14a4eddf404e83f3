"""What a rule of the property folder is, and what it says when it is broken."""

from collections.abc import Callable, Iterator

from generator.dataclass import dataclass
from generator.inventory.fields import Where
from generator.inventory.schema import Inventory
from generator.working import Given


@dataclass(frozen=True, slots=True)
class Broken:
    """One broken rule: where, what is wrong, what is accepted."""

    where: Where
    what: str
    accepted: str


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule of the property folder with its code, its reason and its check.

    A rule that is asked `alone` looks at one record and never from it into another, so that it is
    asked of every record that could be read, also of one that leads to a record with a fault.
    """

    code: str
    reason: str
    check: Callable[[Inventory], Iterator[Broken]]
    alone: bool = False


def typed_at(given: Given) -> Where:
    """Return the place a number was typed at."""
    return Where(given.file, given.line, given.column)
