"""The numbers that a rate is brought to: what each is called, and which are not worked out."""

import pytest

from generator.plan.labels.rates import as_active
from generator.plan.views.numbers import numbers_of
from generator.working import Given, Quantity
from tests.plan.planned import KILL, inventory_of, planned
from tests.plan.test_actives_together import free_use
from tests.plan.test_tank_mixes import dry_property
from tests.properties import Data, full_card, small_property, the_work


def premix(*strengths: Data) -> Data:
    """A card that pools its actives, each typed with how strong it is."""
    names = [f"made-up active {letter}" for letter in "abc"[: len(strengths)]]
    actives = [
        {"active": name, "basis": "ae"} | each for name, each in zip(names, strengths, strict=True)
    ]
    return full_card(free_use(), actives=actives, pooled_with=names)


def rates_of(data: Data) -> dict[str, float]:
    """The rates of the kill, by what they are called."""
    numbers = numbers_of(planned(data), ())
    return {
        name.removeprefix(f"{KILL}/"): number.value
        for name, number in numbers.items()
        if name.startswith(f"{KILL}/rate_") and isinstance(number, Quantity)
    }


def test_one_active_is_called_by_its_basis_and_several_by_their_place_on_the_card() -> None:
    # 40 fl oz of 4 lb in a gallon are 1.25 lb; of 1 lb and 3 lb a quarter and three of it
    one = premix({"strength_lb_per_gal": 4})
    two = premix({"strength_lb_per_gal": 1}, {"strength_lb_per_gal": 3})
    assert rates_of(small_property(one, rate_product_fl_oz_per_ac=40)) == {
        "rate_ae_lb_per_ac": 1.25
    }
    assert rates_of(small_property(two, rate_product_fl_oz_per_ac=40)) == {
        "rate_ae_1_lb_per_ac": 0.3125,
        "rate_ae_2_lb_per_ac": 0.9375,
    }


def test_a_dry_product_of_two_pooled_actives_is_weighed_for_what_both_hold() -> None:
    # 25 and 50 percent: 0.375 lb of both are half a pound of product
    data = dry_property(8)
    card = data["products"]["products"][0]["label"]
    names = ["made-up active a", "made-up active b"]
    card["actives"] = [
        {"active": name, "basis": "ai", "strength_pct": strength}
        for name, strength in zip(names, (25, 50), strict=True)
    ]
    card["pooled_with"] = names
    work = the_work(data)[0]
    del work["rate_product_oz_wt_per_ac"]
    work["rate_ai_lb_per_ac"] = 0.375
    assert rates_of(data)["rate_product_lb_per_ac"] == pytest.approx(0.5)


def test_a_share_of_the_spray_is_no_limit_in_pounds_of_active() -> None:
    card = inventory_of(small_property(premix({"strength_lb_per_gal": 4}))).products[0].label
    assert card is not None
    share = Given("max", 0.02, "fraction", 2, "pct", "products.yaml", 1, "page")
    assert as_active("limit", share, "mix", card) is None


def test_a_limit_in_a_dry_product_is_so_much_of_its_active() -> None:
    # half a pound of a product of 75 percent
    card = inventory_of(dry_property(8)).products[0].label
    assert card is not None
    limit = Given("max", 0.5, "lb_per_ac", 8, "oz_wt_per_ac", "products.yaml", 1, "page")
    active = as_active("limit", limit, "product", card)
    assert active is not None
    assert (active.value, active.unit) == (0.375, "lb_per_ac")
