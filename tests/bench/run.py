"""Times whole builds from a cold start against plain `mkdocs build` of the same pages.

Prints each value with its target and the machine; ends with 1 only where a ratio is missed.
Planning from long weather and the builds of the demo property are timed against aims, and told.
"""

import datetime
import os
import platform
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(CHECKOUT))

from generator.book.make import make_book  # noqa: E402 - after the path above
from generator.book.model import Book  # noqa: E402 - after the path above
from generator.inventory.load import load_inventory  # noqa: E402 - after the path above
from generator.plan.build.season_plan import make_plan  # noqa: E402 - after the path above
from generator.site.stage import stage  # noqa: E402 - after the path above
from tests.bench.planning import (  # noqa: E402 - after the path above
    PLANTINGS,
    YEARS,
    compare_planning,
    told,
    weathered_property,
)
from tests.book.sites import DEMO, demo_readers  # noqa: E402 - after the path above
from tests.properties import SEASON, make_property  # noqa: E402 - after the path above

RUNS = 5
SEED = 2027
DEMO_AIM_S = 3.0
# Pages of the book: the most that our whole build may take of plain MkDocs' time.
TARGETS = {100: 0.60, 300: 0.45}
AS_OF = datetime.date(2026, 8, 20)
# Material prints a warning about the next MkDocs and waits; neither side shall pay for it.
ENVIRONMENT = os.environ | {"NO_MKDOCS_2_WARNING": "1", "PYTHONPATH": str(CHECKOUT)}
# Both sides keep what they compile, as they do for everybody who runs them twice.
ENVIRONMENT.pop("PYTHONDONTWRITEBYTECODE", None)


def seconds(*command: str) -> float:
    """Wall time of one cold process. Raises CalledProcessError where it fails."""
    begun = time.perf_counter()
    subprocess.run(
        [sys.executable, *command],
        check=True,
        capture_output=True,
        env=ENVIRONMENT,
        cwd=tempfile.gettempdir(),
    )
    return time.perf_counter() - begun


def book_of(folder: Path) -> Book:
    """The owner's book of a property folder."""
    inventory = load_inventory(folder).inventory
    assert inventory is not None
    return make_book(make_plan(inventory, SEASON, AS_OF))


def property_of(pages: int, work: Path) -> tuple[Path, Book]:
    """A generated property whose book has at least so many pages, and hardly more."""
    screens = 1
    while True:
        folder = make_property(work / f"property-{pages}-{screens}", SEED, screens)
        book = book_of(folder)
        if len(book.pages) >= pages:
            return folder, book
        screens += 1


def compare(pages: int, work: Path) -> bool:
    """Print how long both take for a book of so many pages; return whether the target is met."""
    folder, book = property_of(pages, work)
    tree = stage(book, work / f"tree-{pages}")
    ours: list[float] = []
    plain: list[float] = []
    for run in range(RUNS):
        site = work / f"ours-{pages}-{run}"
        build = ("-m", "generator", "build", str(folder), "--for", "owner", "--out", str(site))
        ours.append(seconds(*build))
        other = ("-q", "-f", str(tree / "mkdocs.yml"), "-d", str(work / f"plain-{pages}-{run}"))
        plain.append(seconds("-m", "mkdocs", "build", *other))
    ratio = statistics.median(ours) / statistics.median(plain)
    met = ratio <= TARGETS[pages]
    print(
        f"\n{len(book.pages)} pages, cold processes, median of {RUNS}, one after the other in turn"
    )
    print(f"  handbook build      {_spread(ours)}")
    print(f"  mkdocs build        {_spread(plain)}")
    print(
        f"  ratio               {ratio:.3f}, target at most {TARGETS[pages]:.2f}: "
        f"{'met' if met else 'MISSED'}"
    )
    return met


def _spread(times: list[float]) -> str:
    return f"{statistics.median(times):6.2f} s  ({min(times):.2f} to {max(times):.2f})"


def compare_check(work: Path) -> None:
    """Print how long `check` takes beside starting the interpreter; there is no target."""
    folder, _ = property_of(100, work / "check")
    checks, starts = [], []
    for _ in range(RUNS):
        checks.append(seconds("-m", "generator", "check", str(folder)))
        starts.append(seconds("-c", "pass"))
    print("\nreading the property of 100 pages (no target)")
    print(f"  handbook check      {_spread(checks)}")
    print(f"  python -c pass      {_spread(starts)}")


def compare_weather(work: Path) -> None:
    """Print what reading takes without weather and with it; there is no target."""
    print(f"\nreading {PLANTINGS[0]} screens without weather and with it (no target)")
    for years in (0, YEARS[0], YEARS[-1]):
        folder = weathered_property(work / f"weather-{years}", PLANTINGS[0], years)
        checks = [seconds("-m", "generator", "check", str(folder)) for _ in range(RUNS)]
        print(f"  {years:3d} years           {_spread(checks)}")


def compare_demo(work: Path) -> None:
    """Print what the books of the demo property take, one by one and together."""
    readers = demo_readers()
    print(f"\nbooks of the demo property, cold processes, median of {RUNS}")
    for reader in readers:
        _demo_build(work, reader, ("--for", reader), DEMO_AIM_S)
    _demo_build(work, "all of them", (), DEMO_AIM_S * len(readers))


def _demo_build(work: Path, name: str, choice: tuple[str, ...], aim: float) -> None:
    build = ("-m", "generator", "build", str(DEMO), *choice)
    times = [
        seconds(*build, "--out", str(work / f"demo-{name.replace(' ', '-')}-{run}"))
        for run in range(RUNS)
    ]
    middle = statistics.median(times)
    print(f"  {name:19s} {_spread(times)}  aim at most {aim:g} s: {told(middle, aim)}")


def machine() -> str:
    """What this runs on: processor, cores, system, Python."""
    model = platform.processor() or platform.machine()
    cpuinfo = Path("/proc/cpuinfo")
    if cpuinfo.is_file():
        names = [line for line in cpuinfo.read_text().splitlines() if line.startswith("model name")]
        model = names[0].partition(":")[2].strip() if names else model
    system = f"{platform.system()} {platform.release()}"
    return f"{model}, {os.cpu_count()} cores, {system}, Python {platform.python_version()}"


def main() -> int:
    """Run every comparison; return 1 where a ratio is missed."""
    print(machine())
    if hasattr(os, "getloadavg"):
        print(f"load before: {os.getloadavg()[0]:.2f}")
    with tempfile.TemporaryDirectory() as work:
        met = [compare(pages, Path(work)) for pages in TARGETS]
        compare_check(Path(work))
        compare_weather(Path(work))
        compare_planning(Path(work), ENVIRONMENT)
        compare_demo(Path(work))
    return 0 if all(met) else 1


if __name__ == "__main__":
    sys.exit(main())
