"""Tiny properties with all of the land drawn: typed, in files of each form, over a grid of heights.

The strip runs north from 41.03, -93.02; what labels keep from, what hides, what is walked and
hunted lies around it, some on it.
"""

from __future__ import annotations

import json
from typing import Any

from generator.reference.land_kinds import land_kinds
from tests.inventory.shaped import feature, gpx, kml, packed, placemark, tuples
from tests.properties import Data, full_card, full_use, small_property

LAT, LON = 41.03, -93.02
STEP = 0.0002  # of a degree: 73 ft to the north, 55 ft to the east
Spot = tuple[float, float]
KEPT = [
    {"keep_from": "streams", "distance_ft": 66, "kind": "open_water", "counts_from": "bank"},
    {"keep_from": "wells", "distance_ft": 50, "kind": "well", "counts_from": "as_printed"},
    {"keep_from": "houses", "distance_ft": 100, "kind": "dwelling", "counts_from": "as_printed"},
]
WAY_IN = [(-4.0, -2.0), (-4.1, 3.0), (-2.0, 8.0)]
FIELD = [(4.0, 1.0), (8.0, 1.0), (8.0, 6.0), (4.0, 6.0), (4.0, 1.0)]


def at(east: float, north: float) -> list[float]:
    """A point so many steps from the foot of the strip, as it is typed."""
    return [round(LAT + north * STEP, 7), round(LON + east * STEP, 7)]


def pairs(spots: list[Spot]) -> list[tuple[float, float]]:
    """Points as files of shapes have them, longitude first."""
    return [(at(*spot)[1], at(*spot)[0]) for spot in spots]


def _thing(kind: str, number: int) -> Data:
    """A thing of the land in the last form it may have, those of one form side by side."""
    east, north = -3.0 + number % 6, -1.0 + number // 6 * 2.0
    form = land_kinds()[kind].drawn[-1]
    said: Data = {"id": f"the-{kind.replace('_', '-')}", "kind": kind, "name": f"The {kind}"}
    if form == "point":
        return said | {"at_lat_lon": at(east, north)}
    if form == "line":
        return said | {
            "line_lat_lon": [at(east, north), at(east + 1.4, north + 2.7)],
            "got": "phone",
        }
    corners = [(east, north), (east + 0.8, north), (east + 0.8, north + 0.9), (east, north + 0.9)]
    return said | {"area_lat_lon": [at(*corner) for corner in corners], "off_ft": 7}


def drawn() -> Data:
    """A property with a thing of every kind, a walk and two stands, all of them typed."""
    data = small_property(full_card(full_use(setbacks_ft=KEPT, slope_limit_pct=10)))
    (screen,) = data["screens"]["screens"]
    screen |= {"line_lat_lon": [at(0, 0), at(0, 10)], "got": "surveyed", "hides": ["way"]}
    well = {"kind": "well", "counts_from": "wall", "distance_ft": 40}
    screen["near"] = {"slope": "gentle", "distances": [well]}
    data["property"] |= {
        "location_lat_lon": [LAT, LON],
        "time_zone": "America/Chicago",
        "slope_limit_pct": 12,
        "elevation": {"file": "farm.asc", "heights_in": "ft", "source": "invented"},
    }
    things = [_thing(kind, number) for number, kind in enumerate(land_kinds())]
    things[0] |= {"area_lat_lon": [at(-9, -9), at(12, -9), at(12, 20), at(-9, 20)]}
    data["land"] = {"land": things}
    data["routes"] = {
        "routes": [
            {
                "id": "way",
                "name": "Way in",
                "line_lat_lon": [at(*spot) for spot in WAY_IN],
                "parking_lat_lon": at(-4, -3),
                "gate_lat_lon": at(-4, -2.5),
                "serves": ["oak"],
            }
        ]
    }
    arc = {"from_deg": 300, "to_deg": 60, "reach_yd": 200}
    data["stands"] = {
        "stands": [
            {"id": "oak", "name": "Oak", "at_lat_lon": at(-2, 8), "arc_of_fire": arc},
            {"id": "elm", "name": "Elm", "at_lat_lon": at(6, 3), "got": "phone"},
        ]
    }
    data["elevation_files"] = {"farm.asc": _heights()}
    return data


def _heights() -> str:
    rows = [" ".join(f"{900 - 2 * east + north % 3}" for east in range(24)) for north in range(32)]
    west, south = at(-9, -9)[1], at(-9, -9)[0]
    head = f"ncols 24\nnrows 32\nxllcorner {west}\nyllcorner {south}\ncellsize {STEP}\n"
    return head + "NODATA_value -9999\n" + "\n".join(rows) + "\n"


