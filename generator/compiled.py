"""Keeps compiled templates beside the package, as Python keeps its own compiled modules."""

import os
import pickle
import sys
import tempfile
from contextlib import suppress
from pathlib import Path

import jinja2
from jinja2 import BytecodeCache
from jinja2.bccache import Bucket

_FOLDER = Path(__file__).resolve().parent / "__pycache__" / "templates"


class Compiled(BytecodeCache):
    """The compiled templates of one environment, kept under a name of its own.

    What cannot be read or written is compiled anew; nothing else rests on the folder.
    """

    def __init__(self, name: str, folder: Path = _FOLDER) -> None:
        self.folder = folder / f"{name}-{jinja2.__version__}"

    def get_cache_key(self, name: str, filename: str | None = None) -> str:  # noqa: ARG002 - jinja2 calls it so
        """Return the key of a template: its name, wherever its file lies for one build.

        Its text is held against what is kept, so a template of the same name is never taken for it.
        """
        return super().get_cache_key(name)

    def load_bytecode(self, bucket: Bucket) -> None:
        """Fill a template's bucket where it was compiled from this very text before."""
        try:
            with self._file(bucket).open("rb") as file:
                bucket.load_bytecode(file)
        except (OSError, ValueError, pickle.UnpicklingError):
            bucket.reset()

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep a compiled template whole, or not at all."""
        if sys.dont_write_bytecode:
            return
        with suppress(OSError):
            self.folder.mkdir(parents=True, exist_ok=True)
            handle, half = tempfile.mkstemp(dir=self.folder)
            try:
                with os.fdopen(handle, "wb") as file:
                    bucket.write_bytecode(file)
                # never written in place: another build may read it meanwhile
                Path(half).replace(self._file(bucket))
            except OSError:
                Path(half).unlink(missing_ok=True)

    def _file(self, bucket: Bucket) -> Path:
        return self.folder / f"{bucket.key}.{sys.implementation.cache_tag}.pyc"
