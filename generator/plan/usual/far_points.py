"""Points that lie farther from the middle of the property than ground of one property does.

Weather stations stand where they stand, and are asked about on their own.
"""

from collections.abc import Iterable, Iterator

from generator.dataclass import dataclass
from generator.geometry.geodesic import are_surely_within_mi, distances_mi
from generator.inventory.fields import Points, Where
from generator.inventory.ground import YES
from generator.inventory.schema import Inventory
from generator.plan.findings.about_days import DayCaution
from generator.plan.findings.about_places import PlaceCaution
from generator.plan.findings.about_usual import UsualCaution
from generator.plan.findings.order import finding
from generator.plan.model.finding import WHOLE_FOLDER, Finding, Subject, about_place
from generator.reference.library import methods, values
from generator.units import LatLon
from generator.working import Measured

REST_ON_THE_MIDDLE = (PlaceCaution.WRITTEN_FOR_ELSEWHERE, DayCaution.STATION_FAR)


@dataclass(frozen=True, slots=True)
class _Thing:
    """A thing with points: what it is called, its points, and whether it is truly far."""

    subject: Subject
    name: str
    beside: str
    far: bool
    points: tuple[tuple[str, LatLon, Where], ...]


def far_findings(inventory: Inventory) -> list[Finding]:
    """Return a caution for each thing that lies too far off, or one where the middle does."""
    middle = inventory.property.location_lat_lon
    things = [thing for thing in _things(inventory) if thing.points]
    if middle is None or not things:
        return []
    most = values()["point_away_mi"]
    farthest = {
        thing.subject: _farthest(middle, thing)
        for thing in things
        if _may_be_far(middle, thing, most.value)
    }
    far = [
        thing
        for thing in things
        if thing.subject in farthest and farthest[thing.subject][1].value > most.value
    ]
    # one thing alone cannot tell which end is wrong; one said to be far speaks for the middle
    if len(far) == len(things) > 1 and not any(thing.far for thing in far):
        nearest = min((farthest[thing.subject][1] for thing in far), key=lambda miles: miles.value)
        figures = (("Away, at the least", nearest), ("At most", most))
        return [finding(UsualCaution.MIDDLE_FAR, WHOLE_FOLDER, inventory.property.where, figures)]
    found = []
    for thing in far:
        key, away, where = farthest[thing.subject]
        if not thing.far:
            figures = (("Away", away), ("At most", most))
            words = {"name": thing.name, "key": key, "beside": thing.beside}
            found.append(finding(UsualCaution.POINT_FAR, thing.subject, where, figures, **words))
    return found


def without_what_rests_on_it(found: Iterable[Finding]) -> list[Finding]:
    """Return findings without those that rest on the middle, where the middle is in doubt.

    They come back once the middle is mended, or said to be right.
    """
    every = list(found)
    if not any(told.code == UsualCaution.MIDDLE_FAR.value.code for told in every):
        return every
    rest = {reason.value.code for reason in REST_ON_THE_MIDDLE}
    return [told for told in every if told.code not in rest]


def _things(inventory: Inventory) -> Iterator[_Thing]:
    card = inventory.property.emergency
    if card is not None and card.gate_lat_lon is not None:
        gate = (("gate_lat_lon", card.gate_lat_lon, card.where),)
        yield _Thing(WHOLE_FOLDER, "The gate", "emergency:", card.far == YES, gate)
    for place in inventory.places():
        points = [*_each("line_lat_lon", place.line_lat_lon)]
        points += _each("area_lat_lon", place.area_lat_lon)
        if place.near is not None and place.near.block_lat_lon is not None:
            points.append(("block_lat_lon", place.near.block_lat_lon, place.near.where))
        yield _Thing(
            about_place(place.id), place.name, "the place", place.far == YES, tuple(points)
        )
    for stand in inventory.stands:
        if stand.at_lat_lon is not None:
            at = (("at_lat_lon", stand.at_lat_lon, stand.where),)
            yield _Thing(Subject("stand", stand.id), stand.name, "the stand", stand.far == YES, at)
    for hole in inventory.water_holes:
        if hole.at_lat_lon is not None:
            at = (("at_lat_lon", hole.at_lat_lon, hole.where),)
            about = Subject("water_hole", hole.id)
            yield _Thing(about, hole.name, "the water hole", hole.far == YES, at)
    for thing in inventory.land:
        points = [*_each("line_lat_lon", thing.line_lat_lon)]
        points += _each("area_lat_lon", thing.area_lat_lon)
        if thing.at_lat_lon is not None:
            points.append(("at_lat_lon", thing.at_lat_lon, thing.where))
        about = Subject("land", thing.id)
        yield _Thing(about, thing.name, "the thing", thing.far == YES, tuple(points))
    for route in inventory.routes:
        points = _each("line_lat_lon", route.line_lat_lon)
        for key in ("parking_lat_lon", "gate_lat_lon"):
            if getattr(route, key) is not None:
                points.append((key, getattr(route, key), route.where_of(key)))
        about = Subject("route", route.id)
        yield _Thing(about, route.name, "the walk", route.far == YES, tuple(points))


def _each(key: str, points: Points | None) -> list[tuple[str, LatLon, Where]]:
    if points is None:
        return []
    return [(key, point, at) for point, at in zip(points.lat_lon, points.each, strict=True)]


def _may_be_far(middle: LatLon, thing: _Thing, most_mi: float) -> bool:
    """Whether a thing has to be measured: measuring takes a library that is slow to come in."""
    return not are_surely_within_mi(middle, [point for _, point, _ in thing.points], most_mi)


def _farthest(middle: LatLon, thing: _Thing) -> tuple[str, Measured, Where]:
    """Return the point of a thing that lies farthest off: its key, how far, and where it stands."""
    miles = distances_mi(middle, [point for _, point, _ in thing.points])
    number = max(range(len(miles)), key=lambda index: miles[index])
    key, _, where = thing.points[number]
    method = methods()["distances_mi"]
    away = Measured(
        "distances_mi",
        miles[number],
        "mi",
        method.words,
        2,
        method.source,
        where.file,
        where.line,
        "place",
    )
    return key, away, where
