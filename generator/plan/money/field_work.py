"""Hours of jobs with a machine, and the lines of fuel, rent and hire that come of them."""

from collections.abc import Iterator, Mapping

from generator.compute import field_work as work
from generator.compute import money
from generator.compute.buying import TOTAL_AC, TOTAL_HOURS
from generator.dataclass import dataclass
from generator.inventory.machine import Machine
from generator.inventory.money import Hire
from generator.inventory.places import PlantedGround
from generator.plan.jobs.request import work_of
from generator.plan.model.finding import Finding, stopped_in
from generator.plan.model.job import Job
from generator.plan.model.plan import BudgetLine, Plan, WorkTime
from generator.working import Given, Quantity

_ALL = "all"
PART_OF_THE_PLACE = ("sown_area_ac", "treated_ac")


@dataclass(frozen=True, slots=True)
class Renting:
    """One time of renting a machine: its hours together, whole days, and what they cost."""

    machine: Machine
    job_ids: tuple[str, ...]
    hours: Quantity
    days: Quantity
    cost: Quantity


def work_times(
    plan: Plan, machines: tuple[Machine, ...], places: tuple[PlantedGround, ...]
) -> tuple[WorkTime, ...]:
    """Return the hours of every job still to be done for which a machine is named."""
    plantings = {planting.id: planting for place in places for planting in place.plantings}
    by_id = {machine.id: machine for machine in machines}
    stopped = plan.stopped()
    found = []
    for job in plan.jobs:
        asked = work_of(plantings[job.planting_id], job.step)
        if asked is not None and asked.machine is not None and not _left_out(job, stopped):
            found.append(_time(plan, job, by_id[asked.machine]))
    return tuple(found)


def _left_out(job: Job, stopped: frozenset[str]) -> bool:
    """Return whether a job takes no machine and no crew any more, or never did.

    It is settled, its open dates are over, a stop stands on it, or there is nothing to spread.
    """
    nothing = job.step.does.spreads and not job.spreadings
    return not job.state.is_ahead or nothing or job.id in stopped


def _time(plan: Plan, job: Job, machine: Machine) -> WorkTime:
    rate = work.WORK_RATE(
        f"machine/{machine.id}/work_rate_ac_per_hour",
        speed_mph=machine.speed_mph,
        width_ft=machine.width_ft,
        efficiency_fraction=machine.efficiency_fraction,
    )
    hours = work.HOURS(
        f"{job.id}/work_hours", area_ac=worked_ground(plan, job), work_rate_ac_per_hour=rate
    )
    return WorkTime(job.id, machine, rate, hours)


def worked_ground(plan: Plan, job: Job) -> Quantity:
    """Return the ground a job is done on: what is sown or treated, else the whole place."""
    for name in PART_OF_THE_PLACE:
        if name in job.numbers:
            return job.numbers[name]
    return plan.place(job.place_id).area


