"""Saves a property folder as one archive, and reads it back before it gets its name.

It is a plain zip: all files in a folder of the property's name, and beside it a list of their
SHA-256, in the form that checking tools read.
"""

import datetime
import hashlib
import zipfile
from pathlib import Path
from typing import BinaryIO

from generator.dataclass import dataclass
from generator.inventory.write import clear_unfinished, new_file, one_writer
from generator.saved.gathered import NotSaved, ToSave, gathered
from generator.saved.names import HASHES, MOST_GB, MOST_IN_ALL_BYTES, MOST_TIMES_PACKED
from generator.saved.read_back import PIECE_BYTES, Head, contents_of, pieces_of

# The earliest and the latest day that a file in an archive can have.
_FIRST_DAY = datetime.datetime(1980, 1, 1, tzinfo=datetime.UTC)
_LAST_DAY = datetime.datetime(2107, 12, 31, tzinfo=datetime.UTC)


@dataclass(frozen=True, slots=True)
class Saved:
    """An archive that was read back: where it is, what is in it, what is not."""

    archive: Path
    file_count: int
    size_bytes: int
    left_out: tuple[tuple[str, str], ...]


def save(folder: Path, into: Path, day: datetime.date) -> Saved:
    """Save a property folder as an archive in another folder, and return what was saved.

    Raises NotSaved where it cannot be saved, and OSError where something cannot be read or
    written; nothing is then left behind, and what was there stays.
    """
    place, ground = into.resolve(), folder.resolve()
    if place == ground or ground in place.parents:
        raise NotSaved(f"{into} lies in the property folder: save it to a place outside.")
    # nobody writes into it while it is read, and nobody else clears what this one has begun
    with one_writer(folder):
        found = gathered(folder)
        head = Head(ground.name, day)
        clear_unfinished(place, f"{head.name}-")
        number = 1
        while True:
            ending = f"-{number}" if number > 1 else ""
            archive = place / f"{head.name}-{day}{ending}.zip"
            number += 1
            if archive.exists() or archive.is_symlink():
                continue
            try:
                with new_file(archive) as file:
                    _write(folder, head, found, file)
                    size_bytes = file.seek(0, 2)
            except FileExistsError:
                continue
            return Saved(archive, len(found.names), size_bytes, found.left_out)


def _write(folder: Path, head: Head, found: ToSave, file: BinaryIO) -> None:
    hashes = _pack(folder, head, found, file, zipfile.ZIP_DEFLATED)
    with zipfile.ZipFile(file) as packed:
        sizes = [(member.file_size, member.compress_size) for member in packed.infolist()]
    if any(size > MOST_TIMES_PACKED * small for size, small in sizes):
        # so much alike in one file that unpacking would take it for a trap
        file.seek(0)
        file.truncate()
        hashes = _pack(folder, head, found, file, zipfile.ZIP_STORED)
    # from the disk, by the way back: what it refuses is no archive to rest on
    contents = contents_of(file)
    if contents.hashes != hashes:
        raise NotSaved("What was written does not read back as it was: nothing was saved.")
    for name in contents.hashes:
        for _ in pieces_of(contents, name):
            pass


def _pack(folder: Path, head: Head, found: ToSave, file: BinaryIO, method: int) -> dict[str, str]:
    """Pack all files, and return the SHA-256 of each by its name in the archive."""
    hashes: dict[str, str] = {}
    with zipfile.ZipFile(file, "w", method) as packed:
        for inside in found.names:
            path = folder / inside
            if path.stat().st_size > MOST_IN_ALL_BYTES:
                raise NotSaved(f"{path} is longer than {MOST_GB} GB: nothing was saved.")
            member = _member(f"{head.name}/{inside}", path.stat().st_mtime, method)
            digest = hashlib.sha256()
            with path.open("rb") as source, packed.open(member, "w", force_zip64=True) as target:
                while piece := source.read(PIECE_BYTES):
                    digest.update(piece)
                    target.write(piece)
            hashes[member.filename] = digest.hexdigest()
        listed = "".join(f"{digest}  {name}\n" for name, digest in hashes.items())
        packed.writestr(_member(HASHES, 0, method), f"{head.line()}\n{listed}")
    return hashes


def _member(name: str, seconds: float, method: int) -> zipfile.ZipInfo:
    when = datetime.datetime.fromtimestamp(max(0, seconds), datetime.UTC)
    when = min(max(when, _FIRST_DAY), _LAST_DAY)
    member = zipfile.ZipInfo(name, when.timetuple()[:6])
    member.compress_type = method
    # a plain file that its owner may write, on every system
    member.create_system, member.external_attr = 3, 0o100644 << 16
    return member
