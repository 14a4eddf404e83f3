"""Which test can tell which change: in which of them a changed expression had another value.

Every module is run once with its expressions watched. Where an expression would have had the same
value with the change made, all through a test, that test cannot notice the change.
"""

import ast
import operator
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from tests.mutants.changes import Change

Two = Callable[[Any, Any], Any]
WATCH = "_watch_"
BOUNDS: dict[type[ast.AST], Two] = {
    ast.Lt: operator.lt, ast.LtE: operator.le, ast.Gt: operator.gt, ast.GtE: operator.ge,
}  # fmt: skip
OPERATORS: dict[type[ast.AST], Two] = BOUNDS | {
    ast.Eq: operator.eq, ast.NotEq: operator.ne,
    ast.Is: operator.is_, ast.IsNot: operator.is_not,
    ast.In: lambda one, many: one in many, ast.NotIn: lambda one, many: one not in many,
    ast.Add: operator.add, ast.Sub: operator.sub, ast.Mult: operator.mul,
    ast.Div: operator.truediv, ast.FloorDiv: operator.floordiv, ast.Mod: operator.mod,
    ast.Pow: operator.pow, ast.BitAnd: operator.and_, ast.BitOr: operator.or_,
}  # fmt: skip
# What can be worked out before it is known whether it is needed, and says nothing of it.
PLAIN = (ast.Name, ast.Attribute, ast.Constant, ast.BinOp, ast.UnaryOp, ast.Subscript)


@dataclass
class Site:
    """One expression of two sides: what is done with them, and what each change would do."""

    done: Two
    others: dict[int, Two]


@dataclass
class Watch:
    """What the watched code of one module calls: it notes each change that would show."""

    sites: list[Site] = field(default_factory=list)
    shown: set[int] = field(default_factory=set)

    def two(self, number: int, left: Any, right: Any) -> Any:
        """Do what an expression of two sides does, and note the changes that do otherwise."""
        site = self.sites[number]
        value = site.done(left, right)
        for change, other in site.others.items():
            if change not in self.shown and not _same(value, other, left, right):
                self.shown.add(change)
        return value

    def chain(self, number: int, *sides: Any) -> bool:
        """Do what a chain of comparisons does: its sites stand one behind the other."""
        met = [self.two(number + at, *sides[at : at + 2]) for at in range(len(sides) - 1)]
        return all(met)

    def joined(self, change: int, is_and: bool, *parts: Callable[[], Any]) -> Any:
        """Do what `and` or `or` does, and note where the other would do otherwise."""
        value = _joined(is_and, parts)
        if change not in self.shown and not _same(value, _joined, not is_and, parts):
            self.shown.add(change)
        return value

    def hit(self, changes: tuple[int, ...], value: Any = None) -> Any:
        """Note changes that show wherever they are reached, and hand the value on."""
        self.shown.update(changes)
        return value


def _joined(is_and: bool, parts: Iterable[Callable[[], Any]]) -> Any:
    value: Any = is_and
    for part in parts:
        value = part()
        if bool(value) != is_and:
            break
    return value


def _same(value: Any, other: Two, left: Any, right: Any) -> bool:
    try:
        otherwise = other(left, right)
        if isinstance(value, np.ndarray):
            return bool(np.array_equal(value, otherwise))
        return type(value) is type(otherwise) and bool(value == otherwise)
    except Exception:
        return False


def watched(tree: ast.Module, changes: Iterable[Change], watch: Watch) -> None:
    """Rewrite a module so that it tells a watch, under its name, what each change would do.

    The changes are those of this very tree, by the order they come in.
    """
    rewriting = _Rewriting(watch, _inside(tree))
    for number, change in enumerate(changes):
        rewriting.add(number, change)
    for function in _functions(tree):
        at_entry = tuple(rewriting.at_entry.get(id(function), ())) + tuple(rewriting.anywhere)
        if at_entry:
            call = ast.Expr(_call("hit", ast.Constant(at_entry)))
            function.body.insert(1 if ast.get_docstring(function) else 0, call)
    rewriting.visit(tree)
    ast.fix_missing_locations(tree)


def _functions(tree: ast.Module) -> list[ast.FunctionDef]:
    return [node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)]


def _inside(tree: ast.Module) -> dict[int, ast.FunctionDef]:
    """The nodes within the bodies of functions, and for defaults the function they are of."""
    return {
        id(node): function
        for function in _functions(tree)
        for statement in function.body
        for node in ast.walk(statement)
    }


def _call(name: str, *given: ast.expr) -> ast.Call:
    watch = ast.Name(WATCH, ast.Load())
    return ast.Call(ast.Attribute(watch, name, ast.Load()), list(given), [])