def machine_lines(plan: Plan) -> tuple[BudgetLine, ...]:
    """Return lines of hours, fuel and rent for every job with a machine."""
    jobs = {job.id: job for job in plan.jobs}
    rents = {
        (renting.machine.id, job_id): renting
        for renting in rentings(plan)
        for job_id in renting.job_ids
    }
    return tuple(
        line
        for time in plan.times
        for line in (
            _line(jobs[time.job_id], "hours", time.machine.id, time.hours, None),
            *_fuel(jobs[time.job_id], time),
            *_rent(jobs[time.job_id], time, rents),
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


def rentings(plan: Plan) -> tuple[Renting, ...]:
    """Return every time a machine is rented whose price and working day are known.

    The same step on several places is one time of renting, so that ground parted in two costs
    no more.
    """
    jobs = {job.id: job for job in plan.jobs}
    groups: dict[tuple[str, str], list[WorkTime]] = {}
    for time in plan.times:
        # by the step: another step is done on another day, and fetched again for it
        groups.setdefault((time.machine.id, jobs[time.job_id].step.id), []).append(time)
    found = []
    for (machine_id, step), times in groups.items():
        machine = times[0].machine
        # without the hours of a working day no days can be counted; a note asks for them
        if machine.rent_usd_per_day is None or machine.work_day_hours is None:
            continue
        base = f"money/{plan.season}/rent/{machine_id}/{step}"
        hours = TOTAL_HOURS(f"{base}_hours", parts=tuple(time.hours for time in times))
        days = work.RENT_DAYS(
            f"{base}_days", work_hours=hours, work_day_hours=machine.work_day_hours
        )
        cost = work.RENT_COST(
            f"{base}_usd", rent_days=days, rent_usd_per_day=machine.rent_usd_per_day
        )
        found.append(Renting(machine, tuple(time.job_id for time in times), hours, days, cost))
    return tuple(found)


def _rent(
    job: Job, time: WorkTime, rents: Mapping[tuple[str, str], Renting]
) -> Iterator[BudgetLine]:
    rent = rents.get((time.machine.id, job.id))
    if rent is not None:
        # parted by hours, so that the jobs of one renting add up to its whole days
        days = money.PART_DAYS(
            f"{job.id}/rent_days", whole=rent.days, part=time.hours, together=rent.hours
        )
        cost = money.PART(
            f"{job.id}/rent_usd", whole=rent.cost, part=time.hours, together=rent.hours
        )
        yield _line(job, "rent", time.machine.id, days, cost)


def hired_jobs(findings: tuple[Finding, ...], jobs: tuple[Job, ...], hire: Hire) -> tuple[Job, ...]:
    """Return the jobs of a hire that may and can still be done."""
    stopped = stopped_in(findings)
    steps: dict[str, set[str]] = {}
    for hired in hire.jobs:
        steps.setdefault(hired.planting, set()).update(hired.steps)
    return tuple(
        job
        for job in jobs
        if not steps.get(job.planting_id, set()).isdisjoint((_ALL, job.step.id))
        and not _left_out(job, stopped)
    )


def hire_charge(plan: Plan, hire: Hire) -> Given | Quantity | None:
    """Return what a hire charges for its jobs together, its minimum minded; None if not known."""
    base = f"money/{plan.season}/hire/{hire.id}"
    together = _together(plan.season, hire, _parts(plan, hire))
    if together is None:
        return None
    charge: Given | Quantity = hire.price
    if hire.price.unit == "usd_per_ac":
        charge = money.HIRE_BY_AREA(
            f"{base}/by_area_usd", area_ac=together, price_usd_per_ac=hire.price
        )
    elif hire.price.unit == "usd_per_hour":
        charge = money.HIRE_BY_TIME(
            f"{base}/by_time_usd", work_hours=together, price_usd_per_hour=hire.price
        )
    if hire.minimum_usd is None:
        return charge
    # after the jobs are together: one visit is charged its minimum once
    return money.AT_LEAST(f"{base}/at_least_usd", charge_usd=charge, minimum_usd=hire.minimum_usd)


def _together(season: int, hire: Hire, parts: tuple[Quantity, ...] | None) -> Quantity | None:
    if not parts:
        return None
    formula = TOTAL_HOURS if parts[0].unit == "hours" else TOTAL_AC
    return formula(f"money/{season}/hire/{hire.id}/all_{parts[0].unit}", parts=parts)


def _parts(plan: Plan, hire: Hire) -> tuple[Quantity, ...] | None:
    """Return hours, or acres, of each job; None where the hours of one are not known."""
    jobs = hired_jobs(plan.findings, plan.jobs, hire)
    if hire.price.unit != "usd_per_hour":
        return tuple(worked_ground(plan, job) for job in jobs)
    hours = {time.job_id: time.hours for time in plan.times}
    # hours of some jobs alone would charge the hire too little
    return tuple(hours[job.id] for job in jobs) if all(j.id in hours for j in jobs) else None


def hire_lines(plan: Plan) -> tuple[BudgetLine, ...]:
    """Return a line for every hired job, with its part of what the hire charges."""
    return tuple(line for hire in plan.land.hires for line in _hire_lines(plan, hire))


def _hire_lines(plan: Plan, hire: Hire) -> Iterator[BudgetLine]:
    parts, charge = _parts(plan, hire), hire_charge(plan, hire)
    together = _together(plan.season, hire, parts)
    for number, job in enumerate(hired_jobs(plan.findings, plan.jobs, hire)):
        if parts is None or charge is None or together is None:
            # a line all the same, so that totals name what has no price
            yield _line(job, "hire", hire.id, worked_ground(plan, job), None)
        else:
            part = parts[number]
            name = f"{job.id}/hire_usd"
            cost = money.PART(name, whole=charge, part=part, together=together)
            yield _line(job, "hire", hire.id, part, cost)
