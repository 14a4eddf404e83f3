"""Strips that come back onto their own ground, where length times width is too much."""

from collections.abc import Iterable, Iterator

from generator.geometry.arcs import OnGround
from generator.geometry.corners import line_numbers
from generator.geometry.geodesic import line_length_ft
from generator.geometry.pieces import may_lie_on_itself
from generator.geometry.plane import middle_of_plane, on_plane_ft, snapped_share
from generator.inventory.places import PlantedGround
from generator.plan.findings.about_land import LandCaution
from generator.plan.findings.order import finding
from generator.plan.land.lying import piece_of
from generator.plan.model.finding import Finding, about_place
from generator.plan.placed.measured import measured_on
from generator.reference.library import values
from generator.units import LatLon, convert


def strip_findings(
    places: Iterable[PlantedGround], location_lat_lon: LatLon | None
) -> Iterator[Finding]:
    """Yield a caution for every strip whose length times width is more ground than it holds."""
    most = values()["strip_on_itself_pct"]
    most_share = convert(most.value, most.unit, "fraction")
    for place in places:
        twice_share = _counted_twice_share(place, location_lat_lon)
        if twice_share > most_share:
            assert place.line_lat_lon is not None
            twice = measured_on("counted_twice_fraction", twice_share, "fraction", place)
            figures = (("More than it holds, by", twice), ("At most", most))
            where, about = place.line_lat_lon.where, about_place(place.id)
            yield finding(LandCaution.STRIP_ON_ITSELF, about, where, figures)


def _counted_twice_share(place: PlantedGround, location_lat_lon: LatLon | None) -> float:
    line, width = place.line_lat_lon, place.width_ft
    if line is None or width is None:
        return 0
    points = tuple(line.lat_lon[number] for number in line_numbers(line.lat_lon))
    middle = middle_of_plane(location_lat_lon or points[0])
    if not may_lie_on_itself(on_plane_ft(points, middle), width.value):
        return 0
    by_length_sq_ft = line_length_ft(points) * width.value
    held_sq_ft = piece_of(OnGround(points, half_width_ft=width.value / 2), middle).area
    return snapped_share(1 - held_sq_ft / by_length_sq_ft)
