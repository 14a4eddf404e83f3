"""A figure outside what is usual, as a finding: what was typed, the range, and its source."""

from dataclasses import replace

from generator.inventory.fields import Where
from generator.plan.findings.order import finding
from generator.plan.findings.words import Reason
from generator.plan.model.finding import Finding, Subject
from generator.reference.usual import Usual
from generator.working import Figure, Given, Measured, Quantity, Reference

MUCH = {"less": "far less", "more": "far more"}
MANY = {"less": "far fewer", "more": "far more"}
# read back by range_told, so an end is known by its words
LOW, LOW_ALONE, HIGH, HIGH_ALONE = "Usual from", "Usual from, at the least", "to", "Usual up to"


def out_of_usual(
    reason: Reason,
    subject: Subject,
    where: Where,
    told: tuple[str, Given | Measured | Quantity],
    range_of_it: Usual,
    **words: str,
) -> Finding | None:
    """Return the finding where a figure lies outside its range, or None.

    Its words may say `{much}` or `{many}` for how it lies; its source is that of the end it is
    beyond.
    """
    label, figure = told
    beyond = range_of_it.beyond(figure)
    if beyond is None:
        return None
    found = finding(
        reason,
        subject,
        where,
        ((label, figure), *ends(range_of_it)),
        much=MUCH[beyond],
        many=MANY[beyond],
        **words,
    )
    return replace(found, source=_source_of(range_of_it.end(beyond)))


def _source_of(end: Reference | Quantity) -> str:
    """Return the source of an end; of one worked out, that of the first value it rests on."""
    if isinstance(end, Reference):
        return end.source
    return next(value.source for _, value in end.inputs if isinstance(value, Reference))


def ends(range_of_it: Usual) -> tuple[tuple[str, Figure], ...]:
    """Return the ends of a range with what they are called."""
    low, high = range_of_it.low, range_of_it.high
    named: list[tuple[str, Figure]] = []
    if low is not None:
        named.append((LOW if high is not None else LOW_ALONE, low))
    if high is not None:
        named.append((HIGH if low is not None else HIGH_ALONE, high))
    return tuple(named)


def range_told(found: Finding) -> Usual:
    """Return the range that a finding out of the usual tells."""
    told = {
        label: figure for label, figure in found.figures if isinstance(figure, Reference | Quantity)
    }
    return Usual(told.get(LOW) or told.get(LOW_ALONE), told.get(HIGH) or told.get(HIGH_ALONE))
