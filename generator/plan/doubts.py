"""Everything in the log that cannot be, or hardly: asked on its page, and as it is written."""

import datetime
from functools import cache

from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory, SeasonSigns
from generator.plan.doubt import Doubt, confirmations
from generator.plan.doubt_days import Signs, days_that_do_not_fit
from generator.plan.doubt_stock import more_used_than_there
from generator.plan.doubt_twice import said_twice
from generator.plan.doubt_wind import winds_in_question
from generator.plan.findings import finding, in_order
from generator.plan.log import standing
from generator.plan.model import Finding
from generator.plan.records import LOGGED
from generator.plan.season_signs import with_signs
from generator.plan.told import sprayings_of


def doubts(
    inventory: Inventory, entries: tuple[LogEntry, ...], as_of: datetime.date, signs: Signs
) -> tuple[Doubt, ...]:
    """Return what is asked about the entries that count on a day."""
    confirmed = confirmations(entries)
    return (
        *more_used_than_there(inventory, entries, as_of, confirmed),
        *said_twice(inventory, entries, confirmed),
        *days_that_do_not_fit(inventory, entries, signs, confirmed),
        *winds_in_question(inventory, entries, confirmed),
    )


def doubt_findings(found: tuple[Doubt, ...]) -> list[Finding]:
    """Return the cautions that ask, each on its entry."""
    return [
        finding(one.reason, f"{LOGGED}{one.entry.id}", one.entry.where, one.figures, **one.words)
        for one in found
    ]


def asked_by(before: Inventory, after: Inventory) -> tuple[Finding, ...]:
    """Return what is asked with new entries that was not asked without them, whatever their day.

    No plan is made for it: the log, the things that are kept and the cards are looked at alone.
    """

    @cache
    def signs() -> SeasonSigns | None:
        return with_signs(after)[0].property.season_signs

    known = {_told(one) for one in _whenever(before, signs)}
    return in_order([one for one in _whenever(after, signs) if _told(one) not in known])


def _whenever(inventory: Inventory, signs: Signs) -> list[Finding]:
    last = datetime.date.max
    return doubt_findings(
        doubts(inventory, standing(inventory.entries, last, sprayings_of(inventory)), last, signs)
    )


def _told(one: Finding) -> tuple[str, str, str]:
    return one.code, one.subject, one.words
