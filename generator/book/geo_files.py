"""The ground as files that other programs read: GeoJSON (RFC 7946), GPX 1.1 and KML 2.2.

Each holds the same things in the same order, points to seven decimals of a degree, about half an
inch. No time stands in them: of the same plan they are the same bytes. Text is text in each.
"""

import json
from collections.abc import Iterable, Iterator, Mapping
from itertools import pairwise
from xml.sax.saxutils import escape, quoteattr

from generator.book.pages.written import GROUND_GEOJSON, GROUND_GPX, GROUND_KML
from generator.book.text import clean
from generator.plan.model.plan import Plan
from generator.plan.views.ground_features import GroundFeature, ground_features
from generator.units import LatLon

DEGREE_DECIMALS = 7
_XML = '<?xml version="1.0" encoding="UTF-8"?>'
_GPX, _KML = "http://www.topografix.com/GPX/1/1", "http://www.opengis.net/kml/2.2"
MADE_BY = "handbook"


def ground_files(plan: Plan) -> Mapping[str, bytes]:
    """Return the files of what a reader may take along, by their names; none of nothing."""
    features = ground_features(plan)
    if not features:
        return {}
    return {
        GROUND_GPX: as_gpx(plan.title, features),
        GROUND_KML: as_kml(plan.title, features),
        GROUND_GEOJSON: as_geojson(features),
    }


def as_geojson(features: Iterable[GroundFeature]) -> bytes:
    """Return a collection of features, each on a line of its own."""
    lines = ",\n".join(json.dumps(_feature(one), ensure_ascii=False) for one in features)
    return f'{{"type": "FeatureCollection", "features": [\n{lines}\n]}}\n'.encode()


def _feature(feature: GroundFeature) -> dict[str, object]:
    sizes = {"width_ft": feature.width_ft, "radius_ft": feature.radius_ft}
    return {
        "type": "Feature",
        "properties": {
            "name": clean(feature.name),
            "what": feature.what,
            **{name: size_ft for name, size_ft in sizes.items() if size_ft},
        },
        "geometry": _geometry(feature),
    }


def _geometry(feature: GroundFeature) -> dict[str, object]:
    match feature.form:
        case "point":
            return {"type": "Point", "coordinates": _lon_lat(feature.points_lat_lon[0])}
        case "line":
            line = [_lon_lat(point) for point in feature.points_lat_lon]
            return {"type": "LineString", "coordinates": line}
        case "outline":
            rings = [[_lon_lat(point) for point in ring] for ring in _rings(feature)]
            return {"type": "Polygon", "coordinates": rings}


def _lon_lat(point: LatLon) -> list[float]:
    lat, lon = _rounded(point)
    return [lon, lat]


def as_gpx(title: str, features: Iterable[GroundFeature]) -> bytes:
    """Return points and, behind them, lines.

    An outline is a line that ends where it begins, and each hole in it one more of the same track.
    """
    every = list(features)
    lines = [
        _XML,
        f'<gpx version="1.1" creator={quoteattr(MADE_BY)} xmlns="{_GPX}">',
        f"<metadata><name>{escape(clean(title))}</name></metadata>",
        *(line for one in every if one.form == "point" for line in _gpx_point(one)),
        *(line for one in every if one.form != "point" for line in _gpx_line(one)),
        "</gpx>",
    ]
    return ("\n".join(lines) + "\n").encode()


def _gpx_point(feature: GroundFeature) -> Iterator[str]:
    yield f"<wpt {_at(feature.points_lat_lon[0])}>"
    yield _gpx_words(feature)
    yield "</wpt>"


def _gpx_line(feature: GroundFeature) -> Iterator[str]:
    lines = _rings(feature) if feature.form == "outline" else [feature.points_lat_lon]
    yield "<trk>"
    yield _gpx_words(feature)
    for line in lines:
        yield "<trkseg>"
        yield from (f"<trkpt {_at(point)}/>" for point in line)
        yield "</trkseg>"
    yield "</trk>"


def _gpx_words(feature: GroundFeature) -> str:
    return f"<name>{_name(feature)}</name><desc>{escape(feature.words)}</desc>"


def _name(feature: GroundFeature) -> str:
    return escape(clean(feature.name))


def _at(point: LatLon) -> str:
    lat, lon = map(_degrees, _rounded(point))
    return f'lat="{lat}" lon="{lon}"'


def as_kml(title: str, features: Iterable[GroundFeature]) -> bytes:
    """Return points, lines and outlines in one document."""
    lines = [
        _XML,
        f'<kml xmlns="{_KML}">',
        "<Document>",
        f"<name>{escape(clean(title))}</name>",
        *(line for one in features for line in _placemark(one)),
        "</Document>",
        "</kml>",
    ]
    return ("\n".join(lines) + "\n").encode()


def _placemark(feature: GroundFeature) -> Iterator[str]:
    yield "<Placemark>"
    yield f"<name>{_name(feature)}</name>"
    yield f"<description>{escape(feature.words)}</description>"
    match feature.form:
        case "point":
            yield f"<Point>{_kml_points(feature.points_lat_lon)}</Point>"
        case "line":
            yield f"<LineString>{_kml_points(feature.points_lat_lon)}</LineString>"
        case "outline":
            outer, *holes = (
                f"<LinearRing>{_kml_points(ring)}</LinearRing>" for ring in _rings(feature)
            )
            inner = "".join(f"<innerBoundaryIs>{hole}</innerBoundaryIs>" for hole in holes)
            yield f"<Polygon><outerBoundaryIs>{outer}</outerBoundaryIs>{inner}</Polygon>"
    yield "</Placemark>"


def _kml_points(points: Iterable[LatLon]) -> str:
    pairs = (map(_degrees, _rounded(point)) for point in points)
    return f"<coordinates>{' '.join(f'{lon},{lat}' for lat, lon in pairs)}</coordinates>"


def _rings(feature: GroundFeature) -> list[tuple[LatLon, ...]]:
    """Return an outline against the clock and its holes with it, as RFC 7946 asks."""
    return [
        _ring(feature.points_lat_lon),
        *(_ring(hole)[::-1] for hole in feature.holes_lat_lon),
    ]


def _ring(corners: tuple[LatLon, ...]) -> tuple[LatLon, ...]:
    """Return an outline against the clock, its first point said again."""
    around = (*corners, corners[0])
    south, west = corners[0]
    # seen from its first corner, where a small outline has small numbers
    beside = [(lat - south, lon - west) for lat, lon in around]
    # twice the ground inside, in square degrees: below nothing where it goes with the clock
    inside = sum(lon * up - other * lat for (lat, lon), (up, other) in pairwise(beside))
    return around if inside > 0 else around[::-1]


def _rounded(point: LatLon) -> LatLon:
    # nothing has no minus
    return round(point[0], DEGREE_DECIMALS) + 0.0, round(point[1], DEGREE_DECIMALS) + 0.0


def _degrees(part_deg: float) -> str:
    """Return degrees in plain decimals.

    >>> _degrees(-93.01842), _degrees(0.0000001), _degrees(41.0)
    ('-93.01842', '0.0000001', '41.0')
    """
    text = f"{part_deg:.{DEGREE_DECIMALS}f}".rstrip("0")
    return f"{text}0" if text.endswith(".") else text
