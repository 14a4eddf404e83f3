"""Stock and prices far from what the plan needs and from what else was paid for the same thing."""

import statistics
from collections.abc import Iterable, Iterator

from generator.dataclass import dataclass
from generator.inventory.fields import Where
from generator.inventory.log import LogEntry
from generator.inventory.places import PlantedGround
from generator.inventory.rule import typed_at
from generator.inventory.stock import SeedLot
from generator.plan.findings.about_usual import UsualCaution
from generator.plan.findings.order import finding
from generator.plan.model.buying import Purchase
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding, about_item
from generator.plan.model.items import StockItem, amount_in
from generator.plan.model.plan import Plan
from generator.reference.library import values
from generator.units import UNITS
from generator.working import Given


@dataclass(frozen=True, slots=True)
class _Price:
    """What was asked or paid for so much of one thing: `to_one` in dollars for one of its unit."""

    item_id: str
    words: str
    price: Given
    amount: Given

    @property
    def to_one(self) -> float:
        return self.price.value / self.amount.value

    @property
    def where(self) -> Where:
        return typed_at(self.price)


def stock_findings(
    plan: Plan, lots: tuple[SeedLot, ...], places: tuple[PlantedGround, ...]
) -> list[Finding]:
    """Return cautions on what is on hand and on prices, of an owner's plan with its lines."""
    found = [
        caution for bought in plan.buying.purchases for caution in _on_hand(plan, bought, places)
    ]
    for group in _alike(plan.items, plan.entries, lots):
        found += _prices(group)
    return found


def _on_hand(plan: Plan, bought: Purchase, places: tuple[PlantedGround, ...]) -> Iterator[Finding]:
    """Yield a caution where far more is on hand than all that takes of it ahead can need.

    Nothing is said of what a package or two hold, since no less can be bought, nor where a stop
    keeps an amount out of what is needed.
    """
    item, stopped = bought.item, plan.stopped()
    taking = [job for job in plan.jobs if job.state.is_ahead and item.id in job.needs]
    if item.on_hand is None or not taking or any(job.id in stopped for job in taking):
        return
    times, packages = values()["on_hand_times_count"], values()["on_hand_packages_count"]
    now = {job.planting_id for job in taking}
    ahead = now | _plantings_ahead(plan.season, item, places)
    # later seasons have no amounts, so each planting ahead counts as one of now does
    most = times.value * bought.needed.value * len(ahead) / len(now)
    if item.package is not None:
        most = max(most, packages.value * item.package.value)
    if item.on_hand.value > most:
        figures = (
            ("On hand", item.on_hand),
            ("Needed in this season", bought.needed),
            ("Usual up to, as many times", times),
        )
        where = typed_at(item.on_hand)
        yield finding(
            UsualCaution.STOCK_OUT_OF_USUAL, about_item(item.id), where, figures, item=item.words
        )


def _plantings_ahead(season: int, item: StockItem, places: tuple[PlantedGround, ...]) -> set[str]:
    """Return the plantings that take of a thing in the plan's season or later, each as one."""
    named = {planting for planting, _ in item.taken}
    return {
        planting.id
        for place in places
        for planting in place.plantings
        if planting.id in named and planting.season >= season
    }


def _alike(
    items: tuple[StockItem, ...], entries: tuple[LogEntry, ...], lots: tuple[SeedLot, ...]
) -> Iterator[list[_Price]]:
    """Yield the prices of each thing: its own, those paid for it, and of lots of one species."""
    species = {lot.id: lot.species for lot in lots}
    groups: dict[str, list[_Price]] = {}
    for item in items:
        group = groups.setdefault(species.get(item.id, item.id), [])
        if item.price_usd is not None and item.package is not None:
            group.append(_Price(item.id, item.words, item.price_usd, item.package))
        group += _paid(entries, item)
    yield from groups.values()


def _paid(entries: tuple[LogEntry, ...], item: StockItem) -> Iterator[_Price]:
    for entry in entries:
        for bought in entry.bought:
            # a thing without package or count may be bought by weight and be noted by volume
            of_a_kind = UNITS[bought.amount.unit].family == UNITS[item.unit].family
            if bought.item == item.id and bought.cost_usd is not None and of_a_kind:
                amount = amount_in(bought.amount, item.unit)
                words = f"{item.words}, bought {day_words(entry.done_on)}"
                yield _Price(item.id, words, bought.cost_usd, amount)


def _prices(group: Iterable[_Price]) -> Iterator[Finding]:
    """Yield a caution for each price far from the middle of the others, the farthest first."""
    # what was given for nothing has no price to hold others to
    times, left = values()["price_times_count"], [price for price in group if price.price.value > 0]
    while len(left) > 1:
        apart = {number: _apart(number, left) for number in range(len(left))}
        far = max(apart, key=lambda number: apart[number])
        if apart[far] <= times.value:
            return
        # one at a time: a price far off also pulls the middle the others are held to
        price = left.pop(far)
        other = min(left, key=lambda each: abs(each.to_one - _middle(left)))
        figures = (
            ("Its price", price.price),
            ("For", price.amount),
            (f"The price of {other.words}", other.price),
            ("For so much", other.amount),
            ("Usual up to, as many times more or less", times),
        )
        words = {"item": price.words, "much": "more" if price.to_one > other.to_one else "less"}
        yield finding(
            UsualCaution.PRICE_OUT_OF_USUAL,
            about_item(price.item_id),
            price.where,
            figures,
            **words,
        )


def _middle(prices: list[_Price]) -> float:
    return statistics.median(price.to_one for price in prices)


def _apart(number: int, prices: list[_Price]) -> float:
    """Return how many times a price is the middle of the others, or they are of it."""
    value, middle = prices[number].to_one, _middle([*prices[:number], *prices[number + 1 :]])
    return max(value / middle, middle / value)
