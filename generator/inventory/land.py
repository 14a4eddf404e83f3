"""What lies on the land and beside it: water, wells, houses, lines, fences, neighbors, deer."""

from typing import ClassVar

from generator.dataclass import dataclass
from generator.inventory.fields import (
    POSITIVE,
    Limits,
    Points,
    Record,
    choice,
    direction,
    identity,
    lat_lon,
    measure,
    points,
    reference,
    text,
)
from generator.inventory.ground import FAR, MAY_BE_OFF, NO, YES, ShapeInFile, how_got, shape_in_file
from generator.inventory.label import COUNTED_FROM, KEPT_FROM
from generator.units import LatLon
from generator.working import Given


@dataclass(frozen=True, slots=True, kw_only=True)
class LandThing(Record):
    """One thing that lies on the land or beside it, and what later steps need of it."""

    IN_WORDS: ClassVar[str] = "thing of the land"

    id: str = identity("id of the thing")
    was: tuple[str, ...] = text("place", "ids it had before", many=True)
    kind: str = reference("page", "what it is", "land_kind", required=True)
    name: str = text("place", "name you use", required=True)
    known_as: str | None = text("page", "name other readers see")
    at_lat_lon: LatLon | None = lat_lon("place", "where it lies")
    line_lat_lon: Points | None = points("place", "its line, from one end to the other", 2)
    area_lat_lon: Points | None = points("place", "its outline, once around", 3)
    shape: ShapeInFile | None = shape_in_file()
    radius_ft: Given | None = measure(
        "place", "how far it reaches around its point", "ft", POSITIVE
    )
    width_ft: Given | None = measure(
        "place", "how wide its line is, from edge to edge", "ft", POSITIVE
    )
    counts_from: str | None = choice(
        "place", "the edge its points follow, from which labels count", *COUNTED_FROM
    )
    got: str | None = how_got()
    off_ft: Given | None = measure("place", MAY_BE_OFF, "ft", POSITIVE)
    height_ft: Given | None = measure("place", "how tall it stands", "ft", POSITIVE)
    leaf_off: str | None = choice("place", "whether its leaves are off in winter", YES, NO)
    far: str | None = choice("place", FAR, YES, NO)
    shown_to: tuple[str, ...] = reference(
        "place", "readers who see it beside those near whose work it lies", "reader", many=True
    )
    coordinates_for: tuple[str, ...] = reference(
        "place", "readers who may take its coordinates along", "reader", many=True
    )
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class NearThing(Record):
    """How far a thing that labels keep the spray from lies from a place, as it was measured."""

    kind: str = choice("page", "what kind of thing it is", *KEPT_FROM, required=True)
    distance_ft: Given = measure(
        "page",
        "how far it is from the edge of the place that is nearest to it",
        "ft",
        Limits(at_least=0),
        required=True,
    )
    counts_from: str | None = choice(
        "page", "the edge of it that you measured from, as labels count", *COUNTED_FROM
    )
    side: Given | None = direction("page", "the side of the place on which it lies")
