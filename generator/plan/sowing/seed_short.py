"""Seed that does not reach: full rate by priority, and the rest waits.

Sown thin everywhere, a short lot fails everywhere. So the first places get the full rate; the
first that does not fit whole gets what is left over part of its acres; the others wait.
"""

import datetime
from collections.abc import Sequence

from generator.compute import buying, seed_short
from generator.compute.stock import STILL
from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.inventory.stock import SeedLot
from generator.plan.jobs.request import JobRequest
from generator.plan.log.done import entries_on
from generator.plan.log.entries import bought_of, used_of
from generator.plan.log.stock import on_hand_now, there_to_plan_with
from generator.plan.model.items import StockItem, stock_items
from generator.plan.season.open_dates import do_not_meet, is_over
from generator.working import Given, Quantity

_ROUNDING = 1e-9  # relative: seed that just reaches must not fail by a rounding error


@dataclass(frozen=True, slots=True)
class SeedNeed:
    """What a sowing of the whole place takes of every lot, by the lot's id."""

    request: JobRequest
    of_lots: dict[str, Quantity]


@dataclass(frozen=True, slots=True)
class Reach:
    """How far the seed goes on one place.

    `area` is what is sown, `not_sown` what is left out of a place sown in part; neither where the
    whole place waits. `lot` is the lot that is short there, or nothing.
    """

    area: Quantity | None
    not_sown: Quantity | None = None
    lot: SeedLot | None = None
    order_guessed: bool = False


@dataclass(slots=True)
class _Supply:
    lot: SeedLot
    left: Quantity
    guessed: bool
    used: dict[str, tuple[Given, ...]]


def reaches(
    needs: Sequence[SeedNeed],
    season: int,
    inventory: Inventory,
    entries: tuple[LogEntry, ...],
    as_of: datetime.date,
) -> dict[str, Reach]:
    """Return by job how far the seed goes; a job that is not among them is sown whole.

    What was counted is what is there once bought and used seed of the log is reckoned in. What
    was used on a place counts there. A place whose open dates are over, or do not meet, comes
    after the others.
    """
    items = {item.id: item for item in stock_items(inventory)}
    supplies = {
        lot.id: supply
        for lot in inventory.lots
        if (supply := _short_supply(lot, items[lot.id], needs, season, entries, as_of)) is not None
    }
    found: dict[str, Reach] = {}
    # seed kept for ground that can be sown no more would be missing where it still can
    for need in sorted(
        needs, key=lambda sowing: (_has_no_day(sowing.request, as_of), turn(sowing.request))
    ):
        concerned = [supplies[lot] for lot in need.of_lots if lot in supplies]
        if concerned:
            found[need.request.job_id] = _served(need, concerned)
    return found


def _has_no_day(request: JobRequest, as_of: datetime.date) -> bool:
    return is_over(request.dates, as_of) or do_not_meet(request.dates)


def turn(request: JobRequest) -> tuple[float, datetime.date, str]:
    """Return what puts sowings in order: priority, then the earlier open date, then the id."""
    priority = request.planting.priority
    return (
        float("inf") if priority is None else priority,
        request.dates.opens or datetime.date.max,
        request.job_id,
    )


def _guessed(requests: list[JobRequest]) -> bool:
    priorities = [request.planting.priority for request in requests]
    return None in priorities or len(set(priorities)) < len(priorities)


def _short_supply(
    lot: SeedLot,
    item: StockItem,
    needs: Sequence[SeedNeed],
    season: int,
    entries: tuple[LogEntry, ...],
    as_of: datetime.date,
) -> _Supply | None:
    """Return what can be had of a lot in all, where that is known and less than is needed."""
    base = f"seed/{season}/{lot.id}"
    on_hand = on_hand_now(item, entries, as_of, base)
    # what nobody weighed, or may buy without end, cannot be called short
    if lot.most_to_be_had_lb is None or on_hand is None:
        return None
    supply = seed_short.SUPPLY(
        f"{base}/supply_lb",
        on_hand_lb=there_to_plan_with(item, on_hand, base),
        most_to_be_had_lb=_to_be_had(lot, lot.most_to_be_had_lb, item, entries, base),
    )
    sown = [need for need in needs if lot.id in need.of_lots]
    used = {need.request.job_id: used_of(item, entries_on(need.request, entries)) for need in sown}
    needed = buying.sum_of([_still(need, lot, used[need.request.job_id]).value for need in sown])
    if needed <= supply.value * (1 + _ROUNDING):
        return None
    return _Supply(lot, supply, _guessed([need.request for need in sown]), used)


