"""What is said of walks that a cut crop opens, and of screens that ice or wet snow laid down."""

from collections.abc import Iterator

from generator.inventory.places import Route
from generator.plan.findings.about_places import PlaceCaution, PlaceNote
from generator.plan.findings.order import finding
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding, Subject, about_place
from generator.plan.model.place import OpenWalk, OtherWay
from generator.plan.model.plan import Plan
from generator.plan.standing.heights import laid_down
from generator.plan.standing.planting_curves import standing_growth
from generator.plan.walks.crops_beside import crop_cut, crops_of, cut_in

_BY = {"ice": "Ice", "wet_snow": "Wet snow"}


def walk_findings(plan: Plan) -> Iterator[Finding]:
    """Yield walks that are open or will be, crops without a day, and screens that lie down."""
    routes = {route.id: route for route in plan.land.routes}
    for walk in plan.open_walks:
        yield _open(plan, walk, routes)
    entries = cut_in(plan.entries)
    for standing in crops_of(plan):
        if crop_cut(standing, entries) is None:
            beside = standing.beside
            is_walk = isinstance(beside, Route)
            yield finding(
                PlaceNote.NO_DAY_OF_CUT,
                Subject("route", beside.id) if is_walk else about_place(beside.id),
                standing.crop.where,
                crop=standing.crop.kind,
                beside=beside.name,
            )
    yield from _laid_down(plan)


def _open(plan: Plan, walk: OpenWalk, routes: dict[str, Route]) -> Finding:
    route = routes[walk.route]
    is_open = walk.is_open_on(plan.as_of)
    return finding(
        PlaceCaution.WALK_OPEN if is_open else PlaceNote.WALK_OPENS,
        Subject("route", route.id),
        route.where,
        crop=walk.crop,
        beside=walk.beside or route.name,
        cut=_cut(walk, is_open),
        walk="it" if not walk.beside else route.name,
        ways=" ".join(_ways(plan, walk, routes)),
    )


def _cut(walk: OpenWalk, is_open: bool) -> str:
    day = day_words(walk.since)
    if walk.known != "planned":
        return f"was cut on {day}" if is_open else f"is said to be cut on {day}"
    if not is_open:
        return f"is to be cut on {day}"
    return f"was to be cut on {day}, and nobody wrote down that it still stands"


def _ways(plan: Plan, walk: OpenWalk, routes: dict[str, Route]) -> Iterator[str]:
    names = {stand.id: stand.name for stand in plan.land.stands}
    for stand_id in walk.stands:
        ways = [way for way in walk.ways if way.stand == stand_id]
        if ways:
            told = " or ".join(_way(way, routes) for way in ways)
            yield f"Another way in to {names[stand_id]}: {told}."
        else:
            yield f"No other walk to {names[stand_id]} is known that you are not seen on."


def _way(way: OtherWay, routes: dict[str, Route]) -> str:
    doubt = "" if way.is_hidden else " (nobody has looked whether you are seen on it)"
    return f"{routes[way.route].name}{doubt}"


def _laid_down(plan: Plan) -> Iterator[Finding]:
    for place in plan.places:
        for growing in standing_growth(plan, place):
            entry = laid_down(growing, growing.year_of(plan.as_of), plan.as_of)
            if entry is not None and entry.laid_down is not None:
                yield finding(
                    PlaceCaution.LAID_DOWN,
                    about_place(place.id),
                    entry.laid_down.where,
                    by=_BY[entry.laid_down.by],
                    day=day_words(entry.done_on),
                )
