"""Pages of the ground: places, stands, routes."""

import datetime
from collections.abc import Mapping

from generator.book.pages.counts import OUTCOMES
from generator.book.pages.history import DoneHere, done_here
from generator.book.pages.pictures_ground import place_ground
from generator.book.pages.pictures_standing import (
    HeightsPictured,
    ScreenPictured,
    heights_picture,
    screen_picture,
)
from generator.book.pages.seen import heights
from generator.book.pages.stands_walks import crops_by, forbids, stay_out_dates
from generator.book.pages.written import (
    PLACES,
    Written,
    address_of,
    from_template,
    next_jobs,
    soil_test_title,
)
from generator.dataclass import dataclass
from generator.inventory.ground import SoilTest
from generator.inventory.log import LogEntry
from generator.inventory.places import PlantedGround, Route, Screen, hidden_by
from generator.inventory.stock import Product, SeedLot
from generator.inventory.woody import Guard, Plant
from generator.plan.findings.about_after import AfterCaution
from generator.plan.findings.about_places import PlaceCaution
from generator.plan.jobs.ground import WAY_WORDS
from generator.plan.model.counts import PlantingCounts
from generator.plan.model.days import Span
from generator.plan.model.finding import Finding
from generator.plan.model.job import Job, UpkeepJob
from generator.plan.model.place import Place
from generator.plan.model.plan import ActiveTotal, Plan, grouped
from generator.plan.sowing.sown_how import METHOD_WORDS
from generator.plan.standing.heights import Heights
from generator.plan.standing.heights_told import LastMeasured, last_measured, told_heights
from generator.plan.standing.planting_curves import Growing, standing_growth
from generator.plan.standing.standing_now import StandsNow, stands_now
from generator.plan.standing.verdicts import (
    ScreenJudged,
    hides_from,
    judged,
    looked_until,
    needed_on,
)
from generator.reference.growth import has_kinds
from generator.reference.library import (
    Species,
    planting_kinds,
    species,
    values,
    ways_of_working,
)
from generator.reference.steps import StepPlan
from generator.reference.weeds import OTHER
from generator.units import LatLon
from generator.working import Given

# Cautions that keep somebody away, so they stand open as stops do.
_KEEPS_AWAY = tuple(
    reason.value.code for reason in (AfterCaution.KEEP_OUT, PlaceCaution.STRAPS_NOT_LOOKED_OVER)
)


@dataclass(frozen=True, slots=True)
class NextJob:
    """The job that comes next on a place, with its place and what stops it."""

    job: Job
    place: Place
    stops: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class PlaceShown:
    """A place as its page shows it: what lies there, what grows, what was done and seen.

    `ends` are the points it runs from and to, one of an outline; `hides_from` is the day from which
    on it hides, asked until `looked_until`; `next_job` is the first that is ahead; `done` is what
    the log has of it, the newest first, `products` are those named in it; `jobs` are those of the
    season, each with whether a stop stands on it; `told_heights` are curves with their rows and
    what was last measured; `judged` are verdicts by their days.
    """

    place: Place
    typed: PlantedGround | None
    ends: tuple[LatLon, ...]
    stands: StandsNow
    hides: tuple[str, ...]
    hides_from: datetime.date | None
    looked_until: datetime.date
    forbids: tuple[Finding, ...]
    other_findings: tuple[Finding, ...]
    stay_out: tuple[Span, ...]
    next_job: NextJob | None
    done: list[DoneHere]
    products: list[Product]
    jobs: list[tuple[Job, bool]]
    actives: tuple[ActiveTotal, ...]
    shares: list[tuple[Place, str]]
    counts: tuple[PlantingCounts, ...]
    heights: list[LogEntry]
    height_pictures: list[HeightsPictured]
    screen_pictures: list[ScreenPictured]
    told_heights: list[tuple[Growing, tuple[Heights, ...], LastMeasured | None]]
    judged: dict[datetime.date, ScreenJudged]
    needed: Given | None

    @property
    def is_screen(self) -> bool:
        """Whether it is there to hide somebody."""
        return isinstance(self.typed, Screen)

    @property
    def first_judged(self) -> ScreenJudged | None:
        """The verdict of the first hunted day that is asked about."""
        return next(iter(self.judged.values()), None)


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
        names=names_of_ground(plan),
        way_words=WAY_WORDS,
        method_words=METHOD_WORDS,
        outcomes=OUTCOMES,
        has_kinds=has_kinds,
        gap=values()["two_stations_apart_ft"],
        waits=next((one for one in plan.decided.waits if one.place_id == place.id), None),
        kinds=planting_kinds(),
        works=ways_of_working(),
        other=OTHER,
        address_of=address_of,
        crops=crops_by(plan, place.id),
        lies=place_ground(plan, place),
    )


