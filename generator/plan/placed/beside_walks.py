"""What lies near stands and walks that may hurt whoever climbs or walks there in the dark."""

from collections.abc import Iterator, Sequence

from generator.geometry.arcs import OnGround
from generator.geometry.boxes import are_surely_apart, box_of
from generator.geometry.plane import middle_of_plane, snapped_ft
from generator.inventory.land import LandThing
from generator.inventory.places import Route, Stand
from generator.inventory.schema import Inventory
from generator.plan.findings.about_land import LandCaution
from generator.plan.findings.order import about_record, all_listed, finding
from generator.plan.land.lying import lying_of, piece_of
from generator.plan.land.off_points import off_ft
from generator.plan.model.finding import Finding
from generator.plan.placed.measured import measured_on
from generator.reference.library import values
from generator.units import LatLon
from generator.working import Figure, Measured, Reference

OVER_A_STAND = ("line_above",)
UNDER_FOOT = ("well", "sinkhole")


def walked_findings(inventory: Inventory) -> Iterator[Finding]:
    """Yield what may lie too near a stand or a walk; what points may be off counts as nearer."""
    line, hole = values()["stand_off_overhead_lines_ft"], values()["hole_beside_walk_ft"]
    above = [thing for thing in inventory.land if thing.kind in OVER_A_STAND]
    holes = [thing for thing in inventory.land if thing.kind in UNDER_FOOT]
    for stand in inventory.stands:
        yield from _told(LandCaution.STAND_BY_A_LINE, inventory, stand, above, line)
    for walk in inventory.routes:
        yield from _told(LandCaution.HOLE_BY_A_WALK, inventory, walk, holes, hole)


def _told(
    reason: LandCaution,
    inventory: Inventory,
    walked: Stand | Route,
    things: Sequence[LandThing],
    most: Reference,
) -> Iterator[Finding]:
    near = list(_near(inventory, walked, things, most))
    if near:
        figures: tuple[tuple[str, Figure], ...] = (
            *((f"{thing.name}, apart", apart) for thing, apart in near),
            ("Told up to", most),
        )
        names = {"name": walked.name, "things": all_listed(thing.name for thing, _ in near)}
        yield finding(reason, about_record(walked), walked.where, figures, **names)


def _near(
    inventory: Inventory, walked: Stand | Route, things: Sequence[LandThing], most: Reference
) -> Iterator[tuple[LandThing, Measured]]:
    lies = lying_of(walked) if things else None
    if lies is None:
        return
    box, middle = box_of(lies.points_lat_lon), _middle(inventory, lies)
    for thing in things:
        lies_too = lying_of(thing)
        if lies_too is None:
            continue
        within_ft = most.value + off_ft(walked).value + off_ft(thing).value
        reach_ft = within_ft + lies.half_width_ft + lies_too.half_width_ft
        if are_surely_apart(box, box_of(lies_too.points_lat_lon), reach_ft):
            continue
        apart_ft = snapped_ft(float(piece_of(lies, middle).distance(piece_of(lies_too, middle))))
        if apart_ft <= within_ft:
            yield thing, measured_on("apart_ft", apart_ft, "ft", walked, thing)


def _middle(inventory: Inventory, lies: OnGround) -> LatLon:
    return middle_of_plane(inventory.property.location_lat_lon or lies.points_lat_lon[0])
