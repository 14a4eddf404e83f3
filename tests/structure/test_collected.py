"""Every test that was written is run: no file with a name that pytest passes over."""

import ast
import subprocess
import sys
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]


def holds_tests(path: Path) -> bool:
    """Whether a module defines a test, as a function or as a method."""
    return any(
        isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and node.name.startswith("test_")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
    )


def test_every_module_with_tests_is_collected() -> None:
    written = {
        path.relative_to(CHECKOUT).as_posix()
        for path in (CHECKOUT / "tests").rglob("*.py")
        if holds_tests(path)
    }
    collection = subprocess.run(
        [
            sys.executable,
            "-m",
            "pytest",
            "--collect-only",
            "-q",
            "-m",
            "",
            "-p",
            "no:cacheprovider",
        ],
        cwd=CHECKOUT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert collection.returncode == 0, collection.stdout
    collected = {line.split("::")[0] for line in collection.stdout.splitlines() if "::" in line}
    assert written == collected


def test_no_two_modules_clash_where_case_is_not_told_apart() -> None:
    names = [
        path.relative_to(CHECKOUT).as_posix().lower() for path in CHECKOUT.glob("tests/**/*.py")
    ]
    assert len(names) == len(set(names))
