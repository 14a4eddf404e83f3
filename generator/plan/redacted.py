"""Records with every field emptied that a reader may not see."""

from collections.abc import Set
from dataclasses import replace
from typing import Any, TypeVar, cast

from generator.inventory.fields import Record, Where, rules_of
from generator.working import Given

NOWHERE = Where("", 0, 0)
_R = TypeVar("_R", bound=Record)


def redacted(record: _R, seen: Set[str]) -> _R:
    """Return a record with every field emptied that the reader may not see."""
    values = {
        name: _redacted_value(getattr(record, name), rule.visible in seen or rule.safety, seen)
        for name, rule in rules_of(type(record)).items()
    }
    return replace(record, where=NOWHERE, **cast(dict[str, Any], values))


def _redacted_value(value: object, visible: bool, seen: Set[str]) -> object:
    if not visible:
        return () if isinstance(value, tuple) else None
    if isinstance(value, Given):
        return replace(value, file="", line=0)
    if isinstance(value, Record):
        return redacted(value, seen)
    if isinstance(value, tuple):
        return tuple(_redacted_value(one, True, seen) for one in value)
    return value
