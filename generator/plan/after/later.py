"""Entries later than the plan's day: the jobs whose amounts they may change stop until they count.

A spraying or a sowing weighs on its ground and a load or a clean-out on its sprayer; other work on
its own job. An entry that does not say where it was may have been anywhere. A correction weighs
with what it corrects: that may be where it belongs, or where it never was.
"""

import datetime
from collections.abc import Iterable, Iterator, Mapping

from generator.dataclass import dataclass
from generator.inventory.equipment import Sprayer
from generator.inventory.fields import Where
from generator.inventory.log import LogEntry
from generator.inventory.places import PlantedGround
from generator.inventory.schema import Inventory, Workers
from generator.inventory.season import season_of
from generator.plan.findings.about_after import AfterNote, AfterStop
from generator.plan.findings.order import finding
from generator.plan.findings.words import Stop
from generator.plan.jobs.request import JobRequest
from generator.plan.log.done import entries_on
from generator.plan.log.entries import not_yet
from generator.plan.log.told import Sprayings, sprayings_of
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding, Subject, about_job
from generator.plan.model.job import JobState, UpkeepJob
from generator.plan.spraying.tank_log import may_be_own, sprayer_of

SOWN_ITEMS = ("lots", "plants")


@dataclass(frozen=True, slots=True)
class _Weight:
    """What one later thing is, in words, and what it weighs on; None is all that there is."""

    told: str
    day: datetime.date
    where: Where
    entries: tuple[LogEntry, ...] = ()
    sprayed_on: frozenset[str] | None = frozenset()
    sown_on: frozenset[str] | None = frozenset()
    sprayers: frozenset[str] | None = frozenset()
    entry: str = ""


def later_findings(
    requests: Iterable[JobRequest],
    states: Mapping[str, JobState],
    upkeep: Iterable[UpkeepJob],
    inventory: Inventory,
    as_of: datetime.date,
    grounds: Mapping[str, frozenset[str]],
) -> Iterator[Finding]:
    """Yield stops on jobs that later entries weigh on, and a note on every later entry.

    `grounds` are the places on whose ground each place lies.
    """
    later = not_yet(inventory.entries, as_of)
    weights = (
        *_weights(later, inventory),
        *_typed_loads(inventory.sprayers, inventory.entries, as_of),
    )
    for request in requests:
        # what is settled prints no amount that a later entry could change
        if not states[request.job_id].is_settled:
            yield from _stops(request, weights, grounds[request.ground.id], as_of)
    for job in upkeep:
        done = [
            weight for weight in weights if any(_keeps_up(entry, job) for entry in weight.entries)
        ]
        if done and not job.state.is_settled:
            yield _stop(AfterStop.WORKED_LATER, Subject("upkeep", job.id), done, as_of)
    for entry in later:
        yield finding(
            AfterNote.ENTRY_LATER,
            Subject("entry", entry.id),
            entry.where,
            entry=entry.id,
            day=day_words(entry.done_on),
            latest=entry.done_on.isoformat(),
        )


def sprayed_later(
    inventory: Inventory, as_of: datetime.date, grounds: Mapping[str, frozenset[str]]
) -> Mapping[str, str]:
    """Return by place what of its sprayings does not count yet, for answers that rest on all."""
    later = _weights(not_yet(inventory.entries, as_of), inventory)
    found: dict[str, str] = {}
    for place in inventory.places():
        days = [weight.day for weight in later if _may_hold(weight.sprayed_on, grounds[place.id])]
        if days:
            named = ", ".join(day_words(day) for day in sorted(set(days)))
            found[place.id] = (
                f"Sprayed after the day of this plan, by the log: {named}. Build the book with a "
                "later day."
            )
    return found


def _weights(later: Iterable[LogEntry], inventory: Inventory) -> tuple[_Weight, ...]:
    sprayings = sprayings_of(inventory)
    return tuple(_weight(entry, inventory, sprayings) for entry in later)


def _weight(entry: LogEntry, inventory: Inventory, sprayings: Sprayings) -> _Weight:
    told = _with_corrected(entry, inventory.entries)
    # of the corrected as well: which of them holds is known only once the correction counts
    sprayed = [log_entry for log_entry in told if sprayings.tells(log_entry)]
    sown = [log_entry for log_entry in told if _sows(log_entry, inventory)]
    loaded = _all_of(
        _sprayer(spraying, inventory.places(), inventory.workers()) for spraying in sprayed
    )
    cleaned = {
        log_entry.cleaned_out.sprayer for log_entry in told if log_entry.cleaned_out is not None
    }
    return _Weight(
        told=day_words(entry.done_on),
        entry=entry.id,
        day=entry.done_on,
        where=entry.where,
        entries=tuple(log_entry for log_entry in told if _is_work(log_entry)),
        sprayed_on=_all_of(sprayings.places_of(spraying) for spraying in sprayed),
        sown_on=_all_of(_sown_on(sowing, sprayings) for sowing in sown),
        sprayers=None if loaded is None else loaded | cleaned,
    )


def _all_of(parts: Iterable[frozenset[str] | None]) -> frozenset[str] | None:
    """Return all parts together, None where one of them is not known."""
    together: frozenset[str] = frozenset()
    for part in parts:
        if part is None:
            return None
        together |= part
    return together


