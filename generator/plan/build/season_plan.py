"""The one place where a plan is put together: jobs, lines, findings."""

import datetime
from collections.abc import Iterable
from dataclasses import replace

from generator.inventory.problems import listed
from generator.inventory.schema import Inventory
from generator.inventory.season import season_of
from generator.plan.after.crop_dangers import crop_cautions
from generator.plan.after.later import later_findings, sprayed_later
from generator.plan.after.plant_back import decide
from generator.plan.after.records import correction_findings, record_findings, spray_records
from generator.plan.after.reentry import reentry_findings
from generator.plan.build.planned_job import planned_job
from generator.plan.days.day_findings import day_findings
from generator.plan.days.paper_findings import paper_findings
from generator.plan.days.past_days import count_findings, counted_at, counted_days, ready_for
from generator.plan.days.shooting import hunted_dates, shooting_findings
from generator.plan.days.wind_days import wind_uses
from generator.plan.doubts.doubt_stops import doubt_stops
from generator.plan.doubts.every_doubt import doubt_findings, doubts
from generator.plan.findings.about_money import MoneyNote
from generator.plan.findings.about_places import PlaceCaution, PlaceNote, PlaceStop
from generator.plan.findings.order import finding, in_order, without_amounts
from generator.plan.jobs.ground import (
    ground_findings,
    place_on_its_ground,
)
from generator.plan.jobs.job_days import with_days
from generator.plan.jobs.latitudes import latitude_findings
from generator.plan.jobs.licenses import is_handed
from generator.plan.jobs.request import JobRequest, every_job, yearly_jobs
from generator.plan.jobs.safety import safety_lines
from generator.plan.jobs.same_ground import same_ground, shared_grounds
from generator.plan.jobs.slope import steep_cautions
from generator.plan.jobs.soil import is_asked_for
from generator.plan.labels.clearance import card_gaps
from generator.plan.labels.yearly_sums import active_totals
from generator.plan.log.done import begun_findings, entries_on
from generator.plan.log.entries import entries_in_force
from generator.plan.log.inspections import with_logged_days
from generator.plan.log.state import states_of
from generator.plan.log.told import sprayings_of
from generator.plan.log.upkeep import upkeep_jobs
from generator.plan.model.finding import WHOLE_FOLDER, Finding, stopped_in
from generator.plan.model.items import stock_items
from generator.plan.model.job import Job, JobState, OpenDates
from generator.plan.model.plan import BudgetLine, Plan
from generator.plan.money.budget import buying_of, priced
from generator.plan.money.field_work import hire_lines, machine_lines, work_times
from generator.plan.money.free_hours import hour_findings
from generator.plan.money.money_findings import money_findings
from generator.plan.readers.handed import handed_over
from generator.plan.readers.promised import promised_findings
from generator.plan.readers.shared_text import shared_text_findings
from generator.plan.season.open_dates import do_not_meet
from generator.plan.season.season_markers import with_markers
from generator.plan.season.weather_findings import weather_findings
from generator.plan.sowing.sow_job import season_reaches
from generator.plan.spraying.logged_sprays import as_logged
from generator.plan.spraying.spray_job import planned_sprays
from generator.plan.spraying.tank_before import tank_before_findings
from generator.plan.spraying.tank_log import with_logged_loads
from generator.plan.standing.burning import burning_findings
from generator.plan.standing.sod import sod_findings
from generator.plan.standing.upkeep_findings import upkeep_findings
from generator.plan.standing.water import water_findings, waters
from generator.plan.usual.causes import with_causes
from generator.plan.usual.days_to_come import days_to_come
from generator.plan.usual.far_points import far_findings, without_what_rests_on_it
from generator.plan.usual.usual_findings import usual_findings
from generator.plan.usual.usual_heights import height_findings
from generator.plan.usual.usual_machines import tests_to_come
from generator.plan.usual.usual_stock import stock_findings
from generator.plan.views.unanswered import unanswered
from generator.plan.views.years_ahead import jobs_ahead, seasons_ahead
from generator.reference.library import marker_names
from generator.working import Quantity


