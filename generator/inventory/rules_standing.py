"""Rules of plantings that stood before anybody planned them, and of walks kept open by machine."""

from collections.abc import Iterator

from generator.inventory.places import Planting
from generator.inventory.problems import shown_value
from generator.inventory.rule import Broken, Rule
from generator.inventory.schema import Inventory

# What says how and when something is sown, which nobody knows of what stood before.
OF_A_SOWING = ("season", "method", "woody", "upkeep", "mix_rate_pls_lb_per_ac")


def _plantings(inventory: Inventory) -> Iterator[Planting]:
    for place in inventory.places():
        yield from place.plantings


def _sown_or_standing(inventory: Inventory) -> Iterator[Broken]:
    for planting in _plantings(inventory):
        typed = [name for name in OF_A_SOWING if (name, None) in planting.field_marks]
        if planting.standing_since is None:
            if planting.species:
                what = "species: in a planting that is sown"
                accepted = (
                    "seed: or woody: for what is sown or planted; species: with standing_since:"
                )
                yield Broken(planting.where_of("species"), what, accepted)
        elif typed:
            what = f"{typed[0]}: in a planting that stood before"
            accepted = "standing_since:, species: and steps:, with seed: for what is sown into it"
            yield Broken(planting.where_of(typed[0]), what, accepted)
        elif not planting.species:
            what = "nothing says what stands there"
            yield Broken(
                planting.where_of("standing_since"), what, "species:, as in [white-clover]"
            )


def _stands_by_the_season(inventory: Inventory) -> Iterator[Broken]:
    season = inventory.property.season
    # rules are asked beside a fault in the season too, which is nothing then
    if not season:
        return
    for planting in _plantings(inventory):
        since = planting.standing_since
        if since is not None and since > season:
            what = f"standing_since {since} comes after the season that is planned, {season}"
            yield Broken(planting.where_of("standing_since"), what, f"{season} or before")


def _seed_to_sow_into_it(inventory: Inventory) -> Iterator[Broken]:
    for planting in _plantings(inventory):
        if planting.standing_since is None or planting.seed:
            continue
        sown = {step.id for step in inventory.steps_of(planting) if step.does.sows}
        for work in planting.work:
            if work.step in sown:
                what = f"step {shown_value(work.step)} sows, and nothing says what"
                accepted = "seed: of the planting, with species, lot and rate"
                yield Broken(work.where_of("step"), what, accepted)


STANDING_RULES = (
    Rule(
        "F465",
        "A planting is sown, or stood before anybody planned it.",
        _sown_or_standing,
        alone=True,
    ),
    Rule("F466", "What stands stands by the season that is planned.", _stands_by_the_season),
    Rule("F467", "What is sown into a standing planting is named.", _seed_to_sow_into_it),
)
