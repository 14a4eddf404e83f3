"""Everything in the log that cannot be, or hardly: asked on its page, and as it is written."""

import datetime
from functools import cache

from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory, SeasonMarkers
from generator.plan.doubts.doubt import Doubt, confirmations
from generator.plan.doubts.doubt_days import Markers, days_that_do_not_fit
from generator.plan.doubts.doubt_signs import signs_in_question
from generator.plan.doubts.doubt_stock import more_used_than_there
from generator.plan.doubts.doubt_twice import said_twice
from generator.plan.doubts.doubt_wind import winds_in_question
from generator.plan.findings.order import finding, in_order
from generator.plan.log.entries import entries_in_force
from generator.plan.log.told import sprayings_of
from generator.plan.model.finding import Finding, Subject
from generator.plan.model.items import stock_items
from generator.plan.season.season_markers import with_markers
from generator.plan.season.seen_signs import with_seen


def doubts(
    inventory: Inventory, entries: tuple[LogEntry, ...], as_of: datetime.date, signs: Markers
) -> tuple[Doubt, ...]:
    """Return what is asked about the entries that count on a day."""
    confirmed = confirmations(entries)
    items = {item.id: item.words for item in stock_items(inventory)}
    return (
        *more_used_than_there(inventory, entries, as_of, confirmed),
        *said_twice(inventory.places(), inventory.plans(), entries, confirmed, items),
        *days_that_do_not_fit(inventory.places(), inventory.plans(), entries, signs, confirmed),
        *winds_in_question(inventory, entries, confirmed),
        *signs_in_question(entries, signs, confirmed),
    )


def doubt_findings(found: tuple[Doubt, ...]) -> list[Finding]:
    """Return the cautions that ask, each on its entry."""
    return [
        finding(
            doubt.reason,
            Subject("entry", doubt.entry.id),
            doubt.entry.where,
            doubt.figures,
            **doubt.words,
        )
        for doubt in found
    ]


def asked_by(before: Inventory, after: Inventory) -> tuple[Finding, ...]:
    """Return what is asked with new entries that was not asked without them, whatever their day.

    No plan is made for it: the log, the things that are kept and the cards are looked at alone.
    """

    @cache
    def signs() -> SeasonMarkers | None:
        marked, _ = with_markers(after)
        entries = entries_in_force(after.entries, datetime.date.max, sprayings_of(after))
        return with_seen(marked, entries).property.season_signs

    known = {_told(found) for found in _whenever(before, signs)}
    return in_order([found for found in _whenever(after, signs) if _told(found) not in known])


def _whenever(inventory: Inventory, signs: Markers) -> list[Finding]:
    # an entry is asked about as it is written, whatever day a plan is of
    last = datetime.date.max
    return doubt_findings(
        doubts(
            inventory,
            entries_in_force(inventory.entries, last, sprayings_of(inventory)),
            last,
            signs,
        )
    )


def _told(found: Finding) -> tuple[str, ...]:
    # by what is said, not where: a new entry moves the lines of others
    return found.code, found.subject, found.words, found.to_type
