"""The ground of a place: every way to it that is given, the one that counts, how far they agree.

The taped width of a narrow place counts before an outline: an error of an outline counts on both
of its long sides. What was taped and what points say are held against each other by what the points
may be off.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import Literal

from generator.compute import area
from generator.dataclass import dataclass
from generator.geometry.plane import snapped_share
from generator.inventory.fields import Where
from generator.inventory.places import PlantedGround
from generator.inventory.rule import typed_at
from generator.plan.findings.about_places import PlaceCaution, PlaceNote
from generator.plan.findings.order import finding
from generator.plan.land.lying import lying_of
from generator.plan.land.measured import (
    measured_around_ft,
    measured_line_ft,
    measured_outline_ac,
)
from generator.plan.land.off_points import off_ft
from generator.plan.model.finding import Finding, about_job, about_place
from generator.plan.model.place import Ground, GroundWay, OutlineError, Place
from generator.reference.library import values
from generator.units import convert
from generator.working import Figure, Formula, Given, Measured, Quantity, Reference

WAY_WORDS = {
    "tape": "taped width times measured length",
    "line": "taped width times the length of the line",
    "outline": "the outline",
    "stated": "the stated acres",
}


def place_on_its_ground(ground: PlantedGround, season: int) -> Place:
    """Return a place with its ground worked out, the owner's view of it."""
    base = f"{ground.id}/{season}/ground"
    first, *others = _ways(ground)
    counts = first.formula(f"{base}/area_ac", **first.inputs)
    ways = (
        GroundWay(first.kind, counts, None, first.where),
        *(_other_way(way, counts, base) for way in others),
    )
    line_unused = ground.line_lat_lon is not None and ground.width_ft is None
    outline_error = _outline_error(ground, ways, base)
    worked_out = Ground(ways, outline_error, _line_error(ground, base), line_unused)
    address = first_name(ground.id, ground.was)
    by_width = "width_ft" in first.inputs
    sides = (first.inputs["length_ft"], first.inputs["width_ft"]) if by_width else None
    begins = ground.near.block_lat_lon if ground.near is not None else None
    lies = lying_of(ground)
    return Place(ground.id, address, ground.name, counts, ground, worked_out, sides, lies, begins)


def first_name(identity: str, was: tuple[str, ...]) -> str:
    """Return the id a thing had first, so that a rename never moves its page."""
    return was[0] if was else identity


def ground_findings(place: Place) -> list[Finding]:
    """Return cautions where two ways to the ground disagree, and on a coarse outline."""
    if place.ground is None:
        return []
    counts, *others = place.ground.ways
    found = []
    for other in others:
        most = _may_be_apart(place.ground, counts, other)
        apart = other.apart
        if apart is not None and snapped_share(apart.value) > snapped_share(_share(most)):
            figures: tuple[tuple[str, Figure], ...] = (
                (f"From {WAY_WORDS[counts.kind]}, which counts", counts.area),
                (f"From {WAY_WORDS[other.kind]}", other.area),
                ("Apart", apart),
                ("May be off by", most),
            )
            words = {"counts": WAY_WORDS[counts.kind], "other": WAY_WORDS[other.kind]}
            reason = PlaceCaution.GROUNDS_DISAGREE
            found.append(finding(reason, about_place(place.id), other.where, figures, **words))
    return [*found, *_coarse_outline(place.id, place.ground)]


def _may_be_apart(ground: Ground, one: GroundWay, other: GroundWay) -> Reference | Quantity:
    """Return how far two ways may be apart: what the coarser is off by its points, else a share."""
    by_points = {"line": ground.line_error, "outline": None}
    if ground.outline_error is not None:
        by_points["outline"] = ground.outline_error.share
    errors = [error for way in (one, other) if (error := by_points.get(way.kind)) is not None]
    # acres that were stated came about in a way that nobody typed
    if not errors or "stated" in (one.kind, other.kind):
        return values()["ground_may_be_off_pct"]
    return max(errors, key=lambda error: error.value)


def _share(most: Reference | Quantity) -> float:
    return convert(most.value, most.unit, "fraction")


