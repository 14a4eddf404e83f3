"""Every stop, caution and note there is."""

import importlib
import pkgutil
from collections.abc import Iterator

from generator.plan import findings
from generator.plan.findings.words import Reason


def every(kind: type[Reason] = Reason) -> list[Reason]:
    """Return the members of a kind of reasons, whatever they are about."""
    for module in pkgutil.iter_modules(findings.__path__):
        importlib.import_module(f"{findings.__name__}.{module.name}")
    return list(_members(kind))


def _members(kind: type[Reason]) -> Iterator[Reason]:
    yield from kind
    for narrower in kind.__subclasses__():
        yield from _members(narrower)
