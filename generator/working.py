"""Numbers that carry how they came about.

A `Figure` is a number from the inventory (`Given`), measured on points of the inventory
(`Measured`), from a source (`Reference`), computed from other figures (`Quantity`), or kept from a
reader (`Withheld`). A `Formula` pairs the function that
computes with the text that a page shows; `replay` evaluates that text on its own, so a test can
hold the two against each other.
"""

from __future__ import annotations

import ast
import math
import operator
import re
from collections import deque
from collections.abc import Callable, Iterator, Mapping, Sequence
from operator import attrgetter
from typing import Literal, TypeAlias

from generator.dataclass import dataclass
from generator.units import shown, split_suffix, taped

SET_BY_OWNER = "set by the owner"
KEPT_WHILE_STOPPED = "not shown while the job is stopped"
Visible: TypeAlias = Literal["page", "money", "place", "person", "note"]
ReadAs: TypeAlias = Literal["number", "tape", "both"]
# A section of a calculation's docstring; its later lines are indented as its first is.
_SECTION = re.compile(
    r"^[ \t]*(Formula|Source): (.*?)(?=^[ \t]*(?:Valid for|Source):|^[ \t]*$|\Z)", re.M | re.S
)
_SOURCE_KEY = re.compile(r"\(source key (\w+)\)")


@dataclass(frozen=True, slots=True)
class Given:
    """A number the owner typed: `value` in `unit`, and as typed with the place it stands at.

    `label` is what the field means, in words; `column` counts from 1, and is 0 where the place is
    not told."""

    name: str
    value: float
    unit: str
    typed: float
    typed_unit: str
    file: str
    line: int
    visible: Visible
    label: str = ""
    column: int = 0


@dataclass(frozen=True, slots=True)
class Measured:
    """A number measured on points the owner typed, by a method too long for a line of formula.

    `method` says in words how, `source` is the key of where the method is described, `points` how
    many points there are, `file` and `line` where they stand."""

    name: str
    value: float
    unit: str
    method: str
    points: int
    source: str
    file: str
    line: int
    visible: Visible


@dataclass(frozen=True, slots=True)
class Reference:
    """A value out of a source: key into the list of sources, and where in it."""

    name: str
    value: float
    unit: str
    source: str
    locator: str


@dataclass(frozen=True, slots=True)
class Withheld:
    """An input that is not shown; its value is not kept, `why` says the reason in words."""

    name: str
    unit: str
    why: str


@dataclass(frozen=True, slots=True)
class Formula:
    """A function of floats, the same as text, the unit it gives, its label and source key.

    `read_as` says how a page prints it: as a number, as a tape reads it, or, where it is typed into
    a file too, as both."""

    function: Callable[..., float]
    unit: str
    text: str
    label: str
    source: str
    read_as: ReadAs = "number"

    def __call__(self, identity: str, **inputs: Input) -> Quantity:
        """Return the quantity `identity`, computed once. Raises TypeError on a withheld input."""
        try:
            values = dict(zip(inputs, map(_value_of, inputs.values()), strict=True))
        except AttributeError:
            # a list of figures, or one that is withheld
            values = {name: _value(figure) for name, figure in inputs.items()}
        return Quantity(identity, self.function(**values), self.unit, self, tuple(inputs.items()))


def formula(
    function: Callable[..., float], label: str, *, unit: str = "", read_as: ReadAs = "number"
) -> Formula:
    """Return a calculation as a formula: its text and its source are those of its docstring.

    Its unit is the suffix of the function's name, unless `unit` says another. Raises RuntimeError
    where docstrings were stripped, ValueError where the docstring lacks a line.
    """
    told = function.__doc__
    if told is None:
        raise RuntimeError(f"{function.__name__} has no docstring to read its formula from")
    sections = {name: " ".join(text.split()) for name, text in _SECTION.findall(told)}
    source = _SOURCE_KEY.search(sections.get("Source", ""))
    suffix = split_suffix(function.__name__)
    said = unit or (suffix[1] if suffix is not None else "")
    if "Formula" not in sections or source is None or not said:
        raise ValueError(f"{function.__name__} does not say its formula, its source or its unit")
    return Formula(function, said, sections["Formula"], label, source[1], read_as)


@dataclass(frozen=True, slots=True)
class Quantity:
    """A computed number; `identity` is `place/season/step/quantity`."""

    identity: str
    value: float
    unit: str
    formula: Formula
    inputs: tuple[tuple[str, Input], ...]

    def printed(self) -> str:
        """Return the number with its unit as a page prints it."""
        number = shown(self.value, self.unit)
        if self.formula.read_as == "number":
            return number
        tape = taped(self.value, self.unit)
        return tape if self.formula.read_as == "tape" or tape == number else f"{number} ({tape})"


