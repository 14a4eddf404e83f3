"""What lies where it cannot be meant: past the boundary, in water, across a fence."""

from collections.abc import Iterable, Iterator, Sequence

from generator.dataclass import dataclass
from generator.geometry.arcs import OnGround
from generator.geometry.overlap import lies_on, near_each_other, past_ft, runs_in, shared_width_ft
from generator.geometry.pieces import Piece, joined_piece, shared_by
from generator.geometry.plane import middle_of_plane, snapped_ft
from generator.inventory.ground import WaterHole
from generator.inventory.land import LandThing
from generator.inventory.places import PlantedGround, Route
from generator.inventory.schema import Inventory
from generator.plan.findings.about_land import LandCaution
from generator.plan.findings.order import about_record, finding
from generator.plan.land.lying import Thing, lying_of, piece_of
from generator.plan.land.off_points import off_ft
from generator.plan.model.finding import Finding
from generator.plan.placed.measured import measured_on
from generator.reference.land_kinds import land_kinds
from generator.units import LatLon
from generator.working import Figure, Given, Reference

BOUNDARY, FENCE = "boundary", "fence"
OVER_WATER, THROUGH_A_FENCE = ("crossing", "culvert"), ("gate",)


@dataclass(frozen=True, slots=True)
class _Laid:
    """A thing with where it lies and the piece it is on the plane of the property."""

    thing: Thing
    lies: OnGround
    middle: LatLon

    @property
    def piece(self) -> Piece:
        return piece_of(self.lies, self.middle)

    def is_land(self, *kinds: str) -> bool:
        """Return whether it is a thing of the land of one of some kinds."""
        return isinstance(self.thing, LandThing) and self.thing.kind in kinds


def misplaced_findings(inventory: Inventory) -> Iterator[Finding]:
    """Yield a caution for everything that by its points lies where it cannot be meant."""
    laid = _laid(inventory)
    yield from _past_the_boundary(laid)
    water = tuple(kind.id for kind in land_kinds().values() if kind.water)
    wet, fences = [], []
    for first, second in sorted(near_each_other([one.lies for one in laid])):
        one, other = laid[first], laid[second]
        # things of the land stand behind all others
        if other.is_land(*water) and not isinstance(one.thing, LandThing | WaterHole):
            wet.append((one, other))
        elif other.is_land(FENCE) and isinstance(one.thing, Route):
            fences.append((one, other))
    yield from _in_water(wet)
    bridges = [one for one in laid if one.is_land(*OVER_WATER)]
    gates = [one for one in laid if one.is_land(*THROUGH_A_FENCE)]
    yield from _walks_across(wet, bridges, LandCaution.WALK_THROUGH_WATER)
    yield from _walks_across(fences, gates, LandCaution.WALK_ACROSS_FENCE)


def _laid(inventory: Inventory) -> list[_Laid]:
    things: tuple[Thing, ...] = (
        *inventory.places(),
        *inventory.stands,
        *inventory.routes,
        *inventory.water_holes,
        *inventory.land,
    )
    lying = [(thing, lies) for thing in things if (lies := lying_of(thing)) is not None]
    if not lying or not inventory.land:
        return []
    middle = middle_of_plane(inventory.property.location_lat_lon or lying[0][1].points_lat_lon[0])
    return [_Laid(thing, lies, middle) for thing, lies in lying]


def _past_the_boundary(laid: Sequence[_Laid]) -> Iterator[Finding]:
    bounds = [one for one in laid if one.is_land(BOUNDARY)]
    if not bounds:
        return
    inside = joined_piece(one.piece for one in bounds)
    for one in laid:
        thing = one.thing
        if isinstance(thing, LandThing) or inside.covers(one.piece):
            continue
        past, off = past_ft(one.piece, inside), _coarser(one, *bounds)
        if past > off.value:
            farthest = measured_on("past_ft", past, "ft", thing, *(edge.thing for edge in bounds))
            figures = (("Past it, at the farthest", farthest), ("Points may be off", off))
            reason, about = LandCaution.PAST_THE_BOUNDARY, about_record(thing)
            yield finding(reason, about, thing.where, figures, name=thing.name)


def _in_water(pairs: Iterable[tuple[_Laid, _Laid]]) -> Iterator[Finding]:
    for one, water in pairs:
        place, off = one.thing, _coarser(one, water)
        if not isinstance(place, PlantedGround):
            continue
        figures: tuple[tuple[str, Figure], ...] = (("Points may be off", off),)
        if water.piece.area == 0:
            is_in = runs_in(water.piece, one.piece, off.value)
        else:
            is_in = lies_on(one.piece, water.piece, off.value)
            width_ft = shared_width_ft(one.piece, water.piece)
            wide = measured_on("shared_width_ft", width_ft, "ft", place, water.thing)
            figures = (("Wide, at the widest", wide), *figures)
        if is_in:
            names = {"place": place.name, "water": water.thing.name}
            reason, about = LandCaution.PLACE_IN_WATER, about_record(place)
            yield finding(reason, about, place.where, figures, **names)


def _walks_across(
    pairs: Iterable[tuple[_Laid, _Laid]], openings: Sequence[_Laid], reason: LandCaution
) -> Iterator[Finding]:
    """Yield every walk that meets water or a fence where no crossing or gate lies."""
    for walk, across in pairs:
        if not isinstance(walk.thing, Route):
            continue
        for at in _parts_of(shared_by(walk.piece, across.piece)):
            if any(_opens(opening, at, walk) for opening in openings):
                continue
            from_start_ft = snapped_ft(float(walk.piece.project(at.representative_point())))
            along = measured_on("along_walk_ft", from_start_ft, "ft", walk.thing, across.thing)
            figures = (("From the start of the walk", along),)
            names = {"walk": walk.thing.name, "across": across.thing.name}
            about = about_record(walk.thing)
            yield finding(reason, about, walk.thing.where, figures, **names)


def _opens(opening: _Laid, at: Piece, walk: _Laid) -> bool:
    """Return whether a crossing or gate lies where a walk meets what it opens."""
    both_ft = off_ft(opening.thing).value + off_ft(walk.thing).value
    return snapped_ft(float(opening.piece.distance(at))) <= both_ft


def _parts_of(piece: Piece) -> Iterator[Piece]:
    if not piece.is_empty:
        yield from getattr(piece, "geoms", (piece,))


def _coarser(*laid: _Laid) -> Given | Reference:
    return max((off_ft(one.thing) for one in laid), key=lambda figure: figure.value)
