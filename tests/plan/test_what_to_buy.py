"""What stock covers, first opened first served, and what is bought without package or price.

One product on two jobs of an acre, 32 fl oz each: the fall kill, open from 10 to Sep 27
2026, and the burn-down in spring. It is sold in gallons of 128 fl oz.
"""

import copy
import datetime

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.model.buying import Purchase
from generator.plan.model.plan import Plan
from generator.plan.money.budget import cost_in_all
from tests.plan.planned import AS_OF, BURN_DOWN, KILL, inventory_of, job_of
from tests.plan.sprayed_twice import plan_of, twice
from tests.properties import small_property

DAY = datetime.date


def brew_of(plan: Plan) -> Purchase:
    return next(one for one in plan.buying.purchases if one.item.id == "brew")


def codes(plan: Plan) -> set[str]:
    return {one.code for one in plan.findings_on("brew")}


@pytest.mark.parametrize(
    ("on_hand", "first"), [(0, KILL), (31, KILL), (32, BURN_DOWN), (63, BURN_DOWN)]
)
def test_the_day_is_that_of_the_first_job_that_stock_does_not_cover(
    on_hand: float, first: str
) -> None:
    plan = plan_of(twice(on_hand_fl_oz=on_hand))
    one = brew_of(plan)
    assert one.needed.value == pytest.approx(64)
    opens = job_of(plan, first).dates.opens
    assert opens is not None
    assert (one.order.needed_from, one.order.by) == (opens, opens)


def test_stock_that_covers_the_job_that_is_open_is_not_too_late_for_it() -> None:
    data = twice(on_hand_fl_oz=36, lead_days=30)
    one, found = brew_of(plan_of(data)), codes(plan_of(data))
    assert one.order.state == "by"
    assert not found & {"C263", "N359"}
    # 12 fl oz do not reach the kill, and what is ordered comes a day after it is over
    data["products"]["products"][0] |= {"on_hand_fl_oz": 12, "lead_days": 39}
    (late,) = plan_of(data).buying.too_late
    assert [job.id for _, job in late.needs] == [KILL]
    assert "C263" in codes(plan_of(data))
    data["products"]["products"][0]["lead_days"] = 38
    assert plan_of(data).buying.too_late == ()
    assert "C263" not in codes(plan_of(data))


def test_a_job_it_comes_too_late_for_leaves_the_next_its_order_day() -> None:
    # packages of 32 fl oz; ordered Sep 20 it comes on the 30th, the kill closes on the 27th,
    # the burn-down opens on Apr 8: one package of $41.25 for it, ordered by Mar 29
    at = DAY(2026, 9, 20)
    data = twice(on_hand_fl_oz=0, lead_days=10, package_fl_oz=32)
    del data["products"]["products"][0]["package_gal"]
    plan = plan_of(data, at)
    one = brew_of(plan)
    assert one.packages is not None
    assert one.cost is not None
    assert (one.packages.value, one.cost.value) == (1, pytest.approx(41.25))
    assert (one.order.state, one.order.by) == ("by", DAY(2027, 3, 29))
    assert one.needed.value == pytest.approx(32)
    (late,) = plan.buying.too_late
    assert [(need.value, job.id) for need, job in late.needs] == [(pytest.approx(32), KILL)]
    told = next(found for found in plan.findings_on("brew") if found.code == "C263")
    assert f"{job_of(plan, KILL).step.name}, Lane screen" in told.words
    assert job_of(plan, BURN_DOWN).step.name not in told.words
    # cured by somebody nearby who has it
    data["products"]["products"][0]["lead_days"] = 7
    near = plan_of(data, at)
    assert near.buying.too_late == ()
    assert brew_of(near).order.state == "now"
    bought = brew_of(near).packages
    assert bought is not None
    assert bought.value == 2


def test_nothing_is_bought_where_it_comes_too_late_for_all() -> None:
    data = small_property()
    data["products"]["products"][0]["lead_days"] = 39
    plan = plan_of(data)
    assert "brew" not in {one.item.id for one in plan.buying.purchases}
    (late,) = plan.buying.too_late
    assert [job.id for _, job in late.needs] == [KILL]
    assert "C263" in codes(plan)


