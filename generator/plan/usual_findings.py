"""All that is far from what is usual: one caution for one slip, at the figure it stands in."""

from collections.abc import Collection, Mapping, Sequence

from generator.inventory.schema import Inventory
from generator.plan.asked import JobAsked
from generator.plan.meant_figures import meant_in
from generator.plan.model import Finding, Job, Place
from generator.plan.usual_amounts import amount_findings, catch_findings, caught_as_wanted
from generator.plan.usual_machines import machine_findings
from generator.plan.usual_places import size_findings, spacing_findings
from generator.plan.usual_seed import later_rates, lot_findings, rate_findings
from generator.plan.usual_tank import adjuvant_findings


def usual_findings(
    asked: Sequence[JobAsked],
    jobs: Sequence[Job],
    places: Collection[Place],
    inventory: Inventory,
    season: int,
) -> list[Finding]:
    """Return the cautions on places, lots, machines and rates, then on what jobs come to.

    A figure out of the usual makes amounts that are. A catch, passes, fills and loads are told
    where they would be out of the usual too if every figure told before were as it was meant.
    """
    found = [one for place in places for one in size_findings(place)]
    found += lot_findings(inventory.lots)
    found += [one for place in places for one in later_rates(place, inventory, season)]
    found += machine_findings(inventory, season)
    by_id: Mapping[str, Job] = {job.id: job for job in jobs}
    ahead = [one for one in asked if not by_id[one.job_id].state.is_settled]
    for one in ahead:
        found += rate_findings(one, by_id[one.job_id])
        found += adjuvant_findings(one, inventory)
        if one.step.operation == "plant":
            found += spacing_findings(one.ground, one.planting)
    meant = meant_in(found)
    for one in ahead:
        job = by_id[one.job_id]
        catch = list(catch_findings(one, job, meant))
        found += catch
        found += amount_findings(one, job, meant | caught_as_wanted(job) if catch else meant)
    return found
