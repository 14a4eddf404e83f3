"""Rules on figures that cannot be: a percent typed as a part of one, a strip across a county."""

from collections.abc import Iterator

from generator.inventory.problems import shown_value
from generator.inventory.rule import Broken, Rule, typed_at
from generator.inventory.rules_area import FARTHEST_MI
from generator.inventory.schema import Inventory
from generator.units import convert
from generator.working import Given

# No seed that is sold or sown is as poor as a hundredth.
LEAST_FRACTION = 0.01


def _percent_of_tags(inventory: Inventory) -> Iterator[Broken]:
    for lot in inventory.lots:
        tag = lot.tag
        alive = (tag.germination_fraction, tag.hard_fraction, tag.dormant_fraction)
        # a purity or life of 0 is told as F301 already
        if 0 < tag.purity_fraction.value <= LEAST_FRACTION:
            yield _as_part("purity", tag.purity_fraction, tag.purity_fraction.value)
        if 0 < sum(part.value for part in alive) <= LEAST_FRACTION:
            live = sum(part.value for part in alive)
            yield _as_part("germination, hard and dormant together", alive[0], live)


def _as_part(what: str, typed: Given, fraction: float) -> Broken:
    percent = convert(fraction, "fraction", "pct")
    told = f"{what}: {shown_value(round(percent, 6))} percent is no seed to sow"
    return Broken(
        typed_at(typed),
        told,
        "percent as the tag prints it, as in 98.2; for a part of one, the key that ends in "
        "_fraction",
    )


def _sizes_of_places(inventory: Inventory) -> Iterator[Broken]:
    farthest_ft = convert(FARTHEST_MI, "mi", "ft")
    largest_ac = convert(farthest_ft * farthest_ft, "sq_ft", "ac")
    for place in inventory.places():
        for typed in (place.length_ft, place.width_ft):
            if typed is not None and typed.value > farthest_ft:
                yield _too_far(typed, f"at most {FARTHEST_MI} miles")
        if place.area_ac is not None and place.area_ac.value > largest_ac:
            yield _too_far(place.area_ac, f"at most {FARTHEST_MI} miles by {FARTHEST_MI}")


def _too_far(typed: Given, accepted: str) -> Broken:
    unit = typed.typed_unit.replace("_", " ")
    what = f"no place is as large as {shown_value(typed.typed)} {unit}"
    return Broken(typed_at(typed), what, f"{accepted}; look for a digit too many")


def _percent_of_shares(inventory: Inventory) -> Iterator[Broken]:
    for share in inventory.cost_share:
        # typed as a fraction it is as small as it says; behind a key in percent it is a slip
        if share.pays.typed_unit == "pct" and 0 < share.pays.value <= LEAST_FRACTION:
            yield _as_share("of the cost is no share that a contract pays", share.pays, "as in 50")
    for place in inventory.places():
        for planting in place.plantings:
            stands = planting.winter_share_fraction
            if stands is not None and stands.typed_unit == "pct" and stands.typed < 1:
                yield _as_share("of the height is nothing that stands", stands, "as in 85")


def _as_share(what: str, typed: Given, as_in: str) -> Broken:
    told = f"{shown_value(typed.typed)} percent {what}"
    accepted = f"percent, {as_in}; for a part of one, the key that ends in _fraction"
    return Broken(typed_at(typed), told, accepted)


SLIP_RULES = (
    Rule("F461", "A percent of a tag is typed as percent.", _percent_of_tags, alone=True),
    Rule("F463", "A place is no longer than a property is wide.", _sizes_of_places, alone=True),
    Rule(
        "F464",
        "A share of the cost or of a height is typed as percent.",
        _percent_of_shares,
        alone=True,
    ),
)
