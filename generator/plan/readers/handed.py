"""What the owner is told of each other reader: what is handed over, and what that gives away."""

import datetime
from collections.abc import Iterable, Iterator

from generator.inventory.dates import HUNTED, DateRange
from generator.inventory.schema import PARTNER, Reader
from generator.plan.jobs.job_days import open_span, taken_by
from generator.plan.model.days import Span, comes_back, holds_on
from generator.plan.model.job import Job, UpkeepJob
from generator.plan.model.plan import Handed, Land, Plan, ThingTold, WindowTold
from generator.plan.model.sits import KeepAway
from generator.plan.readers.land_shown import things_shown
from generator.plan.readers.partner import TOLD_TO_PARTNERS
from generator.plan.readers.released import Releasing
from generator.plan.readers.released_runs import runs_handed
from generator.plan.readers.seen_by import SEEN_CLASSES, handed_jobs, length_told
from generator.working import Quantity, bases, flat_inputs


def handed_over(plan: Plan, readers: tuple[Reader, ...]) -> tuple[Handed, ...]:
    """Return for each other reader what is handed over, and what of the hidden that tells."""
    return tuple(_handed(plan, reader, handed_jobs(plan.jobs, reader)) for reader in readers)


def _handed(plan: Plan, reader: Reader, jobs: list[Job]) -> Handed:
    things = {*reader.stands, *reader.routes}
    upkeep = [job for job in plan.upkeep if job.subject.id in things]
    work: list[Job | UpkeepJob] = [*jobs, *upkeep]
    return Handed(
        reader=reader.id,
        kind=reader.kind,
        name=reader.name,
        note=reader.note,
        job_ids=tuple(job.id for job in jobs),
        rest_on_hidden=_rest_on_hidden(plan, jobs, SEEN_CLASSES[reader.kind]),
        stand_ids=tuple(stand.id for stand in plan.land.stands if stand.id in reader.stands),
        route_ids=tuple(route.id for route in plan.land.routes if route.id in reader.routes),
        windows=tuple(told for job in work for told in _windows(plan.land, job, reader)),
        upkeep_ids=tuple(job.id for job in upkeep),
        kept_away=_kept_away(plan, jobs, reader),
        things=tuple(_things(plan, jobs, reader)),
    )


def _things(plan: Plan, jobs: list[Job], reader: Reader) -> Iterator[ThingTold]:
    """Yield the things of the land that a reader sees, in the owner's order."""
    near: dict[str, list[str]] = {}
    for job in jobs:
        for one in job.near:
            near.setdefault(one.thing_id, []).append(job.place_id)
    for thing in things_shown(plan.land.things, jobs, reader):
        yield ThingTold(
            thing.id,
            tuple(dict.fromkeys(near.get(thing.id, ()))),
            is_shown=reader.id in thing.shown_to,
            with_coordinates=reader.id in thing.coordinates_for,
        )


def _kept_away(plan: Plan, jobs: list[Job], reader: Reader) -> tuple[KeepAway, ...]:
    """Return the hours of sits that a reader is told of, by the owner's own ids."""
    told = {*(job.place_id for job in jobs), *reader.stands, *reader.routes}
    return tuple(keep for keep in plan.keep_away if keep.subject.id in told)


def _rest_on_hidden(
    plan: Plan, jobs: list[Job], seen: frozenset[str]
) -> tuple[tuple[Quantity, tuple[str, ...]], ...]:
    """Return every released number that rests on something hidden, those of workings included."""
    found: dict[str, tuple[Quantity, tuple[str, ...]]] = {}
    for job in jobs:
        # the rule that releases numbers, with old names as the new: this is read by the owner
        release = Releasing(seen, {job.place_id: job.place_id}, {})
        # the ground too, and its length: they stand on the sheet, also where the job is over
        place = plan.place(job.place_id)
        length = length_told(place)
        ground = (place.area, length) if length is not None else (place.area,)
        known: dict[int, set[str]] = {}
        for number in _resting(release, (*ground, *job.every_number()), set()):
            if hidden := _hidden_in(release, number, known):
                found.setdefault(number.identity, (number, tuple(sorted(hidden))))
    # of runs too, whose numbers rest on those of all their places
    release = Releasing(seen, {job.place_id: job.place_id for job in jobs}, {})
    known = {}
    for run in runs_handed(plan.runs, jobs):
        for number in _resting(release, run.numbers(), set()):
            if hidden := _hidden_in(release, number, known):
                found.setdefault(number.identity, (number, tuple(sorted(hidden))))
    return tuple(found.values())


def _resting(release: Releasing, tops: Iterable[Quantity], met: set[int]) -> Iterator[Quantity]:
    """Yield released numbers and all that their workings show, each once, before its own."""
    for number in tops:
        # a number is shared by many workings, and told once
        if id(number) not in met:
            met.add(id(number))
            yield number
            shown = (base for base in bases(number) if not release.keeps(base))
            yield from _resting(release, shown, met)


def _hidden_in(release: Releasing, number: Quantity, known: dict[int, set[str]]) -> set[str]:
    """Return the names of what a released number rests on and the reader does not see."""
    if id(number) not in known:
        found = known[id(number)] = set[str]()
        for name, figure in flat_inputs(number):
            if release.keeps(figure):
                found.add(figure.identity if isinstance(figure, Quantity) else name)
            elif isinstance(figure, Quantity):
                found |= _hidden_in(release, figure, known)
    return known[id(number)]


def _windows(land: Land, job: Job | UpkeepJob, reader: Reader) -> Iterator[WindowTold]:
    """Yield the dates that the days of a handed job give away and the reader is not told of."""
    span = open_span(job)
    where_id = job.subject.id if isinstance(job, UpkeepJob) else job.place_id
    if span[0] > span[1]:
        return
    # the sheet of a settled job names no day on which others hunt
    kinds = taken_by(job.step) if job.state.is_settled else (*taken_by(job.step), *HUNTED)
    for dates in land.dates:
        holds = dates.kind in kinds and holds_on(dates.places, where_id)
        spans = comes_back(dates, span) if holds and not _is_told(dates, reader) else ()
        if spans:
            yield WindowTold(job.id, dates, spans, _ends(spans, span))


def _is_told(dates: DateRange, reader: Reader) -> bool:
    """Return whether a reader is told of dates that hold on what they are handed."""
    return reader.kind == PARTNER and dates.kind in TOLD_TO_PARTNERS


def _ends(spans: tuple[Span, ...], window: Span) -> tuple[datetime.date, ...]:
    """Return first and last days that lie within the open dates, where they can be told."""
    # the spans are cut to the window: one that reaches its edge may begin before or end after it
    firsts = (first for first, _ in spans if first > window[0])
    lasts = (last for _, last in spans if last < window[1])
    return tuple(sorted({*firsts, *lasts}))