def _coarse_outline(place_id: str, ground: Ground) -> Iterator[Finding]:
    error, counts = ground.outline_error, ground.ways[0]
    most = values()["ground_may_be_off_pct"]
    # a coarse outline that does not count does no harm
    if (
        error is not None
        and counts.kind == "outline"
        and (snapped_share(error.share.value) > snapped_share(_share(most)))
    ):
        figures: tuple[tuple[str, Figure], ...] = (
            ("Likely error", error.share),
            ("Least ground there may be", error.least),
            ("Most ground there may be", error.most),
            ("May be off by", most),
        )
        reason = PlaceCaution.COARSE_OUTLINE
        yield finding(reason, about_place(place_id), counts.where, figures)


def width_findings(job_id: str, ground: PlantedGround) -> list[Finding]:
    """Return a note on a job that goes over the place in lanes, where no width is taped."""
    if ground.width_ft is not None:
        return []
    return [finding(PlaceNote.NO_WIDTH, about_job(job_id), ground.where)]


@dataclass(frozen=True, slots=True)
class _Way:
    """A way to the ground before it is worked out."""

    kind: Literal["tape", "line", "outline", "stated"]
    formula: Formula
    inputs: dict[str, Figure]
    where: Where


def _ways(ground: PlantedGround) -> list[_Way]:
    """Return the ways to the ground in the order in which they count.

    What is wide is seldom as straight as a tape: from a width on, the outline counts before it.
    """
    ways = list(_every_way(ground))
    narrow = values()["tape_counts_under_ft"]
    if ground.width_ft is None or ground.width_ft.value < narrow.value:
        return ways
    return sorted(ways, key=lambda way: way.kind != "outline")


def _every_way(ground: PlantedGround) -> Iterator[_Way]:
    width, length, acres = ground.width_ft, ground.length_ft, ground.area_ac
    line, outline = ground.line_lat_lon, ground.area_lat_lon
    if width is not None and length is not None:
        inputs: dict[str, Figure] = {"length_ft": length, "width_ft": width}
        yield _Way("tape", area.STRIP_AREA, inputs, typed_at(length))
    if width is not None and line is not None:
        inputs = {"length_ft": measured_line_ft(line, PlantedGround), "width_ft": width}
        yield _Way("line", area.STRIP_AREA, inputs, line.where)
    if outline is not None:
        inputs = {"outline_area_ac": measured_outline_ac(outline, PlantedGround)}
        yield _Way("outline", area.OUTLINE_GROUND, inputs, outline.where)
    if acres is not None:
        yield _Way("stated", area.STATED_GROUND, {"area_ac": acres}, typed_at(acres))


def _other_way(way: _Way, counts: Quantity, base: str) -> GroundWay:
    formula = replace(way.formula, label=f"Ground from {WAY_WORDS[way.kind]}")
    other = formula(f"{base}/{way.kind}_area_ac", **way.inputs)
    apart = area.GROUNDS_APART(
        f"{base}/{way.kind}_apart_fraction", area_ac=counts, other_area_ac=other
    )
    return GroundWay(way.kind, other, apart, way.where)


def _outline_error(
    ground: PlantedGround, ways: tuple[GroundWay, ...], base: str
) -> OutlineError | None:
    outline = ground.area_lat_lon
    if outline is None:
        return None
    inside = next(way.area for way in ways if way.kind == "outline")
    width: Given | Quantity | None = ground.width_ft
    if width is None:
        # only without a tape: a width out of the outline is off by the very error that is judged
        width = area.MEAN_WIDTH(
            f"{base}/outline_mean_width_ft",
            area_ac=inside,
            perimeter_ft=measured_around_ft(outline, PlantedGround),
        )
    share = area.OUTLINE_ERROR(
        f"{base}/outline_error_fraction", outline_error_ft=off_ft(ground), width_ft=width
    )
    both = {"area_ac": inside, "outline_error_fraction": share}
    return OutlineError(
        share,
        area.LEAST_GROUND(f"{base}/outline_least_ac", **both),
        area.MOST_GROUND(f"{base}/outline_most_ac", **both),
    )


def _line_error(ground: PlantedGround, base: str) -> Quantity | None:
    line = ground.line_lat_lon
    if line is None or ground.width_ft is None:
        return None
    length = measured_line_ft(line, PlantedGround)
    return area.LINE_ERROR(f"{base}/line_error_fraction", off_ft=off_ft(ground), length_ft=length)


def length_of(ground: PlantedGround) -> Given | Measured | None:
    """Return the length of a place: measured, else that of its line; None where neither is."""
    if ground.length_ft is not None:
        return ground.length_ft
    return (
        measured_line_ft(ground.line_lat_lon, PlantedGround)
        if ground.line_lat_lon is not None
        else None
    )
