"""Every formula and every public function of the calculations, found by looking."""

import importlib
import inspect
import pkgutil
from collections.abc import Callable
from types import ModuleType

import generator.compute
from generator.reference.library import methods
from generator.working import Formula


def _modules() -> list[ModuleType]:
    return [
        importlib.import_module(f"generator.compute.{found.name}")
        for found in pkgutil.iter_modules(generator.compute.__path__)
    ]


def _formulas() -> dict[str, Formula]:
    return {
        f"{module.__name__.removeprefix('generator.')}.{name}": value
        for module in _modules()
        for name, value in vars(module).items()
        if isinstance(value, Formula)
    }


def _functions() -> dict[str, Callable[..., float]]:
    return {
        f"{module.__name__.removeprefix('generator.')}.{name}": value
        for module in _modules()
        for name, value in vars(module).items()
        if inspect.isfunction(value)
        and value.__module__ == module.__name__
        and not name.startswith("_")
    }


FORMULAS = _formulas()
FUNCTIONS = _functions()
# Functions too long for a line of formula: the list of methods says how each comes about.
METHODS = [name for name in FUNCTIONS if name.rpartition(".")[2] in methods()]
