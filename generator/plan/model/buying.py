"""What is bought for the jobs of a plan: amounts, days to order by, and what is not bought."""

from __future__ import annotations

import datetime
from typing import Literal

from generator.dataclass import dataclass
from generator.plan.model.items import StockItem
from generator.plan.model.job import Job
from generator.working import Given, Quantity

JobNeed = tuple[Quantity, Job]
OrderState = Literal["by", "now", "late", "no_lead", "no_dates"]


@dataclass(frozen=True, slots=True)
class Order:
    """By when to order for the first open day: `by` None where that is not known.

    `state`: by, ordered on the plan's day it comes by the first open day; now, it comes while the
    job is open; late, it comes after the last open day; no_lead, no_dates: what is missing to know
    it. `comes` is when it would come, ordered on the plan's day; `needed_from` and `needed_until`
    are the open dates of the first job that is short. `undated` are jobs that are short too and
    whose first day is not known.
    """

    state: OrderState
    by: datetime.date | None = None
    comes: datetime.date | None = None
    needed_from: datetime.date | None = None
    needed_until: datetime.date | None = None
    undated: tuple[Job, ...] = ()


@dataclass(frozen=True, slots=True)
class Purchase:
    """One thing to buy: need, on hand, packages, cost and what is left, where they are known.

    `loose` stands in place of packages where the weight itself is bought; `nothing` says that
    nothing has to be bought; `short` is what is let go, where no package is bought for so little.
    """

    item: StockItem
    needed: Quantity
    on_hand: Given | Quantity | None
    package: Given | None
    packages: Quantity | None
    loose: Quantity | None
    cost: Quantity | None
    left_over: Quantity | None
    short: Quantity | None
    nothing: bool
    order: Order


@dataclass(frozen=True, slots=True)
class TooLate:
    """A thing not bought for jobs that lack it, since it comes after their last open day."""

    item: StockItem
    needs: tuple[JobNeed, ...]


@dataclass(frozen=True, slots=True)
class Missed:
    """A thing not bought for jobs whose open dates are over and that the log does not finish."""

    item: StockItem
    jobs: tuple[Job, ...]


@dataclass(frozen=True, slots=True)
class Buying:
    """What jobs still need that can still get it, the first to order first, and what is not bought.

    `not_yet` is what a stopped job needs and no other job does. All but the purchases stand in the
    order of the owner's lists.
    """

    purchases: tuple[Purchase, ...] = ()
    too_late: tuple[TooLate, ...] = ()
    missed: tuple[Missed, ...] = ()
    not_yet: tuple[StockItem, ...] = ()


NOTHING_BOUGHT = Buying()