def _to_be_had(
    lot: SeedLot, most: Given, item: StockItem, entries: tuple[LogEntry, ...], base: str
) -> Given | Quantity:
    """Return what can still be bought: less what was bought since the count, in whole bags."""
    had: Given | Quantity = most
    # the limit holds from the day of the count on: what was bought before is no part of it
    bought = bought_of(item, entries, lot.counted_on) if lot.counted_on is not None else ()
    if bought:
        had = seed_short.STILL_TO_BE_HAD(
            f"{base}/still_to_be_had_lb", most_to_be_had_lb=most, bought_lb=bought
        )
    if lot.package_lb is None:
        return had
    return seed_short.IN_WHOLE_BAGS(
        f"{base}/in_whole_bags_lb", to_be_had_lb=had, package_lb=lot.package_lb
    )


def _still(need: SeedNeed, lot: SeedLot, used: tuple[Given, ...]) -> Quantity:
    """Return what a whole place still needs of a lot after what was used on it."""
    whole = need.of_lots[lot.id]
    name = f"{need.request.job_id}/{lot.id}.whole_still_needed_lb"
    return STILL(name, planned=whole, used=used) if used else whole


def _served(need: SeedNeed, supplies: list[_Supply]) -> Reach:
    """Return how far the seed goes on the next place in turn, and take it off the supplies."""
    area, job_id = need.request.area, need.request.job_id
    guessed = any(supply.guessed for supply in supplies)
    has = {supply.lot.id: _has(supply, job_id) for supply in supplies}
    # lots of a mixture go out together, so the one that reaches least holds the others back
    scarcest = min(
        supplies, key=lambda supply: has[supply.lot.id].value / need.of_lots[supply.lot.id].value
    )
    left, whole = has[scarcest.lot.id], need.of_lots[scarcest.lot.id]
    if left.value <= whole.value * _ROUNDING:
        return Reach(None, None, scarcest.lot, guessed)
    reach = Reach(area, order_guessed=guessed)
    if left.value < whole.value * (1 - _ROUNDING):
        sown = seed_short.SOWN_AREA(
            f"{job_id}/sown_area_ac", area_ac=area, left_lb=left, whole_place_lb=whole
        )
        not_sown = seed_short.NOT_SOWN_AREA(
            f"{job_id}/not_sown_area_ac", area_ac=area, sown_area_ac=sown
        )
        reach = Reach(sown, not_sown, scarcest.lot, guessed)
    for supply in supplies:
        _take(supply, need, reach)
    return reach


def _has(supply: _Supply, job_id: str) -> Quantity:
    """Return what a place can be sown with of a lot: what was used on it, and all that is left."""
    used = supply.used[job_id]
    if not used:
        return supply.left
    name = f"{job_id}/{supply.lot.id}.for_place_lb"
    return seed_short.FOR_PLACE(name, left_lb=supply.left, used_lb=used)


def _take(supply: _Supply, need: SeedNeed, reach: Reach) -> None:
    assert reach.area is not None
    base = f"{need.request.job_id}/{supply.lot.id}"
    taken = seed_short.TAKEN(
        f"{base}.taken_lb",
        whole_place_lb=need.of_lots[supply.lot.id],
        sown_area_ac=reach.area,
        area_ac=need.request.area,
    )
    # what was used here is off the supply already
    used = supply.used[need.request.job_id]
    if used:
        taken = STILL(f"{base}.still_taken_lb", planned=taken, used=used)
    supply.left = seed_short.LEFT(f"{base}.left_lb", left_lb=supply.left, taken_lb=taken)