def in_files() -> tuple[Data, dict[str, Any], dict[str, bytes]]:
    """The same with shapes in files of every form: its YAML, its files of text, its archive.

    A text of JSON stands there as what it says, so that it can be damaged as YAML is.
    """
    data = drawn()
    data["property"]["name"] = "Small bend, in files"
    things = {one["kind"]: one for one in data["land"]["land"]}
    for kind, file, name in (
        ("boundary", "farm.geojson", "Boundary"),
        ("woods", "farm.geojson", "Woods"),
        ("creek", "farm.geojson", "Creek"),
        ("well", "farm.kml", "Old well"),
        ("fence", "farm.kml", "Fence"),
        ("crop_block", "farm.kml", "Field"),
        ("pond", "ponds.kmz", "Lower pond"),
        ("deer_trail", "walked.gpx", "Trail"),
        ("crossing", "walked.gpx", "Planks"),
    ):
        for key in ("at_lat_lon", "line_lat_lon", "area_lat_lon"):
            things[kind].pop(key, None)
        things[kind]["shape"] = {"file": file, "name": name}
    (screen,), (way,) = data["screens"]["screens"], data["routes"]["routes"]
    del screen["line_lat_lon"], way["line_lat_lon"]
    screen["shape"] = {"file": "walked.gpx", "name": "Lane"}
    way["shape"] = {"file": "walked.gpx", "name": "Way in"}
    del data["stands"]["stands"][0]["at_lat_lon"]
    data["stands"]["stands"][0]["shape"] = {"file": "walked.gpx", "name": "Oak"}
    return data, _texts_of_shapes(), {"shapes/ponds.kmz": _archive()}


def _texts_of_shapes() -> dict[str, Any]:
    bounds = [(-9.0, -9.0), (12.0, -9.0), (12.0, 20.0), (-9.0, 20.0), (-9.0, -9.0)]
    woods = [(-8.0, 2.0), (-6.0, 2.0), (-6.0, 9.0), (-8.0, 9.0), (-8.0, 2.0)]
    glade = [(-7.5, 4.0), (-7.0, 6.0), (-6.5, 4.0), (-7.5, 4.0)]
    creek = [(-9.0, 12.0), (-3.0, 11.0), (2.0, 11.5), (12.0, 13.0)]
    collection = {
        "type": "FeatureCollection",
        "features": [
            feature("Boundary", "Polygon", [pairs(bounds)]),
            feature("Woods", "MultiPolygon", [[pairs(woods), pairs(glade)]]),
            feature("Creek", "LineString", pairs(creek)),
            {"type": "Feature", "properties": None, "geometry": None},
        ],
    }
    well = f"<Point><coordinates>{tuples(pairs([(3.0, 2.0)]))}</coordinates></Point>"
    along = tuples(pairs([(-9.0, 0.0), (12.0, 0.5)]))
    fence = f"<LineString><coordinates>\n{along}\n</coordinates></LineString>"
    ring = f"<LinearRing><coordinates>{tuples(pairs(FIELD))}</coordinates></LinearRing>"
    field = f"<Polygon><outerBoundaryIs>{ring}</outerBoundaryIs></Polygon>"
    inside = (
        f"<Folder><name>Water</name>\n{placemark('Old well', well)}\n</Folder>\n"
        f"{placemark('Fence', fence)}\n{placemark('Field', field)}\n"
    )
    return {
        "shapes/farm.geojson": json.loads(json.dumps(collection)),
        "shapes/farm.kml": kml(inside).decode(),
        "shapes/walked.gpx": _walked(),
    }


def _walked() -> str:
    def point(tag: str, spot: Spot, more: str = "") -> str:
        lat, lon = at(*spot)
        return f'<{tag} lat="{lat}" lon="{lon}"><ele>270</ele>{more}</{tag}>'

    def track(name: str, spots: list[Spot]) -> str:
        points = "\n".join(point("trkpt", spot) for spot in spots)
        return f"<trk><name>{name}</name><trkseg>\n{points}\n</trkseg></trk>"

    trail = "\n".join(point("rtept", spot) for spot in [(-1.0, -4.0), (2.0, 6.0), (3.0, 14.0)])
    stand = point("wpt", (-2.0, 8.0), "<name>Oak</name>")
    planks = point("wpt", (-2.5, 11.0), "<name>Planks</name>")
    lane = [(0.0, number / 2) for number in range(21)]
    return gpx(
        f"{stand}\n{planks}\n<rte><name>Trail</name>\n{trail}\n</rte>\n"
        f"{track('Lane', lane)}\n{track('Way in', WAY_IN)}\n"
    ).decode()


def _archive() -> bytes:
    corners = tuples(pairs([(3.0, 8.0), (4.0, 8.0), (4.0, 9.0), (3.0, 9.0), (3.0, 8.0)]))
    ring = f"<LinearRing><coordinates>{corners}</coordinates></LinearRing>"
    pond = placemark("Lower pond", f"<Polygon><outerBoundaryIs>{ring}</outerBoundaryIs></Polygon>")
    return packed({"doc.kml": kml(pond), "files/picture.png": b"none"})
