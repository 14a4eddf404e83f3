"""Calculations are documented with formula, range and source, and hold no loose figures."""

import ast
import doctest
import importlib
import inspect
import re
from collections.abc import Callable, Iterator

import pytest

from generator.reference.library import methods
from tests.compute.formulas import FORMULAS, FUNCTIONS, METHODS
from tests.structure.modules import Module, module_of, modules

SECTIONS = ("Formula:", "Valid for:", "Source:")
PLAIN_FIGURES = {0, 1, 2}
MOST_WORDS = 3

# Importing `__main__` would start the program.
IMPORTABLE = [one.name for one in modules() if one.name not in {"__main__", "package"}]


def docstring_faults(function: Callable[..., float]) -> Iterator[str]:
    """What a calculation's docstring lacks."""
    told = inspect.getdoc(function) or ""
    lines = told.splitlines()
    yield from (
        f"no {section} line"
        for section in SECTIONS
        if sum(line.startswith(section) for line in lines) != 1
    )
    if told.count(">>> ") != 1:
        yield f"{told.count('>>> ')} examples, not one"


def section(function: Callable[..., float], name: str) -> str:
    """One section of a calculation's docstring on one line."""
    told = inspect.getdoc(function) or ""
    found = re.search(rf"^{name}: (.*?)(?=^\S|^$|\Z)", told, re.DOTALL | re.MULTILINE)
    return " ".join(found[1].split()) if found else ""


def figure_faults(module: Module) -> Iterator[str]:
    """Figures other than 0, 1 and 2 that stand outside a named constant."""
    for statement in module.tree.body:
        if not _names_a_constant(statement):
            yield from _figures(statement, module.file)


def _names_a_constant(statement: ast.stmt) -> bool:
    targets = statement.targets if isinstance(statement, ast.Assign) else []
    return bool(targets) and all(
        isinstance(target, ast.Name) and target.id.isupper() for target in targets
    )


def _figures(statement: ast.stmt, file: str) -> Iterator[str]:
    for node in ast.walk(statement):
        if (
            isinstance(node, ast.Constant)
            and isinstance(node.value, int | float | complex)
            and not isinstance(node.value, bool)
            and node.value not in PLAIN_FIGURES
        ):
            yield f"{file}:{node.lineno} bare figure {node.value!r}"


def sentence_faults(module: Module) -> Iterator[str]:
    """Texts of more than three words that are neither docstring, formula nor raised.

    What is raised tells a programmer of a mistake and never reaches a page.
    """
    exempt = {id(node) for node in _exempt(module.tree)}
    for node in ast.walk(module.tree):
        if (
            isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and id(node) not in exempt
            and len(re.findall(r"[^\W\d_]{2,}", node.value)) > MOST_WORDS
            and " " in node.value.strip()
        ):
            yield f"{module.file}:{node.lineno} sentence: {node.value[:40]!r}"


def _exempt(tree: ast.Module) -> Iterator[ast.AST]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef):
            first = node.body[0] if node.body else None
            if isinstance(first, ast.Expr):
                yield first.value
        if isinstance(node, ast.Raise) or (
            isinstance(node, ast.Call) and ast.unparse(node.func) == "formula"
        ):
            yield from ast.walk(node)


def doctests_of(name: str) -> list[doctest.DocTest]:
    """The examples in one module of the package."""
    module = importlib.import_module(f"generator.{name}")
    return [one for one in doctest.DocTestFinder().find(module) if one.examples]


def failures_of(example: doctest.DocTest) -> tuple[int, str]:
    """How many of a docstring's examples fail, and what they say."""
    said: list[str] = []
    result = doctest.DocTestRunner(verbose=False).run(example, out=said.append)
    return result.failed, "".join(said)


@pytest.mark.parametrize("name", FUNCTIONS)
def test_a_calculation_says_formula_range_and_source(name: str) -> None:
    assert list(docstring_faults(FUNCTIONS[name])) == []


@pytest.mark.parametrize("name", FUNCTIONS)
def test_a_calculation_has_a_formula_or_a_method_a_page_can_show(name: str) -> None:
    """A method, in words, is for what no line of formula gives; a function has one of the two."""
    has_formula = FUNCTIONS[name] in [formula.function for formula in FORMULAS.values()]
    assert has_formula != (name in METHODS)


@pytest.mark.parametrize("name", METHODS)
def test_a_method_names_the_source_its_function_names(name: str) -> None:
    source = methods()[name.rpartition(".")[2]].source
    assert f"(source key {source})" in section(FUNCTIONS[name], "Source")


def test_no_loose_figures_in_calculations() -> None:
    assert [fault for module in modules("compute") for fault in figure_faults(module)] == []


def test_no_sentences_in_calculations() -> None:
    layers = modules("units", "geometry", "compute")
    assert [fault for module in layers for fault in sentence_faults(module)] == []


@pytest.mark.parametrize("name", IMPORTABLE)
def test_every_example_in_a_docstring_is_right(name: str) -> None:
    for example in doctests_of(name):
        failed, said = failures_of(example)
        assert failed == 0, said


def test_examples_are_found() -> None:
    assert len(doctests_of("compute.seed")) == 7


def undocumented(area_ac: float) -> float:
    """Gives an area."""
    return area_ac


def test_a_bare_docstring_is_named() -> None:
    assert list(docstring_faults(undocumented)) == [
        "no Formula: line",
        "no Valid for: line",
        "no Source: line",
        "0 examples, not one",
    ]


def test_a_wrong_example_fails() -> None:
    example = doctest.DocTestParser().get_doctest(">>> 1 + 1\n3\n", {}, "wrong", None, None)
    assert failures_of(example)[0] == 1


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("def f(a_ac: float) -> float:\n    return a_ac * 43560", 1),
        ("def f(a_ac: float) -> float:\n    return a_ac * 0.5 + 3", 2),
        ("def f(a_ac: float, n: int = 5) -> float:\n    return a_ac", 1),
        ("half = 0.5", 1),
        ("FACTOR = 5940", 0),
        ("def f(a_ac: float) -> float:\n    return (1 - a_ac) * 2 + 0", 0),
    ],
)
def test_a_loose_figure_is_seen(text: str, count: int) -> None:
    assert len(list(figure_faults(module_of("compute.seed", text)))) == count


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ('said = "do not spray today"', 1),
        ('def f(n: int) -> str:\n    return f"wait {n} more days before sowing again"', 1),
        ('"""A docstring of more than three words."""', 0),
        ('def f() -> None:\n    """A docstring of more than three words."""', 0),
        ('raise ValueError("that does not convert at all")', 0),
        ('A = formula(f, "One pass must put down")', 0),
        ('words = "oz by weight"', 0),
    ],
)
def test_a_sentence_is_seen(text: str, count: int) -> None:
    assert len(list(sentence_faults(module_of("compute.seed", text)))) == count
