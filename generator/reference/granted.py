"""What the book takes for granted, by groups: which value enters where, and what replaces it."""

from functools import cache

from generator.dataclass import dataclass
from generator.reference.library import values
from generator.reference.read import read_data
from generator.reference.usual import Usual, usual
from generator.working import Reference


@dataclass(frozen=True, slots=True)
class Granted:
    """One thing that is taken for granted: where it enters, and what to type in its place.

    It is a `value`, or the `range` that is usual, or a constant of the program named by `fixed`.
    """

    enters: str
    to_type: str
    value: Reference | None
    range: Usual | None
    fixed: str


@dataclass(frozen=True, slots=True)
class GrantedGroup:
    """Things taken for granted that enter the same kind of work."""

    name: str
    to_type: str
    rows: tuple[Granted, ...]


@cache
def granted_groups() -> tuple[GrantedGroup, ...]:
    """Return what is taken for granted, in the groups and the order of the page."""
    return tuple(
        GrantedGroup(
            group["name"], group.get("to_type", ""), tuple(_row(row) for row in group["rows"])
        )
        for group in read_data("granted.yaml")
    )


def _row(row: dict[str, str]) -> Granted:
    return Granted(
        row["enters"],
        row.get("to_type", ""),
        values()[row["value"]] if "value" in row else None,
        usual(row["usual"], row["unit"]) if "usual" in row else None,
        row.get("fixed", ""),
    )
