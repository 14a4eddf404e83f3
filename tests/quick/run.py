"""Runs the tests that what changed in the working tree can break, for about a minute.

    python -m tests.quick.run [COMMIT]

What changed is told against a commit, the last one where none is named; files that git does not
know count too. Of the tests that look at what changed, the nearest are run first, as many as a
minute takes by what they took last; the others are named. `make test` runs them all.
"""

from __future__ import annotations

import argparse
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

from tests.quick import seconds
from tests.quick.chosen import CHECKOUT, chosen, names_on

# What two processes get done in most of a minute, beside the time they take to collect.
MOST_S = 60.0


def changed_since(commit: str) -> list[Path]:
    """Return the files that differ from a commit, or are new."""
    told = ("git", "diff", "--name-only", "--diff-filter=d", commit, "--")
    new = ("git", "ls-files", "--others", "--exclude-standard")
    names: set[str] = set()
    for command in (told, new):
        ended = subprocess.run(command, cwd=CHECKOUT, capture_output=True, text=True, check=True)
        names |= set(ended.stdout.splitlines())
    return [CHECKOUT / name for name in sorted(names)]


def changed_lines(commit: str) -> list[str]:
    """Return the lines that differ from a commit in files of data, as they were and as they are."""
    command = ("git", "diff", "--unified=0", commit, "--", "generator/reference/data")
    ended = subprocess.run(command, cwd=CHECKOUT, capture_output=True, text=True, check=True)
    return [
        line[1:]
        for line in ended.stdout.splitlines()
        if line[:1] in "+-" and line[:3] not in ("+++", "---")
    ]


def main(words: Sequence[str] | None = None) -> int:
    """Choose the tests, run them, and return what pytest ends with."""
    parser = argparse.ArgumentParser(prog="tests.quick.run", description=__doc__)
    parser.add_argument("commit", nargs="?", default="HEAD")
    asked = parser.parse_args(words)
    changed = changed_since(asked.commit)
    if not changed:
        print(f"Nothing differs from {asked.commit}.")
        return 0
    took = seconds.known()
    tests, left = chosen(changed, took, MOST_S, names_on(changed_lines(asked.commit)))
    print(f"{len(changed)} files changed: {len(tests)} files of tests, {len(left)} left out")
    if left:
        print("Left out:", *(one.relative_to(CHECKOUT).as_posix() for one in left))
    names = [one.relative_to(CHECKOUT).as_posix() for one in tests]
    command = (sys.executable, "-m", "pytest", "-q", "-n", "2", "--dist", "loadgroup", "-x", *names)
    return subprocess.run(command, cwd=CHECKOUT, check=False).returncode if names else 0


if __name__ == "__main__":
    sys.exit(main())
