"""From the place where a YAML parser gives up to a sentence that a landowner can act on.

The parser says where it stopped and what it was busy with. What went wrong is often a line
earlier, so each rule looks at the source too. The parser's own words are never shown.
"""

from __future__ import annotations

import re
from collections.abc import Callable

import yaml

from generator.dataclass import dataclass
from generator.inventory import yaml_faults
from generator.inventory.problems import Sentence
from generator.inventory.yaml_faults import Found
from generator.inventory.yaml_lines import (
    entry_column,
    is_blank,
    key_at,
    line_above,
    lost_column,
    nearest_column,
    slipped,
    text_column,
    value_column,
    value_from,
)
from generator.inventory.yaml_parser import parser_position


@dataclass(frozen=True, slots=True)
class LastRead:
    """What the parser read last before it stopped; places are 0-based line and column."""

    quote: str  # the kind of quote round a text, empty for anything else
    bracket: bool  # whether it closed a list or a group
    start: tuple[int, int]
    end: tuple[int, int]


def last_read(event: yaml.Event) -> LastRead:
    """The part of an event that tells what a fault right behind it means."""
    style = event.style if isinstance(event, yaml.ScalarEvent) else None
    closes = isinstance(event, yaml.CollectionEndEvent)
    return LastRead(
        style if style in ("'", '"') else "",
        closes,
        parser_position(event.start_mark),
        parser_position(event.end_mark),
    )


@dataclass(frozen=True, slots=True)
class ParserSpot:
    """Where a parser stopped; lines and columns are 0-based and lie inside the text."""

    lines: tuple[str, ...]
    line: int
    column: int
    problem: str
    context: str
    opened: tuple[int, int]
    last: LastRead | None

    @property
    def text(self) -> str:
        return self.lines[self.line]


def spot_of(
    lines: tuple[str, ...], fault: Exception, last: LastRead | None, reached: tuple[int, int]
) -> ParserSpot:
    """The place of a parser's exception; `reached` serves where the exception has none."""
    mark = getattr(fault, "problem_mark", None)
    start = getattr(fault, "context_mark", None)
    line, column = _inside(lines, *(parser_position(mark) if mark else reached))
    problem = str(getattr(fault, "problem", "") or "")
    context = str(getattr(fault, "context", "") or "")
    opened = _inside(lines, *parser_position(start)) if start else (line, column)
    return ParserSpot(lines, line, column, problem, context, opened, last)


def _inside(lines: tuple[str, ...], line: int, column: int) -> tuple[int, int]:
    """A place at the end of the file moves to the end of its last line with text."""
    if line >= len(lines) or (line == len(lines) - 1 and not lines[line].strip()):
        filled = [number for number, text in enumerate(lines) if text.strip()]
        line = filled[-1] if filled else 0
        return line, len(lines[line].rstrip())
    return line, min(column, len(lines[line]))


def syntax_fault(spot: ParserSpot) -> Found:
    """Line and column (0-based) of the fault that stopped the parser, and its sentence."""
    for rule in _RULES:
        found = rule(spot)
        if found is not None:
            return found
    return _fallback(spot)


def _unreadable_escape(spot: ParserSpot) -> Found | None:
    if "double-quoted" not in spot.context:
        return None
    line, column = spot.opened
    text = spot.lines[line]
    return line, column, yaml_faults.backslash(text[:column], text[column:])


def _open_quote(spot: ParserSpot) -> Found | None:
    if "quoted scalar" not in spot.context:
        return None
    line, column = spot.opened
    text = spot.lines[line]
    return line, column, yaml_faults.quote_left_open(text[:column], text[column:])


def _after_quote(spot: ParserSpot) -> Found | None:
    last = spot.last
    if last is None or not last.quote or last.end[0] != spot.line or _at_end(spot):
        return None
    if spot.text[last.end[1] : spot.column].strip() or spot.text[spot.column] in ",]}:":
        return None
    if "flow" in spot.context and spot.text[spot.column] in "'\"[{":
        return None  # the next part of a list or group, whose comma is missing
    line, column = last.start
    text = spot.lines[line]
    if line != spot.line:
        return line, column, yaml_faults.quote_closes_later(text[column:], spot.line + 1)
    after = value_from(spot.text, spot.column, "flow" in spot.context)
    whole = text[column : spot.column] + after
    return line, column, yaml_faults.text_after_quote(text[:column], whole, after)


def _at_end(spot: ParserSpot) -> bool:
    return spot.column >= len(spot.text)


def _impossible_escape(spot: ParserSpot) -> Found | None:
    """A code in a backslash escape that no character has: the parser ends without words."""
    if spot.problem or "\\" not in spot.text:
        return None
    escape = spot.text.rfind("\\", 0, spot.column)
    return spot.line, max(escape, 0), yaml_faults.hidden_escape()


