"""Rules on the winds typed of stands and walks."""

from collections.abc import Iterator

from generator.inventory.places import Route, Stand
from generator.inventory.plain_values import named_direction
from generator.inventory.rule import Broken, Rule, typed_at
from generator.inventory.schema import Inventory

_FULL_CIRCLE_DEG = 360


def _for_and_against(inventory: Inventory) -> Iterator[Broken]:
    things: tuple[Stand | Route, ...] = (*inventory.stands, *inventory.routes)
    for thing in things:
        is_for = {wind.value % _FULL_CIRCLE_DEG for wind in thing.winds_for}
        for wind in thing.winds_against:
            if wind.value % _FULL_CIRCLE_DEG in is_for:
                told = named_direction(wind.value) or f"{wind.value:g} degrees"
                what = f"wind from {told} is typed as one it is for and one it is not for"
                yield Broken(typed_at(wind), what, "it under winds_for or winds_against alone")


def _steepness_without_its_way(inventory: Inventory) -> Iterator[Broken]:
    for stand in inventory.stands:
        if stand.fall_pct is not None and stand.falls_to is None:
            what = "fall_pct says how steep the hill falls, and nothing says which way"
            yield Broken(typed_at(stand.fall_pct), what, "falls_to beside it, as in falls_to: SE")


TYPED_WIND_RULES = (
    Rule("F480", "A stand or walk is for a wind or is not.", _for_and_against, alone=True),
    Rule("F481", "A slope has a way it falls.", _steepness_without_its_way, alone=True),
)
