"""Drawings of the ground: of a place, a job, a stand, a walk, and of all of it, from a plan.

Each is drawn from what that reader's plan holds, and from nothing else.
"""

import math
from collections.abc import Callable, Iterable, Sequence
from functools import partial

from markupsafe import Markup

from generator.book.charts.ground_drawn import GroundDrawing, GroundSheet, ground_drawn
from generator.book.charts.ground_frame import Corners, Frame, PlaneSpot, frame_around
from generator.book.charts.ground_told import ground_told, short_name, told_in
from generator.book.marks import printed
from generator.dataclass import dataclass
from generator.inventory.places import Route, Stand, hidden_by
from generator.plan.land.drawn import (
    BEGIN,
    GATE,
    GATE_ID,
    PARKING,
    PLACE,
    STAND,
    WALK,
    WALK_GATE,
    WATER_HOLE,
    GroundShape,
    begin_id,
    ground_shapes,
    kept_off_ground,
    start_ids,
)
from generator.plan.model.job import Job
from generator.plan.model.place import KeptOff, Place
from generator.plan.model.plan import Plan
from generator.reference.land_kinds import land_kinds

# The sheet in pixels: how wide, how high at the least and at the most, for part of the ground and
# for all of it; and the most bytes of either.
WIDE_PX, LEAST_PX, MOST_PX, MOST_OF_ALL_PX = 340.0, 190.0, 300.0, 420.0
EXCERPT_BYTES, WHOLE_BYTES = 11_500, 58_000
# Ground around what a drawing is of: a share of its size, so much at the least.
AROUND_FRACTION, LEAST_AROUND_FT = 0.2, 320.0
LEAST_AROUND_ALL_FT, AROUND_ALL_FRACTION = 60.0, 0.04
# Of them the words for whoever does not see it: of what lies there, and of what is hatched.
MOST_TOLD_BYTES = 2_300
HATCHED = "Hatched is what labels keep the spray off"
# What is drawn of it at the most; what is more is told in words.
MOST_THINGS, MOST_OF_ALL_THINGS = 24, 250
# What is called by its kind alone where it is in the legend.
SHAPE_WORDS = {
    PLACE: "place",
    STAND: "stand",
    WALK: "walk",
    WATER_HOLE: "water hole",
    GATE: "gate",
}
# What is named by what is done there, and drawn where a page is about it alone.
STARTS = {BEGIN: "where work begins", PARKING: "where to park", WALK_GATE: "where the walk goes in"}


@dataclass(frozen=True, slots=True)
class GroundPictured:
    """A drawing with its legend: numbers with names and kinds, and names it has no room for.

    `hatched` is what is left out around each thing.
    """

    svg: Markup
    legend: tuple[tuple[int, str, str], ...]
    left_out: tuple[str, ...]
    hatched: tuple[KeptOff, ...]


def place_ground(plan: Plan, place: Place) -> GroundPictured | None:
    """Return a place with what lies around it and the walks it hides; None without a shape."""
    hides = frozenset(hidden_by(place.typed)) if place.typed is not None else frozenset()
    sharing = {pair.one for pair in plan.shared_grounds if pair.other == place.id}
    sharing |= {pair.other for pair in plan.shared_grounds if pair.one == place.id}
    spoken_of = hides | sharing | {begin_id(place.id)}
    return _excerpt(
        plan,
        f"lay-{place.id}",
        (place.id,),
        lambda shape: shape.id in spoken_of or _is_in_the_open(shape),
    )


def job_ground(plan: Plan, job: Job) -> GroundPictured | None:
    """Return the place of a job, what lies around it, what labels keep off; None without it."""
    if job.kept_off:
        return _around(plan, job.place_id, tuple(kept_off_ground(plan, job.kept_off)))
    # the same on every other sheet of a place
    return plan.once(f"ground around {job.place_id}", partial(_around, place_id=job.place_id))


