"""What dangerous lies near a place, and how far from its edge."""

from collections.abc import Iterable

from generator.dataclass import dataclass
from generator.geometry.arcs import OnGround
from generator.geometry.boxes import Box, are_surely_apart, box_of
from generator.geometry.pieces import between_pieces_ft
from generator.geometry.plane import middle_of_plane, snapped_ft
from generator.inventory.land import LandThing
from generator.inventory.places import PlantedGround
from generator.plan.land.kept_kinds import public_name
from generator.plan.land.lying import lying_of, piece_of
from generator.plan.model.place import DangerNear
from generator.reference.land_kinds import land_kinds
from generator.reference.library import methods
from generator.working import Measured


@dataclass(frozen=True, slots=True)
class _Danger:
    """A dangerous thing with where it lies."""

    thing: LandThing
    lies: OnGround
    box: Box


def near_places(
    places: Iterable[PlantedGround], things: Iterable[LandThing], within_ft: float
) -> dict[str, tuple[DangerNear, ...]]:
    """Return what dangerous lies within a distance of each place, by its id, the nearest first.

    Nothing is said of a place of which no points are typed. Each place is laid on a plane of its
    own: what is measured from it hangs on nothing that lies elsewhere.
    """
    dangers = _dangers(things)
    found: dict[str, tuple[DangerNear, ...]] = {}
    for place in places if dangers else ():
        lies = lying_of(place)
        near = _near(lies, dangers, within_ft) if lies is not None else []
        found[place.id] = tuple(sorted(near, key=_nearest_first))
    return found


def _dangers(things: Iterable[LandThing]) -> list[_Danger]:
    kinds = land_kinds()
    lying = [(thing, lying_of(thing)) for thing in things if kinds[thing.kind].danger]
    return [
        _Danger(thing, lies, box_of(lies.points_lat_lon))
        for thing, lies in lying
        if lies is not None
    ]


def _near(lies: OnGround, dangers: list[_Danger], within_ft: float) -> list[DangerNear]:
    box, middle = box_of(lies.points_lat_lon), middle_of_plane(lies.points_lat_lon[0])
    found: list[DangerNear] = []
    for danger in dangers:
        reach_ft = within_ft + lies.half_width_ft + danger.lies.half_width_ft
        if are_surely_apart(box, danger.box, reach_ft):
            continue
        apart_ft = snapped_ft(
            between_pieces_ft(piece_of(lies, middle), piece_of(danger.lies, middle))
        )
        if apart_ft <= within_ft:
            points_count = len(lies.points_lat_lon) + len(danger.lies.points_lat_lon)
            found.append(_told(danger.thing, apart_ft, points_count))
    return found


def _told(thing: LandThing, apart_ft: float, points_count: int) -> DangerNear:
    method = methods()["between_pieces_ft"]
    apart = Measured(
        "between_pieces_ft",
        # to the foot: the points are off by more
        float(round(apart_ft)),
        "ft",
        method.words,
        points_count,
        method.source,
        thing.where.file,
        thing.where.line,
        "place",
    )
    return DangerNear(thing.id, thing.kind, public_name(thing), apart)


def _nearest_first(near: DangerNear) -> tuple[float, str, str]:
    # of the same distance by what every reader reads of it
    return (near.apart.value, near.name, near.kind)
