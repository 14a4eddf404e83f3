"""Walks kept short by machine: how many passes, how far to drive, how long; what does not fit."""

from collections.abc import Iterable, Iterator

from generator.compute import lane_mowing as mowing
from generator.dataclass import dataclass
from generator.inventory.machine import Machine
from generator.inventory.places import Route
from generator.plan.findings.about_places import PlaceCaution
from generator.plan.findings.order import finding
from generator.plan.model.finding import Finding, Subject
from generator.working import Given, Quantity


@dataclass(frozen=True, slots=True)
class LaneMowing:
    """A walk with the machine that keeps it short; what its length would tell is None without."""

    machine: Machine
    lane_width: Given
    passes: Quantity
    way: Quantity | None
    minutes: Quantity | None

    def numbers(self) -> tuple[Quantity, ...]:
        """Return every number of it."""
        return tuple(
            number for number in (self.passes, self.way, self.minutes) if number is not None
        )


def lane_mowing(route: Route, machines: Iterable[Machine]) -> LaneMowing | None:
    """Return how a walk is kept short; None where its lane or the machine is not written down."""
    machine = next((one for one in machines if one.id == route.machine), None)
    if machine is None or route.lane_width_ft is None:
        return None
    base = f"walk/{route.id}"
    passes = mowing.MOWING_PASSES(
        f"{base}/mowing_passes_count",
        lane_width_ft=route.lane_width_ft,
        machine_width_ft=machine.width_ft,
    )
    if route.length_ft is None:
        return LaneMowing(machine, route.lane_width_ft, passes, None, None)
    way = mowing.MOWING_WAY(
        f"{base}/mowing_ft", length_ft=route.length_ft, mowing_passes_count=passes
    )
    minutes = mowing.MOWING_MINUTES(
        f"{base}/mowing_minutes",
        mowing_ft=way,
        speed_mph=machine.speed_mph,
        efficiency_fraction=machine.efficiency_fraction,
    )
    return LaneMowing(machine, route.lane_width_ft, passes, way, minutes)


def lane_findings(routes: Iterable[Route], machines: tuple[Machine, ...]) -> Iterator[Finding]:
    """Yield a caution on each lane that is narrower than the machine that keeps it short."""
    for route in routes:
        lane = lane_mowing(route, machines)
        if lane is not None and lane.machine.width_ft.value > lane.lane_width.value:
            yield finding(
                PlaceCaution.LANE_NARROWER_THAN_MACHINE,
                Subject("route", route.id),
                route.where_of("lane_width_ft"),
                figures=(("Lane", lane.lane_width), ("Machine", lane.machine.width_ft)),
                walk=route.name,
                machine=lane.machine.name,
            )