def test_a_first_day_that_is_not_known_hides_no_order_day() -> None:
    # the burn-down waits for a sign; the kill opens on Sep 10: ordered by Aug 31
    data = twice(on_hand_fl_oz=0, lead_days=10)
    sign = data["property"]["season_signs"].pop("weed_green_up")
    plan = plan_of(data)
    order = brew_of(plan).order
    assert (order.state, order.by) == ("by", DAY(2026, 8, 31))
    assert [job.id for job in order.undated] == [BURN_DOWN]
    assert "N363" in codes(plan)
    # stock that reaches the kill leaves the burn-down, whose day nobody knows
    data["products"]["products"][0]["on_hand_fl_oz"] = 32
    covered = brew_of(plan_of(data)).order
    assert (covered.state, covered.by) == ("no_dates", None)
    assert "N363" in codes(plan_of(data))
    data["property"]["season_signs"]["weed_green_up"] = sign
    assert "N363" not in codes(plan_of(data))


def test_a_job_whose_dates_are_over_is_missed_and_not_bought_for() -> None:
    data = twice(on_hand_fl_oz=0)
    before, after = plan_of(data, DAY(2026, 9, 27)), plan_of(data, DAY(2026, 9, 28))
    assert brew_of(before).needed.value == pytest.approx(64)
    assert before.buying.missed == ()
    one = brew_of(after)
    assert one.needed.value == pytest.approx(32)
    assert one.order.needed_from == job_of(after, BURN_DOWN).dates.opens
    (over,) = after.buying.missed
    assert (over.item.id, [job.id for job in over.jobs]) == ("brew", [KILL])
    assert "C263" not in codes(after)


def test_without_its_last_day_a_job_is_neither_over_nor_too_late() -> None:
    data = small_property()
    data["seed"]["lots"][0]["lead_days"] = 365
    del data["property"]["season_signs"]
    (one,) = plan_of(data).buying.purchases
    assert (one.order.state, one.order.needed_until) == ("now", None)


@pytest.mark.parametrize(
    "left_out", [("package_gal",), ("price_usd",), ("package_gal", "price_usd")]
)
def test_enough_on_hand_needs_neither_package_nor_price(left_out: tuple[str, ...]) -> None:
    data = twice(on_hand_fl_oz=65)
    for name in left_out:
        del data["products"]["products"][0][name]
    plan = plan_of(data)
    one = brew_of(plan)
    assert one.packages is not None
    assert one.cost is not None
    assert one.left_over is not None
    assert (one.packages.value, one.cost.value) == (0, 0)
    assert one.left_over.value == pytest.approx(1)
    assert one.nothing
    assert not codes(plan) & {"C208", "C263", "N351", "N359"}
    # two fluid ounces less than is needed, over a hundredth of a gallon, have to be bought, and
    # then both are missed
    data["products"]["products"][0]["on_hand_fl_oz"] = 62
    short = plan_of(data)
    assert brew_of(short).cost is None
    assert "C208" in codes(short)
    assert cost_in_all(short) is None


def test_a_count_without_its_day_is_told() -> None:
    data = twice(on_hand_fl_oz=20)
    del data["products"]["products"][0]["counted_on"]
    plan = plan_of(data)
    on_hand = brew_of(plan).on_hand
    assert on_hand is not None
    assert on_hand.value == 20
    assert "N364" in codes(plan)
    assert "N364" not in codes(plan_of(twice(on_hand_fl_oz=20)))


def test_stock_that_another_season_counts_on_too_is_told() -> None:
    data = small_property()
    later = copy.deepcopy(data["screens"]["screens"][0]["plantings"][0])
    later |= {"id": "lane-28", "season": 2028}
    data["screens"]["screens"][0]["plantings"].append(later)
    (note,) = (one for one in plan_of(data).findings_on("brew") if one.code == "N365")
    assert "another season take Made-up product brew too: 2028." in note.words
    # the other season's plan says it of this one, and an empty shelf is counted on by none
    other = make_plan(inventory_of(data), 2028, AS_OF)
    assert "2027" in next(o.words for o in other.findings_on("brew") if o.code == "N365")
    data["products"]["products"][0]["on_hand_fl_oz"] = 0
    assert "N365" not in codes(plan_of(data))
    assert "N365" not in codes(plan_of(small_property()))
