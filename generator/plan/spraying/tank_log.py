"""What each sprayer held last, as the log and what is typed with the sprayer say it together.

A clean-out counts after a load where it is of a later day, stands in the same entry, or says so. A
spraying that names no sprayer may have gone through any of them. Entries of several places that say
they were sprayed from one load are that one load.
"""

import datetime
from collections.abc import Iterable
from dataclasses import replace

from generator.dataclass import dataclass
from generator.inventory.equipment import LastLoad, Sprayer
from generator.inventory.log import LogEntry
from generator.inventory.places import PlantedGround
from generator.inventory.schema import Inventory, Workers
from generator.plan.jobs.licenses import was_hired
from generator.plan.log.told import Sprayings


@dataclass(frozen=True, slots=True)
class _Cleaned:
    """A clean-out: `after` says that it came after every load of its day.

    `load` is the load in one of whose entries it stands.
    """

    day: datetime.date
    after: bool
    load: str = ""


def load_of_entry(entry: LogEntry) -> str:
    """Return the id of the load an entry is of: that of the first entry of it."""
    said = entry.sprayed.same_load_as if entry.sprayed is not None else None
    return said or entry.id


def with_logged_loads(
    inventory: Inventory, entries: tuple[LogEntry, ...], told: Sprayings
) -> Inventory:
    """Return the inventory with every sprayer's last load as sprayer and log say it together."""
    sprayings = tuple(entry for entry in entries if told.tells(entry))
    sprayers = tuple(
        _with_load(
            sprayer,
            _through(sprayer, sprayings, inventory.workers(), inventory.places()),
            _clean_outs(sprayer, entries),
            told,
        )
        for sprayer in inventory.sprayers
    )
    return replace(inventory, sprayers=sprayers)


def _with_load(
    sprayer: Sprayer, loads: list[LogEntry], cleaned: list[_Cleaned], told: Sprayings
) -> Sprayer:
    typed = sprayer.last_load
    left = [load for load in loads if not any(_cleans(clean, load) for clean in cleaned)]
    still = typed if typed is not None and not _typed_is_clean(typed, cleaned) else None
    if left or still is not None:
        return replace(sprayer, last_load=_held(sprayer, left, still, cleaned, told))
    last_day = max((clean.day for clean in cleaned), default=None)
    # of the same day the log tells it
    if typed is not None and not any(load.done_on >= typed.sprayed_on for load in loads):
        return replace(sprayer, last_load=replace(typed, cleaned_out_on=last_day))
    if not loads:
        return sprayer
    return replace(sprayer, last_load=_load(loads[-1:], None, last_day, told))


def _held(
    sprayer: Sprayer,
    left: list[LogEntry],
    typed: LastLoad | None,
    cleaned: list[_Cleaned],
    told: Sprayings,
) -> LastLoad:
    """Return all that went in since the tank was cleaned out last: each may have left a trace."""
    if not left:
        assert typed is not None
        return replace(typed, unknown=typed.unknown or _is_mute(typed))
    load = _load(left, typed, None, told)
    # before the first load that is known it may have held anything
    before = not (sprayer.last_load or sprayer.new or cleaned)
    return replace(load, unknown=True) if before else load


def _load(
    entries: list[LogEntry],
    typed: LastLoad | None,
    cleaned_out_on: datetime.date | None,
    told: Sprayings,
) -> LastLoad:
    names = [name for entry in entries for name in told.products_of(entry)]
    mute = any(not told.products_of(entry) for entry in entries)
    of_typed = typed is not None and (typed.unknown or _is_mute(typed))
    last = max(entries, key=lambda entry: (entry.done_on, entry.id))
    days = [last.done_on, *([typed.sprayed_on] if typed is not None else [])]
    return LastLoad(
        where=last.where,
        # the latest of all that may be in it: a clean-out has to come after every one
        sprayed_on=max(days),
        product=tuple(dict.fromkeys([*(typed.product if typed is not None else ()), *names])),
        works_as=typed.works_as if typed is not None else (),
        unknown=mute or of_typed or None,
        cleaned_out_on=cleaned_out_on,
    )


def _is_mute(load: LastLoad) -> bool:
    return not (load.product or load.works_as)


def _through(
    sprayer: Sprayer,
    sprayings: Iterable[LogEntry],
    workers: Workers,
    places: tuple[PlantedGround, ...],
) -> list[LogEntry]:
    """Return the sprayings that went, or may have gone, through a sprayer."""
    sprayings = list(sprayings)
    by_load = {entry.id: sprayer_of(entry, places) for entry in sprayings}
    return [
        entry
        for entry in sprayings
        if (named := sprayer_of(entry, places) or by_load.get(load_of_entry(entry))) == sprayer.id
        or (named is None and may_be_own(entry, workers))
    ]


def may_be_own(entry: LogEntry, workers: Workers) -> bool:
    """Whether a spraying that names no sprayer may have gone through one of the owner's.

    Who sprays for hire brings a sprayer (common practice).
    """
    said_so = entry.sprayed is not None and entry.sprayed.own_sprayer is False
    return not (said_so or was_hired(entry, workers))


def _clean_outs(sprayer: Sprayer, entries: Iterable[LogEntry]) -> list[_Cleaned]:
    typed = sprayer.last_load.cleaned_out_on if sprayer.last_load is not None else None
    days = [day for day in (typed, sprayer.cleaned_out_on) if day is not None]
    logged = [
        _Cleaned(entry.done_on, entry.cleaned_out.after_last_load is True, load_of_entry(entry))
        for entry in entries
        if entry.cleaned_out is not None and entry.cleaned_out.sprayer == sprayer.id
    ]
    return [*(_Cleaned(day, after=False) for day in days), *logged]


def _cleans(clean: _Cleaned, load: LogEntry) -> bool:
    # of one day nobody knows which came first, unless that is said or one load holds both
    same_day = clean.day == load.done_on and (clean.after or clean.load == load_of_entry(load))
    return clean.day > load.done_on or same_day


def _typed_is_clean(typed: LastLoad, cleaned: Iterable[_Cleaned]) -> bool:
    """Whether a typed load was cleaned out; a day typed beside the load is after it."""
    own = typed.cleaned_out_on
    later = any(
        clean.day > typed.sprayed_on or (clean.day == typed.sprayed_on and clean.after)
        for clean in cleaned
    )
    return later or (own is not None and own >= typed.sprayed_on)


def sprayer_of(entry: LogEntry, places: tuple[PlantedGround, ...]) -> str | None:
    """Return the sprayer an entry says, else the one its job was planned with."""
    said, job = entry.sprayed, entry.job
    # said to be another's, it must not be put through the sprayer that was planned
    if said is not None and (said.sprayer is not None or said.own_sprayer is False):
        return said.sprayer
    if job is None:
        return None
    return next(
        (
            work.sprayer
            for place in places
            for planting in place.plantings
            if planting.id == job.planting
            for work in planting.work
            if work.step == job.step
        ),
        None,
    )
