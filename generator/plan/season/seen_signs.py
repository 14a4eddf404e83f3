"""Season signs as the owner saw them: what the log says, season by season."""

import datetime
from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from generator.inventory.fields import SeasonMarker, Where
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.inventory.season import season_of
from generator.plan.model.markers import FoundMarkers, MarkerSeen, SeenInSeason
from generator.plan.season.marker_years import Years, enough, spread
from generator.reference.library import marker_names


def with_seen(inventory: Inventory, entries: Iterable[LogEntry]) -> Inventory:
    """Return the inventory with the signs that entries in force say were seen.

    Early, typical and late of a sign stay as they are: what was seen counts for its own season.
    """
    seen = _seen(entries, inventory.property.where)
    if not seen:
        return inventory
    signs = inventory.property.season_signs
    if not isinstance(signs, FoundMarkers):
        known: dict[str, Any] = {name: getattr(signs, name, None) for name in marker_names()}
        where = signs.where if signs is not None else inventory.property.where
        signs = FoundMarkers(where=where, **known)
    new = replace(inventory.property, season_signs=replace(signs, seen=seen))
    return replace(inventory, property=new)


def seen_signs(inventory: Inventory) -> tuple[MarkerSeen, ...]:
    """Return the signs that were seen, in the order of all signs."""
    signs = inventory.property.season_signs
    seen = signs.seen if isinstance(signs, FoundMarkers) else {}
    return tuple(seen[name] for name in marker_names() if name in seen)


def _seen(entries: Iterable[LogEntry], where: Where) -> dict[str, MarkerSeen]:
    days: dict[str, dict[int, list[datetime.date]]] = {}
    for entry in entries:
        for sign in entry.markers_seen:
            of_sign = days.setdefault(sign, {})
            of_sign.setdefault(season_of(entry.done_on), []).append(entry.done_on)
    return {sign: _marker(sign, seasons, where) for sign, seasons in days.items()}


def _marker(sign: str, seasons: dict[int, list[datetime.date]], where: Where) -> MarkerSeen:
    found = {season: SeenInSeason(min(days), max(days)) for season, days in sorted(seasons.items())}
    years = Years(tuple(seen.first for seen in found.values()), 0, 0)
    own = None
    if enough(years):
        early, typical, late = spread(years.days)
        own = SeasonMarker(where=where, early=early, typical=typical, late=late, single=False)
    return MarkerSeen(sign, marker_names()[sign], found, own)
