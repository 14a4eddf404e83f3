"""Steps that a reader is handed and that come to no job: a sheet is waited for that never comes."""

from collections.abc import Collection, Iterator, Mapping

from generator.inventory.ground import SoilTest
from generator.inventory.places import Planting
from generator.inventory.schema import Inventory, Reader
from generator.plan.findings.about_readers import ReaderCaution
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.jobs.soil import is_asked_for
from generator.plan.model.finding import READERS, Finding
from generator.reference.steps import Step, StepPlan

# Why a step that stands only with something makes no job, and what would ask for it.
ASKED_BY = {
    "work": ("the planting does not ask for it", " Ask for it under work: there."),
    "lime": ("the planting asks for no lime", " Ask for it with lime: there."),
    "fertilizer": (
        "the planting asks for no fertilizer and no nutrients",
        " Ask for it with fertilizers: and need: there.",
    ),
}


def promised_findings(
    looked_at: Collection[JobRequest], last_season: int, inventory: Inventory
) -> list[Finding]:
    """Return a caution for each step that is handed over and makes no job up to a season."""
    plantings = {
        planting.id: planting for place in inventory.places() for planting in place.plantings
    }
    made = {(request.planting.id, request.step.id) for request in looked_at}
    return [
        caution
        for reader in inventory.readers
        for caution in _promised_to(reader, plantings, made, last_season, inventory)
    ]


def _promised_to(
    reader: Reader,
    plantings: dict[str, Planting],
    made: set[tuple[str, str]],
    last_season: int,
    inventory: Inventory,
) -> Iterator[Finding]:
    for jobs in reader.jobs:
        planting = plantings[jobs.planting]
        steps = {step.id: step for step in inventory.steps_of(planting)}
        for number, name in enumerate(jobs.steps):
            if name not in steps or (planting.id, name) in made:
                continue
            lacks = _why(
                steps[name], planting, last_season, inventory.soil_tests, inventory.plans()
            )
            if lacks is not None:
                why, typed = lacks
                yield finding(
                    ReaderCaution.HANDED_WITHOUT_A_JOB,
                    READERS,
                    jobs.where_of("steps", number=number),
                    step=name,
                    planting=planting.id,
                    reader=reader.name or reader.id,
                    why=why,
                    typed=typed,
                )


def _why(
    step: Step,
    planting: Planting,
    last_season: int,
    soil_tests: tuple[SoilTest, ...],
    plans: Mapping[str, StepPlan],
) -> tuple[str, str] | None:
    """Return why no job comes of a step, None where it may still come in a later season.

    Beside it stands what to type for a job, empty where nothing asks for one.
    """
    if not is_asked_for(step, planting, soil_tests):
        return ASKED_BY[step.only_with or "work"]
    upkeep = plans[planting.yearly] if planting.yearly is not None else None
    begins = planting.season + (upkeep.yearly_from or 0) if upkeep is not None else None
    if begins is not None and begins > last_season:
        return None
    return "a later planting has taken the place of this one", ""
