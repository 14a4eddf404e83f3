"""The one KML file in a packed one; what could swell, or hides something, is refused."""

import io
import struct
import zipfile
import zlib

from generator.inventory import shape_faults as say
from generator.inventory.shape_found import UnreadableShapesError

_MAIN = "doc.kml"
_PLAIN_PACKING = (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED)
_ENCRYPTED = 0x1  # the flag of an entry that asks for a password


def kml_in(content: bytes) -> bytes:
    """Return the KML file in an archive; raises UnreadableShapesError where there is none."""
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            entry = _entry_of(archive.infolist())
            _check(entry)
            with archive.open(name=entry, mode="r") as packed:
                # one byte more than may be: what an entry says of its size may be a lie
                inside = packed.read(say.MOST_SHAPE_BYTES + 1)
    except UnreadableShapesError:
        raise
    # what a damaged archive makes the library say
    except (
        zipfile.BadZipFile, zlib.error, OSError, EOFError, RuntimeError, ValueError, KeyError,
        IndexError, OverflowError, struct.error,
    ):  # fmt: skip
        raise UnreadableShapesError(say.bad_archive("the packed file is broken")) from None
    if len(inside) > say.MOST_SHAPE_BYTES:
        raise _too_large()
    return inside


def _entry_of(entries: list[zipfile.ZipInfo]) -> zipfile.ZipInfo:
    if len(entries) > say.MOST_ENTRIES:
        raise UnreadableShapesError(
            say.too_much(f"{len(entries)} files are packed in it", f"at most {say.MOST_ENTRIES}")
        )
    there = [entry for entry in entries if entry.filename.casefold().endswith(".kml")]
    main = [entry for entry in there if entry.filename.casefold() == _MAIN]
    chosen = main or there
    if len(chosen) == 1:
        return chosen[0]
    what = f"{len(chosen)} KML files are packed in it" if chosen else "no KML file is packed in it"
    raise UnreadableShapesError(say.bad_archive(what))


def _check(entry: zipfile.ZipInfo) -> None:
    if entry.flag_bits & _ENCRYPTED or entry.compress_type not in _PLAIN_PACKING:
        what = "its KML file is locked, or packed in a way that is not read"
        raise UnreadableShapesError(say.bad_archive(what))
    if entry.file_size > say.MOST_SHAPE_BYTES:
        raise _too_large()
    if entry.file_size > say.MOST_TIMES_AS_LARGE * max(entry.compress_size, 1):
        what = f"its KML file is more than {say.MOST_TIMES_AS_LARGE} times as large unpacked"
        raise UnreadableShapesError(say.too_much(what, "a file as a program packs it"))


def _too_large() -> UnreadableShapesError:
    most_mb = say.MOST_SHAPE_BYTES // 1_000_000
    return UnreadableShapesError(say.too_much("its KML file is too large", f"at most {most_mb} MB"))
