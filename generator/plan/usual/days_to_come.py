"""Days of what was done, seen or asked that lie after the plan's day: nobody has done it yet.

Catch tests, entries of the log and approvals are told where they weigh on something.
"""

import datetime
from collections.abc import Iterable, Iterator
from dataclasses import fields

from generator.dataclass import dataclass
from generator.inventory.fields import Record, Where, rules_of
from generator.inventory.problems import listed
from generator.inventory.schema import Inventory
from generator.plan.findings.about_money import MoneyNote
from generator.plan.findings.about_usual import UsualCaution
from generator.plan.findings.order import about_record, finding
from generator.plan.model.days import day_words
from generator.plan.model.finding import WHOLE_FOLDER, Finding, Subject

# Days that are gone by when they are typed.
GONE_BY = (
    "asked_on",
    "checked_on",
    "cleaned_out_on",
    "counted_on",
    "days_looked_up_on",
    "harvested_on",
    "inspected_on",
    "looked_up_on",
    "priced_on",
    "read_on",
    "refilled_on",
    "sampled_on",
    "seen_on",
    "signs_looked_up_on",
    "sprayed_on",
    "straps_checked_on",
    "tested_on",
    "walked_on",
    "wet_ground_asked_on",
)
# told where they weigh: later entries on jobs, later tests on their machine
LISTS_APART = ("entries", "catch_tests")
# More records than these with a day to come: the plan's own day is what is off.
MOST_RECORDS = 5


@dataclass(frozen=True, slots=True)
class _Told:
    """The days to come of one record, as they are typed, and where the first stands."""

    subject: Subject
    days: tuple[datetime.date, ...]
    typed: tuple[str, ...]
    where: Where


def days_to_come(
    inventory: Inventory, as_of: datetime.date, of_money: Iterable[Finding]
) -> list[Finding]:
    """Return a caution for each record with a day to come, or one where that is most of them.

    Counts of which it is said already, among what is said of money, are left out.
    """
    later = MoneyNote.COUNT_LATER.value.code
    told = {found.subject for found in of_money if found.code == later}
    found = [
        to_come
        for record in _records(inventory)
        if (to_come := _to_come(record, as_of, told)) is not None
    ]
    if len(found) > MOST_RECORDS:
        names = listed([record.subject for record in found], "and")
        return [
            finding(
                UsualCaution.DAYS_AFTER_THE_PLAN,
                WHOLE_FOLDER,
                found[0].where,
                many=str(len(found)),
                names=names,
            )
        ]
    return [
        finding(
            UsualCaution.DAY_TO_COME,
            record.subject,
            record.where,
            told=listed([day_words(day) for day in dict.fromkeys(record.days)], "and"),
            days=listed(record.typed, "and"),
        )
        for record in found
    ]


def _records(inventory: Inventory) -> Iterator[Record]:
    for field in fields(inventory):
        value = getattr(inventory, field.name)
        if field.name not in LISTS_APART:
            each = value if isinstance(value, tuple) else (value,)
            yield from (record for record in each if isinstance(record, Record))


def _to_come(record: Record, as_of: datetime.date, told: set[Subject]) -> _Told | None:
    subject = about_record(record)
    days = [
        (day, f"{name}: {day.isoformat()}", where)
        for name, day, where in _days(record)
        if day > as_of and not (name == "counted_on" and subject in told)
    ]
    if not days:
        return None
    found, typed, places = zip(*days, strict=True)
    return _Told(subject, found, typed, places[0])


def _days(record: Record) -> Iterator[tuple[str, datetime.date, Where]]:
    """Yield the days that are gone by in a record and in those inside it."""
    for name, rule in rules_of(type(record)).items():
        value = getattr(record, name)
        if rule.form == "date" and name in GONE_BY and isinstance(value, datetime.date):
            yield name, value, record.where_of(name)
        elif rule.form == "record" and name not in LISTS_APART:
            for inner in value if isinstance(value, tuple) else (value,):
                if isinstance(inner, Record):
                    yield from _days(inner)
