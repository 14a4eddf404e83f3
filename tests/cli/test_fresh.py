"""What runs keep to be faster changes no byte of what they make."""

import os
import subprocess
import sys
from pathlib import Path

from tests.full_disk import contents
from tests.properties import small_property, write_property


def _built(land: Path, out: Path, *words: str, **environment: str) -> dict[str, bytes | None]:
    """The books of a property, built by a process of its own."""
    base = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    command = (sys.executable, "-m", "generator", "build", str(land), "--out", str(out), *words)
    day = ("--as-of", "2026-08-20")
    subprocess.run([*command, *day], check=True, capture_output=True, env=base | environment)
    return contents(out)


def test_with_what_was_kept_and_without_it_the_books_are_the_same(tmp_path: Path) -> None:
    land = write_property(tmp_path / "land", small_property())
    fresh = _built(land, tmp_path / "fresh", "--fresh")
    assert len(fresh) > 100
    assert _built(land, tmp_path / "first") == fresh
    assert _built(land, tmp_path / "warm") == fresh
    # where Python itself keeps nothing, nothing is
    assert _built(land, tmp_path / "bare", PYTHONDONTWRITEBYTECODE="1") == fresh
