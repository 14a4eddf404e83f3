"""Pages of stands and walks: what forbids them first, then hours, inspections and work."""

import datetime

from generator.book.content import chapters_for
from generator.book.pages.dates import DATE_KINDS, law_told
from generator.book.pages.pictures_ground import stand_ground, walk_ground
from generator.book.pages.seen import inspections, last_look, sight_checks
from generator.book.pages.sits import away_told
from generator.book.pages.week import in_attribute
from generator.book.pages.wind_months import has_wind_months
from generator.book.pages.written import (
    STANDS,
    Written,
    address_of,
    from_template,
    plan_of_upkeep,
)
from generator.inventory.crops import CropBeside
from generator.inventory.dates import HUNTED
from generator.inventory.places import Route, Stand, hidden_by
from generator.plan.days.shooting import on_stand, weeks
from generator.plan.findings.about_after import AfterCaution
from generator.plan.findings.about_places import PlaceCaution
from generator.plan.jobs.job_days import LAST_OF_SEASON
from generator.plan.jobs.lane_mowing import lane_mowing
from generator.plan.model.days import Span, days_of
from generator.plan.model.finding import Finding
from generator.plan.model.job import UpkeepJob
from generator.plan.model.place import OpenWalk
from generator.plan.model.plan import HuntedDates, HuntedWeek, Plan
from generator.plan.model.sits import StandAnswer, WhyNot, hours_words
from generator.plan.readers.partner import hunted_on
from generator.plan.season.open_dates import day_in_season
from generator.plan.sits.sits_over import counted_by_wind, sits_over
from generator.plan.standing.verdicts import (
    hides_from,
    judged,
)
from generator.plan.views.closed import ClosedJob, closed_without_record
from generator.plan.walks.crops_beside import CropCut, crop_cut, crops_of, cut_in
from generator.plan.winds.slope_air import slope_air
from generator.plan.winds.widths import counts_from, drifts_below
from generator.plan.winds.winds_told import eight_winds
from generator.reference.library import values

QUIET = "quiet"
# Cautions that keep somebody away, so they stand open as stops do.
_KEEPS_AWAY = tuple(
    reason.value.code for reason in (AfterCaution.KEEP_OUT, PlaceCaution.STRAPS_NOT_LOOKED_OVER)
)


def forbids(finding: Finding) -> bool:
    """Return whether a finding keeps somebody away from a thing: it stands open on its page."""
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


def opened_walks(plan: Plan) -> dict[str, OpenWalk]:
    """Return the walks that count as open from a day on, by their ids."""
    return {walk.route: walk for walk in plan.open_walks}


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
        forbids=[finding for finding in found if forbids(finding)],
        other_findings=[finding for finding in found if not forbids(finding)],
        stay_out=stay_out_dates(plan, stand.id, plan.as_of),
        away=away_told(plan, stand.id),
        missed=_missed_on_straps(plan, stand),
        inspections=inspections(plan, stand),
        look=last_look(plan, stand),
        upkeep_ahead=ahead,
        upkeep_over=over,
        upkeep_plan=plan_of_upkeep(plan, stand),
        winds=eight_winds(stand, plan.land.routes),
        slope=slope_air(stand),
        drifts=drifts_below(stand),
        counts=counts_from(stand),
        names_of_walks={route.id: route.name for route in plan.land.routes},
        known=values(),
        has_months=has_wind_months(plan),
        hunted=hunted_on(plan.others_out, stand.id, HUNTED),
        hours=[_hours(plan, hunted, stand) for hunted in on_stand(plan.hunted, stand.id)],
        law=plan.once("law told", law_told),
        opened=opened_walks(plan),
        answers=[(answer, _forbids_all_day(answer)) for answer in plan.answers[stand.id]],
        days=in_attribute,
        hours_of_day=hours_words,
        sat_over=sits_over(stand, plan.land.routes, plan.entries),
        by_wind=counted_by_wind(stand, plan.entries),
        enough=values()["sits_before_counting_count"],
        lies=stand_ground(plan, stand),
        address_of=address_of,
    )


def _forbids_all_day(answer: StandAnswer) -> bool:
    """Return whether something forbids a stand whatever the hour."""
    return any(one.why is not WhyNot.TAKEN for one in answer.forbids)


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
        opened=opened_walks(plan).get(route.id),
        ways=_ways(plan, route),
        crops=crops_by(plan, route.id),
        lane=lane_mowing(route, plan.land.machines),
        stay_out=stay_out_dates(plan, route.id, plan.as_of),
        away=away_told(plan, route.id),
        missed=_missed(plan, route.id),
        upkeep_ahead=ahead,
        upkeep_over=over,
        upkeep_plan=plan_of_upkeep(plan, route),
        hunted=hunted_on(plan.others_out, route.id, HUNTED),
        forbids=[finding for finding in plan.findings_on(route.id) if forbids(finding)],
        other_findings=[finding for finding in plan.findings_on(route.id) if not forbids(finding)],
        address_of=address_of,
        chapters=chapters_for(plan.reader, ("walking-in",)),
        lies=walk_ground(plan, route),
    )


def _ways(plan: Plan, route: Route) -> list[tuple[Stand, list[tuple[Route, bool]]]]:
    """Return the stands of a walk that is open, each with the other ways in, none of which is."""
    opened = opened_walks(plan).get(route.id)
    if opened is None:
        return []
    routes = {other.id: other for other in plan.land.routes}
    return [
        (
            stand,
            [(routes[way.route], way.is_hidden) for way in opened.ways if way.stand == stand.id],
        )
        for stand in plan.land.stands
        if stand.id in opened.stands
    ]


def crops_by(plan: Plan, beside_id: str) -> list[tuple[CropBeside, CropCut | None]]:
    """Return the crops beside a walk or a screen, each with the day of its cut if it is known."""
    entries = cut_in(plan.entries)
    return [
        (standing.crop, crop_cut(standing, entries))
        for standing in crops_of(plan)
        if standing.beside.id == beside_id
    ]
