"""Places whose width, length or ground is far from what is usual."""

from collections.abc import Iterator

from generator.inventory.places import PlantedGround, Screen
from generator.inventory.rule import typed_at
from generator.plan.cautions import Caution
from generator.plan.ground import WAY_WORDS
from generator.plan.model import Finding, Place
from generator.plan.out_of_usual import out_of_usual
from generator.reference.usual import usual
from generator.working import Given


def size_findings(place: Place) -> list[Finding]:
    """Return a caution for each side typed out of the usual; of sound sides, for the ground."""
    ground = place.typed
    if ground is None or place.ground is None:
        return []
    width = "screen_width" if isinstance(ground, Screen) else "plot_width"
    sides = [
        _side(ground, "width_ft", ground.width_ft, width),
        _side(ground, "length_ft", ground.length_ft, "place_length"),
    ]
    found = [one for one in sides if one is not None]
    return found or list(_acres(place, ground))


def _side(ground: PlantedGround, key: str, typed: Given | None, name: str) -> Finding | None:
    if typed is None:
        return None
    return out_of_usual(
        Caution.SIZE_OUT_OF_USUAL,
        ground.id,
        typed_at(typed),
        (f"The {key.removesuffix('_ft')} typed", typed),
        usual(name, "ft"),
        place=ground.name,
        what=key.removesuffix("_ft"),
        key=key,
    )


def _acres(place: Place, ground: PlantedGround) -> Iterator[Finding]:
    assert place.ground is not None
    counts = place.ground.ways[0]
    found = out_of_usual(
        Caution.SIZE_OUT_OF_USUAL,
        ground.id,
        counts.where,
        (f"Ground from {WAY_WORDS[counts.kind]}", place.area),
        usual("place", "ac"),
        place=ground.name,
        what="ground",
        key={"outline": "area_lat_lon", "line": "line_lat_lon"}.get(counts.kind, "its size"),
    )
    yield from [found] if found is not None else []
