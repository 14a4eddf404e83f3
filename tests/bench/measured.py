"""What a command takes: wall and processor time, and the memory of all its processes."""

import json
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
RUNS = 5
EVERY_S = 0.02
KB_IN_MB = 1024
# Material prints a warning about the next MkDocs and waits; neither side shall pay for it.
ENVIRONMENT = os.environ | {"NO_MKDOCS_2_WARNING": "1", "PYTHONPATH": str(CHECKOUT)}
# Both sides keep what they compile, as they do for everybody who runs them twice.
ENVIRONMENT.pop("PYTHONDONTWRITEBYTECODE", None)


@dataclass(frozen=True)
class Took:
    """One run: seconds by the clock, seconds of processors, megabytes held at the most at once."""

    wall_s: float
    cpu_s: float
    memory_mb: float


def run(*command: str, watched: bool = False) -> Took:
    """Run a command as a cold process. Raises CalledProcessError where it fails.

    Memory is asked for only where `watched`, since looking takes time of its own.
    """
    before, begun = os.times(), time.perf_counter()
    process = subprocess.Popen(
        [sys.executable, *command],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        env=ENVIRONMENT,
        cwd=tempfile.gettempdir(),
    )
    most_kb = 0
    while watched and process.poll() is None:
        most_kb = max(most_kb, sum(_shared_kb(pid) for pid in _with_children(process.pid)))
        time.sleep(EVERY_S)
    _, errors = process.communicate()
    after, wall = os.times(), time.perf_counter() - begun
    if process.returncode:
        raise subprocess.CalledProcessError(process.returncode, command, stderr=errors)
    cpu = after.children_user + after.children_system
    cpu -= before.children_user + before.children_system
    return Took(wall, cpu, most_kb / KB_IN_MB)


def told_by(script: str | Path, *command: str) -> dict[str, float]:
    """What a script of the bench prints of itself, run as a cold process."""
    done = subprocess.run(
        [sys.executable, str(script), *command],
        check=True,
        capture_output=True,
        text=True,
        env=ENVIRONMENT,
    )
    found: dict[str, float] = json.loads(done.stdout)
    return found


def _with_children(pid: int) -> Iterator[int]:
    yield pid
    try:
        children = Path(f"/proc/{pid}/task/{pid}/children").read_text().split()
    except OSError:
        return
    for child in children:
        yield from _with_children(int(child))


def _shared_kb(pid: int) -> int:
    """Return the memory of a process, what it shares with another counted in part (PSS)."""
    try:
        lines = Path(f"/proc/{pid}/smaps_rollup").read_text().splitlines()
    except OSError:
        return 0
    return next((int(line.split()[1]) for line in lines if line.startswith("Pss:")), 0)


def least(takes: Sequence[Took]) -> Took:
    """Return the least of several runs in each respect: what the work itself takes."""
    return Took(
        min(one.wall_s for one in takes),
        min(one.cpu_s for one in takes),
        max(one.memory_mb for one in takes),
    )


def in_turn(*commands: Callable[[], Took], runs: int = RUNS) -> list[Took]:
    """Run commands one after the other, again and again, and return the least of each."""
    found: list[list[Took]] = [[] for _ in commands]
    for _ in range(runs):
        for taken, command in zip(found, commands, strict=True):
            taken.append(command())
    return [least(taken) for taken in found]
