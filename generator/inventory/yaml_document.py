"""From the events of a YAML text to plain data, with the place of every key and value.

Everything that YAML offers and an owner's file does not need is refused with its place: labels
and links, kinds, merged keys, several documents, keys that are no text, deep nesting.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import field

import yaml

from generator.dataclass import dataclass
from generator.inventory import yaml_faults
from generator.inventory.problems import Problem, Sentence
from generator.inventory.yaml_faults import Found
from generator.inventory.yaml_lines import is_blank, key_at, slipped, value_from
from generator.inventory.yaml_parser import parser_position
from generator.inventory.yaml_values import (
    AFTER_BRACKET,
    AFTER_COMMA,
    event_value,
    lost_after,
    scalar_faults,
)

LineColumn = tuple[int, int]
Path_ = tuple[str | int, ...]

MOST_LEVELS = 20
GLUED_DASH = "F106"
NUMBER_BEFORE_A_COMMA = re.compile(r"(?<![\w.])(-?[0-9]+),$")
_BLOCK_HEADER = re.compile(r"[|>][-+0-9]*(?: +#.*| *)$")


class Unfinished(Exception):  # noqa: N818 - not an error: the reading stops here on purpose
    """The rest of the text is not read; the fault that stopped it is recorded already."""


class LooseBlockHeader(yaml.YAMLError):
    """What stands behind `|` or `>`, dropped by the fast parser and refused by the plain one."""


@dataclass(slots=True)
class _Open:
    """A group or list being filled. Without a path nothing in it is recorded."""

    container: dict[str, object] | list[object]
    path: Path_ | None
    in_flow: bool
    is_key: bool = False
    key_lines: dict[str, int] = field(default_factory=dict)
    wants_key: bool = False
    child_path: Path_ | None = None


@dataclass(frozen=True, slots=True)
class Unread:
    """A 0-based line that cannot be read, and whether it begins where no line may."""

    line: int
    misplaced: bool


@dataclass(slots=True)
class FileRead:
    """What has been read of one file so far."""

    file: str
    lines: Sequence[str]
    data: object = None
    value_places: dict[Path_, LineColumn] = field(default_factory=dict)
    key_places: dict[Path_, LineColumn] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    complete: bool = True  # whether the data stands for all that is in the file
    unread: list[Unread] = field(default_factory=list)
    doubtful: set[Path_] = field(default_factory=set)  # groups that say not all they should
    _open: list[_Open] = field(default_factory=list)
    _documents: int = 0
    _end: LineColumn = (0, 0)
    _before: yaml.Event | None = None

    def __post_init__(self) -> None:
        filled = (line for line in range(len(self.lines) - 1, -1, -1) if self.lines[line].strip())
        last = next(filled, 0)
        self._end = (last, len(self.lines[last].rstrip()) if self.lines else 0)

    def take(self, event: yaml.Event) -> None:
        """Add one event; raises `Unfinished` where reading on makes no sense."""
        if isinstance(event, yaml.DocumentStartEvent):
            self._begin_document(event)
        elif isinstance(event, yaml.CollectionEndEvent):
            self._close(event)
        elif isinstance(event, yaml.NodeEvent):
            self._refuse_extras(event)
            if isinstance(event, yaml.ScalarEvent):
                self._check_block_header(event)
                self._settle_empty(event)
            if self._open and self._open[-1].wants_key:
                self._take_key(event)
            else:
                self._take_value(event)
        self._before = event

    def _settle_empty(self, event: yaml.ScalarEvent) -> None:
        """Give a text left out inside brackets one place: the parsers differ about it."""
        if event.value or event.style or not self._in_flow() or self._before is None:
            return
        line, column = parser_position(self._before.end_mark)
        colon = re.match(r"[ \t]*:", self.lines[line][column:])
        behind = column + (colon.end() if colon else 0)
        event.start_mark = event.end_mark = yaml.Mark(self.file, 0, line, behind, None, 0)

    def add(self, line: int, column: int, sentence: Sentence) -> None:
        """Record a fault at a 0-based place."""
        self.problems.append(sentence.at(self.file, line + 1, column + 1))

    def leave_out(self, line: int, *, misplaced: bool = False) -> None:
        """Note that what begins at a 0-based line, or in brackets before it, cannot be read."""
        self.complete = False
        # brackets without one of their lines are broken: they go from where they open
        opened = (
            self.value_places.get(group.path)
            for group in self._open
            if group.in_flow and group.path
        )
        first = min([line, *(place[0] for place in opened if place is not None)])
        self.unread.append(Unread(first, misplaced))

    def _add_all(self, found: Sequence[Found]) -> None:
        for line, column, sentence in found:
            self.add(line, column, sentence)

    def _begin_document(self, event: yaml.DocumentStartEvent) -> None:
        self._documents += 1
        if event.version or event.tags:
            self.add(0, 0, yaml_faults.percent_line(self.lines[0]))
            raise Unfinished
        if self._documents > 1:
            self.add(*parser_position(event.start_mark), yaml_faults.second_document("---"))
            raise Unfinished

    def _refuse_extras(self, event: yaml.NodeEvent) -> None:
        """Refuse links, labels and kinds: what begins with `*`, `&` or `!` without quotes."""
        is_link = isinstance(event, yaml.AliasEvent)
        if not is_link and not event.anchor and not getattr(event, "tag", None):
            return
        line, column = parser_position(event.start_mark)
        if is_link:
            # what it leads to is not here; behind a label or a kind the value itself stands
            self.leave_out(line)
        value = value_from(self.lines[line], column, self._in_flow())
        self.add(line, column, yaml_faults.refused_mark(self.lines[line][:column], value))

    def _in_flow(self) -> bool:
        return bool(self._open) and self._open[-1].in_flow

    def _take_key(self, event: yaml.NodeEvent) -> None:
        group = self._open[-1]
        group.wants_key = False
        # until the key is sound: what stands below a faulty one has no place to be told at
        group.child_path = None
        if isinstance(event, yaml.ScalarEvent):
            self._take_text_key(group, event)
        elif isinstance(event, yaml.CollectionStartEvent):
            self.add(*parser_position(event.start_mark), yaml_faults.group_as_key())
            self._doubt(group)
            self._push(event, None, is_key=True)

    def _take_text_key(self, group: _Open, event: yaml.ScalarEvent) -> None:
        line, column = parser_position(event.start_mark)
        key = event_value(event)
        if isinstance(key, str) and self._lacks_dash(group, key, line, column):
            self.add(line, column, yaml_faults.no_dash(self.lines[line][column:], column))
            self._begin_entry(group, line, column)
        fault = self._key_fault(group, event, key)
        slips = list(scalar_faults(event, self.lines, group.in_flow, is_key=True))
        self._add_all(slips)
        if any(sentence.code == GLUED_DASH for _, _, sentence in slips):
            self.leave_out(line)  # the entry would be taken for more keys of the one above
        if fault is not None:
            self.add(line, column, fault)
            self._doubt(group)
        elif isinstance(key, str):
            group.key_lines[key] = line + 1
            if group.path is not None:
                group.child_path = (*group.path, key)
                self.key_places[group.child_path] = (line, column)

    def _lacks_dash(self, group: _Open, key: str, line: int, column: int) -> bool:
        """Whether an entry of a list begins at a key, though no dash stands before it.

        A key given twice may be one too many; where others of the same group follow, it is none.
        """
        in_list = len(self._open) > 1 and isinstance(self._open[-2].container, list)
        if key not in group.key_lines or group.in_flow or not in_list:
            return False
        return any(key_at(text, column) in group.key_lines for text in self._beside(line, column))

    def _beside(self, line: int, column: int) -> Iterator[str]:
        """Yield the lines below one that begin in a column, up to one that begins before it."""
        for text in self.lines[line + 1 :]:
            depth = len(text) - len(text.lstrip(" "))
            if is_blank(text) or depth > column:
                continue
            if depth < column:
                return
            yield text

    def _begin_entry(self, group: _Open, line: int, column: int) -> None:
        """Go on as if a dash stood here, so that what follows is told as of an entry of its own."""
        entries = self._open[-2]
        assert isinstance(entries.container, list)
        entries.container.append(group.container)
        group.container, group.key_lines = {}, {}
        if group.path is not None:
            group.path = (*group.path[:-1], len(entries.container))
            self.value_places[group.path] = (line, column)

    def _doubt(self, group: _Open) -> None:
        if group.path is not None:
            self.doubtful.add(group.path)

    def _key_fault(self, group: _Open, event: yaml.ScalarEvent, key: object) -> Sentence | None:
        line, column = parser_position(event.start_mark)
        if event.value == "" and not (event.style and event.style in "|>"):
            return yaml_faults.key_without_name()
        # before the key is judged: the end of 1,240 would be told as a key that is no word
        if group.in_flow and group.path is not None and self._lacks_colon(event):
            number = NUMBER_BEFORE_A_COMMA.search(self.lines[line][:column])
            if number is not None and event.value.isdecimal():
                return yaml_faults.comma_in_number(number[1], event.value)
        if not isinstance(key, str):
            return yaml_faults.key_not_text(event.value)
        if key == "<<" and not event.style:
            self.leave_out(line)
            return yaml_faults.merge_key()
        if self.lines[line][:column].rstrip().endswith("?"):
            return yaml_faults.question_mark_key(key)
        if key in group.key_lines:
            return yaml_faults.repeated_key(key, group.key_lines[key])
        if group.in_flow and group.path is not None and self._lacks_colon(event):
            return slipped(key) or yaml_faults.comma_in_braces(key)
        return None

    def _lacks_colon(self, event: yaml.ScalarEvent) -> bool:
        line, column = parser_position(event.end_mark)
        rest = self.lines[line][column:].strip()
        while not rest and line + 1 < len(self.lines):
            line += 1
            rest = self.lines[line].strip()
        return bool(rest) and not rest.startswith(":")

    def _take_value(self, event: yaml.NodeEvent) -> None:
        path = self._path_of_value()
        if path is not None:
            # A value left out at the end of a file is placed behind its last line.
            self.value_places[path] = min(parser_position(event.start_mark), self._end)
        if isinstance(event, yaml.CollectionStartEvent):
            self._push(event, path)
            return
        value = None
        if isinstance(event, yaml.ScalarEvent):
            slips = list(scalar_faults(event, self.lines, self._in_flow(), is_key=False))
            self._add_all(slips)
            if slips and path:
                # a slip may have drawn in the next line: what the group lacks is not missing
                self.doubtful.add(path[:-1])
            value = event_value(event)
        self._store(value, path)

    def _check_block_header(self, event: yaml.ScalarEvent) -> None:
        line, column = parser_position(event.start_mark)
        if event.style not in ("|", ">"):
            return
        header = re.search(r"[|>]", self.lines[line][column:])
        if header and not _BLOCK_HEADER.match(self.lines[line][column + header.start() :]):
            raise LooseBlockHeader

    def _path_of_value(self) -> Path_ | None:
        if not self._open:
            return ()
        top = self._open[-1]
        if isinstance(top.container, list):
            return None if top.path is None else (*top.path, len(top.container))
        return top.child_path

    def _push(
        self, event: yaml.CollectionStartEvent, path: Path_ | None, is_key: bool = False
    ) -> None:
        if len(self._open) >= MOST_LEVELS:
            self.add(*parser_position(event.start_mark), yaml_faults.too_deep(MOST_LEVELS))
            raise Unfinished
        mapping = isinstance(event, yaml.MappingStartEvent)
        in_flow = bool(event.flow_style)
        self._open.append(_Open({} if mapping else [], path, in_flow, is_key, wants_key=mapping))
        if in_flow:
            self._add_all(
                list(lost_after(self.lines, parser_position(event.end_mark), AFTER_BRACKET))
            )

    def _close(self, event: yaml.CollectionEndEvent) -> None:
        closed = self._open.pop()
        if self._open and self._open[-1].in_flow:
            self._add_all(
                list(lost_after(self.lines, parser_position(event.end_mark), AFTER_COMMA))
            )
        if not closed.is_key:
            self._store(closed.container, closed.path)

    def _store(self, value: object, path: Path_ | None) -> None:
        if not self._open:
            self.data = value
            return
        top = self._open[-1]
        if isinstance(top.container, list):
            top.container.append(value)
            return
        top.wants_key = True
        if path is not None:
            top.container[str(path[-1])] = value
