"""What drawn things leave of a place: their reaches on the plane, never short of a distance."""

from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache

from generator.compute import left_out
from generator.dataclass import dataclass
from generator.geometry.arcs import OnGround
from generator.geometry.pieces import FINE_SIDES_OF_A_QUARTER, reach_piece
from generator.geometry.plane import middle_of_plane
from generator.geometry.treated import (
    Axis,
    TakenStretch,
    axis_of_outline,
    frame_of,
    runs_along,
    share_taken,
    stretches_taken,
)
from generator.inventory.fields import rules_of
from generator.inventory.label import Setback
from generator.inventory.places import PlantedGround
from generator.plan.land.kept_kinds import (
    EDGE_DOUBT_TIMES,
    EdgeDoubt,
    edge_of,
    is_edge_in_doubt,
    public_name,
)
from generator.plan.land.kept_things import Around, Lies, near_to
from generator.plan.land.lying import lying_of, piece_on, spots_of
from generator.plan.land.off_points import off_ft
from generator.plan.model.place import KeptOff, LeftOut
from generator.reference.library import methods
from generator.units import LatLon
from generator.working import Measured, Quantity

KeptByKind = Mapping[str, Sequence[Setback]]  # by the kind of thing, the longest distance first


@dataclass(frozen=True, slots=True)
class DrawnLeft:
    """What drawn things leave of a place, the width where it is even, and the kinds that count."""

    left: Measured | None = None
    width: Quantity | None = None
    kept_off: tuple[KeptOff, ...] = ()
    kinds: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class _Reach:
    """How far from a thing nothing is sprayed, for the longest distance that labels keep."""

    lies: Lies
    setback: Setback
    reach: Quantity

    @property
    def kind(self) -> str:
        """The kind of thing it is."""
        return self.lies.kind


@dataclass(frozen=True, slots=True)
class _TakenByOne:
    """What one reach takes of a place: its share, and the stretches along it."""

    taken_fraction: float
    stretches: tuple[TakenStretch, ...]


@dataclass(frozen=True, slots=True)
class _OnPlane:
    """What reaches take of a place together and each by itself, and where its first end lies.

    `is_even` where they run along the whole of it and are as wide everywhere.
    """

    taken_fraction: float
    is_even: bool
    start_deg: float
    each: tuple[_TakenByOne, ...]


def edges_in_doubt(ground: PlantedGround, by_kind: KeptByKind, land: Around) -> Iterator[EdgeDoubt]:
    """Yield things near a place whose points follow another edge than labels count from."""
    for lies in land.things:
        edge = edge_of(lies.thing)
        for setback in by_kind.get(lies.kind, ()):
            if is_edge_in_doubt(lies.kind, setback.counts_from, edge):
                within_ft = EDGE_DOUBT_TIMES * _reach_ft(ground, lies, setback)
                if near_to(ground, (lies,), within_ft):
                    yield EdgeDoubt(lies.thing.name, setback, edge, lies.thing.where)


def drawn_left(
    base: str,
    ground: PlantedGround,
    area: Quantity,
    by_kind: KeptByKind,
    land: Around,
    typed_fraction: Mapping[str, float],
) -> DrawnLeft:
    """Return what is left of a place beside drawn things, where they take more than typed ones do.

    `typed_fraction` is the share that typed distances take, by the kind of thing.
    """
    # no piece is made, and its library not loaded, where nothing can be near
    near = list(_near(base, ground, by_kind, land))
    kinds = frozenset(
        kind
        for kind in dict.fromkeys(one.kind for one in near)
        if _taken(ground, [one for one in near if one.kind == kind], land).taken_fraction
        > typed_fraction.get(kind, 0.0)
    )
    counted = [one for one in near if one.kind in kinds]
    if not counted:
        return DrawnLeft()
    on_plane = _taken(ground, counted, land)
    left = _figure(ground, "left_fraction", 1 - on_plane.taken_fraction, "fraction")
    width = None
    if on_plane.is_even and ground.width_ft is not None:
        width = left_out.LEFT_ALONG(
            f"{base}/left_width_ft", width_ft=ground.width_ft, left_fraction=left
        )
    kept = tuple(
        _kept_off(f"{base}/kept_off-{number}", ground, area, one, by_it, on_plane.start_deg)
        for number, (one, by_it) in enumerate(zip(counted, on_plane.each, strict=True), 1)
        if by_it.taken_fraction
    )
    return DrawnLeft(left, width, kept, kinds)


