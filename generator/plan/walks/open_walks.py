"""Walks that are open from a day on because a crop beside them is cut, and the other ways in."""

import datetime

from generator.inventory.log import LogEntry
from generator.inventory.places import Route, Screen
from generator.plan.model.place import OpenWalk, OtherWay, Place
from generator.plan.model.plan import Plan
from generator.plan.standing.verdicts import judged
from generator.plan.walks.crops_beside import CropCut, crop_cut, crops_of, cut_in


def open_walks(plan: Plan) -> tuple[OpenWalk, ...]:
    """Return the walks that a cut crop opens, in the order of the owner's file.

    Of several crops the first to go counts. A walk looked at after the cut, and not seen, is hidden
    again; so is one whose screen hides by itself on the next hunting day it is judged for.
    """
    opened = {route.id: cut for route in plan.land.routes if (cut := _opened(plan, route))}
    return tuple(
        _open_walk(plan, route, opened[route.id], frozenset(opened))
        for route in plan.land.routes
        if route.id in opened
    )


def _opened(plan: Plan, route: Route) -> CropCut | None:
    """Return the cut that opens a walk; None where none does."""
    entries = cut_in(plan.entries)
    cuts = [
        cut
        for standing in crops_of(plan)
        if standing.beside is route or _hides_it(plan, standing.beside, route)
        if (cut := crop_cut(standing, entries)) is not None
    ]
    first = min(cuts, key=lambda cut: cut.day, default=None)
    if first is None or _not_seen_since(plan, route, first.day):
        return None
    return first


def _hides_it(plan: Plan, beside: Route | Screen, route: Route) -> bool:
    """Return whether it is a screen of the walk that does not hide it without its crop."""
    if not isinstance(beside, Screen) or route.id not in beside.hides:
        return False
    place = plan.place(beside.id)
    return not hides_next(plan, place)


def hides_next(plan: Plan, place: Place) -> bool:
    """Return whether a screen hides by its low curve on the next hunting day it is judged for."""
    verdict = next(iter(judged(plan, place)), None)
    return verdict is not None and verdict.verdict == "hides"


def _not_seen_since(plan: Plan, route: Route, day: datetime.date) -> bool:
    """Return whether the last look at a walk is of a day or after it and nobody was seen."""
    look = last_sight(plan, route.id)
    return (
        look is not None
        and look.sight_checked is not None
        and look.done_on >= day
        and look.sight_checked.hidden is True
    )


def last_sight(plan: Plan, route_id: str) -> LogEntry | None:
    """Return the last entry in which a walk was looked at from outside."""
    looks = [
        entry
        for entry in plan.entries
        if entry.sight_checked is not None and entry.sight_checked.route == route_id
    ]
    return looks[-1] if looks else None


def _open_walk(plan: Plan, route: Route, cut: CropCut, opened: frozenset[str]) -> OpenWalk:
    standing = cut.standing
    return OpenWalk(
        route.id,
        cut.day,
        cut.known,
        route.serves,
        tuple(
            OtherWay(stand_id, other.id, hidden is True)
            for stand_id in route.serves
            for other in plan.land.routes
            if stand_id in other.serves and other.id not in opened
            # a walk on which somebody was seen is no way in
            if (hidden := _last_said(plan, other)) is not False
        ),
        standing.crop.kind,
        standing.beside.name if isinstance(standing.beside, Screen) else "",
        cut.stubble_in,
    )


def _last_said(plan: Plan, route: Route) -> bool | None:
    look = last_sight(plan, route.id)
    return look.sight_checked.hidden if look is not None and look.sight_checked else None
