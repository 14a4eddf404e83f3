"""Whether the points of a shape can be what it says: one line, one outline, on this property.

Measured without a library: whatever is near a bound here is far from any shape somebody means.
"""

from collections.abc import Sequence

from generator.geometry.corners import corner_numbers, line_numbers
from generator.geometry.crossing import first_crossing, first_hole_astray
from generator.geometry.geodesic import are_surely_within_mi
from generator.geometry.rough import rough_area_sq_ft, rough_length_ft
from generator.inventory import shape_faults as say
from generator.inventory.problems import Sentence
from generator.inventory.rules_area import FARTHEST_MI, SHORTEST_FT, SMALLEST_SQ_FT
from generator.inventory.shape_found import LINE, OUTLINE, POINT, FoundShape
from generator.units import LatLon

_FEWEST = {POINT: 1, LINE: 2, OUTLINE: 3}


def wrong_with(shape: FoundShape) -> Sentence | None:
    """Return what keeps a shape from being used anywhere, None where nothing does."""
    if shape.wrong is not None:
        return shape.wrong
    numbers = (corner_numbers if shape.form == OUTLINE else line_numbers)(shape.lat_lon)
    corners = [shape.lat_lon[number] for number in numbers]
    if len(corners) < _FEWEST[shape.form]:
        counted = "1 point" if len(corners) == 1 else f"{len(corners)} points"
        return say.no_size(f"its {shape.form} has only {counted}, repeats left out")
    if not are_surely_within_mi(corners[0], corners, FARTHEST_MI):
        return say.no_size(f"its points lie more than {FARTHEST_MI} miles from each other")
    if shape.form == OUTLINE:
        return _wrong_outline(corners, numbers) or _wrong_holes(corners, shape)
    if shape.form == LINE and rough_length_ft(corners) < SHORTEST_FT:
        return say.no_size("its line has no length")
    return None


def _wrong_outline(corners: Sequence[LatLon], numbers: Sequence[int]) -> Sentence | None:
    sides = first_crossing(corners)
    if sides is not None:
        first, second = (numbers[side] + 1 for side in sides)
        return say.meets_itself(first, second)
    if rough_area_sq_ft(corners) < SMALLEST_SQ_FT:
        return say.no_size("its outline holds no ground")
    return None


def _wrong_holes(corners: Sequence[LatLon], shape: FoundShape) -> Sentence | None:
    """Return what keeps holes from being holes in an outline; each is one of its own first."""
    holes = []
    for number, hole in enumerate(shape.holes, start=1):
        numbers = corner_numbers(hole)
        holes.append([hole[at] for at in numbers])
        if len(numbers) < _FEWEST[OUTLINE]:
            return say.of_a_hole(number, say.not_closed(len(hole)))
        wrong = _wrong_outline(holes[-1], numbers)
        if wrong is not None:
            return say.of_a_hole(number, wrong)
    astray = first_hole_astray([corners, *holes]) if holes else None
    return say.hole_astray(astray) if astray is not None else None


def turned_around(lat_lon: Sequence[LatLon], middle: LatLon) -> Sentence | None:
    """Return that points lie on the property once two numbers or a sign are turned, else None."""
    if are_surely_within_mi(middle, lat_lon, FARTHEST_MI):
        return None
    for words, (lat_sign, lon_sign) in _SIGNS.items():
        signed = [(lat_sign * lat, lon_sign * lon) for lat, lon in lat_lon]
        swapped = [(lon, lat) for lat, lon in signed if abs(lon) <= say.MOST_LAT]
        if words and are_surely_within_mi(middle, signed, FARTHEST_MI):
            return say.turned(f"with the sign of its {words} turned")
        if len(swapped) == len(signed) and are_surely_within_mi(middle, swapped, FARTHEST_MI):
            beside = ", and a sign turned" if words else ""
            return say.turned(f"with latitude and longitude swapped{beside}")
    return None


_SIGNS = {"": (1, 1), "longitude": (1, -1), "latitude": (-1, 1), "latitude and longitude": (-1, -1)}
