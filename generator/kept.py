"""Keeps what is slow to make of what ships beside the package, as Python keeps its own modules.

What is kept is known by the text it was made of, the program, the Python and the libraries that
made it. What is damaged, of another kind or cannot be read is made anew; nothing rests on it.
"""

import hashlib
import marshal
import os
import sys
import tempfile
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import Any

_FOLDER = Path(__file__).resolve().parent / "__pycache__" / "kept"
# A checkout whose texts change keeps a file for each; the oldest go.
MOST_FILES = 600
_DIGEST_BYTES = 32


class Store:
    """The folder of what is kept; `is_used` is False where a run is to do without."""

    def __init__(self, folder: Path = _FOLDER) -> None:
        self.folder = folder
        self.is_used = True

    def made_of(self, kind: str, source: str, make: Callable[[str], Any]) -> Any:
        """Return what `make` makes of a text, plain data or code.

        `kind` names what is made, and of which version whatever makes it is.
        """
        name = name_of(kind, source)
        found = self.read(name)
        if found is None:
            found = make(source)
            self.write(name, found)
        return found

    def read(self, name: str) -> Any:
        """Return what is kept under a name, None where there is nothing whole."""
        if not self.is_used:
            return None
        try:
            data = (self.folder / name).read_bytes()
        except OSError:
            return None
        digest, whole = data[:_DIGEST_BYTES], data[_DIGEST_BYTES:]
        # damage is told before anything is read out of it
        return marshal.loads(whole) if hashlib.sha256(whole).digest() == digest else None

    def write(self, name: str, made: Any) -> None:
        """Keep something under a name, whole or not at all."""
        if not self.is_used or sys.dont_write_bytecode:
            return
        whole = marshal.dumps(made)
        with suppress(OSError):
            self.folder.mkdir(parents=True, exist_ok=True)
            self._make_room()
            handle, half = tempfile.mkstemp(dir=self.folder)
            try:
                with os.fdopen(handle, "wb") as file:
                    file.write(hashlib.sha256(whole).digest() + whole)
                # never written in place: another run may read it meanwhile
                Path(half).replace(self.folder / name)
            except OSError:
                Path(half).unlink(missing_ok=True)

    def _make_room(self) -> None:
        files = list(self.folder.iterdir())
        if len(files) >= MOST_FILES:
            files.sort(key=lambda path: (path.stat().st_mtime_ns, path.name))
            for path in files[: len(files) - MOST_FILES // 2]:
                path.unlink(missing_ok=True)


STORE = Store()


def name_of(kind: str, source: str) -> str:
    """Return the name under which what is made of a text is kept."""
    told = "\0".join((kind, sys.version, source))
    # the ending by which cleaners, packers and ignore lists know what Python made
    return f"{hashlib.sha256(told.encode()).hexdigest()[:40]}.{sys.implementation.cache_tag}.pyc"
