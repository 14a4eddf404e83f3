"""Pages of the soil and water: soil tests, water holes, fertilizers, limes."""

from generator.book.content import chapters_for
from generator.book.pages.seen import looked_over, water_brought
from generator.book.pages.written import (
    MONEY,
    PLACES,
    Written,
    address_of,
    from_template,
    jobs_with_places,
    kept_and_bought,
    plan_of_upkeep,
    soil_test_title,
    upkeep_of,
)
from generator.inventory.ground import SoilTest
from generator.inventory.spreadable import Fertilizer, Lime
from generator.plan.feeding.nutrient_price import nutrient_price
from generator.plan.model.place import Water
from generator.plan.model.plan import Plan
from generator.reference.library import values


def soil_test_page(plan: Plan, test: SoilTest) -> Written:
    """Return a soil test as the lab printed it, with the plantings and jobs that rest on it."""
    taken_on = [place for place in plan.places if place.id in test.places]
    resting = [
        (place, planting)
        for place in plan.places
        if place.typed is not None
        for planting in place.typed.plantings
        if planting.soil_test == test.id
    ]
    rest_on_it = {planting.id for _, planting in resting}
    fed = [job for job in plan.jobs if job.planting_id in rest_on_it and job.step.does.spreads]
    return from_template(
        plan,
        f"ground/{address_of(test)}.md",
        soil_test_title(plan, test),
        PLACES,
        "soil_test",
        [test.lab or "", test.note or "", *(place.name for place in taken_on)],
        ("ground",),
        test=test,
        taken_on=taken_on,
        resting=resting,
        jobs=jobs_with_places(plan, fed),
        came_back=[
            entry.done_on
            for entry in plan.entries
            if entry.soil_tested is not None and entry.soil_tested.test == test.id
        ],
    )


def water_page(plan: Plan, water: Water) -> Written:
    """Return a water hole: what it holds, how long that lasts deer, and what makes it safe."""
    return from_template(
        plan,
        f"ground/{address_of(water.hole)}.md",
        water.hole.name,
        PLACES,
        "water",
        [water.hole.name, water.hole.note or "", "water hole", "pond"],
        ("ground",),
        water=water,
        hole=water.hole,
        findings=plan.findings_on(water.hole.id),
        loads=water_brought(plan, water.hole.id),
        upkeep=upkeep_of(plan, water.hole.id),
        upkeep_plan=plan_of_upkeep(plan, water.hole),
        looks=looked_over(plan, water.hole.id),
        values=values(),
        chapters=chapters_for(plan.reader, ("water-hole",)),
    )


def fertilizer_page(plan: Plan, fertilizer: Fertilizer) -> Written:
    """Return a fertilizer with its grade and the jobs that take it."""
    jobs = [job for job in plan.jobs if fertilizer.id in job.needs]
    return from_template(
        plan,
        f"products/{address_of(fertilizer)}.md",
        fertilizer.name,
        MONEY,
        "fertilizer",
        [fertilizer.name, "fertilizer", fertilizer.note or ""],
        ("product",),
        fertilizer=fertilizer,
        kept=kept_and_bought(plan, "fertilizer", fertilizer.id),
        pound=nutrient_price(fertilizer),
        jobs=jobs_with_places(plan, jobs),
    )


def lime_page(plan: Plan, lime: Lime) -> Written:
    """Return a lime with the strength its seller states and the jobs that take it."""
    jobs = [job for job in plan.jobs if lime.id in job.needs]
    return from_template(
        plan,
        f"products/{address_of(lime)}.md",
        lime.name,
        MONEY,
        "lime",
        [lime.name, "lime", lime.note or ""],
        ("product",),
        lime=lime,
        kept=kept_and_bought(plan, "lime", lime.id),
        jobs=jobs_with_places(plan, jobs),
    )
