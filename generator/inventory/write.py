"""The only part that writes into a property folder: new files, never over an old one."""

import os
import shutil
import threading
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from glob import escape
from pathlib import Path
from typing import BinaryIO

try:
    import fcntl
except ImportError:  # Windows: writers are not kept apart, and still never write over each other
    fcntl = None  # type: ignore[assignment]  # a module elsewhere

UNFINISHED = ".unfinished"


def write_new_folder(folder: Path, files: Mapping[str, bytes]) -> None:
    """Make a folder that is not there yet, with the files in it, whole or not at all.

    Raises FileExistsError where the folder stands already, and OSError where it cannot be made;
    nothing is ever overwritten, and nothing that was begun is left behind.
    """
    with new_folder(folder) as unfinished:
        for name, content in files.items():
            path = unfinished / name
            path.parent.mkdir(exist_ok=True)
            path.write_bytes(content)


@contextmanager
def new_folder(folder: Path) -> Iterator[Path]:
    """Give an empty folder that gets the name of a new one once it is filled, whole or not at all.

    Raises and leaves nothing behind as `write_new_folder` does.
    """
    if folder.exists() or folder.is_symlink():
        raise FileExistsError(folder)
    with _removed_if_it_fails(folder.parent):
        if not folder.parent.exists():
            folder.parent.mkdir(parents=True)
        # beside its place, so on the same disk: only there a rename is whole or not at all
        unfinished = folder.parent / f".{folder.name}.{os.getpid()}{UNFINISHED}"
        try:
            unfinished.mkdir()
            yield unfinished
            # an empty one that came meanwhile would be taken by the rename
            if folder.exists() or folder.is_symlink():
                raise FileExistsError(folder)
            unfinished.rename(folder)
        finally:
            shutil.rmtree(unfinished, ignore_errors=True)


@contextmanager
def _removed_if_it_fails(folder: Path) -> Iterator[None]:
    """Remove a folder and those above it where they were not there and nothing came of it."""
    new = [path for path in (folder, *folder.parents) if not path.exists()]
    try:
        yield
    except BaseException:  # an interrupt too must leave nothing behind
        # only empty folders go: what somebody else put there meanwhile stays
        with suppress(OSError):
            for path in new:
                path.rmdir()
        raise


@contextmanager
def one_writer(folder: Path) -> Iterator[None]:
    """Keep other writers of a property folder waiting; a killed writer keeps nobody waiting."""
    if fcntl is None:
        yield
        return
    # the folder itself, so that no file of a lock is left behind in it
    held = os.open(folder, os.O_RDONLY)
    try:
        fcntl.flock(held, fcntl.LOCK_EX)
        yield
    finally:
        os.close(held)


def write_new_file(path: Path, content: bytes) -> None:
    """Put a new file in its place whole, its folder too where that is missing.

    It is written under a name that is never read, and gets its own once all of it is on the disk:
    killed at any moment, the file is there whole or not at all. Raises FileExistsError where the
    name is taken; what has it stays as it is. Raises OSError where it cannot be written, and then
    leaves nothing behind.
    """
    with new_file(path) as file:
        file.write(content)


@contextmanager
def new_file(path: Path) -> Iterator[BinaryIO]:
    """Give a file to write, and to read back, that gets its name at the end of the block.

    Raises and leaves nothing behind as `write_new_file` does, whatever the block raises too.
    """
    writer = f"{os.getpid()}-{threading.get_ident()}"
    unfinished = path.parent / f".{path.name}.{writer}{UNFINISHED}"
    with _removed_if_it_fails(path.parent):
        path.parent.mkdir(exist_ok=True)
        unfinished.unlink(missing_ok=True)  # of a killed writer that had the same number
        try:
            with unfinished.open("x+b") as file:
                yield file
                file.flush()
                # before it gets its name: a loss of power could leave the name on an empty file
                os.fsync(file.fileno())
            _name(unfinished, path)
        finally:
            unfinished.unlink(missing_ok=True)
    _settle(path.parent)


def clear_unfinished(folder: Path, begun: str = "") -> None:
    """Remove what killed writers left in a folder; for who keeps other writers waiting.

    `begun` is how the names begin that what they were to write would have had.
    """
    for path in folder.glob(f".{escape(begun)}*{UNFINISHED}"):
        if path.is_dir() and not path.is_symlink():
            shutil.rmtree(path, ignore_errors=True)
        else:
            path.unlink(missing_ok=True)


def _name(unfinished: Path, path: Path) -> None:
    """Give a finished file its name, unless another has it."""
    try:
        # a rename would take the place of a file of that name without a word
        os.link(unfinished, path)
    except FileExistsError:
        raise
    except OSError:  # a disk without second names for a file, as memory sticks are
        if path.exists():
            raise FileExistsError(path) from None
        unfinished.rename(path)


def _settle(folder: Path) -> None:
    """See that a new name in a folder outlives a loss of power, where the system can."""
    if fcntl is None:
        return
    held = os.open(folder, os.O_RDONLY)
    try:
        with suppress(OSError):  # the file is there all the same
            os.fsync(held)
    finally:
        os.close(held)
