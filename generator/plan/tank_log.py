"""What the log says each sprayer held last, where that is later than what is typed of it."""

import datetime
from collections.abc import Iterable
from dataclasses import replace

from generator.inventory.equipment import LastLoad, Sprayer
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory


def with_logged_loads(inventory: Inventory, entries: tuple[LogEntry, ...]) -> Inventory:
    """Return the inventory with every sprayer's last load as sprayer and log say it together."""
    sprayers = tuple(_with_load(one, inventory, entries) for one in inventory.sprayers)
    return replace(inventory, sprayers=sprayers)


def is_logged(load: LastLoad, entries: Iterable[LogEntry]) -> bool:
    """Return whether a last load is one of the log's rather than typed with the sprayer."""
    return any(one.where == load.where for one in entries)


def _with_load(sprayer: Sprayer, inventory: Inventory, entries: tuple[LogEntry, ...]) -> Sprayer:
    typed = sprayer.last_load
    loads = [one for one in entries if sprayer_of(one, inventory) == sprayer.id]
    cleaned = _last_cleaned(sprayer, entries)
    if not loads:
        return replace(sprayer, last_load=_cleaned(typed, cleaned)) if typed else sprayer
    last = loads[-1]
    if typed is not None and typed.sprayed_on > last.done_on:
        return replace(sprayer, last_load=_cleaned(typed, cleaned))
    # what went in since the tank was cleaned out last, all of it may have left a trace
    since = [one for one in loads if cleaned is None or one.done_on > cleaned] or [last]
    of_typed = typed is not None and (cleaned is None or typed.sprayed_on > cleaned)
    before = typed if of_typed else None
    load = LastLoad(
        where=last.where,
        sprayed_on=last.done_on,
        product=tuple(
            dict.fromkeys([*(before.product if before else ()), *_products(since, inventory)])
        ),
        works_as=before.works_as if before is not None else (),
        cleaned_out_on=cleaned,
    )
    return replace(sprayer, last_load=load)


def _cleaned(typed: LastLoad, cleaned: datetime.date | None) -> LastLoad:
    return replace(typed, cleaned_out_on=cleaned)


def _last_cleaned(sprayer: Sprayer, entries: tuple[LogEntry, ...]) -> datetime.date | None:
    typed = sprayer.last_load.cleaned_out_on if sprayer.last_load is not None else None
    logged = [
        one.done_on
        for one in entries
        if one.cleaned_out is not None and one.cleaned_out.sprayer == sprayer.id
    ]
    return max([*logged, *([typed] if typed is not None else [])], default=None)


def sprayer_of(entry: LogEntry, inventory: Inventory) -> str | None:
    """Return the sprayer an entry says, else the one its job was planned with."""
    if entry.sprayed is not None and entry.sprayed.sprayer is not None:
        return entry.sprayed.sprayer
    job = entry.job
    if job is None or not (entry.sprayed is not None or _products([entry], inventory)):
        return None
    return next(
        (
            work.sprayer
            for place in inventory.places()
            for planting in place.plantings
            if planting.id == job.planting
            for work in planting.work
            if work.step == job.step
        ),
        None,
    )


def _products(entries: Iterable[LogEntry], inventory: Inventory) -> list[str]:
    known = {one.id for one in inventory.products}
    return [one.item for entry in entries for one in entry.used if one.item in known]
