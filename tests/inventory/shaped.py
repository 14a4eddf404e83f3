"""Files of shapes as programs write them, and properties that name shapes in files."""

import io
import json
import zipfile
from collections.abc import Iterable, Mapping
from pathlib import Path

PROPERTY = "format: 1\nname: Bend\nseason: 2027\nlocation_lat_lon: [41.026, -93.02]\n"
Pairs = Iterable[tuple[float, float]]


def feature(name: str, kind: str, coordinates: object) -> dict[str, object]:
    return {
        "type": "Feature",
        "properties": {"name": name},
        "geometry": {"type": kind, "coordinates": coordinates},
    }


def geojson(*features: dict[str, object]) -> bytes:
    return json.dumps({"type": "FeatureCollection", "features": features}, indent=1).encode()


def tuples(pairs: Pairs) -> str:
    return " ".join(f"{lon},{lat},0" for lon, lat in pairs)


def placemark(name: str, inside: str) -> str:
    return f"<Placemark><name>{name}</name>{inside}</Placemark>"


def kml(inside: str) -> bytes:
    head = '<?xml version="1.0" encoding="UTF-8"?>\n<kml xmlns="http://www.opengis.net/kml/2.2">'
    return f"{head}<Document>{inside}</Document></kml>\n".encode()


def gpx(inside: str) -> bytes:
    head = '<?xml version="1.0"?>\n<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">'
    return f"{head}{inside}</gpx>\n".encode()


def packed(files: Mapping[str, bytes]) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in files.items():
            archive.writestr(name, content)
    return out.getvalue()


def with_files(folder: Path, yaml: Mapping[str, str], shapes: Mapping[str, bytes]) -> Path:
    """Write a property folder with files of shapes into a new folder."""
    (folder / "shapes").mkdir(parents=True)
    (folder / "property.yaml").write_text(PROPERTY, encoding="utf-8")
    for name, text in yaml.items():
        (folder / f"{name}.yaml").write_text(text, encoding="utf-8")
    for name, content in shapes.items():
        (folder / "shapes" / name).write_bytes(content)
    return folder
