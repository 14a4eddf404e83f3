"""Whether the calendar days of step plans are written for where the property lies."""

from collections.abc import Iterable, Iterator, Mapping

from generator.inventory.schema import Inventory
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.findings import finding
from generator.plan.model import FOLDER, Finding, JobState, UpkeepJob
from generator.plan.notes import Note
from generator.reference.load import values
from generator.reference.steps import Step, StepPlan


def latitude_findings(
    asked: Iterable[JobAsked],
    states: Mapping[str, JobState],
    upkeep: Iterable[UpkeepJob],
    inventory: Inventory,
) -> Iterator[Finding]:
    """Yield a caution on each plan whose days are not written for here; a note if nobody can say.

    Plans that still have work ahead on a day of the calendar count.
    """
    used = {one.id: one for one in _used(asked, states, upkeep, inventory)}
    plans = [plan for _, plan in sorted(used.items())]
    middle, where = inventory.property.location_lat_lon, inventory.property.where
    if middle is None:
        if any(one.latitudes is not None for one in plans):
            yield finding(Note.LATITUDE_NOT_TYPED, FOLDER, where)
        return
    for plan in plans:
        written = plan.latitudes
        if written is None or written.hold(middle[0]):
            continue
        yield finding(
            Caution.WRITTEN_FOR_ELSEWHERE,
            FOLDER,
            where,
            (
                ("Written from", written.south),
                ("to", written.north),
                ("A season moves with each degree", values()["season_moves_in_a_degree_days"]),
            ),
            plan=plan.name,
            side="north" if middle[0] > written.north.value else "south",
            based_on=plan.id,
        )


def _used(
    asked: Iterable[JobAsked],
    states: Mapping[str, JobState],
    upkeep: Iterable[UpkeepJob],
    inventory: Inventory,
) -> Iterator[StepPlan]:
    plans = inventory.plans()
    for one in asked:
        if not states[one.job_id].is_settled and _has_days(one.step):
            yield one.plan
    for job in upkeep:
        if job.subject.upkeep is not None and not job.state.is_settled and _has_days(job.step):
            yield plans[job.subject.upkeep]


def _has_days(step: Step) -> bool:
    return any(bound.month_day is not None for bound in (*step.opens, *step.closes))
