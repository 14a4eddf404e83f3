"""Sowings held back by what was or will be sprayed on the same ground, and everything decided."""

import datetime
from collections.abc import Iterable, Iterator, Mapping

from generator.compute.waiting import DAYS_SHORT
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.day_words import day_words
from generator.plan.decided import Decided
from generator.plan.decisions import count_findings, planting_counts
from generator.plan.done import entries_on, finished_on
from generator.plan.findings import finding
from generator.plan.model import Finding, Place
from generator.plan.residues import (
    UP_TO_SOWING,
    Residue,
    Wanted,
    day_after,
    place_waits,
    residues,
    sprayed_nowhere,
    wait_of,
)
from generator.plan.stops import Stop
from generator.reference.load import species
from generator.working import Given, Reference

SOWN_BY = ("sow", "plant")


def decide(
    inventory: Inventory,
    places: Mapping[str, Place],
    ever: Iterable[JobAsked],
    season: int,
    entries: tuple[LogEntry, ...],
    as_of: datetime.date,
    sprayed_later: Mapping[str, str],
) -> tuple[Decided, list[Finding]]:
    """Return what counts and labels say of every place, and what is to be told of it.

    `sprayed_later` says by place what of its sprayings is later than the plan's day: nothing can
    be said there of when what may be sown.
    """
    jobs = tuple(ever)
    sprayed = residues(jobs, inventory, entries)
    waits = tuple(
        one.not_answered(sprayed_later[one.place_id]) if one.place_id in sprayed_later else one
        for one in place_waits(inventory, sprayed)
    )
    counts = planting_counts(inventory, places.values(), entries)
    found = [
        one
        for asked in jobs
        if asked.season == season and asked.step.operation in SOWN_BY
        if finished_on(entries_on(asked, entries)) is None
        for one in _held_back(asked, sprayed, as_of)
    ]
    found += count_findings(counts, waits, as_of)
    nowhere = sprayed_nowhere(inventory, entries)
    return Decided(counts, waits, nowhere, inventory.property.noxious), found


def _held_back(
    asked: JobAsked, sprayed: tuple[Residue, ...], as_of: datetime.date
) -> Iterator[Finding]:
    kinds = frozenset({asked.kind, *(species()[one].kind for one in asked.species)})
    wanted = Wanted(kinds, asked.species)
    for number, residue in enumerate(sprayed, 1):
        if not _comes_before(residue, asked):
            continue
        wait = wait_of(residue, wanted)
        if wait.unknown and residue.spraying.logged:
            assert residue.spraying.last is not None
            day = day_words(residue.spraying.last)
            yield finding(Caution.WAIT_NOT_KNOWN, asked.job_id, day=day, unknown=wait.unknown)
        elif (
            wait.days is not None
            and not _held_by_its_job(asked, residue, wait.days)
            and not _waited_for(residue, wait.days, as_of)
        ):
            yield from _too_soon(asked, residue, wait.days, number)


def _comes_before(residue: Residue, asked: JobAsked) -> bool:
    """Whether a spraying lies on the ground before a sowing, as far as the days are known."""
    spraying = residue.spraying
    if spraying.place_id != asked.ground.id:
        return False
    own = spraying.planting_id == asked.planting.id
    if own and residue.after_sowing and asked.step.timing in UP_TO_SOWING:
        return False
    closes = asked.dates.closes
    return spraying.first is None or closes is None or spraying.first <= closes


def _held_by_its_job(asked: JobAsked, residue: Residue, wait: Given) -> bool:
    """Whether a planned spraying is stopped itself where it leaves its own sowing too few days."""
    own = residue.spraying.planting_id == asked.planting.id and not residue.spraying.logged
    return own and any(use.seeding_interval_days is wait for use in residue.uses)


def _waited_for(residue: Residue, wait: Given, as_of: datetime.date) -> bool:
    """Whether the days a label asks for after a logged spraying are over."""
    spraying = residue.spraying
    return spraying.logged and spraying.last is not None and day_after(spraying.last, wait) <= as_of


def _too_soon(asked: JobAsked, residue: Residue, wait: Given, number: int) -> Iterator[Finding]:
    spraying, opens = residue.spraying, asked.dates.opens
    if spraying.last is None or opens is None or day_after(spraying.last, wait) <= opens:
        return
    between = Reference(
        "between_days",
        (opens - spraying.last).days,
        "days",
        "arithmetic",
        f"from {day_words(spraying.last)} to {day_words(opens)}",
    )
    short = DAYS_SHORT(
        f"{asked.job_id}/wait-{number}.short_days", wait_days=wait, between_days=between
    )
    yield finding(
        Stop.SOWN_IN_RESIDUE,
        asked.job_id,
        residue.product.where if residue.product is not None else None,
        (("The label asks for", wait), ("There are", between), ("Too soon by", short)),
        product=spraying.product_name,
        sprayed="was sprayed" if spraying.logged else "is planned to be sprayed",
        day=f"on {day_words(spraying.last)}"
        if spraying.logged
        else f"as late as {day_words(spraying.last)}",
        earliest=day_words(day_after(spraying.last, wait)),
        opens=day_words(opens),
    )
