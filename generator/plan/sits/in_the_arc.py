"""Whether something lies in the arc of fire of a sit: yes, no, or nothing typed that says so."""

from generator.geometry.arcs import Fire, OnGround, apart_ft
from generator.inventory.ground import WaterHole
from generator.inventory.places import PlantedGround, Route, Stand
from generator.inventory.sits import ArcOfFire, Sit
from generator.reference.library import values
from generator.units import convert

Thing = PlantedGround | Route | Stand | WaterHole


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


def lying_of(thing: Thing) -> OnGround | None:
    """Return where a thing lies; None where no points of it are typed."""
    match thing:
        case Stand() | WaterHole():
            return OnGround((thing.at_lat_lon,)) if thing.at_lat_lon is not None else None
        case Route():
            line = thing.line_lat_lon
            return OnGround(line.lat_lon) if line is not None else None
        case PlantedGround():
            if thing.area_lat_lon is not None:
                return OnGround(thing.area_lat_lon.lat_lon, is_outline=True)
            # a line says how far to its sides the ground goes where the width is taped
            if thing.line_lat_lon is None or thing.width_ft is None:
                return None
            return OnGround(thing.line_lat_lon.lat_lon, half_width_ft=thing.width_ft.value / 2)


def meets(fire: Fire | None, other: Fire | OnGround | None) -> bool | None:
    """Return whether an arc and what lies there come together; None where one is not typed.

    What two phones may be off between them counts as come together.
    """
    if fire is None or other is None:
        return None
    off = values()["phone_point_off_m"]
    return apart_ft(fire, other) <= 2 * convert(off.value, off.unit, "ft")
