"""Puts a finished site in a folder's place whole, and clears away what killed builds left.

Beside the target stands, while a build runs, one hidden folder of ours: the workshop. Its mark
file is locked as long as the build lives, so a workshop nobody holds is a killed build's.
"""

import ctypes
import os
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from glob import escape
from pathlib import Path

from generator.site.mark import SITE_MARK

try:
    import fcntl
except ImportError:  # Windows refuses to remove an open file, which serves as well as a lock.
    fcntl = None  # type: ignore[assignment]  # a module elsewhere

WORKSHOP_MARK = ".handbook-workshop"
WORKSHOP_TEXT = "Made by the handbook program, which removes this folder when it is done.\n"
_HERE = -100  # AT_FDCWD: paths count from the working folder
_EXCHANGE = 2  # RENAME_EXCHANGE


@contextmanager
def workshop(target: Path) -> Iterator[Path]:
    """An empty folder beside `target` to build in; gone afterwards, whatever happens.

    What killed builds for the same target left is cleared first, and an exchange that one of
    them did not finish is undone.
    """
    _repair(target)
    folder = Path(tempfile.mkdtemp(prefix=_prefix(target), dir=target.parent))
    try:
        with (folder / WORKSHOP_MARK).open("w", encoding="utf-8") as mark:
            if fcntl:
                fcntl.flock(mark, fcntl.LOCK_EX)
            mark.write(WORKSHOP_TEXT)
            mark.flush()
            yield folder
    finally:
        _clear(folder)


def exchange(site: Path, target: Path, old: Path) -> None:
    """Puts `site` where `target` is; what was there, if anything, becomes `old`."""
    if not target.exists():
        site.rename(target)
    elif exchange_at_once(site, target):
        # at `site` there is now what was replaced
        site.rename(old)
    else:
        target.rename(old)
        try:
            site.rename(target)
        except OSError:
            old.rename(target)
            raise


def exchange_at_once(one: Path, other: Path) -> bool:
    """Exchanges two folders in one step; False, with nothing done, where the system cannot."""
    try:
        rename = ctypes.CDLL(None, use_errno=True).renameat2
    except (OSError, AttributeError, TypeError):
        return False
    done: int = rename(_HERE, os.fsencode(one), _HERE, os.fsencode(other), _EXCHANGE)
    return done == 0


def _repair(target: Path) -> None:
    for folder in sorted(target.parent.glob(f"{escape(_prefix(target))}*")):
        if folder.is_symlink() or not folder.is_dir():
            continue
        # killed before it had its mark; nothing was in it
        if not any(folder.iterdir()):
            folder.rmdir()
        elif _is_abandoned(folder):
            # killed between two renames: the last good site lies in here
            if not target.exists() and (folder / "old" / SITE_MARK).is_file():
                (folder / "old").rename(target)
            _clear(folder)


def _is_abandoned(folder: Path) -> bool:
    """Whether `folder` is a workshop whose build is no longer alive."""
    mark = folder / WORKSHOP_MARK
    if mark.is_symlink() or not mark.is_file():
        return False
    try:
        with mark.open(encoding="utf-8") as held:
            if fcntl:
                fcntl.flock(held, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True


def _clear(folder: Path) -> None:
    """Removes a workshop, its mark last: one that is killed halfway is still known as ours."""
    for path in folder.iterdir():
        if path.name == WORKSHOP_MARK:
            continue
        if path.is_dir() and not path.is_symlink():
            shutil.rmtree(path, ignore_errors=True)
        else:
            with suppress(OSError):
                path.unlink()
    if {path.name for path in folder.iterdir()} <= {WORKSHOP_MARK}:
        shutil.rmtree(folder, ignore_errors=True)


def _prefix(target: Path) -> str:
    return f".{target.name}.building-"
