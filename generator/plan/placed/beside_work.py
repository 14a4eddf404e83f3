"""What lies near work that may harm it or be harmed: fire, what a cutter throws, a line above."""

from collections.abc import Iterable, Iterator, Sequence
from math import hypot

from generator.dataclass import dataclass
from generator.geometry.crossing import Spot
from generator.geometry.overlap import lies_on_the_side, near_each_other, shortest_way
from generator.geometry.plane import middle_of_plane, snapped_ft
from generator.inventory.land import LandThing
from generator.inventory.places import PlantedGround
from generator.inventory.plain_values import point_of_compass
from generator.plan.findings.about_land import LandCaution
from generator.plan.findings.order import all_listed, finding
from generator.plan.land.lying import lying_of, piece_of
from generator.plan.land.off_points import off_ft
from generator.plan.model.finding import Finding, Subject, about_job, about_place
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.plan.placed.measured import measured_on
from generator.reference.land_kinds import land_kinds
from generator.reference.library import values
from generator.working import Figure, Measured, Reference

FROM_FIRE = ("dwelling", "building", "line_above", "woods", "road")
FROM_WHAT_IS_THROWN = ("dwelling", "road", "bees")
FROM_MACHINES = ("line_above",)
# Kinds that labels keep off for what water carries to them, by the words of the label card.
FROM_RUNOFF = ("open_water", "well", "sinkhole", "tile_inlet", "runoff_point")
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
    """Yield what lies near the places of jobs still ahead and must be kept from their work."""
    jobs = [job for job in plan.jobs if job.state.is_ahead]
    near = _near_places(plan, {job.place_id for job in jobs})
    fire, thrown = values()["burn_told_within_ft"], values()["thrown_by_a_rotary_cutter_ft"]
    line, runoff = values()["off_overhead_lines_ft"], values()["runoff_told_within_ft"]
    for job in jobs:
        lies, does = near.get(job.place_id, ()), job.step.does
        if does.uses_fire:
            reason = LandCaution.BURN_NEAR
            yield from _told(reason, about_job(job.id), _within(lies, FROM_FIRE, fire), fire)
        if does.by_machine and does.shears == "mown":
            reason = LandCaution.THROWN_NEAR
            hit = _within(lies, FROM_WHAT_IS_THROWN, thrown)
            yield from _told(reason, about_job(job.id), hit, thrown)
        if does.puts_down in WASHES_OFF:
            yield from _runs_to(plan, job, lies, runoff)
    for place_id, lies in near.items():
        above = _within(lies, FROM_MACHINES, line)
        yield from _told(LandCaution.UNDER_A_LINE, about_place(place_id), above, line)


def _near_places(plan: Plan, place_ids: Iterable[str]) -> dict[str, tuple[_Near, ...]]:
    """Return what lies so near the places of jobs that one of the distances may reach it."""
    typed = [place.typed for place in plan.places if place.id in set(place_ids)]
    kinds = {*FROM_FIRE, *FROM_WHAT_IS_THROWN, *FROM_MACHINES, *_kinds_below()}
    things: list[PlantedGround | LandThing] = [place for place in typed if place is not None]
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
        (place, lies), (thing, lies_too) = lying[first], lying[second]
        if isinstance(place, PlantedGround) and isinstance(thing, LandThing):
            middle = middle_of_plane(plan.land.location_lat_lon or lies.points_lat_lon[0])
            way = shortest_way(piece_of(lies, middle), piece_of(lies_too, middle))
            apart = measured_on("apart_ft", snapped_ft(hypot(*way)), "ft", place, thing)
            both_ft = off_ft(place).value + off_ft(thing).value
            found.setdefault(place.id, []).append(_Near(thing, apart, both_ft, way))
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


def _runs_to(plan: Plan, job: Job, near: Sequence[_Near], most: Reference) -> Iterator[Finding]:
    """Yield what lies on the side to which the ground of a job falls, as far as that is known."""
    typed = plan.place(job.place_id).typed
    falls_to = typed.near.falls_to if typed is not None and typed.near is not None else None
    if falls_to is None:
        return
    below = [
        one
        for one in _within(near, _kinds_below(), most)
        if lies_on_the_side(one.way, falls_to.value)
    ]
    named = point_of_compass(falls_to.value)
    yield from _told(LandCaution.RUNS_TO_WATER, about_job(job.id), below, most, way=named)


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
