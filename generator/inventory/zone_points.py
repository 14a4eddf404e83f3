"""Points that do not go with the time zone of the property: a sign left out, most often.

The chief town of every zone stands in the time zone database. No zone reaches as far from it as
these bounds.
"""

from collections.abc import Iterator, Sequence

from generator.inventory.problems import Problem, Sentence, shown_value
from generator.inventory.reading import TypedPoint
from generator.reference.zones import zone_point

# The farthest places of a zone from its chief town lie some 45 degrees off, in China and Greenland.
FARTHEST_DEG = 60
# So far off, a point that lies nearer with the other sign has the wrong one.
SIGN_DEG = 30
AXES = ("latitude", "longitude")
OF_SIGN = ("south of the equator is negative", "west of Greenwich is negative")
WHOLE_TURN_DEG = 360


def points_astray(points: Sequence[TypedPoint], time_zone: str | None) -> Iterator[Problem]:
    """Yield a fault for each point, weather stations' among them, that is not in the time zone.

    Where none is, the time zone may be what is wrong: it is told once.
    """
    there = zone_point(time_zone) if time_zone is not None else None
    if time_zone is None or there is None:
        return
    told = [(point, found) for point in points if (found := _fault(point, there, time_zone))]
    if len(told) == len(points) > 1:
        (point, found), *_ = told
        accepted = f"{found.accepted}; or the time zone of the place"
        of_all = Sentence(found.code, f"{found.what}, nor does any other point", accepted)
        told = [(point, of_all)]
    for point, found in told:
        yield found.at(point.where.file, point.where.line, point.where.column)


def _fault(point: TypedPoint, there: tuple[float, float], time_zone: str) -> Sentence | None:
    told = _turned_around(point, there, time_zone)
    for axis, of_point, of_zone in zip(range(2), point.lat_lon, there, strict=True):
        told = told or _astray(axis, point.key, of_point, of_zone, time_zone)
    return told


def _turned_around(
    point: TypedPoint, there: tuple[float, float], time_zone: str
) -> Sentence | None:
    """Return the fault of a longitude that stands before its latitude."""
    latitude, longitude = point.lat_lon
    typed, turned = _farthest((latitude, longitude), there), _farthest((longitude, latitude), there)
    if typed <= FARTHEST_DEG or turned > SIGN_DEG:
        return None
    what = f"{point.key} does not go with time zone {shown_value(time_zone)}"
    cure = f"[{shown_value(longitude)}, {shown_value(latitude)}]: latitude first, then longitude"
    return Sentence("F460", what, cure)


def _farthest(point: tuple[float, float], there: tuple[float, float]) -> float:
    return max(_away(*both) for both in zip(point, there, strict=True))


def _astray(
    axis: int, key: str, of_point: float, of_zone: float, time_zone: str
) -> Sentence | None:
    away, mirrored = _away(of_point, of_zone), _away(-of_point, of_zone)
    what = (
        f"{AXES[axis]} {shown_value(of_point)} of {key} does not go with time zone "
        f"{shown_value(time_zone)}"
    )
    if away > SIGN_DEG and mirrored < min(away, FARTHEST_DEG):
        return Sentence("F460", what, f"{shown_value(-of_point)}: {OF_SIGN[axis]}")
    if away > FARTHEST_DEG:
        near = f"a point of that time zone, whose chief town is near {AXES[axis]} {of_zone:.0f}"
        slip = "look for a slip in a digit, a sign or the order: [latitude, longitude]"
        return Sentence("F460", what, f"{near}; {slip}")
    return None


def _away(of_point: float, of_zone: float) -> float:
    apart = abs(of_point - of_zone) % WHOLE_TURN_DEG
    return min(apart, WHOLE_TURN_DEG - apart)
