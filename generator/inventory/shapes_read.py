"""The shapes of an inventory out of their files, in the fields that points are typed in.

Whatever comes behind reads points and need not know where they came from. Nothing is read or
imported where no shape is named; of a file that nobody names nothing is told.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from generator.dataclass import dataclass
from generator.inventory.fields import Where
from generator.inventory.land import LandThing
from generator.inventory.places import PlantedGround, Route, Stand
from generator.inventory.problems import Problem
from generator.inventory.reading_found import TypedPoint
from generator.inventory.schema import Inventory
from generator.reference.land_kinds import land_kinds

Shaped = LandThing | PlantedGround | Route | Stand
# The field that takes a shape of a form.
FIELD_OF = {"point": "at_lat_lon", "line": "line_lat_lon", "outline": "area_lat_lon"}
# The lists of an inventory with things that may have a shape.
_LISTS = ("screens", "strips", "stands", "routes", "land")


@dataclass(frozen=True, slots=True)
class ShapesRead:
    """Records with the points of their shapes by where they stand, every fault, a point of each."""

    laid: Mapping[Where, Shaped]
    problems: Sequence[Problem]
    points: Sequence[TypedPoint]

    def laid_into(self, inventory: Inventory) -> Inventory:
        """Return an inventory, or a part of it, with the points of its shapes in their place."""
        if not self.laid:
            return inventory
        lists: dict[str, Any] = {
            name: tuple(self.laid.get(thing.where, thing) for thing in getattr(inventory, name))
            for name in _LISTS
        }
        return replace(inventory, **lists)


def with_shapes(folder: Path, inventory: Inventory, beside: Mapping[str, bytes]) -> ShapesRead:
    """Return what the shapes are that an inventory names in files.

    `beside` are files, by their paths, that are read as if they lay in the folder.
    """
    things = [thing for thing in shaped(inventory) if thing.shape is not None]
    if not things:
        return ShapesRead({}, (), ())
    from generator.inventory.shapes_laid import Laid

    laid = Laid(inventory.property.location_lat_lon, folder, beside)
    return ShapesRead(
        {thing.where: laid.with_its_shape(thing) for thing in things}, laid.problems(), laid.points
    )


def shaped(inventory: Inventory) -> Iterator[Shaped]:
    """Yield all that may have a shape, in a fixed order."""
    yield from inventory.places()
    yield from inventory.stands
    yield from inventory.routes
    yield from inventory.land


def forms_it_takes(thing: Shaped) -> tuple[str, ...]:
    """Return the forms that a thing may have: point, line, outline."""
    match thing:
        case LandThing():
            # of a kind that there is none of something else is told
            kind = land_kinds().get(thing.kind)
            return kind.drawn if kind is not None else tuple(FIELD_OF)
        case PlantedGround():
            return ("line", "outline")
        case Route():
            return ("line",)
        case Stand():
            return ("point",)
