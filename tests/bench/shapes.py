"""Times thousands of shapes in files: read, checked, measured and drawn, in a process of its own.

Run with a property folder it takes that one and prints what it took; `compare_shapes` writes
properties of two sizes, runs it on them and prints the table. Growth and memory decide how the run
ends; seconds are told.
"""

import gc
import json
import math
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any
from xml.sax.saxutils import quoteattr

CHECKOUT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(CHECKOUT))

from generator.book.pages.pictures_ground import (  # noqa: E402 - after the path above
    place_ground,
    whole_ground,
)
from generator.inventory.load import load_inventory  # noqa: E402 - after the path above
from generator.plan.build.season_plan import make_plan  # noqa: E402 - after the path above
from generator.plan.land.measured import (  # noqa: E402 - after the path above
    measured_around_ft,
    measured_line_ft,
    measured_outline_ac,
)
from tests.bench.measured import told_by  # noqa: E402 - after the path above
from tests.bench.planning import AS_OF, peak_mib  # noqa: E402 - after the path above
from tests.properties import SEASON, small_property, write_property  # noqa: E402 - after the path
from tests.shapes import line_of  # noqa: E402 - after the path above

FEW, MANY, POINTS = 1000, 2000, 100
RUNS = 3
AIM_S, MOST_MB, MOST_GROWTH = 5.0, 400, 1.1
MIDDLE, SCREEN_FT = (41.0, -93.0), 726
# Apart from each other on a square, so that none lies on its neighbor.
STEP_DEG, ACROSS_DEG = 0.0016, 0.0006
# By the number of a shape: the file it lies in, and its kinds there.
FILES = ("outlines.geojson", "outlines.kml", "lines.gpx")
KINDS = (("woods", "pond", "crop_block"), ("wet_ground", "building"), ("fence", "driven_trail"))
LonLat = tuple[float, float]


def wandering(number: int, of: int, *, is_line: bool) -> list[LonLat]:
    """A shape of so many points in a square of its own: an uneven round outline, or a line."""
    side = math.isqrt(of - 1) + 1
    row, column = divmod(number, side)
    lat = MIDDLE[0] + (row - side / 2) * STEP_DEG
    lon = MIDDLE[1] + (column - side / 2) * STEP_DEG
    points = []
    for step in range(POINTS):
        turn = 2 * math.pi * step / POINTS
        if is_line:
            north, east = (step / POINTS - 0.5) * ACROSS_DEG, 0.2 * ACROSS_DEG * math.sin(5 * turn)
        else:
            far = ACROSS_DEG * (0.8 + 0.2 * math.sin(7 * turn + number))
            north, east = far * math.sin(turn), far * math.cos(turn)
        points.append((round(lon + east, 7), round(lat + north, 7)))
    return points


