"""Twenty faults of one line, each in another part, that `make quick` has to catch.

    python -m tests.quick.faults

Each is made in a copy of the checkout, `make quick`'s choice of tests is run over it, and the time
it takes is printed. Ends with 1 where one is not caught, or takes more than a minute.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from tests.quick import seconds
from tests.quick.chosen import CHECKOUT

MOST_S = 60.0
LEFT_BEHIND = shutil.ignore_patterns(".git", ".venv", "__pycache__", ".*_cache", ".hypothesis")


class Fault(NamedTuple):
    """A line that is changed: its file, what stands there, what stands there then."""

    file: str
    before: str
    after: str


FAULTS = (
    Fault("generator/units.py", "QT_PER_GAL = 4", "QT_PER_GAL = 5"),
    Fault("generator/compute/water.py", "short_gal / min(", "short_gal / max("),
    Fault("generator/geometry/pieces.py", "width_ft / 2, cap_style", "width_ft / 3, cap_style"),
    Fault("generator/reference/data/values.yaml",
          "water_mark_fl_oz, value: 8", "water_mark_fl_oz, value: 9"),
    Fault("generator/inventory/zone_points.py", "WHOLE_TURN_DEG = 360", "WHOLE_TURN_DEG = 36"),
    Fault("generator/inventory/plain_values.py", '"sw"', '"ws"'),
    Fault("generator/plan/season/open_dates.py", "dates.closes < as_of", "dates.closes <= as_of"),
    Fault("generator/plan/log/state.py", "in beside and finished_on", "in beside or finished_on"),
    Fault("generator/plan/log/entries.py", "entry.done_on <= as_of)", "entry.done_on < as_of)"),
    Fault("generator/plan/days/contracts.py", "approved <= as_of", "approved < as_of"),
    Fault("generator/plan/labels/clearance.py", "use.timing == asked.timing", "True"),
    Fault("generator/plan/labels/limit_stops.py", "> times", ">= times"),
    Fault("generator/plan/labels/distances.py", "distance_ft.value <", "distance_ft.value >"),
    Fault("generator/plan/spraying/tank.py", "< _least_of_a_tank()", "> _least_of_a_tank()"),
    Fault("generator/plan/after/waits.py", "math.ceil(wait.value)", "math.floor(wait.value)"),
    Fault("generator/plan/readers/partner.py",
          "TOLD_TO_PARTNERS = (", "TOLD_TO_PARTNERS = ('quiet', "),
    Fault("generator/book/mornings.py", "MOST_ALARMS = 3", "MOST_ALARMS = 4"),
    Fault("generator/site/mark.py", "sha256", "sha1"),
    Fault("content/callouts/spray.md", "- **", "- 12 ft **"),
    Fault("site_templates/pages/emergency.md.jinja",
          "{% for line in lines %}", "{% for line in lines[1:] %}"),
)  # fmt: skip


def caught(fault: Fault, folder: Path) -> tuple[bool, float]:
    """Return whether the tests that are chosen for a fault catch it, and after how many seconds."""
    tree = folder / "checkout"
    shutil.copytree(CHECKOUT, tree, ignore=_left_behind)
    _git(tree, "init", "-q")
    _git(tree, "add", "-A")
    _git(tree, "-c", "user.name=x", "-c", "user.email=x", "commit", "-qm", "before")
    path = tree / fault.file
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace(fault.before, fault.after, 1), encoding="utf-8")
    if seconds.KEPT.is_file():
        (tree / "build").mkdir()
        shutil.copy(seconds.KEPT, tree / "build")
    begun = time.monotonic()
    command = (sys.executable, "-m", "tests.quick.run")
    ended = subprocess.run(command, cwd=tree, env=_with(tree), capture_output=True, check=False)
    # a test that failed or what it rests on, not tests that could not be read or found
    told = rb"^\d+ (failed|passed, \d+ error|error)"
    found = ended.returncode != 0 and re.search(told, ended.stdout, re.MULTILINE)
    return bool(found), time.monotonic() - begun


def _left_behind(folder: str, names: list[str]) -> set[str]:
    # the checkout's own folder of what was built; one of the rooms has that name too
    built = {"build"} if Path(folder) == CHECKOUT else set()
    return built | LEFT_BEHIND(folder, names)


def _git(tree: Path, *words: str) -> None:
    subprocess.run(("git", *words), cwd=tree, check=True, capture_output=True)


def _with(tree: Path) -> dict[str, str]:
    return {**os.environ, "PYTHONPATH": str(tree)}


def missing() -> Iterator[str]:
    """Yield the faults whose line is no longer there."""
    for fault in FAULTS:
        if fault.before not in (CHECKOUT / fault.file).read_text(encoding="utf-8"):
            yield f"{fault.file}: {fault.before}"


def main() -> int:
    """Try every fault; return 1 where one was not caught within a minute."""
    wanting = list(missing())
    for fault in FAULTS if not wanting else ():
        with tempfile.TemporaryDirectory() as folder:
            found, took = caught(fault, Path(folder))
        print(f"{'caught' if found else 'NOT CAUGHT'} in {took:4.0f} s  {fault.file}", flush=True)
        if not found or took > MOST_S:
            wanting.append(fault.file)
    print(*wanting, sep="\n")
    return 1 if wanting else 0


if __name__ == "__main__":
    sys.exit(main())
