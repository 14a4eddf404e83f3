"""What lies near work that may harm it or be harmed: fire, what a cutter throws, a line above."""

from collections.abc import Iterator, Mapping, Sequence
from math import hypot

from generator.dataclass import dataclass
from generator.geometry.crossing import Spot
from generator.geometry.overlap import lies_on_the_side, near_each_other, shortest_way
from generator.geometry.plane import middle_of_plane, snapped_ft
from generator.inventory.land import LandThing
from generator.inventory.places import PlantedGround
from generator.inventory.plain_values import point_of_compass
from generator.inventory.schema import KeptUp
from generator.plan.findings.about_land import LandCaution
from generator.plan.findings.order import about_record, all_listed, finding
from generator.plan.land.lying import Thing, lying_of, piece_of
from generator.plan.land.off_points import off_ft
from generator.plan.model.finding import Finding, Subject, about_job
from generator.plan.model.job import Job, UpkeepJob
from generator.plan.model.plan import Plan
from generator.plan.placed.measured import measured_on
from generator.reference.land_kinds import land_kinds
from generator.reference.library import values
from generator.working import Figure, Measured, Reference

FROM_FIRE = ("dwelling", "building", "line_above", "woods", "road")
FROM_WHAT_IS_THROWN = ("dwelling", "road", "bees")
FROM_MACHINES = ("line_above",)
FROM_DIGGING = ("line_below",)
# Kinds that labels keep off for what water carries to them, by the words of the label card.
FROM_RUNOFF = ("open_water", "well", "sinkhole", "tile_inlet", "runoff_point")
AnyWork = Job | UpkeepJob
WorkedGround = PlantedGround | KeptUp
WASHES_OFF = ("spray", "fertilizer")


@dataclass(frozen=True, slots=True)
class _Near:
    """A thing of the land near a place, how far from it, and how far both may be off together.

    `way` is the way to it from the nearest part of the place, east and north, in feet.
    """

    thing: LandThing
    apart: Measured
    off_ft: float
    way: Spot


def work_findings(plan: Plan) -> Iterator[Finding]:
    """Yield what lies near the ground of work still ahead and must be kept from it."""
    every: tuple[AnyWork, ...] = (*plan.jobs, *plan.upkeep)
    ahead = [
        (one, ground) for one in every if one.state.is_ahead and (ground := _ground(plan, one))
    ]
    grounds = {ground.id: ground for _, ground in ahead}
    near = _near_grounds(plan, grounds)
    fire, thrown = values()["burn_told_within_ft"], values()["thrown_by_a_rotary_cutter_ft"]
    line, runoff = values()["off_overhead_lines_ft"], values()["runoff_told_within_ft"]
    buried = values()["buried_line_told_within_ft"]
    for work, ground in ahead:
        lies, does = near.get(ground.id, ()), work.step.does
        about = about_job(work.id) if isinstance(work, Job) else about_record(ground)
        if does.uses_fire:
            yield from _told(LandCaution.BURN_NEAR, about, _within(lies, FROM_FIRE, fire), fire)
        if does.by_machine and does.shears == "mown":
            hit = _within(lies, FROM_WHAT_IS_THROWN, thrown)
            yield from _told(LandCaution.THROWN_NEAR, about, hit, thrown)
        if does.digs:
            dug = _within(lies, FROM_DIGGING, buried)
            yield from _told(LandCaution.DUG_NEAR_A_LINE, about, dug, buried)
        if does.puts_down in WASHES_OFF and isinstance(ground, PlantedGround):
            yield from _runs_to(about, ground, lies, runoff)
    machines = {ground.id for work, ground in ahead if isinstance(work, Job) or _by_machine(work)}
    for ground_id in grounds:
        if ground_id in machines:
            above = _within(near.get(ground_id, ()), FROM_MACHINES, line)
            about = about_record(grounds[ground_id])
            yield from _told(LandCaution.UNDER_A_LINE, about, above, line)


def _ground(plan: Plan, work: AnyWork) -> WorkedGround | None:
    """Return the ground on which work is done; of another reader's place it is not known."""
    return plan.place(work.place_id).typed if isinstance(work, Job) else work.subject


def _by_machine(work: AnyWork) -> bool:
    return work.step.does.by_machine or work.step.does.digs


def _near_grounds(plan: Plan, grounds: Mapping[str, WorkedGround]) -> dict[str, tuple[_Near, ...]]:
    """Return what lies so near the ground of work that one of the distances may reach it."""
    kinds = {*FROM_FIRE, *FROM_WHAT_IS_THROWN, *FROM_MACHINES, *FROM_DIGGING, *_kinds_below()}
    things: list[Thing] = [*grounds.values()]
    things += [thing for thing in plan.land.things if thing.kind in kinds]
    lying = [(thing, lies) for thing in things if (lies := lying_of(thing)) is not None]
    farthest = max(
        values()[name].value
        for name in (
            "burn_told_within_ft",
            "thrown_by_a_rotary_cutter_ft",
            "runoff_told_within_ft",
        )
    )
    coarsest_ft = max((off_ft(thing).value for thing, _ in lying), default=0.0)
    found: dict[str, list[_Near]] = {}
    pairs = near_each_other([lies for _, lies in lying], farthest + 2 * coarsest_ft)
    for first, second in sorted(pairs):
        (ground, lies), (thing, lies_too) = lying[first], lying[second]
        if isinstance(thing, LandThing) and not isinstance(ground, LandThing):
            middle = middle_of_plane(plan.land.location_lat_lon or lies.points_lat_lon[0])
            way = shortest_way(piece_of(lies, middle), piece_of(lies_too, middle))
            apart = measured_on("apart_ft", snapped_ft(hypot(*way)), "ft", ground, thing)
            both_ft = off_ft(ground).value + off_ft(thing).value
            found.setdefault(ground.id, []).append(_Near(thing, apart, both_ft, way))
    return {name: tuple(near) for name, near in found.items()}


def _within(near: Sequence[_Near], kinds: Sequence[str], most: Reference) -> list[_Near]:
    """Return what of some kinds may be so near; what points may be off counts as nearer."""
    return [
        one
        for one in near
        if one.thing.kind in kinds and snapped_ft(one.apart.value - one.off_ft) <= most.value
    ]


def _kinds_below() -> list[str]:
    return [kind.id for kind in land_kinds().values() if kind.keeps in FROM_RUNOFF]


def _runs_to(
    about: Subject, ground: PlantedGround, near: Sequence[_Near], most: Reference
) -> Iterator[Finding]:
    """Yield what lies on the side to which the ground of a job falls, as far as that is known."""
    falls_to = ground.near.falls_to if ground.near is not None else None
    if falls_to is None:
        return
    below = [
        one
        for one in _within(near, _kinds_below(), most)
        if lies_on_the_side(one.way, falls_to.value)
    ]
    named = point_of_compass(falls_to.value)
    yield from _told(LandCaution.RUNS_TO_WATER, about, below, most, way=named)


def _told(
    reason: LandCaution, about: Subject, near: Sequence[_Near], most: Reference, **words: str
) -> Iterator[Finding]:
    if near:
        figures: tuple[tuple[str, Figure], ...] = (
            *((f"{one.thing.name}, apart", one.apart) for one in near),
            ("Told up to", most),
        )
        things = all_listed(one.thing.name for one in near)
        yield finding(reason, about, near[0].thing.where, figures, things=things, **words)
