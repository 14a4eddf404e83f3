"""Money and hours: what is planned, spent and paid back, and when the hours fall."""

import datetime

from generator.compute.buying import TOTAL_AC, TOTAL_HOURS, TOTAL_USD
from generator.compute.money import CAPPED, NET, SHARE_BY_AREA, SHARE_OF_COST
from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.inventory.money import CostShare
from generator.inventory.season import season_of
from generator.plan.log.entries import entries_about
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan, WorkTime
from generator.plan.money.budget import Total, planting_total
from generator.plan.money.field_work import hire_charge
from generator.working import Given, Quantity

DECEMBER = 12
PAID_BY = ("season", "place", "planting")
PAID_AS_USED = ("hire", "rent", "fuel")


@dataclass(frozen=True, slots=True)
class Payment:
    """What a contract pays for a planting; `counts` once it is approved before work begins.

    `unfinished` says that it is a share of a cost that is not all of it: a job is finished, missed
    or stopped, or something has no price.
    """

    share: CostShare
    planting_id: str
    place_id: str
    paid: Given | Quantity | None
    counts: bool
    unfinished: bool


@dataclass(frozen=True, slots=True)
class MoneyRow:
    """One group of the budget: its cost, what is paid back, and what is left to carry.

    `unfinished` says that a share of an unfinished cost is in what is paid back.
    """

    total: Total
    paid_back: Quantity | None
    net: Quantity | None
    unfinished: bool


@dataclass(frozen=True, slots=True)
class SeasonMoney:
    """Dollars of one season: what the log says was spent, what is still to pay, what comes back.

    The last two are known of the plan's season alone; None where there is none.
    """

    season: int
    spent: Quantity | None
    to_pay: Quantity | None
    paid_back: Quantity | None


@dataclass(frozen=True, slots=True)
class Month:
    """A month with the jobs that are open in it and their hours together."""

    first: datetime.date
    times: tuple[WorkTime, ...]
    hours: Quantity


def begun_on(entries: tuple[LogEntry, ...], planting_id: str) -> datetime.date | None:
    """Return the first day the log says work was done on a planting."""
    days = (
        entry.done_on
        for entry in entries
        if entry.job is not None and entry.job.planting == planting_id
    )
    return min(days, default=None)


def approved_by(share: CostShare, as_of: datetime.date) -> datetime.date | None:
    """Return the day a contract was approved; None while that day has not come."""
    approved = share.approved_on
    return approved if approved is not None and approved <= as_of else None


def is_in_time(entries: tuple[LogEntry, ...], as_of: datetime.date, share: CostShare) -> bool:
    """Return whether a contract is approved, and was before anything was done on its planting."""
    begun, approved = begun_on(entries, share.planting), approved_by(share, as_of)
    # work before the approval can forfeit it; work on the very day is not before
    return approved is not None and (begun is None or approved <= begun)


def payments(plan: Plan) -> tuple[Payment, ...]:
    """Return what every contract pays for a planting of the season."""
    return plan.once("payments", _payments)


def _payments(plan: Plan) -> tuple[Payment, ...]:
    places = {job.planting_id: job.place_id for job in plan.jobs}
    return tuple(
        _payment(plan, share, places[share.planting], planting_total(plan, share.planting))
        for share in plan.land.cost_share
        if share.planting in places
    )


def _payment(plan: Plan, share: CostShare, place_id: str, total: Total | None) -> Payment:
    # a share of what is known so far is no share of the cost
    unpriced = total is None or bool(total.unpriced) or _is_part(plan, share.planting)
    return Payment(
        share,
        share.planting,
        place_id,
        _paid(plan, share, place_id, total.cost if total is not None else None),
        is_in_time(plan.entries, plan.as_of, share),
        share.pays.unit == "fraction" and unpriced,
    )


def _is_part(plan: Plan, planting_id: str) -> bool:
    """Return whether a job of a planting is in no total: finished, missed or stopped."""
    return any(
        not job.state.is_ahead or job.id in plan.stopped()
        for job in plan.jobs
        if job.planting_id == planting_id
    )


def paid_above_cost(plan: Plan) -> tuple[tuple[str, Quantity, Quantity], ...]:
    """Return plantings for which contracts pay more than all its cost: cost, and the payments."""
    paid_for = sorted({payment.planting_id for payment in payments(plan)})
    found = [
        total
        for planting_id in paid_for
        if (total := planting_total(plan, planting_id)) is not None
    ]
    return tuple(
        (row.total.key, row.total.cost, row.paid_back)
        for row in (money_row(plan, total) for total in found)
        if row.total.cost is not None and row.paid_back is not None
        # a cost that is not all of it is no measure of what is paid
        if not row.total.unpriced and not _is_part(plan, row.total.key)
        if row.paid_back.value > row.total.cost.value
    )


def _paid(
    plan: Plan, share: CostShare, place_id: str, cost: Quantity | None
) -> Given | Quantity | None:
    base = f"money/{plan.season}/share/{share.id}"
    paid: Given | Quantity = share.pays
    if share.pays.unit == "usd_per_ac":
        area = _sown_ground(plan, share.planting, place_id)
        paid = SHARE_BY_AREA(f"{base}/by_area_usd", area_ac=area, pays_usd_per_ac=share.pays)
    elif share.pays.unit == "fraction":
        if cost is None:
            return None
        paid = SHARE_OF_COST(f"{base}/of_cost_usd", cost_usd=cost, pays_fraction=share.pays)
    if share.cap_usd is None:
        return paid
    # last, since the cap is of dollars, however they come about
    return CAPPED(f"{base}/capped_usd", paid_usd=paid, cap_usd=share.cap_usd)


