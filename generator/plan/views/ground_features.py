"""What of the ground goes into files to take along: the gate, where work is, and what is shown.

Only what stands in the reader's plan with its coordinates: the gate, where work begins and the
places of work for everybody; of all else what the owner hands out with its coordinates. The words
beside a name are the program's own, so that no text of the owner's is taken for HTML by what reads
them.
"""

from collections.abc import Iterable, Iterator, Sequence
from typing import Literal

from generator.dataclass import dataclass
from generator.geometry.arcs import OnGround
from generator.plan.land.lying import lying_of
from generator.plan.model.plan import Plan
from generator.reference.land_kinds import land_kinds
from generator.units import LatLon, shown

FeatureForm = Literal["point", "line", "outline"]
FT_DECIMALS = 2


@dataclass(frozen=True, slots=True)
class GroundFeature:
    """Something that lies on the ground: what it is called, what it is, and its points.

    An outline goes once around, its first point not said again, and so does each hole in it.
    `width_ft` is how wide a line is, `radius_ft` how far a point reaches; 0 where not known.
    """

    name: str
    what: str
    form: FeatureForm
    points_lat_lon: tuple[LatLon, ...]
    width_ft: float = 0.0
    radius_ft: float = 0.0
    holes_lat_lon: tuple[tuple[LatLon, ...], ...] = ()

    @property
    def words(self) -> str:
        """What it is, with how wide it is or how far it reaches."""
        if self.width_ft:
            return f"{self.what}, {shown(self.width_ft, 'ft')} wide"
        if self.radius_ft:
            return f"{self.what}, {shown(self.radius_ft, 'ft')} around this point"
        return self.what


def ground_features(plan: Plan) -> tuple[GroundFeature, ...]:
    """Return all that a reader may take along, in an order that they see the reason of.

    The gate, places of work, stands and walks, water holes, things of the land; each by its name.
    """
    return tuple(
        feature
        for part in (_gate(plan), _work(plan), _hunting(plan), _water(plan), _land(plan))
        for feature in sorted(part, key=_by_name)
    )


def _by_name(feature: GroundFeature) -> tuple[str, str, tuple[LatLon, ...]]:
    return feature.name, feature.what, feature.points_lat_lon


def _gate(plan: Plan) -> Iterator[GroundFeature]:
    card = plan.land.emergency
    if card is not None and card.gate_lat_lon is not None:
        yield GroundFeature("Gate", "gate rescuers come through", "point", (card.gate_lat_lon,))


def _work(plan: Plan) -> Iterator[GroundFeature]:
    for place in plan.places:
        if place.lies is not None:
            yield _lying(place.name, "place", place.lies)
        if place.begins_lat_lon is not None:
            yield _point(f"{place.name}: begin here", "where work begins", place.begins_lat_lon)


def _hunting(plan: Plan) -> Iterator[GroundFeature]:
    for stand in plan.land.stands:
        if stand.at_lat_lon is not None:
            yield _point(stand.name, "stand", stand.at_lat_lon)
    for walk in plan.land.routes:
        lies = lying_of(walk)
        if lies is not None:
            yield _lying(walk.name, "walk", lies)
        if walk.parking_lat_lon is not None:
            yield _point(f"{walk.name}: park here", "where to park", walk.parking_lat_lon)
        if walk.gate_lat_lon is not None:
            yield _point(f"{walk.name}: go in here", "gate of the walk", walk.gate_lat_lon)


def _water(plan: Plan) -> Iterator[GroundFeature]:
    for water in plan.water:
        if water.hole.at_lat_lon is not None:
            yield _point(water.hole.name, "water hole", water.hole.at_lat_lon)


def _land(plan: Plan) -> Iterator[GroundFeature]:
    for thing in plan.land.things:
        lies = lying_of(thing)
        if lies is not None and (plan.reader == "owner" or thing.coordinates_for):
            yield _lying(thing.name, land_kinds()[thing.kind].name, lies)


def _point(name: str, what: str, at: LatLon) -> GroundFeature:
    return GroundFeature(name, what, "point", (at,))


def _lying(name: str, what: str, lies: OnGround) -> GroundFeature:
    points, reach_ft = tuple(_each_once(lies.points_lat_lon)), lies.half_width_ft
    if lies.is_outline:
        corners, *holes = map(_corners, (lies.points_lat_lon, *lies.holes_lat_lon))
        return GroundFeature(name, what, "outline", corners, holes_lat_lon=tuple(holes))
    if len(lies.points_lat_lon) == 1:
        return GroundFeature(name, what, "point", points, radius_ft=round(reach_ft, FT_DECIMALS))
    width_ft = round(2 * reach_ft, FT_DECIMALS)
    return GroundFeature(name, what, "line", points, width_ft=width_ft)


def _corners(outline_lat_lon: Sequence[LatLon]) -> tuple[LatLon, ...]:
    """Return an outline without its first point said again: closed or open, it is the same."""
    points = tuple(_each_once(outline_lat_lon))
    return points[:-1] if points[0] == points[-1] else points


def _each_once(points: Iterable[LatLon]) -> Iterator[LatLon]:
    """Yield points without those that repeat the one before them."""
    last: LatLon | None = None
    for point in points:
        if point != last:
            yield point
        last = point
