"""Which places lie on some of the same ground, as far as the property folder tells.

Places typed as the same ground, places with the same line or outline, and places whose outlines
cross by more than they may be off. All others are taken as different ground.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import combinations

from generator.inventory.fields import Points
from generator.inventory.places import PlantedGround
from generator.plan.model.place import SharedGround
from generator.reference.library import values
from generator.units import LatLon

# Two places by their numbers, the smaller first.
Pair = tuple[int, int]
TWO = 2


def shared_grounds(places: Iterable[PlantedGround]) -> tuple[SharedGround, ...]:
    """Return every two places that lie on some of the same ground."""
    every = tuple(places)
    # the first reason found stands
    why: dict[Pair, str] = {}
    for words, pairs in (
        ("typed as the same ground", _typed(every)),
        ("they have the same line", _alike([place.line_lat_lon for place in every])),
        ("they have the same outline", _alike([place.area_lat_lon for place in every])),
        ("their outlines cross by more than they may be off", _crossing(every)),
    ):
        for pair in pairs:
            why.setdefault(pair, words)
    return tuple(
        SharedGround(every[one].id, every[other].id, why[one, other]) for one, other in sorted(why)
    )


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


def _typed(places: Sequence[PlantedGround]) -> Iterator[Pair]:
    numbers = {place.id: number for number, place in enumerate(places)}
    for number, place in enumerate(places):
        others = (numbers[name] for name in place.same_ground_as if name in numbers)
        yield from (_in_order(number, other) for other in others if other != number)


def _alike(points: Sequence[Points | None]) -> Iterator[Pair]:
    # walked from the other end, or begun at another corner, it is the same
    alike: dict[frozenset[LatLon], list[int]] = {}
    for number, typed in enumerate(points):
        if typed is not None:
            alike.setdefault(frozenset(typed.lat_lon), []).append(number)
    for numbers in alike.values():
        yield from combinations(numbers, 2)


def _crossing(places: Sequence[PlantedGround]) -> Iterator[Pair]:
    outlined = [number for number, place in enumerate(places) if place.area_lat_lon is not None]
    # most properties have no two outlines, and need no geometry
    if len(outlined) < TWO:
        return
    from generator.geometry.overlap import near_each_other, shared_depth_ft

    outlines = [area.lat_lon for place in places if (area := place.area_lat_lon) is not None]
    for first, second in near_each_other(outlines):
        one, other = outlined[first], outlined[second]
        may_be_off_ft = max(_may_be_off_ft(places[one]), _may_be_off_ft(places[other]))
        # outlines of neighbors cross by what they are off; the coarser of the two says by how much
        if shared_depth_ft(outlines[first], outlines[second]) > may_be_off_ft:
            yield one, other


def _in_order(one: int, other: int) -> Pair:
    return (one, other) if one < other else (other, one)


def _may_be_off_ft(place: PlantedGround) -> float:
    stated = place.outline_error_ft
    return stated.value if stated is not None else values()["outline_walked_error_ft"].value
