"""One reader's book in one archive, to hand over: made whole, the same bytes for the same book."""

import datetime
import hashlib
import os
import zipfile
from collections.abc import Callable
from pathlib import Path

from generator.site.exchange import workshop
from generator.site.mark import mark_of, marks_in
from generator.site.publish import Leaking, Refused

# The comment of an archive of ours: this, and the SHA-256 of all that stands before it.
_OURS = b"Made by the handbook program. "
_DIGEST_BYTES = 64
_A_FILE = 0o100644


def archive_name(reader: str, as_of: datetime.date) -> str:
    """Return what the archive of a reader's book is called.

    >>> archive_name("hired-sprayer", datetime.date(2026, 8, 20))
    'handbook-hired-sprayer-2026-08-20.zip'
    """
    return f"handbook-{reader}-{as_of}.zip"


def refuse_place(into: Path, property_folder: Path) -> None:
    """Raise Refused where an archive must not lie: in a property folder or among built books."""
    place = Path(os.path.realpath(into))
    if not place.is_dir():
        raise Refused(f"{into} is no folder that is there; name one with --to.")
    ground = Path(os.path.realpath(property_folder))
    if place == ground or ground in place.parents:
        raise Refused(f"{into} lies in the property folder, which holds what you type alone.")
    if any(mark_of(folder) for folder in (place, *place.parents)):
        raise Refused(f"{into} lies in a built book, which a build replaces as a whole.")
    if marks_in(place):
        raise Refused(f"{into} holds built books; an archive there would be handed on with them.")


def pack(
    target: Path,
    reader: str,
    build: Callable[[Path], None],
    scan: Callable[..., str] | None = None,
) -> None:
    """Make an archive of a reader's book that `build` writes, its folder and any file beside it.

    `build` is handed the folder of the book, and raises what keeps it from being built. In the
    archive folder and file have the name of the archive. Until it is whole, and when killed at any
    moment, what was at `target` still stands. Raises Refused where something else lies there.
    `scan` looks at the finished archive and says what must not be in it, and Leaking is raised
    where it says something.
    """
    _refuse_other(target)
    with workshop(target) as folder:
        books = folder / "books"
        build(books / reader)
        made = folder / target.name
        _write(made, books, reader, target.stem)
        if scan is not None and (leaks := scan(made)):
            raise Leaking(leaks)
        # something may have been put there meanwhile
        _refuse_other(target)
        made.replace(target)


def _refuse_other(target: Path) -> None:
    if (target.exists() or target.is_symlink()) and not _is_ours(target):
        raise Refused(
            f"{target} is there already, and not as this program left it: move it out of the way."
        )


def _is_ours(target: Path) -> bool:
    if target.is_symlink() or not target.is_file():
        return False
    whole = target.read_bytes()
    before, digest = whole[:-_DIGEST_BYTES], whole[-_DIGEST_BYTES:]
    return before.endswith(_OURS) and hashlib.sha256(before).hexdigest().encode() == digest


def _write(archive: Path, books: Path, reader: str, name: str) -> None:
    """Write all that stands in a folder, in order, a name in the place of its reader's."""
    files = {path.relative_to(books).as_posix(): path for path in books.rglob("*")}
    with zipfile.ZipFile(archive, "w") as packed:
        for address, file in sorted(files.items()):
            if file.is_file():
                # unpacked beside an older book, it never lies among the older one's files
                packed.writestr(_entry(f"{name}{address.removeprefix(reader)}"), file.read_bytes())
        packed.comment = _OURS + b"0" * _DIGEST_BYTES
    whole = archive.read_bytes()[:-_DIGEST_BYTES]
    archive.write_bytes(whole + hashlib.sha256(whole).hexdigest().encode())


def _entry(name: str) -> zipfile.ZipInfo:
    # neither the clock, nor the system, nor who packed it shows in the archive
    entry = zipfile.ZipInfo(name)
    entry.create_system = 3
    entry.external_attr = _A_FILE << 16
    entry.compress_type = zipfile.ZIP_DEFLATED
    return entry