def make_plan(inventory: Inventory, season: int, as_of: datetime.date) -> Plan:
    """Return the owner's plan of a season: everything computed, nothing totalled for display."""
    # what is asked of typed signs goes by what was typed, not by what the weather gave
    typed, (inventory, weather) = inventory, with_markers(inventory)
    places = {place.id: place_on_its_ground(place, season) for place in inventory.places()}
    # A label's year takes in the sprayings of the seasons before and after.
    areas = {name: place.area for name, place in places.items()}
    ever = _asked_for(every_job(inventory, areas, (season - 1, season, season + 1)), inventory)
    shared = shared_grounds(inventory.places())
    grounds = same_ground(inventory.places(), shared)
    sprays = tuple(
        spray
        for request in ever
        if request.step.does.sprays
        for spray in planned_sprays(request, inventory, grounds[request.ground.id])
    )
    jobs: list[Job] = []
    found: list[Finding] = _sign_findings(typed)
    found += weather_findings(weather, inventory) if weather is not None else []
    found += [one for place in places.values() for one in ground_findings(place)]
    told = sprayings_of(inventory)
    entries = entries_in_force(inventory.entries, as_of, told)
    # before any job is planned: a load in the log may have changed what a tank held
    inventory = with_logged_days(with_logged_loads(inventory, entries, told), entries)
    water = waters(inventory, season)
    found += [one for hole in water for one in water_findings(hole)]
    # before labels are asked: a year adds up what was sprayed, not what was planned of it
    sprays = as_logged(sprays, ever, inventory, entries, grounds, areas)
    states = states_of(ever, entries, as_of)
    asked = tuple(
        request
        for request in ever
        if request.season == season or _is_owed(request, states[request.job_id], season, as_of)
    )
    # Looked at alone: what comes back every season is planned no further than the next.
    later = _asked_for(yearly_jobs(inventory, areas, seasons_ahead(season)[2:]), inventory)
    later_states = states_of(later, entries, as_of)
    listed = {request.job_id for request in asked}
    ahead = tuple(
        request
        for request in ever
        if request.job_id not in listed and states[request.job_id].is_ahead
    )
    reached = season_reaches(asked, season, inventory, entries, as_of, states)
    for request in asked:
        job, job_findings = planned_job(request, states[request.job_id], inventory, sprays, reached)
        jobs.append(job)
        # of what is done or not needed nothing is asked any more
        if job.state.is_settled:
            continue
        found += begun_findings(request, entries_on(request, entries))
        found += steep_cautions(request, inventory)
        found += job_findings + _date_findings(request, as_of) + _name_findings(request, inventory)
    found += usual_findings(asked, jobs, places.values(), inventory, season)
    # once stops of jobs and slips of sprayers are both there to be joined
    found = with_causes(found, asked, inventory)
    found += tests_to_come(inventory, as_of)
    found += height_findings(inventory, entries)
    found += far_findings(inventory)
    found += sod_findings(asked, ever, states, stopped_in(found))
    found += tank_before_findings(asked, ever, states, inventory)
    found += burning_findings(asked, ever, inventory, entries, states)
    found += crop_cautions(asked, states, inventory, season)
    found += day_findings(jobs, inventory, as_of)
    found += paper_findings(jobs, inventory, entries, as_of)
    records = spray_records(inventory, entries, areas)
    found += record_findings(records, as_of)
    found += correction_findings(inventory, told, as_of)
    found += reentry_findings(records, jobs, as_of, told, grounds)
    in_question = doubts(inventory, entries, as_of, lambda: inventory.property.season_signs)
    found += doubt_findings(in_question)
    found += doubt_stops(in_question, asked, states, inventory, as_of, grounds)
    decided, decided_findings = decide(
        inventory,
        places,
        ever,
        asked,
        entries,
        as_of,
        grounds,
        sprayed_later(inventory, as_of, grounds),
    )
    found += decided_findings
    upkeep = upkeep_jobs(inventory, season, entries, as_of)
    found += upkeep_findings(inventory, entries, as_of)
    found += latitude_findings(asked, states, upkeep, inventory)
    found += later_findings(asked, states, upkeep, inventory, as_of, grounds)
    found += _passed_over(inventory)
    found += card_gaps(inventory)
    hunted = hunted_dates(inventory, season)
    found += shooting_findings(hunted)
    findings = without_amounts(in_order(without_what_rests_on_it(found)))
    emergency = inventory.property.emergency
    stopped = stopped_in(findings)
    ordered = tuple(
        _held_back(job, inventory) if job.id in stopped else job
        for job in sorted(jobs, key=_job_order)
    )
    ordered = with_days(ordered, inventory)
    station = counted_at(weather.stations) if weather is not None else None
    ready = ready_for(ordered, station.series) if station is not None else {}
    suited = counted_days(ordered, ready, as_of)
    findings = in_order([*findings, *count_findings(ordered, suited)])
    plan = Plan(
        reader="owner",
        title=inventory.property.name,
        season=season,
        as_of=as_of,
        emergency=emergency,
        signs=inventory.property.season_signs,
        signs_looked_up_on=inventory.property.signs_looked_up_on,
        weather=weather,
        shared_grounds=shared,
        suited_days=suited,
        wind_use=wind_uses(ordered, weather.winds if weather else (), ready, as_of),
        note=inventory.property.note,
        location_lat_lon=inventory.property.location_lat_lon,
        places=tuple(places.values()),
        jobs=ordered,
        findings=findings,
        decided=decided,
        lines=priced(_lines(ordered), stock_items(inventory)),
        items=stock_items(inventory),
        entries=entries,
        records=records,
        machines=inventory.machines,
        hires=inventory.hires,
        cost_share=inventory.cost_share,
        soil_tests=inventory.soil_tests,
        fertilizers=inventory.fertilizers,
        limes=inventory.limes,
        water=water,
        actives=active_totals(sprays, _to_be_sprayed(ordered)),
        lots=inventory.lots,
        plants=inventory.plants,
        guards=inventory.guards,
        products=inventory.products,
        sprayers=inventory.sprayers,
        spreaders=inventory.spreaders,
        drills=inventory.drills,
        measures=inventory.measures,
        stands=inventory.stands,
        routes=inventory.routes,
        dates=inventory.dates,
        hunted=hunted,
        time_zone=inventory.property.time_zone,
        applicators=inventory.applicators,
        helpers=inventory.helpers,
        contractors=inventory.contractors,
        permits=inventory.permits,
        contracts=inventory.contracts,
        one_calls=inventory.one_calls,
        unanswered=unanswered(asked, states, inventory),
        upkeep=upkeep,
        ahead=jobs_ahead((*ever, *later), {**states, **later_states}, season),
        step_plans=tuple(inventory.plans().values()),
    )
    # step by step on the plan itself: hours rest on its jobs, lines on hours, money on lines
    plan = replace(plan, times=work_times(plan, inventory))
    plan = replace(plan, lines=(*plan.lines, *machine_lines(plan), *hire_lines(plan)))
    plan = replace(plan, buying=buying_of(plan))
    findings = in_order([*plan.findings, *money_findings(plan, inventory, ahead)])
    counted_later = {
        note.subject for note in findings if note.code == MoneyNote.COUNT_LATER.value.code
    }
    to_come = days_to_come(inventory, as_of, counted_later)
    plan = replace(plan, findings=findings)
    findings = in_order([*findings, *to_come, *stock_findings(plan, inventory)])
    plan = replace(plan, findings=findings)
    # before hours: what is handed over takes none of the owner's
    plan = replace(plan, handed=handed_over(plan, inventory.readers))
    promised = promised_findings((*ever, *later), seasons_ahead(season)[-1], inventory)
    findings = in_order([*plan.findings, *shared_text_findings(plan, inventory), *promised])
    plan = replace(plan, findings=findings)
    return replace(plan, findings=in_order([*plan.findings, *hour_findings(plan)]))


