"""Shapes out of files laid into the records that name them, and what is wrong with each."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from generator.inventory import shape_faults as say
from generator.inventory.fields import Points, Where
from generator.inventory.ground import YES, ShapeInFile
from generator.inventory.land import LandThing
from generator.inventory.places import PlantedGround, Route, Stand
from generator.inventory.problems import Problem, Sentence, shown_text, shown_value
from generator.inventory.reading_found import TypedPoint
from generator.inventory.shape_files import ShapeFiles
from generator.inventory.shape_found import FoundShape
from generator.inventory.shape_sound import turned_around, wrong_with
from generator.inventory.shapes_read import FIELD_OF, Shaped, forms_it_takes
from generator.reference.land_kinds import land_kinds
from generator.units import LatLon


class Laid:
    """Lays the shapes of an inventory into its records, and keeps what is wrong with them."""

    def __init__(self, middle: LatLon | None, folder: Path, beside: Mapping[str, bytes]) -> None:
        self._middle = middle
        self._files = ShapeFiles(folder, beside)
        self._problems: list[Problem] = []
        self.points: list[TypedPoint] = []

    def problems(self) -> tuple[Problem, ...]:
        """Return what is wrong with shapes and with the files that they are in."""
        return (*self._problems, *self._files.problems)

    def with_its_shape(self, thing: Shaped) -> Shaped:
        """Return a thing with the points of its shape in the field that points are typed in."""
        named = thing.shape
        found = self._asked_for(named) if named is not None else None
        if named is None or found is None:
            return thing
        where = thing.where_of("shape")
        if isinstance(found, FoundShape):
            wrong = self._wrong(found, named, thing)
            if wrong is None:
                self.points.append(TypedPoint(_called(named, found), found.lat_lon[0], where))
                points: dict[str, Any] = {FIELD_OF[found.form]: _as_typed(found, where)}
                return replace(thing, **points)
            found = wrong
        self._problems.append(found.at(where.file, where.line, where.column))
        return thing

    def _asked_for(self, named: ShapeInFile) -> FoundShape | Sentence | None:
        """Return the shape that is named, or why there is none; None where that is told already."""
        shapes = self._files.shapes_in(named.file)
        if shapes is None or isinstance(shapes, Sentence):
            return shapes
        if named.name is None:
            every = [shape for of_a_name in shapes.values() for shape in of_a_name]
            if len(every) == 1:
                return every[0]
            return say.which_shape(named.file, [shape.name for shape in every])
        name = " ".join(named.name.split())
        meant = shapes.get(name, ())
        if len(meant) == 1:
            return meant[0]
        if meant:
            return say.two_of_a_name(name, named.file, [shape.number for shape in meant])
        return say.no_such_shape(name, named.file, [one for one in shapes if one])

    def _wrong(self, shape: FoundShape, named: ShapeInFile, thing: Shaped) -> Sentence | None:
        """Return what is wrong with a shape as that of a thing, by its file and name."""
        wrong = wrong_with(shape)
        if wrong is None and shape.form not in forms_it_takes(thing):
            wrong = say.other_form(shape.form, _in_words(thing), forms_it_takes(thing))
        if wrong is None:
            typed = [key for key in _typed_beside(shape, thing) if getattr(thing, key) is not None]
            wrong = say.typed_as_well(typed[0]) if typed else None
        if wrong is None and self._middle is not None and thing.far != YES:
            wrong = turned_around(shape.lat_lon, self._middle)
        if wrong is None:
            return None
        return replace(wrong, what=f"{_called(named, shape)}: {wrong.what}")


def _typed_beside(shape: FoundShape, thing: Shaped) -> Sequence[str]:
    """Return the fields that may not be typed beside a shape: of the land, any; else its own."""
    return tuple(FIELD_OF.values()) if isinstance(thing, LandThing) else (FIELD_OF[shape.form],)


def _in_words(thing: Shaped) -> str:
    match thing:
        case LandThing():
            return f"a thing of the kind {land_kinds()[thing.kind].name}"
        case PlantedGround():
            return f"a {thing.IN_WORDS}"
        case Route():
            return "a walk"
        case Stand():
            return "a stand"


def _called(named: ShapeInFile, shape: FoundShape) -> str:
    at = f"line {shape.line}" if shape.line is not None else f"number {shape.number}"
    of = shown_value(shape.name) if shape.name else "the shape"
    return f"{of} in {shown_text(named.file)}, {at}"


def _as_typed(shape: FoundShape, where: Where) -> object:
    if shape.form == "point":
        return shape.lat_lon[0]
    return Points(shape.lat_lon, where, (where,) * len(shape.lat_lon), shape.holes)
