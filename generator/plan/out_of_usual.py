"""A figure outside what is usual, as a finding: what was typed, the range, and its source."""

from dataclasses import replace

from generator.inventory.fields import Where
from generator.plan.findings import finding
from generator.plan.model import Finding
from generator.plan.reasons import Reason
from generator.reference.usual import Usual
from generator.working import Figure, Given, Measured, Quantity, Reference

MUCH = {"less": "far less", "more": "far more"}
MANY = {"less": "far fewer", "more": "far more"}


def out_of_usual(
    reason: Reason,
    subject: str,
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
    return next(one.source for _, one in end.inputs if isinstance(one, Reference))


def ends(range_of_it: Usual) -> tuple[tuple[str, Figure], ...]:
    """Return the ends of a range with what they are called."""
    low, high = range_of_it.low, range_of_it.high
    named: list[tuple[str, Figure]] = []
    if low is not None:
        named.append(("Usual from" if high is not None else "Usual from, at the least", low))
    if high is not None:
        named.append(("to" if low is not None else "Usual up to", high))
    return tuple(named)
