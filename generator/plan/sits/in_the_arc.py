"""Whether something lies in the arc of fire of a sit: yes, no, or nothing typed that says so."""

from generator.geometry.arcs import Fire, OnGround, apart_ft
from generator.inventory.places import Stand
from generator.inventory.sits import ArcOfFire, Sit
from generator.plan.land.lying import Thing
from generator.plan.land.off_points import off_ft
from generator.reference.library import values
from generator.units import convert


def arc_of(sit: Sit, stand: Stand) -> ArcOfFire | None:
    """Return the arc of a sit: its own, else that of its stand."""
    return sit.arc_of_fire or stand.arc_of_fire


def fire_of(sit: Sit, stand: Stand) -> Fire | None:
    """Return the ground that shots of a sit may cross; None where point or arc is not typed."""
    arc = arc_of(sit, stand)
    if arc is None or stand.at_lat_lon is None:
        return None
    reach_ft = convert(arc.reach_yd.value, arc.reach_yd.unit, "ft")
    return Fire(stand.at_lat_lon, arc.from_deg.value, arc.to_deg.value, reach_ft)


def meets(
    fire: Fire | None, other: Fire | OnGround | None, stand: Stand, thing: Thing
) -> bool | None:
    """Return whether the arc of a stand and what lies there, of a thing, come together.

    What the points of the two may be off between them counts as come together. None where one of
    them is not typed.
    """
    if fire is None or other is None:
        return None
    return apart_ft(fire, other) <= _may_be_off_ft(stand) + _may_be_off_ft(thing)


def _may_be_off_ft(thing: Thing) -> float:
    # people may be shot: never less than a phone under trees is off
    return max(off_ft(thing).value, values()["phone_under_trees_off_ft"].value)
