"""The one place where a plan is put together: jobs, lines, findings."""

import datetime
from dataclasses import replace

from generator.compute.area import STRIP_AREA
from generator.inventory.places import Screen
from generator.inventory.schema import Inventory
from generator.plan.asked import JobAsked, asked_of
from generator.plan.findings import finding, in_order
from generator.plan.model import BudgetLine, Finding, Job, OpenDates, Place, Plan, is_stopped
from generator.plan.rates import job_rate
from generator.plan.readers import handed_over, handed_steps
from generator.plan.reasons import Caution, Note, Stop
from generator.plan.safety import safety_lines
from generator.plan.sowing import hopper_numbers, latest_test, sowing_findings, sowings
from generator.plan.spraying import plan_spray
from generator.plan.years import PlannedSpray
from generator.reference.load import sign_names, step_plans
from generator.working import Quantity

LIVING_SOD = ("perennial_sod", "unsure")


def make_plan(
    inventory: Inventory, season: int, as_of: datetime.date, *, as_of_typed: bool
) -> Plan:
    """Return the owner's plan of a season: everything computed, nothing totalled for display."""
    places = {screen.id: _place(screen, season) for screen in inventory.screens}
    # A label's year takes in the sprayings of the seasons before and after.
    ever = [
        asked_of(inventory, screen, planting, step, places[screen.id].area)
        for screen in inventory.screens
        for planting in screen.plantings
        for step in step_plans()[planting.steps].steps
    ]
    asked = [one for one in ever if one.planting.season == season]
    sprays = tuple(_planned_spray(one, inventory) for one in ever if one.step.operation == "spray")
    jobs: list[Job] = []
    found: list[Finding] = _sign_findings(inventory)
    for one in asked:
        job, job_findings = _job(one, inventory, sprays)
        jobs.append(job)
        found += job_findings + _date_findings(one, as_of) + _name_findings(one, inventory)
    found += _sod_findings(jobs, inventory, found)
    findings = in_order(found)
    emergency = inventory.property.emergency
    ordered = tuple(
        _held_back(job, inventory) if is_stopped(job.id, findings) else job
        for job in sorted(jobs, key=_job_order)
    )
    plan = Plan(
        reader="owner",
        title=inventory.property.name,
        season=season,
        as_of=as_of,
        as_of_typed=as_of_typed,
        emergency=emergency,
        signs=inventory.property.season_signs,
        signs_looked_up_on=inventory.property.signs_looked_up_on,
        note=inventory.property.note,
        location_lat_lon=inventory.property.location_lat_lon,
        places=tuple(places.values()),
        jobs=ordered,
        findings=findings,
        lines=_lines(ordered),
        lots=inventory.lots,
        products=inventory.products,
        sprayers=inventory.sprayers,
        spreaders=inventory.spreaders,
        measures=inventory.measures,
        stands=inventory.stands,
        routes=inventory.routes,
    )
    return replace(plan, handed=handed_over(plan, inventory.readers))


def _held_back(job: Job, inventory: Inventory) -> Job:
    """Return a stopped job without any amount: the stop stands in their place."""
    near = next(one.near for one in inventory.screens if one.id == job.place_id)
    return replace(
        job,
        numbers={},
        sowings=(),
        mix=None,
        spreader=None,
        spreader_test=None,
        safety=safety_lines(inventory.property.emergency, near, None),
    )


def _job_order(job: Job) -> tuple[datetime.date, datetime.date, str]:
    last = datetime.date.max
    return (job.dates.opens or last, job.dates.closes or last, job.id)


def _place(screen: Screen, season: int) -> Place:
    area = STRIP_AREA(
        f"{screen.id}/{season}/ground/area_ac",
        length_ft=screen.length_ft,
        width_ft=screen.width_ft,
    )
    return Place(screen.id, first_name(screen.id, screen.was), screen.name, area, screen)


def first_name(identity: str, was: tuple[str, ...]) -> str:
    """Return the id a thing had first, so that a rename never moves its page."""
    return was[0] if was else identity


def _planned_spray(asked: JobAsked, inventory: Inventory) -> PlannedSpray:
    work = asked.work
    product = next(
        (one for one in inventory.products if work is not None and one.id == work.product), None
    )
    card = product.label if product is not None else None
    return PlannedSpray(
        asked.job_id,
        asked.screen.id,
        asked.planting.id,
        product.id if product else "",
        frozenset(one.active for one in card.actives) if card else frozenset(),
        frozenset(card.pooled_with)
        if card and isinstance(card.pooled_with, tuple)
        else frozenset(),
        job_rate(asked.job_id, work, card) if work and card else None,
        asked.dates.opens,
        asked.dates.closes,
    )


