"""A shortfall of less than a hundredth of a package: none is bought, and it is said how short."""

import pytest

from generator.plan.model.buying import Purchase
from generator.plan.model.plan import Plan
from generator.plan.views.numbers import numbers_of
from tests.plan.planned import planned
from tests.plan.sprayed_twice import plan_of, twice
from tests.properties import Data, small_property


def brew_of(plan: Plan) -> Purchase:
    return next(one for one in plan.buying.purchases if one.item.id == "brew")


def codes(plan: Plan) -> set[str]:
    return {one.code for one in plan.findings_on("brew")}


# An acre at 32 fl oz, sold in gallons of 128: a hundredth of one is 1.28 fl oz.
@pytest.mark.parametrize(
    ("on_hand", "packages", "short"),
    [(32, 0, None), (31, 0, 1), (30.73, 0, 1.27), (30.72, 1, None), (30, 1, None), (0, 1, None)],
)
def test_little_that_is_short_buys_none_and_says_how_much(
    on_hand: float, packages: float, short: float | None
) -> None:
    data = small_property()
    data["products"]["products"][0]["on_hand_fl_oz"] = on_hand
    plan = planned(data)
    one = brew_of(plan)
    assert one.packages is not None
    assert one.packages.value == packages
    assert (one.short.value if one.short else None) == (short and pytest.approx(short))
    assert (one.left_over is None) == (short is not None)
    assert one.nothing == (packages == 0)
    assert ("N405" in codes(plan)) == (short is not None)
    if one.short is not None:
        (note,) = [found for found in plan.findings_on("brew") if found.code == "N405"]
        assert note.figures == (("Short", one.short),)
        assert one.short.identity in numbers_of(plan)
        assert one.cost is not None
        assert one.cost.value == 0


def test_the_last_package_is_not_bought_for_so_little_either() -> None:
    data = small_property()
    product = data["products"]["products"][0]
    del product["package_gal"]
    product |= {"package_fl_oz": 10, "on_hand_fl_oz": 1.95}
    one = brew_of(planned(data))
    # 32 less 1.95 are 30.05: three of 10, and 0.05 short, a two-hundredth of one
    assert one.packages is not None
    assert one.short is not None
    assert (one.packages.value, one.short.value) == (3, pytest.approx(0.05))


def test_a_job_that_lacks_so_little_is_not_said_to_be_too_late() -> None:
    def short_of(on_hand: float) -> Data:
        return twice(on_hand_fl_oz=on_hand, lead_days=39)

    assert "C263" in codes(plan_of(short_of(30)))
    assert len(plan_of(short_of(30)).buying.too_late) == 1
    assert plan_of(short_of(31)).buying.too_late == ()
    assert "C263" not in codes(plan_of(short_of(31)))
