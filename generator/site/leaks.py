"""Searches all that a reader gets for what is kept from them: a folder, one file, an archive.

Texts are told apart by their words: letters and digits between whatever else stands there, so that
a name is found in an address, a file name or a search index as on a page. What is searched for is
a run of words, or latitude or longitude to four decimals. Not searched for is what may stand on any
page by itself, and what the reader is shown:

- what has fewer than FEWEST_LETTERS letters and digits in such words, as "Oak" or "3";
- a run of words that stands so in a text which the reader may see, or in the program's own texts;
- of words that each stand there, a run of fewer than a name or a sentence is told by: one word of a
  name as "Corner", three of a note as "straps are good"; words of one or two letters, and numbers
  of fewer than FEWEST_LETTERS digits, are not counted, so neither is "Strip 3".

Figures, and words such as these, are watched by tests that build with other ones and compare.
"""

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from functools import cache, partial
from pathlib import Path
from typing import Protocol

from generator.dataclass import dataclass
from generator.in_two import in_two
from generator.site.containers import from_base64, opened, readings
from generator.site.own_words import own_text, ships, without_marks, words_of

FEWEST_LETTERS = 6
# So many of the things that are found are told, each once.
LEAKS_TOLD = 3
# Letters of a word that is counted.
_OF_A_WORD = 3
_DEGREES = re.compile(r"\d{1,3}\.\d{4}")
_DEGREES_HERE = re.compile(rb"\d+\.\d{4}")
_PIECE_BYTES, _LINES_AGAIN = 20_000, 8
_FOLDED = b"\r\n "
# Between two words: what a name has there, in an address too; what a sentence has. No mark of a
# page or of an index, so that two things that stand side by side make none.
_JOINT, _ANY_JOINT = rb"[\s_/+-]{1,9}", rb"[^0-9a-z\x80-\xff<>=\"{}\[\]|]{1,9}"
_IS_JOINT = re.compile(rb"[\s_/+-]+")
_BETWEEN = re.compile(rb"[^0-9a-zA-Z\x80-\xff]+")
_BEGINS, _ENDS = rb"(?<![0-9a-z\x80-\xff])", rb"(?![0-9a-z\x80-\xff])"


class Searched(Protocol):
    """What an owner typed: a text or degrees, and which one it is, in words.

    `own_words` is from how many words on a run of the program's own words is searched for.
    """

    @property
    def text(self) -> str:
        """The text."""

    @property
    def told(self) -> str:
        """Which one it is: field, thing, file and line."""

    @property
    def own_words(self) -> int:
        """How many words."""


@dataclass(frozen=True, slots=True)
class Leak:
    """Something kept that stands in what a reader gets: in which file of it, what, whose."""

    file: str
    text: str
    told: str


@dataclass(frozen=True, slots=True)
class _Run:
    """Words that stand together, or degrees, and all that is typed in these words."""

    words: tuple[bytes, ...]
    together: bytes
    kept: list[Searched]


class Search:
    """What is kept from a reader, laid out so that a text is held against little of it."""

    def __init__(self, kept: Iterable[Searched]) -> None:
        self.degrees: dict[bytes, _Run] = {}
        by_words: dict[tuple[bytes, ...], _Run] = {}
        for one in kept:
            text = one.text.encode()
            if _DEGREES.fullmatch(one.text):
                self.degrees.setdefault(text, _Run((text,), text, [])).kept.append(one)
                continue
            words, together, is_long = _as_searched(one.text)
            if is_long:
                by_words.setdefault(words, _Run(words, together, [])).kept.append(one)
        common = Counter(word for words in by_words for word in words)
        self.runs: dict[bytes, list[_Run]] = {}
        for run in by_words.values():
            # by its rarest word: few texts hold that one
            rarest = min(run.words, key=lambda word: (common[word], -len(word)))
            self.runs.setdefault(rarest, []).append(run)
        # no degrees stand in a text without these
        self.wholes = {degrees[:-4] for degrees in self.degrees}
        self.by_themselves: dict[tuple[bytes, ...], bool] = {}

    def leaks_in(self, places: Iterable[Path], shown: Sequence[str]) -> tuple[Leak, ...]:
        """Return what is kept from the reader and stands in folders, files or archives.

        Names of files and all that lies within files is looked at. `shown` are texts the reader may
        see. Raises OSError where something cannot be read, and NotReadable where something holds
        what cannot be looked into.
        """
        shown_text = b" %s " % b" | ".join(b" ".join(words_of(text.encode())) for text in shown)
        read: set[tuple[bytes, bytes]] = set()
        found: dict[str, Leak] = {}
        files = [file for place in places for file in _files(place)]
        tasks = [partial(self._in_file, *file, shown_text, read) for file in files]
        for leaks in in_two(tasks):
            for leak in leaks:
                found.setdefault(leak.told, leak)
        return tuple(found.values())

    def _in_file(
        self, name: str, path: Path, shown: bytes, read: set[tuple[bytes, bytes]]
    ) -> list[Leak]:
        data = path.read_bytes() if path.is_file() else b""
        return [] if ships(name, data) else self._in_data(name, data, shown, read)

    def _in_data(
        self, name: str, data: bytes, shown: bytes, read: set[tuple[bytes, bytes]], deep: int = 0
    ) -> list[Leak]:
        found: list[Leak] = []
        for inside, content in opened(name, data, deep):
            unread, pairs = _not_read(content, read)
            for packed in from_base64(unread):
                found += self._in_data(f"{inside}, its base64", packed, shown, read, deep + 1)
            here = [
                Leak(inside, one.text, one.told)
                for text in (*readings(inside.encode()), *readings(unread))
                for piece in _pieces(text)
                for one in self._kept_in(piece, shown)
            ]
            found += here
            # what was found is told of every file that holds it, whichever is read first
            if not here:
                read.update(pairs)
        return found

    def _kept_in(self, text: bytes, shown: bytes) -> Iterator[Searched]:
        in_order = words_of(text)
        words = frozenset(in_order)
        near = [
            run for word in self.runs.keys() & words for run in self.runs[word]
            if words.issuperset(run.words) and not self.by_themselves.get(run.words)
        ]  # fmt: skip
        if near:
            together = b" %s " % b" ".join(in_order)
            for run in near:
                if run.together in together and not self._is_by_itself(run, shown):
                    yield from (one for one in run.kept if _stands_in(one.text.encode(), text))
        if any(whole in text for whole in self.wholes):
            here = {
                found[0]
                for found in _DEGREES_HERE.finditer(text)
                if text[found.start() - 1 : found.start()] != b"."
            }
            for degrees in self.degrees.keys() & here:
                yield from self.degrees[degrees].kept

    def _is_by_itself(self, run: _Run, shown: bytes) -> bool:
        """Return whether a run may stand on a page that nobody told it."""
        if run.words not in self.by_themselves:
            self.by_themselves[run.words] = _is_by_itself(run, shown)
        return self.by_themselves[run.words]


