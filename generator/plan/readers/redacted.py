"""Records with every field emptied that a reader may not see."""

from collections.abc import Set
from typing import Any, TypeVar, cast

from generator.inventory.fields import Record, Where, rules_of
from generator.working import Given

NOWHERE = Where("", 0, 0)
_R = TypeVar("_R", bound=Record)


def redacted(record: _R, seen: Set[str], **given: object) -> _R:
    """Return a new record of the fields that the reader may see, the rest empty or as given.

    It is made anew, so that a field without a class that says who sees it cannot pass.
    """
    values = {
        name: _redacted_value(getattr(record, name), rule.visible in seen or rule.safety, seen)
        for name, rule in rules_of(type(record)).items()
    }
    return type(record)(where=NOWHERE, **cast(dict[str, Any], values | given))


def without_line(given: Given) -> Given:
    """Return a typed number without where in the owner's files it stands."""
    return Given(
        name=given.name,
        value=given.value,
        unit=given.unit,
        typed=given.typed,
        typed_unit=given.typed_unit,
        file="",
        line=0,
        visible=given.visible,
        label=given.label,
        column=0,
    )


def _redacted_value(value: object, visible: bool, seen: Set[str]) -> object:
    if not visible:
        return () if isinstance(value, tuple) else None
    if isinstance(value, Given):
        return without_line(value)
    if isinstance(value, Record):
        return redacted(value, seen)
    if isinstance(value, tuple):
        # what is in a list has no class but that of its field, which has passed
        return tuple(_redacted_value(item, True, seen) for item in value)
    return value
