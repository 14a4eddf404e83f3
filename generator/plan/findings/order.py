"""Findings from reasons: the words filled in, the place in the owner's files, the figures."""

import datetime
from collections.abc import Iterable
from dataclasses import replace

from generator.inventory.fields import Where
from generator.plan.findings.words import Reason, severity_of
from generator.plan.model.finding import Finding, Subject
from generator.working import Figure

GRAVITY = {"stop": 0, "caution": 1, "note": 2}
DAYS_IN_YEAR = 365


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
