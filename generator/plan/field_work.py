"""Hours of jobs with a machine, and the lines of fuel, rent and hire that come of them."""

from collections.abc import Iterator

from generator.compute import field_work as work
from generator.compute import money
from generator.inventory.machine import Machine
from generator.inventory.money import Hire
from generator.inventory.schema import Inventory
from generator.plan.asked import work_of
from generator.plan.model import BudgetLine, Job, Plan, WorkTime, is_stopped
from generator.working import Given, Quantity

ALL = "all"


def work_times(plan: Plan, inventory: Inventory) -> tuple[WorkTime, ...]:
    """Return the hours of every job for which a machine is named and on which no stop stands."""
    plantings = {one.id: one for screen in inventory.screens for one in screen.plantings}
    machines = {one.id: one for one in inventory.machines}
    found = []
    for job in plan.jobs:
        asked = work_of(plantings[job.planting_id], job.step)
        if asked is not None and asked.machine is not None and not _stopped(plan, job):
            found.append(_time(plan, job, machines[asked.machine]))
    return tuple(found)


def _stopped(plan: Plan, job: Job) -> bool:
    return is_stopped(job.id, plan.findings)


def _time(plan: Plan, job: Job, machine: Machine) -> WorkTime:
    rate = work.WORK_RATE(
        f"machine/{machine.id}/work_rate_ac_per_hour",
        speed_mph=machine.speed_mph,
        width_ft=machine.width_ft,
        efficiency_fraction=machine.efficiency_fraction,
    )
    area = plan.place(job.place_id).area
    hours = work.HOURS(f"{job.id}/work_hours", area_ac=area, work_rate_ac_per_hour=rate)
    return WorkTime(job.id, machine, rate, hours)


def machine_lines(plan: Plan) -> tuple[BudgetLine, ...]:
    """Return lines of hours, fuel and rent for every job with a machine."""
    jobs = {job.id: job for job in plan.jobs}
    return tuple(
        line
        for one in plan.times
        for line in (
            _line(jobs[one.job_id], "hours", one.machine.id, one.hours, None),
            *_fuel(jobs[one.job_id], one),
            *_rent(plan, jobs[one.job_id], one),
        )
    )


def _line(job: Job, kind: str, item_id: str, amount: Quantity, cost: Quantity | None) -> BudgetLine:
    return BudgetLine(
        job.id, job.place_id, job.planting_id, job.season, kind, item_id, amount, cost
    )


def _fuel(job: Job, time: WorkTime) -> Iterator[BudgetLine]:
    machine = time.machine
    if machine.fuel_gal_per_hour is None:
        return
    gallons = work.FUEL(
        f"{job.id}/fuel_gal", work_hours=time.hours, fuel_gal_per_hour=machine.fuel_gal_per_hour
    )
    cost = None
    if machine.fuel_usd_per_gal is not None:
        cost = work.FUEL_COST(
            f"{job.id}/fuel_usd", fuel_gal=gallons, fuel_usd_per_gal=machine.fuel_usd_per_gal
        )
    yield _line(job, "fuel", machine.id, gallons, cost)


def _rent(plan: Plan, job: Job, time: WorkTime) -> Iterator[BudgetLine]:
    """Yield the job's part of the whole days for which the machine is rented for this step.

    The same step on several places is one time of renting, so that ground parted in two costs
    no more.
    """
    machine = time.machine
    if machine.rent_usd_per_day is None or machine.work_day_hours is None:
        return
    steps = {one.id: one.step.id for one in plan.jobs}
    together = tuple(
        one.hours
        for one in plan.times
        if one.machine.id == machine.id and steps[one.job_id] == job.step.id
    )
    base = f"money/{plan.season}/rent/{machine.id}/{job.step.id}"
    days = work.RENT_DAYS(
        f"{base}_days", work_hours=together, work_day_hours=machine.work_day_hours
    )
    rent = work.RENT_COST(f"{base}_usd", rent_days=days, rent_usd_per_day=machine.rent_usd_per_day)
    part = money.PART_DAYS(f"{job.id}/rent_days", whole=days, part=time.hours, parts=together)
    cost = money.PART(f"{job.id}/rent_usd", whole=rent, part=time.hours, parts=together)
    yield _line(job, "rent", machine.id, part, cost)


def hired_jobs(plan: Plan, hire: Hire) -> tuple[Job, ...]:
    """Return the jobs of a hire on which no stop stands."""
    return tuple(
        job
        for job in plan.jobs
        if not _stopped(plan, job)
        and any(
            one.planting == job.planting_id and (ALL in one.steps or job.step.id in one.steps)
            for one in hire.jobs
        )
    )


def hire_charge(plan: Plan, hire: Hire) -> Given | Quantity | None:
    """Return what a hire charges for its jobs together, its minimum minded; None if not known."""
    jobs = hired_jobs(plan, hire)
    base = f"money/{plan.season}/hire/{hire.id}"
    parts = _parts(plan, hire, jobs)
    if not jobs or parts is None:
        return None
    charge: Given | Quantity = hire.price
    if hire.price.unit == "usd_per_ac":
        charge = money.HIRE_BY_AREA(
            f"{base}/by_area_usd", area_ac=parts, price_usd_per_ac=hire.price
        )
    elif hire.price.unit == "usd_per_hour":
        charge = money.HIRE_BY_TIME(
            f"{base}/by_time_usd", work_hours=parts, price_usd_per_hour=hire.price
        )
    if hire.minimum_usd is None:
        return charge
    return money.AT_LEAST(f"{base}/at_least_usd", charge_usd=charge, minimum_usd=hire.minimum_usd)


def _parts(plan: Plan, hire: Hire, jobs: tuple[Job, ...]) -> tuple[Quantity, ...] | None:
    """Return hours, or acres, of each job; None where the hours of one are not known."""
    if hire.price.unit != "usd_per_hour":
        return tuple(plan.place(job.place_id).area for job in jobs)
    hours = {one.job_id: one.hours for one in plan.times}
    return tuple(hours[job.id] for job in jobs) if all(j.id in hours for j in jobs) else None


def hire_lines(plan: Plan) -> tuple[BudgetLine, ...]:
    """Return a line for every hired job, with its part of what the hire charges."""
    lines = []
    for hire in plan.hires:
        jobs = hired_jobs(plan, hire)
        parts = _parts(plan, hire, jobs)
        charge = hire_charge(plan, hire)
        for number, job in enumerate(jobs):
            amount, cost = plan.place(job.place_id).area, None
            if parts is not None and charge is not None:
                amount = parts[number]
                cost = money.PART(f"{job.id}/hire_usd", whole=charge, part=amount, parts=parts)
            lines.append(_line(job, "hire", hire.id, amount, cost))
    return tuple(lines)
