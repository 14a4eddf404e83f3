"""What a job rests on: place, planting, step, dates and the owner's word for it."""

import datetime
from collections.abc import Iterator, Mapping, Sequence

from generator.dataclass import dataclass
from generator.inventory.places import PlantedGround, Planting, Work
from generator.inventory.schema import Inventory
from generator.inventory.woody import Plant
from generator.plan.model.job import OpenDates
from generator.plan.season.open_dates import open_dates
from generator.plan.season.season_markers import markers_for
from generator.reference.steps import Step, StepPlan
from generator.working import Quantity

# A step of a plan in a season, by the ids of both.
_StepIn = tuple[str, str, int]


@dataclass(frozen=True, slots=True)
class JobRequest:
    """All that a job rests on, before anything is worked out."""

    job_id: str
    season: int
    ground: PlantedGround
    planting: Planting
    step: Step
    plan: StepPlan
    kind: str
    species: tuple[str, ...]
    dates: OpenDates
    sowing_opens: datetime.date | None
    sowing_closes: datetime.date | None
    work: Work | None
    area: Quantity


def every_job(
    inventory: Inventory, areas: Mapping[str, Quantity], seasons: Sequence[int]
) -> Iterator[JobRequest]:
    """Yield what every job rests on that a step plan has, asked for or not, in any season.

    Of a plan that comes back every season, the jobs of the seasons asked for.
    """
    plans, dates = inventory.plans(), _StepDates(inventory)
    for ground in inventory.places():
        for planting in ground.plantings:
            plan, area = plans[planting.steps], areas[ground.id]
            for step in plan.steps if planting.once is not None else ():
                done_in = planting.season + step.seasons_later
                yield _asked_of(dates, ground, planting, plan, step, done_in, area)
            yield from _yearly_of(dates, ground, planting, area, seasons)


def yearly_jobs(
    inventory: Inventory, areas: Mapping[str, Quantity], seasons: Sequence[int]
) -> Iterator[JobRequest]:
    """Yield, asked for or not, the jobs of seasons that plans ask for in every season."""
    dates = _StepDates(inventory)
    for ground in inventory.places():
        for planting in ground.plantings:
            yield from _yearly_of(dates, ground, planting, areas[ground.id], seasons)


class _StepDates:
    """When steps are done, each once: of most plantings of one plan the days are the same."""

    def __init__(self, inventory: Inventory) -> None:
        self.inventory = inventory
        self._found: dict[_StepIn, OpenDates] = {}

    def of(self, plan: StepPlan, step: Step, season: int, planting: Planting) -> OpenDates:
        """Return the open dates of a step of a planting in a season."""
        typed = self.inventory.property.season_signs
        signs = markers_for(planting, typed)
        if signs is not typed:
            return open_dates(step, season, signs)
        key = (plan.id, step.id, season)
        if key not in self._found:
            self._found[key] = open_dates(step, season, signs)
        return self._found[key]


def _yearly_of(
    dates: _StepDates,
    ground: PlantedGround,
    planting: Planting,
    area: Quantity,
    seasons: Sequence[int],
) -> Iterator[JobRequest]:
    """Yield the yearly jobs of a planting while it stands: until a later one takes its place."""
    plans = dates.inventory.plans()
    upkeep = plans[planting.yearly] if planting.yearly is not None else None
    if upkeep is None or upkeep.yearly_from is None:
        return
    later = [other.season for other in ground.plantings if other.season > planting.season]
    for season in seasons:
        if season >= planting.season + upkeep.yearly_from and season < min(
            later, default=season + 1
        ):
            for step in upkeep.steps:
                yield _asked_of(dates, ground, planting, upkeep, step, season, area)


def _asked_of(
    dates: _StepDates,
    ground: PlantedGround,
    planting: Planting,
    plan: StepPlan,
    step: Step,
    season: int,
    area: Quantity,
) -> JobRequest:
    sowing = next((planned for planned in plan.steps if planned.does.sows), None)
    # in the season of the planting, however many seasons later the step itself is done; what is
    # sown into a standing one every season is sown in that season
    sown_in = planting.season if plan.yearly_from is None else season
    sown = dates.of(plan, sowing, sown_in, planting) if sowing is not None else None
    return JobRequest(
        job_id=f"{ground.id}/{season}/{step.id}",
        season=season,
        ground=ground,
        planting=planting,
        step=step,
        plan=plan,
        kind=plan.kind or "",
        species=species_of(planting, dates.inventory.plants),
        dates=dates.of(plan, step, season, planting),
        sowing_opens=sown.opens if sown is not None else None,
        sowing_closes=sown.closes if sown is not None else None,
        work=work_of(planting, step),
        area=area,
    )


def species_of(planting: Planting, plants: tuple[Plant, ...]) -> tuple[str, ...]:
    """Return what a planting is of: what it sows and plants, and what stood there before."""
    species = {plant.id: plant.species for plant in plants}
    sown = (seed.species for seed in planting.seed)
    planted = (species[row.plants] for row in planting.woody)
    return tuple(dict.fromkeys((*planting.species, *sown, *planted)))


def work_of(planting: Planting, step: Step) -> Work | None:
    """Return how the owner means to do a step, where it is described."""
    return next((work for work in planting.work if work.step == step.id), None)
