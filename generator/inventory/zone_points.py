"""Points that do not go with the time zone of the property: a sign left out, most often.

The chief town of every zone stands in the time zone database. No zone reaches as far from it as
these bounds.
"""

from collections import Counter
from collections.abc import Iterator, Sequence

from generator.inventory.fields import Where
from generator.inventory.problems import Problem, Sentence, listed, shown_value
from generator.inventory.reading_found import TypedPoint
from generator.reference.zones import zone_point

# The farthest places of a zone from its chief town lie some 45 degrees off, in China and Greenland.
FARTHEST_DEG = 60
# So far off, a point that lies nearer with the other sign has the wrong one.
SIGN_DEG = 30
_AXES = ("latitude", "longitude")
OF_SIGN = ("south of the equator is negative", "west of Greenwich is negative")
_WHOLE_TURN_DEG = 360
# More points with one slip have one cause.
MOST_TOLD_APART = 3
TURNED, ELSEWHERE = "turned around", "elsewhere"
IN_EACH = dict.fromkeys((*_AXES, TURNED), ", and so in each") | {ELSEWHERE: ""}


def points_astray(points: Sequence[TypedPoint], time_zone: str | None) -> Iterator[Problem]:
    """Yield a fault for each point, weather stations' among them, that is not in the time zone.

    What is wrong with many in one way is told once, with how many there are in each file. Where
    no point is in the time zone, that may be what is wrong.
    """
    by_slip: dict[str, list[tuple[TypedPoint, Sentence]]] = {}
    for point, slip, sentence in _slips(points, time_zone):
        by_slip.setdefault(slip, []).append((point, sentence))
    none_is_there = sum(map(len, by_slip.values())) == len(points) > 1
    for slip, told in by_slip.items():
        if len(told) <= MOST_TOLD_APART and not none_is_there:
            yield from (_at(point, sentence) for point, sentence in told)
        else:
            yield _told_once(slip, told, none_is_there=none_is_there)


def places_astray(points: Sequence[TypedPoint], time_zone: str | None) -> set[Where]:
    """Return the place of each point that is not in the time zone."""
    return {point.where for point, _, _ in _slips(points, time_zone)}


def _slips(
    points: Sequence[TypedPoint], time_zone: str | None
) -> Iterator[tuple[TypedPoint, str, Sentence]]:
    """Yield each point that is not in the time zone, with what slipped and the fault."""
    there = zone_point(time_zone) if time_zone is not None else None
    if time_zone is None or there is None:
        return
    for point in points:
        found = _fault(point, there, time_zone)
        if found is not None:
            yield point, *found


def _at(point: TypedPoint, sentence: Sentence) -> Problem:
    return sentence.at(point.where.file, point.where.line, point.where.column)


def _told_once(
    slip: str, told: Sequence[tuple[TypedPoint, Sentence]], *, none_is_there: bool
) -> Problem:
    """Return one fault for many points, at the first of them."""
    point, first = told[0]
    counted = Counter(each.where.file for each, _ in told)
    files = listed((f"{number} in {file}" for file, number in counted.items()), "and")
    what, accepted = first.what, first.accepted
    if len(told) > 1:
        what = f"{what}; so it is with {len(told)} points: {files}"
        accepted = f"{accepted}{IN_EACH[slip]}"
    if none_is_there:
        what = f"{what}, nor does any other point"
        accepted = f"{accepted}; or the time zone of the place"
    return _at(point, Sentence(first.code, what, accepted))


def _fault(
    point: TypedPoint, there: tuple[float, float], time_zone: str
) -> tuple[str, Sentence] | None:
    """Return what slipped in a point, and the fault."""
    # before each number by itself: of a point turned around either looks like a slip of its own
    told = _turned_around(point, there, time_zone)
    if told is not None:
        return TURNED, told
    for axis, of_point, of_zone in zip(range(2), point.lat_lon, there, strict=True):
        found = _astray(axis, point.key, of_point, of_zone, time_zone)
        if found is not None:
            return found
    return None


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
) -> tuple[str, Sentence] | None:
    away, mirrored = _away(of_point, of_zone), _away(-of_point, of_zone)
    what = (
        f"{_AXES[axis]} {shown_value(of_point)} of {key} does not go with time zone "
        f"{shown_value(time_zone)}"
    )
    if away > SIGN_DEG and mirrored < min(away, FARTHEST_DEG):
        return _AXES[axis], Sentence("F460", what, f"{shown_value(-of_point)}: {OF_SIGN[axis]}")
    if away > FARTHEST_DEG:
        near = f"a point of that time zone, whose chief town is near {_AXES[axis]} {of_zone:.0f}"
        slip = "look for a slip in a digit, a sign or the order: [latitude, longitude]"
        return ELSEWHERE, Sentence("F460", what, f"{near}; {slip}")
    return None


def _away(of_point: float, of_zone: float) -> float:
    apart = abs(of_point - of_zone) % _WHOLE_TURN_DEG
    return min(apart, _WHOLE_TURN_DEG - apart)
