"""Burning and mowing of standing screens: how much at once, how often, and what then hides."""

from collections.abc import Iterator, Mapping

from generator.compute.area import SHARE_OF_PLACE
from generator.inventory.log import LogEntry
from generator.inventory.places import hidden_by
from generator.inventory.schema import Inventory
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.done import entries_on
from generator.plan.findings import finding
from generator.plan.model import Finding, JobState
from generator.plan.stops import Stop
from generator.reference.steps import step_plans
from generator.units import convert
from generator.working import Figure, Reference

BURN = "burn"
GRASS = "native_grass"
SHORN = {BURN: "burnt", "mow": "mown"}
STANDING = "established_dormant"
MOST = "most_burnt_pct"  # what the shipped step of burning calls it
# Shares are printed in whole percent: a third of the place is 33 of a hundred.
HALF_A_PERCENT = 0.005


def burning_findings(
    asked: tuple[JobAsked, ...],
    ever: tuple[JobAsked, ...],
    inventory: Inventory,
    entries: tuple[LogEntry, ...],
    states: Mapping[str, JobState],
) -> Iterator[Finding]:
    """Yield what is against burning or mowing a standing screen, job by job.

    `asked` are the jobs of the season, `ever` those of every season.
    """
    for one in asked:
        if not shears_standing(one) or states[one.job_id].is_settled:
            continue
        if one.step.operation == BURN:
            yield from _too_much(one, _burns_beside(one, ever, states))
            yield from _again(one, ever, entries, states)
        yield from _hides_nobody(one, inventory)


def shears_standing(one: JobAsked) -> bool:
    """Return whether a job burns or mows the standing grass of a screen."""
    cut = one.step.operation in SHORN and one.step.timing == STANDING
    return cut and one.kind == GRASS


def _burns_beside(
    one: JobAsked, ever: tuple[JobAsked, ...], states: Mapping[str, JobState]
) -> tuple[JobAsked, ...]:
    """Return the burns of the same screen in the same season, done or still to come."""
    return tuple(
        other
        for other in ever
        if (other.ground.id, other.season) == (one.ground.id, one.season)
        and other.job_id != one.job_id
        and other.step.operation == BURN
        and shears_standing(other)
        and (states[other.job_id].is_ahead or states[other.job_id].kind == "done")
    )


def _too_much(one: JobAsked, beside: tuple[JobAsked, ...]) -> Iterator[Finding]:
    most = _most_burnt(one)
    where = one.work.where if one.work is not None else one.planting.where
    figures: tuple[tuple[str, Figure], ...] = (("At most", most),)
    parts = [each.work.treated_sq_ft if each.work is not None else None for each in (one, *beside)]
    measured = tuple(part for part in parts if part is not None)
    if len(measured) < len(parts):
        yield finding(Stop.BURNS_TOO_MUCH, one.job_id, where, figures)
        return
    share = SHARE_OF_PLACE(
        f"{one.job_id}/share_of_place_fraction", treated_sq_ft=measured, area_ac=one.area
    )
    if share.value >= convert(most.value, most.unit, "fraction") + HALF_A_PERCENT:
        yield finding(
            Stop.BURNS_TOO_MUCH, one.job_id, where, (("Burns this season", share), *figures)
        )


def _most_burnt(one: JobAsked) -> Reference:
    """Return the most of a screen that burns in a season: as the step says, else as ours does."""
    shipped = (step for plan in step_plans().values() for step in plan.steps)
    figures = (each for step in (one.step, *shipped) for each in step.settings)
    return next(each for each in figures if each.name == MOST)


def _again(
    one: JobAsked,
    ever: tuple[JobAsked, ...],
    entries: tuple[LogEntry, ...],
    states: Mapping[str, JobState],
) -> Iterator[Finding]:
    before = (
        other
        for other in ever
        if (other.ground.id, other.season) == (one.ground.id, one.season - 1)
        and other.step.operation == BURN
    )
    parts = [part for other in before for part in _parts(other, entries, states)]
    mine = _same(one.work.part if one.work is not None else None)
    if any(mine is None or part is None or _same(part) == mine for part in parts):
        where = one.work.where if one.work is not None else one.planting.where
        yield finding(Stop.BURNS_AGAIN, one.job_id, where)


def _parts(
    one: JobAsked, entries: tuple[LogEntry, ...], states: Mapping[str, JobState]
) -> Iterator[str | None]:
    """Yield the parts that a burn took by the log, else is to take; None where unsaid."""
    logged = entries_on(one, entries)
    for entry in logged:
        yield entry.burned.part if entry.burned is not None else None
    if not logged and states[one.job_id].is_ahead:
        yield one.work.part if one.work is not None else None


def _same(part: str | None) -> str | None:
    return " ".join(part.split()).casefold() if part is not None else None


def _hides_nobody(one: JobAsked, inventory: Inventory) -> Iterator[Finding]:
    names = [route.name for route in inventory.routes if route.id in hidden_by(one.ground)]
    if names:
        yield finding(
            Caution.HIDES_NOBODY,
            one.job_id,
            one.ground.where,
            routes=" and ".join(names),
            cut=SHORN[one.step.operation],
        )
