"""Numbers measured on the plane of a property: on one thing, or between two."""

from generator.plan.land.lying import Thing, lying_of
from generator.reference.library import methods
from generator.working import Measured


def measured_on(name: str, value: float, unit: str, *things: Thing) -> Measured:
    """Return a number measured on the points of things; it stands with the first of them."""
    method, where = methods()[name], things[0].where
    points = sum(len(lies.points_lat_lon) for lies in map(lying_of, things) if lies is not None)
    return Measured(
        name, value, unit, method.words, points, method.source, where.file, where.line, "place"
    )
