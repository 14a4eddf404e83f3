"""Measures a whole build against plain MkDocs, and prints ratios of one and the same run.

Run by `make bench`. Ends with 1 only where a ratio misses its target; times alone are printed.
"""

import os
import platform
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from generator.book.make import make_book  # noqa: E402 - the checkout goes onto the path first
from generator.inventory.load import load_inventory  # noqa: E402
from generator.plan.build import make_plan  # noqa: E402
from generator.site.stage import stage  # noqa: E402
from tests.properties import make_property  # noqa: E402

ROUNDS = 5
SEED = 7


@dataclass(frozen=True)
class Target:
    """At most this ratio of our build to plain MkDocs, for a book of about so many pages."""

    pages: int
    at_most: float


TARGETS = (Target(100, 0.60), Target(300, 0.45))


def main() -> int:
    """Print every measure; 1 where a ratio misses its target."""
    print(f"machine: {_processor()}, {os.cpu_count()} cores, Python {platform.python_version()}")
    missed = 0
    with tempfile.TemporaryDirectory() as folder:
        for target in TARGETS:
            missed += not _build_holds(Path(folder) / str(target.pages), target)
        _say_check(Path(folder) / str(TARGETS[0].pages) / "property")
    return int(missed > 0)


def _build_holds(folder: Path, target: Target) -> bool:
    property_folder, pages = _property_of(folder, target.pages)
    tree = stage(_book(property_folder), _made(folder / "tree"))
    ours = [sys.executable, "-m", "generator", "build", str(property_folder), "--for", "owner"]
    plain = [sys.executable, "-m", "mkdocs", "build", "-q", "-f", str(tree / "mkdocs.yml")]
    build_s: list[float] = []
    mkdocs_s: list[float] = []
    for _ in range(ROUNDS):
        build_s.append(_seconds([*ours, "--out", str(folder / "out")]))
        mkdocs_s.append(_seconds([*plain, "-d", str(folder / "plain")]))
    build, mkdocs = statistics.median(build_s), statistics.median(mkdocs_s)
    ratio = build / mkdocs
    holds = ratio <= target.at_most
    print(
        f"{pages} pages: handbook build {build:.2f} s, mkdocs build {mkdocs:.2f} s, "
        f"ratio {ratio:.2f}, target at most {target.at_most:.2f}: {'met' if holds else 'MISSED'}"
    )
    return holds


def _property_of(folder: Path, pages: int) -> tuple[Path, int]:
    """Write the smallest generated property whose owner's book has at least so many pages."""
    screens = 1
    while True:
        made = make_property(folder / f"with-{screens}", SEED, screens)
        count = len(_book(made).pages)
        if count >= pages:
            return made.rename(folder / "property"), count
        screens = max(screens + 1, int(screens * pages / count))


def _book(property_folder: Path):
    loaded = load_inventory(property_folder)
    assert loaded.inventory is not None, loaded.problems
    day = loaded.inventory.property.as_of or loaded.last_recorded
    assert day is not None
    season = loaded.inventory.property.season
    return make_book(make_plan(loaded.inventory, season, day, as_of_typed=True))


def _made(folder: Path) -> Path:
    folder.mkdir(parents=True)
    return folder


def _say_check(property_folder: Path) -> None:
    check = [sys.executable, "-m", "generator", "check", str(property_folder)]
    bare = [sys.executable, "-c", "pass"]
    check_s = statistics.median(_seconds(check) for _ in range(ROUNDS))
    bare_s = statistics.median(_seconds(bare) for _ in range(ROUNDS))
    print(
        f"handbook check {check_s:.2f} s, a bare interpreter {bare_s:.2f} s, "
        f"ratio {check_s / bare_s:.1f} (no target)"
    )


def _seconds(command: Sequence[str]) -> float:
    environment = os.environ | {"NO_MKDOCS_2_WARNING": "1"}
    begun = time.perf_counter()
    subprocess.run(command, cwd=ROOT, env=environment, check=True, capture_output=True)
    return time.perf_counter() - begun


def _processor() -> str:
    try:
        lines = Path("/proc/cpuinfo").read_text(encoding="utf-8").splitlines()
    except OSError:
        return platform.processor() or platform.machine()
    names = (line.partition(":")[2].strip() for line in lines if line.startswith("model name"))
    return next(names, platform.machine())


if __name__ == "__main__":
    sys.exit(main())
