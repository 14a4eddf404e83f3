"""What stands on every place, season by season, and the ground it covers by its age."""

from typing import Literal

from generator.compute.buying import TOTAL_GROUND
from generator.dataclass import dataclass
from generator.inventory.places import Planting
from generator.inventory.season import season_of
from generator.plan.model.place import Place
from generator.plan.model.plan import Plan
from generator.plan.standing.standing_now import LASTING, kill_of
from generator.working import Quantity

SEASONS_SHOWN = 5

Age = Literal["first", "second", "third", "later", "woody", "food"]
AGES: dict[Age, str] = {
    "first": "Grass, first season",
    "second": "Grass, second season",
    "third": "Grass, third season",
    "later": "Grass, fourth season or later",
    "woody": "Trees and shrubs",
    "food": "Food strips and plots",
}
_GRASS_AGES: tuple[Age, ...] = ("first", "second", "third")


@dataclass(frozen=True, slots=True)
class Grown:
    """A planting that stands on a place in a season; `year` is its season of growth, from 1."""

    place: Place
    planting: Planting
    kind: str
    year: int


@dataclass(frozen=True, slots=True)
class SeasonAcres:
    """The ground of one season by the age of what stands on it; what covers none is left out."""

    season: int
    acres: dict[Age, Quantity]


def grown_in(plan: Plan, season: int) -> tuple[Grown, ...]:
    """Return what stands on the places in a season, as sown and as planned.

    The last planting counts. One that lasts a single season is gone after it, one whose sowing was
    missed stands on no place, and one that the log says was killed for another stands no longer.
    """
    return plan.once(f"grown in {season}", lambda plan: _grown_in(plan, season))


def _grown_in(plan: Plan, season: int) -> tuple[Grown, ...]:
    kinds = {step_plan.id: step_plan.kind or "" for step_plan in plan.land.step_plans}
    missed = {
        job.planting_id
        for job in plan.jobs
        if job.step.does.begins_planting and job.state.kind == "missed"
    }
    found: list[Grown] = []
    for place in plan.places:
        plantings = place.typed.plantings if place.typed is not None else ()
        sown = [
            planting
            for planting in plantings
            if planting.season <= season
            # what stood before stands on where seed was not thrown into it
            if planting.once is None or planting.id not in missed
            if not _is_killed(plan, place, planting, season)
        ]
        if not sown:
            continue
        last = max(sown, key=lambda planting: planting.season)
        kind = kinds[last.steps]
        if kind in LASTING or last.season == season:
            found.append(Grown(place, last, kind, season - last.season + 1))
    return tuple(found)


def _is_killed(plan: Plan, place: Place, planting: Planting, season: int) -> bool:
    """Whether all of a planting was killed in a season or before it, as the log has it."""
    kill = kill_of(plan.entries, plan.land, place, planting)
    return kill is not None and kill.whole and season_of(kill.on) <= season


def age_of(grown: Grown) -> Age:
    """Return the class of age a planting stands in: grass by its season, the rest by its kind."""
    if grown.kind == "woody_row":
        return "woody"
    if grown.kind not in ("native_grass", "native_legume"):
        return "food"
    return _GRASS_AGES[grown.year - 1] if grown.year <= len(_GRASS_AGES) else "later"


def acres_by_age(plan: Plan) -> tuple[SeasonAcres, ...]:
    """Return the ground by age over five seasons: the plan's, the one before, the three after."""
    first = plan.season - 1
    return tuple(acres_in(plan, first + number) for number in range(SEASONS_SHOWN))


def acres_in(plan: Plan, season: int) -> SeasonAcres:
    """Return the ground of one season by the age of what stands on it."""
    ground: dict[Age, list[Quantity]] = {}
    for grown in grown_in(plan, season):
        ground.setdefault(age_of(grown), []).append(grown.place.area)
    return SeasonAcres(
        season,
        {
            age: TOTAL_GROUND(f"acres/{plan.season}/{season}/{age}_ac", parts=tuple(ground[age]))
            for age in AGES
            if age in ground
        },
    )
