"""Stops, cautions and notes about money, stock and orders; for the owner alone."""

import datetime
from collections.abc import Iterable, Iterator

from generator.inventory.log import LogEntry
from generator.inventory.money import CostShare
from generator.inventory.places import PlantedGround
from generator.inventory.stock import SeedLot
from generator.plan.days.contracts import land_of
from generator.plan.findings.about_money import MoneyCaution, MoneyNote
from generator.plan.findings.order import finding, older_than_a_year
from generator.plan.jobs.request import JobRequest
from generator.plan.log.stock import amounts_missing, is_counted_later, is_dated, on_hand_now
from generator.plan.model.buying import Purchase, TooLate
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding, Subject, about_item, about_job
from generator.plan.model.job import Job
from generator.plan.model.plan import Land, Plan, WorkTime
from generator.plan.money.field_work import hire_charge, hired_jobs
from generator.plan.money.money_hours import approved_by, begun_on, paid_above_cost


def money_findings(
    plan: Plan,
    lots: tuple[SeedLot, ...],
    places: tuple[PlantedGround, ...],
    others: tuple[JobRequest, ...],
) -> list[Finding]:
    """Return a finding for all that is left out, too late, or could cost a payment.

    `others` are the jobs of other seasons that are still ahead.
    """
    bought = plan.buying.purchases
    return [
        *(found for purchase in bought for found in _stock(plan.as_of, plan.entries, purchase)),
        *(found for purchase in bought for found in _wanted_later(purchase, others)),
        *(found for purchase in bought for found in _price(plan.as_of, purchase)),
        *(found for purchase in bought for found in _order(plan, purchase)),
        *(found for purchase in bought for found in _let_go(purchase)),
        *(_too_late(plan, late) for late in plan.buying.too_late),
        *(found for share in plan.land.cost_share for found in _approval(plan, share)),
        *_above_cost(plan),
        *_contracts(plan.land, plan.as_of, places),
        *_unweighed(plan, lots),
        *_machines(plan.times),
        *_hires(plan),
    ]


def _stock(
    as_of: datetime.date, entries: tuple[LogEntry, ...], purchase: Purchase
) -> Iterator[Finding]:
    item = purchase.item
    # only the first that keeps a count from being used: the rest would follow from it
    if item.on_hand is None:
        yield finding(MoneyCaution.NO_COUNT, about_item(item.id), item.where, item=item.words)
    elif is_counted_later(item, as_of):
        yield finding(
            MoneyNote.COUNT_LATER,
            about_item(item.id),
            item.where,
            item=item.words,
            latest=str(item.counted_on),
        )
    elif item.counted_on is None and is_dated(item, entries):
        yield finding(MoneyNote.COUNT_UNDATED, about_item(item.id), item.where, item=item.words)
    elif not is_dated(item, entries):
        yield finding(MoneyCaution.NO_COUNT_DAY, about_item(item.id), item.where, item=item.words)
    elif missing := amounts_missing(item, entries):
        days = ", ".join(dict.fromkeys(day_words(entry.done_on) for entry in missing))
        at = missing[0].where
        yield finding(
            MoneyCaution.USE_NOT_LOGGED, about_item(item.id), at, item=item.words, days=days
        )
    elif purchase.on_hand is not None and purchase.on_hand.value < 0:
        figures = (("On hand by the log", purchase.on_hand),)
        yield finding(
            MoneyCaution.BELOW_NOTHING, about_item(item.id), item.where, figures, item=item.words
        )


def _wanted_later(purchase: Purchase, others: tuple[JobRequest, ...]) -> Iterator[Finding]:
    """Yield a note where what is on hand is counted on by jobs of another season too."""
    item = purchase.item
    seasons = {job.season for job in others if (job.planting.id, job.step.id) in item.taken}
    if seasons and purchase.on_hand is not None and purchase.on_hand.value > 0:
        named = ", ".join(str(season) for season in sorted(seasons))
        yield finding(
            MoneyNote.WANTED_LATER, about_item(item.id), item.where, item=item.words, seasons=named
        )


def _price(as_of: datetime.date, purchase: Purchase) -> Iterator[Finding]:
    item = purchase.item
    missing = item.package is None or item.price_usd is None
    # of what nobody has to buy no price is needed
    if missing and not purchase.nothing:
        yield finding(MoneyCaution.NO_PRICE, about_item(item.id), item.where, item=item.words)
    elif item.priced_on is not None and older_than_a_year(item.priced_on, as_of):
        yield finding(MoneyNote.OLD_PRICE, about_item(item.id), item.where, item=item.words)


def _let_go(purchase: Purchase) -> Iterator[Finding]:
    if purchase.short is not None:
        item, figures = purchase.item, (("Short", purchase.short),)
        yield finding(MoneyNote.LET_GO, about_item(item.id), item.where, figures, item=item.words)