def shaped_property(folder: Path, shapes: int) -> Path:
    """A small property with so many things of the land, each by its shape in one of three files."""
    named: list[list[tuple[str, list[LonLat]]]] = [[] for _ in FILES]
    things = []
    for number in range(shapes):
        file = number % len(FILES)
        kinds, name = KINDS[file], f"Thing {number}"
        named[file].append((name, wandering(number, shapes, is_line=file == len(FILES) - 1)))
        shape = {"file": FILES[file], "name": name}
        kind = kinds[number // len(FILES) % len(kinds)]
        things.append({"id": f"thing-{number}", "kind": kind, "name": name, "shape": shape})
    data: dict[str, Any] = small_property()
    data["screens"]["screens"][0]["line_lat_lon"] = line_of(*MIDDLE, SCREEN_FT)
    data["property"]["location_lat_lon"] = list(MIDDLE)
    data["land"] = {"land": things}
    write_property(folder, data)
    (folder / "shapes").mkdir()
    for file, written, shapes_of in zip(FILES, (_geojson, _kml, _gpx), named, strict=True):
        (folder / "shapes" / file).write_text(written(shapes_of), encoding="utf-8")
    return folder


def _geojson(shapes: list[tuple[str, list[LonLat]]]) -> str:
    features = [
        {
            "type": "Feature",
            "properties": {"name": name},
            "geometry": {"type": "Polygon", "coordinates": [[*points, points[0]]]},
        }
        for name, points in shapes
    ]
    return json.dumps({"type": "FeatureCollection", "features": features})


def _kml(shapes: list[tuple[str, list[LonLat]]]) -> str:
    ring = "<Polygon><outerBoundaryIs><LinearRing><coordinates>{}</coordinates></LinearRing>"
    ring += "</outerBoundaryIs></Polygon>"
    marks = (
        f"<Placemark><name>{name}</name>"
        + ring.format(" ".join(f"{lon},{lat}" for lon, lat in [*points, points[0]]))
        + "</Placemark>"
        for name, points in shapes
    )
    space = quoteattr("http://www.opengis.net/kml/2.2")
    return f"<kml xmlns={space}><Document>{''.join(marks)}</Document></kml>"


def _gpx(shapes: list[tuple[str, list[LonLat]]]) -> str:
    tracks = (
        f"<trk><name>{name}</name><trkseg>"
        + "".join(f'<trkpt lat="{lat}" lon="{lon}"/>' for lon, lat in points)
        + "</trkseg></trk>"
        for name, points in shapes
    )
    space = quoteattr("http://www.topografix.com/GPX/1/1")
    return f'<gpx version="1.1" creator="invented" xmlns={space}>{"".join(tracks)}</gpx>'


def taken(folder: Path) -> dict[str, float]:
    """Read, check, measure and draw a property once in this process: seconds at work, memory."""
    # as in a command, which does without the collector
    gc.disable()
    found: dict[str, float] = {}
    begun = time.perf_counter()

    def timed(name: str, work: Callable[[], Any]) -> Any:
        busy = time.process_time()
        done = work()
        found[name] = time.process_time() - busy
        return done

    loaded = timed("read and check", lambda: load_inventory(folder))
    inventory = loaded.inventory
    assert inventory is not None, loaded.problems
    sizes = timed("measure", lambda: [_measured(thing) for thing in inventory.land])
    plan = timed("plan", lambda: make_plan(inventory, SEASON, AS_OF))
    drawn = timed("draw", lambda: [whole_ground(plan), place_ground(plan, plan.places[0])])
    assert all(size > 0 for size in sizes)
    assert drawn[0] is not None
    points = sum(
        len(typed.lat_lon) for thing in inventory.land if (typed := _points_of(thing)) is not None
    )
    clock = {"by the clock": time.perf_counter() - begun}
    return {**found, **clock, "shapes": len(sizes), "points": points, "mib": peak_mib()}


def _points_of(thing: Any) -> Any:
    return thing.area_lat_lon or thing.line_lat_lon


def _measured(thing: Any) -> float:
    if thing.line_lat_lon is not None:
        return measured_line_ft(thing.line_lat_lon, type(thing)).value
    measured_around_ft(thing.area_lat_lon, type(thing))
    return measured_outline_ac(thing.area_lat_lon, type(thing)).value


def compare_shapes(work: Path, limit: Callable[[str, float, float, str], None]) -> None:
    """Print what many shapes take, and how it grows; `limit` tells what decides."""
    folders = {n: shaped_property(work / f"shaped-{n}", n) for n in (FEW, MANY)}
    runs: dict[int, list[dict[str, float]]] = {n: [] for n in folders}
    for _ in range(RUNS):
        for count, folder in folders.items():
            runs[count].append(told_by(__file__, str(folder)))
    least = {
        n: {key: min(one[key] for one in found) for key in found[0]} for n, found in runs.items()
    }
    many = least[MANY]
    parts = [name for name in many if name not in ("by the clock", "shapes", "points", "mib")]
    busy = {n: sum(found[part] for part in parts) for n, found in least.items()}
    print(
        f"\n{many['shapes']:.0f} shapes of {many['points']:.0f} points out of files, cold "
        f"processes, the least of {RUNS}"
    )
    for part in parts:
        print(f"  {part:48s} {many[part]:8.3f} s at work")
    took_s = many["by the clock"]
    met = "met" if took_s <= AIM_S else "not met"
    print(f"  {'all of it, by the clock':48s} {took_s:8.3f} s  aim {AIM_S:g} s: {met}")
    growth = busy[MANY] / busy[FEW] / (many["points"] / least[FEW]["points"])
    limit(f"growth from {FEW} shapes, in line with them", growth, MOST_GROWTH, "")
    limit("most memory held for shapes", max(one["mib"] for one in runs[MANY]), MOST_MB, " MB")


if __name__ == "__main__":
    print(json.dumps(taken(Path(sys.argv[1]))))
