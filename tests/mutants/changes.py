"""Every small change of a module's code that a test should notice.

A comparison at its bound, a day or a figure one more or less, `and` for `or`, plus for minus, a
yes for a no, nothing returned. Annotations, decorators, assertions and what is raised are left
alone: they decide nothing.
"""

import ast
from collections.abc import Iterator
from dataclasses import dataclass, replace

COMPARED: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.Lt: ast.LtE,
    ast.LtE: ast.Lt,
    ast.Gt: ast.GtE,
    ast.GtE: ast.Gt,
    ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq,
    ast.Is: ast.IsNot,
    ast.IsNot: ast.Is,
    ast.In: ast.NotIn,
    ast.NotIn: ast.In,
}
WORKED_OUT: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Div,
    ast.Mod: ast.Mult,
    ast.Pow: ast.Mult,
    ast.BitAnd: ast.BitOr,
    ast.BitOr: ast.BitAnd,
}
JOINED: dict[type[ast.boolop], type[ast.boolop]] = {ast.And: ast.Or, ast.Or: ast.And}
LEFT_ALONE = {"annotation", "returns", "decorator_list", "format_spec", "type_params"}


@dataclass(frozen=True)
class Key:
    """What names a change whatever line it stands on: its function, and the text of both."""

    module: str
    function: str
    before: str
    after: str
    nth: int

    def __str__(self) -> str:
        again = f" ({self.nth})" if self.nth > 1 else ""
        return f"{self.module} {self.function}: {self.before}  ->  {self.after}{again}"


@dataclass(frozen=True, eq=False)
class Change:
    """One change: the field of a node that takes another value.

    `names` are the module's names that are bound by the changed statement, where it is one of the
    module itself; `function` is the one that a default is of.
    """

    key: Key
    line: int
    names: frozenset[str]
    function: ast.FunctionDef | None
    owner: ast.AST
    field: str
    index: int | None
    new: object

    @property
    def held(self) -> object:
        """What stands in the field now."""
        value = getattr(self.owner, self.field)
        return value if self.index is None else value[self.index]

    def swap(self) -> "Change":
        """Put the new value in the place of the old, and return the change that undoes it."""
        old = self.held
        if self.index is None:
            setattr(self.owner, self.field, self.new)
        else:
            getattr(self.owner, self.field)[self.index] = self.new
        return replace(self, new=old)


@dataclass(frozen=True)
class _Place:
    """Where a walk is: the function, the names that are bound, and the expression to show."""

    function: tuple[str, ...]
    names: frozenset[str]
    shown: ast.AST
    default_of: ast.FunctionDef | None = None

    def showing(self, node: ast.AST) -> "_Place":
        return replace(self, shown=node)


def changes_of(module: str, tree: ast.Module) -> Iterator[Change]:
    """Yield every change of a module, in the order of its text; the tree is left as it was."""
    seen: dict[tuple[str, str, str], int] = {}
    for statement in tree.body:
        for change in _in_statement(statement, _Place((), frozenset(), statement)):
            key = change.key
            same = (key.function, key.before, key.after)
            seen[same] = seen.get(same, 0) + 1
            yield replace(change, key=replace(key, module=module, nth=seen[same]))


def _in_statement(node: ast.stmt, place: _Place) -> Iterator[Change]:
    if isinstance(node, ast.Assert | ast.Raise | ast.Import | ast.ImportFrom | ast.Pass):
        return
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
        return
    if isinstance(node, ast.FunctionDef | ast.ClassDef):
        yield from _in_definition(node, place)
        return
    if not place.function:
        place = replace(place, names=frozenset(_bound(node)))
    here = place.showing(node)
    if isinstance(node, ast.Return) and _says_something(node.value):
        yield from _made(here, node.lineno, node, "value", None, ast.Constant(None))
    if isinstance(node, ast.AugAssign) and type(node.op) in WORKED_OUT:
        yield from _made(here, node.lineno, node, "op", None, WORKED_OUT[type(node.op)]())
    for field, index, child in _children(node):
        if isinstance(child, ast.stmt):
            yield from _in_statement(child, place)
        elif isinstance(child, ast.ExceptHandler | ast.match_case):
            for inner in child.body:
                yield from _in_statement(inner, place)
        else:
            is_head = isinstance(node, ast.If | ast.For | ast.While | ast.With)
            there = place.showing(child) if is_head else here
            yield from _in_expression(node, field, index, child, there)


