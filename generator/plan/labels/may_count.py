"""Stops of sprayings that may count with a job's, and of which it cannot be said what they add."""

from collections.abc import Iterable, Iterator

from generator.inventory.fields import Where
from generator.plan.findings.about_labels import LabelStop
from generator.plan.findings.order import finding
from generator.plan.findings.words import Stop
from generator.plan.labels.yearly_sums import Gap, PlannedSpray
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding, about_job
from generator.reference.active_names import ActiveName, alike

# What leaves no sum to be made, however small the rest of it is.
UNSAID: tuple[tuple[Gap, Stop], ...] = (
    ("area", LabelStop.GROUND_LOGGED_TOO_LARGE),
    ("product", LabelStop.PRODUCT_NOT_LOGGED),
    ("amount", LabelStop.AMOUNT_NOT_LOGGED),
)


def unsaid_stops(doubted: Iterable[PlannedSpray], job: str, where: Where) -> Iterator[Finding]:
    """Yield a stop for each thing that the log leaves out and that no sum can do without."""
    sprayings = tuple(doubted)
    for gap, stop in UNSAID:
        open_ones = [spray for spray in sprayings if _first_gap(spray) == gap]
        if open_ones:
            yield finding(stop, about_job(job), where, days=_days(open_ones))


def _first_gap(spray: PlannedSpray) -> Gap | None:
    # told by the first of its gaps alone: one entry that corrects it can fill them all
    return next((gap for gap, _ in UNSAID if gap in spray.gaps), None)


def may_count_stops(
    mine: PlannedSpray, doubted: Iterable[PlannedSpray], job: str, where: Where
) -> Iterator[Finding]:
    """Yield a stop for what may be on the same ground or of the same active, and is too much."""
    # the others have a stop for what they leave out, and one cause is told once
    sprayings = tuple(spray for spray in doubted if _first_gap(spray) is None)
    nowhere = [spray for spray in sprayings if "place" in spray.gaps]
    if nowhere:
        yield finding(LabelStop.PLACE_NOT_LOGGED, about_job(job), where, days=_days(nowhere))
    parts = [spray for spray in sprayings if spray.most is not None]
    if parts:
        yield finding(LabelStop.MAY_BE_THE_SAME_PART, about_job(job), where, days=_days(parts))
    for spray in sprayings:
        yield from _near_names(mine, spray, job, where)


def _near_names(
    mine: PlannedSpray, other: PlannedSpray, job: str, where: Where
) -> Iterator[Finding]:
    own = (*mine.actives, *mine.pooled)
    if any(alike(name, theirs) == "same" for name in own for theirs in other.actives):
        return
    for theirs in other.actives:
        near = [name for name in own if alike(name, theirs) == "asked"]
        if near:
            yield finding(
                LabelStop.MAY_BE_THE_SAME_ACTIVE,
                about_job(job),
                where,
                other=other.product_name,
                theirs=theirs.printed,
                mine=_listed(near),
                product=mine.product_name,
            )


def _listed(names: Iterable[ActiveName]) -> str:
    return " or ".join(name.printed for name in names)


def _days(sprayings: Iterable[PlannedSpray]) -> str:
    """Return the days of sprayings in words, the first first."""
    days = {(spray.opens, spray.closes) for spray in sprayings if spray.opens and spray.closes}
    told = [
        day_words(opens) if opens == closes else f"{day_words(opens)} to {day_words(closes)}"
        for opens, closes in sorted(days)
    ]
    return ", ".join(told) or "on a day that is not known"
