"""The text of a weather file, out of the folder for weather, plain or packed."""

import gzip
import io
import re
import zlib
from pathlib import Path

from generator.inventory import weather_faults as say
from generator.inventory.files import Hindered, content_of
from generator.inventory.problems import Sentence

# A name without a slash: no file outside the folder can be read by it.
IN_FOLDER = re.compile(rf"{say.FOLDER}/[A-Za-z0-9][A-Za-z0-9._-]*", re.ASCII)
PACKED = b"\x1f\x8b"
# A century of every element of a station is under ten million characters. It bounds the file as it
# lies there and what comes out of its packing.
MOST_WEATHER_BYTES = 100_000_000
ENCODING = "utf-8-sig"


def text_of(folder: Path, name: str) -> str | Sentence:
    """Return the text of a file named in the property folder, or the fault that hinders it."""
    if not IN_FOLDER.fullmatch(name):
        return say.outside_the_folder(name)
    content = content_of(folder / name, MOST_WEATHER_BYTES)
    if isinstance(content, Hindered):
        return say.no_such_file(name) if content.what == "closed" else say.no_file(content.words)
    if content.startswith(PACKED):
        try:
            with gzip.GzipFile(fileobj=io.BytesIO(content)) as packed:
                content = packed.read(MOST_WEATHER_BYTES + 1)
        except (OSError, EOFError, zlib.error):
            return say.not_text("the packed file is broken")
    if len(content) > MOST_WEATHER_BYTES:
        return say.not_text("the file is far too long for the weather of one place")
    try:
        return content.decode(ENCODING)
    except UnicodeDecodeError:
        return say.not_text("the file is no text")
