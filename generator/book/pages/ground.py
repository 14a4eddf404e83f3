"""Pages of the ground: places, stands, routes."""

import datetime
from collections.abc import Mapping

from generator.book.content import chapters_for
from generator.book.pages.counts import OUTCOMES
from generator.book.pages.dates import DATE_KINDS
from generator.book.pages.history import DoneHere, done_here
from generator.book.pages.pictures_standing import (
    HeightsPictured,
    ScreenPictured,
    heights_picture,
    screen_picture,
)
from generator.book.pages.seen import heights, inspections, last_look, sight_checks
from generator.book.pages.written import (
    PLACES,
    STANDS,
    Written,
    address_of,
    from_template,
    next_jobs,
    plan_of_upkeep,
    soil_test_title,
)
from generator.dataclass import dataclass
from generator.inventory.dates import HUNTED
from generator.inventory.ground import SoilTest
from generator.inventory.log import LogEntry
from generator.inventory.places import PlantedGround, Route, Screen, Stand, hidden_by
from generator.inventory.stock import Product, SeedLot
from generator.inventory.woody import Guard, Plant
from generator.plan.days.shooting import on_stand, weeks
from generator.plan.findings.about_after import AfterCaution
from generator.plan.findings.about_places import PlaceCaution
from generator.plan.jobs.ground import WAY_WORDS
from generator.plan.jobs.job_days import LAST_OF_SEASON
from generator.plan.model.counts import PlantingCounts
from generator.plan.model.days import Span, days_of
from generator.plan.model.finding import Finding
from generator.plan.model.job import Job, UpkeepJob
from generator.plan.model.place import Place
from generator.plan.model.plan import ActiveTotal, HuntedDates, HuntedWeek, Plan, grouped
from generator.plan.readers.partner import hunted_on
from generator.plan.season.open_dates import day_in_season
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
from generator.plan.views.closed import ClosedJob, closed_without_record
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

QUIET = "quiet"
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
        forbids=tuple(finding for finding in found if _forbids(finding)),
        other_findings=tuple(finding for finding in found if not _forbids(finding)),
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


def _forbids(finding: Finding) -> bool:
    return finding.severity == "stop" or finding.code in _KEEPS_AWAY


def stay_out_dates(plan: Plan, thing_id: str, first: datetime.date) -> tuple[Span, ...]:
    """Return the stay-out dates on a thing from a day on to the end of the plan's season."""
    last = day_in_season(LAST_OF_SEASON, plan.season)
    return days_of(plan.land.dates, (QUIET,), thing_id, (first, last)) if first <= last else ()


def _missed(plan: Plan, thing_id: str) -> list[ClosedJob]:
    """Return the work on a thing that closed without a record and that no later one settles."""
    closed = plan.once("closed", closed_without_record)
    return [
        job
        for job in closed
        if job.thing_id == thing_id and job.settled_by is None and not job.is_optional
    ]


def _missed_on_straps(plan: Plan, stand: Stand) -> list[ClosedJob]:
    """Return the missed work on a stand's straps; a later inspection by file settles it too."""
    looked = stand.straps_checked_on
    return [
        job
        for job in _missed(plan, stand.id)
        if job.step.does.asks_sound and (looked is None or looked <= job.last_day)
    ]


def _ahead_and_over(plan: Plan, subject_id: str) -> tuple[list[UpkeepJob], list[UpkeepJob]]:
    """Return the maintenance that is ahead, and what is over, the newest first."""
    jobs = plan.upkeep_of(subject_id)
    over = [job for job in jobs if not job.state.is_ahead]
    return [job for job in jobs if job.state.is_ahead], over[::-1]


def stand_page(plan: Plan, stand: Stand) -> Written:
    """Return a hunting stand: what forbids it, when it can be hunted, and what is known of it."""
    serving = [route for route in plan.land.routes if stand.id in route.serves]
    found = plan.findings_on(stand.id)
    ahead, over = _ahead_and_over(plan, stand.id)
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
        is_stopped=any(finding.severity == "stop" for finding in found),
        forbids=[finding for finding in found if _forbids(finding)],
        other_findings=[finding for finding in found if not _forbids(finding)],
        stay_out=stay_out_dates(plan, stand.id, plan.as_of),
        missed=_missed_on_straps(plan, stand),
        inspections=inspections(plan, stand),
        look=last_look(plan, stand),
        upkeep_ahead=ahead,
        upkeep_over=over,
        upkeep_plan=plan_of_upkeep(plan, stand),
        hunted=hunted_on(plan.others_out, stand.id, HUNTED),
        hours=[_hours(plan, hunted, stand) for hunted in on_stand(plan.hunted, stand.id)],
        address_of=address_of,
    )


def _hours(
    plan: Plan, hunted: HuntedDates, stand: Stand
) -> tuple[HuntedDates, str, list[HuntedWeek], list[HuntedWeek]]:
    """Return hunting dates on a stand with their weeks to come and those that are over."""
    found = weeks(hunted, stay_out_dates(plan, stand.id, hunted.spans[0][0]))
    return (
        hunted,
        DATE_KINDS[hunted.dates.kind],
        [week for week in found if week.last >= plan.as_of],
        [week for week in found if week.last < plan.as_of],
    )


def route_page(plan: Plan, route: Route) -> Written:
    """Return a walk: whether somebody on it is hidden, what comes next on it, what was done."""
    screens = [
        place
        for place in plan.places
        if place.typed is not None and route.id in hidden_by(place.typed)
    ]
    stopped = plan.stopped()
    ahead, over = _ahead_and_over(plan, route.id)
    return from_template(
        plan,
        f"routes/{address_of(route)}.md",
        route.name,
        STANDS,
        "route",
        [route.name, route.note or ""],
        ("route",),
        route=route,
        stands=[
            (stand, stand.id in stopped) for stand in plan.land.stands if stand.id in route.serves
        ],
        screens=[
            (place, next(iter(judged(plan, place)), None), hides_from(plan, place))
            for place in screens
        ],
        sights=sight_checks(plan, route.id),
        stay_out=stay_out_dates(plan, route.id, plan.as_of),
        missed=_missed(plan, route.id),
        upkeep_ahead=ahead,
        upkeep_over=over,
        upkeep_plan=plan_of_upkeep(plan, route),
        hunted=hunted_on(plan.others_out, route.id, HUNTED),
        forbids=[finding for finding in plan.findings_on(route.id) if _forbids(finding)],
        other_findings=[finding for finding in plan.findings_on(route.id) if not _forbids(finding)],
        address_of=address_of,
        chapters=chapters_for(plan.reader, ("walking-in",)),
    )
