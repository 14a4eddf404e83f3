"""Keeps compiled templates from one run to the next."""

import jinja2
from jinja2 import BytecodeCache
from jinja2.bccache import Bucket

from generator.kept import STORE, Store, name_of


class Compiled(BytecodeCache):
    """The compiled templates of one environment, `kind` naming it and its version.

    A template is known by its name and its text, wherever its file lies for one build.
    """

    def __init__(self, kind: str, store: Store = STORE) -> None:
        self.kind, self.store = f"{kind} {jinja2.__version__}", store

    def get_cache_key(self, name: str, filename: str | None = None) -> str:  # noqa: ARG002 - jinja2 calls it so
        """Return the key of a template, its name."""
        return name

    def load_bytecode(self, bucket: Bucket) -> None:
        """Fill a template's bucket where it was compiled from this very text before."""
        bucket.code = self.store.read(self._name(bucket))

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep a compiled template."""
        self.store.write(self._name(bucket), bucket.code)

    def _name(self, bucket: Bucket) -> str:
        return name_of(f"{self.kind} {bucket.key}", bucket.checksum)
