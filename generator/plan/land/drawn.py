"""What can be drawn of a reader's ground: every shape that lies in their plan, on one plane.

The plane's middle is the middle of these shapes alone, so that nothing kept from a reader moves
what they are shown.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from generator.dataclass import dataclass
from generator.geometry.arcs import OnGround
from generator.geometry.corners import corner_numbers, line_numbers
from generator.geometry.crossing import Spot
from generator.geometry.pieces import reach_piece
from generator.geometry.plane import middle_of_plane, on_plane_ft
from generator.geometry.thin import corners_kept
from generator.inventory.ground import WaterHole
from generator.inventory.land import LandThing
from generator.inventory.places import Route, Stand
from generator.plan.land.lying import lying_of, piece_on
from generator.plan.model.place import KeptOff, Place
from generator.plan.model.plan import Plan
from generator.units import LatLon

# What is drawn beside the kinds of things of the land.
PLACE, STAND, WALK, WATER_HOLE = "place", "stand", "walk", "water_hole"
GATE, BEGIN, PARKING, WALK_GATE = "emergency_gate", "begin", "parking", "walk_gate"
# The one gate that rescuers come through, by an id that no thing of a property can have.
GATE_ID = "gate--"


@dataclass(frozen=True, slots=True)
class GroundShape:
    """A shape in feet east and north of the middle of its plan's plane.

    `kind` is that of the thing of the land, or one of those above. `half_width_ft` is how far a
    line reaches to either side, and a point around it. `corners` are the southwestern and the
    northeastern one of the smallest upright box around all of it. `holes_ft` are outlines inside
    of an outline, which are none of its ground.
    """

    id: str
    kind: str
    name: str
    spots_ft: tuple[Spot, ...]
    is_outline: bool
    half_width_ft: float
    corners: tuple[Spot, Spot]
    holes_ft: tuple[tuple[Spot, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class _Lying:
    id: str
    kind: str
    name: str
    on: OnGround


def fewer_corners(line: Sequence[Spot], off: float) -> list[Spot]:
    """Return a line with as few of its corners as keep it within a distance of where it ran.

    >>> fewer_corners([(0, 0), (5, 0.2), (10, 0), (10, 9)], 0.5)
    [(0, 0), (10, 0), (10, 9)]
    """
    return [line[number] for number in corners_kept(line, off)]


def ground_shapes(plan: Plan) -> Mapping[str, GroundShape]:
    """Return every shape of a plan by its id: things of the land, places, stands, walks, the gate.

    Where work begins on a place is drawn under the id of the place with `begin_id`.
    """
    return plan.once("ground shapes", _ground_shapes)


def kept_off_ground(
    plan: Plan, kept_off: Iterable[KeptOff]
) -> Iterator[tuple[KeptOff, tuple[Spot, ...]]]:
    """Yield the outlines of the ground around things of a plan that labels keep the spray off.

    Never less of it; of what is typed by its distance alone nothing is drawn.
    """
    shapes = ground_shapes(plan)
    for one in kept_off:
        shape = shapes.get(one.thing_id)
        if shape is None or one.reach is None:
            continue
        lying = OnGround((), is_outline=shape.is_outline, half_width_ft=shape.half_width_ft)
        reach = reach_piece(piece_on(lying, shape.spots_ft, shape.holes_ft), one.reach.value)
        # of ground in several parts each has its own
        for part in getattr(reach, "geoms", [reach]):
            yield one, tuple(part.exterior.coords[:-1])


def begin_id(place_id: str) -> str:
    """Return the id under which is drawn where work on a place begins."""
    return f"{place_id}--begin"


def start_ids(walk_id: str) -> tuple[str, str]:
    """Return the ids under which is drawn where to park for a walk, and the gate it goes in by."""
    return f"{walk_id}--parking", f"{walk_id}--gate"


def _ground_shapes(plan: Plan) -> dict[str, GroundShape]:
    lying = list(_lying(plan))
    points = [_points(one.on) for one in lying]
    every = [point for rings in points for ring in rings for point in ring]
    if not every:
        return {}
    spots = iter(on_plane_ft(every, middle_of_plane(_middle_of(every))))
    return {
        one.id: _shape(one, *(tuple(next(spots) for _ in ring) for ring in rings))
        for one, rings in zip(lying, points, strict=True)
    }


def _shape(one: _Lying, spots_ft: tuple[Spot, ...], *holes_ft: tuple[Spot, ...]) -> GroundShape:
    easts, norths = zip(*spots_ft, strict=True)
    half_ft = one.on.half_width_ft
    corners = (
        (min(easts) - half_ft, min(norths) - half_ft),
        (max(easts) + half_ft, max(norths) + half_ft),
    )
    return GroundShape(
        one.id, one.kind, one.name, spots_ft, one.on.is_outline, half_ft, corners, holes_ft
    )


def _lying(plan: Plan) -> Iterator[_Lying]:
    """Yield all that lies somewhere in a plan, in the order of its files."""
    emergency = plan.land.emergency
    if emergency is not None and emergency.gate_lat_lon is not None:
        yield _Lying(GATE_ID, GATE, "The gate", OnGround((emergency.gate_lat_lon,)))
    kinds: list[tuple[str, tuple[Stand | Route | WaterHole, ...]]] = [
        (STAND, plan.land.stands),
        (WALK, plan.land.routes),
        (WATER_HOLE, tuple(water.hole for water in plan.water)),
    ]
    for thing in plan.land.things:
        yield from _one(thing.kind, thing)
    for place in plan.places:
        yield from _place(place)
    for kind, things in kinds:
        for one in things:
            yield from _one(kind, one)
    for walk in plan.land.routes:
        yield from _starts(walk)


def _one(kind: str, thing: LandThing | Stand | Route | WaterHole) -> Iterator[_Lying]:
    on = lying_of(thing)
    if on is not None:
        yield _Lying(thing.id, kind, thing.name or thing.id, on)


def _starts(walk: Route) -> Iterator[_Lying]:
    parking, gate = start_ids(walk.id)
    if walk.parking_lat_lon is not None:
        yield _Lying(parking, PARKING, "Park here", OnGround((walk.parking_lat_lon,)))
    if walk.gate_lat_lon is not None:
        yield _Lying(gate, WALK_GATE, "Go in here", OnGround((walk.gate_lat_lon,)))


def _place(place: Place) -> Iterator[_Lying]:
    if place.lies is not None:
        yield _Lying(place.id, PLACE, place.name, place.lies)
    if place.begins_lat_lon is not None:
        begins = OnGround((place.begins_lat_lon,))
        yield _Lying(begin_id(place.id), BEGIN, "Begin here", begins)


def _points(on: OnGround) -> list[list[LatLon]]:
    """Return the points of what lies there and of each hole in it.

    None again that is given again or closes a ring.
    """
    numbers_of = corner_numbers if on.is_outline else line_numbers
    rings = (on.points_lat_lon, *on.holes_lat_lon)
    return [[ring[number] for number in numbers_of(ring)] for ring in rings]


def _middle_of(points_lat_lon: list[LatLon]) -> LatLon:
    lats, lons = zip(*points_lat_lon, strict=True)
    return (min(lats) + max(lats)) / 2, (min(lons) + max(lons)) / 2
