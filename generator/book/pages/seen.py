"""What the log says was seen and brought, entry by entry, for the page of a thing."""

from collections.abc import Collection

from generator.inventory.log import LogEntry
from generator.plan.model import Plan


def looked_over(plan: Plan, thing_id: str) -> list[LogEntry]:
    """Return the looks over a stand, place or water hole, the newest first."""
    seen = (one for one in plan.entries if one.inspected is not None)
    return [one for one in seen if one.inspected and thing_id in one.inspected.what][::-1]


def last_word(plan: Plan, stand_id: str) -> LogEntry | None:
    """Return the newest look over a stand that says whether it was sound; None without one."""
    looks = looked_over(plan, stand_id)
    return next((one for one in looks if one.inspected and one.inspected.sound is not None), None)


def heights(plan: Plan, planting_ids: Collection[str]) -> list[LogEntry]:
    """Return the heights measured of plantings, the newest first."""
    seen = (one for one in plan.entries if one.measured is not None)
    return [one for one in seen if one.measured and one.measured.planting in planting_ids][::-1]


def sight_checks(plan: Plan, route_id: str) -> list[LogEntry]:
    """Return the times a walk was looked at from outside, the newest first."""
    seen = (one for one in plan.entries if one.sight_checked is not None)
    return [one for one in seen if one.sight_checked and one.sight_checked.route == route_id][::-1]


def water_brought(plan: Plan, hole_id: str) -> list[LogEntry]:
    """Return the loads of water brought to a hole, the newest first."""
    seen = (one for one in plan.entries if one.water_added is not None)
    return [one for one in seen if one.water_added and one.water_added.water_hole == hole_id][::-1]
