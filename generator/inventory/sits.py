"""Who hunts where: a sit of somebody at a stand, on a day, and where the shots may go."""

import datetime

from generator.dataclass import dataclass
from generator.inventory.fields import (
    POSITIVE,
    Limits,
    Record,
    day,
    identity,
    measure,
    record,
    reference,
    text,
)
from generator.working import Given

_AROUND = Limits(at_least=0, at_most=360)


@dataclass(frozen=True, slots=True, kw_only=True)
class ArcOfFire(Record):
    """The ground that shots from a stand may cross, turning clockwise from one side to the other.

    Nobody else may be on it while somebody sits there.
    """

    from_deg: Given = measure(
        "place", "its left side, by the compass: 0 north, 90 east", "deg", _AROUND, required=True
    )
    to_deg: Given = measure(
        "place", "its right side, turning clockwise", "deg", _AROUND, required=True
    )
    reach_yd: Given = measure(
        "place", "how far out nobody else may be", "yd", POSITIVE, required=True
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class KeepsOff(Record):
    """Something near a stand that the law keeps shots away from: how far it is, how far it must be.

    The distance of the law is the owner's to look up; none is brought along.
    """

    what: str = text("place", "what it is: a house, a road, a line", required=True)
    distance_yd: Given = measure(
        "place", "how far it is from the stand, as measured", "yd", POSITIVE, required=True
    )
    at_least_yd: Given = measure(
        "place", "how far a shot must keep off it, as looked up", "yd", POSITIVE, required=True
    )
    looked_up_on: datetime.date | None = day("place", "looked up on")


@dataclass(frozen=True, slots=True, kw_only=True)
class Sit(Record):
    """Somebody at a stand on a day, from when they leave the gate until they are back at it."""

    id: str = identity("id of the sit")
    sits_on: datetime.date = day("place", "day of the sit", required=True)
    from_time: str = text("place", "time they leave the gate, like 15:00", required=True)
    until_time: str = text("place", "time they are back at the gate, like 19:00", required=True)
    person: str | None = text("person", "who sits there")
    reader: str | None = reference("person", "reader of yours it is, a partner", "reader")
    stand: str = reference("place", "stand they sit at", "stand", required=True)
    walk_in: str | None = reference("place", "walk they go in by", "route")
    walk_out: str | None = reference("place", "walk they come out by", "route")
    arc_of_fire: ArcOfFire | None = record(
        "place", "where the shots may go on this sit, where it is not the stand's", ArcOfFire
    )
    note: str | None = text("note", "a note of your own")
