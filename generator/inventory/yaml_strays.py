"""Keys of an entry that begin in the first column, where keys of the file alone may.

YAML takes such a line for the file's own and all below it too. It is told once, at the line, and
what stands around it is read as it was meant.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from generator.dataclass import dataclass
from generator.inventory import yaml_faults
from generator.inventory.problems import Problem
from generator.inventory.yaml_lines import (
    is_blank,
    key_at,
    line_above,
    text_column,
    value_column,
)


@dataclass(frozen=True, slots=True)
class PutBack:
    """The lines of a file with strays further in, and the 0-based lines that were left out."""

    lines: tuple[str, ...]
    left_out: tuple[int, ...]
    problems: tuple[Problem, ...]


def stray_keys(lines: Sequence[str], inside: Collection[str]) -> list[int]:
    """Return the 0-based lines that begin, below one further in, with a key used inside alone."""
    found = []
    for number, text in enumerate(lines):
        above = line_above(lines, number)
        if above is None or key_at(text, 0) not in inside:
            continue
        # the second of two strays stands below one that is no further in
        if lines[above].startswith(" ") or above in found:
            found.append(number)
    return found


def put_back(lines: Sequence[str], strays: Collection[int], file: str) -> PutBack:
    """Return the lines with each stray key in the column it seems meant for.

    A key with nothing below it says not which column that is: it is left out.
    """
    changed, left_out, problems = list(lines), [], []
    for number in strays:
        # by what is put back so far: the next stray may belong below the last
        column, under = _meant_for(changed, number)
        sentence = yaml_faults.misplaced(lines[number], column + 1, under)
        problems.append(sentence.at(file, number + 1, 1))
        if value_column(lines[number]) is None and column:
            changed[number] = f"{' ' * column}{lines[number]}"
        else:
            # emptied, not taken out: every line keeps its number
            changed[number] = ""
            left_out.append(number)
    return PutBack(tuple(changed), tuple(left_out), tuple(problems))


def _meant_for(lines: Sequence[str], number: int) -> tuple[int, str]:
    """Return the column (0-based) that the lines around a key say it belongs in, and under what."""
    columns = _columns_above(lines, number)
    below = next((text for text in lines[number + 1 :] if not is_blank(text)), "")
    if value_column(lines[number]) is None:
        wanted = len(below) - len(below.lstrip()) - len("  ")
    else:
        wanted = text_column(below) if not below.lstrip().startswith("- ") else -1
    if wanted > 0 and wanted in columns:
        return wanted, columns[wanted]
    deepest = max(columns, default=0)
    return deepest, columns.get(deepest, "")


def _columns_above(lines: Sequence[str], number: int) -> Mapping[int, str]:
    """Return the columns that keys begin in on the lines that enclose a line, with each key."""
    found: dict[int, str] = {}
    above = line_above(lines, number)
    while above is not None:
        column = text_column(lines[above])
        key = key_at(lines[above], column)
        if key is not None and column and column < min(found, default=column + 1):
            found[column] = key
        above = line_above(lines, above) if lines[above].startswith(" ") else None
    return found