def _job(
    asked: JobAsked, inventory: Inventory, sprays: tuple[PlannedSpray, ...]
) -> tuple[Job, list[Finding]]:
    job = Job(
        id=asked.job_id,
        address=f"{first_name(asked.screen.id, asked.screen.was)}-{_tail(asked.job_id)}",
        place_id=asked.screen.id,
        planting_id=asked.planting.id,
        season=int(asked.job_id.split("/")[1]),
        step=asked.step,
        dates=asked.dates,
        numbers={},
        sowings=(),
        note=asked.work.note if asked.work else None,
        needs=(),
        mix=None,
        spreader=None,
        spreader_test=None,
        safety=safety_lines(inventory.property.emergency, asked.screen.near, None),
    )
    if asked.step.operation == "spray":
        return _spray_job(job, asked, inventory, sprays)
    if asked.step.operation == "sow":
        return _sow_job(job, asked, inventory)
    return job, []


def _tail(job_id: str) -> str:
    return "-".join(job_id.split("/")[1:])


def _spray_job(
    job: Job, asked: JobAsked, inventory: Inventory, sprays: tuple[PlannedSpray, ...]
) -> tuple[Job, list[Finding]]:
    done = plan_spray(asked, inventory, sprays)
    product = asked.work.product if asked.work else None
    near, emergency = asked.screen.near, inventory.property.emergency
    planned = replace(
        job,
        numbers=done.numbers,
        needs=(product,) if product else (),
        mix=done.mix,
        safety=safety_lines(emergency, near, done.mix),
    )
    return planned, list(done.findings)


def _sow_job(job: Job, asked: JobAsked, inventory: Inventory) -> tuple[Job, list[Finding]]:
    parts = sowings(job.id, asked.planting.seed, asked.area, inventory)
    named = asked.work.spreader if asked.work else None
    spreader = next((one for one in inventory.spreaders if one.id == named), None)
    test = latest_test(spreader, parts) if spreader is not None else None
    numbers = {}
    if spreader is not None:
        numbers = hopper_numbers(job.id, parts, asked.screen.width_ft, spreader, test)
    found = sowing_findings(job.id, parts, spreader, test, asked.dates.closes, asked.planting.where)
    sown = replace(
        job,
        needs=tuple(one.lot.id for one in parts),
        numbers=numbers,
        sowings=parts,
        spreader=spreader,
        spreader_test=test,
    )
    return sown, found


def _date_findings(asked: JobAsked, as_of: datetime.date) -> list[Finding]:
    dates: OpenDates = asked.dates
    if dates.missing_signs:
        signs = ", ".join(sign_names()[one].lower() for one in dates.missing_signs)
        return [finding(Caution.DATES_OPEN, asked.job_id, signs=signs)]
    if dates.opens and dates.closes and dates.closes < dates.opens:
        return [finding(Caution.DATES_DO_NOT_MEET, asked.job_id)]
    if dates.closes and dates.closes < as_of:
        return [finding(Note.PAST, asked.job_id)]
    return []


def _name_findings(asked: JobAsked, inventory: Inventory) -> list[Finding]:
    handed = any(
        asked.step.id in handed_steps(reader, asked.planting.id, asked.planting.steps)
        for reader in inventory.readers
    )
    if handed and asked.screen.known_as is None:
        return [finding(Stop.NO_NAME_FOR_OTHERS, asked.job_id, asked.screen.where)]
    return []


def _sign_findings(inventory: Inventory) -> list[Finding]:
    signs = inventory.property.season_signs
    found = []
    for name, words in sign_names().items():
        one = getattr(signs, name) if signs is not None else None
        if one is not None and one.single:
            found.append(finding(Note.SINGLE_DAY_SIGN, f"sign/{name}", one.where, sign=words))
    return found


def _sod_findings(jobs: list[Job], inventory: Inventory, found: list[Finding]) -> list[Finding]:
    """Caution every sowing into living sod whose kill is not cleared."""
    covers = {screen.id: screen.cover_now for screen in inventory.screens}
    cautions = []
    for job in jobs:
        cover = covers[job.place_id]
        living = cover is None or cover.kind in LIVING_SOD
        killed = any(
            other.planting_id == job.planting_id
            and other.step.operation == "spray"
            and other.step.timing == "before_sowing"
            and not is_stopped(other.id, tuple(found))
            for other in jobs
        )
        if job.step.operation == "sow" and living and not killed:
            where = cover.where if cover is not None else None
            cautions.append(finding(Caution.SOD_NOT_CLEARED, job.id, where))
    return cautions


def _lines(jobs: tuple[Job, ...]) -> tuple[BudgetLine, ...]:
    lines: list[BudgetLine] = []
    for job in jobs:
        for part in job.sowings:
            amount = part.numbers["bulk_seed_lb"]
            lines.append(_line(job, "seed", part.lot.id, amount))
        if job.mix is not None:
            amount = job.numbers["product_fl_oz"]
            lines.append(_line(job, "product", job.mix.product.id, amount))
    return tuple(lines)


def _line(job: Job, kind: str, item_id: str, amount: Quantity) -> BudgetLine:
    return BudgetLine(job.id, job.place_id, job.planting_id, job.season, kind, item_id, amount)