class _Rewriting(ast.NodeTransformer):
    """Puts a call of the watch around every expression that a change is made in."""

    def __init__(self, watch: Watch, inside: dict[int, ast.FunctionDef]) -> None:
        self.watch = watch
        self.inside = inside
        self.in_two: defaultdict[int, list[tuple[int, Change]]] = defaultdict(list)
        self.in_join: dict[int, int] = {}
        self.around: defaultdict[int, list[int]] = defaultdict(list)
        self.at_entry: defaultdict[int, list[int]] = defaultdict(list)
        self.anywhere: list[int] = []

    def add(self, number: int, change: Change) -> None:
        """Note where a change is made, and so how it is watched."""
        owner, held = change.owner, change.held
        if isinstance(held, ast.AST) and id(owner) not in self.inside:
            self._outside(number, change)
        elif isinstance(owner, ast.Compare | ast.BinOp) and _is_simple(owner, change):
            self.in_two[id(owner)].append((number, change))
        elif isinstance(owner, ast.BoolOp) and change.field == "op" and _is_repeatable(owner):
            self.in_join[id(owner)] = number
        elif isinstance(held, ast.expr):
            self.around[id(held)].append(number)
        elif isinstance(owner, ast.AugAssign):
            self.around[id(owner.value)].append(number)
        else:
            self.around[id(owner)].append(number)

    def _outside(self, number: int, change: Change) -> None:
        """Defaults show where their function is run, all else where any function is."""
        function = change.function
        if function is None:
            self.anywhere.append(number)
        else:
            self.at_entry[id(function)].append(number)

    def visit(self, node: ast.AST) -> Any:
        """Rewrite the parts of a node, then the node."""
        name = id(node)
        rewritten = self.generic_visit(node)
        if name in self.in_two:
            rewritten = self._of_two(rewritten, self.in_two[name])
        elif name in self.in_join and isinstance(rewritten, ast.BoolOp):
            nothing = ast.arguments([], [], None, [], [], None, [])
            parts = [ast.Lambda(nothing, part) for part in rewritten.values]
            is_and = ast.Constant(isinstance(rewritten.op, ast.And))
            rewritten = _call("joined", ast.Constant(self.in_join[name]), is_and, *parts)
        if name in self.around and isinstance(rewritten, ast.expr):
            rewritten = _call("hit", ast.Constant(tuple(self.around[name])), rewritten)
        return rewritten

    def _of_two(self, node: ast.AST, changes: list[tuple[int, Change]]) -> ast.Call:
        first = len(self.watch.sites)
        if isinstance(node, ast.BinOp):
            sides, ops = [node.left, node.right], [node.op]
        else:
            assert isinstance(node, ast.Compare)
            sides, ops = [node.left, *node.comparators], node.ops
        self.watch.sites += [Site(OPERATORS[type(op)], {}) for op in ops]
        for number, change in changes:
            for at, other in _otherwise(change, ops):
                self.watch.sites[first + at].others[number] = other
        return _call("two" if len(ops) == 1 else "chain", ast.Constant(first), *sides)


def _otherwise(change: Change, ops: list[Any]) -> Iterator[tuple[int, Two]]:
    """Yield the sites of an expression in which a change does otherwise, and what it does."""
    if change.field in ("op", "ops"):
        yield change.index or 0, OPERATORS[type(change.new)]
        return
    value = getattr(change.new, "value", None)
    side = 0 if change.field == "left" else 1 + (change.index or 0)
    if side > 0:
        done = OPERATORS[type(ops[side - 1])]
        yield side - 1, lambda left, _: done(left, value)
    if side < len(ops):
        then = OPERATORS[type(ops[side])]
        yield side, lambda _, right: then(value, right)


def _is_simple(owner: ast.Compare | ast.BinOp, change: Change) -> bool:
    """Whether both sides are worked out in any case, and a change of one is of a constant."""
    if change.field not in ("op", "ops") and not isinstance(change.held, ast.Constant):
        return False
    if isinstance(owner, ast.BinOp) or len(owner.ops) == 1:
        return True
    return all(
        isinstance(node, (*PLAIN, ast.expr_context, ast.operator, ast.unaryop))
        for side in (owner.left, *owner.comparators)
        for node in ast.walk(side)
    )


def _is_repeatable(node: ast.BoolOp) -> bool:
    """Whether the parts can be worked out apart from where they stand: none binds a name."""
    binding = (ast.NamedExpr, ast.Yield, ast.YieldFrom, ast.Await)
    return not any(isinstance(one, binding) for one in ast.walk(node))