def _passed_over(inventory: Inventory) -> list[Finding]:
    """Return one note on all that lies in the property folder and is read by nobody."""
    names = listed(inventory.passed_over, "and")
    return [finding(PlaceNote.PASSED_OVER, WHOLE_FOLDER, names=names)] if names else []


def _asked_for(jobs: Iterable[JobRequest], inventory: Inventory) -> tuple[JobRequest, ...]:
    return tuple(job for job in jobs if is_asked_for(job.step, job.planting, inventory))


def _is_owed(request: JobRequest, state: JobState, season: int, as_of: datetime.date) -> bool:
    """Return whether the season before, while it runs, still owes a job to a season's plan."""
    return request.season == season - 1 == season_of(as_of) and state.is_ahead


def _to_be_sprayed(jobs: tuple[Job, ...]) -> frozenset[str]:
    """Return the ids of the jobs whose sheets print amounts and that can still be done."""
    return frozenset(job.id for job in jobs if job.mix is not None and job.state.is_ahead)


def _held_back(job: Job, inventory: Inventory) -> Job:
    """Return a stopped job without any amount: the stop stands in their place."""
    near = next(place.near for place in inventory.places() if place.id == job.place_id)
    safety = safety_lines(inventory.property.emergency, near, None)
    return replace(job.without_amounts(), safety=safety)


def _job_order(job: Job) -> tuple[datetime.date, datetime.date, str]:
    last = datetime.date.max
    return (job.dates.opens or last, job.dates.closes or last, job.id)


def _date_findings(request: JobRequest, as_of: datetime.date) -> list[Finding]:
    dates: OpenDates = request.dates
    if dates.missing_signs:
        signs = ", ".join(marker_names()[sign].lower() for sign in dates.missing_signs)
        return [finding(PlaceCaution.DATES_OPEN, request.job_id, signs=signs)]
    if do_not_meet(dates):
        opens, closes = str(dates.opens), str(dates.closes)
        return [finding(PlaceStop.DATES_DO_NOT_MEET, request.job_id, opens=opens, closes=closes)]
    if dates.closes and dates.closes < as_of:
        return [finding(PlaceNote.PAST, request.job_id)]
    return []


def _name_findings(request: JobRequest, inventory: Inventory) -> list[Finding]:
    handed = any(
        is_handed(reader, request.planting.id, request.step.id) for reader in inventory.readers
    )
    if handed and request.ground.known_as is None:
        return [finding(PlaceStop.NO_NAME_FOR_OTHERS, request.job_id, request.ground.where)]
    return []


def _sign_findings(inventory: Inventory) -> list[Finding]:
    signs = inventory.property.season_signs
    found = []
    for name, words in marker_names().items():
        marker = getattr(signs, name) if signs is not None else None
        if marker is not None and marker.single:
            found.append(
                finding(PlaceNote.SINGLE_DAY_SIGN, f"sign/{name}", marker.where, sign=words)
            )
    return found


def _lines(jobs: tuple[Job, ...]) -> tuple[BudgetLine, ...]:
    """Return what every job takes that can still be done."""
    return tuple(
        _line(job, *taken) for job in jobs if job.state.is_ahead for taken in job.used_up()
    )


def _line(job: Job, kind: str, item_id: str, amount: Quantity) -> BudgetLine:
    return BudgetLine(job.id, job.place_id, job.planting_id, job.season, kind, item_id, amount)