Figure: TypeAlias = Given | Measured | Reference | Quantity | Withheld
Input: TypeAlias = Figure | tuple[Figure, ...]


_value_of = attrgetter("value")


def _value(figure: Input) -> float | list[float]:
    if isinstance(figure, tuple):
        return [_single(member) for member in figure]
    return _single(figure)


def _single(figure: Figure) -> float:
    if isinstance(figure, Withheld):
        raise TypeError(f"{figure.name} is withheld and has no value to compute with")
    return figure.value


def flat_inputs(quantity: Quantity) -> Iterator[tuple[str, Figure]]:
    """Yield (name, figure) of the inputs; the members of a list are numbered from 1."""
    for name, figure in quantity.inputs:
        if isinstance(figure, tuple):
            yield from ((f"{name}[{n}]", member) for n, member in enumerate(figure, 1))
        else:
            yield name, figure


def walk(*quantities: Quantity) -> Iterator[Quantity]:
    """Yield the quantities and every quantity they rest on, outermost first, each once."""
    seen: set[str] = set()
    waiting = deque(quantities)
    while waiting:
        one = waiting.popleft()
        if one.identity in seen:
            continue
        seen.add(one.identity)
        yield one
        waiting += bases(one)


def bases(quantity: Quantity) -> list[Quantity]:
    """Return the computed numbers among the inputs of one, members of lists included."""
    found: list[Quantity] = []
    for _, figure in quantity.inputs:
        if isinstance(figure, Quantity):
            found.append(figure)
        elif isinstance(figure, tuple):
            found += [member for member in figure if isinstance(member, Quantity)]
    return found


def mean(values: Sequence[float]) -> float:
    """Return the arithmetic mean.

    >>> mean([15.0, 16.0, 17.0])
    16.0
    """
    return math.fsum(values) / len(values)


def number_of(values: Sequence[float]) -> float:
    """Return how many values there are.

    >>> number_of([15.0, 16.0, 17.0])
    3.0
    """
    return float(len(values))


def total(values: Sequence[float]) -> float:
    """Return the sum, without the rounding error of adding one by one.

    >>> total([0.1] * 10)
    1.0
    """
    return math.fsum(values)


ROUNDING_DECIMALS = 9


def whole_up(value: float) -> float:
    """Return the whole number at or above; what only a rounding error of computing adds is not up.

    >>> whole_up(2.1), whole_up(24.000000000000004)
    (3.0, 24.0)
    """
    return float(math.ceil(round(value, ROUNDING_DECIMALS)))


def whole_down(value: float) -> float:
    """Return the whole number at or below; what only a rounding error takes away is not down.

    >>> whole_down(2.9), whole_down(539.9999999999999)
    (2.0, 540.0)
    """
    return float(math.floor(round(value, ROUNDING_DECIMALS)))


_OPERATORS: Mapping[type[ast.operator], Callable[[float, float], float]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
}
_FUNCTIONS: Mapping[str, Callable[..., float]] = {
    "whole_up": whole_up,
    "whole_down": whole_down,
    "min": min,
    "max": max,
    "mean": mean,
    "number_of": number_of,
    "total": total,
}


def replay(text: str, values: Mapping[str, float | list[float]]) -> float:
    """Return what the formula text gives for the values. Raises ValueError on any other syntax.

    >>> replay("area_ac * rate_lb_per_ac / pls_fraction",
    ...        {"area_ac": 10, "rate_lb_per_ac": 5, "pls_fraction": 0.5})
    100.0
    """
    try:
        result = _evaluate(ast.parse(text, mode="eval").body, values)
    except (SyntaxError, KeyError) as error:
        raise ValueError(f"not a formula of these values: {text}") from error
    if isinstance(result, list):
        raise ValueError(f"formula gives a list: {text}")
    return result


def _evaluate(node: ast.expr, values: Mapping[str, float | list[float]]) -> float | list[float]:
    match node:
        # True and False are whole numbers to Python, not to a formula
        case ast.Constant(value=int() | float() as number) if not isinstance(number, bool):
            return float(number)
        case ast.Name(id=name):
            return values[name]
        case ast.BinOp(left=left, op=op, right=right) if type(op) in _OPERATORS:
            a, b = _evaluate(left, values), _evaluate(right, values)
            if isinstance(a, list) or isinstance(b, list):
                raise ValueError("a formula adds and multiplies numbers, not lists")
            return _OPERATORS[type(op)](a, b)
        case ast.Call(func=ast.Name(id=name), args=arguments, keywords=[]) if name in _FUNCTIONS:
            return _FUNCTIONS[name](*(_evaluate(argument, values) for argument in arguments))
        case _:
            raise ValueError(f"not allowed in a formula: {ast.unparse(node)}")
