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
        water_holes=tuple(_hole(hole, entries) for hole in inventory.water_holes),
        stands=tuple(_stand(stand, entries) for stand in inventory.stands),
        routes=tuple(_route(route, entries) for route in inventory.routes),
    )


def _hole(hole: WaterHole, entries: tuple[LogEntry, ...]) -> WaterHole:
    filled = (
        entry.done_on
        for entry in entries
        if entry.water_added and entry.water_added.water_hole == hole.id
    )
    seen = (
        entry.done_on for entry in entries if entry.inspected and hole.id in entry.inspected.what
    )
    return replace(
        hole,
        refilled_on=_last(hole.refilled_on, filled),
        inspected_on=_last(hole.inspected_on, seen),
    )


def _stand(stand: Stand, entries: tuple[LogEntry, ...]) -> Stand:
    sound = (
        entry.done_on
        for entry in entries
        # a look that found something wrong, or does not say, leaves the straps to be looked at
        if entry.inspected and stand.id in entry.inspected.what and entry.inspected.sound
    )
    inspected = (
        entry.done_on
        for entry in entries
        for done in entry.upkeep
        if (done.at, done.step) == (stand.id, INSPECTION)
    )
    return replace(stand, straps_checked_on=_last(stand.straps_checked_on, (*sound, *inspected)))


def _route(route: Route, entries: tuple[LogEntry, ...]) -> Route:
    walked = (
        entry.done_on
        for entry in entries
        if entry.sight_checked and entry.sight_checked.route == route.id
    )
    return replace(route, walked_on=_last(route.walked_on, walked))


def _last(typed: datetime.date | None, logged: Iterable[datetime.date]) -> datetime.date | None:
    return max([*logged, *([typed] if typed is not None else [])], default=None)
