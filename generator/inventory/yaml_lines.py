"""What one line of a YAML file looks like to a person: its key, its value, what slipped."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from generator.inventory import yaml_faults
from generator.inventory.problems import Sentence

# A # with a character straight after it; a row of ### is a ruler, not text.
LOST_TEXT = re.compile(r"[ \t]+#+[^#\s]")
_DASHES = re.compile(r"[ ]*(?:-[ \t]+)*")
_KEY = re.compile(r"(?P<key>[^\s:#'\"\[\]{}][^:#]*?)[ \t]*:(?=[ \t]|$)")
# A slash straight behind the colon is a web address, which lost no space.
_LOOSE_COLON = re.compile(r"(?P<key>[A-Za-z][A-Za-z0-9_]*):(?P<value>[^ \t/].*)")
_NOT_COLON = re.compile(
    r"(?P<key>[A-Za-z][A-Za-z0-9_]*)[ \t]*(?P<mark>[=：꞉﹕︓∶])(?P<value>[^=].*|$)"
)


def text_column(line: str) -> int:
    """Where a line's text begins, dashes of list entries aside; 0-based."""
    found = _DASHES.match(line)
    return found.end() if found else 0


def key_at(line: str, column: int) -> str | None:
    """The key that begins at a column, when a colon with a space follows it."""
    found = _KEY.match(line, column)
    return found["key"] if found else None


def value_column(line: str) -> int | None:
    """Where the value after the line's key or dash begins; None when there is none."""
    start = text_column(line)
    found = _KEY.match(line, start)
    begin = found.end() if found else start
    rest = line[begin:]
    if not rest.strip() or (not found and "-" not in line[:start]):
        return None
    return begin + len(rest) - len(rest.lstrip(" \t"))


def lost_column(line: str, start: int = 0) -> int | None:
    """Where a # begins that takes away the text straight behind it; None when there is none."""
    found = LOST_TEXT.search(line, start)
    if found is None or is_blank(line):
        return None
    return line.index("#", found.start())


def value_from(line: str, column: int, in_flow: bool) -> str:
    """The value that begins at a column, up to the end of the line or of its part in brackets."""
    value = line[column:]
    return re.split(r"[,\]}]", value, maxsplit=1)[0] if in_flow else value


def drawn_near(line: str, column: int) -> str:
    """The line with a minus at a column inside brackets drawn up to its number, if it is one.

    >>> drawn_near("at: [41.02, - 93.10]", 12)
    'at: [41.02,  -93.10]'
    """
    found = re.compile(r"-([ ]+)(?=\.?[0-9])").match(line, column)
    if found is None or not line[:column].rstrip().endswith(("[", ",")):
        return line
    # the spaces go before the minus, so that nothing behind it changes its column
    return f"{line[:column]}{found[1]}-{line[found.end() :]}"


def is_blank(line: str) -> bool:
    """An empty line or a remark."""
    return not line.strip() or line.lstrip().startswith("#")


def line_above(lines: Sequence[str], line: int) -> int | None:
    """The nearest line above that is neither empty nor a remark."""
    return next((above for above in range(line - 1, -1, -1) if not is_blank(lines[above])), None)


def slipped(text: str) -> Sentence | None:
    """What slipped in a line that should be `key: value` or `- entry`, when it can be seen."""
    plain = text.strip(" \t")
    # a dash before a digit or a point is a minus
    if re.match(r"-[^-\s0-9.]", plain):
        return yaml_faults.no_space_after_dash(plain)
    if re.match(r":(?:[ \t]|$)", plain):
        return yaml_faults.key_without_name()
    if found := _LOOSE_COLON.match(plain):
        if found["value"][0].isspace():
            return yaml_faults.unusual_space(ord(found["value"][0]))
        return yaml_faults.no_space_after_colon(found["key"], found["value"])
    if found := _NOT_COLON.match(plain):
        return yaml_faults.not_a_colon(found["key"], found["mark"], found["value"])
    return None


def _columns_above(lines: Sequence[str], line: int, dashes: bool) -> Iterator[tuple[int, str]]:
    """Columns (0-based) that keys, or dashes, begin at in the lines that enclose a line."""
    limit: int | None = None
    above = line_above(lines, line)
    while above is not None and limit != 0:
        text = lines[above]
        indent = len(text) - len(text.lstrip(" "))
        column = text_column(text)
        # only a line further out than all between it and this one encloses it
        if limit is None or indent < limit:
            limit = indent
            if dashes and text[indent:].startswith("- "):
                yield indent, text.strip()
            elif not dashes and key_at(text, column) is not None:
                yield column, key_at(text, column) or ""
        above = line_above(lines, above)


def nearest_column(lines: Sequence[str], line: int) -> tuple[int, str]:
    """The column (0-based) nearest to where a line begins that fits under a line above it.

    With it the text it stands under, empty when no line above gives one.
    """
    text = lines[line]
    here = len(text) - len(text.lstrip())
    choices = list(_columns_above(lines, line, dashes=text.lstrip().startswith("- ")))
    if not choices:
        return 0, ""
    return min(choices, key=lambda choice: (abs(choice[0] - here), -choice[0]))


def entry_column(lines: Sequence[str], line: int) -> tuple[int, str] | None:
    """The column (0-based) that the dash of a list entry belongs in, and what it stands under.

    Its own keys below say it, else a key above that waits for a list, else the entry above.
    """
    dashes = [number for number in range(line) if lines[number].lstrip().startswith("- ")]
    below = next((text for text in lines[line + 1 :] if not is_blank(text)), "")
    beside = len(below) - len(below.lstrip()) - len("- ")
    for number in reversed(dashes):
        if lines[number].index("-") == beside and not below.lstrip().startswith("- "):
            return beside, lines[number].strip()
    above = line_above(lines, line)
    if above is None:
        return None
    column = text_column(lines[above])
    key = key_at(lines[above], column)
    if key is not None and value_column(lines[above]) is None:
        return column + len("- "), key
    return (lines[above].index("-"), lines[above].strip()) if above in dashes else None