def _order(plan: Plan, purchase: Purchase) -> Iterator[Finding]:
    item = purchase.item
    if purchase.nothing or (purchase.packages is None and purchase.loose is None):
        return
    # beside the day to order by: these jobs may want it sooner
    if purchase.order.undated:
        jobs = _jobs(plan, purchase.order.undated)
        yield finding(
            MoneyNote.ORDER_DAY_OPEN, about_item(item.id), item.where, item=item.words, jobs=jobs
        )
    if purchase.order.state == "now":
        yield finding(MoneyNote.ORDER_NOW, about_item(item.id), item.where, item=item.words)
    elif purchase.order.state == "no_lead":
        yield finding(MoneyNote.NO_LEAD, about_item(item.id), item.where, item=item.words)


def _too_late(plan: Plan, late: TooLate) -> Finding:
    item, jobs = late.item, _jobs(plan, [job for _, job in late.needs])
    return finding(
        MoneyCaution.TOO_LATE, about_item(item.id), item.where, item=item.words, jobs=jobs
    )


def _jobs(plan: Plan, jobs: Iterable[Job]) -> str:
    """Return jobs in words, each with the name of its place."""
    return "; ".join(f"{job.step.name}, {plan.place(job.place_id).name}" for job in jobs)


def _approval(plan: Plan, share: CostShare) -> Iterator[Finding]:
    jobs = [job for job in plan.jobs if job.planting_id == share.planting]
    if not jobs:
        return
    # What the season before owes opened before this season was planned.
    opens = [job.dates.opens for job in jobs if job.season == plan.season]
    first = min((day for day in opens if day is not None), default=None)
    begun = begun_on(plan.entries, share.planting)
    approved = approved_by(share, plan.as_of)
    if share.approved_on is not None and approved is None:
        yield finding(
            MoneyNote.APPROVED_LATER,
            Subject("cost_share", share.id),
            share.where,
            contract=share.name,
            latest=share.approved_on.isoformat(),
        )
    # the dearest first: work begun before the approval can forfeit the payment
    if begun is not None and (approved is None or begun < approved):
        yield finding(
            MoneyCaution.BEGUN_UNAPPROVED,
            Subject("cost_share", share.id),
            share.where,
            contract=share.name,
        )
    elif approved is None:
        yield finding(
            MoneyCaution.NOT_APPROVED,
            Subject("cost_share", share.id),
            share.where,
            contract=share.name,
        )
    elif begun is None and first is not None and first < approved:
        yield finding(
            MoneyCaution.APPROVED_LATE,
            Subject("cost_share", share.id),
            share.where,
            contract=share.name,
        )


def _above_cost(plan: Plan) -> Iterator[Finding]:
    shares = {share.planting: share for share in plan.land.cost_share}
    for planting, cost, paid in paid_above_cost(plan):
        share = shares[planting]
        figures = (("Cost", cost), ("Paid back", paid))
        yield finding(
            MoneyCaution.PAID_ABOVE_COST,
            Subject("cost_share", share.id),
            share.where,
            figures,
            planting=planting,
        )


def _contracts(
    land: Land, as_of: datetime.date, places: tuple[PlantedGround, ...]
) -> Iterator[Finding]:
    """Yield a note on every approved contract whose place says that it is under none."""
    for place in places:
        mine = {planting.id for planting in place.plantings}
        for share in land.cost_share:
            approved = approved_by(share, as_of) is not None
            if approved and share.planting in mine and land_of(place) == "not_contract":
                yield finding(
                    MoneyNote.CONTRACT_NOT_SAID,
                    Subject("cost_share", share.id),
                    place.where,
                    contract=share.name,
                    place=place.name,
                )


def _unweighed(plan: Plan, lots: tuple[SeedLot, ...]) -> Iterator[Finding]:
    """Yield a note on every sowing of a lot that may be short, while what is there is not known."""
    items = {item.id: item for item in plan.items}
    for lot in lots:
        there = on_hand_now(items[lot.id], plan.entries, plan.as_of, lot.id)
        if lot.most_to_be_had_lb is not None and there is None:
            yield from (
                finding(MoneyNote.ON_HAND_NOT_KNOWN, about_job(job.id), lot.where, lot=lot.id)
                for job in plan.jobs
                if lot.id in job.needs and not job.state.is_settled
            )


def _machines(times: tuple[WorkTime, ...]) -> Iterator[Finding]:
    for machine in dict.fromkeys(time.machine for time in times):
        if machine.fuel_gal_per_hour is not None and machine.fuel_usd_per_gal is None:
            yield finding(
                MoneyNote.NO_FUEL_PRICE,
                Subject("machine", machine.id),
                machine.where,
                machine=machine.name,
            )
        if machine.rent_usd_per_day is not None and machine.work_day_hours is None:
            yield finding(
                MoneyNote.NO_WORK_DAY,
                Subject("machine", machine.id),
                machine.where,
                machine=machine.name,
            )


def _hires(plan: Plan) -> Iterator[Finding]:
    for hire in plan.land.hires:
        if hired_jobs(plan.findings, plan.jobs, hire) and hire_charge(plan, hire) is None:
            yield finding(
                MoneyNote.HIRE_NO_HOURS, Subject("hire", hire.id), hire.where, hire=hire.id
            )
        if hire.priced_on is not None and older_than_a_year(hire.priced_on, plan.as_of):
            yield finding(MoneyNote.OLD_HIRE, Subject("hire", hire.id), hire.where, hire=hire.id)
