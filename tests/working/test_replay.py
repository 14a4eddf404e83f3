"""The formula a page prints gives what the function behind it gave."""

import ast
import inspect
import typing
from collections.abc import Sequence

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.working import Formula, mean, replay, total
from tests.compute.formulas import FORMULAS
from tests.structure.test_calculations import section

FUNCTION_NAMES = {"whole_up", "whole_down", "min", "max", "mean", "number_of", "total"}
AMOUNTS = st.floats(min_value=1e-3, max_value=1e5)
SHARES = st.floats(min_value=1e-3, max_value=1)
COUNTS = st.integers(min_value=1, max_value=200).map(float)


def inputs_of(formula: Formula) -> st.SearchStrategy[dict[str, float | list[float]]]:
    """Values for every parameter of a formula's function, in ranges that occur."""
    kinds = typing.get_type_hints(formula.function)
    return st.fixed_dictionaries(
        {
            name: _values(name, kinds[name])
            for name in inspect.signature(formula.function).parameters
        }
    )


def _values(name: str, kind: object) -> st.SearchStrategy[float | list[float]]:
    if kind in (Sequence[float], list[float]):
        return st.lists(AMOUNTS, min_size=1, max_size=8)
    assert kind is float
    if name.endswith("_count"):
        return COUNTS
    return SHARES if name.endswith("_fraction") else AMOUNTS


def names_in(text: str) -> set[str]:
    """The names of numbers in a formula's text."""
    tree = ast.parse(text, mode="eval")
    return {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)} - FUNCTION_NAMES


@pytest.mark.parametrize("name", FORMULAS)
@settings(max_examples=60)
@given(data=st.data())
def test_text_and_function_give_the_same(name: str, data: st.DataObject) -> None:
    formula = FORMULAS[name]
    values = data.draw(inputs_of(formula))
    try:
        wanted = formula.function(**values)
    except ZeroDivisionError:  # nothing lies between the lanes of a single one
        with pytest.raises(ZeroDivisionError):
            replay(formula.text, values)
    else:
        assert replay(formula.text, values) == pytest.approx(wanted, rel=1e-12, abs=0)


@pytest.mark.parametrize("name", FORMULAS)
def test_text_names_exactly_the_parameters(name: str) -> None:
    formula = FORMULAS[name]
    assert names_in(formula.text) == set(inspect.signature(formula.function).parameters)


@pytest.mark.parametrize("name", FORMULAS)
def test_text_stands_in_the_docstring(name: str) -> None:
    formula = FORMULAS[name]
    assert section(formula.function, "Formula") == formula.text


def test_formulas_are_found() -> None:
    assert {"compute.seed.BULK_SEED", "compute.dose.LOAD_PRODUCT"} <= FORMULAS.keys()


# Each by hand.
@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("2 + 3 * 4", 14),
        ("(2 + 3) * 4", 20),
        ("a - b / 2", 6.5),
        ("whole_up(a / b)", 3),
        ("whole_down(a / b)", 2),
        ("min(a, b)", 3),
        ("max(a, b, 9)", 9),
        ("mean(parts)", 2),
        ("total(parts) - a", -2),
    ],
)
def test_arithmetic_is_read_as_written(text: str, value: float) -> None:
    assert replay(text, {"a": 8.0, "b": 3.0, "parts": [1.0, 2.0, 3.0]}) == value


@pytest.mark.parametrize(
    "text",
    [
        "a ** 2",
        "a // 2",
        "a % 2",
        "-a",
        "a if a else 2",
        "a < 2",
        "a and 2",
        "a.real",
        "parts[0]",
        "[a, a]",
        "'text'",
        "None",
        "lambda: 1",
        "round(a)",
        "sum(parts)",
        "__import__('os')",
        "a.real()",
        "max(*parts)",
        "(b := a)",
        "parts",
        "parts + a",
        "a * parts",
    ],
)
def test_other_syntax_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"not allowed in a formula|lists|gives a list"):
        replay(text, {"a": 8.0, "parts": [1.0, 2.0]})


def test_sum_and_mean_lose_nothing_to_order() -> None:
    parts = [1e16, 1.0, -1e16]
    assert total(parts) == 1.0
    assert mean(parts) == pytest.approx(1 / 3, rel=1e-15)
