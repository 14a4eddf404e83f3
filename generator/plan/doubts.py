"""Everything in the log that cannot be, or hardly: asked on its page, and as it is written."""

import datetime
from functools import cache

from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory, SeasonSigns
from generator.plan.doubt import Doubt
from generator.plan.doubt_days import Signs, days_that_do_not_fit
from generator.plan.doubt_stock import more_used_than_there
from generator.plan.doubt_twice import said_twice
from generator.plan.doubt_wind import winds_in_question
from generator.plan.findings import finding, in_order
from generator.plan.log import standing
from generator.plan.model import Finding
from generator.plan.records import LOGGED
from generator.plan.season_signs import with_signs


def doubts(
    inventory: Inventory, entries: tuple[LogEntry, ...], as_of: datetime.date, signs: Signs
) -> tuple[Doubt, ...]:
    """Return what is asked about the entries that count on a day."""
    return (
        *more_used_than_there(inventory, entries, as_of),
        *said_twice(inventory, entries),
        *days_that_do_not_fit(inventory, entries, signs),
        *winds_in_question(inventory, entries),
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
    known = {(one.code, one.subject, one.words) for one in _of_all(before)}
    new = [one for one in _of_all(after) if (one.code, one.subject, one.words) not in known]
    return in_order(new)


def _of_all(inventory: Inventory) -> list[Finding]:
    @cache
    def signs() -> SeasonSigns | None:
        return with_signs(inventory)[0].property.season_signs

    last = datetime.date.max
    return doubt_findings(doubts(inventory, standing(inventory.entries, last), last, signs))
