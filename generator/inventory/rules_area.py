"""Rules on the ground of a place: something to work it out from, and shapes that are shapes."""

from collections.abc import Collection, Iterator

from generator.geometry.corners import corner_numbers, line_numbers
from generator.geometry.crossing import first_crossing
from generator.geometry.geodesic import (
    are_surely_within_mi,
    distances_mi,
    line_length_ft,
    outline_area_ac,
)
from generator.geometry.rough import rough_area_sq_ft, rough_length_ft
from generator.inventory.fields import Points, Where, rules_of
from generator.inventory.places import PlantedGround
from generator.inventory.rule import Broken, Rule
from generator.inventory.schema import Inventory
from generator.inventory.shapes_read import shaped
from generator.units import LatLon, convert

FAR_APART = "F318"
FARTHEST_MI = 20  # no property is as wide
SHORTEST_FT = 1
SMALLEST_SQ_FT = 1
ENOUGH = (
    "width_ft with length_ft or line_lat_lon; or area_lat_lon, the outline; or area_ac, the acres"
)
LOOK = "look for a slip in a digit, a sign or the order: [latitude, longitude]"


def _ground_given(inventory: Inventory) -> Iterator[Broken]:
    for place in inventory.places():
        along = place.length_ft is not None or place.line_lat_lon is not None
        strip = along and place.width_ft is not None
        if strip or place.area_lat_lon is not None or place.area_ac is not None:
            continue
        # a shape that could not be read is told already
        if place.shape is not None and place.line_lat_lon is None:
            continue
        what, where = "nothing here gives the ground", place.where
        if along:
            where = place.where_of("length_ft", "line_lat_lon", "shape")
            what = "a length without width_ft gives no ground"
        elif place.width_ft is not None:
            where = place.where_of("width_ft")
            what = "a width without a length gives no ground"
        yield Broken(where, what, ENOUGH)


def _enough_points(inventory: Inventory) -> Iterator[Broken]:
    for name, points in _shapes(inventory):
        found, fewest = len(_corners(name, points)), _fewest(name)
        if found < fewest:
            counted = "1 point" if found == 1 else f"{found} points"
            what = f"{name} has only {counted}, repeats left out"
            yield Broken(points.where, what, f"at least {fewest} points, each typed once")


def _near_each_other(inventory: Inventory) -> Iterator[Broken]:
    for name, points in _shapes(inventory):
        for number, other, apart_mi in _too_far(points.lat_lon):
            yield Broken(
                points.each[number],
                f"point {number + 1} of {name} lies {apart_mi:,.0f} miles from point {other + 1}",
                f"points at most {FARTHEST_MI} miles apart; {LOOK}",
            )


def _outline_apart(inventory: Inventory) -> Iterator[Broken]:
    for name, points in _sound_shapes(inventory):
        crossing = _crossing(name, points)
        if crossing is not None:
            where, what = crossing
            yield Broken(where, what, "points in the order you come to them, once around")


def _some_ground(inventory: Inventory) -> Iterator[Broken]:
    for name, points in _sound_shapes(inventory):
        shape = [points.lat_lon[number] for number in _corners(name, points)]
        if name == "line_lat_lon":
            if _is_shorter(shape):
                yield Broken(points.where, f"{name} has no length", f"two ends apart; {LOOK}")
        elif _crossing(name, points) is None and _holds_nothing(shape):
            # sides that cross can cancel out to no ground, and are told already
            what = f"{name} holds no ground: its points lie in one line"
            yield Broken(points.where, what, "points around the place, once around")


def _is_shorter(line_lat_lon: list[LatLon]) -> bool:
    # far from the bound no library is needed, which is slow to come in
    if rough_length_ft(line_lat_lon) > 2 * SHORTEST_FT:
        return False
    return line_length_ft(line_lat_lon) < SHORTEST_FT


def _holds_nothing(outline_lat_lon: list[LatLon]) -> bool:
    if rough_area_sq_ft(outline_lat_lon) > 2 * SMALLEST_SQ_FT:
        return False
    return convert(outline_area_ac(outline_lat_lon), "ac", "sq_ft") < SMALLEST_SQ_FT


def _shapes(inventory: Inventory) -> Iterator[tuple[str, Points]]:
    """Yield the shapes that are typed; those out of files were looked at as they were read."""
    for thing in shaped(inventory):
        for name in ("line_lat_lon", "area_lat_lon"):
            points: Points | None = getattr(thing, name, None)
            in_a_file = thing.shape is not None and thing.where_of("shape")
            if points is not None and points.where != in_a_file:
                yield name, points


def _sound_shapes(inventory: Inventory) -> Iterator[tuple[str, Points]]:
    """Yield the shapes that have enough points, none of them far away."""
    for name, points in _shapes(inventory):
        if len(_corners(name, points)) >= _fewest(name) and not _too_far(points.lat_lon):
            yield name, points


def _corners(name: str, points: Points) -> tuple[int, ...]:
    return (line_numbers if name == "line_lat_lon" else corner_numbers)(points.lat_lon)


def _fewest(name: str) -> int:
    return int(rules_of(PlantedGround)[name].limits.at_least or 0)


def _too_far(points: tuple[LatLon, ...]) -> list[tuple[int, int, float]]:
    """Return points that lie too far from another: (number, number of the other, miles).

    Where most points are far from the first, the first is the one that is wrong.
    """
    # half the bound from one point: no two lie farther apart than the bound
    if are_surely_within_mi(points[0], points, FARTHEST_MI / 2):
        return []
    from_first = distances_mi(points[0], points)
    far = [(n, 0, apart_mi) for n, apart_mi in enumerate(from_first) if apart_mi > FARTHEST_MI]
    if len(far) > 1 and 2 * len(far) >= len(points):
        return [(0, far[0][0], far[0][2])]
    # all lie within half the bound of one point, so no two lie farther apart than the bound
    if far or max(from_first) <= FARTHEST_MI / 2:
        return far
    for number, point in enumerate(points):
        for other, apart_mi in enumerate(distances_mi(point, points)):
            if apart_mi > FARTHEST_MI:
                return [(other, number, apart_mi)]
    return []


def _crossing(name: str, points: Points) -> tuple[Where, str] | None:
    if name == "line_lat_lon":
        return None
    numbers = corner_numbers(points.lat_lon)
    sides = first_crossing([points.lat_lon[number] for number in numbers])
    if sides is None:
        return None
    first, second = (
        f"{numbers[side] + 1} to {numbers[(side + 1) % len(numbers)] + 1}" for side in sides
    )
    what = f"the outline meets itself: from point {first}, and from point {second}"
    return points.each[numbers[sides[1]]], what


def points_beside(inventory: Inventory, where: Collection[Where]) -> set[Where]:
    """Return the places of all points of the shapes that have a point at one of some places."""
    shapes = (points.each for _, points in _shapes(inventory))
    return {spot for each in shapes if set(each) & set(where) for spot in each}


AREA_RULES = (
    Rule("F315", "A place has something to work out its ground from.", _ground_given, alone=True),
    Rule("F316", "A line has two points and an outline three.", _enough_points, alone=True),
    Rule("F317", "An outline goes around once and never meets itself.", _outline_apart, alone=True),
    Rule(FAR_APART, "The points of a place lie near each other.", _near_each_other, alone=True),
    Rule("F319", "A line has a length, and an outline holds ground.", _some_ground, alone=True),
)
