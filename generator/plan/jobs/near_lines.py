"""Lines of safety on what dangerous lies near the place of a job, beside what was typed of it."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from generator.inventory.land import LandThing
from generator.inventory.places import PlantedGround
from generator.plan.jobs.safety import NEAR_LABELS
from generator.plan.land.kept_kinds import OTHER_KIND, kind_kept_from
from generator.plan.land.near import near_places
from generator.plan.model.finding import SafetyLine
from generator.plan.model.job import Job
from generator.plan.model.place import DangerNear
from generator.plan.model.work import Mix
from generator.reference.land_kinds import land_kinds
from generator.reference.library import values

# The typed line of a sheet that a kind of thing stands beside.
STANDS_BESIDE = {
    "creek": "water_and_wells",
    "pond": "water_and_wells",
    "wet_ground": "water_and_wells",
    "well": "water_and_wells",
    "sinkhole": "water_and_wells",
    "tile_inlet": "water_and_wells",
    "runoff_point": "water_and_wells",
    "line_above": "lines",
    "line_below": "lines",
    "dwelling": "neighbours",
    "neighbors_crop": "neighbours",
    "bees": "neighbours",
    "road": "neighbours",
}
# Of a road nothing is typed there, so it has a line of its own.
_OWN_LABELS = {"road": "Roads"}
FROM_THE_EDGE, _ON_IT = "from the edge", "on this ground or at its edge"


def with_near(
    jobs: tuple[Job, ...], places: Iterable[PlantedGround], things: tuple[LandThing, ...]
) -> tuple[Job, ...]:
    """Return jobs with what dangerous lies near their places, each on a line of safety.

    What lies farther off is told where a label in the tank keeps more from its kind.
    """
    told_ft = values()["danger_told_within_ft"].value
    kept_ft = {job.id: _kept_ft(job.mix) if job.mix is not None else {} for job in jobs}
    farthest_ft = max([told_ft, *(far for kept in kept_ft.values() for far in kept.values())])
    worked_on = {job.place_id for job in jobs}
    grounds = (place for place in places if place.id in worked_on)
    near = near_places(grounds, things, farthest_ft)
    return tuple(
        _with_near(job, near.get(job.place_id, ()), told_ft, kept_ft[job.id]) for job in jobs
    )


def _kept_ft(mix: Mix) -> dict[str, float]:
    """Return the longest distance a tank keeps from each kind of thing."""
    kept_ft: dict[str, float] = {}
    for part in mix.parts:
        for entries in (part.use.setbacks_ft, part.card.mixing_setbacks_ft):
            for setback in entries if isinstance(entries, tuple) else ():
                kind = kind_kept_from(setback)
                kept_ft[kind] = max(kept_ft.get(kind, 0.0), setback.distance_ft.value)
    return kept_ft


def _with_near(
    job: Job, around: Iterable[DangerNear], told_ft: float, kept_ft: Mapping[str, float]
) -> Job:
    kinds = land_kinds()
    near = tuple(
        thing
        for thing in around
        if thing.apart.value
        # what a label keeps from in words that name no kind may be any of them
        <= max(
            told_ft,
            kept_ft.get(OTHER_KIND, 0.0),
            kept_ft.get(kinds[thing.kind].keeps or OTHER_KIND, 0.0),
        )
    )
    if not near:
        return job
    lines = list(_lines(near))
    safety: list[SafetyLine] = []
    for typed in job.safety:
        safety += [line for beside, line in lines if f"near.{beside}" == typed.key]
        safety.append(typed)
    return replace(job, near=near, safety=tuple(safety))


def _lines(near: tuple[DangerNear, ...]) -> Iterator[tuple[str, SafetyLine]]:
    """Yield a line for each thing, with the typed one it stands before."""
    # numbered as they come: an id of the owner's would tell something of it
    for number, thing in enumerate(near, 1):
        beside = STANDS_BESIDE[thing.kind]
        label = _OWN_LABELS.get(thing.kind, NEAR_LABELS[beside])
        key = f"near.{thing.kind if thing.kind in _OWN_LABELS else beside}_there.{number}"
        if thing.apart.value:
            yield beside, SafetyLine(key, label, thing.name, thing.apart, after=FROM_THE_EDGE)
        else:
            yield beside, SafetyLine(key, label, f"{thing.name}, {_ON_IT}")
