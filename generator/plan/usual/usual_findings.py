"""All that is far from what is usual: one caution for one slip, at the figure it stands in."""

from collections.abc import Collection, Mapping, Sequence

from generator.inventory.schema import Inventory
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import Finding
from generator.plan.model.job import Job
from generator.plan.model.place import Place
from generator.plan.usual.meant_figures import meant_in
from generator.plan.usual.usual_amounts import (
    adjuvant_findings,
    amount_findings,
    catch_findings,
    caught_as_wanted,
)
from generator.plan.usual.usual_machines import machine_findings
from generator.plan.usual.usual_places import size_findings, spacing_findings
from generator.plan.usual.usual_seed import later_rates, rate_findings, unusual_lots


def usual_findings(
    requests: Sequence[JobRequest],
    jobs: Sequence[Job],
    places: Collection[Place],
    inventory: Inventory,
    season: int,
) -> list[Finding]:
    """Return the cautions on places, lots, machines and rates, then on what jobs come to.

    A figure out of the usual makes amounts that are. A catch, passes, fills and loads are told
    where they would be out of the usual too if every figure told before were as it was meant.
    """
    found = [told for place in places for told in size_findings(place)]
    found += unusual_lots(inventory.lots)
    found += [told for place in places for told in later_rates(place, inventory.lots, season)]
    found += machine_findings(inventory, season)
    by_id: Mapping[str, Job] = {job.id: job for job in jobs}
    ahead = [request for request in requests if not by_id[request.job_id].state.is_settled]
    for request in ahead:
        found += rate_findings(request, by_id[request.job_id])
        found += adjuvant_findings(request, inventory.adjuvants)
        if request.step.does.puts_down == "plants":
            found += spacing_findings(request.ground, request.planting)
    meant = meant_in(found)
    for request in ahead:
        job = by_id[request.job_id]
        # before passes, which a catch far off gives by itself
        catch = list(catch_findings(request, job, meant))
        found += catch
        found += amount_findings(request, job, meant | caught_as_wanted(job) if catch else meant)
    return found
