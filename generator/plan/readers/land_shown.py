"""What another reader sees of the land: what is dangerous near their work, and what they are shown.

Each thing goes by its name for others or by what it is, under a new id. Where it lies is there for
drawings; its coordinates are handed out only where the owner says so for that reader. What tells of
deer never reaches a contractor.
"""

from collections.abc import Iterable, Mapping

from generator.geometry.arcs import OnGround
from generator.inventory.fields import Points
from generator.inventory.land import LandThing
from generator.inventory.schema import PARTNER, Reader
from generator.plan.land.kept_kinds import public_name
from generator.plan.model.job import Job
from generator.plan.model.place import DangerNear
from generator.plan.readers.redacted import NOWHERE, without_line
from generator.reference.land_kinds import land_kinds
from generator.working import Measured


def things_shown(
    things: Iterable[LandThing], jobs: Iterable[Job], reader: Reader
) -> tuple[LandThing, ...]:
    """Return the things of the land a reader sees, still as the owner sees them."""
    near = {one.thing_id for job in jobs for one in job.near}
    return tuple(
        thing
        for thing in things
        if thing.id in near or reader.id in (*thing.shown_to, *thing.coordinates_for)
        if may_see_kind(thing.kind, reader)
    )


def may_see_kind(kind: str, reader: Reader) -> bool:
    """Return whether a reader may ever see things of a kind: deer are not told to the hired."""
    return reader.kind == PARTNER or not land_kinds()[kind].private


def released_things(
    shown: Iterable[LandThing], reader: Reader
) -> tuple[tuple[LandThing, ...], dict[str, str]]:
    """Return things as a reader is handed them, and their new ids by their old ones."""
    # by what is seen of them: the order by the owner's ids would tell something of these
    in_order = sorted(shown, key=_outward)
    new_ids = {thing.id: f"thing--{number}" for number, thing in enumerate(in_order, 1)}
    return tuple(_thing(thing, new_ids[thing.id], reader) for thing in in_order), new_ids


def _outward(thing: LandThing) -> tuple[str, str, str]:
    lines = (thing.line_lat_lon, thing.area_lat_lon)
    lies = [thing.at_lat_lon, *(line.every_lat_lon if line is not None else () for line in lines)]
    return (public_name(thing), thing.kind, repr(lies))


def _thing(thing: LandThing, new_id: str, reader: Reader) -> LandThing:
    radius, width = thing.radius_ft, thing.width_ft
    return LandThing(
        where=NOWHERE,
        field_marks={},
        id=new_id,
        was=(),
        kind=thing.kind,
        name=public_name(thing),
        known_as=None,
        at_lat_lon=thing.at_lat_lon,
        line_lat_lon=points_alone(thing.line_lat_lon),
        area_lat_lon=points_alone(thing.area_lat_lon),
        shape=None,
        radius_ft=without_line(radius) if radius is not None else None,
        width_ft=without_line(width) if width is not None else None,
        counts_from=None,
        got=None,
        off_ft=None,
        height_ft=None,
        leaf_off=None,
        far=None,
        shown_to=(),
        coordinates_for=(reader.id,) if reader.id in thing.coordinates_for else (),
        note=None,
    )


def points_alone(points: Points | None) -> Points | None:
    """Return points without where in the owner's files they stand."""
    if points is None:
        return None
    return Points(lat_lon=points.lat_lon, where=NOWHERE, each=(), holes=points.holes)


def ground_alone(lies: OnGround | None) -> OnGround | None:
    """Return where something lies, put together anew."""
    if lies is None:
        return None
    return OnGround(
        points_lat_lon=lies.points_lat_lon,
        is_outline=lies.is_outline,
        half_width_ft=lies.half_width_ft,
        holes_lat_lon=lies.holes_lat_lon,
    )


def released_near(near: Iterable[DangerNear], new_ids: Mapping[str, str]) -> tuple[DangerNear, ...]:
    """Return what lies near the place of a job by its new ids."""
    return tuple(
        DangerNear(
            thing_id=new_ids[one.thing_id],
            kind=one.kind,
            name=one.name,
            apart=measured_alone(one.apart),
        )
        for one in near
    )


def measured_alone(measured: Measured) -> Measured:
    """Return a number measured on points without where in the owner's files these stand."""
    return Measured(
        name=measured.name,
        value=measured.value,
        unit=measured.unit,
        method=measured.method,
        points=measured.points,
        source=measured.source,
        file="",
        line=0,
        visible=measured.visible,
    )