def _in_definition(node: ast.FunctionDef | ast.ClassDef, place: _Place) -> Iterator[Change]:
    place = replace(place, function=(*place.function, node.name))
    if isinstance(node, ast.FunctionDef):
        here = replace(place.showing(node.args), default_of=node)
        for field, index, child in _children(node.args):
            yield from _in_expression(node.args, field, index, child, here)
    for inner in node.body:
        yield from _in_statement(inner, place)


def _in_expression(
    owner: ast.AST, field: str, index: int | None, node: ast.AST, place: _Place
) -> Iterator[Change]:
    line = getattr(node, "lineno", 0)
    if isinstance(node, ast.Constant):
        for value in _others(node.value):
            new = ast.copy_location(ast.Constant(value), node)
            yield from _made(place, line, owner, field, index, new)
        return
    if not isinstance(node, ast.Tuple | ast.List | ast.Starred | ast.expr_context):
        place = place.showing(node)
    if isinstance(node, ast.Compare):
        for at, op in enumerate(node.ops):
            yield from _made(place, line, node, "ops", at, COMPARED[type(op)]())
    elif isinstance(node, ast.BoolOp):
        yield from _made(place, line, node, "op", None, JOINED[type(node.op)]())
    elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not):
        yield from _made(place, line, owner, field, index, node.operand)
    elif isinstance(node, ast.BinOp) and type(node.op) in WORKED_OUT:
        yield from _made(place, line, node, "op", None, WORKED_OUT[type(node.op)]())
    elif isinstance(node, ast.Call) and ast.unparse(node.func).endswith("timedelta"):
        yield from _days(node, place)
    for inner_field, inner_index, child in _children(node):
        if not (isinstance(child, ast.keyword) and child.arg == "strict"):
            yield from _in_expression(node, inner_field, inner_index, child, place)


def _days(node: ast.Call, place: _Place) -> Iterator[Change]:
    """A span of days that is not typed out, by one day more and one less."""
    for word in node.keywords:
        if word.arg == "days" and not isinstance(word.value, ast.Constant):
            for op in (ast.Add(), ast.Sub()):
                new = ast.copy_location(ast.BinOp(word.value, op, ast.Constant(1)), word.value)
                yield from _made(place, node.lineno, word, "value", None, new)


def _others(value: object) -> Iterator[object]:
    if isinstance(value, bool):
        yield not value
    elif isinstance(value, int | float):
        yield value + 1
        yield value - 1


def _made(
    place: _Place, line: int, owner: ast.AST, field: str, index: int | None, new: object
) -> Iterator[Change]:
    """Yield the change, shown as the text of its expression before and after."""
    if isinstance(new, ast.AST):
        ast.fix_missing_locations(new)
    shown = place.shown
    function, before = ".".join(place.function), _text(ast.unparse(shown))
    key = Key("", function, before, "", 1)
    change = Change(key, line, place.names, place.default_of, owner, field, index, new)
    undo = change.swap()
    # a changed value that is itself what is shown stands elsewhere now
    after = new if undo.new is shown and isinstance(new, ast.AST) else shown
    key = replace(key, after=_text(ast.unparse(after)))
    undo.swap()
    yield replace(change, key=key)


def _text(code: str) -> str:
    return " ".join(code.split())


def _says_something(value: ast.expr | None) -> bool:
    """Whether a returned value is more than a bare no: None, False, or an empty tuple."""
    if value is None or (isinstance(value, ast.Constant) and value.value in (None, False)):
        return False
    return not (isinstance(value, ast.Tuple | ast.List) and not value.elts)


def _bound(node: ast.stmt) -> Iterator[str]:
    for inner in ast.walk(node):
        if isinstance(inner, ast.Name) and isinstance(inner.ctx, ast.Store):
            yield inner.id


def _children(node: ast.AST) -> Iterator[tuple[str, int | None, ast.AST]]:
    for field, value in ast.iter_fields(node):
        if field in LEFT_ALONE:
            continue
        if isinstance(value, list):
            for index, child in enumerate(value):
                if isinstance(child, ast.AST):
                    yield field, index, child
        elif isinstance(value, ast.AST):
            yield field, None, value
