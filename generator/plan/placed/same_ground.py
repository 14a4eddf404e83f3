"""Which places lie on some of the same ground, as far as the property folder tells.

Places typed as the same ground, places with the same line or outline, and places that lie on each
other by more than their points may be off. All others are taken as different ground, with a caution
where two lie on each other by less.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import combinations

from generator.dataclass import dataclass
from generator.geometry.overlap import lies_on, near_each_other, shared_width_ft
from generator.geometry.pieces import Piece
from generator.geometry.plane import middle_of_plane
from generator.inventory.fields import Points
from generator.inventory.places import PlantedGround
from generator.plan.findings.about_land import LandCaution
from generator.plan.findings.order import finding
from generator.plan.land.lying import lying_of, piece_of
from generator.plan.land.off_points import off_ft
from generator.plan.model.finding import Finding, about_place
from generator.plan.model.place import SharedGround
from generator.plan.placed.measured import measured_on
from generator.units import LatLon
from generator.working import Figure, Measured

# Two places by their numbers, the smaller first.
Pair = tuple[int, int]
BY_POINTS = "their points lie on each other by more than they may be off"


@dataclass(frozen=True, slots=True)
class Overlap:
    """Two places that by their points lie on each other: how wide, and whether that counts."""

    one: PlantedGround
    other: PlantedGround
    width: Measured
    off: Figure
    counts: bool


def overlaps_of(
    places: Iterable[PlantedGround], location_lat_lon: LatLon | None
) -> tuple[Overlap, ...]:
    """Return every two places that by their points lie on each other, however little."""
    lying = [(place, lies) for place in places if (lies := lying_of(place)) is not None]
    found = []
    for first, second in sorted(near_each_other([lies for _, lies in lying])):
        (one, lies), (other, lies_too) = lying[first], lying[second]
        middle = middle_of_plane(location_lat_lon or lies.points_lat_lon[0])
        overlap = _overlap(one, other, piece_of(lies, middle), piece_of(lies_too, middle))
        if overlap is not None:
            found.append(overlap)
    return tuple(found)


def _overlap(
    one: PlantedGround, other: PlantedGround, piece: Piece, piece_too: Piece
) -> Overlap | None:
    width_ft = shared_width_ft(piece, piece_too)
    if width_ft == 0:
        return None
    # edges of neighbors cross by what they are off; the coarser of the two says by how much
    off = max(off_ft(one), off_ft(other), key=lambda figure: figure.value)
    width = measured_on("shared_width_ft", width_ft, "ft", one, other)
    return Overlap(one, other, width, off, lies_on(piece, piece_too, off.value))


def shared_grounds(
    places: Iterable[PlantedGround], overlaps: Iterable[Overlap]
) -> tuple[SharedGround, ...]:
    """Return every two places that lie on some of the same ground."""
    every = tuple(places)
    numbers = {place.id: number for number, place in enumerate(every)}
    crossing = [(numbers[on.one.id], numbers[on.other.id]) for on in overlaps if on.counts]
    # the first reason found stands
    why: dict[Pair, str] = {}
    for words, pairs in (
        ("typed as the same ground", _typed(every)),
        ("they have the same line", _alike([place.line_lat_lon for place in every])),
        ("they have the same outline", _alike([place.area_lat_lon for place in every])),
        (BY_POINTS, crossing),
    ):
        for pair in pairs:
            why.setdefault(pair, words)
    return tuple(
        SharedGround(every[one].id, every[other].id, why[one, other]) for one, other in sorted(why)
    )


def overlap_findings(
    overlaps: Iterable[Overlap], shared: Iterable[SharedGround]
) -> Iterator[Finding]:
    """Yield a caution for every two places that lie on each other, where nobody typed so."""
    why = {(pair.one, pair.other): pair.why for pair in shared}
    for on in overlaps:
        known = why.get((on.one.id, on.other.id))
        if known in (None, BY_POINTS):
            reason = LandCaution.EDGES_CROSS if known is None else LandCaution.ON_EACH_OTHER
            figures = (("Wide, at the widest", on.width), ("Points may be off", on.off))
            names = {"place": on.one.name, "other": on.other.name}
            yield finding(reason, about_place(on.one.id), on.one.where, figures, **names)


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


def _in_order(one: int, other: int) -> Pair:
    return (one, other) if one < other else (other, one)
