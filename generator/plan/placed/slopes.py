"""Slopes out of a grid of heights, for places whose slope or fall nobody typed."""

from collections.abc import Iterator
from dataclasses import replace
from typing import TypeVar

from generator.geometry.heights import Fall, fall_of
from generator.geometry.pieces import Piece, corners_of
from generator.geometry.plane import middle_of_plane, off_plane
from generator.inventory.elevation import Elevation
from generator.inventory.places import Hazards, Screen, Strip
from generator.inventory.schema import Inventory
from generator.plan.land.lying import lying_of, piece_of
from generator.reference.library import methods
from generator.units import LatLon
from generator.working import Measured

AnyPlace = TypeVar("AnyPlace", Screen, Strip)


def with_slopes(inventory: Inventory) -> Inventory:
    """Return the inventory with what a grid of heights says of places that say nothing of it."""
    if inventory.heights is None:
        return inventory
    return replace(
        inventory,
        screens=tuple(_with_slope(place, inventory) for place in inventory.screens),
        strips=tuple(_with_slope(place, inventory) for place in inventory.strips),
    )


def _with_slope(place: AnyPlace, inventory: Inventory) -> AnyPlace:
    near, typed, grid = place.near, inventory.property.elevation, inventory.heights
    lies = lying_of(place)
    if lies is None or typed is None or grid is None:
        return place
    if near is not None and near.slope_pct is not None and near.falls_to is not None:
        return place
    middle = middle_of_plane(inventory.property.location_lat_lon or lies.points_lat_lon[0])
    fall = fall_of(list(_outlines(piece_of(lies, middle), middle)), grid, lies.holes_lat_lon)
    if fall is None:
        return place
    return replace(place, near=_filled(near or Hazards(where=place.where), fall, typed))


def _filled(near: Hazards, fall: Fall, typed: Elevation) -> Hazards:
    slope = _measured("steepest_slope_pct", fall.steepest_pct, "pct", fall, typed)
    falls_to = near.falls_to
    if falls_to is None and fall.falls_to_deg is not None:
        falls_to = _measured("falls_to_deg", fall.falls_to_deg, "deg", fall, typed)
    return replace(near, slope_pct=near.slope_pct or slope, falls_to=falls_to)


def _outlines(piece: Piece, middle: LatLon) -> Iterator[list[LatLon]]:
    for part in getattr(piece, "geoms", (piece,)):
        yield off_plane(corners_of(part), middle)


def _measured(name: str, value: float, unit: str, fall: Fall, typed: Elevation) -> Measured:
    method, where = methods()[name], typed.where
    return Measured(
        name,
        value,
        unit,
        f"{method.words}; heights: {typed.source}",
        fall.cells_count,
        method.source,
        where.file,
        where.line,
        # it stands on every sheet, as one that is typed
        "page",
    )