def _after_document_end(spot: ParserSpot) -> Found | None:
    if "document start" not in spot.problem:
        return None
    above = line_above(spot.lines, spot.line)
    while above is not None:
        if re.match(r"\.\.\.(?:\s|$)", spot.lines[above]):
            return above, 0, yaml_faults.second_document("...")
        above = line_above(spot.lines, above)
    return None


def _on_marker_line(spot: ParserSpot) -> Found | None:
    if re.match(r"(---|\.\.\.)[ \t]+\S", spot.text):
        return spot.line, 0, yaml_faults.second_document(spot.text[:3])
    return None


def _percent_line(spot: ParserSpot) -> Found | None:
    for line, text in enumerate(spot.lines[: spot.line + 1]):
        if text.startswith("%") and ("directive" in spot.context or "document" in spot.problem):
            return line, 0, yaml_faults.percent_line(text)
    return None


def _tab(spot: ParserSpot) -> Found | None:
    if not _at_end(spot) and spot.text[spot.column] == "\t":
        return spot.line, spot.column, yaml_faults.tab_indentation()
    return None


_LEADING = (
    "cannot start any token",
    "expected the node content",
    "entries are not allowed",
    "keys are not allowed",
)
_LEADING_CONTEXTS = ("an alias", "an anchor", "a tag", "a block scalar")


def _leading_mark(spot: ParserSpot) -> Found | None:
    if any(words in spot.problem for words in _LEADING):
        return _leading_mark_at(spot, spot.line, spot.column)
    if any(spot.context.endswith(words) for words in _LEADING_CONTEXTS):
        return _leading_mark_at(spot, *spot.opened)
    return None


def _leading_mark_at(spot: ParserSpot, line: int, column: int) -> Found | None:
    text = spot.lines[line]
    if column >= len(text):
        return None
    value = value_from(text, column, yaml_faults.value_is_in_flow(text[:column]))
    return line, column, yaml_faults.leading_mark(text[:column], value)


def _colon(spot: ParserSpot) -> Found | None:
    if "mapping values are not allowed" not in spot.problem:
        return None
    begin = value_column(spot.text)
    if begin is not None and key_at(spot.text, text_column(spot.text)) and begin < spot.column:
        value = spot.text[begin:]
        return spot.line, begin, yaml_faults.colon_in_value(spot.text[:begin], value)
    # refused too where the line above has no colon and so goes on into this one
    above = line_above(spot.lines, spot.line)
    if above is not None:
        column = text_column(spot.lines[above])
        cause = slipped(spot.lines[above][column:])
        has_key = key_at(spot.lines[above], column) is not None
        if cause is not None and (_is_dash(cause) or not has_key):
            return above, column, cause
        if not has_key:
            return above, column, yaml_faults.no_colon(spot.lines[above])
    return _misplaced(spot)


def _is_dash(cause: Sentence | None) -> bool:
    return cause is not None and cause.code == "F106"


def _unfinished_key(spot: ParserSpot) -> Found | None:
    if "simple key" not in spot.context:
        return None
    line, column = spot.opened
    text = spot.lines[line]
    # the colon may stand behind a # and be a remark
    lost = lost_column(text, column)
    if lost is not None:
        return line, lost, yaml_faults.text_lost_after_hash(text[lost:])
    if text[column : column + 1] in ("'", '"'):
        after = text[column:]
        return line, column, yaml_faults.quote_left_open(text[:column], after)
    cause = slipped(text[column:])
    if cause is None and key_at(text, column) is not None:
        return line, column, yaml_faults.unreadable(text)
    return line, column, cause or yaml_faults.no_colon(text[column:])


def _flow(spot: ParserSpot) -> Found | None:
    if spot.context.endswith("flow node") and _at_end(spot):
        return _open_bracket_before(spot)
    if not spot.context.endswith(("flow sequence", "flow mapping")):
        return None
    line, column = spot.opened
    bracket = spot.lines[line][column]
    # the bracket or comma it lacks may stand behind a #, in any of its lines
    for number in range(line, spot.line + 1):
        lost = lost_column(spot.lines[number], column if number == line else 0)
        if lost is not None:
            return number, lost, yaml_faults.text_lost_after_hash(spot.lines[number][lost:])
    got = "" if _at_end(spot) else spot.text[spot.column]
    if got in ("]", "}") and spot.problem.endswith(f"'{got}'"):
        return spot.line, spot.column, yaml_faults.wrong_bracket(bracket, got)
    if spot.line == line and got == ":":
        inside = spot.text[column + 1 :].rstrip(" ]}")
        return spot.line, spot.column, yaml_faults.colon_in_braces(inside)
    if spot.line == line and got:
        return spot.line, spot.column, yaml_faults.no_comma(bracket)
    return line, column, yaml_faults.bracket_left_open(bracket, spot.lines[line][column + 1 :])


