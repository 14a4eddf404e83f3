"""Places whose width, length or ground is far from what is usual, and plants set on them."""

from collections.abc import Iterator

from generator.inventory.places import PlantedGround, Planting, Screen
from generator.inventory.rule import typed_at
from generator.plan.findings.about_usual import UsualCaution
from generator.plan.jobs.ground import WAY_WORDS
from generator.plan.land.measured import measured_line_ft
from generator.plan.model.finding import Finding, about_place
from generator.plan.model.place import Place
from generator.plan.usual.out_of_usual import out_of_usual
from generator.reference.usual import usual
from generator.working import Given


def size_findings(place: Place) -> list[Finding]:
    """Return a caution for each side out of the usual, or for ground that no sides give."""
    ground = place.typed
    if ground is None or place.ground is None:
        return []
    width = "screen_width" if isinstance(ground, Screen) else "plot_width"
    sides = [
        _side(ground, "width_ft", ground.width_ft, width, "width"),
        _side(ground, "length_ft", ground.length_ft, "place_length", "length"),
        _line(ground) if ground.length_ft is None else None,
    ]
    found = [side for side in sides if side is not None]
    # ground worked out of sides is off as they are, and is told with them
    by_sides = place.ground.ways[0].kind in ("tape", "line")
    return found if found or by_sides else list(_acres(place, ground))


def _side(
    ground: PlantedGround, key: str, typed: Given | None, name: str, what: str
) -> Finding | None:
    if typed is None:
        return None
    return out_of_usual(
        UsualCaution.SIZE_OUT_OF_USUAL,
        about_place(ground.id),
        typed_at(typed),
        (f"The {what} typed", typed),
        usual(name, "ft"),
        place=ground.name,
        what=what,
        key=key,
    )


def _line(ground: PlantedGround) -> Finding | None:
    if ground.line_lat_lon is None:
        return None
    return out_of_usual(
        UsualCaution.SIZE_OUT_OF_USUAL,
        about_place(ground.id),
        ground.line_lat_lon.where,
        ("The length of the line", measured_line_ft(ground.line_lat_lon, PlantedGround)),
        usual("place_length", "ft"),
        place=ground.name,
        what="length",
        key="line_lat_lon",
    )


def spacing_findings(ground: PlantedGround, planting: Planting) -> Iterator[Finding]:
    """Yield a caution for plants, or rows of plants, that stand out of the usual apart."""
    for row in planting.woody:
        for what, key, typed, name in (
            ("space from plant to plant", "spacing_ft", row.spacing_ft, "plant_spacing"),
            ("space from row to row", "rows_apart_ft", row.rows_apart_ft, "plant_rows"),
        ):
            found = _side(ground, key, typed, name, what)
            yield from [found] if found is not None else []


def _acres(place: Place, ground: PlantedGround) -> Iterator[Finding]:
    assert place.ground is not None
    counts = place.ground.ways[0]
    found = out_of_usual(
        UsualCaution.SIZE_OUT_OF_USUAL,
        about_place(ground.id),
        counts.where,
        (f"Ground from {WAY_WORDS[counts.kind]}", place.area),
        usual("place", "ac"),
        place=ground.name,
        what="ground",
        key="area_lat_lon" if counts.kind == "outline" else "area_ac",
    )
    yield from [found] if found is not None else []
