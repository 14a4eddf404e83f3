"""Reads an archive, from wherever it is, and trusts nothing that it says of itself.

What it holds is looked at before a byte is unpacked, and each file is read no further than the
length it claims, against its SHA-256.
"""

import datetime
import hashlib
import re
import struct
import zipfile
import zlib
from collections.abc import Iterator
from typing import BinaryIO

from generator.dataclass import dataclass
from generator.saved.gathered import NotSaved
from generator.saved.names import (
    HASHES,
    MOST_GB,
    MOST_IN_ALL_BYTES,
    MOST_SAVED,
    MOST_TIMES_PACKED,
    name_fault,
)

PIECE_BYTES = 1 << 20
_HEAD = re.compile(r"# saved by the handbook program, form 1, on (\d{4}-\d\d-\d\d): (.+)")
_LISTED = re.compile(r"([0-9a-f]{64})  (.+)")
# A line of the list for each file, none longer than a name can be.
_LONGEST_LIST_BYTES = MOST_SAVED * 1000
_LINK, _KIND = 0o120000, 0o170000
_PLAIN_FILE = 0o100000
_ENCRYPTED = 0x1
# What a damaged archive makes of its reader.
_DAMAGED = (
    *(zipfile.BadZipFile, zlib.error, struct.error, EOFError, OSError, ValueError),
    *(NotImplementedError, RuntimeError),
)
_METHODS = (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED)
NOT_OURS = "it is no archive that handbook save wrote"


@dataclass(frozen=True, slots=True)
class Head:
    """Of which folder an archive is, and of which day."""

    name: str
    day: datetime.date

    def line(self) -> str:
        """Return what stands above the hashes; tools that check them pass it over."""
        return f"# saved by the handbook program, form 1, on {self.day}: {self.name}"


@dataclass(frozen=True, slots=True)
class Contents:
    """What an archive holds: its head, and each file with its SHA-256, by its name in it."""

    head: Head
    hashes: dict[str, str]
    packed: zipfile.ZipFile

    def inside(self, name: str) -> str:
        """Return a file's path from the property folder."""
        return name.removeprefix(f"{self.head.name}/")


def contents_of(file: BinaryIO) -> Contents:
    """Return what an archive holds. Raises NotSaved where it is none of ours, or not as it was."""
    try:
        packed = zipfile.ZipFile(file)
        members = packed.infolist()
        _refuse_members(members, file.seek(0, 2))
        listed = _read_list(packed)
    except _DAMAGED as wrong:
        raise NotSaved(f"{NOT_OURS}, or it was damaged: {wrong}.") from None
    head, hashes = _hashes(listed)
    names = {member.filename for member in members} - {HASHES}
    if names != hashes.keys():
        one = min(names ^ hashes.keys())
        lacks = "its list does not name" if one in names else "it lacks"
        raise NotSaved(f"it is not as it was saved: {lacks} {one}.")
    outside = [name for name in names if not name.startswith(f"{head.name}/")]
    if outside:
        raise NotSaved(f"{NOT_OURS}: {min(outside)} lies outside its folder {head.name}.")
    return Contents(head, hashes, packed)


def pieces_of(contents: Contents, name: str) -> Iterator[bytes]:
    """Yield a file of an archive piece by piece.

    Raises NotSaved at its end, where it is not what its SHA-256 says, or as soon as it is longer
    than it claims.
    """
    digest, left_bytes = hashlib.sha256(), contents.packed.getinfo(name).file_size
    try:
        with contents.packed.open(name) as source:
            while piece := source.read(min(PIECE_BYTES, left_bytes + 1)):
                left_bytes -= len(piece)
                if left_bytes < 0:
                    raise NotSaved(f"it is not as it was saved: {name} is longer than it claims.")
                digest.update(piece)
                yield piece
    except _DAMAGED as wrong:
        raise NotSaved(f"it was damaged: {name} cannot be unpacked: {wrong}.") from None
    if digest.hexdigest() != contents.hashes[name]:
        raise NotSaved(f"it is not as it was saved: {name} is not what its SHA-256 says.")


def time_of(member: zipfile.ZipInfo) -> float:
    """Return when a file was changed last, in seconds. Raises ValueError where no such day is."""
    return datetime.datetime(*member.date_time, tzinfo=datetime.UTC).timestamp()


def _refuse_members(members: list[zipfile.ZipInfo], archive_bytes: int) -> None:
    """Raise NotSaved for whatever no archive of ours has, before anything is unpacked."""
    if len(members) > MOST_SAVED + 1:
        raise NotSaved(f"it holds {len(members)} files, and at most {MOST_SAVED} are put back.")
    if sum(member.file_size for member in members) > MOST_IN_ALL_BYTES:
        raise NotSaved(f"it holds more than {MOST_GB} GB.")
    if sum(member.compress_size for member in members) > archive_bytes:
        raise NotSaved("files in it lie over each other, as in a trap.")
    seen: set[str] = set()
    for member in members:
        fault = name_fault(member.filename) or _member_fault(member)
        if fault is not None:
            raise NotSaved(f"{member.filename} in it {fault}.")
        if member.filename.casefold() in seen:
            raise NotSaved(f"{member.filename} stands in it twice.")
        seen.add(member.filename.casefold())


def _member_fault(member: zipfile.ZipInfo) -> str | None:
    kind = (member.external_attr >> 16) & _KIND
    if kind == _LINK:
        return "is a link"
    if kind not in (0, _PLAIN_FILE):
        return "is no plain file"
    try:
        time_of(member)
    except ValueError:
        return "is of a day that there is not"
    if member.flag_bits & _ENCRYPTED:
        return "is locked with a password"
    if member.compress_type not in _METHODS:
        return "is packed in a way that is not read"
    if member.file_size > MOST_TIMES_PACKED * member.compress_size:
        return f"is more than {MOST_TIMES_PACKED} times as long as it is packed, as in a trap"
    return None


def _read_list(packed: zipfile.ZipFile) -> str:
    if HASHES not in packed.namelist():
        raise NotSaved(f"{NOT_OURS}: it has no list {HASHES}.")
    if packed.getinfo(HASHES).file_size > _LONGEST_LIST_BYTES:
        raise NotSaved(f"its list {HASHES} is too long.")
    with packed.open(HASHES) as listed:
        return listed.read(_LONGEST_LIST_BYTES).decode()


def _hashes(listed: str) -> tuple[Head, dict[str, str]]:
    first, *lines = listed.removesuffix("\n").split("\n")
    head = _HEAD.fullmatch(first)
    found = [_LISTED.fullmatch(line) for line in lines]
    if head is None or name_fault(head[2]) is not None or "/" in head[2] or not all(found):
        raise NotSaved(f"{NOT_OURS}: its list {HASHES} does not read as one.")
    try:
        day = datetime.date.fromisoformat(head[1])
    except ValueError:
        raise NotSaved(f"{NOT_OURS}: its list names no day.") from None
    return Head(head[2], day), {line[2]: line[1] for line in found if line is not None}
