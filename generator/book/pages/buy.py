"""The page of what to buy: what to order next, packages and costs, and what is on hand."""

import datetime
from collections.abc import Iterable
from itertools import groupby

from generator.book.pages.by_rule import said_alike
from generator.book.pages.pictures_orders import orders_picture
from generator.book.pages.written import (
    BUDGET_XLSX,
    BUY_CSV,
    MONEY,
    Written,
    from_template,
    jobs_with_places,
)
from generator.plan.findings.about_money import MoneyCaution, MoneyNote
from generator.plan.model.buying import Purchase
from generator.plan.model.plan import Plan
from generator.plan.money.budget import cost_in_all

DAYS_NAMED = 3  # days to order by that stand above the table
_TOO_LATE = MoneyCaution.TOO_LATE.value.code
# The first lines of the page say these, with days and amounts.
_SAID_AT_THE_TOP = (MoneyNote.ORDER_NOW.value.code, _TOO_LATE)


def buy_page(plan: Plan) -> Written:
    """Return what to order next and by when, what comes too late, and what to buy."""
    purchases, late = plan.buying.purchases, plan.buying.too_late
    # Things that are bought, or would be if they came in time.
    told = {purchase.item.id for purchase in purchases} | {thing.item.id for thing in late}
    bought = [purchase for purchase in purchases if not purchase.nothing]
    return from_template(
        plan,
        "buy.md",
        "What to buy",
        MONEY,
        "buy",
        [purchase.item.words for purchase in purchases],
        bought=bought,
        orders=orders_picture(plan),
        purchases=purchases,
        order_now=[purchase for purchase in bought if purchase.order.state == "now"],
        next_days=_next_days(bought),
        comes_late=[purchase for purchase in bought if purchase.order.state == "late"],
        asked_on=_one_day(purchase.item.priced_on for purchase in bought),
        counted_on=_one_day(purchase.item.counted_on for purchase in purchases),
        cost=cost_in_all(plan),
        too_late=[
            (thing.item.words, [(need, job, plan.place(job.place_id)) for need, job in thing.needs])
            for thing in late
        ],
        missed=[
            (
                thing.item.words,
                [(job, place) for job, _, place in jobs_with_places(plan, thing.jobs)],
            )
            for thing in plan.buying.missed
        ],
        late=[finding for finding in plan.findings if finding.code == _TOO_LATE],
        waiting=[item.words for item in plan.buying.not_yet],
        findings=said_alike(
            finding
            for finding in plan.findings
            if finding.subject in told and finding.code not in _SAID_AT_THE_TOP
        ),
        files=(BUY_CSV, BUDGET_XLSX),
    )


def _next_days(bought: Iterable[Purchase]) -> list[tuple[datetime.date, list[str]]]:
    """Return the first days to order by, each with what is ordered by it."""
    dated = [
        (purchase.order.by, purchase.item.words)
        for purchase in bought
        if purchase.order.state == "by" and purchase.order.by is not None
    ]
    days = groupby(dated, lambda one: one[0])
    return [(day, [words for _, words in group]) for day, group in days][:DAYS_NAMED]


def _one_day(days: Iterable[datetime.date | None]) -> datetime.date | None:
    """Return the day that all have, which is then said once; None where they differ."""
    found = set(days)
    return found.pop() if len(found) == 1 else None
