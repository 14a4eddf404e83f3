"""Takes a book all the way to a site in its folder, or leaves the folder as it was."""

import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from generator.book.model import Book
from generator.site.build import built
from generator.site.exchange import exchange, workshop
from generator.site.mark import SITE_MARK, not_ours
from generator.site.one_file import file_beside, is_as_written

NAMED = 3


class Refused(Exception):  # noqa: N818 - a refusal, not an error
    """The target must not be written to; the message is one sentence for the user."""


class NotWritten(Refused):
    """The target may be written to and cannot be, as on a full disk."""


class Leaking(Exception):  # noqa: N818 - what a book holds, not an error
    """A book holds what its reader may not see; the message says what, whose and what to do."""


def publish(
    book: Book,
    target: Path,
    property_folder: Path | None = None,
    scan: Callable[..., str] | None = None,
) -> tuple[str, ...]:
    """Builds the site of `book` and puts it where `target` is, whole; returns the problems.

    Beside it goes the same book as one file, which has the folder's name with the ending .html:
    whoever keeps either finds it again after the next build under the same name. With problems,
    and when killed at any moment, what was at `target` still stands. Raises Refused where `target`
    holds something that no build wrote, or is the property folder, inside it or around it, and
    NotWritten where the system says that it cannot be written. `scan` looks at the finished folder
    and file and says what must not be in them, and Leaking is raised where it says something; the
    owner's own book goes without.
    """
    target = target.absolute()
    with _told(target):
        _refuse_unfit(target, property_folder)
        target.parent.mkdir(parents=True, exist_ok=True)
        with workshop(target) as folder:
            one_file = file_beside(folder / "build" / target.name)
            problems = built(book, folder / "build", folder / "site", one_file)
            if not problems:
                if scan is not None and (leaks := scan(folder / "site", one_file)):
                    raise Leaking(leaks)
                # Something may have been put there meanwhile, or a repair put the old site back.
                _refuse_unfit(target, property_folder)
                _refuse_lost(target)
                _refuse_other_file(file_beside(target))
                exchange(folder / "site", target, folder / "old")
                one_file.replace(file_beside(target))
            return problems


def refuse_at_once(target: Path, property_folder: Path | None = None) -> None:
    """Raises, before any work, what `publish` would raise for a target as it stands now.

    Nothing is written to find out, so a disk that is full is told by `publish` alone.
    """
    target = target.absolute()
    with _told(target):
        _refuse_unfit(target, property_folder)
        _refuse_lost(target)
        _refuse_other_file(file_beside(target))
        # not there is fine; what else the system says of the name, such as too long, is told now
        with suppress(FileNotFoundError):
            target.lstat()
        above = next(folder for folder in target.parents if folder.exists())
        if not above.is_dir():
            raise NotADirectoryError
        if not os.access(above, os.W_OK | os.X_OK):
            raise NotWritten(f"{target} cannot be written: {above} takes no new folder.")


@contextmanager
def _told(target: Path) -> Iterator[None]:
    """Turns what the system refuses into a sentence about the target."""
    try:
        yield
    except (FileExistsError, NotADirectoryError) as error:
        raise NotWritten(f"{target} cannot be written: a part of it is no folder.") from error
    except OSError as error:
        if error.errno is None:  # a part of the program is missing; the message says so
            raise
        raise NotWritten(f"{target} cannot be written: {error.strerror}.") from error


def _refuse_unfit(target: Path, property_folder: Path | None) -> None:
    # first of all: a link that leads nowhere does not exist, and would be taken for a new folder
    if target.is_symlink():
        raise Refused(f"{target} is a link to another place; give the place itself.")
    if property_folder is not None:
        # Unlike Path.resolve, this takes links that lead round in a circle.
        place, ground = (Path(os.path.realpath(path)) for path in (target, property_folder))
        if place == ground or ground in place.parents:
            raise Refused(f"{target} lies in the property folder, which a build never changes.")
        if place in ground.parents:
            raise Refused(f"{target} holds the property folder and would be replaced as a whole.")
    if not target.exists():
        return
    if not target.is_dir():
        raise Refused(f"{target} is a file, not a folder.")
    if not any(target.iterdir()):
        return
    if not (target / SITE_MARK).is_file():
        raise Refused(f"{target} holds something else; give an empty or a new folder.")


def _refuse_other_file(file: Path) -> None:
    """Refuses to replace what stands where the book goes as one file, and is not as we wrote it."""
    if file.is_symlink() or (file.exists() and not (file.is_file() and is_as_written(file))):
        raise Refused(
            f"{file} is where the book goes as one file, and no build wrote it as it is; move it "
            "and build again."
        )


def _refuse_lost(target: Path) -> None:
    """Refuses to replace a site of ours with what somebody put into it, or changed.

    Every file is read for that, so it is asked before any work and before the exchange alone.
    """
    if not (target / SITE_MARK).is_file():
        return
    others = not_ours(target)
    if others is None:
        raise Refused(
            f"{target} is of an earlier version, whose mark does not list what it wrote: take out "
            "what is yours, delete the folder and build again."
        )
    if others:
        more = f" and {len(others) - NAMED} more" if len(others) > NAMED else ""
        raise Refused(
            f"{target} holds what no build wrote, or what was changed since: "
            f"{', '.join(others[:NAMED])}{more}; move it out of that folder and build again."
        )
