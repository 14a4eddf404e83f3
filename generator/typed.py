"""Folders as they are typed behind the commands, told from each other before one is read."""

from __future__ import annotations

import datetime
import errno
import os
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

import click

if TYPE_CHECKING:
    from generator.site.mark import Mark

HERE = "."
OWNER = "owner"  # the name of the owner's book
NOT_READ = "Nothing was read."
AS_OF = "Day the plan is made for, such as 2027-01-15."


class PropertyFolder(click.Path):
    """A property folder; the refusal says what lies there instead, and which one may be meant."""

    name = "folder"

    def __init__(self) -> None:
        super().__init__(file_okay=False, path_type=Path)

    def convert(
        self,
        value: str | os.PathLike[str],
        param: click.Parameter | None,  # noqa: ARG002 - click calls it so
        ctx: click.Context | None,
    ) -> Path:
        """Return the folder; raises UsageError where it is none, or not one of a property."""
        wrong = wrong_folder(Path(value))
        if wrong is not None:
            raise click.UsageError(f"{wrong} {NOT_READ}", ctx)
        return Path(value)


class FolderOrNumber(PropertyFolder):
    """A word that is looked at by its command: a property folder, or a number of one."""

    def convert(self, value: Any, *_: Any) -> Any:
        """Return the word as it was typed."""
        return value


def is_here() -> bool:
    """Return whether the folder a person is in is a property folder."""
    return wrong_folder(Path(HERE)) is None


def wrong_folder(folder: Path) -> str | None:
    """Return what is wrong with a folder that is no property folder, in sentences; else None."""
    from generator.inventory.files import what_is
    from generator.inventory.folder import PROPERTY_FILE, seems_meant
    from generator.inventory.load import FILES

    what = what_is(folder)
    if what == "file":
        return f"{told(folder)} is a file: name the property folder it lies in."
    if what != "folder":
        return _not_there(folder)
    try:
        if seems_meant(folder, FILES):
            return None
    except OSError:
        return None  # who reads it is told why it cannot be read
    shown = told(folder) if folder != Path(HERE) else "The folder you are in"
    return built_book(folder, shown) or (
        f"{shown} is no property folder: no {PROPERTY_FILE} lies in it."
        f"{_meant(sorted(properties_in(folder)))}"
    )


def books_beside(folder: Path) -> Path:
    """Return where the books of a property folder go, unless somebody says otherwise."""
    place = folder.resolve()
    return place.with_name(f"{place.name}-handbook")


def why(error: OSError) -> str:
    """Return what the system said of an error, without number and path."""
    return safe(error.strerror or str(error)).rstrip(".")


def safe(text: str) -> str:
    """Return text a terminal shows as text: nothing in it can move the cursor or hide."""
    return "".join(
        letter if letter.isprintable() else "\N{REPLACEMENT CHARACTER}" for letter in text
    )


def told(path: Path) -> str:
    """Return a path as a terminal shows it and takes it back: in quotes where it has a space."""
    text = safe(str(path))
    return f'"{text}"' if " " in text else text


def _not_there(folder: Path) -> str | None:
    from generator.inventory.meant import nearest

    try:
        folder.stat()
    except OSError as error:
        if error.errno not in (errno.ENOENT, errno.ENOTDIR):
            return None  # who reads it is told why it cannot be read
        near = nearest(folder.name, (other.name for other in properties_in(folder.parent)))
        return (
            f"There is no folder {told(folder)}.{_meant([folder.parent / name for name in near])}"
        )
    return f"{told(folder)} is no folder: name a property folder."


def built_book(folder: Path, shown: str) -> str | None:
    """Return that a folder, shown so, is a built handbook or has several; None where it is not."""
    from generator.inventory.problems import listed
    from generator.site.mark import mark_of, marks_in

    place = folder.absolute()
    marked = (
        (above, mark) for above in (place, *place.parents) if (mark := mark_of(above)) is not None
    )
    site, mark = next(marked, (None, None))
    if site is not None and mark is not None:
        what = f"is a built handbook{_of(mark)}: name its property folder"
        return f"{shown} {what}.{_meant(_made_from(site.parent))}"
    inside = marks_in(place)
    if not inside:
        return None
    names = listed(sorted(map(safe, inside)), "and")
    of = _of(inside[OWNER]) if OWNER in inside else ""  # others' books are called as they see it
    what = f"is a folder of built books, for {names}{of}: name their property folder"
    return f"{shown} {what}.{_meant(_made_from(place))}"


