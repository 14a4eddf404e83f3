"""A sowing job put together: how far the seed goes, what it takes, what sows it."""

import datetime
from collections.abc import Iterable, Iterator, Mapping

from generator.dataclass import dataclass
from generator.inventory.drill import Drill
from generator.inventory.equipment import Spreader
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import Finding
from generator.plan.model.job import JobState
from generator.plan.model.work import Sower, Sowing
from generator.plan.sowing.drilling import drill_numbers, latest_drill_test
from generator.plan.sowing.hopper import hopper_numbers, latest_test, with_what_falls_beside
from generator.plan.sowing.machine_findings import drill_findings, spreader_findings, untested
from generator.plan.sowing.seed_findings import lot_findings, reach_findings
from generator.plan.sowing.seed_rates import sowings, together
from generator.plan.sowing.seed_short import Reach, SeedNeed, reaches
from generator.working import Quantity

WHOLE = "whole"  # ids of what a place would take, beside those of what it gets


@dataclass(frozen=True, slots=True)
class Seeding:
    """A sowing with its numbers and findings; without parts where the whole place waits."""

    parts: tuple[Sowing, ...]
    numbers: dict[str, Quantity]
    sower: Sower
    findings: tuple[Finding, ...]


def season_reaches(
    requests: Iterable[JobRequest],
    season: int,
    inventory: Inventory,
    entries: tuple[LogEntry, ...],
    as_of: datetime.date,
    states: Mapping[str, JobState],
) -> dict[str, Reach]:
    """Return by job how far short lots go; a sowing that is not among them is sown whole.

    A sowing that is finished or not needed takes nothing more.
    """
    sown = [
        request
        for request in requests
        if request.step.does.sows and not states[request.job_id].is_settled
    ]
    needs = [SeedNeed(request, _needed(request, inventory)) for request in sown]
    return reaches(needs, season, inventory, entries, as_of)


def _needed(request: JobRequest, inventory: Inventory) -> dict[str, Quantity]:
    parts, _ = _taken(request, f"{request.job_id}/{WHOLE}", request.area, inventory)
    return {part.lot.id: part.used_up() for part in parts}


def plan_sowing(request: JobRequest, inventory: Inventory, reach: Reach | None) -> Seeding:
    """Return what a sowing takes and what is to be said of it."""
    area = request.area if reach is None else reach.area
    # a place that waits is worked out whole: its lots are still judged, its stop takes amounts out
    parts, sower = _taken(request, request.job_id, area or request.area, inventory)
    numbers = together(request.job_id, request.planting, parts)
    if reach is not None and reach.area is not None and reach.not_sown is not None:
        numbers |= {"sown_area_ac": reach.area, "not_sown_area_ac": reach.not_sown}
    numbers |= _sower_numbers(request, parts, numbers["bulk_seed_lb"], sower)
    found = [
        *reach_findings(request, reach),
        *lot_findings(request, parts),
        *_machine_findings(request, parts, numbers, sower),
    ]
    return Seeding(parts, numbers, sower, tuple(found))


def _taken(
    request: JobRequest, base: str, area: Quantity, inventory: Inventory
) -> tuple[tuple[Sowing, ...], Sower]:
    parts = sowings(base, request.planting, area, inventory.lots)
    sower = _sower(request, parts, inventory.spreaders, inventory.drills)
    width = request.ground.width_ft
    return with_what_falls_beside(base, parts, width, sower.spreader_test), sower


def _sower(
    request: JobRequest,
    parts: tuple[Sowing, ...],
    spreaders: tuple[Spreader, ...],
    drills: tuple[Drill, ...],
) -> Sower:
    work = request.work
    spreader = next(
        (machine for machine in spreaders if work is not None and machine.id == work.spreader),
        None,
    )
    drill = next(
        (machine for machine in drills if work is not None and machine.id == work.drill),
        None,
    )
    return Sower(
        spreader,
        latest_test(spreader, parts) if spreader is not None else None,
        drill,
        latest_drill_test(drill, parts) if drill is not None else None,
    )


def _machine_findings(
    request: JobRequest, parts: tuple[Sowing, ...], numbers: dict[str, Quantity], sower: Sower
) -> Iterator[Finding]:
    if sower.spreader is not None:
        return spreader_findings(request, parts, numbers, sower.spreader, sower.spreader_test)
    if sower.drill is not None:
        return drill_findings(request, parts, numbers, sower.drill, sower.drill_test)
    return untested(request, parts, None, None)


def _sower_numbers(
    request: JobRequest, parts: tuple[Sowing, ...], bulk: Quantity, sower: Sower
) -> dict[str, Quantity]:
    if sower.spreader is not None:
        width = request.ground.width_ft
        return hopper_numbers(
            request.job_id, parts, bulk, width, sower.spreader, sower.spreader_test
        )
    if sower.drill is not None:
        return drill_numbers(request.job_id, parts, sower.drill, sower.drill_test)
    return {}