def _with_corrected(entry: LogEntry, entries: tuple[LogEntry, ...]) -> tuple[LogEntry, ...]:
    by_id = {log_entry.id: log_entry for log_entry in entries}
    told = [entry]
    while (corrected := told[-1].corrects) is not None and by_id[corrected] not in told:
        told.append(by_id[corrected])
    return tuple(told)


def _sows(entry: LogEntry, inventory: Inventory) -> bool:
    seed = {item.id for name in SOWN_ITEMS for item in getattr(inventory, name)}
    told = entry.seeded is not None or any(used.item in seed for used in entry.used)
    # an answer, or a sowing put off, has put nothing into the ground
    return told or (_brings_plants(entry, inventory) and _tells_of_ground(entry))


def _tells_of_ground(entry: LogEntry) -> bool:
    return entry.job is not None and bool(entry.job.finished or entry.job.area_ac is not None)


def _is_work(entry: LogEntry) -> bool:
    """Whether an entry tells of work: what was only seen or counted changes no amount of a job."""
    did = (entry.sprayed, entry.seeded, entry.mowed, entry.burned)
    said = entry.job is not None and (_tells_of_ground(entry) or entry.job.answer is not None)
    return said or bool(entry.used or entry.upkeep) or any(work is not None for work in did)


def _brings_plants(entry: LogEntry, inventory: Inventory) -> bool:
    return entry.job is not None and any(
        step.does.brings_plants
        for place in inventory.places()
        for planting in place.plantings
        if planting.id == entry.job.planting
        for step in inventory.steps_of(planting)
        if step.id == entry.job.step
    )


def _sown_on(entry: LogEntry, sprayings: Sprayings) -> frozenset[str] | None:
    """Return the place an entry was sown on, None where it does not say."""
    if entry.job is None:
        return None
    return frozenset({sprayings.places[entry.job.planting]})


def _sprayer(
    entry: LogEntry, places: tuple[PlantedGround, ...], workers: Workers
) -> frozenset[str] | None:
    """Return the sprayer a spraying went through, None where it may have been any."""
    named = sprayer_of(entry, places)
    if named is None:
        # through somebody else's sprayer it changes no tank of the owner's
        return None if may_be_own(entry, workers) else frozenset()
    return frozenset({named})


def _typed_loads(
    sprayers: tuple[Sprayer, ...], entries: tuple[LogEntry, ...], as_of: datetime.date
) -> Iterator[_Weight]:
    """Yield last loads and clean-outs typed with a sprayer, of days after the plan's."""
    logged = {entry.where for entry in entries}
    for sprayer in sprayers:
        load = sprayer.last_load
        # what the log put in its place is weighed there, as an entry
        typed = load if load is not None and load.where not in logged else None
        days = [sprayer.cleaned_out_on]
        days += [typed.sprayed_on, typed.cleaned_out_on] if typed is not None else []
        last = max((day for day in days if day is not None), default=as_of)
        if last > as_of:
            where = typed.where if typed is not None else sprayer.where
            told = f"{sprayer.name}, as noted with it, {day_words(last)}"
            yield _Weight(told, last, where, sprayers=frozenset({sprayer.id}))


def _stops(
    request: JobRequest, weights: Iterable[_Weight], here: frozenset[str], as_of: datetime.date
) -> Iterator[Finding]:
    """Yield the stops on a job, each later thing under the first of the reasons it gives."""
    found: dict[Stop, list[_Weight]] = {}
    for weight in weights:
        reason = _reason(request, weight, here)
        if reason is not None:
            found.setdefault(reason, []).append(weight)
    for reason, by in found.items():
        yield _stop(reason, about_job(request.job_id), by, as_of)


def _reason(request: JobRequest, weight: _Weight, here: frozenset[str]) -> Stop | None:
    # its own work first: that it may be done already says more than what it may harm
    if entries_on(request, weight.entries):
        return AfterStop.WORKED_LATER
    if _may_hold(weight.sprayed_on, here):
        return AfterStop.SPRAYED_LATER
    if _may_hold(weight.sown_on, here):
        return AfterStop.SOWN_LATER
    if request.step.does.sprays and _may_go_through(request, weight.sprayers):
        return AfterStop.TANK_LATER
    return None


def _may_hold(places: frozenset[str] | None, here: frozenset[str]) -> bool:
    # not known where counts as here
    return places is None or bool(places & here)


def _may_go_through(request: JobRequest, sprayers: frozenset[str] | None) -> bool:
    """Whether a job's sprayer may be one of some; without one typed, no amount is worked out."""
    planned = request.work.sprayer if request.work is not None else None
    return planned is not None and (sprayers is None or planned in sprayers)


def _keeps_up(entry: LogEntry, job: UpkeepJob) -> bool:
    return any(
        (upkeep.at, upkeep.step) == (job.subject.id, job.step.id)
        and (upkeep.season or season_of(entry.done_on)) == job.season
        for upkeep in entry.upkeep
    )


def _stop(reason: Stop, subject: Subject, by: list[_Weight], as_of: datetime.date) -> Finding:
    first, ids = min(by, key=lambda weight: (weight.day, weight.told)), [one.entry for one in by]
    return finding(
        reason,
        subject,
        first.where,
        as_of=day_words(as_of),
        told="; ".join(
            dict.fromkeys(
                weight.told for weight in sorted(by, key=lambda weight: (weight.day, weight.told))
            )
        ),
        entries="".join(f"Log entry {name}. " for name in sorted(filter(None, ids))),
        # a plan of any day before the last of them would still leave one out
        latest=max(weight.day for weight in by).isoformat(),
    )
