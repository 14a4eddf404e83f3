"""Days the log knows of water holes and stands, where they are later than the ones typed there."""

import datetime
from collections.abc import Iterable
from dataclasses import replace

from generator.inventory.ground import WaterHole
from generator.inventory.log import LogEntry
from generator.inventory.places import Route, Stand
from generator.inventory.schema import Inventory

INSPECTION = "stand_check"  # the step of the shipped plan that looks at all of a stand


def with_logged_days(inventory: Inventory, entries: tuple[LogEntry, ...]) -> Inventory:
    """Return the inventory with the last day of every refill, look over and walk by file and log.

    A stand counts as looked over where an entry says that it was sound, or that the inspection of
    the season was done there, which looks at every strap.
    """
    return replace(
        inventory,
        water_holes=tuple(_hole(one, entries) for one in inventory.water_holes),
        stands=tuple(_stand(one, entries) for one in inventory.stands),
        routes=tuple(_route(one, entries) for one in inventory.routes),
    )


def _hole(hole: WaterHole, entries: tuple[LogEntry, ...]) -> WaterHole:
    filled = (
        one.done_on for one in entries if one.water_added and one.water_added.water_hole == hole.id
    )
    seen = (one.done_on for one in entries if one.inspected and hole.id in one.inspected.what)
    return replace(
        hole,
        refilled_on=_last(hole.refilled_on, filled),
        inspected_on=_last(hole.inspected_on, seen),
    )


def _stand(stand: Stand, entries: tuple[LogEntry, ...]) -> Stand:
    sound = (
        one.done_on
        for one in entries
        if one.inspected and stand.id in one.inspected.what and one.inspected.sound
    )
    inspected = (
        one.done_on
        for one in entries
        for done in one.upkeep
        if (done.at, done.step) == (stand.id, INSPECTION)
    )
    return replace(stand, straps_checked_on=_last(stand.straps_checked_on, (*sound, *inspected)))


def _route(route: Route, entries: tuple[LogEntry, ...]) -> Route:
    walked = (
        one.done_on for one in entries if one.sight_checked and one.sight_checked.route == route.id
    )
    return replace(route, walked_on=_last(route.walked_on, walked))


def _last(typed: datetime.date | None, logged: Iterable[datetime.date]) -> datetime.date | None:
    return max([*logged, *([typed] if typed is not None else [])], default=None)
