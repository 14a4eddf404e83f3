"""What a job rests on: place, planting, step, dates and the owner's word for it."""

import datetime
from dataclasses import dataclass

from generator.inventory.places import Planting, Screen, Work
from generator.inventory.schema import Inventory
from generator.plan.calendar import open_dates
from generator.plan.model import OpenDates
from generator.reference.load import Step, step_plans
from generator.working import Quantity


@dataclass(frozen=True, slots=True)
class JobAsked:
    """All that a job rests on, before anything is worked out."""

    job_id: str
    season: int
    screen: Screen
    planting: Planting
    step: Step
    kind: str
    species: tuple[str, ...]
    dates: OpenDates
    sowing_opens: datetime.date | None
    work: Work | None
    area: Quantity


def asked_of(
    inventory: Inventory,
    screen: Screen,
    planting: Planting,
    step: Step,
    area: Quantity,
) -> JobAsked:
    """Return what a step on a planting rests on."""
    signs = inventory.property.season_signs
    season = planting.season + step.seasons_later
    plan = step_plans()[planting.steps]
    sowing = next((one for one in plan.steps if one.operation == "sow"), None)
    return JobAsked(
        job_id=f"{screen.id}/{season}/{step.id}",
        season=season,
        screen=screen,
        planting=planting,
        step=step,
        kind=plan.kind,
        species=_species(planting, inventory),
        dates=open_dates(step, season, signs),
        sowing_opens=open_dates(sowing, planting.season, signs).opens if sowing else None,
        work=work_of(planting, step),
        area=area,
    )


def _species(planting: Planting, inventory: Inventory) -> tuple[str, ...]:
    plants = {one.id: one.species for one in inventory.plants}
    sown = (one.species for one in planting.seed)
    return (*sown, *(plants[one.plants] for one in planting.woody))


def work_of(planting: Planting, step: Step) -> Work | None:
    """Return how the owner means to do a step, where it is described."""
    return next((one for one in planting.work if one.step == step.id), None)
