"""Shapes that a phone or a mapping program wrote, taken into a property folder.

What is taken in is written as a new file of shapes, and a new file with a starter entry for each;
nothing that is there is touched, and nothing is written where the folder would have a fault.
"""

from __future__ import annotations

import json
import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import fields, replace
from itertools import pairwise
from pathlib import Path

from generator.dataclass import dataclass
from generator.geometry.thin import thinned
from generator.inventory.entry import file_of_one, free_id
from generator.inventory.files import content_of
from generator.inventory.load import load_inventory
from generator.inventory.page_names import slug
from generator.inventory.problems import LONGEST_ID, Problem, Sentence
from generator.inventory.schema import Inventory
from generator.inventory.shape_faults import MOST_SHAPE_BYTES, SHAPES_FOLDER
from generator.inventory.shape_files import found_shapes
from generator.inventory.shape_found import LINE, OUTLINE, POINT, FoundShape, UnreadableShapesError
from generator.inventory.shape_sound import turned_around, wrong_with
from generator.inventory.write import one_writer, write_new_file
from generator.reference.land_kinds import land_kinds
from generator.units import LatLon

LAND = "land"
# What a shape can be beside things of the land: where its entry goes, and the forms it may have.
WHERE_ENTRIES_GO: Mapping[str, tuple[str, tuple[str, ...]]] = {
    "screen": ("screens", (LINE, OUTLINE)),
    "strip": ("strips", (LINE, OUTLINE)),
    "stand": ("stands", (POINT,)),
    "walk": ("routes", (LINE,)),
}
NEED_A_WIDTH = ("screen", "strip")  # what is ground along a line, and so needs a width
_MORE = {
    "screens": "known_as, length_ft, hides, near and plantings",
    "strips": "known_as, length_ft, near and plantings",
    "stands": "known_as, seat_height_ft, arc_of_fire and winds_for",
    "routes": "known_as, serves, parking_lat_lon and winds_for",
    LAND: "known_as, counts_from, radius_ft or width_ft, height_ft and shown_to",
}
_ROOM_FOR_NUMBER = 6


@dataclass(frozen=True, slots=True)
class Offered:
    """A shape in a file that was named: as it is there, as it would be taken, and what hinders."""

    file: str
    there: FoundShape
    taken: FoundShape
    wrong: Sentence | None


@dataclass(frozen=True, slots=True)
class ShapeWanted:
    """A shape to take in: what it is, what it is called, and what else was told of it."""

    shape: FoundShape
    what: str
    name: str
    width_ft: float | None = None
    got: str | None = None


@dataclass(frozen=True, slots=True)
class TakenIn:
    """The names of the files that were written; or the faults that would come of them."""

    names: tuple[str, ...]
    faults: tuple[Problem, ...] = ()


def offered_by(path: Path, middle: LatLon | None, thin_ft: float) -> list[Offered]:
    """Return the shapes of a file, recorded lines thinned; raises UnreadableShapesError."""
    found = found_shapes(content_of(path, MOST_SHAPE_BYTES))
    return [_offered(path.name, shape, middle, thin_ft) for shape in found]


def _offered(file: str, shape: FoundShape, middle: LatLon | None, thin_ft: float) -> Offered:
    wrong = wrong_with(shape)
    if wrong is None and middle is not None:
        wrong = turned_around(shape.lat_lon, middle)
    taken = shape
    if wrong is None and shape.is_recorded and thin_ft:
        taken = replace(shape, lat_lon=tuple(thinned(shape.lat_lon, thin_ft)))
    return Offered(file, shape, taken, wrong)


def as_outline(shape: FoundShape) -> FoundShape:
    """Return a line that was walked once around as an outline: its ends are joined."""
    closes = len(shape.lat_lon) > 1 and shape.lat_lon[0] == shape.lat_lon[-1]
    corners = shape.lat_lon[:-1] if closes else shape.lat_lon
    return replace(shape, form=OUTLINE, lat_lon=corners)


def what_there_is() -> tuple[str, ...]:
    """Return the words for all that a shape can be."""
    return (*WHERE_ENTRIES_GO, *land_kinds())


def forms_for(what: str) -> tuple[str, ...]:
    """Return the forms that a thing of a kind may have."""
    return WHERE_ENTRIES_GO[what][1] if what in WHERE_ENTRIES_GO else land_kinds()[what].drawn