def _shown(plan: Plan, place: Place) -> PlaceShown:
    typed = place.typed
    plantings = typed.plantings if typed is not None else ()
    seen_heights = heights(plan, [planting.id for planting in plantings])
    standing = standing_growth(plan, place)
    curves = {growing.planting.id: growing for growing in standing}
    stopped = plan.stopped()
    found = plan.findings_on(place.id)
    done = done_here(plan, place)
    used = {amount.id for entry in done for amount in entry.used}
    coming = next_jobs(plan).get(place.id)
    return PlaceShown(
        place=place,
        typed=typed,
        ends=_ends(typed),
        stands=stands_now(plan, place),
        hides=hidden_by(typed) if typed is not None else (),
        hides_from=hides_from(plan, place),
        looked_until=looked_until(plan),
        forbids=tuple(finding for finding in found if forbids(finding)),
        other_findings=tuple(finding for finding in found if not forbids(finding)),
        stay_out=stay_out_dates(plan, place.id, plan.as_of),
        next_job=_next_job(plan, coming[0], place) if coming is not None else None,
        done=done,
        products=_products_named(plan, used, coming[0] if coming is not None else None),
        jobs=[(job, job.id in stopped) for job in plan.jobs_on(place.id)],
        actives=plan.once("actives", _actives_by_place).get(place.id, ()),
        shares=_shares(plan, place),
        counts=plan.decided.of_place(place.id),
        heights=seen_heights,
        height_pictures=[
            picture
            for planting in plantings
            if planting.season <= plan.season + 1
            if (
                picture := heights_picture(
                    plan, place, planting, curves.get(planting.id), seen_heights
                )
            )
        ],
        screen_pictures=[
            beside
            for growing in standing
            if (beside := screen_picture(plan, place, growing)) is not None
        ],
        told_heights=[
            (growing, told, last_measured(growing))
            for growing in standing
            if (told := told_heights(plan, growing))
        ],
        judged={verdict.day: verdict for verdict in judged(plan, place)},
        needed=needed_on(place),
    )


def _next_job(plan: Plan, job: Job | UpkeepJob, place: Place) -> NextJob | None:
    if isinstance(job, UpkeepJob):
        return None
    found = plan.findings_on(job.id)
    return NextJob(job, place, tuple(stop for stop in found if stop.severity == "stop"))


def _products_named(plan: Plan, used: set[str], job: Job | UpkeepJob | None) -> list[Product]:
    """Return the products that the log or the next job names on a place."""
    mix = job.mix if isinstance(job, Job) else None
    named = used | {part.product.id for part in mix.parts} if mix is not None else used
    return [product for product in plan.land.products if product.id in named]


def _ends(typed: PlantedGround | None) -> tuple[LatLon, ...]:
    """Return the ends of a typed line, else the first corner of an outline, else nothing."""
    if typed is None:
        return ()
    if typed.line_lat_lon is not None:
        return (typed.line_lat_lon.lat_lon[0], typed.line_lat_lon.lat_lon[-1])
    return (typed.area_lat_lon.lat_lon[0],) if typed.area_lat_lon is not None else ()


def names_of_ground(plan: Plan) -> Names:
    """Return the things that pages of places name, by their ids."""
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
