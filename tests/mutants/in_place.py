"""Puts the changed code of a module in the place of the old, wherever that was imported."""

import ast
import sys
import types
from collections.abc import Collection
from typing import Any

from tests.mutants.changes import Change


def put(change: Change, tree: ast.Module, module: types.ModuleType) -> None:
    """Run the module with the change, and hand its code on to the functions there are already.

    What was imported from the module elsewhere is so changed too. There is no way back: the
    process it is done in is one made for it. Raises whatever the changed module raises.
    """
    undo = change.swap()
    try:
        put_tree(tree, module, _depending(tree, change.names))
    finally:
        undo.swap()


def put_tree(tree: ast.Module, module: types.ModuleType, bound: Collection[str] = ()) -> None:
    """Run the tree in the place of the module's own code; `bound` are values to bind anew."""
    code = compile(tree, str(module.__file__), "exec")
    fresh = types.ModuleType(module.__name__)
    fresh.__dict__["__file__"] = module.__file__
    exec(code, fresh.__dict__)
    for name, new in vars(fresh).items():
        old = vars(module).get(name)
        if name in bound:
            _rebind(name, old, new)
        elif getattr(old, "__module__", None) == module.__name__:
            _replace(old, new)


def _replace(old: Any, new: Any) -> None:
    if isinstance(old, type) and isinstance(new, type):
        for name, member in vars(new).items():
            _replace(vars(old).get(name), member)
    elif isinstance(old, property) and isinstance(new, property):
        _replace(old.fget, new.fget)
    elif isinstance(old, classmethod | staticmethod) or hasattr(old, "cache_clear"):
        _replace(old.__wrapped__, getattr(new, "__wrapped__", None))
        if hasattr(old, "cache_clear"):
            old.cache_clear()
    elif isinstance(old, types.FunctionType) and isinstance(new, types.FunctionType):
        old.__defaults__, old.__kwdefaults__ = new.__defaults__, new.__kwdefaults__
        # what a dataclass writes itself hangs on its class; only its defaults can change
        if old.__code__.co_filename == new.__code__.co_filename != "<string>":
            old.__code__ = new.__code__


def _rebind(name: str, old: Any, new: Any) -> None:
    """Bind a module's changed value in every module that holds the old one by its name."""
    for module in list(sys.modules.values()):
        if module.__name__.split(".")[0] in ("generator", "tests"):
            held = vars(module)
            if name in held and held[name] is old:
                held[name] = new


def _depending(tree: ast.Module, names: frozenset[str]) -> set[str]:
    """The names of a module that are bound by means of these, these included."""
    found = set(names)
    for statement in tree.body:
        if isinstance(statement, ast.Assign | ast.AnnAssign):
            words = [one for one in ast.walk(statement) if isinstance(one, ast.Name)]
            bound = {one.id for one in words if isinstance(one.ctx, ast.Store)}
            if found & {one.id for one in words if isinstance(one.ctx, ast.Load)}:
                found |= bound
    return found if names else set()
