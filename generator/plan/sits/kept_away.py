"""The hours in which others keep off the ground of a sit, thing by thing, and on which sheets."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from typing import TypeVar

from generator.inventory.places import Route
from generator.inventory.schema import Inventory
from generator.inventory.sits import Sit
from generator.plan.findings.order import about_record
from generator.plan.jobs.job_days import open_span
from generator.plan.land.lying import Thing, lying_of
from generator.plan.model.finding import SafetyLine
from generator.plan.model.job import Job, UpkeepJob
from generator.plan.model.plan import grouped
from generator.plan.model.sits import KEEP_AWAY, KeepAway, away_words
from generator.plan.sits.in_the_arc import fire_of, meets
from generator.plan.sits.sits_ahead import hours_of

_Work = TypeVar("_Work", Job, UpkeepJob)


def kept_away(inventory: Inventory, sits: Iterable[Sit]) -> tuple[KeepAway, ...]:
    """Return when nobody but who sits there goes to or on a thing, in the order of the sits.

    Only what is known to lie clear of an arc is left out.
    """
    lying = [(thing, lying_of(thing)) for thing in _things(inventory)]
    stands = {stand.id: stand for stand in inventory.stands}
    found: list[KeepAway] = []
    for sit in sits:
        stand = stands[sit.stand]
        fire = fire_of(sit, stand)
        for thing, where in lying:
            inside = True if _leads_to(thing, sit) else meets(fire, where, stand, thing)
            if inside is not False:
                found.append(
                    KeepAway(
                        about_record(thing),
                        sit.sits_on,
                        hours_of(sit),
                        is_known=inside is True,
                        sit_ids=(sit.id,),
                    )
                )
    return tuple(found)


def _leads_to(thing: Thing, sit: Sit) -> bool:
    """Return whether a thing is the stand of a sit or a walk that ends at it."""
    return thing.id == sit.stand or (isinstance(thing, Route) and sit.stand in thing.serves)


def with_hours_away(jobs: Iterable[_Work], away: Iterable[KeepAway]) -> tuple[_Work, ...]:
    """Return jobs with a line of safety on the hours of their days in which nobody goes there."""
    by_thing: Mapping[str, tuple[KeepAway, ...]] = grouped((keep.subject.id, keep) for keep in away)
    return tuple(_with_hours(job, by_thing) for job in jobs)


def _with_hours(job: _Work, by_thing: Mapping[str, tuple[KeepAway, ...]]) -> _Work:
    thing_id = job.subject.id if isinstance(job, UpkeepJob) else job.place_id
    first, last = open_span(job)
    on_its_days = [keep for keep in by_thing.get(thing_id, ()) if first <= keep.day <= last]
    if job.state.is_settled or not on_its_days:
        return job
    line = SafetyLine(KEEP_AWAY, "Another hunter's ground, do not go here", away_words(on_its_days))
    return replace(job, safety=(line, *job.safety))


def pointless(inventory: Inventory, away: Iterable[KeepAway]) -> Iterator[Thing]:
    """Yield what may lie in an arc because it has no points, in the order of the files."""
    doubtful = {keep.subject.id for keep in away if not keep.is_known}
    yield from (
        thing for thing in _things(inventory) if thing.id in doubtful and lying_of(thing) is None
    )


def _things(inventory: Inventory) -> tuple[Thing, ...]:
    return (
        *inventory.places(),
        *inventory.stands,
        *inventory.routes,
        *inventory.water_holes,
    )
