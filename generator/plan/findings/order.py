"""Findings from reasons: words filled in, place in the files, figures, what they are about."""

import datetime
from collections.abc import Iterable
from dataclasses import replace

from generator.inventory.dates import DateRange, ShootingHours
from generator.inventory.drill import Drill
from generator.inventory.equipment import Measure, Sprayer, Spreader
from generator.inventory.fields import Record, Where
from generator.inventory.ground import SoilTest, WaterHole
from generator.inventory.land import LandThing
from generator.inventory.law import LookedUp
from generator.inventory.log import LogEntry
from generator.inventory.machine import Machine
from generator.inventory.money import CostShare, Hire
from generator.inventory.papers import Contract, OneCall, Permit
from generator.inventory.people import Applicator, Contractor, Helper
from generator.inventory.places import PlantedGround, Route, Stand
from generator.inventory.schema import Reader
from generator.inventory.sits import Sit
from generator.inventory.spreadable import Fertilizer, Lime
from generator.inventory.stock import Adjuvant, Product, SeedLot
from generator.inventory.weather import Station, WindStation
from generator.inventory.woody import Guard, Plant
from generator.plan.findings.words import Reason, severity_of
from generator.plan.model.finding import WHOLE_FOLDER, Finding, Subject, SubjectKind
from generator.working import Figure

GRAVITY = {"stop": 0, "caution": 1, "note": 2}
DAYS_IN_YEAR = 365
KINDS_OF_RECORDS: tuple[tuple[tuple[type[Record], ...], SubjectKind], ...] = (
    ((PlantedGround,), "place"),
    ((SeedLot, Product, Adjuvant, Fertilizer, Lime, Plant, Guard), "item"),
    ((Sprayer,), "sprayer"),
    ((Spreader,), "spreader"),
    ((Drill,), "drill"),
    ((Measure,), "measure"),
    ((Machine,), "machine"),
    ((Hire,), "hire"),
    ((CostShare,), "cost_share"),
    ((WaterHole,), "water_hole"),
    ((SoilTest,), "soil_test"),
    ((Stand,), "stand"),
    ((Route,), "route"),
    ((LandThing,), "land"),
    ((Sit,), "sit"),
    ((LogEntry,), "entry"),
    ((Station, WindStation), "station"),
    ((DateRange,), "dates"),
    ((ShootingHours,), "shooting_hours"),
    ((LookedUp,), "looked_up"),
    ((Applicator, Helper), "person"),
    ((Contractor,), "contractor"),
    ((Permit,), "permit"),
    ((Contract,), "contract"),
    ((OneCall,), "one_call"),
    ((Reader,), "reader"),
)


def all_listed(words: Iterable[str]) -> str:
    """Return words as a list in a sentence, none left out and none cut.

    >>> all_listed(["the lane", "the creek", "the pond"]), all_listed(["the lane"])
    ('the lane, the creek and the pond', 'the lane')
    """
    *first, last = words
    return f"{', '.join(first)} and {last}" if first else last


def finding(
    reason: Reason,
    subject: Subject,
    where: Where | None = None,
    figures: tuple[tuple[str, Figure], ...] = (),
    *,
    thing: str = "",
    **words: str,
) -> Finding:
    """Return the finding of a reason on a subject, its words filled in."""
    told = reason.value
    return Finding(
        told.code,
        severity_of(reason),
        subject,
        told.owner.format(**words),
        told.others,
        told.cure.format(**words),
        f"{where.file}:{where.line}" if where else "",
        figures,
        told.chapter,
        told.source,
        column=where.column if where else 0,
        thing=thing,
        to_type=told.to_type.format(**words),
    )


def in_order(findings: list[Finding]) -> tuple[Finding, ...]:
    """Return findings with the causes of others first, then the gravest, each once."""
    causes = {found.cause for found in findings}
    ordered = sorted(
        findings,
        # a caution that is a cause stands before its stops: with it mended they are gone
        key=lambda found: (
            found.id not in causes,
            GRAVITY[found.severity],
            found.subject,
            found.code,
        ),
    )
    return tuple(dict.fromkeys(ordered))


def without_amounts(findings: list[Finding]) -> list[Finding]:
    """Return findings with no figure left in what is said, beside the stop, of a stopped job."""
    # the stop keeps its figures, which say why; a rate in a caution beside it could be measured by
    stopped = {found.subject for found in findings if found.severity == "stop"}
    return [
        replace(found, figures=())
        if found.subject in stopped and found.severity != "stop"
        else found
        for found in findings
    ]


def older_than_a_year(noted: datetime.date, day: datetime.date) -> bool:
    """Return whether something noted is more than a year old on a day."""
    return (day - noted).days > DAYS_IN_YEAR


def last_within_a_year(noted: datetime.date) -> datetime.date:
    """Return the last day on which something noted is not more than a year old."""
    return noted + datetime.timedelta(days=DAYS_IN_YEAR)


def about_record(record: Record) -> Subject:
    """Return what a finding on a record is about; the folder, where it has no page of its own."""
    kind = next((kind for types, kind in KINDS_OF_RECORDS if isinstance(record, types)), None)
    # every kind listed above has an id, which records in general have not
    return Subject(kind, record.id) if kind is not None else WHOLE_FOLDER  # type: ignore[attr-defined]
