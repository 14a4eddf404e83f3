"""Time zones by their names, out of the tzdata package: the same on every machine.

The machine's own list of zones is never asked: it may be older, and it may be missing.
"""

import re
from functools import cache
from importlib.resources import files
from zoneinfo import ZoneInfo

_PACKAGE, _NAMES, _FOLDER = "tzdata", "zones", "zoneinfo"
# Chief towns of zones with their points, and lines `L zone other-name` of zones of two names.
_TOWNS, _RULES = "zone.tab", "tzdata.zi"
_POINT = re.compile(r"([+-])(\d{2})(\d{2})(\d{2})?([+-])(\d{3})(\d{2})(\d{2})?", re.ASCII)


@cache
def zone_names() -> frozenset[str]:
    """Return the name of every time zone."""
    return frozenset(files(_PACKAGE).joinpath(_NAMES).read_text(encoding="utf-8").split())


@cache
def zone(name: str) -> ZoneInfo:
    """Return a time zone. Raises ValueError for a name that is none."""
    # looked up before anything is opened: a name that somebody typed becomes a path
    if name not in zone_names():
        raise ValueError(f"{name!r} is no time zone")
    with files(_PACKAGE).joinpath(_FOLDER, *name.split("/")).open("rb") as content:
        return ZoneInfo.from_file(content, key=name)


def zone_point(name: str) -> tuple[float, float] | None:
    """Return latitude and longitude of the chief town of a zone, in degrees.

    None for a name that is none, and for a zone of no town, such as UTC.
    """
    towns = _towns()
    return towns.get(name) or towns.get(_other_names().get(name, ""))


@cache
def _towns() -> dict[str, tuple[float, float]]:
    lines = (line.split("\t") for line in _lines(_TOWNS))
    return {zone: _degrees(point) for _, point, zone, *_ in lines}


@cache
def _other_names() -> dict[str, str]:
    parts = (line.split() for line in _lines(_RULES) if line.startswith("L "))
    return {other: zone for _, zone, other in parts}


def _lines(name: str) -> list[str]:
    text = files(_PACKAGE).joinpath(_FOLDER, name).read_text(encoding="utf-8")
    return [line for line in text.splitlines() if line and not line.startswith("#")]


def _degrees(point: str) -> tuple[float, float]:
    """Return a point of ISO 6709, degrees with minutes and maybe seconds, in degrees."""
    found = _POINT.fullmatch(point)
    assert found is not None
    north, east = found.groups()[:4], found.groups()[4:]
    lat, lon = (
        float(f"{sign}1") * (int(degrees) + int(minutes) / 60 + int(seconds or 0) / 3600)
        for sign, degrees, minutes, seconds in (north, east)
    )
    return lat, lon
