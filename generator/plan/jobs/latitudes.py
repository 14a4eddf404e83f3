"""Whether the calendar days of step plans are written for where the property lies."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from generator.inventory.fields import Where
from generator.inventory.schema import Inventory
from generator.plan.findings.about_places import PlaceCaution, PlaceNote
from generator.plan.findings.order import all_listed, finding
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import WHOLE_FOLDER, Finding
from generator.plan.model.job import JobState, UpkeepJob
from generator.reference.library import values
from generator.reference.steps import Latitudes, Step, StepPlan
from generator.working import Figure


def latitude_findings(
    requests: Iterable[JobRequest],
    states: Mapping[str, JobState],
    upkeep: Iterable[UpkeepJob],
    inventory: Inventory,
) -> Iterator[Finding]:
    """Yield a caution on plans whose days are not written for here; a note if nobody can say.

    Plans that still have work ahead on a day of the calendar count.
    """
    used = {plan.id: plan for plan in _used(requests, states, upkeep, inventory.plans())}
    plans = [plan for _, plan in sorted(used.items())]
    middle = inventory.property.location_lat_lon
    where = inventory.property.where_of("location_lat_lon")
    if middle is None:
        if any(plan.latitudes is not None for plan in plans):
            yield finding(PlaceNote.LATITUDE_NOT_TYPED, WHOLE_FOLDER, where)
        return
    outside = [
        (plan, plan.latitudes)
        for plan in plans
        if plan.latitudes is not None and not plan.latitudes.hold(middle[0])
    ]
    north = [pair for pair in outside if middle[0] > pair[1].north.value]
    south = [pair for pair in outside if pair not in north]
    for side, found in (("north", north), ("south", south)):
        if found:
            yield _told(side, found, where)


def _told(side: str, outside: Sequence[tuple[StepPlan, Latitudes]], where: Where) -> Finding:
    """Return one caution for all plans that are written for one side of here: one cause."""
    several = len(outside) > 1
    names = all_listed([plan.name for plan, _ in outside])
    based_on = "based_on: and its id" if several else f"based_on: {outside[0][0].id}"
    ranges = dict.fromkeys(written for _, written in outside)
    figures: list[tuple[str, Figure]] = []
    for written in ranges:
        figures += (("Written from", written.south), ("to", written.north))
    figures.append(("A season moves with each degree", values()["season_moves_in_a_degree_days"]))
    return finding(
        PlaceCaution.WRITTEN_FOR_ELSEWHERE,
        WHOLE_FOLDER,
        where,
        tuple(figures),
        plans=f"{len(outside)} step plans ({names})" if several else f"the step plan {names}",
        side=side,
        over="each plan over" if several else "the plan over",
        based_on=based_on,
    )


def _used(
    requests: Iterable[JobRequest],
    states: Mapping[str, JobState],
    upkeep: Iterable[UpkeepJob],
    plans: Mapping[str, StepPlan],
) -> Iterator[StepPlan]:
    for request in requests:
        if not states[request.job_id].is_settled and _has_days(request.step):
            yield request.plan
    for job in upkeep:
        if job.subject.upkeep is not None and not job.state.is_settled and _has_days(job.step):
            yield plans[job.subject.upkeep]


def _has_days(step: Step) -> bool:
    # a plan that goes by signs of the season alone holds wherever the signs are seen
    return any(bound.month_day is not None for bound in (*step.opens, *step.closes))
