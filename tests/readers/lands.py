"""Things of the land on invented property data: near work and far from it, shown and private."""

from __future__ import annotations

import random
from collections.abc import Iterable, Iterator
from typing import Any

Data = dict[str, Any]

# North or east of a point, in degrees at 41 N: some tens of feet, and more than any label keeps.
A_LITTLE, FAR_OFF = 0.0003, 0.012
# What may be drawn around work or beside it, and what tells of deer.
DANGERS = ("well", "tile_inlet", "sinkhole", "bees", "dwelling", "neighbors_crop")
DEER = ("bedding", "feeding", "deer_trail")
KEPT_OF_A_SEEN_THING = {
    "id", "kind", "known_as", "at_lat_lon", "line_lat_lon", "area_lat_lon", "radius_ft", "width_ft",
    "counts_from", "got", "off_ft", "shown_to", "coordinates_for",
}  # fmt: skip


def with_land(data: Data, chance: random.Random) -> Data:
    """Return the property with things of the land beside its places and elsewhere; it is changed.

    Some are shown to one reader or the other, some with coordinates; what tells of deer only to a
    partner.
    """
    readers = [one["id"] for one in data["readers"]["readers"]]
    partners = [one["id"] for one in data["readers"]["readers"] if one["kind"] == "partner"]
    found: list[Data] = []
    for screen in data["screens"]["screens"]:
        for lat, lon in points_of(screen)[:1]:
            found.append(_point(f"near-{screen['id']}", chance.choice(DANGERS), lat, lon, chance))
            found.append(_line(f"creek-{screen['id']}", "creek", lat, lon + 2 * A_LITTLE))
            found.append(_line(f"fence-{screen['id']}", "fence", lat, lon - A_LITTLE))
            bed = _point(f"bed-{screen['id']}", chance.choice(DEER[:2]), lat, lon, chance)
            found.append(bed | {"radius_ft": 90, "shown_to": _some(partners, chance)})
    for number in range(3):
        lat, lon = 41.2 + number / 10, -93.3
        danger = _point(f"far-{number}", chance.choice(DANGERS), lat, lon, chance)
        found.append(danger | {"far": "yes"})
        shown = _point(f"shown-{number}", "building", lat, lon, chance)
        shown |= {"shown_to": _some(readers, chance, at_least=1), "far": "yes"}
        found.append(shown)
    found[-1]["coordinates_for"] = _some(readers, chance, at_least=1)
    found.append(_line("path", "deer_trail", 41.01, -93.06))
    corners = [[40.99, -93.07], [40.99, -93.03], [41.03, -93.03], [41.03, -93.07]]
    found.append({"id": "edge", "kind": "boundary", "name": "The edge", "area_lat_lon": corners})
    for thing in found:
        if chance.random() < 0.5:
            thing["known_as"] = f"Called {thing['kind']} {chance.randint(0, 9)}"
    chance.shuffle(found)
    data["land"] = {"land": found}
    return data


def change_land(data: Data, reader: str, handed: Iterable[str], chance: random.Random) -> None:
    """Change every thing a reader does not see, and of those they see what only the owner does.

    `handed` are the ids of the places of their jobs.
    """
    places = [one for one in data["screens"]["screens"] if one["id"] in set(handed)]
    near = [point for place in places for point in points_of(place)]
    kind = next(one["kind"] for one in data["readers"]["readers"] if one["id"] == reader)
    data["land"]["land"] = list(_changed(data["land"]["land"], reader, kind, near, chance))


def _changed(
    things: Iterable[Data], reader: str, kind: str, near: list[list[float]], chance: random.Random
) -> Iterator[Data]:
    for thing in things:
        is_deer = thing["kind"] in DEER
        is_told = reader in (*thing.get("shown_to", ()), *thing.get("coordinates_for", ()))
        may_be_near = thing["kind"] in (*DANGERS, "creek") and _may_be_near(thing, near)
        private = {"name": f"name {chance.random()}", "note": f"private {chance.random()}",
                   "height_ft": chance.randint(9, 90), "far": "yes"}  # fmt: skip
        if (is_told or may_be_near) and not (is_deer and kind != "partner"):
            kept = {key: one for key, one in thing.items() if key in KEPT_OF_A_SEEN_THING}
            yield kept | private
        elif chance.random() < 0.7:
            moved = {key: one for key, one in thing.items() if key in ("id", "kind")}
            yield moved | private | _elsewhere(thing, near, chance)
    spot = {"at_lat_lon": [41 + chance.random() / 50, -93.05], "radius_ft": chance.randint(9, 300)}
    yield {"id": "new-bed", "kind": "bedding", "name": f"name {chance.random()}"} | spot


def _elsewhere(thing: Data, near: list[list[float]], chance: random.Random) -> Data:
    """Another lie of a thing: deer and boundaries anywhere, what is dangerous far from work."""
    form = next(key for key in ("at_lat_lon", "line_lat_lon", "area_lat_lon") if key in thing)
    lat, lon = 40 + chance.random() / 2, -92 + chance.random()
    if thing["kind"] in DEER and near:
        lat, lon = chance.choice(near)
    points = [[lat, lon], [lat + A_LITTLE, lon], [lat + A_LITTLE, lon + A_LITTLE]]
    return {form: points[0] if form == "at_lat_lon" else points}


def points_of(thing: Data) -> list[list[float]]:
    """Every point that is typed of a place or of a thing."""
    single = [thing["at_lat_lon"]] if "at_lat_lon" in thing else []
    return [*thing.get("area_lat_lon", ()), *thing.get("line_lat_lon", ()), *single]


def _may_be_near(thing: Data, near: list[list[float]]) -> bool:
    return any(
        abs(lat - other[0]) < FAR_OFF and abs(lon - other[1]) < FAR_OFF
        for lat, lon in points_of(thing)
        for other in near
    )


def _point(name: str, kind: str, lat: float, lon: float, chance: random.Random) -> Data:
    at = [lat + chance.random() * A_LITTLE, lon + chance.random() * A_LITTLE]
    return {"id": name, "kind": kind, "name": f"The {name}", "at_lat_lon": at}


def _line(name: str, kind: str, lat: float, lon: float) -> Data:
    line = [[lat - A_LITTLE, lon], [lat + A_LITTLE, lon], [lat + 4 * A_LITTLE, lon + A_LITTLE]]
    return {"id": name, "kind": kind, "name": f"The {name}", "line_lat_lon": line}


def _some(names: list[str], chance: random.Random, at_least: int = 0) -> list[str]:
    return chance.sample(names, chance.randint(at_least, len(names)))
