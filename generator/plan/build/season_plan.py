"""The one place where a plan is put together, in five stages: each takes what those before made."""

import datetime
from dataclasses import replace

from generator.inventory.schema import Inventory
from generator.plan.build.across_jobs import Across, across_jobs
from generator.plan.build.days_of_jobs import JobsInTime, days_of_jobs
from generator.plan.build.money_of_plan import findings_of_money, with_money
from generator.plan.build.season_jobs import SeasonJobs, season_jobs
from generator.plan.build.typed_and_logged import Logged, typed_and_logged
from generator.plan.findings.order import in_order, without_amounts
from generator.plan.jobs.job_days import LAST_OF_SEASON
from generator.plan.jobs.typed_none import typed_none_findings
from generator.plan.labels.yearly_sums import active_totals
from generator.plan.model.finding import Finding, stopped_in
from generator.plan.model.items import stock_items
from generator.plan.model.plan import Land, Plan
from generator.plan.placed.beside_work import work_findings
from generator.plan.runs.every_run import runs_of
from generator.plan.season.open_dates import day_in_season
from generator.plan.season.seen_signs import seen_signs
from generator.plan.sits.answers import stand_answers
from generator.plan.sits.kept_away import with_hours_away
from generator.plan.usual.far_points import without_what_rests_on_it
from generator.plan.views.closed import jobs_before
from generator.plan.views.unanswered import unanswered
from generator.plan.views.years_ahead import jobs_ahead
from generator.plan.walks.open_walks import open_walks
from generator.plan.walks.walk_findings import walk_findings


def make_plan(inventory: Inventory, season: int, as_of: datetime.date) -> Plan:
    """Return the owner's plan of a season: everything computed, nothing totalled for display."""
    logged = typed_and_logged(inventory, season, as_of)
    jobs = season_jobs(logged)
    across = across_jobs(logged, jobs)
    told = (*logged.findings, *jobs.findings, *across.findings)
    in_time = days_of_jobs(logged, jobs, stopped_in(told))
    plan = with_money(_plan(logged, jobs, across, in_time, told), logged.inventory)
    plan = replace(plan, open_walks=open_walks(plan))
    of_money = findings_of_money(plan, logged.inventory, jobs.still_ahead())
    beside = (*walk_findings(plan), *work_findings(plan), *typed_none_findings(plan))
    found = without_what_rests_on_it((*told, *in_time.findings, *of_money, *beside))
    # without their figures two may say the same: each is told once
    return replace(plan, findings=in_order(without_amounts(found)))


def _plan(
    logged: Logged,
    season: SeasonJobs,
    across: Across,
    in_time: JobsInTime,
    told: tuple[Finding, ...],
) -> Plan:
    """Return what the stages before money made, as one plan."""
    inventory = logged.inventory
    to_be_sprayed = frozenset(
        job.id for job in in_time.jobs if job.mix is not None and job.state.is_ahead
    )
    return Plan(
        reader="owner",
        title=inventory.property.name,
        season=logged.season,
        as_of=logged.as_of,
        old_after=old_after(inventory.property.old_after, logged.season),
        weather=logged.weather,
        shared_grounds=logged.shared,
        suited_days=in_time.suited,
        wind_use=in_time.wind_use,
        land=land_listed(inventory),
        places=tuple(logged.places.values()),
        jobs=in_time.jobs,
        findings=told,
        decided=across.decided,
        items=stock_items(inventory),
        entries=logged.entries,
        records=logged.records,
        water=logged.water,
        actives=active_totals(season.sprays, to_be_sprayed),
        hunted=in_time.hunted,
        sits=in_time.sits,
        keep_away=in_time.keep_away,
        answers=stand_answers(
            inventory, logged.entries, told, in_time.keep_away, logged.season, logged.as_of
        ),
        unanswered=unanswered(season.requests, season.states, inventory),
        upkeep=with_hours_away(across.upkeep, in_time.keep_away),
        before=jobs_before(
            logged.season,
            season.not_planned(),
            season.states,
            across.upkeep_before,
            inventory.dates,
        ),
        ahead=jobs_ahead(
            (*season.every, *season.later),
            season.states,
            inventory.dates,
            logged.season,
            logged.as_of,
        ),
        seen=seen_signs(inventory),
        runs=runs_of(in_time.jobs, told, inventory, logged.grounds, logged.as_of),
    )


def old_after(typed: datetime.date | None, season: int) -> datetime.date:
    """Return the last day on which a book is not old: that of its season, or an earlier one typed.

    >>> old_after(None, 2027), old_after(datetime.date(2027, 3, 1), 2027)
    (datetime.date(2027, 8, 31), datetime.date(2027, 3, 1))
    """
    last = day_in_season(LAST_OF_SEASON, season)
    return last if typed is None else min(typed, last)


def land_listed(inventory: Inventory) -> Land:
    """Return what the files of a property list, as its owner sees it."""
    typed = inventory.property
    return Land(
        emergency=typed.emergency,
        signs=typed.season_signs,
        signs_looked_up_on=typed.signs_looked_up_on,
        note=typed.note,
        location_lat_lon=typed.location_lat_lon,
        machines=inventory.machines,
        hires=inventory.hires,
        cost_share=inventory.cost_share,
        soil_tests=inventory.soil_tests,
        fertilizers=inventory.fertilizers,
        limes=inventory.limes,
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
        things=inventory.land,
        all_drawn=typed.all_drawn,
        dates=inventory.dates,
        shooting_hours=inventory.shooting_hours,
        looked_up=inventory.looked_up,
        after_the_shot=typed.after_the_shot,
        time_zone=typed.time_zone,
        morning_sit_hours=typed.morning_sit_hours,
        evening_sit_hours=typed.evening_sit_hours,
        applicators=inventory.applicators,
        helpers=inventory.helpers,
        contractors=inventory.contractors,
        permits=inventory.permits,
        contracts=inventory.contracts,
        one_calls=inventory.one_calls,
        step_plans=tuple(inventory.plans().values()),
    )