def _open_bracket_before(spot: ParserSpot) -> Found | None:
    for line in range(spot.line, -1, -1):
        column = max(spot.lines[line].rfind("["), spot.lines[line].rfind("{"))
        if column >= 0:
            bracket, inside = spot.lines[line][column], spot.lines[line][column + 1 :]
            return line, column, yaml_faults.bracket_left_open(bracket, inside)
    return None


def _after_bracket(spot: ParserSpot) -> Found | None:
    last = spot.last
    if last is None or not last.bracket or last.end[0] != spot.line or _at_end(spot):
        return None
    end = last.end[1]
    if spot.text[end - 1 : end] not in ("]", "}") or spot.text[end : spot.column].strip():
        return None
    begin = value_column(spot.text)
    start = text_column(spot.text) if begin is None else begin
    return spot.line, start, yaml_faults.text_after_bracket(spot.text[:start], spot.text[start:])


def _out_of_place(spot: ParserSpot) -> Found | None:
    """A line that begins where the lines around it do not let it."""
    if _at_end(spot) or spot.text[: spot.column].strip(" -"):
        return None
    begin = len(spot.text) - len(spot.text.lstrip())
    text = spot.text[begin:]
    same_column = begin == spot.opened[1]
    in_list = "collection" in spot.context or "sequence" in spot.context
    lost = _lost_above(spot)
    if lost is not None and key_at(spot.text, begin) is None:
        return lost
    if re.match(r"-[ \t]|-$", text):
        place = entry_column(spot.lines, spot.line)
        if place is not None and begin < place[0]:
            return spot.line, begin, yaml_faults.misplaced(spot.text, place[0] + 1, place[1])
        if same_column and not in_list:
            return spot.line, begin, yaml_faults.list_among_keys(text)
        return _misplaced(spot)
    cause = slipped(text)
    if cause is not None and (_is_dash(cause) or key_at(spot.text, begin) is None):
        return spot.line, begin, cause
    if key_at(spot.text, begin) is None:
        return spot.line, begin, yaml_faults.no_colon(text)
    if same_column and in_list:
        return spot.line, begin, yaml_faults.key_among_list(text)
    return _misplaced(spot)


def _lost_above(spot: ParserSpot) -> Found | None:
    above = line_above(spot.lines, spot.line)
    lost = None if above is None else lost_column(spot.lines[above])
    if above is None or lost is None:
        return None
    return above, lost, yaml_faults.text_lost_after_hash(spot.lines[above][lost:])


def _misplaced(spot: ParserSpot) -> Found:
    line, (column, under) = spot.line, nearest_column(spot.lines, spot.line)
    outlier = _outlier_above(spot)
    if outlier is not None:
        line, column, under = outlier
    text = spot.lines[line]
    return line, _indent(text), yaml_faults.misplaced(text, column + 1, under)


def _outlier_above(spot: ParserSpot) -> tuple[int, int, str] | None:
    """Return the line above, where it alone begins too early, with where the lines around begin.

    A key with a value has nothing below it, so a line further in goes on with the lines before.
    """
    above = line_above(spot.lines, spot.line)
    before = line_above(spot.lines, above) if above is not None else None
    if above is None or before is None or value_column(spot.lines[above]) is None:
        return None
    column = _indent(spot.text)
    key = key_at(spot.lines[before], text_column(spot.lines[before]))
    waits = key is not None and value_column(spot.lines[before]) is None
    if waits and text_column(spot.lines[before]) == _indent(spot.lines[above]) < column:
        return above, column, key or ""  # the first line of what a key above waits for
    over = next(
        (
            number
            for number in range(before, -1, -1)
            if not is_blank(spot.lines[number]) and text_column(spot.lines[number]) <= column
        ),
        None,
    )
    if over is None or text_column(spot.lines[over]) != column:
        return None
    if column <= _indent(spot.lines[above]):
        return None
    return above, column, key_at(spot.lines[over], column) or ""


def _indent(text: str) -> int:
    return len(text) - len(text.lstrip())


def _fallback(spot: ParserSpot) -> Found:
    begin = value_column(spot.text)
    if begin is not None and spot.text[begin] in "@`%*&![]{}|>,":
        found = _leading_mark_at(spot, spot.line, begin)
        if found is not None:
            return found
    return spot.line, min(spot.column, len(spot.text)), yaml_faults.unreadable(spot.text)


# The first that fits, so the narrower first: a bad escape is inside a quote too, a quote closed
# early in braces looks like a missing comma, a tab like a mark that begins a value. What only
# looks out of place comes last: it fits much that others know the cause of.
_RULES: tuple[Callable[[ParserSpot], Found | None], ...] = (
    _unreadable_escape,
    _open_quote,
    _impossible_escape,
    _after_document_end,
    _on_marker_line,
    _percent_line,
    _after_quote,
    _tab,
    _colon,
    _unfinished_key,
    _flow,
    _after_bracket,
    _leading_mark,
    _out_of_place,
)