def _around(
    plan: Plan, place_id: str, kept_off: tuple[tuple[KeptOff, tuple[PlaneSpot, ...]], ...] = ()
) -> GroundPictured | None:
    begins = begin_id(place_id)
    return _excerpt(
        plan,
        f"lay-{place_id}",
        (place_id,),
        lambda shape: shape.id == begins or _is_in_the_open(shape),
        kept_off=kept_off,
    )


def stand_ground(plan: Plan, stand: Stand) -> GroundPictured | None:
    """Return a stand with its walks and all around it; None where its point is not typed."""
    walks = [route.id for route in plan.land.routes if stand.id in route.serves]
    spoken_of = {*walks, *(start for walk in walks for start in start_ids(walk))}
    return _excerpt(
        plan,
        f"lay-{stand.id}",
        (stand.id,),
        lambda shape: shape.id in spoken_of or shape.kind == PLACE or shape.kind in land_kinds(),
    )


def walk_ground(plan: Plan, route: Route) -> GroundPictured | None:
    """Return a walk with its stands and all around it; None where its line is not typed."""
    starts = start_ids(route.id)
    return _excerpt(
        plan,
        f"lay-{route.id}",
        (route.id,),
        lambda shape: (
            shape.id in (*starts, *route.serves)
            or shape.kind == PLACE
            or shape.kind in land_kinds()
        ),
        starts,
    )


def whole_ground(plan: Plan) -> GroundPictured | None:
    """Return all that lies somewhere in a plan; None where no more than the gate does."""
    every = [one for one in ground_shapes(plan).values() if one.kind not in STARTS]
    if all(one.kind == GATE for one in every):
        return None
    every.sort(key=_turn)
    shapes = every[:MOST_OF_ALL_THINGS]
    ground = _all_around(every)
    aside_ft = max(LEAST_AROUND_ALL_FT, AROUND_ALL_FRACTION * math.dist(*ground))
    ground = _grown(ground, aside_ft)
    frame = frame_around(ground, WIDE_PX, LEAST_PX, MOST_OF_ALL_PX)
    listed = ", ".join(short_name(one.name) for one in shapes[:MOST_THINGS])
    told = told_in(f"North is up. On it: {listed}.", MOST_TOLD_BYTES)
    drawn = ground_drawn(
        GroundSheet(
            "lay-all", "The whole ground", told, frame, tuple(shapes), frozenset(), WHOLE_BYTES
        )
    )
    return _pictured(drawn, every[MOST_OF_ALL_THINGS:])


def _excerpt(
    plan: Plan,
    name: str,
    subjects: tuple[str, ...],
    is_spoken_of: Callable[[GroundShape], bool],
    held: tuple[str, ...] = (),
    kept_off: tuple[tuple[KeptOff, tuple[PlaneSpot, ...]], ...] = (),
) -> GroundPictured | None:
    """Return part of the ground: its subjects, the gate, and what is spoken of around them.

    It is so large that the subjects, and what is `held` beside them, lie on it.
    """
    shapes = ground_shapes(plan)
    own = [shapes[one] for one in subjects if one in shapes]
    if not own:
        return None
    ground = _all_around([*own, *(shapes[one] for one in held if one in shapes)])
    aside_ft = max(LEAST_AROUND_FT, AROUND_FRACTION * math.dist(*ground))
    frame = frame_around(_grown(ground, aside_ft), WIDE_PX, LEAST_PX, MOST_PX)
    gate = shapes.get(GATE_ID)
    near = [
        one
        for one in shapes.values()
        if one.id not in subjects and one.id != GATE_ID and is_spoken_of(one)
        if _meet(one.corners, frame.corners)
    ]
    near.sort(key=lambda one: (_turn(one), _apart_ft(one.corners, ground)))
    is_on_it = gate is not None and _is_well_inside(gate, frame)
    shown = [*own, *([gate] if gate is not None and is_on_it else []), *near[:MOST_THINGS]]
    beyond = ((gate.name, gate.spots_ft[0]),) if gate is not None and not is_on_it else ()
    hatched = tuple({one.thing_id: one for one, _ in kept_off}.values())
    told = told_in(ground_told(own[0], shown[1:], beyond), MOST_TOLD_BYTES)
    drawn = ground_drawn(
        GroundSheet(
            name,
            f"{short_name(own[0].name)} and what lies around it",
            f"{told} {_hatched_told(hatched)}" if hatched else told,
            frame,
            tuple(shown),
            frozenset(subjects),
            EXCERPT_BYTES,
            beyond,
            tuple(outline for _, outline in kept_off),
        )
    )
    return _pictured(drawn, near[MOST_THINGS:], hatched)


