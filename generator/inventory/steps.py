"""The owner's own step plans, and every step plan a property has."""

import datetime
from collections.abc import Mapping
from dataclasses import field, replace

from generator.dataclass import dataclass
from generator.inventory.fields import (
    Limits,
    Record,
    amount,
    choice,
    day,
    month_day,
    record,
    reference,
    text,
    whole,
    word,
)
from generator.inventory.label import TIMINGS
from generator.reference.operations import operations
from generator.reference.steps import (
    AnswerNeeded,
    Bound,
    Step,
    StepPlan,
    step_plans,
)
from generator.working import Given, Reference

_OWNER = "owner_steps"
WITH = ("lime", "fertilizer", "work")
_SUBJECT_WORDS = ("stand", "route", "water_hole")
SETTING_UNITS = ("ft", "lb_per_ac", "fraction", "hours", "days", "count", "ft_per_ft", "years")


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnBound(Record):
    """One end of the open dates: a day of the year or a season sign, moved by days."""

    date: tuple[int, int] | None = month_day("page", "day of the year")
    sign: str | None = reference("page", "season marker", "season_sign")
    by: str | None = choice("page", "year that counts", "early", "typical", "late")
    offset_days: int | None = whole(
        "page", "days after it, below 0 before it", Limits(at_least=-365, at_most=365)
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnSetting(Record):
    """A figure a step works with, named for its ticks."""

    name: str = word("page", "name that ticks call it by", required=True)
    amount: Given = amount("page", "how much", SETTING_UNITS, required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnNeed(Record):
    """An answer that another step of the plan must have had."""

    step: str = word("page", "step that asks", required=True)
    answer: str = choice("page", "answer it must have had", "yes", "no", required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnStep(Record):
    """A step of the owner's own."""

    step: str = word("page", "name log and work call it by", required=True)
    name: str = text("page", "what is done", required=True)
    operation: str = reference("page", "kind of work", "operation", required=True)
    timing: str = choice("page", "before, at or after sowing", *TIMINGS, required=True)
    why: str = text("page", "why it is done", required=True)
    opens: tuple[OwnBound, ...] = record(
        "page", "first day, the latest of these", OwnBound, many=True, required=True
    )
    closes: tuple[OwnBound, ...] = record(
        "page", "last day, the earliest of these", OwnBound, many=True, required=True
    )
    settings: tuple[OwnSetting, ...] = record("page", "figures", OwnSetting, many=True)
    ticks: tuple[str, ...] = text("page", "what to look at before going on", many=True)
    if_missed: str = text("page", "what to do if it is missed", required=True)
    only_with: str | None = choice("page", "a job only where this is asked for", *WITH)
    seasons_later: int | None = whole(
        "page", "seasons after the planting's own", Limits(at_least=-3, at_most=30)
    )
    asks: str | None = text("page", "question the log answers yes or no")
    needs: tuple[OwnNeed, ...] = record("page", "answers it waits for", OwnNeed, many=True)
    excludes: tuple[str, ...] = word("page", "steps that, once done, replace it", many=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Skip(Record):
    """A step of the plan it is based on that is left out, and why."""

    step: str = word("page", "step left out", required=True)
    because: str = text("place", "why it is left out", required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnPlan(Record):
    """A step plan of the owner's own: whole, or based on a shipped one."""

    id: str = word("page", "id of the plan", required=True)
    name: str = text("page", "name of the plan", required=True)
    based_on: str | None = word("page", "shipped plan whose steps it takes over")
    skip: tuple[Skip, ...] = record("place", "steps left out", Skip, many=True)
    kind: str | None = reference("page", "kind of planting it is for", "planting_kind")
    subject: str | None = choice(
        "page", "what it is for where that is no planting", *_SUBJECT_WORDS
    )
    yearly_from: int | None = whole(
        "page",
        "seasons after the planting's own from which it comes back each season",
        Limits(at_least=0, at_most=100),
    )
    days_looked_up_on: datetime.date | None = day(
        "page", "day you asked whether the calendar days it takes over fit here"
    )
    steps: tuple[OwnStep, ...] = record("page", "steps", OwnStep, many=True)
    _whole: list[StepPlan] = field(init=False, repr=False, compare=False, default_factory=list)

    def whole(self) -> StepPlan:
        """Return the plan with what it takes over, put together when it is first asked for."""
        if not self._whole:
            self._whole.append(_plan(self))
        return self._whole[0]


def plans_with(own: tuple[OwnPlan, ...]) -> Mapping[str, StepPlan]:
    """Return every step plan by its id; an owner's plan stands in place of one of its id."""
    return step_plans() | {plan.id: plan.whole() for plan in own}


def _plan(own: OwnPlan) -> StepPlan:
    mine = {step.step: _step(step) for step in own.steps}
    if own.based_on is None or own.based_on not in step_plans():
        return StepPlan(
            own.id, own.name, own.kind, tuple(mine.values()), own.subject, own.yearly_from
        )
    base = step_plans()[own.based_on]
    left_out = {skipped.step for skipped in own.skip}
    # lazy: each is popped out of `mine` as `steps` is put together, before the rest follows
    kept = (mine.pop(step.id, step) for step in base.steps if step.id not in left_out)
    return replace(
        base,
        id=own.id,
        name=own.name,
        steps=(*kept, *mine.values()),
        latitudes=base.latitudes if own.days_looked_up_on is None else None,
    )


def _step(own: OwnStep) -> Step:
    does = operations()[own.operation]
    return Step(
        id=own.step,
        name=own.name,
        operation=own.operation,
        timing=own.timing,
        why=own.why,
        why_source=_OWNER,
        opens=tuple(_bound(bound) for bound in own.opens),
        closes=tuple(_bound(bound) for bound in own.closes),
        settings=(*(_setting(setting) for setting in own.settings), *does.settings),
        ticks=(*does.ticks, *own.ticks),
        if_missed=own.if_missed,
        only_with=own.only_with,
        seasons_later=own.seasons_later or 0,
        asks=own.asks,
        needs=tuple(
            AnswerNeeded(need.step, "yes" if need.answer == "yes" else "no") for need in own.needs
        ),
        excludes=own.excludes,
        chapters=does.chapters,
        suits=does.suits,
    )


def _bound(own: OwnBound) -> Bound:
    return Bound(own.date, own.sign, own.by or "typical", own.offset_days or 0, _OWNER)


def _setting(own: OwnSetting) -> Reference:
    # as it was typed: what a tick shows is in the owner's own unit
    return Reference(
        own.name, own.amount.typed, own.amount.typed_unit, _OWNER, "typed by the owner"
    )
