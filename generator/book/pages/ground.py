"""Pages of the ground: places, stands, routes."""

import datetime
from collections.abc import Mapping

from generator.book.content import chapters_for
from generator.book.pages.counts import OUTCOMES
from generator.book.pages.dates import DATE_KINDS
from generator.book.pages.pictures import Pictured, heights_picture
from generator.book.pages.seen import heights, last_look, looked_over, sight_checks
from generator.book.pages.written import (
    PLACES,
    STANDS,
    Written,
    address_of,
    from_template,
    plan_of_upkeep,
    soil_test_title,
    upkeep_of,
)
from generator.dataclass import dataclass
from generator.inventory.dates import HUNTED
from generator.inventory.ground import SoilTest
from generator.inventory.log import LogEntry
from generator.inventory.places import PlantedGround, Route, Screen, Stand, hidden_by
from generator.inventory.stock import SeedLot
from generator.inventory.woody import Guard, Plant
from generator.plan.days.shooting import on_stand, weeks
from generator.plan.jobs.ground import WAY_WORDS
from generator.plan.model.counts import PlantingCounts
from generator.plan.model.finding import Finding
from generator.plan.model.job import Job
from generator.plan.model.place import Place
from generator.plan.model.plan import ActiveTotal, Plan, grouped
from generator.plan.readers.partner import hunted_on
from generator.plan.sowing.sown_how import METHOD_WORDS
from generator.plan.standing.heights import Heights
from generator.plan.standing.heights_told import LastMeasured, last_measured, told_heights
from generator.plan.standing.planting_curves import Growing, standing_growth
from generator.plan.standing.verdicts import ScreenJudged, judged, needed_on
from generator.reference.growth import has_kinds
from generator.reference.library import Species, species, values
from generator.reference.steps import StepPlan
from generator.working import Given


@dataclass(frozen=True, slots=True)
class PlaceShown:
    """A place as its page shows it: what lies there, what grows, what was counted and seen.

    `jobs` are those of the season, each with whether a stop stands on it; `told_heights` are curves
    with their rows and what was last measured; `judged` are verdicts by their days.
    """

    place: Place
    typed: PlantedGround | None
    hides: tuple[str, ...]
    findings: tuple[Finding, ...]
    jobs: list[tuple[Job, bool]]
    actives: tuple[ActiveTotal, ...]
    shares: list[tuple[Place, str]]
    counts: tuple[PlantingCounts, ...]
    looks: list[LogEntry]
    heights: list[LogEntry]
    height_pictures: list[Pictured]
    told_heights: list[tuple[Growing, tuple[Heights, ...], LastMeasured | None]]
    judged: dict[datetime.date, ScreenJudged]
    needed: Given | None

    @property
    def is_screen(self) -> bool:
        """Whether it is there to hide somebody."""
        return isinstance(self.typed, Screen)


@dataclass(frozen=True, slots=True)
class Names:
    """The things that a place's page names, by their ids."""

    species: Mapping[str, Species]
    step_plans: Mapping[str, StepPlan]
    routes: Mapping[str, Route]
    soil_tests: Mapping[str, SoilTest]
    soil_titles: Mapping[str, str]
    plants: Mapping[str, Plant]
    guards: Mapping[str, Guard]
    lots: Mapping[str, SeedLot]


def place_page(plan: Plan, place: Place) -> Written:
    """Return a place with its plantings and jobs."""
    shown = _shown(plan, place)
    said = [place.name, *(job.step.name for job, _ in shown.jobs)]
    if (typed := place.typed) is not None:
        said += [planting.steps.replace("_", " ") for planting in typed.plantings]
        said += [typed.IN_WORDS, typed.note or "", typed.known_as or ""]
    return from_template(
        plan,
        f"places/{place.address}.md",
        place.name,
        PLACES,
        "place",
        said,
        ("place",),
        at=shown,
        names=_names(plan),
        way_words=WAY_WORDS,
        method_words=METHOD_WORDS,
        outcomes=OUTCOMES,
        has_kinds=has_kinds,
        gap=values()["two_stations_apart_ft"],
        address_of=address_of,
    )


