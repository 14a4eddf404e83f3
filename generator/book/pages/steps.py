"""The page of step plans: the id that log, work and readers call each step by."""

from generator.book.pages.written import HOW, Written, from_template
from generator.inventory.places import PlantedGround
from generator.inventory.schema import KeptUp
from generator.plan.model.plan import Plan
from generator.reference.library import planting_kinds
from generator.reference.steps import StepPlan

_STEPS = "Step plans and their steps"
_SUBJECT_WORDS = {"stand": "a stand", "route": "a walk", "water_hole": "a water hole"}


def steps_page(plan: Plan) -> Written:
    """Return every step plan of the owner with its steps, those that are used here first."""
    used = {
        planting_plan
        for place in plan.places
        if isinstance(place.typed, PlantedGround)
        for planting in place.typed.plantings
        for planting_plan in (planting.steps, planting.upkeep)
    }
    kept: list[KeptUp] = [
        *plan.land.stands,
        *plan.land.routes,
        *(water.hole for water in plan.water),
    ]
    used |= {thing.upkeep for thing in kept}
    plans = sorted(plan.land.step_plans, key=lambda step_plan: step_plan.id not in used)
    return from_template(
        plan,
        "steps.md",
        _STEPS,
        HOW,
        "steps",
        [step.id for step_plan in plans for step in step_plan.steps],
        plans=[(step_plan, _made_for(step_plan), step_plan.id in used) for step_plan in plans],
    )


def _made_for(plan: StepPlan) -> str:
    if plan.subject is not None:
        return f"{_SUBJECT_WORDS[plan.subject]}, as its maintenance"
    kind = planting_kinds()[plan.kind or ""].lower()
    return kind if plan.yearly_from is None else f"{kind}, as its maintenance"
