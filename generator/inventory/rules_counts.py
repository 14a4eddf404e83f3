"""Rules of what settles whether a spraying counts: names, corrections, a label's year."""

from collections.abc import Iterator

from generator.inventory.label import LabelCard, YearlyLimit
from generator.inventory.problems import shown_value
from generator.inventory.rule import Broken, Rule
from generator.inventory.schema import Inventory
from generator.reference.active_names import ActiveName, key_of


def _cards(inventory: Inventory) -> Iterator[LabelCard]:
    yield from (product.label for product in inventory.products if product.label is not None)


def _names_settled_once(inventory: Inventory) -> Iterator[Broken]:
    actives = [active for card in _cards(inventory) for active in card.actives]
    other_names = {key_of(active.active) for active in actives if active.same_as is not None}
    for active in actives:
        own = ActiveName(active.active).key
        # amounts add up under one step of same_as: along two they would be kept apart
        if active.same_as is not None and key_of(active.same_as) in other_names - {own}:
            what = f"same_as: {shown_value(active.same_as)} is itself the same as another name"
            yield Broken(
                active.where_of("same_as"),
                what,
                "on every card the one name that has no same_as: itself",
            )
        for number, name in enumerate(active.other_than):
            if key_of(name) in active.named.keys:
                what = f"other_than: {shown_value(name)} is this active, however it is written"
                where = active.where_of("other_than", number=number)
                yield Broken(where, what, "names that are another active")


def _not_done_corrects(inventory: Inventory) -> Iterator[Broken]:
    for entry in inventory.entries:
        if entry.not_done and entry.corrects is None:
            what = f"entry {shown_value(entry.id)} says not_done: and corrects none"
            yield Broken(
                entry.where_of("not_done"),
                what,
                "corrects: with the id of the entry that was not done",
            )
        elif entry.not_done and (entry.sprayed is not None or entry.unknown is not None):
            what = f"entry {shown_value(entry.id)} says not_done: beside a spraying"
            yield Broken(
                entry.where_of("not_done"),
                what,
                "not_done: alone, and the spraying in its own entry",
            )


def _years_of_12_months(inventory: Inventory) -> Iterator[Broken]:
    limits = [use.max_per_year for card in _cards(inventory) for use in card.uses]
    for limit in limits:
        if not isinstance(limit, YearlyLimit) or limit.counted == "any_12_months":
            continue
        if limit.same_day_next_year is not None:
            what = f"same_day_next_year: stands beside counted: {limit.counted}"
            yield Broken(
                limit.where_of("same_day_next_year"), what, "beside counted: any_12_months alone"
            )


COUNTS_RULES = (
    Rule("F437", "Whether two names are one active is said once.", _names_settled_once),
    Rule(
        "F438", "What was not done is an entry that is corrected.", _not_done_corrects, alone=True
    ),
    Rule(
        "F439",
        "The day a year later is asked of any 12 months alone.",
        _years_of_12_months,
        alone=True,
    ),
)
