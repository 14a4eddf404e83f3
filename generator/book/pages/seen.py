"""What the log says was seen and brought, entry by entry, for the page of a thing."""

import datetime
from collections.abc import Collection

from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.inventory.places import Stand
from generator.plan.model.plan import Plan


def looked_over(plan: Plan, thing_id: str) -> list[LogEntry]:
    """Return the inspections of a stand, place or water hole, the newest first."""
    seen = (entry for entry in plan.entries if entry.inspected is not None)
    return [entry for entry in seen if entry.inspected and thing_id in entry.inspected.what][::-1]


@dataclass(frozen=True, slots=True)
class LastLook:
    """The last time a stand was inspected, by file or log.

    `sound` is what that look says, None where it does not say; `mend_since` is the day of the last
    word that it was unsafe, where no later word says that it is sound.
    """

    day: datetime.date
    sound: bool | None
    mend_since: datetime.date | None


def last_look(plan: Plan, stand: Stand) -> LastLook | None:
    """Return the last inspection of a stand; None without one."""
    looks = [
        (entry.done_on, entry.inspected.sound)
        for entry in looked_over(plan, stand.id)
        if entry.inspected
    ]
    if stand.straps_checked_on is not None:
        looks.append((stand.straps_checked_on, None))
    if not looks:
        return None
    # of two looks on one day the one that says whether it is sound
    day, sound = max(looks, key=lambda look: (look[0], look[1] is not None))
    said, word = next((look for look in looks if look[1] is not None), (None, None))
    return LastLook(day, sound, said if word is False else None)


@dataclass(frozen=True, slots=True)
class StandInspected:
    """An inspection of a stand: its day, what was found, whether it was sound.

    `step_name` is that of the work on its straps that was done then, None where it was none.
    """

    day: datetime.date
    sound: bool | None
    found: str | None
    step_name: str | None


def inspections(plan: Plan, stand: Stand) -> list[StandInspected]:
    """Return the inspections of a stand by file, log and maintenance, the newest first."""
    found = [
        StandInspected(entry.done_on, entry.inspected.sound, entry.inspected.found, None)
        for entry in looked_over(plan, stand.id)
        if entry.inspected
    ]
    # work on the straps that is told of no inspection beside it
    days = {one.day for one in found}
    found += [
        StandInspected(job.state.day, None, None, job.step.name)
        for job in plan.upkeep_of(stand.id)
        if job.step.does.asks_sound and job.state.kind == "done" and job.state.day is not None
        if job.state.day not in days
    ]
    typed = stand.straps_checked_on
    if typed is not None and typed not in {one.day for one in found}:
        found.append(StandInspected(typed, None, None, None))
    return sorted(found, key=lambda one: one.day, reverse=True)


def heights(plan: Plan, planting_ids: Collection[str]) -> list[LogEntry]:
    """Return the heights measured of plantings, the newest first."""
    seen = (entry for entry in plan.entries if entry.measured is not None)
    return [entry for entry in seen if entry.measured and entry.measured.planting in planting_ids][
        ::-1
    ]


def sight_checks(plan: Plan, route_id: str) -> list[LogEntry]:
    """Return the times a walk was looked at from outside, the newest first."""
    seen = (entry for entry in plan.entries if entry.sight_checked is not None)
    return [
        entry for entry in seen if entry.sight_checked and entry.sight_checked.route == route_id
    ][::-1]


def water_brought(plan: Plan, hole_id: str) -> list[LogEntry]:
    """Return the loads of water brought to a hole, the newest first."""
    seen = (entry for entry in plan.entries if entry.water_added is not None)
    return [
        entry for entry in seen if entry.water_added and entry.water_added.water_hole == hole_id
    ][::-1]