def _near(base: str, ground: PlantedGround, by_kind: KeptByKind, land: Around) -> Iterator[_Reach]:
    """Yield the reach of each thing that may lie within it, by the longest distance of its kind."""
    number = 0  # of those near alone: what lies far off moves no id
    for lies in land.things:
        kept = by_kind.get(lies.kind, ())
        if not kept or not near_to(ground, (lies,), _reach_ft(ground, lies, kept[0])):
            continue
        number += 1
        reach = left_out.REACH(
            f"{base}/reach-{number}/reach_ft",
            kept_ft=kept[0].distance_ft,
            thing_off_ft=lies.off,
            place_off_ft=off_ft(ground),
        )
        yield _Reach(lies, kept[0], reach)


def _reach_ft(ground: PlantedGround, lies: Lies, setback: Setback) -> float:
    return left_out.reach_ft(setback.distance_ft.value, lies.off.value, off_ft(ground).value)


def _taken(ground: PlantedGround, reaches: Sequence[_Reach], land: Around) -> _OnPlane:
    lying = lying_of(ground)
    assert lying is not None
    middle = land.middle or middle_of_plane(lying.points_lat_lon[0])
    return _on_plane(lying, tuple((one.lies.on_ground, one.reach.value) for one in reaches), middle)


# The same ground is sprayed in several seasons, and by several steps of one.
@lru_cache(maxsize=1024)
def _on_plane(
    lying: OnGround, reaches_ft: tuple[tuple[OnGround, float], ...], middle: LatLon
) -> _OnPlane:
    on_plane, holes = spots_of(lying, middle)
    frame = frame_of(on_plane)
    spots = frame.laid(on_plane)
    place, turn_deg = piece_on(lying, spots, list(map(frame.laid, holes))), frame.turn_deg
    if lying.is_outline:
        axis = axis_of_outline(spots, place, turn_deg)
    else:
        axis = Axis(tuple(spots), 2 * lying.half_width_ft, turn_deg)
    pieces = []
    for thing, reach_ft in reaches_ft:
        there, holes = spots_of(thing, middle)
        piece = piece_on(thing, frame.laid(there), list(map(frame.laid, holes)))
        pieces.append(reach_piece(piece, reach_ft, FINE_SIDES_OF_A_QUARTER))
    return _OnPlane(
        share_taken(place, pieces),
        axis is not None and runs_along(axis, place, pieces),
        axis.start_deg if axis is not None else 0.0,
        tuple(
            _TakenByOne(
                share_taken(place, [piece]),
                stretches_taken(axis, place, [piece]) if axis is not None else (),
            )
            for piece in pieces
        ),
    )


def _kept_off(
    base: str,
    ground: PlantedGround,
    area: Quantity,
    one: _Reach,
    by_it: _TakenByOne,
    start_deg: float,
) -> KeptOff:
    lost = left_out.LOST(
        f"{base}/lost_ac",
        area_ac=area,
        lost_fraction=_figure(ground, "lost_fraction", by_it.taken_fraction, "fraction"),
    )
    stretches = tuple(
        _stretch(f"{base}/stretch-{number}", ground, stretch, start_deg)
        for number, stretch in enumerate(by_it.stretches, 1)
    )
    thing = one.lies.thing
    return KeptOff(
        thing.id, thing.name, public_name(thing), one.setback, one.reach, lost, stretches
    )


def _stretch(base: str, ground: PlantedGround, taken: TakenStretch, start_deg: float) -> LeftOut:
    first = _figure(ground, "along_ft", taken.first_ft, "ft")
    last = _figure(ground, "along_ft", taken.last_ft, "ft")
    wide = _figure(ground, "across_ft", taken.widest_ft, "ft")
    return LeftOut(
        left_out.STRETCH_FROM(f"{base}/first_ft", along_ft=first),
        left_out.STRETCH_TO(f"{base}/last_ft", along_ft=last),
        left_out.STRETCH_WIDTH(f"{base}/wide_ft", across_ft=wide),
        start_deg,
        taken.side_deg,
    )


def _figure(ground: PlantedGround, name: str, value: float, unit: str) -> Measured:
    """Return a number that was measured on the points of a place and of what lies near it."""
    method = methods()[name]
    by_outline = ground.area_lat_lon is not None
    points = ground.area_lat_lon or ground.line_lat_lon
    assert points is not None
    return Measured(
        name,
        value,
        unit,
        method.words,
        len(points.every_lat_lon),
        method.source,
        points.where.file,
        points.where.line,
        # who may not see the points may not see what is measured on them
        rules_of(PlantedGround)["area_lat_lon" if by_outline else "line_lat_lon"].visible,
    )
