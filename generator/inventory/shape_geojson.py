"""Shapes out of GeoJSON (RFC 7946): features with points, lines and pieces of ground."""

import json
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NoReturn

from generator.inventory import shape_faults as say
from generator.inventory.problems import shown_value
from generator.inventory.shape_found import (
    LINE,
    OUTLINE,
    POINT,
    FoundShape,
    PieceThere,
    UnlikeAPointError,
    UnreadableShapesError,
    piece_of_pairs,
    piece_of_rings,
    shapes_of,
)

# The key that names a feature: the standard has none, and programs write one of these.
NAME_KEYS = ("name", "title", "label", "id")
# What older files say of coordinates that are latitude and longitude all the same.
PLAIN_SYSTEMS = ("CRS84", "EPSG:4326", "EPSG::4326")
_LETTERS_SHOWN = 60


def read_geojson(text: str) -> list[FoundShape]:
    """Return the shapes of a text; raises UnreadableShapesError where it is no GeoJSON."""
    data = _parsed(text)
    system = _system_of(data)
    if system and not system.endswith(PLAIN_SYSTEMS):
        raise UnreadableShapesError(say.other_coordinates(system))
    return [
        shape
        for number, feature in enumerate(_features_of(data), start=1)
        for shape in shapes_of(
            _pieces_of(feature.get("geometry"), 0), _name_of(feature), number, None
        )
    ]


def _parsed(text: str) -> Any:
    try:
        return json.loads(text, parse_constant=_no_number)
    except json.JSONDecodeError as error:
        what = f"it is no JSON from here on ({error.msg.casefold()})"
        raise UnreadableShapesError(say.damaged(what), error.lineno, error.colno) from None
    except RecursionError:
        raise _too_deep() from None
    except ValueError:  # a number of thousands of digits
        raise UnreadableShapesError(say.damaged("it holds a number that is none")) from None


def _no_number(word: str) -> NoReturn:
    raise UnreadableShapesError(say.damaged(f"it holds {word}, which is no number"))


def _too_deep() -> UnreadableShapesError:
    return UnreadableShapesError(
        say.too_much(
            "its groups lie in each other too deep", f"at most {say.MOST_SHAPE_LEVELS} levels"
        )
    )


def _system_of(data: object) -> str:
    """Return the system of coordinates that a file of before the standard names."""
    named = data.get("crs") if isinstance(data, dict) else None
    inside = named.get("properties") if isinstance(named, dict) else None
    name = inside.get("name") if isinstance(inside, dict) else None
    return name if isinstance(name, str) else ""


def _features_of(data: object) -> Iterator[Mapping[str, Any]]:
    kind = data.get("type") if isinstance(data, dict) else None
    if not isinstance(data, dict) or not isinstance(kind, str):
        raise UnreadableShapesError(say.damaged("it is JSON, and no GeoJSON: it has no type"))
    if kind == "Feature":
        yield data
    elif kind == "FeatureCollection":
        features = data.get("features")
        if not isinstance(features, list):
            raise UnreadableShapesError(say.damaged("it has no list of features"))
        for feature in features:
            if not isinstance(feature, dict):
                raise UnreadableShapesError(say.damaged("one of its features is none"))
            yield feature
    elif kind in _READERS or kind == "GeometryCollection":
        yield {"geometry": data}
    else:
        shown = shown_value(kind)
        raise UnreadableShapesError(say.damaged(f"it is JSON of the type {shown}, and no GeoJSON"))


def _name_of(feature: Mapping[str, Any]) -> str:
    properties = feature.get("properties")
    keys = properties if isinstance(properties, dict) else {}
    folded = {key.casefold(): value for key, value in reversed(keys.items())} | {
        "id": feature.get("id")
    }
    for key in NAME_KEYS:
        value = folded.get(key)
        if isinstance(value, str | int) and not isinstance(value, bool) and str(value).strip():
            return str(value)
    return ""


def _pieces_of(geometry: object, level: int) -> list[PieceThere]:
    """Return the pieces of a geometry; what cannot be read is one with what is wrong."""
    if geometry is None:
        return []
    kind = geometry.get("type") if isinstance(geometry, dict) else None
    if not isinstance(geometry, dict) or not isinstance(kind, str):
        return [PieceThere(POINT, (), say.no_points())]
    if kind == "GeometryCollection":
        if level > say.MOST_SHAPE_LEVELS:
            raise _too_deep()
        parts = geometry.get("geometries")
        inside = parts if isinstance(parts, list) else []
        return [piece for part in inside for piece in _pieces_of(part, level + 1)]
    if kind not in _READERS:
        return [PieceThere(POINT, (), say.damaged(f"it is of the type {shown_value(kind)}"))]
    form, is_many = _READERS[kind]
    coordinates = geometry.get("coordinates")
    every = coordinates if is_many else [coordinates]
    if not isinstance(every, list):
        return [PieceThere(form, (), say.no_points())]
    return [_piece(form, one) for one in every]


def _piece(form: str, coordinates: object) -> PieceThere:
    try:
        if form == POINT:
            return piece_of_pairs(POINT, [_pair(1, coordinates)])
        if form == LINE:
            return piece_of_pairs(LINE, _pairs(coordinates))
        rings = coordinates if isinstance(coordinates, list) else []
        return piece_of_rings([_pairs(ring) for ring in rings])
    except UnlikeAPointError as unlike:
        return PieceThere(form, (), unlike.sentence)


def _pairs(coordinates: object) -> list[tuple[float, float]]:
    every: Sequence[object] = coordinates if isinstance(coordinates, list) else ()
    return [_pair(number, one) for number, one in enumerate(every, start=1)]


def _pair(number: int, position: object) -> tuple[float, float]:
    # a height may follow
    numbers = position[:2] if isinstance(position, list) else []
    if len(numbers) > 1 and all(type(one) in _NUMBERS for one in numbers):
        try:
            return float(numbers[0]), float(numbers[1])
        except OverflowError:
            pass  # a whole number of hundreds of digits
    raise UnlikeAPointError(say.not_numbers(number, json.dumps(position)[:_LETTERS_SHOWN]))


_NUMBERS = (int, float)
_READERS: Mapping[str, tuple[str, bool]] = {
    "Point": (POINT, False),
    "MultiPoint": (POINT, True),
    "LineString": (LINE, False),
    "MultiLineString": (LINE, True),
    "Polygon": (OUTLINE, False),
    "MultiPolygon": (OUTLINE, True),
}
