"""A table as plain values: what stands in its cells, and how numbers and days get there."""

import datetime
from dataclasses import dataclass

from generator.working import Figure, Withheld

Cell = str | int | float | None


@dataclass(frozen=True, slots=True)
class Table:
    """A table to write out: its name, its columns, its rows of plain values."""

    name: str
    columns: tuple[str, ...]
    rows: list[tuple[Cell, ...]]


def as_number(figure: Figure | None) -> float | None:
    """Return the value of a figure as it stands in a cell, None where there is none to show."""
    return None if figure is None or isinstance(figure, Withheld) else float(figure.value)


def as_day(one: datetime.date | None) -> str | None:
    """Return a day as it stands in a cell."""
    return one.isoformat() if one is not None else None


def yes_no(said: bool | None) -> str | None:
    """Return an answer as it stands in a cell, None where there is none."""
    return None if said is None else ("yes" if said else "no")
