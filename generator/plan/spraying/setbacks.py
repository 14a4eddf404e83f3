"""Distances that the labels in a tank keep: spraying and mixing, the longest of each counts."""

from collections.abc import Iterator

from generator.inventory.label import Setback
from generator.plan.findings.about_spraying import SprayCaution
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.work import Mix


def kept_spraying(mix: Mix) -> tuple[Setback, ...]:
    """Return what the labels of a tank keep the spray away from, each once, the longest."""
    return _longest(setback for part in mix.parts for setback in _listed(part.use.setbacks_ft))


def kept_mixing(mix: Mix) -> tuple[Setback, ...]:
    """Return what the labels of a tank keep the mixing away from, each once, the longest."""
    return _longest(
        setback for part in mix.parts for setback in _listed(part.card.mixing_setbacks_ft)
    )


def setback_cautions(request: JobRequest, mix: Mix) -> Iterator[Finding]:
    """Yield that nothing is set back, where a label in the tank keeps a distance.

    Where water, wells and neighbours lie has no shape yet, so the whole place is counted.
    """
    kept = kept_spraying(mix)
    if kept:
        words = ", ".join(setback.keep_from for setback in kept)
        yield finding(
            SprayCaution.NOTHING_SET_BACK,
            about_job(request.job_id),
            mix.parts[0].use.where,
            kept=words,
        )


def _listed(entries: tuple[Setback, ...] | str | None) -> tuple[Setback, ...]:
    return entries if isinstance(entries, tuple) else ()


def _longest(entries: Iterator[Setback]) -> tuple[Setback, ...]:
    longest: dict[str, Setback] = {}
    for setback in entries:
        # by the words as printed: what two labels call by other words is kept from twice
        known = longest.get(setback.keep_from)
        if known is None or known.distance_ft.value < setback.distance_ft.value:
            longest[setback.keep_from] = setback
    return tuple(longest.values())