def _shown(plan: Plan, place: Place) -> PlaceShown:
    typed = place.typed
    plantings = typed.plantings if typed is not None else ()
    seen_heights = heights(plan, [planting.id for planting in plantings])
    standing = standing_growth(plan, place)
    curves = {growing.planting.id: growing for growing in standing}
    stopped = plan.stopped()
    return PlaceShown(
        place=place,
        typed=typed,
        hides=hidden_by(typed) if typed is not None else (),
        findings=plan.findings_on(place.id),
        jobs=[(job, job.id in stopped) for job in plan.jobs_on(place.id)],
        actives=plan.once("actives", _actives_by_place).get(place.id, ()),
        shares=_shares(plan, place),
        counts=plan.decided.of_place(place.id),
        looks=looked_over(plan, place.id),
        heights=seen_heights,
        height_pictures=[
            picture
            for planting in plantings
            if planting.season <= plan.season + 1
            if (picture := heights_picture(plan, planting, curves.get(planting.id), seen_heights))
        ],
        told_heights=[
            (growing, told, last_measured(growing))
            for growing in standing
            if (told := told_heights(plan, growing))
        ],
        judged={verdict.day: verdict for verdict in judged(plan, place)},
        needed=needed_on(place),
    )


def _names(plan: Plan) -> Names:
    land = plan.land
    return Names(
        species=species(),
        step_plans={step_plan.id: step_plan for step_plan in land.step_plans},
        routes={route.id: route for route in land.routes},
        soil_tests={test.id: test for test in land.soil_tests},
        soil_titles=plan.once("soil titles", _soil_titles),
        plants={plant.id: plant for plant in land.plants},
        guards={guard.id: guard for guard in land.guards},
        lots={lot.id: lot for lot in land.lots},
    )


def _actives_by_place(plan: Plan) -> Mapping[str, tuple[ActiveTotal, ...]]:
    return grouped((active.place_id, active) for active in plan.actives)


def _soil_titles(plan: Plan) -> Mapping[str, str]:
    return {test.id: soil_test_title(plan, test) for test in plan.land.soil_tests}


def _shares(plan: Plan, place: Place) -> list[tuple[Place, str]]:
    """Return the other places on some of the ground of a place, and how that is known."""
    pairs = [
        (pair.other if pair.one == place.id else pair.one, pair.why)
        for pair in plan.shared_grounds
        if place.id in (pair.one, pair.other)
    ]
    return [(plan.place(name), why) for name, why in pairs]


def stand_page(plan: Plan, stand: Stand) -> Written:
    """Return a hunting stand."""
    serving = [route for route in plan.land.routes if stand.id in route.serves]
    return from_template(
        plan,
        f"stands/{address_of(stand)}.md",
        stand.name,
        STANDS,
        "stand",
        [stand.name, stand.note or "", *(route.name for route in serving)],
        ("stand",),
        stand=stand,
        routes=serving,
        findings=plan.findings_on(stand.id),
        looks=looked_over(plan, stand.id),
        look=last_look(plan, stand),
        upkeep=upkeep_of(plan, stand.id),
        upkeep_plan=plan_of_upkeep(plan, stand),
        hunted=hunted_on(plan.others_out, stand.id, HUNTED),
        hours=[
            (hunted, DATE_KINDS[hunted.dates.kind], weeks(hunted))
            for hunted in on_stand(plan.hunted, stand.id)
        ],
        address_of=address_of,
    )


def route_page(plan: Plan, route: Route) -> Written:
    """Return an access route."""
    hiding = [
        place
        for place in plan.places
        if place.typed is not None and route.id in hidden_by(place.typed)
    ]
    return from_template(
        plan,
        f"routes/{address_of(route)}.md",
        route.name,
        STANDS,
        "route",
        [route.name, route.note or ""],
        ("route",),
        route=route,
        stands=[stand for stand in plan.land.stands if stand.id in route.serves],
        hiding=hiding,
        sights=sight_checks(plan, route.id),
        upkeep=upkeep_of(plan, route.id),
        upkeep_plan=plan_of_upkeep(plan, route),
        hunted=hunted_on(plan.others_out, route.id, HUNTED),
        findings=plan.findings_on(route.id),
        address_of=address_of,
        chapters=chapters_for(plan.reader, ("walking-in",)),
    )
