"""The standard library's frozen dataclass, made without compiling a function for each method.

A program of three hundred records spends half its start on compiling what all have in common. Here
`__init__` is compiled once for all classes of one shape and given the names of each; what compares,
hashes, prints and refuses is shared.
Whatever else is asked for is left to the standard library. To those who read types it is the same.
"""

from __future__ import annotations

import dataclasses
import operator
from collections.abc import Callable, Iterator
from functools import cache
from types import CodeType, FunctionType
from typing import TYPE_CHECKING, Any

__all__ = ["dataclass"]

_MISSING = dataclasses.MISSING
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
    """Return what takes the fields and sets them, compiled once for all classes of one shape."""
    ordinary = [field for field in fields if field.init and not field.kw_only]
    named = [field for field in fields if field.init and field.kw_only]
    given = (*ordinary, *named)
    in_order = (*given, *(field for field in fields if not field.init))
    are_made = tuple(field.default_factory is not _MISSING for field in in_order)
    code = _code_of(len(ordinary), len(given), are_made, hasattr(made, "__post_init__"))
    known: dict[str, Any] = {"_missing": _MISSING}
    for number, field in enumerate(in_order):
        known[f"_set_{number}"] = getattr(made, field.name).__set__
        known[f"_make_{number}"] = field.default_factory
        known[f"_default_{number}"] = field.default
    code = code.replace(co_varnames=("self", *(field.name for field in given)))
    defaults = tuple(field.default for field in ordinary if _may_be_left_out(field))
    init = FunctionType(code, known, "__init__", defaults)
    init.__kwdefaults__ = {field.name: field.default for field in named if _may_be_left_out(field)}
    init.__qualname__ = f"{made.__qualname__}.__init__"
    return init


def _may_be_left_out(field: dataclasses.Field[Any]) -> bool:
    return field.default is not _MISSING or field.default_factory is not _MISSING


@cache
def _code_of(ordinary: int, given: int, are_made: tuple[bool, ...], looks_after: bool) -> CodeType:
    """Return code that sets fields: the first ones taken by place too, the last ones not taken."""
    names = [f"field_{number}" for number in range(given)]
    named = ["*", *names[ordinary:]] if given > ordinary else []
    body = []
    for number, is_made in enumerate(are_made):
        value = f"_make_{number}()" if is_made else f"_default_{number}"
        if number < given:
            name = names[number]
            value = f"{value} if {name} is _missing else {name}" if is_made else name
        body.append(f" _set_{number}(self, {value})")
    if looks_after:
        body.append(" self.__post_init__()")
    head = f"def __init__({', '.join(['self', *names[:ordinary], *named])}):\n"
    known: dict[str, Any] = {}
    exec(head + "\n".join(body or [" pass"]), known)
    code: CodeType = known["__init__"].__code__
    return code


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
