"""Every test that was written is run: no file with a name that pytest passes over."""

import ast
from collections.abc import Iterable
from pathlib import Path

import pytest

CHECKOUT = Path(__file__).resolve().parents[2]


def holds_tests(path: Path) -> bool:
    """Whether a module defines a test, as a function or as a method."""
    return any(
        isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and node.name.startswith("test_")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
    )


def asked_for(path: Path, named: Iterable[str]) -> bool:
    """Whether a file lies in what a run was asked to collect."""
    places = [CHECKOUT / one.partition("::")[0] for one in named]
    return any(path == one or one in path.parents for one in places)


def test_every_module_with_tests_is_collected(
    collected_files: frozenset[Path], pytestconfig: pytest.Config
) -> None:
    written = {
        path
        for path in (CHECKOUT / "tests").rglob("*.py")
        if holds_tests(path) and asked_for(path, pytestconfig.args)
    }
    assert Path(__file__).resolve() in written
    by_one_test = any("::" in one for one in pytestconfig.args)
    assert collected_files <= written if by_one_test else written == collected_files


def test_what_a_run_is_asked_for() -> None:
    path = CHECKOUT / "tests" / "plan" / "test_waits.py"
    assert asked_for(path, ["tests"])
    assert asked_for(path, ["tests/plan/test_waits.py::test_one"])
    assert not asked_for(path, ["tests/plan/test_tank.py", "tests/site"])
    assert not asked_for(path, [])


def test_no_two_modules_clash_where_case_is_not_told_apart() -> None:
    names = [
        path.relative_to(CHECKOUT).as_posix().lower() for path in CHECKOUT.glob("tests/**/*.py")
    ]
    assert len(names) == len(set(names))
