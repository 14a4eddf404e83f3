"""Looks into what holds other things: gz, zip and xlsx, pictures, base64 in a page; and escapes.

What is found is searched and nothing else; nothing is written.
"""

import base64
import binascii
import gzip
import io
import re
import zipfile
import zlib
from collections.abc import Iterator
from functools import cache
from html import unescape

_GZIP, _ZIP, _PNG, _ZLIB = b"\x1f\x8b", b"PK\x03\x04", b"\x89PNG\r\n\x1a\n", b"\x78"
DEEPEST = 6
# What is shorter holds no more than a word.
_SHORTEST_BASE64 = 16
_BASE64_HEADS = (b"base64", b"atob")
_BASE64 = re.compile(rb"[A-Za-z0-9+/_-]{%d,}={0,2}" % _SHORTEST_BASE64)
_PNG_TEXT = (b"tEXt", b"iTXt", b"zTXt", b"eXIf")
_ENTITY = re.compile(rb"&(?:#[0-9]{1,7}|#[xX][0-9a-fA-F]{1,6}|[A-Za-z][A-Za-z0-9]{1,31});")
_TIMES_ESCAPED = 3
_IN_JSON = re.compile(rb"\\(?:u([0-9a-fA-F]{4})|(.))", re.DOTALL)
_IN_ADDRESS = re.compile(rb"%([0-9a-fA-F]{2})")
_FOLD = re.compile(rb"\r?\n[ \t]")
_LETTERS = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b" ", b"f": b" "}


class NotReadable(Exception):  # noqa: N818 - what could not be searched, not an error of ours
    """Something that looks like a container and cannot be looked into."""


def opened(name: str, data: bytes, deep: int = 0) -> Iterator[tuple[str, bytes]]:
    """Yield all that lies in a file, then the file, each with a name that says where.

    Raises NotReadable where something inside cannot be looked into.
    """
    if deep == DEEPEST:
        raise NotReadable(f"{name} holds more containers within containers than are looked into")
    try:
        inside = list(_inside(name, data))
    except (OSError, EOFError, zlib.error, zipfile.BadZipFile, RuntimeError) as wrong:
        raise NotReadable(f"{name} cannot be looked into: {wrong}") from None
    for inner, content in inside:
        yield from opened(inner, content, deep + 1)
    yield name, data


def _inside(name: str, data: bytes) -> Iterator[tuple[str, bytes]]:
    if data.startswith(_GZIP):
        yield name, gzip.decompress(data)
    elif data.startswith(_ZIP):
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            yield f"{name}, its names", _names_in(archive)
            for member in archive.infolist():
                yield f"{name}, {member.filename}", archive.read(member)
    elif data.startswith(_PNG):
        yield from ((f"{name}, its text", text) for text in _png_texts(data))


def _names_in(archive: zipfile.ZipFile) -> bytes:
    told = [archive.comment]
    for member in archive.infolist():
        told += [member.filename.encode(errors="replace"), member.comment, member.extra]
    return b"\n".join(told)


def _png_texts(data: bytes) -> Iterator[bytes]:
    at = len(_PNG)
    while at + 8 <= len(data):
        length, kind = int.from_bytes(data[at : at + 4]), data[at + 4 : at + 8]
        chunk = data[at + 8 : at + 8 + length]
        if kind in _PNG_TEXT:
            # packed text follows its keyword; where it begins differs by kind
            packed = (
                chunk[start:] for start in range(len(chunk)) if chunk[start : start + 1] == _ZLIB
            )
            yield b"\n".join([chunk, *filter(None, map(_unpacked, packed))])
        at += 12 + length


def _unpacked(data: bytes) -> bytes:
    try:
        return zlib.decompress(data)
    except zlib.error:
        return b""


def from_base64(text: bytes) -> Iterator[bytes]:
    """Yield what stands in a text in base64, as a page has pictures and scripts have data."""
    if not any(head in text for head in _BASE64_HEADS):
        return
    for found in _BASE64.finditer(text):
        letters = found[0].rstrip(b"=").translate(bytes.maketrans(b"-_", b"+/"))
        try:
            content = base64.b64decode(letters + b"=" * (-len(letters) % 4))
        except binascii.Error:
            continue
        yield content
        if content.startswith(_ZLIB):
            yield _unpacked(content)
        elif not content.startswith((_GZIP, _ZIP)):
            yield _unpacked_bare(content)


def _unpacked_bare(data: bytes) -> bytes:
    """Return what packed data without a head holds, nothing where it is not packed."""
    try:
        return zlib.decompressobj(-zlib.MAX_WBITS).decompress(data)
    except zlib.error:
        return b""


def readings(data: bytes) -> Iterator[bytes]:
    """Yield a text as each of those who may read it does: a browser, a script, an address."""
    yield from _readings(data)
    # lines of a calendar that go on in the next
    if b"\r\n " in data:
        yield from _readings(_FOLD.sub(b"", data))


def _readings(data: bytes) -> Iterator[bytes]:
    plain = data
    for _ in range(_TIMES_ESCAPED):
        decoded = _ENTITY.sub(_character, plain) if b"&" in plain else plain
        if decoded == plain:
            break
        # a page within a page is escaped with all that was escaped in it
        plain = decoded
    yield plain
    # lines that read otherwise, and no others again
    escaped = _lines_with(b"\\", plain)
    if escaped:
        yield _IN_JSON.sub(_escaped, escaped)
    encoded = _lines_with(b"%", plain)
    if _IN_ADDRESS.search(encoded):
        yield _IN_ADDRESS.sub(lambda found: bytes([int(found[1], 16)]), encoded)


def _lines_with(mark: bytes, text: bytes) -> bytes:
    if mark not in text:
        return b""
    return b"\n|\n".join([line for line in text.split(b"\n") if mark in line])


def _character(found: re.Match[bytes]) -> bytes:
    return _of_entity(found[0])


@cache
def _of_entity(entity: bytes) -> bytes:
    return unescape(entity.decode("ascii")).encode(errors="replace")


def _escaped(found: re.Match[bytes]) -> bytes:
    if found[1] is not None:
        return chr(int(found[1], 16)).encode(errors="replace")
    return _LETTERS.get(found[2], found[2])
