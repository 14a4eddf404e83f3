"""Stops on sits that come together on a day, and one note on all that has no points typed."""

from collections.abc import Iterable, Iterator, Mapping
from itertools import combinations

from generator.inventory.ground import WaterHole
from generator.inventory.places import Route, Stand
from generator.inventory.schema import Inventory
from generator.inventory.sits import Sit
from generator.plan.findings.about_readers import SitNote, SitStop
from generator.plan.findings.order import all_listed, finding
from generator.plan.findings.words import Reason
from generator.plan.land.lying import Thing, lying_of
from generator.plan.model.days import day_words
from generator.plan.model.finding import ALL_SITS, Finding, Subject
from generator.plan.model.sits import KeepAway, hours_words
from generator.plan.sits.in_the_arc import arc_of, fire_of, meets
from generator.plan.sits.kept_away import pointless
from generator.plan.sits.sits_ahead import hours_of


def sit_findings(
    inventory: Inventory, sits: tuple[Sit, ...], away: tuple[KeepAway, ...]
) -> list[Finding]:
    """Return what is said of sits that are not over."""
    stands = {stand.id: stand for stand in inventory.stands}
    routes = {route.id: route for route in inventory.routes}
    found = [
        told
        for one, other in combinations(sits, 2)
        if _at_once(one, other)
        for told in _together(one, other, stands, routes)
    ]
    return [*found, *_untold(inventory, sits, away, stands)]


def _at_once(one: Sit, other: Sit) -> bool:
    """Return whether two are out together; who is back when another leaves is not."""
    (begins, ends), (other_begins, other_ends) = hours_of(one), hours_of(other)
    return one.sits_on == other.sits_on and begins < other_ends and other_begins < ends


def _together(
    one: Sit, other: Sit, stands: Mapping[str, Stand], routes: Mapping[str, Route]
) -> Iterator[Finding]:
    if one.stand == other.stand:
        yield from _on_both(SitStop.TWO_AT_ONE_STAND, one, other, stands)
        return
    first, second = stands[one.stand], stands[other.stand]
    fires = fire_of(one, first), fire_of(other, second)
    reach = meets(*fires, first, second)
    through: list[str] = []
    is_doubtful = reach is None
    for walker, fire, stand in ((one, fires[1], second), (other, fires[0], first)):
        for walk in (walker.walk_in, walker.walk_out):
            route = routes[walk] if walk is not None else None
            crosses = meets(fire, lying_of(route), stand, route) if route is not None else None
            is_doubtful |= crosses is None
            if crosses and route is not None and route.name not in through:
                through.append(route.name)
    if reach:
        yield from _on_both(SitStop.ARCS_REACH, one, other, stands)
    if through:
        walks = all_listed(through)
        yield from _on_both(SitStop.WALK_THROUGH_ARC, one, other, stands, walks=walks)
    # what is known to come together says more than what may
    if is_doubtful and not reach and not through:
        missing = _once(_missing((one, other), stands, routes))
        yield from _on_both(SitStop.NOT_KNOWN_APART, one, other, stands, missing=missing)


def _on_both(
    reason: Reason, one: Sit, other: Sit, stands: Mapping[str, Stand], **words: str
) -> Iterator[Finding]:
    for sit in (one, other):
        # said of both in the same words, so that a page prints them once
        yield finding(
            reason,
            Subject("sit", sit.id),
            sit.where,
            (),
            sit=one.id,
            beside=other.id,
            day=day_words(one.sits_on),
            stand=stands[one.stand].name,
            hours=hours_words(hours_of(one)),
            other_stand=stands[other.stand].name,
            other=hours_words(hours_of(other)),
            **words,
        )


def _missing(
    sits: Iterable[Sit], stands: Mapping[str, Stand], routes: Mapping[str, Route]
) -> Iterator[str]:
    """Yield what is to be typed so that two sits can be held against each other."""
    for sit in sits:
        yield from _missing_of_fire(sit, stands[sit.stand])
        for name in ("walk_in", "walk_out"):
            walk = getattr(sit, name)
            if walk is None:
                yield f"{name} of the sit {sit.id}"
            elif routes[walk].line_lat_lon is None:
                yield f"line_lat_lon of the walk {walk} in routes.yaml"


def _missing_of_fire(sit: Sit, stand: Stand) -> Iterator[str]:
    lacks = [
        *(["at_lat_lon"] if stand.at_lat_lon is None else []),
        *(["arc_of_fire"] if arc_of(sit, stand) is None else []),
    ]
    if lacks:
        yield f"{all_listed(lacks)} of the stand {stand.id} in stands.yaml"


def _untold(
    inventory: Inventory,
    sits: tuple[Sit, ...],
    away: tuple[KeepAway, ...],
    stands: Mapping[str, Stand],
) -> Iterator[Finding]:
    """Yield a note on the stands whose arc is not typed, and one on what has no points, once each.

    What has none is told where an arc is typed: before that its points settle nothing.
    """
    lacking = [one for sit in sits for one in _missing_of_fire(sit, stands[sit.stand])]
    if lacking:
        names = [stands[sit.stand].name for sit in sits if fire_of(sit, stands[sit.stand]) is None]
        stands_named, missing = _once(names), _once(lacking)
        yield finding(SitNote.NO_ARC, ALL_SITS, stands=stands_named, missing=missing)
    with_arc = {sit.id for sit in sits if fire_of(sit, stands[sit.stand]) is not None}
    things = list(pointless(inventory, (keep for keep in away if with_arc & set(keep.sit_ids))))
    if things:
        named, missing = _once(thing.name for thing in things), _once(map(_key_of, things))
        yield finding(SitNote.MAY_LIE_IN_ARC, ALL_SITS, things=named, missing=missing)


def _once(words: Iterable[str]) -> str:
    return all_listed(dict.fromkeys(words))


def _key_of(thing: Thing) -> str:
    match thing:
        case Route():
            return "line_lat_lon of walks in routes.yaml"
        case Stand():
            return "at_lat_lon of stands in stands.yaml"
        case WaterHole():
            return "at_lat_lon of water holes in ground.yaml"
        case _:
            return "line_lat_lon with width_ft, or area_lat_lon, of places"