def _sown_ground(plan: Plan, planting_id: str, place_id: str) -> Quantity:
    """Return the ground a planting is sown on: less than its place where seed is short.

    Of a sowing that is finished the log says it, and where it says nothing it was all of the place.
    """
    jobs = [job for job in plan.jobs if job.planting_id == planting_id]
    logged = [
        entry.job.area_ac
        for job in jobs
        if job.state.kind == "done" and job.step.does.sows
        for entry in entries_about(planting_id, job.step.id, plan.entries)
        if entry.job is not None and entry.job.area_ac is not None
    ]
    # what was sown is paid for, not what was planned
    if logged:
        return TOTAL_AC(f"{planting_id}/sown_by_the_log_ac", parts=tuple(logged))
    part = (job.numbers["sown_area_ac"] for job in jobs if "sown_area_ac" in job.numbers)
    return next(part, plan.place(place_id).area)


def to_pay(plan: Plan) -> Quantity | None:
    """Return what has to be paid: whole packages, hire, rent and fuel, as far as prices go."""
    # lines of things stay out: what jobs use of packages is paid with the packages
    packages = [purchase.cost for purchase in plan.buying.purchases if purchase.cost is not None]
    others = [
        line.cost for line in plan.lines if line.kind in PAID_AS_USED and line.cost is not None
    ]
    parts = (*packages, *others)
    return TOTAL_USD(f"money/{plan.season}/to_pay_usd", parts=parts) if parts else None


def money_row(plan: Plan, total: Total) -> MoneyRow:
    """Return what is paid back of a group and what is left to carry.

    A contract pays for a planting as a whole, not for one thing used on it.
    """
    known = payments(plan) if total.column in PAID_BY else ()
    plantings = {line.planting_id for line in total.lines}
    counted = [payment for payment in known if payment.counts and payment.planting_id in plantings]
    parts = tuple(payment.paid for payment in counted if payment.paid is not None)
    if not parts or total.cost is None:
        return MoneyRow(total, None, None, False)
    base = f"budget/{plan.season}/{total.column}/{total.key}"
    paid = TOTAL_USD(f"{base}/paid_back_usd", parts=parts)
    # over payments that count alone: money that may never come lowers no cost
    net = NET(f"{base}/net_usd", cost_usd=total.cost, paid_back_usd=(paid,))
    return MoneyRow(total, paid, net, any(payment.unfinished for payment in counted))


def money_numbers(plan: Plan) -> list[Quantity | None]:
    """Return every computed number of money and hours on pages, but those of budget views."""
    numbers: list[Quantity | None] = [
        to_pay(plan),
        hours_in_all(plan.times, plan.season),
        *(number for _, number in spent(plan)),
    ]
    for time in plan.times:
        numbers += [time.rate, time.hours]
    numbers += [month.hours for month in months(plan)]
    numbers += [payment.paid for payment in payments(plan) if isinstance(payment.paid, Quantity)]
    charges = (hire_charge(plan, hire) for hire in plan.land.hires)
    return numbers + [charge for charge in charges if isinstance(charge, Quantity)]


def spent(plan: Plan) -> tuple[tuple[int, Quantity], ...]:
    """Return what the log says was paid, by the season the day stands in."""
    paid: dict[int, list[Given]] = {}
    for entry in plan.entries:
        season = season_of(entry.done_on)
        costs = [bought.cost_usd for bought in entry.bought if bought.cost_usd is not None]
        costs += [spending.cost_usd for spending in entry.spent]
        paid.setdefault(season, []).extend(costs)
    return tuple(
        (season, TOTAL_USD(f"money/{plan.season}/spent/{season}_usd", parts=tuple(costs)))
        for season, costs in sorted(paid.items())
        if costs
    )


def money_by_season(plan: Plan, mine: MoneyRow | None) -> tuple[SeasonMoney, ...]:
    """Return the dollars of every season from the first of the log to the plan's.

    `mine` is the row of the plan's own season, None where nothing of it costs.
    """
    paid = dict(spent(plan))
    first = min([*paid, plan.season])
    before = (
        SeasonMoney(season, paid.get(season), None, None) for season in range(first, plan.season)
    )
    paid_back = mine.paid_back if mine is not None else None
    return (*before, SeasonMoney(plan.season, paid.get(plan.season), to_pay(plan), paid_back))


def hours_in_all(times: tuple[WorkTime, ...], season: int) -> Quantity | None:
    """Return the hours of all jobs with a machine together, None where there is none."""
    parts = tuple(time.hours for time in times)
    return TOTAL_HOURS(f"money/{season}/work_hours", parts=parts) if parts else None


def months(plan: Plan) -> tuple[Month, ...]:
    """Return the months in which jobs are open; a job open in several stands in each of them."""
    jobs = {job.id: job for job in plan.jobs}
    open_in: dict[datetime.date, list[WorkTime]] = {}
    for time in plan.times:
        for first in open_months(jobs[time.job_id]):
            open_in.setdefault(first, []).append(time)
    return tuple(
        Month(
            first,
            tuple(times),
            TOTAL_HOURS(
                f"money/{plan.season}/month/{first:%Y-%m}/work_hours",
                parts=tuple(time.hours for time in times),
            ),
        )
        for first, times in sorted(open_in.items())
    )


def open_months(job: Job) -> list[datetime.date]:
    """Return the first day of each month in which a job is open; none where that is unknown."""
    opens, closes = job.dates.opens, job.dates.closes
    found: list[datetime.date] = []
    if opens is None or closes is None:
        return found
    at = opens.replace(day=1)
    while at <= closes:
        found.append(at)
        at = at.replace(year=at.year + at.month // DECEMBER, month=at.month % DECEMBER + 1)
    return found
