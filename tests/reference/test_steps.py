"""The shipped step plans hold together: what a step names is there, and its dates follow."""

import re
from itertools import pairwise

import pytest

from generator.book.content import callout
from generator.inventory.label import TIMINGS
from generator.inventory.season import season_of
from generator.inventory.steps import _SUBJECT_WORDS, WITH
from generator.plan.season.open_dates import day_in_season
from generator.reference.found_signs import found_by
from generator.reference.library import marker_names, planting_kinds
from generator.reference.operations import operations
from generator.reference.steps import Bound, Step, StepPlan, step_plans
from generator.units import split_suffix

SEASON = 2027
PLANS = list(step_plans().values())
STEPS = [(plan, step) for plan in PLANS for step in plan.steps]
NAMED = re.compile(r"\{(\w+)\}")
# The line to call before digging is a name, not a figure.
CALLED = re.compile(r"\b811\b")

each_plan = pytest.mark.parametrize("plan", PLANS, ids=lambda one: one.id)
IDS = [f"{plan.id}-{step.id}" for plan, step in STEPS]
each_with_its_plan = pytest.mark.parametrize(("plan", "step"), STEPS, ids=IDS)
each_step = pytest.mark.parametrize("step", [step for _, step in STEPS], ids=IDS)


def days_of(bounds: tuple[Bound, ...]) -> list[tuple[int, int]]:
    return [one.month_day for one in bounds if one.month_day is not None]


@each_plan
def test_a_plan_is_for_a_kind_of_planting_or_for_a_thing(plan: StepPlan) -> None:
    assert (plan.kind in planting_kinds()) != (plan.subject in _SUBJECT_WORDS)
    assert plan.yearly_from is None or plan.kind is not None
    ids = [step.id for step in plan.steps]
    assert len(ids) == len(set(ids))


@each_with_its_plan
def test_a_step_names_what_there_is(plan: StepPlan, step: Step) -> None:
    assert step.operation in operations()
    assert step.timing in TIMINGS
    assert step.only_with in (None, *WITH)
    assert step.opens
    assert step.closes
    assert {one.sign for one in (*step.opens, *step.closes) if one.sign} <= marker_names().keys()
    steps = {one.id: one for one in plan.steps}
    assert set(step.excludes) <= steps.keys() - {step.id}
    assert all(steps[one.step].asks is not None for one in step.needs)


@each_step
def test_the_days_of_a_step_follow_each_other_within_its_season(step: Step) -> None:
    opens = [day_in_season(one, SEASON) for one in days_of(step.opens)]
    closes = [day_in_season(one, SEASON) for one in days_of(step.closes)]
    assert all(first < last for first in opens for last in closes)
    assert {season_of(one) for one in opens + closes} <= {SEASON}


@each_with_its_plan
def test_what_can_still_be_sown_is_a_plan_that_sows_and_comes_later(
    plan: StepPlan, step: Step
) -> None:
    """Each choice has a sowing, and its last day comes after that of the choice before it."""
    missed = max(
        (day_in_season(one, SEASON) for one in days_of((*step.opens, *step.closes))),
        default=day_in_season((9, 1), SEASON),
    )
    lasts = []
    for one in step.instead:
        assert any(other.operation == "sow" for other in step_plans()[one.plan].steps)
        assert one.plan != plan.id
        day = day_in_season(one.until, SEASON)
        lasts.append(day if day > missed else day_in_season(one.until, SEASON + 1))
    assert all(before < after for before, after in pairwise(lasts))
    assert not step.instead or step.operation == "sow"


@each_step
def test_a_tick_takes_its_figures_from_the_settings(step: Step) -> None:
    settings = {one.name for one in step.settings}
    texts = (*step.ticks, step.why, step.if_missed, step.asks or "")
    named = {name for tick in step.ticks for name in NAMED.findall(tick)}
    assert named <= settings
    assert not [text for text in texts if re.search(r"\d", CALLED.sub("", text))]
    own_names = [one.name for one in step.settings]
    assert len(own_names) == len(set(own_names))


@each_step
def test_a_setting_is_named_by_its_unit(step: Step) -> None:
    for one in step.settings:
        suffix = split_suffix(one.name)
        assert suffix is not None
        assert suffix[1] == one.unit


@pytest.mark.parametrize("operation", operations())
def test_a_kind_of_work_has_its_cautions(operation: str) -> None:
    lines = callout(operations()[operation].cautions).splitlines()
    assert len(lines) >= 5
    assert all(re.match(r"- \*\*[^*]+\*\*", line) for line in lines)


def test_no_two_plans_call_a_sowing_alike_so_that_a_place_can_hold_both() -> None:
    """Steps of two plantings on one place in one season are told apart by their ids."""
    sown = [
        step.id
        for plan in PLANS
        for step in plan.steps
        if step.operation in ("sow", "plant") and step.only_with is None
    ]
    assert len(sown) == len(set(sown))


def test_sorghum_waits_for_one_soil_with_a_sign_of_its_own() -> None:
    """Nebraska's guide prints 65 F for sorghum; the tick and the sign say the same."""
    (sign,) = (one for one in found_by() if one.id == "soil_for_sorghum")
    sown = [
        step
        for plan in PLANS
        if plan.kind == "sorghum_screen"
        for step in plan.steps
        if step.operation == "sow"
    ]
    assert len(sown) == 2
    for step in sown:
        (soil,) = (one for one in step.settings if one.name == "soil_from_f")
        assert sign.values[0].value == soil.value == 65
        assert [one.sign for one in step.opens if one.sign] == ["soil_for_sorghum"]


def test_cores_go_as_deep_as_the_ground_was_worked() -> None:
    """Pennsylvania's guide: 6 in where it is not tilled, 3 to 4 in under permanent pasture."""
    samples = [step for _, step in STEPS if any(one.name == "depth_in" for one in step.settings)]
    assert len(samples) == 9
    for step in samples:
        known = {one.name: one.value for one in step.settings}
        depths = (known["depth_in"], known["sod_depth_low_in"], known["sod_depth_high_in"])
        assert depths == (6, 3, 4)
        (tick,) = (one for one in step.ticks if "{depth_in}" in one)
        assert "{sod_depth_low_in} to {sod_depth_high_in} deep under old sod or pasture" in tick
        assert "as deep as it is tilled" in tick


def test_the_first_day_of_frost_seeding_rests_on_no_source_that_was_read() -> None:
    """Iowa's manual prints January to mid-March, and no day."""
    days = [
        bound
        for _, step in STEPS
        if step.suits == "frost_seeding"
        for bound in step.opens
        if bound.month_day == (1, 20)
    ]
    assert len(days) == 2
    assert {one.source for one in days} == {"common_practice"}
