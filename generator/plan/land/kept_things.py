"""The things of the land that labels keep from: which kinds are drawn, and what is near a place."""

from collections.abc import Iterable

from generator.dataclass import dataclass
from generator.geometry.arcs import OnGround
from generator.geometry.boxes import Box, are_surely_apart, box_of
from generator.geometry.pieces import SHARPEST_MITRE
from generator.geometry.plane import middle_of_plane
from generator.inventory.ground import WaterHole
from generator.inventory.label import Setback
from generator.inventory.land import LandThing
from generator.inventory.places import PlantedGround
from generator.inventory.schema import Inventory
from generator.plan.land.kept_kinds import KeptThing, kept_as, kind_kept_from
from generator.plan.land.lying import lying_of
from generator.plan.land.off_points import off_ft
from generator.units import LatLon
from generator.working import Given, Reference


@dataclass(frozen=True, slots=True)
class Lies:
    """A thing that labels keep from, where it lies and how far its points may be off.

    `wide_ft` is how far from its points its ground may reach: corners of bends lie out as far as
    their mitres do.
    """

    thing: KeptThing
    kind: str
    on_ground: OnGround
    off: Given | Reference
    box: Box
    wide_ft: float


@dataclass(frozen=True, slots=True)
class Around:
    """What lies on the land that labels keep from, and the middle of the plane of the property.

    `drawn` are the kinds of which, as the owner says, every thing has its points.
    """

    middle: LatLon | None
    things: tuple[Lies, ...]
    drawn: frozenset[str]


def around(inventory: Inventory) -> Around:
    """Return what lies on the land that labels keep from."""
    typed_things: tuple[LandThing | WaterHole, ...] = (*inventory.land, *inventory.water_holes)
    things = tuple(
        Lies(thing, kind, lying, off_ft(thing), box_of(lying.points_lat_lon), _wide_ft(lying))
        for thing in typed_things
        if (kind := kept_as(thing)) is not None and (lying := lying_of(thing)) is not None
    )
    typed = inventory.property.location_lat_lon
    return Around(
        middle_of_plane(typed) if typed is not None else None, things, drawn_kinds(inventory)
    )


def drawn_kinds(inventory: Inventory) -> frozenset[str]:
    """Return the kinds of which every thing near the work has its points, as the owner says.

    That one is drawn tells nothing of a second. A water hole without points is open water that lies
    nobody knows where, whatever is said.
    """
    lost = {kept_as(hole) for hole in inventory.water_holes if lying_of(hole) is None}
    return frozenset(inventory.property.all_drawn) - lost


def near_to(ground: PlantedGround, things: Iterable[Lies], within_ft: float) -> tuple[Lies, ...]:
    """Return the things that may be within a distance of a place.

    It is asked of every thing for every place, so it goes by the boxes around their points.
    """
    lying = lying_of(ground)
    if lying is None:
        return ()
    box, wide_ft = box_of(lying.points_lat_lon), _wide_ft(lying)
    return tuple(
        one
        for one in things
        if not are_surely_apart(box, one.box, within_ft + wide_ft + one.wide_ft)
    )


def not_told(
    ground: PlantedGround, setbacks: Iterable[Setback], drawn: frozenset[str]
) -> tuple[Setback, ...]:
    """Return the distances of labels of which nobody says how far such things lie from a place.

    It is said by typed distances; or by points, where the place has some and the owner says that
    every thing of the kind has.
    """
    near = ground.near.distances if ground.near is not None else ()
    told = {one.kind for one in near}
    if lying_of(ground) is not None:
        told |= drawn
    return tuple(setback for setback in setbacks if kind_kept_from(setback) not in told)


def _wide_ft(lying: OnGround) -> float:
    return SHARPEST_MITRE * lying.half_width_ft
