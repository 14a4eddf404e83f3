"""Time zones by their names, out of the tzdata package: the same on every machine.

The machine's own list of zones is never asked: it may be older, and it may be missing.
"""

from functools import cache
from importlib.resources import files
from zoneinfo import ZoneInfo

_PACKAGE, _NAMES, _FOLDER = "tzdata", "zones", "zoneinfo"


@cache
def zone_names() -> frozenset[str]:
    """Return the name of every time zone."""
    return frozenset(files(_PACKAGE).joinpath(_NAMES).read_text(encoding="utf-8").split())


@cache
def zone(name: str) -> ZoneInfo:
    """Return a time zone. Raises ValueError for a name that is none."""
    if name not in zone_names():
        raise ValueError(f"{name!r} is no time zone")
    with files(_PACKAGE).joinpath(_FOLDER, *name.split("/")).open("rb") as content:
        return ZoneInfo.from_file(content, key=name)
