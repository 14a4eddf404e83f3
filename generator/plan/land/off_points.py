"""How far the points of a thing may be off: as its owner knows it, else by how they were got."""

from generator.inventory.ground import DRAWN, PHONE, SURVEYED, UNDER_TREES, WaterHole
from generator.inventory.places import PlantedGround, Route, Stand
from generator.plan.land.lying import Thing
from generator.reference.library import values
from generator.working import Given, Reference

_BY_HOW_GOT = {
    PHONE: "phone_in_the_open_off_ft",
    UNDER_TREES: "phone_under_trees_off_ft",
    SURVEYED: "surveyed_off_ft",
    DRAWN: "drawn_off_ft",
}


def off_ft(thing: Thing) -> Given | Reference:
    """Return how far the points of a thing may be off, in feet.

    The owner's own figure counts, else how the points were got. Where that is left out it was a
    phone: under trees at stands and on walks, which stand and run there, in the open elsewhere.
    """
    own = _own_figure(thing)
    return own if own is not None else values()[_BY_HOW_GOT[_got(thing)]]


def _own_figure(thing: Thing) -> Given | None:
    match thing:
        case PlantedGround():
            return thing.outline_error_ft
        case WaterHole():
            return None
        case _:
            return thing.off_ft


def _got(thing: Thing) -> str:
    if isinstance(thing, WaterHole):
        return PHONE
    return thing.got or (UNDER_TREES if isinstance(thing, Stand | Route) else PHONE)
