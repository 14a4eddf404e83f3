"""What lies in a property folder: files to read, what hinders reading, and what editors left.

Whatever looks as if it were meant to be read and is not is a fault: a log that nobody reads would
let a label's limit pass for kept. Links to files are read as the files they lead to. A link to a
folder is followed at the top of the property folder alone: deeper it could lead round in a circle.
"""

import os
from collections.abc import Collection, Iterator
from pathlib import Path

from generator.dataclass import dataclass
from generator.inventory import problems as say
from generator.inventory.files import WHAT_WORDS, What, is_link, what_is
from generator.inventory.problems import Problem, Sentence

PROPERTY_FILE = "property.yaml"
ENDING = ".yaml"
ENDINGS = (ENDING, ".yml")
LEFT_ENDINGS = ("~", ".swp", ".tmp")


@dataclass(frozen=True, slots=True)
class Lying:
    """Names as paths from the property folder: to be read, and passed over; and every fault."""

    names: tuple[str, ...]
    passed_over: tuple[str, ...]
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class _Thing:
    """One name in the folder and what it is; `linked` where it is a link to that."""

    name: str
    what: What
    linked: bool

    @property
    def last(self) -> str:
        return self.name.rpartition("/")[2]

    @property
    def top(self) -> str:
        return self.name.partition("/")[0]

    @property
    def depth(self) -> int:
        return self.name.count("/")


def lies_in(folder: Path, kinds: Collection[str]) -> Lying:
    """Return what lies in a property folder; `kinds` are the names of its files of lists.

    Raises OSError where the folder itself cannot be opened.
    """
    names: list[str] = []
    passed_over: list[str] = []
    problems: list[Problem] = []
    for thing in _things(folder):
        if _is_passed_over(thing):
            passed_over.append(f"{thing.name}/" if thing.what == "folder" else thing.name)
            continue
        fault = _fault(thing, kinds)
        if fault is not None:
            problems.append(fault.at(thing.name, 1, 1))
        elif thing.what == "file" and _is_read(thing, kinds):
            names.append(thing.name)
    # one that lies there and cannot be read is told as that, not as missing
    if PROPERTY_FILE not in {*names, *(problem.file for problem in problems)}:
        problems.append(say.missing_file(PROPERTY_FILE).at(PROPERTY_FILE, 1, 1))
    return Lying(tuple(names), tuple(passed_over), tuple(problems))


def seems_meant(folder: Path, kinds: Collection[str]) -> bool:
    """Return whether a folder has a file by whose name it is, or is meant as, a property folder.

    Raises OSError where the folder cannot be opened.
    """
    known = {PROPERTY_FILE.removesuffix(ENDING), *kinds}
    return any(_holds_ending(name) and kind_meant(name) in known for name in _names_in(folder))


def kind_meant(name: str) -> str:
    """Return the kind of list that a file's path in the property folder says, or seems to say."""
    return name.partition("/")[0].casefold().partition(".")[0]


def _names_in(folder: Path) -> list[str]:
    with os.scandir(folder) as entries:
        # every disk lists in an order of its own, and no output may hang on it
        return sorted(entry.name for entry in entries)


def _things(folder: Path) -> Iterator[_Thing]:
    """Yield all that lies in a folder, in order; hidden folders are not looked into."""
    # taken from the end, so that what is in a folder comes right behind it
    waiting = _names_in(folder)[::-1]
    while waiting:
        name = waiting.pop()
        path = folder / name
        thing = _Thing(name, what_is(path), is_link(path))
        if _is_looked_into(thing):
            try:
                waiting += [f"{name}/{inside}" for inside in reversed(_names_in(path))]
            except OSError:
                thing = _Thing(name, "closed", thing.linked)
        yield thing


def _is_looked_into(thing: _Thing) -> bool:
    hidden = thing.last.startswith(".")
    return thing.what == "folder" and not hidden and not (thing.linked and thing.depth)


def _is_passed_over(thing: _Thing) -> bool:
    """Return whether a name is hidden, or one that editors give to what they leave behind."""
    if thing.last.startswith("."):
        return True
    return thing.what != "folder" and is_left_by_an_editor(thing.last)


def is_left_by_an_editor(last: str) -> bool:
    """Return whether a file has a name that editors give to what they leave behind."""
    framed = len(last) > 1 and last.startswith("#") and last.endswith("#")
    return framed or last.casefold().endswith(LEFT_ENDINGS)


def _fault(thing: _Thing, kinds: Collection[str]) -> Sentence | None:
    """Return why a thing that may be meant to be read is not, None where nothing is wrong."""
    if thing.what in ("closed", "leads_nowhere"):
        return say.closed(WHAT_WORDS[thing.what])
    if thing.what == "folder" and thing.linked and thing.depth:
        return say.linked_folder()
    if thing.what == "file":
        return None if _is_read(thing, kinds) else _name_fault(thing, kinds)
    may_be_meant = _holds_ending(thing.last) or (not thing.depth and thing.last in kinds)
    # a folder may be called log and holds lists then; one with .yaml in its name was to be a file
    if may_be_meant and (thing.what != "folder" or _holds_ending(thing.last)):
        return say.not_a_file(WHAT_WORDS[thing.what])
    return None


def _is_read(thing: _Thing, kinds: Collection[str]) -> bool:
    if not thing.depth:
        stem = thing.last.removesuffix(ENDING)
        return thing.last == PROPERTY_FILE or (thing.last.endswith(ENDING) and stem in kinds)
    return thing.depth == 1 and thing.top in kinds and thing.last.casefold().endswith(ENDINGS)


def _name_fault(thing: _Thing, kinds: Collection[str]) -> Sentence | None:
    """Return the fault of a file that is not read, where its name says that it may be meant."""
    known = [PROPERTY_FILE.removesuffix(ENDING), *kinds]
    last = thing.last.casefold()
    if not _holds_ending(last):
        return say.unknown_file(last, known) if not thing.depth and last in known else None
    if thing.top in kinds and thing.depth:
        return say.too_deep_file(thing.top) if thing.depth > 1 else say.other_ending()
    if thing.depth:
        return say.unknown_file(thing.top, known)
    # up to the first ending: screens.yaml.bak is a copy of screens
    stem = last[: min(last.find(ending) for ending in ENDINGS if ending in last)]
    return say.unknown_file(stem, known)


def _holds_ending(name: str) -> bool:
    return any(ending in name.casefold() for ending in ENDINGS)
