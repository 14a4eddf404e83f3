"""The standard library's frozen dataclass, made without compiling a function for each method.

A program of three hundred records spends half its start on compiling what all have in common. Here
only `__init__` is of the class's own text; what compares, hashes, prints and refuses is shared.
Whatever else is asked for is left to the standard library. To those who read types it is the same.
"""

from __future__ import annotations

import dataclasses
import operator
from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING, Any

__all__ = ["dataclass"]

_SHARED = frozenset([("frozen", True), ("slots", True), ("kw_only", True), ("kw_only", False)])

if TYPE_CHECKING:
    from dataclasses import dataclass
else:

    def dataclass(cls=None, /, **options):
        """Return a class as a dataclass, as `dataclasses.dataclass` does with the same options."""
        return _made(cls, options) if cls is not None else lambda cls: _made(cls, options)


def _made(cls: type, options: dict[str, bool]) -> Any:
    is_shared = options.get("frozen") and options.get("slots") and options.items() <= _SHARED
    if not is_shared:
        return dataclasses.dataclass(**options)(cls)
    kw_only = options.get("kw_only", False)
    # what a class says of itself stays
    own = set(vars(cls))
    made: Any = dataclasses.dataclass(
        init=False, repr=False, eq=False, slots=True, kw_only=kw_only
    )(cls)
    fields = dataclasses.fields(made)
    compared = tuple(field.name for field in fields if field.compare)
    methods: dict[str, Any] = {
        "__init__": _init_of(made, fields),
        "__eq__": _eq_of(compared),
        "__hash__": _hash_of(compared),
        "__repr__": _repr,
        "__setattr__": _refuse_setting,
        "__delattr__": _refuse_deleting,
        "__getstate__": _getstate,
        "__setstate__": _setstate,
    }
    for name, method in methods.items():
        # a class that says how it compares has None put for how it hashes
        if name not in own or (name == "__hash__" and vars(cls)[name] is None):
            setattr(made, name, method)
    return made


def _init_of(made: type, fields: tuple[dataclasses.Field[Any], ...]) -> Callable[..., None]:
    """Return the one function that has a text of its own: it takes the fields and sets them."""
    known: dict[str, Any] = {"_missing": dataclasses.MISSING}
    ordinary: list[str] = ["self"]
    named: list[str] = []
    body: list[str] = []
    for field in fields:
        known[f"_set_{field.name}"] = getattr(made, field.name).__set__
        taken = named if field.kw_only else ordinary
        if not field.init:
            taken = []
        if field.default_factory is not dataclasses.MISSING:
            known[f"_make_{field.name}"] = field.default_factory
            taken.append(f"{field.name}=_missing")
            value = f"_make_{field.name}()"
            if field.init:
                value = f"{value} if {field.name} is _missing else {field.name}"
        elif field.default is not dataclasses.MISSING:
            known[f"_default_{field.name}"] = field.default
            taken.append(f"{field.name}=_default_{field.name}")
            value = field.name if field.init else f"_default_{field.name}"
        else:
            taken.append(field.name)
            value = field.name
        body.append(f" _set_{field.name}(self, {value})")
    parameters = ", ".join([*ordinary, *(["*", *named] if named else [])])
    if hasattr(made, "__post_init__"):
        body.append(" self.__post_init__()")
    exec(f"def __init__({parameters}):\n" + "\n".join(body or [" pass"]), known)
    init: Callable[..., None] = known["__init__"]
    init.__qualname__ = f"{made.__qualname__}.__init__"
    return init


def _values_of(names: tuple[str, ...]) -> Callable[[Any], Any]:
    """Return what gives the fields of these names, as something that compares and hashes."""
    return operator.attrgetter(*names) if names else lambda _: ()


def _eq_of(names: tuple[str, ...]) -> Callable[[Any, Any], Any]:
    values = _values_of(names)

    def __eq__(self: Any, other: Any) -> Any:  # noqa: N807 - it becomes a method
        if self is other:
            return True
        return (
            values(self) == values(other) if other.__class__ is self.__class__ else NotImplemented
        )

    return __eq__


def _hash_of(names: tuple[str, ...]) -> Callable[[Any], int]:
    values = _values_of(names)

    def __hash__(self: Any) -> int:  # noqa: N807 - it becomes a method
        return hash(values(self))

    return __hash__


def _repr(self: Any) -> str:
    shown = (
        f"{field.name}={getattr(self, field.name)!r}"
        for field in dataclasses.fields(self)
        if field.repr
    )
    return f"{self.__class__.__qualname__}({', '.join(shown)})"


def _refuse_setting(self: Any, name: str, value: object) -> None:  # noqa: ARG001 - Python calls it so
    raise dataclasses.FrozenInstanceError(f"cannot assign to field {name!r}")


def _refuse_deleting(self: Any, name: str) -> None:  # noqa: ARG001 - Python calls it so
    raise dataclasses.FrozenInstanceError(f"cannot delete field {name!r}")


def _getstate(self: Any) -> list[Any]:
    return [getattr(self, name) for name in _names(self)]


def _setstate(self: Any, state: list[Any]) -> None:
    for name, value in zip(_names(self), state, strict=True):
        object.__setattr__(self, name, value)


def _names(self: Any) -> Iterator[str]:
    return (field.name for field in dataclasses.fields(self))
