"""Times a season planned from long weather and many plantings, each in a process of its own.

Run with a property folder it plans that one and prints what it took; `compare_planning` writes
properties, runs it on them and prints the table. Nothing here fails a run: aims are told.
"""

import datetime
import itertools
import json
import statistics
import subprocess
import sys
import time
import tracemalloc
from dataclasses import dataclass
from pathlib import Path
from typing import Any

CHECKOUT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(CHECKOUT))

from generator.inventory.load import load_inventory  # noqa: E402 - after the path above
from generator.plan.build.season_plan import make_plan  # noqa: E402 - after the path above
from generator.plan.views.years_ahead import years_ahead  # noqa: E402 - after the path above
from tests.invented_weather import invented_days  # noqa: E402 - after the path above
from tests.properties import SEASON, property_data, write_property  # noqa: E402 - after the path

RUNS = 3
SEED = 2027
AS_OF = datetime.date(2026, 8, 20)
LAST_YEAR = 2025
PLAN_AIM_S = 2.0
TIMES_TWO = 2.0
PLANTINGS, YEARS = (50, 100, 200), (25, 50, 100)
BYTES_IN_KIB = 1024
MIB = 1024 * 1024


@dataclass(frozen=True)
class Planned:
    """What one property took: seconds to read, to plan and look ahead, and its sizes.

    `busy_s` is what the processor was busy with planning: another program in the way is not in it.
    """

    read_s: float
    plan_s: float
    busy_s: float
    plantings: int
    jobs: int
    seasons: int
    peak_mib: float


def weather_of(years: int) -> str:
    """So many whole years of an invented daily record, rain and all."""
    first, last = datetime.date(LAST_YEAR + 1 - years, 1, 1), datetime.date(LAST_YEAR, 12, 31)
    rows = (
        f"{day},{high},{low},{rain:.2f}" for day, high, low, rain in invented_days(5, first, last)
    )
    return "\n".join(["date,tmax_f,tmin_f,precip_in", *rows]) + "\n"


def weathered_property(folder: Path, screens: int, years: int) -> Path:
    """A generated property of so many screens, its season signs found in so many years."""
    data: dict[str, Any] = property_data(SEED, screens)
    if years:
        data["property"]["season_signs"] = {}
        station = {"id": "farm", "name": "Farm", "file": "weather/farm.csv", "kind": "plain"}
        data["weather"] = {"stations": [station]}
        data["weather_files"] = {"farm.csv": weather_of(years)}
    return write_property(folder, data)


def measured(folder: Path) -> dict[str, float]:
    """Read and plan a property once in this process."""
    begun = time.perf_counter()
    inventory = load_inventory(folder).inventory
    assert inventory is not None
    read, busy = time.perf_counter(), time.process_time()
    plan = make_plan(inventory, SEASON, AS_OF)
    seasons = years_ahead(plan)
    planned, busy_until = time.perf_counter(), time.process_time()
    return {
        "read_s": read - begun,
        "plan_s": planned - read,
        "busy_s": busy_until - busy,
        "plantings": sum(len(place.plantings) for place in inventory.places()),
        "jobs": sum(len(one.jobs) for one in seasons),
        "seasons": len(seasons),
        "peak_mib": peak_mib(),
    }


def peak_mib() -> float:
    """The most memory this process held; where the system does not tell, the most Python did.

    Linux counts to a process what the one that began it had held; its own stands elsewhere.
    """
    own = Path("/proc/self/status")
    if own.exists():
        (line,) = (one for one in own.read_text().splitlines() if one.startswith("VmHWM:"))
        return int(line.split()[1]) / BYTES_IN_KIB
    try:
        import resource
    except ImportError:
        return tracemalloc.get_traced_memory()[1] / MIB
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return most / MIB if sys.platform == "darwin" else most / BYTES_IN_KIB


def planned_in(folder: Path, environment: dict[str, str]) -> Planned:
    """The middle of several runs, each from a cold start."""
    runs = []
    for _ in range(RUNS):
        done = subprocess.run(
            [sys.executable, __file__, str(folder)],
            check=True,
            capture_output=True,
            text=True,
            env=environment,
        )
        runs.append(json.loads(done.stdout))
    return Planned(**{key: statistics.median(run[key] for run in runs) for key in runs[0]})


def compare_planning(work: Path, environment: dict[str, str]) -> None:
    """Print what a long record and many plantings take, and how it grows with either."""
    largest = (PLANTINGS[-1], YEARS[-1])
    sizes = [(one, YEARS[-1]) for one in PLANTINGS] + [(PLANTINGS[-1], one) for one in YEARS[:-1]]
    found = {
        (screens, years): planned_in(
            weathered_property(work / f"planned-{screens}-{years}", screens, years), environment
        )
        for screens, years in sizes
    }
    most = found[largest]
    print(
        f"\na season planned from {largest[1]} years of days, {most.plantings:.0f} plantings and "
        f"{most.seasons:.0f} seasons, cold processes, median of {RUNS}"
    )
    print(f"  read the folder     {most.read_s:6.2f} s")
    met = told(most.plan_s, PLAN_AIM_S)
    print(f"  plan and look ahead {most.plan_s:6.2f} s  aim at most {PLAN_AIM_S:g} s: {met}")
    print(f"  of it at work       {most.busy_s:6.2f} s")
    print(f"  jobs in all         {most.jobs:6.0f}")
    print(f"  most memory held    {most.peak_mib:6.0f} MiB")
    _grown("plantings", [(one, found[one, largest[1]]) for one in PLANTINGS])
    _grown("years of weather", [(one, found[largest[0], one]) for one in YEARS])


def _grown(what: str, found: list[tuple[int, Planned]]) -> None:
    print(f"  twice the {what}, in line with it: at most x{TIMES_TWO:g} the time at work")
    for (_, before), (count, after) in itertools.pairwise(found):
        ratio = after.busy_s / before.busy_s
        met = told(ratio, TIMES_TWO)
        print(f"    to {count:4d}           {after.busy_s:6.2f} s  x{ratio:.2f}: {met}")


def told(value: float, aim: float) -> str:
    """Whether an aim is met, in a word."""
    return "met" if value <= aim else "NOT MET"


if __name__ == "__main__":
    if sys.platform == "win32":
        tracemalloc.start()
    print(json.dumps(measured(Path(sys.argv[1]))))
