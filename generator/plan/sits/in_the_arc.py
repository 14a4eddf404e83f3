"""Whether something lies in the arc of fire of a sit: yes, no, or nothing typed that says so."""

from generator.geometry.arcs import Fire, OnGround, apart_ft
from generator.inventory.places import Stand
from generator.inventory.sits import ArcOfFire, Sit
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


def meets(fire: Fire | None, other: Fire | OnGround | None) -> bool | None:
    """Return whether an arc and what lies there come together; None where one is not typed.

    What two phones may be off between them counts as come together.
    """
    if fire is None or other is None:
        return None
    off = values()["phone_point_off_m"]
    return apart_ft(fire, other) <= 2 * convert(off.value, off.unit, "ft")