def _of(mark: Mark) -> str:
    """Return whose a book is and of which day, as far as its mark says."""
    of = f" of {safe(mark.of)}" if mark.of else ""
    return f"{of}, as of {mark.as_of}" if mark.as_of else of


def _made_from(books: Path) -> list[Path]:
    """Return the property folder that a folder of books was built from, where it lies beside."""
    made_from = books.with_name(books.name.removesuffix("-handbook"))
    return (
        [Path(os.path.relpath(made_from))] if made_from in properties_in(made_from.parent) else []
    )


def _folders_in(folder: Path) -> list[Path]:
    try:
        return [entry for entry in folder.iterdir() if entry.is_dir()]
    except OSError:
        return []


def properties_in(folder: Path) -> list[Path]:
    """Return the property folders in a folder."""
    from generator.inventory.files import what_is
    from generator.inventory.folder import PROPERTY_FILE

    return [other for other in _folders_in(folder) if what_is(other / PROPERTY_FILE) == "file"]


def _meant(folders: list[Path]) -> str:
    return f" Did you mean {' or '.join(map(told, folders[:3]))}?" if folders else ""


class TargetFolder(click.Path):
    """A folder to write to, there or not."""

    name = "folder"

    def __init__(self) -> None:
        super().__init__(file_okay=False, path_type=Path)

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        """Return the folder as a path; raises BadParameter where nothing, or a file, is named."""
        if not str(value):
            self.fail("Nothing is named; . is the folder you are in.", param, ctx)
        return super().convert(value, param, ctx)


class SeasonTyped(click.ParamType[int]):
    """A year from 1990 to 2100; the refusal says so in words."""

    name = "year"

    def convert(self, value: str, param: click.Parameter | None, ctx: click.Context | None) -> int:
        """Return the year that was typed; raises BadParameter where it is none."""
        # its length before its value: Python makes no number of thousands of digits
        if not value.isdecimal() or len(value) != 4 or not 1990 <= int(value) <= 2100:
            self.fail(f"{safe(value[:40])} is not a year from 1990 to 2100.", param, ctx)
        return int(value)


LONGEST_PORT, LAST_PORT = 5, 65535


class PortTyped(click.ParamType[int]):
    """A port from 1 to 65535; the refusal says so in words."""

    name = "port"

    def convert(self, value: str, param: click.Parameter | None, ctx: click.Context | None) -> int:
        """Return the port that was typed; raises BadParameter where it is none."""
        is_number = value.isascii() and value.isdecimal() and len(value) <= LONGEST_PORT
        if not is_number or not 0 < int(value) <= LAST_PORT:
            self.fail(f"{safe(value[:40])} is not a port from 1 to 65535.", param, ctx)
        return int(value)


class DayGiven(NamedTuple):
    """A day typed behind an option, and whether it was typed as month/day/year."""

    date: datetime.date
    is_us: bool


class DayType(click.ParamType[DayGiven]):
    """A day; the refusal says how one is written."""

    name = "day"

    def convert(
        self, value: str | DayGiven, param: click.Parameter | None, ctx: click.Context | None
    ) -> DayGiven:
        """Return the day that was typed; raises BadParameter where it is none."""
        from generator.inventory.plain_values import us_day

        if isinstance(value, DayGiven):
            return value
        written = us_day(value)
        try:
            day = datetime.datetime.strptime(written or value, "%Y-%m-%d").date()
        except ValueError:
            self.fail(f"{safe(value)} is no day like 2027-01-15.", param, ctx)
        return DayGiven(day, written is not None)


def as_text(typed: Any) -> Any:
    """Return what was typed as text, also where a system of no language took it as bytes."""
    if isinstance(typed, tuple):
        return tuple(map(as_text, typed))
    if not isinstance(typed, str):
        return typed
    try:
        return os.fsencode(typed).decode()
    except UnicodeError:
        raise click.UsageError(f"{safe(typed[:40])} is no text: type it in UTF-8.") from None
