"""From the bytes of a file to its text: which encodings are read, and how others are named."""

from __future__ import annotations

import re

from generator.inventory.problems import Problem, Sentence

MOST_BYTES = 5_000_000
_SHOWN_FAULTS = 20

_SAVE_AS_UTF8 = "save it again as UTF-8 (Save As, Encoding: UTF-8)"
_PLAIN_TEXT = "a plain text file, typed in a text editor and saved as UTF-8"
_SIGNATURES = (
    (b"PK\x03\x04", "a spreadsheet, word-processor or zip file"),
    (b"\xd0\xcf\x11\xe0", "an old spreadsheet or word-processor file"),
    (b"{\\rtf", "a word-processor file (rich text)"),
    (b"%PDF", "a PDF"),
    (b"\x1f\x8b", "a packed file (gzip)"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"<!doctype html", "a web page"),
    (b"<html", "a web page"),
    (b"<?xml", "an XML file"),
)
# Line ends and tabs are the only control characters in a text file. The separators of Unicode and
# a mark in the middle are here because editors do not show them, while YAML breaks lines at some.
_CONTROL = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff\ud800-\udfff]"
)


def read_text(raw: bytes, file: str) -> tuple[str | None, tuple[Problem, ...]]:
    """The text of a file with line ends as `\\n` and without byte order mark.

    UTF-8 and UTF-16 are read. Characters that cannot be seen become U+FFFD, each a problem; text
    is None where the bytes cannot be read as text at all.
    """
    refused = _too_large(raw) or _other_kind(raw)
    if refused:
        return None, (refused.at(file, 1, 1),)
    decoded = _decoded(raw, file)
    if isinstance(decoded, Problem):
        return None, (decoded,)
    text = decoded.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    controls = [found.start() for found in _CONTROL.finditer(text)]
    # a few are slips, each told at its place; so many are no text at all
    if len(controls) * 10 > len(text):
        return None, (Sentence("F002", "this is not text", _PLAIN_TEXT).at(file, 1, 1),)
    return _CONTROL.sub("\ufffd", text), _control_problems(text, controls, file)


def is_control(text: str) -> bool:
    """Whether the text holds a character that no text file should."""
    return _CONTROL.search(text) is not None


def place_in(text: str, offset: int) -> tuple[int, int]:
    """Line and column, both 1-based, of a character in text whose line ends are `\\n`."""
    begin = text.rfind("\n", 0, offset) + 1
    return text.count("\n", 0, offset) + 1, offset - begin + 1


def _too_large(raw: bytes) -> Sentence | None:
    if len(raw) <= MOST_BYTES:
        return None
    return too_long(f"is {len(raw) / 1_000_000:.1f} MB long")


def too_long(words: str) -> Sentence:
    """A file longer than any list that is typed by hand."""
    return Sentence("F001", f"the file {words}", "at most 5 MB; split it into several")


def _other_kind(raw: bytes) -> Sentence | None:
    start = raw[:64].removeprefix(b"\xef\xbb\xbf").lstrip().lower()
    for signature, kind in _SIGNATURES:
        if start.startswith(signature.lower()):
            return Sentence("F002", f"this is {kind}, not a text file", _PLAIN_TEXT)
    return None


def _decoded(raw: bytes, file: str) -> str | Problem:
    # before UTF-16, whose mark is the beginning of this one
    if raw.startswith((b"\xff\xfe\x00\x00", b"\x00\x00\xfe\xff")):
        return Sentence("F004", "the file is in UTF-32", _SAVE_AS_UTF8).at(file, 1, 1)
    if raw.startswith(b"\xff\xfe"):
        return _utf16(raw[2:], "utf-16-le", file)
    if raw.startswith(b"\xfe\xff"):
        return _utf16(raw[2:], "utf-16-be", file)
    unmarked = _unmarked_utf16(raw)
    if unmarked:
        return _utf16(raw, unmarked, file)
    if _looks_like_utf32(raw):
        return Sentence("F004", "the file is in UTF-32", _SAVE_AS_UTF8).at(file, 1, 1)
    return _utf8(raw, file)


def _unmarked_utf16(raw: bytes) -> str | None:
    """The byte order of UTF-16 without mark, where every second byte is nearly always 0."""
    pairs = len(raw) // 2
    if pairs < 2 or len(raw) % 2:
        return None
    # nearly: a dash or a curly quote has no zero in its pair
    first, second = raw[0::2].count(0), raw[1::2].count(0)
    if first == 0 and second * 10 >= pairs * 7:
        return "utf-16-le"
    if second == 0 and first * 10 >= pairs * 7:
        return "utf-16-be"
    return None


def _looks_like_utf32(raw: bytes) -> bool:
    return len(raw) >= 8 and len(raw) % 4 == 0 and raw.count(0) * 10 >= len(raw) * 7


def _utf16(raw: bytes, codec: str, file: str) -> str | Problem:
    try:
        return raw.decode(codec)
    except UnicodeDecodeError as fault:
        line, column = _place_before(raw[: fault.start].decode(codec, "replace"))
        what = "the file begins as UTF-16, but is broken here"
        return Sentence("F005", what, _SAVE_AS_UTF8).at(file, line, column)


def _utf8(raw: bytes, file: str) -> str | Problem:
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError as fault:
        line, column = _place_before(raw[: fault.start].decode("utf-8"))
        return _foreign_byte(raw[fault.start]).at(file, line, column)


def _foreign_byte(byte: int) -> Sentence:
    meant = bytes([byte]).decode("cp1252", "ignore")
    code = f"the byte 0x{byte:02X} is not UTF-8"
    if not meant:
        return Sentence("F003", code, _SAVE_AS_UTF8)
    what = f"{code}; the file was saved in an older encoding, in which it is {meant}"
    return Sentence("F003", what, _SAVE_AS_UTF8)


def _place_before(text: str) -> tuple[int, int]:
    plain = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    return place_in(plain, len(plain))


def _control_problems(text: str, offsets: list[int], file: str) -> tuple[Problem, ...]:
    problems = []
    for offset in offsets[:_SHOWN_FAULTS]:
        what = f"a character that cannot be seen (U+{ord(text[offset]):04X}) stands here"
        sentence = Sentence("F006", what, "delete it, and type the words round it again")
        problems.append(sentence.at(file, *place_in(text, offset)))
    if len(offsets) > _SHOWN_FAULTS:
        what = f"{len(offsets) - _SHOWN_FAULTS} more characters that cannot be seen follow"
        sentence = Sentence("F006", what, "delete them")
        problems.append(sentence.at(file, *place_in(text, offsets[_SHOWN_FAULTS])))
    return tuple(problems)