@cache
def _as_searched(text: str) -> tuple[tuple[bytes, ...], bytes, bool]:
    """Return the words of a text, how they stand together, and whether they are long enough."""
    words = tuple(words_of(text.encode()))
    letters = sum(map(len, _counted(words) or words))
    return words, b" %s " % b" ".join(words), letters >= FEWEST_LETTERS


def _is_by_itself(run: _Run, shown: bytes) -> bool:
    if run.together in shown or run.together in own_text():
        return True
    counted = _counted(run.words)
    if len(counted) >= min(one.own_words for one in run.kept):
        return False
    return all(b" %s " % word in own_text() or b" %s " % word in shown for word in counted)


def _counted(words: tuple[bytes, ...]) -> tuple[bytes, ...]:
    """Return the words that are more than a small number or a short word between others."""
    return tuple(
        word for word in words if len(word) >= (FEWEST_LETTERS if word.isdigit() else _OF_A_WORD)
    )


def _stands_in(typed: bytes, text: bytes) -> bool:
    """Return whether words stand together in a text as they do where they were typed."""
    typed = without_marks(typed).strip()
    words = words_of(typed)
    joints = _BETWEEN.findall(typed[typed.lower().index(words[0]) :])
    found = re.escape(words[0])
    for joint, word in zip(joints, words[1:], strict=False):
        found += (_JOINT if _IS_JOINT.fullmatch(joint) else _ANY_JOINT) + re.escape(word)
    return re.search(_BEGINS + found + _ENDS, without_marks(text), re.IGNORECASE) is not None


def _pieces(text: bytes) -> Iterator[bytes]:
    """Yield a text in pieces, of which each begins with the last lines of the one before.

    What is searched for is held against what may stand in a piece, and few of it may.
    """
    if len(text) <= _PIECE_BYTES:
        yield text
        return
    lines = text.split(b"\n")
    begin = size_bytes = 0
    for number, line in enumerate(lines):
        size_bytes += len(line)
        if size_bytes > _PIECE_BYTES:
            yield b"\n".join(lines[begin : number + 1])
            # a name or a piece of a sentence goes over no more lines than this
            begin, size_bytes = max(begin + 1, number - _LINES_AGAIN), 0
    yield b"\n".join(lines[begin:])


def _files(place: Path) -> Iterator[tuple[str, Path]]:
    if not place.is_dir():
        yield place.name, place
        return
    # hidden ones behind the others: the list of all files names what the file itself tells better
    for path in sorted(place.rglob("*"), key=lambda path: (path.name.startswith("."), path)):
        yield path.relative_to(place).as_posix(), path


def _not_read(
    data: bytes, read: set[tuple[bytes, bytes]]
) -> tuple[bytes, list[tuple[bytes, bytes]]]:
    """Return the lines that were not read before, one after the other, and all lines by twos.

    Most of a page is what stands around every page. A line is left out where it stood between the
    same two lines in something that was read.
    """
    if _FOLDED in data:
        return data, []
    lines = data.split(b"\n")
    pairs = list(zip(lines, [*lines[1:], b""], strict=True))
    new = [pair not in read for pair in pairs]
    # a bar in the place of a line that is left out: it is no joint of two words
    unread = b"\n".join(
        [
            line if is_new or was_new else b"|"
            for line, is_new, was_new in zip(lines, new, [False, *new[:-1]], strict=True)
        ]
    )
    return unread, pairs
