"""What is measured on typed points: a length, the ground inside an outline, the way around it."""

from collections.abc import Sequence

from generator.geometry import geodesic
from generator.geometry.corners import corner_numbers, line_numbers
from generator.inventory.fields import Points, Record, rules_of
from generator.reference.library import methods
from generator.units import LatLon
from generator.working import Measured

LESS_HOLES, AND_HOLES = ", less that of the holes in it", ", and once around each hole in it"


def measured_line_ft(line: Points, on: type[Record]) -> Measured:
    """Return the length of a line, measured on its points, which are a field of `on`."""
    points = _chosen(line, line_numbers(line.lat_lon))
    length_ft = geodesic.line_length_ft(points)
    return _measured("line_length_ft", length_ft, "ft", len(points), line, on, "")


def measured_outline_ac(outline: Points, on: type[Record]) -> Measured:
    """Return the ground inside an outline, measured on its corners, which are a field of `on`."""
    points, holes, count = _rings(outline)
    inside_ac = geodesic.outline_area_ac(points, holes)
    return _measured("outline_area_ac", inside_ac, "ac", count, outline, on, LESS_HOLES)


def measured_around_ft(outline: Points, on: type[Record]) -> Measured:
    """Return the way once around an outline, measured on its corners, a field of `on`."""
    points, holes, count = _rings(outline)
    around_ft = geodesic.outline_perimeter_ft(points, holes)
    return _measured("outline_perimeter_ft", around_ft, "ft", count, outline, on, AND_HOLES)


def _rings(outline: Points) -> tuple[tuple[LatLon, ...], list[list[LatLon]], int]:
    """Return the corners of an outline, those of each hole in it, and how many there are."""
    points = _chosen(outline, corner_numbers(outline.lat_lon))
    holes = [[hole[number] for number in corner_numbers(hole)] for hole in outline.holes]
    return points, holes, len(points) + sum(map(len, holes))


def _chosen(points: Points, numbers: Sequence[int]) -> tuple[LatLon, ...]:
    return tuple(points.lat_lon[number] for number in numbers)


def _measured(
    name: str, value: float, unit: str, count: int, points: Points, on: type[Record], of_holes: str
) -> Measured:
    method, where = methods()[name], points.where
    field = "area_lat_lon" if of_holes else "line_lat_lon"
    return Measured(
        name,
        value,
        unit,
        method.words + (of_holes if points.holes else ""),
        count,
        method.source,
        where.file,
        where.line,
        # who may not see the points may not see what is measured on them
        rules_of(on)[field].visible,
    )
