"""Every text and every number with decimals that stands anywhere in a plan."""

import datetime
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from typing import Any

from generator.dataclass import dataclass
from generator.inventory.fields import Record, rules_of

# Nothing stands in these that is looked for.
_BARE = frozenset([type(None), bool, int, datetime.date])


@dataclass(frozen=True, slots=True)
class StandsIn:
    """What stands in a plan: its texts, each once, and its numbers, which may be degrees."""

    texts: tuple[str, ...]
    numbers_deg: frozenset[float]


def stands_in(plan: object) -> StandsIn:
    """Return what stands in a plan; what several things rest on is looked at once."""
    texts: dict[str, None] = {}
    numbers_deg: set[float] = set()
    looked_at: set[int] = set()
    # taken from the end, so that what is in a thing comes in its order
    waiting: list[object] = [plan]
    while waiting:
        value = waiting.pop()
        if isinstance(value, str):
            texts[value] = None
        elif isinstance(value, float):
            numbers_deg.add(value)
        elif type(value) not in _BARE and id(value) not in looked_at:
            # the plan holds all of it, so that no other thing gets the number of one that is gone
            looked_at.add(id(value))
            waiting += _inside(value)
    return StandsIn(tuple(texts), frozenset(numbers_deg))


def _inside(value: object) -> list[object]:
    if isinstance(value, Mapping):
        return list(value.values())[::-1]
    if isinstance(value, tuple | list):
        return list(value[::-1])
    kind: Any = type(value)
    return [getattr(value, name) for name in _names(kind)]


@cache
def _names(kind: Any) -> tuple[str, ...]:
    """Return the fields of a kind of thing from the last to the first."""
    if issubclass(kind, Record):
        # where a record stands in the owner's files is no part of what it says
        return tuple(rules_of(kind))[::-1]
    if not is_dataclass(kind):
        return ()
    return tuple(one.name for one in fields(kind) if not one.name.startswith("_"))[::-1]
