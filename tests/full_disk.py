"""Disks that take no more: by a limit on the length of a file, and real ones."""

import os
import resource
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


@contextmanager
def files_up_to(size: int) -> Iterator[None]:
    """No file grows beyond so many bytes: what writes more is refused by the system.

    What is to be written under the limit is done once before it, so that Python has kept its
    compiled modules by then.
    """
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, before[1]))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)


def contents(folder: Path) -> dict[str, bytes | None]:
    """Every name below a folder, hidden ones too, with its bytes; None where it is no file."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() if path.is_file() else None
        for path in sorted(folder.rglob("*"))
    }


@contextmanager
def small_disk(folder: Path, size_kb: int) -> Iterator[bool]:
    """A disk of its own at `folder`; False where this system lets nobody here mount one."""
    folder.mkdir(exist_ok=True)
    options = ["mount", "-t", "tmpfs", "-o", f"size={size_kb}k", "none", str(folder)]
    mounted = os.geteuid() == 0 and not subprocess.run(options, capture_output=True).returncode
    try:
        yield mounted
    finally:
        if mounted:
            subprocess.run(["umount", str(folder)], check=True)


def resize(folder: Path, room_kb: int) -> None:
    """Leave so much room on the small disk at `folder`."""
    at = os.statvfs(folder)
    used_kb = (at.f_blocks - at.f_bfree) * at.f_frsize // 1024
    size = f"remount,size={used_kb + room_kb}k"
    subprocess.run(["mount", "-o", size, str(folder)], check=True)
