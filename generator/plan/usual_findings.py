"""All that is far from what is usual: one caution for one slip, at the figure it stands in."""

from collections.abc import Iterable, Mapping, Sequence

from generator.inventory.schema import Inventory
from generator.plan.asked import JobAsked
from generator.plan.model import Finding, Job, Place
from generator.plan.usual_amounts import amount_findings, catch_findings
from generator.plan.usual_machines import machine_findings
from generator.plan.usual_places import size_findings, spacing_findings
from generator.plan.usual_seed import lot_findings, rate_findings
from generator.plan.usual_tank import adjuvant_findings


def usual_findings(
    asked: Sequence[JobAsked],
    jobs: Sequence[Job],
    places: Iterable[Place],
    inventory: Inventory,
    season: int,
) -> list[Finding]:
    """Return the cautions on places, lots, machines and rates, then on what jobs come to.

    A figure out of the usual makes amounts that are: passes, fills and loads are told where no such
    figure is. A catch is told unless its rate or lot is, since a size may truly be what it is.
    """
    found = [one for place in places for one in size_findings(place)]
    found += lot_findings(inventory.lots)
    found += machine_findings(inventory, season)
    by_id: Mapping[str, Job] = {job.id: job for job in jobs}
    ahead = [one for one in asked if not by_id[one.job_id].state.is_settled]
    for one in ahead:
        found += rate_findings(one, by_id[one.job_id])
        found += adjuvant_findings(one, inventory)
        if one.step.operation == "plant":
            found += spacing_findings(one.ground, one.planting)
    told = {one.subject for one in found}
    for one in ahead:
        job, rate = by_id[one.job_id], _rate_of(one)
        catch = [] if told & rate else list(catch_findings(one, job))
        found += catch
        if not told & (rate | _sizes_of(one)):
            found += amount_findings(one, job, with_passes=not catch)
    return found


def _rate_of(asked: JobAsked) -> set[str]:
    """Return the ids of what a job is to put down: its own, and those of the lots."""
    return {asked.job_id, *(seed.lot for seed in asked.planting.seed)}


def _sizes_of(asked: JobAsked) -> set[str | None]:
    """Return the ids of the place and of the machines of a job."""
    work = asked.work
    machines = (work.sprayer, work.spreader, work.drill, work.machine) if work else ()
    return {asked.ground.id, *machines} - {None}
