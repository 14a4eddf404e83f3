"""Lines and outlines for invented places, and other ground that changes nothing released."""

import random
from typing import Any

from generator.units import convert

Data = dict[str, Any]
# At 41 N, to a part in a thousand: shapes of about the size that is asked for.
FT_PER_DEGREE_NORTH, FT_PER_DEGREE_EAST = 364300, 276000
SHAPES = ("line_lat_lon", "area_lat_lon")


def line_of(lat: float, lon: float, length_ft: float) -> list[list[float]]:
    """A line of three points to the north."""
    north = length_ft / FT_PER_DEGREE_NORTH
    return [[lat, lon], [lat + north / 3, lon], [lat + north, lon]]


def outline_of(lat: float, lon: float, length_ft: float, width_ft: float) -> list[list[float]]:
    """An outline of four corners, north and east of a point."""
    north, east = length_ft / FT_PER_DEGREE_NORTH, width_ft / FT_PER_DEGREE_EAST
    return [[lat, lon], [lat + north, lon], [lat + north, lon + east], [lat, lon + east]]


def typed_ft(place: Data, stem: str) -> float:
    """A length of a place in feet, whatever unit it is typed in."""
    key = next(one for one in place if one.startswith(f"{stem}_") and one not in SHAPES)
    return convert(place[key], key.removeprefix(f"{stem}_"), "ft")


def with_shapes(place: Data, number: int) -> Data:
    """A taped place with shapes beside the tape, or in its place: another way with each number."""
    # in two columns: the next place to the north begins before the longest one ends
    lat, lon = 41 + number / 250, -93.05 + number % 2 / 250
    length_ft, width_ft = typed_ft(place, "length"), typed_ft(place, "width")
    line = {"line_lat_lon": line_of(lat, lon, length_ft)}
    outline = {"area_lat_lon": outline_of(lat, lon, length_ft, width_ft)}
    without_length = {key: one for key, one in place.items() if not key.startswith("length_")}
    ground = ("length_", "width_")
    without_tape = {key: one for key, one in place.items() if not key.startswith(ground)}
    return (
        place,
        place | line,
        place | outline | {"area_ac": 0.5},
        without_length | line,
        place,
        without_tape | outline | {"outline_error_ft": 3},
    )[number % 6]


def with_other_acres(place: Data, chance: random.Random) -> Data:
    """The place where it lies, with acres typed that do not count beside tape, line or outline."""
    return place | {"area_ac": chance.randint(1, 99) / 10}


def with_other_ground(place: Data, chance: random.Random) -> Data:
    """The place with everything about its ground changed that does not count."""
    taped = any(key.startswith("width_") for key in place)
    strip = taped and any(key.startswith("length_") for key in place)
    # apart in both directions: places whose outlines cross are taken as the same ground
    lat, lon, length_ft = 40 + chance.random(), -91 - chance.random(), chance.randint(90, 2000)
    others: Data = {
        "line_lat_lon": line_of(lat, lon, length_ft),
        "area_lat_lon": outline_of(lat, lon, length_ft, chance.randint(9, 99)),
        "area_ac": chance.randint(1, 99) / 10,
        "outline_error_ft": chance.randint(1, 30),
    }
    if not strip:
        del others["line_lat_lon" if taped and "line_lat_lon" in place else "area_lat_lon"]
    kept = {key: one for key, one in place.items() if key not in others}
    return kept | {key: one for key, one in others.items() if chance.random() < 0.6}
