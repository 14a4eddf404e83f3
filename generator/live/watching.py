"""Sees that something in a property folder was saved."""

import os
from pathlib import Path

State = dict[str, tuple[int, int, int]]


def files_of(folder: Path) -> State:
    """Return what tells one state of the files in a folder from another, hidden ones left out."""
    found: State = {}
    for here, folders, names in os.walk(folder, followlinks=False):
        folders[:] = [name for name in folders if not name.startswith(".")]
        for name in (*names, *folders):
            if name.startswith("."):
                continue
            try:
                seen = os.stat(os.path.join(here, name))  # noqa: PTH116, PTH118 - twenty times a second
            except OSError:
                continue
            found[f"{here}/{name}"] = (seen.st_mtime_ns, seen.st_size, seen.st_ino)
    return found
