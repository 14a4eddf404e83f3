"""Puts a saved property folder beside what is there, as a new one."""

import os
from pathlib import Path

from generator.dataclass import dataclass
from generator.inventory.write import clear_unfinished, new_folder, one_writer
from generator.saved.gathered import NotSaved
from generator.saved.names import name_fault
from generator.saved.read_back import Contents, Head, contents_of, pieces_of, time_of


@dataclass(frozen=True, slots=True)
class Restored:
    """A folder that was put back, and of what and when the archive says that it is."""

    folder: Path
    head: Head
    file_count: int


def restore(archive: Path, into: Path) -> Restored:
    """Put what an archive holds into a new folder within another, whole or not at all.

    Raises NotSaved where the archive is none of ours or not as it was saved, and OSError where it
    cannot be read or the folder not written; nothing that is there already is changed.
    """
    with archive.open("rb") as file:
        contents = contents_of(file)
        # nobody else clears what this one has begun
        with one_writer(into):
            clear_unfinished(into, f"{contents.head.name}-saved-")
            number = 1
            while True:
                ending = f"-{number}" if number > 1 else ""
                folder = into / f"{contents.head.name}-saved-{contents.head.day}{ending}"
                number += 1
                try:
                    with new_folder(folder) as unfinished:
                        _unpack(contents, unfinished)
                except FileExistsError:
                    continue
                return Restored(folder, contents.head, len(contents.hashes))


def _unpack(contents: Contents, folder: Path) -> None:
    for name in contents.hashes:
        inside = contents.inside(name)
        # asked again at the last moment: of all that is unpacked, the path must not lead elsewhere
        if name_fault(inside) is not None:
            raise NotSaved(f"{name} {name_fault(inside)}.")
        path = folder / inside
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("xb") as target:
            for piece in pieces_of(contents, name):
                target.write(piece)
            target.flush()
            os.fsync(target.fileno())
        os.utime(path, (time_of(contents.packed.getinfo(name)),) * 2)