def take_in(folder: Path, source: str, wanted: Sequence[ShapeWanted]) -> TakenIn:
    """Write shapes and a starter entry for each as new files, or return what is wrong with them.

    Raises OSError where the folder cannot be read or written, FileExistsError where somebody else
    writes a file of the same name meanwhile.
    """
    with one_writer(folder):
        before = load_inventory(folder)
        if before.inventory is None:
            return TakenIn((), before.problems)
        named = _each_by_its_own_name(wanted)
        file = _free_file(folder, source)
        new = {f"{SHAPES_FOLDER}/{file}": geojson_of(one.shape for one in named)}
        taken = _ids_of(before.inventory)
        for asked, one in zip(wanted, named, strict=True):
            kept_in = WHERE_ENTRIES_GO[one.what][0] if one.what in WHERE_ENTRIES_GO else LAND
            identity = _free(folder, kept_in, asked.name, taken)
            taken.add(identity)
            new[f"{kept_in}/{identity}.yaml"] = _entry(kept_in, identity, asked, one, file)
        after = load_inventory(folder, new)
        if after.inventory is None:
            return TakenIn((), after.problems)
        for name, content in new.items():
            write_new_file(folder / name, content)
        return TakenIn(tuple(new))


def _each_by_its_own_name(wanted: Sequence[ShapeWanted]) -> list[ShapeWanted]:
    """Return what is wanted with shapes under names of their own, so that each can be named."""
    seen: set[str] = set()
    found = []
    for one in wanted:
        number, name = 1, one.name
        while name in seen:
            number += 1
            name = f"{one.name} {number}"
        seen.add(name)
        found.append(replace(one, shape=replace(one.shape, name=name)))
    return found


def _free_file(folder: Path, source: str) -> str:
    stem, number = slug(Path(source).stem) or SHAPES_FOLDER, 1
    name = f"{stem}.geojson"
    while (folder / SHAPES_FOLDER / name).exists():
        number += 1
        name = f"{stem}-{number}.geojson"
    return name


def _free(folder: Path, kept_in: str, name: str, taken: set[str]) -> str:
    word = slug(name)[: LONGEST_ID - _ROOM_FOR_NUMBER].strip("-") or kept_in
    there = {path.stem for path in (folder / kept_in).glob("*.yaml")}
    return free_id(word, taken | there)


def _ids_of(inventory: Inventory) -> set[str]:
    """Return every id in an inventory: of whatever kind, no two things have one."""
    listed = [getattr(inventory, one.name) for one in fields(inventory)]
    records = [record for found in listed if isinstance(found, tuple) for record in found]
    records += [planting for place in inventory.places() for planting in place.plantings]
    records += [crop for screen in inventory.screens for crop in screen.crops_beside]
    records += [crop for walk in inventory.routes for crop in walk.crops_beside]
    return {getattr(record, "id", "") for record in records}


def _entry(kept_in: str, identity: str, asked: ShapeWanted, one: ShapeWanted, file: str) -> bytes:
    data: dict[str, object] = {"name": asked.name}
    if kept_in == LAND:
        data = {"kind": one.what} | data
    if one.width_ft is not None:
        data["width_ft"] = one.width_ft
    data["shape"] = {"file": file, "name": one.shape.name}
    if one.got is not None:
        data["got"] = one.got
    more = f"# Beside these it may have {_MORE[kept_in]}, and more.\n"
    return more.encode() + file_of_one(kept_in, identity, data)


def geojson_of(shapes: Iterable[FoundShape]) -> bytes:
    """Return shapes as a file of GeoJSON: longitude first, outlines closed and counterclockwise."""
    features = [
        {
            "type": "Feature",
            "properties": {"name": shape.name},
            "geometry": {"type": _TYPES[shape.form], "coordinates": _coordinates(shape)},
        }
        for shape in shapes
    ]
    lines = ",\n".join(json.dumps(feature, ensure_ascii=False) for feature in features)
    return f'{{"type": "FeatureCollection", "features": [\n{lines}\n]}}\n'.encode()


_TYPES = {POINT: "Point", LINE: "LineString", OUTLINE: "Polygon"}


def _coordinates(shape: FoundShape) -> object:
    pairs = [(lon, lat) for lat, lon in shape.lat_lon]
    if shape.form == POINT:
        return pairs[0]
    if shape.form == LINE:
        return pairs
    # holes go the other way around than what they are in
    holes = [_ring([(lon, lat) for lat, lon in hole])[::-1] for hole in shape.holes]
    return [_ring(pairs), *holes]


def _ring(pairs: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Return an outline counterclockwise, its first corner again at its end."""
    ring = [*pairs, pairs[0]]
    # from the first corner, so that small outlines are not lost in large numbers
    east, north = pairs[0]
    spots = [(lon - east, lat - north) for lon, lat in ring]
    doubled = math.fsum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise(spots))
    return ring if doubled > 0 else ring[::-1]


def fault_of_file(path: Path, error: UnreadableShapesError) -> Problem:
    """Return the fault of a file that cannot be read, at its place in it."""
    return error.sentence.at(path.name, error.line, error.column)
