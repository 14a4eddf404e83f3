"""The mark of a site: that it is ours, whose land, which day, and every file as it was built.

Whatever else lies in the folder is somebody's own, and is never replaced with it.
"""

import datetime
import hashlib
import os
from collections.abc import Iterator, Mapping
from html import unescape
from pathlib import Path, PurePosixPath

from generator.book.model import Book
from generator.dataclass import dataclass

SITE_MARK = ".handbook-site"
MARK_TEXT = "Made by the handbook program, which replaces the files listed here and no others.\n"
_AS_OF = "As of "
OF = "Of "
LISTED = "Each file with its SHA-256:"
LONGEST_HEAD = 1000
# What systems leave in every folder that somebody looks into.
LEFT_BY_SYSTEMS = frozenset([".DS_Store", ".directory", "Thumbs.db", "desktop.ini"])
SHA256_DIGITS = 64


@dataclass(frozen=True, slots=True)
class Mark:
    """What the head of a mark says: the name of the land, and the day; None where it does not."""

    of: str | None
    as_of: datetime.date | None


def mark_site(site: Path, book: Book, digests: Mapping[str, str]) -> None:
    """Marks a finished site as ours, so that a later build may replace what this one wrote.

    `digests` are the SHA-256 of all its files, by their names.
    """
    head = f"{MARK_TEXT}{_AS_OF}{book.as_of.isoformat()}\n{OF}{unescape(book.title)}\n{LISTED}\n"
    lines = (f"{digest}  {name}\n" for name, digest in sorted(digests.items()))
    text = head + "".join(lines)
    (site / SITE_MARK).write_text(text, encoding="utf-8", newline="\n")


def mark_of(site: Path) -> Mark | None:
    """What the mark of a site of ours says; None where the folder has no mark of ours."""
    try:
        # a pipe of this name would keep whoever opens it waiting
        if not (site / SITE_MARK).is_file():
            return None
        with (site / SITE_MARK).open(encoding="utf-8", errors="replace") as mark:
            lines = mark.read(LONGEST_HEAD).splitlines()
    except OSError:
        return None
    return Mark(_said(lines, OF), _day(_said(lines, _AS_OF)))


def marks_in(books: Path) -> dict[str, Mark]:
    """What the marks of the sites in a folder say, by the names of the sites."""
    try:
        inside = sorted(books.iterdir()) if books.is_dir() else []
    except OSError:
        return {}
    marks = {folder.name: mark_of(folder) for folder in inside if folder.is_dir()}
    return {name: mark for name, mark in marks.items() if mark is not None}


def not_ours(site: Path) -> tuple[str, ...] | None:
    """What lies in a site of ours that its build did not write, or that was changed since.

    By name, in order; a folder ends in a slash and stands for all that is in it. None where the
    mark has no list, as those of earlier versions. Raises OSError where something cannot be read.
    """
    listed = _listed(site)
    if listed is None:
        return None
    folders = {str(folder) for name in listed for folder in PurePosixPath(name).parents}
    return tuple(sorted(_others(site, listed, folders)))


def digest_of(path: Path) -> str:
    """Return the SHA-256 of a file."""
    # read whole: a file of a site is small, and a buffer for each costs more than its reading
    return hashlib.sha256(path.read_bytes()).hexdigest()


def _said(lines: list[str], head: str) -> str | None:
    return next((line.removeprefix(head) for line in lines if line.startswith(head)), None)


def _day(text: str | None) -> datetime.date | None:
    try:
        return datetime.date.fromisoformat(text or "")
    except ValueError:
        return None


def _listed(site: Path) -> dict[str, str] | None:
    """The digest of each file that a mark lists, by name."""
    text = (site / SITE_MARK).read_text(encoding="utf-8", errors="replace")
    _, has_list, lines = text.partition(f"\n{LISTED}\n")
    if not has_list:
        return None
    return {line[SHA256_DIGITS + 2 :]: line[:SHA256_DIGITS] for line in lines.splitlines()}


def _others(site: Path, listed: dict[str, str], folders: set[str]) -> Iterator[str]:
    # by the system's own entries, which know what each is: a path asks it four times a file
    waiting = [("", str(site))]
    while waiting:
        above, folder = waiting.pop()
        with os.scandir(folder) as entries:
            for entry in entries:
                name = f"{above}{entry.name}"
                if name == SITE_MARK or (entry.name in LEFT_BY_SYSTEMS and not entry.is_dir()):
                    continue
                if entry.is_dir(follow_symlinks=False):
                    if name in folders:
                        waiting.append((f"{name}/", entry.path))
                    else:
                        yield f"{name}/"
                # a build writes files and folders alone: a link or a pipe is somebody's own
                elif not entry.is_file(follow_symlinks=False) or listed.get(name) != digest_of(
                    Path(entry.path)
                ):
                    yield name
