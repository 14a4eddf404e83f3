"""The events of a YAML text, from the fast parser or the plain one, which must agree.

Events rather than nodes: composing nodes calls itself at every level, so a file of brackets could
end the program, while events can be stopped at any depth.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import yaml
from yaml.parser import Parser
from yaml.reader import Reader
from yaml.scanner import Scanner
from yaml.tokens import ScalarToken

_BREAKS = "\r\n\x85\u2028\u2029"


class PlainParser(Reader, Scanner, Parser):
    """PyYAML's own parser, taking tabs and question marks inside a line as the fast one does.

    As it comes it refuses `width_ft:<tab>24` and `[why?]`, which the fast parser reads.
    """

    def __init__(self, stream: str) -> None:
        Reader.__init__(self, stream)
        Scanner.__init__(self)
        Parser.__init__(self)

    def scan_to_next_token(self) -> None:
        while True:
            while self.peek() == " " or (
                self.peek() == "\t" and (self.flow_level or not self.allow_simple_key)
            ):
                self.forward()
            if self.peek() == "#":
                while self.peek() not in "\0" + _BREAKS:
                    self.forward()
            if not self._skip_line_break():
                return
            if not self.flow_level:
                self.allow_simple_key = True

    def scan_plain(self) -> ScalarToken:
        parts: list[str] = []
        blanks: list[str] = []
        start = end = self.get_mark()
        indent = self.indent + 1
        while self.peek() != "#":
            length = self._plain_length()
            if length == 0:
                break
            self.allow_simple_key = False
            parts += [*blanks, self.prefix(length)]
            self.forward(length)
            end = self.get_mark()
            blanks = self.scan_plain_spaces(indent, start)
            if not blanks or (not self.flow_level and self.column < indent):
                break
        return ScalarToken("".join(parts), True, start, end)

    def _plain_length(self) -> int:
        """How many characters from here belong to a text without quotes and without blanks."""
        stops = "\0 \t" + _BREAKS
        colon_stops = stops + (",[]{}" if self.flow_level else "")
        flow_stops = ",[]{}" if self.flow_level else ""
        length = 0
        while True:
            character = self.peek(length)
            if character in stops or character in flow_stops:
                return length
            if character == ":" and self.peek(length + 1) in colon_stops:
                return length
            length += 1

    def scan_plain_spaces(self, indent: int, start_mark: Any) -> list[str]:  # noqa: ARG002 - pyyaml calls it so
        length = 0
        while self.peek(length) in " \t":
            length += 1
        blanks = self.prefix(length)
        self.forward(length)
        if self.peek() not in _BREAKS:
            return [blanks] if blanks else []
        self._skip_line_break()
        self.allow_simple_key = True
        empty_lines: list[str] = []
        while not self._at_document_mark():
            if self.peek() == " " or (self.peek() == "\t" and self._may_skip_tab(indent)):
                self.forward()
            elif self.peek() in _BREAKS:
                empty_lines.append(self._skip_line_break())
            else:
                return empty_lines or [" "]
        return []

    def _skip_line_break(self) -> str:
        """The line break that stands here, now behind; empty where there is none."""
        return str(self.scan_line_break())  # type: ignore[no-untyped-call]  # pyyaml's

    def _may_skip_tab(self, indent: int) -> bool:
        return bool(self.flow_level) or self.column >= indent

    def _at_document_mark(self) -> bool:
        if self.column or self.prefix(3) not in ("---", "..."):
            return False
        return self.peek(3) in "\0 \t" + _BREAKS


def fast_parser() -> type[Any]:
    """The parser built on libyaml where it is installed, else the plain one."""
    if not yaml.__with_libyaml__:
        return PlainParser
    from yaml import cyaml  # importable only where libyaml is

    parser: type[Any] = vars(cyaml)["CParser"]
    return parser


def parsed(parser: Any) -> Iterator[yaml.Event]:
    """The events of a parser one by one; raises `yaml.YAMLError` where the text is no YAML."""
    while parser.check_event():
        yield parser.get_event()


def parser_position(mark: Any) -> tuple[int, int]:
    """Line and column of a parser's mark, both 0-based; the start where there is no mark."""
    return (mark.line, mark.column) if mark else (0, 0)
