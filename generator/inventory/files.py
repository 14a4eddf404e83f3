"""Files of a property folder, looked at before they are opened: what is no plain file never is.

A pipe would keep whoever opens it waiting, and a device can be read without an end.
"""

import stat
from pathlib import Path
from typing import Literal

from generator.dataclass import dataclass

What = Literal["file", "folder", "pipe", "device", "socket", "leads_nowhere", "closed"]
BYTES_IN_MB = 1_000_000
WHAT_WORDS: dict[What, str] = {
    "file": "is a file",
    "folder": "is a folder",
    "pipe": "is a pipe",
    "device": "is a device",
    "socket": "is a socket",
    "leads_nowhere": "is a link that leads nowhere",
    "closed": "cannot be opened",
}


@dataclass(frozen=True, slots=True)
class Hindered:
    """Why a file was not read: what stands there in its place, or None where it is too long."""

    what: What | None
    words: str


def what_is(path: Path) -> What:
    """Return what lies at a path, or at the end of a link there, without opening it."""
    try:
        mode = path.stat().st_mode
    except OSError:
        return "leads_nowhere" if is_link(path) else "closed"
    if stat.S_ISREG(mode):
        return "file"
    if stat.S_ISDIR(mode):
        return "folder"
    if stat.S_ISFIFO(mode):
        return "pipe"
    return "socket" if stat.S_ISSOCK(mode) else "device"


def is_link(path: Path) -> bool:
    """Return whether a link lies at a path."""
    try:
        return stat.S_ISLNK(path.lstat().st_mode)
    except OSError:
        return False


def content_of(path: Path, most_bytes: int) -> bytes | Hindered:
    """Return the bytes of a plain file of at most so many, or what hinders reading it."""
    # one more than may be: a file can grow between the look at it and the reading
    content = start_of(path, most_bytes, most_bytes + 1)
    if isinstance(content, Hindered) or len(content) <= most_bytes:
        return content
    return _too_long(len(content))


def start_of(path: Path, most_bytes: int, start_bytes: int) -> bytes | Hindered:
    """Return how a plain file of at most so many bytes starts, or what hinders reading it."""
    what = what_is(path)
    if what != "file":
        return Hindered(what, WHAT_WORDS[what])
    try:
        if (size := path.stat().st_size) > most_bytes:
            return _too_long(size)
        with path.open("rb") as file:
            return file.read(start_bytes)
    except OSError as error:
        return Hindered("closed", f"{WHAT_WORDS['closed']}: {error.strerror}")


def _too_long(size: int) -> Hindered:
    return Hindered(None, f"is {size / BYTES_IN_MB:.1f} MB long")
