"""Which places lie on some of the same ground, as far as the property folder tells.

Places typed as the same ground, places with the same line or outline, and places whose outlines
cross by more than they may be off. All others are taken as different ground.
"""

from collections.abc import Iterable, Mapping
from itertools import combinations

from generator.inventory.fields import Points
from generator.inventory.places import PlantedGround
from generator.plan.model.place import SharedGround
from generator.reference.library import values


def shared_grounds(places: Iterable[PlantedGround]) -> tuple[SharedGround, ...]:
    """Return every two places that lie on some of the same ground."""
    found = (
        SharedGround(one.id, other.id, why)
        for one, other in combinations(tuple(places), 2)
        if (why := _why(one, other))
    )
    return tuple(found)


def same_ground(
    places: Iterable[PlantedGround], shared: Iterable[SharedGround]
) -> Mapping[str, frozenset[str]]:
    """Return for every place the ids of the places on whose ground it lies, its own among them."""
    found = {place.id: {place.id} for place in places}
    # not passed on: two places that each lie on part of a third may share no ground
    for pair in shared:
        found[pair.one].add(pair.other)
        found[pair.other].add(pair.one)
    return {name: frozenset(others) for name, others in found.items()}


def _why(one: PlantedGround, other: PlantedGround) -> str:
    if other.id in one.same_ground_as or one.id in other.same_ground_as:
        return "typed as the same ground"
    if _same_points(one.line_lat_lon, other.line_lat_lon):
        return "they have the same line"
    if _same_points(one.area_lat_lon, other.area_lat_lon):
        return "they have the same outline"
    if _cross(one, other):
        return "their outlines cross by more than they may be off"
    return ""


def _same_points(one: Points | None, other: Points | None) -> bool:
    # walked from the other end, or begun at another corner, it is the same
    return one is not None and other is not None and set(one.lat_lon) == set(other.lat_lon)


def _cross(one: PlantedGround, other: PlantedGround) -> bool:
    if one.area_lat_lon is None or other.area_lat_lon is None:
        return False
    from generator.geometry.overlap import shared_depth_ft

    depth_ft = shared_depth_ft(one.area_lat_lon.lat_lon, other.area_lat_lon.lat_lon)
    # outlines of neighbors cross by what they are off; the coarser of the two says by how much
    return depth_ft > max(_may_be_off_ft(one), _may_be_off_ft(other))


def _may_be_off_ft(place: PlantedGround) -> float:
    stated = place.outline_error_ft
    return stated.value if stated is not None else values()["outline_walked_error_ft"].value
