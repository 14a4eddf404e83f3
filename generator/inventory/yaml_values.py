"""What one value in a YAML file means, and what a person who wrote it may not have noticed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

import yaml

from generator.inventory import yaml_faults
from generator.inventory.number_cures import PLAIN_NUMBER
from generator.inventory.yaml_faults import Found
from generator.inventory.yaml_lines import LOST_TEXT, slipped, text_column
from generator.inventory.yaml_parser import parser_position
from generator.inventory.yaml_text import is_control

# From the end of a value inside brackets to a # that takes away text.
AFTER_BRACKET = re.compile(r"[ \t]*#+[^#\s]")
AFTER_COMMA = re.compile(r"[ \t]*,[ \t]*#+[^#\s]")
AFTER_FLOW_TEXT = re.compile(r"[ \t]*(?:,[ \t]*|[ \t])#+[^#\s]")

_PLAIN_NUMBER = re.compile(PLAIN_NUMBER)
_WORDS: dict[str, bool | None] = {"true": True, "false": False, "null": None, "~": None, "": None}
_OPENING_QUOTES = "“„‟‘‚‛«»”’"
_ANY_QUOTES = _OPENING_QUOTES + "\"'"
_CONTINUES = re.compile(r"-|[A-Za-z][A-Za-z0-9_]*[ \t]*(?:=|：|:)")


def plain_value(text: str) -> str | int | float | bool | None:
    """The meaning of text without quotes: true, false, null, a plain number, else the text.

    Dates, times, `no`, `on`, `012`, `1e3`, `.5` and numbers too long to keep stay text.
    """
    if text in _WORDS:
        return _WORDS[text]
    if _PLAIN_NUMBER.fullmatch(text):
        return float(text) if "." in text else int(text)
    return text


def event_value(event: yaml.ScalarEvent) -> str | int | float | bool | None:
    """The meaning of a scalar: quoted text and text blocks are always text."""
    return str(event.value) if event.style else plain_value(event.value)


def scalar_faults(
    event: yaml.ScalarEvent, lines: Sequence[str], in_flow: bool, is_key: bool
) -> Iterator[Found]:
    """Faults of one scalar that reads, but not as a person meant it; places are 0-based.

    `in_flow` says that it stands inside brackets or braces. Behind a closing quote a remark is
    plain to see and stands.
    """
    line, column = parser_position(event.start_mark)
    if event.style in ("|", ">"):
        return
    if event.style in ("'", '"'):
        yield from _quoted_faults(event, lines, line, column)
    elif event.value:
        yield from _plain_faults(event, lines, in_flow, is_key)
    quoted = event.style in ("'", '"')
    if in_flow:
        gap = AFTER_COMMA if quoted else AFTER_FLOW_TEXT
        yield from lost_after(lines, parser_position(event.end_mark), gap)
    elif not quoted:
        yield from lost_after(lines, parser_position(event.end_mark), LOST_TEXT)


def _quoted_faults(
    event: yaml.ScalarEvent, lines: Sequence[str], line: int, column: int
) -> Iterator[Found]:
    text = lines[line]
    # a path of Windows reads without a fault where its letters happen to be escapes: C:\new
    if event.style == '"' and re.match(r'"[A-Za-z]:\\[^\\]', text[column:]):
        yield line, column, yaml_faults.backslash(text[:column], text[column:])
    elif is_control(event.value):
        yield line, column, yaml_faults.hidden_escape()


def _plain_faults(
    event: yaml.ScalarEvent, lines: Sequence[str], in_flow: bool, is_key: bool
) -> Iterator[Found]:
    value = event.value
    line, column = parser_position(event.start_mark)
    before = lines[line][:column]
    first = value[0]
    if first.isspace():
        yield line, column, yaml_faults.unusual_space(ord(first))
    elif first in _OPENING_QUOTES and (
        value[-1] in _ANY_QUOTES or not any(mark in value[1:] for mark in _ANY_QUOTES)
    ):
        # round a part of the text they belong to it; round all of it, or never closed, they slipped
        if is_key:
            yield line, column, yaml_faults.curly_quotes_round_key(value)
        else:
            yield line, column, yaml_faults.curly_quotes(before, value)
    elif is_key and re.match(r"-[^0-9]", value):
        yield line, column, yaml_faults.no_space_after_dash(lines[line][column:])
    elif not is_key and not in_flow:
        yield from _slipped_lines(lines, (line, column), parser_position(event.end_mark)[0])


def _slipped_lines(lines: Sequence[str], start: tuple[int, int], last: int) -> Iterator[Found]:
    """Lines that went into a value though they look like keys or entries of their own."""
    line, column = start
    # only what begins its line can be a key without its colon; behind a key it is text
    if column == text_column(lines[line]):
        cause = slipped(lines[line][column:])
        if cause is not None and cause.code != "F106":
            yield line, column, cause
    for number in range(line + 1, last + 1):
        text = lines[number].strip()
        if not _CONTINUES.match(text):
            continue
        begin = len(lines[number]) - len(lines[number].lstrip())
        cause = slipped(text)
        if cause is not None:
            yield number, begin, cause
        elif text.startswith("- "):
            yield number, begin, yaml_faults.list_under_value(text)


def lost_after(lines: Sequence[str], end: tuple[int, int], gap: re.Pattern[str]) -> Iterator[Found]:
    """Text that YAML takes for a remark, where `gap` leads from a value's end to its #."""
    line, column = end
    lost = gap.match(lines[line], column) if line < len(lines) else None
    if lost is not None:
        at = lines[line].index("#", column)
        yield line, at, yaml_faults.text_lost_after_hash(lines[line][at:])
