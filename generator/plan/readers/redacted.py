"""Records with every field emptied that a reader may not see."""

from collections.abc import Callable, Set
from typing import Any, TypeVar, cast

from generator.inventory.fields import Record, Where, rules_of
from generator.plan.model.place import KeptOff, LeftOut
from generator.working import Given, Quantity

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


def redacted_kept_off(
    one: KeptOff, new_id: str, seen: Set[str], number: Callable[[Quantity], Quantity]
) -> KeptOff:
    """Return what is left out beside a thing by the name and id others may see, not where it lies.

    `new_id` is empty where they see no thing; `number` is how a computed number passes to them.
    """
    return KeptOff(
        thing_id=new_id,
        name=one.known_as,
        known_as=one.known_as,
        setback=redacted(one.setback, seen),
        reach=number(one.reach) if one.reach is not None else None,
        lost=number(one.lost),
        stretches=tuple(_redacted_stretch(stretch, number) for stretch in one.stretches),
        beside=number(one.beside) if one.beside is not None else None,
        side=without_line(one.side) if one.side is not None else None,
    )


def _redacted_stretch(stretch: LeftOut, number: Callable[[Quantity], Quantity]) -> LeftOut:
    return LeftOut(
        first=number(stretch.first),
        last=number(stretch.last),
        wide=number(stretch.wide),
        start_deg=stretch.start_deg,
        side_deg=stretch.side_deg,
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