def _pictured(
    drawn: GroundDrawing, too_many: Sequence[GroundShape], hatched: tuple[KeptOff, ...] = ()
) -> GroundPictured:
    legend = tuple((number, shape.name, _kind_told(shape)) for number, shape in drawn.numbered)
    left_out = (*drawn.left_out, *too_many)
    return GroundPictured(drawn.svg, legend, tuple(shape.name for shape in left_out), hatched)


def _hatched_told(hatched: Sequence[KeptOff]) -> str:
    """Return what is hatched, around what and how much of the place, in the digits of the sheet."""
    each = [
        f"{printed(one.reach)} around {short_name(one.name)}, {printed(one.lost)}"
        for one in hatched
        if one.reach is not None
    ]
    told = f"{HATCHED}: {'; '.join(each)}."
    return told if told_in(told, MOST_TOLD_BYTES) == told else f"{HATCHED}."


def _kind(shape: GroundShape) -> str:
    words = SHAPE_WORDS | STARTS
    return words[shape.kind] if shape.kind in words else land_kinds()[shape.kind].name


def _kind_told(shape: GroundShape) -> str:
    """Return the kind of a thing where its name does not say it."""
    kind = _kind(shape)
    return "" if shape.kind in (PLACE, *STARTS) or kind in shape.name.lower() else kind


def _is_in_the_open(shape: GroundShape) -> bool:
    """Return whether a shape is of a kind that tells nothing of deer."""
    kind = land_kinds().get(shape.kind)
    return kind is not None and not kind.private


def _turn(shape: GroundShape) -> int:
    """Return what is named before what: where work or a walk begins, then what is in danger."""
    if shape.kind in SHAPE_WORDS or shape.kind in STARTS:
        return 0
    return 1 if land_kinds()[shape.kind].danger else 2


def _all_around(shapes: Sequence[GroundShape]) -> Corners:
    wests, easts = _spread(one.corners for one in shapes)
    return wests, easts


def _spread(corners: Iterable[Corners]) -> Corners:
    lows, highs = zip(*corners, strict=True)
    return (
        (min(spot[0] for spot in lows), min(spot[1] for spot in lows)),
        (max(spot[0] for spot in highs), max(spot[1] for spot in highs)),
    )


def _grown(ground: Corners, by_ft: float) -> Corners:
    (west, south), (east, north) = ground
    return (west - by_ft, south - by_ft), (east + by_ft, north + by_ft)


def _meet(one: Corners, other: Corners) -> bool:
    (west, south), (east, north) = one
    (other_west, other_south), (other_east, other_north) = other
    return west < other_east and other_west < east and south < other_north and other_south < north


def _apart_ft(one: Corners, other: Corners) -> float:
    """Return how far two upright boxes lie apart, 0 where they meet."""
    (west, south), (east, north) = one
    (other_west, other_south), (other_east, other_north) = other
    return math.hypot(
        max(other_west - east, west - other_east, 0.0),
        max(other_south - north, south - other_north, 0.0),
    )


def _is_well_inside(shape: GroundShape, frame: Frame) -> bool:
    return _meet(shape.corners, _grown(frame.corners, -15 / frame.px_per_ft))
