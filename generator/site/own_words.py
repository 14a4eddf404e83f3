"""The words of the program itself: of chapters, templates, reference data, code and theme.

They stand on pages whoever's land it is, so by themselves they give nothing away.
"""

import os
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from generator.kept import STORE
from generator.lookup import PACKAGE, shipped
from generator.site.engine_theme import theme_folder

# The starter's own names are an example: who keeps one of them keeps a name like any other.
_NOT_THE_PROGRAM_S = ("starter", "shipped", "__pycache__")
ASSETS = "assets/"
_TEXTS = (".md", ".yaml", ".jinja", ".html", ".svg", ".css", ".js", ".py")
_LETTERS = bytes(
    byte + 32 if 65 <= byte <= 90 else byte if bytes([byte]).isalnum() or byte >= 128 else 32
    for byte in range(256)
)
# Spaces and dashes that are no letters of any word, though their bytes are above all of ASCII.
_MARKS = re.compile(rb"\xc2[\xa0-\xbf]|\xe2[\x80\x81].|\xef\xbb\xbf", re.DOTALL)


def words_of(data: bytes) -> list[bytes]:
    """Return the words of a text in small letters: letters and digits between all else.

    >>> words_of("Oak\u00a0ladder\u2019s strap_2".encode())
    [b'oak', b'ladder', b's', b'strap', b'2']
    """
    return without_marks(data).translate(_LETTERS).split()


def without_marks(data: bytes) -> bytes:
    """Return a text with a space for each space, dash or quote that is beyond ASCII."""
    if b"\xc2" in data or b"\xe2" in data or b"\xef" in data:
        return _MARKS.sub(b" ", data)
    return data


@cache
def own_text() -> bytes:
    """Return the words of the program in their order, a space around each, bars between texts."""
    files = sorted(_files())
    told = [(path, (stat := Path(path).stat()).st_size, stat.st_mtime_ns) for path in files]
    made: bytes = STORE.made_of("own words", repr(told), lambda _: _joined(files))
    return made


def _joined(files: list[str]) -> bytes:
    texts = (b" ".join(words_of(Path(path).read_bytes())) for path in files)
    return b" " + b" | ".join(texts) + b" "


def _files() -> Iterator[str]:
    # what the theme puts beside every site
    for ending in ("javascripts/**/*.min.js", "stylesheets/*.min.css"):
        yield from map(str, (_theme() / ASSETS).glob(ending))
    for place in (shipped("content"), shipped("site_templates"), PACKAGE):
        for folder, inside, names in os.walk(place):
            inside[:] = [name for name in inside if name not in _NOT_THE_PROGRAM_S]
            yield from (f"{folder}/{name}" for name in names if name.endswith(_TEXTS))


@cache
def _theme() -> Path:
    return theme_folder()


def ships(name: str, data: bytes) -> bool:
    """Return whether a file of a site is the program's own, byte for byte."""
    if not name.startswith(ASSETS):
        return False
    here = (folder / name for folder in (shipped("site_templates") / "theme", _theme()))
    return any(path.is_file() and path.read_bytes() == data for path in here)
