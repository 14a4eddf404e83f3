"""Where a thing lies: its points on the earth, and the piece of ground it is on the plane."""

import math
from collections.abc import Sequence
from functools import lru_cache

from generator.geometry.arcs import OnGround
from generator.geometry.crossing import Spot
from generator.geometry.pieces import Piece, line_piece, outline_piece, reach_piece, strip_piece
from generator.geometry.plane import on_plane_ft
from generator.inventory.fields import Points
from generator.inventory.ground import WaterHole
from generator.inventory.land import LandThing
from generator.inventory.places import PlantedGround, Route, Stand
from generator.units import LatLon

Thing = PlantedGround | Route | Stand | WaterHole | LandThing

KEPT_PIECES = 4096  # of one property, whose things are asked for again and again


def lying_of(thing: Thing) -> OnGround | None:
    """Return where a thing lies; None where no points of it are typed."""
    match thing:
        case Stand():
            return OnGround((thing.at_lat_lon,)) if thing.at_lat_lon is not None else None
        case WaterHole():
            return _lying_of_hole(thing)
        case Route():
            line = thing.line_lat_lon
            return OnGround(line.lat_lon) if line is not None else None
        case LandThing():
            return _lying_of_land(thing)
        case PlantedGround():
            if thing.area_lat_lon is not None:
                return _outline(thing.area_lat_lon)
            # a line says how far to its sides the ground goes where the width is taped
            if thing.line_lat_lon is None or thing.width_ft is None:
                return None
            return OnGround(thing.line_lat_lon.lat_lon, half_width_ft=thing.width_ft.value / 2)


def _outline(points: Points) -> OnGround:
    return OnGround(points.lat_lon, is_outline=True, holes_lat_lon=points.holes)


def _lying_of_hole(hole: WaterHole) -> OnGround | None:
    """Return where a water hole lies at its full mark: around its point as far as it reaches."""
    if hole.at_lat_lon is None:
        return None
    across = [size.value for size in (hole.top_ft, hole.length_ft, hole.width_ft) if size]
    # of a rectangle the corners lie farthest from its middle
    return OnGround((hole.at_lat_lon,), half_width_ft=math.hypot(*across) / 2)


def _lying_of_land(thing: LandThing) -> OnGround | None:
    if thing.area_lat_lon is not None:
        return _outline(thing.area_lat_lon)
    if thing.line_lat_lon is not None:
        half_ft = thing.width_ft.value / 2 if thing.width_ft is not None else 0.0
        return OnGround(thing.line_lat_lon.lat_lon, half_width_ft=half_ft)
    if thing.at_lat_lon is None:
        return None
    around_ft = thing.radius_ft.value if thing.radius_ft is not None else 0.0
    return OnGround((thing.at_lat_lon,), half_width_ft=around_ft)


@lru_cache(maxsize=KEPT_PIECES)
def piece_of(lying: OnGround, middle: LatLon) -> Piece:
    """Return what lies there as a piece on the plane of a property, in feet.

    A line with a width has flat ends and mitred bends; a point with a reach is round.
    """
    return piece_on(lying, *spots_of(lying, middle))


def spots_of(lying: OnGround, middle: LatLon) -> tuple[list[Spot], list[list[Spot]]]:
    """Return where points of what lies there are on a plane, in feet, and those of its holes."""
    holes = [list(on_plane_ft(hole, middle)) for hole in lying.holes_lat_lon]
    return list(on_plane_ft(lying.points_lat_lon, middle)), holes


def piece_on(lying: OnGround, spots: Sequence[Spot], holes: Sequence[Sequence[Spot]] = ()) -> Piece:
    """Return what lies on spots of a plane, in feet, as a piece of it."""
    if lying.is_outline:
        return outline_piece(spots, holes)
    if len(spots) > 1 and lying.half_width_ft:
        return strip_piece(spots, 2 * lying.half_width_ft)
    return reach_piece(line_piece(spots), lying.half_width_ft)
