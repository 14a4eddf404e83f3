"""Records of sprayings: those in the log, and a form for each that is still to come."""

import datetime

from generator.book.cells import as_time
from generator.book.pages.log import log_seasons
from generator.book.pages.written import (
    BUDGET_XLSX,
    RECORDS,
    RECORDS_CSV,
    Written,
    from_template,
    place_of,
)
from generator.inventory.log import LogEntry
from generator.plan.model.finding import Finding, Subject
from generator.plan.model.job import Job
from generator.plan.model.place import Place
from generator.plan.model.plan import Plan
from generator.plan.model.spray_record import kept_until, missing_by_rule
from generator.reference.library import values

_TITLE = "Spray records"


def records_page(plan: Plan) -> Written:
    """Return every spraying in the log, the newest first, with what its record leaves out."""
    return from_template(
        plan,
        "records.md",
        _TITLE,
        RECORDS,
        "records",
        ["record", "7 CFR 110.3", "restricted use", *_names(plan)],
        files=(RECORDS_CSV, BUDGET_XLSX),
        log_seasons=log_seasons(plan),
        forms=forms_of(plan),
        records=[
            (
                record,
                _times(record.entry),
                missing_by_rule(record),
                kept_until(record),
                _findings(plan, record.entry),
            )
            for record in reversed(plan.records)
        ],
        sprayers={sprayer.id: sprayer.name for sprayer in plan.land.sprayers},
        values=values(),
    )


def forms_of(plan: Plan) -> list[tuple[Job, Place]]:
    """Return the sprayings that may still be done or written down, with their places."""
    return [
        (job, place_of(plan, job))
        for job in plan.jobs
        if job.step.does.sprays and not job.state.is_settled
    ]


def record_form_page(plan: Plan, job: Job, place: Place) -> Written:
    """Return the record of a spraying as a form, filled in as far as the plan knows it."""
    return from_template(
        plan,
        f"records/{job.address}.md",
        f"Record, {job.step.name}: {place.name}",
        RECORDS,
        "record_form",
        ["record", job.step.name, place.name],
        ("record",),
        job=job,
        place=place,
    )


def _times(entry: LogEntry) -> tuple[datetime.time | None, datetime.time | None]:
    """Return when a spraying was begun and ended, as far as that is written down."""
    sprayed = entry.sprayed
    return (as_time(sprayed.started_at), as_time(sprayed.stopped_at)) if sprayed else (None, None)


def _names(plan: Plan) -> list[str]:
    return [product.name for record in plan.records for product, _ in record.products]


def _findings(plan: Plan, entry: LogEntry) -> list[Finding]:
    return list(plan.findings_on(Subject("entry", entry.id)))
