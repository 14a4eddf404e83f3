"""Stock by count and log, order-by days, hire, fuel, rent and cost-share, worked by hand.

The small property: one acre; the fall kill takes 32 fl oz of a product in gallons at $41.25, of
which 12 are on hand; the sowing takes 8 / (0.90 x 0.80) = 11.111 lb of seed in bags of 10 lb at
$118.50, of which 1.25 lb are on hand. Both were counted on Aug 15, 2026.
"""

import copy
import datetime
from typing import Any

import pytest

from generator.book.money_views import money_rows, totals
from generator.compute import field_work
from generator.plan.build.season_plan import make_plan
from generator.plan.log.stock import on_hand_now
from generator.plan.model.buying import Purchase
from generator.plan.model.plan import Plan
from generator.plan.money.budget import cost_in_all
from generator.plan.money.field_work import hire_charge
from generator.plan.money.money_hours import hours_in_all, months, payments, spent
from tests.plan.planned import AS_OF, KILL, inventory_of, planned
from tests.plan.sprayed_twice import plan_of, twice
from tests.properties import SEASON, Data, full_card, full_use, small_property, the_work

DAY = datetime.date
MOWER = {"id": "mower", "name": "Mower", "width_ft": 5, "speed_mph": 4, "efficiency_fraction": 0.8}
CLOVER = full_use(covers={"kinds": ["clover"], "species": ["any"], "land": "any",
                          "places": ["any"]})  # fmt: skip


def with_log(*entries: Data, **changes: Data) -> Data:
    """The small property with log entries, and changes to its product."""
    data = small_property()
    data["log"] = {"entries": [{"id": f"e-{n}"} | one for n, one in enumerate(entries)]}
    data["products"]["products"][0] |= changes.get("product", {})
    return data


def used(on: str, amount: float, **more: Any) -> Data:
    """A use of the product; off the place, in words, unless it was on a job."""
    where = {} if "job" in more else {"sprayed": {"location": "yard", "sprayer": "boom"}}
    return {"done_on": on, "used": [{"item": "brew", "amount_fl_oz": amount}]} | where | more


def brew(plan: Plan) -> Purchase:
    return next(one for one in plan.buying.purchases if one.item.id == "brew")


def brew_on_hand(plan: Plan) -> float:
    item = next(one for one in plan.items if one.id == "brew")
    there = on_hand_now(item, plan.entries, plan.as_of, "brew")
    assert there is not None
    return there.value


def codes(plan: Plan, subject: str) -> set[str]:
    return {one.code for one in plan.findings_on(subject)}


def test_a_use_after_the_count_is_taken_off_and_one_before_is_in_it() -> None:
    on_hand = [
        brew(planned(with_log(used(day, 5)))).on_hand
        for day in ("2026-08-14", "2026-08-15", "2026-08-16")
    ]
    assert [one.value for one in on_hand if one is not None] == [12, 12, 7]


def test_bought_less_used_after_the_count() -> None:
    bought = {"done_on": "2026-08-17", "bought": [{"item": "brew", "amount_gal": 0.5}]}
    before = {"done_on": "2026-08-12", "bought": [{"item": "brew", "amount_gal": 3}]}
    one = brew(planned(with_log(used("2026-08-18", 6), bought, before)))
    assert one.on_hand is not None
    assert one.packages is not None
    assert one.left_over is not None
    # 12 counted + 64 bought - 6 used
    assert one.on_hand.value == 70
    # 32 needed, 70 there: nothing to buy, 38 left
    assert one.needed.value == pytest.approx(32, rel=1e-12)
    assert one.packages.value == 0
    assert one.left_over.value == pytest.approx(38, rel=1e-12)


def test_the_same_use_on_the_job_before_and_after_the_count_leaves_the_same_to_buy() -> None:
    job = {"planting": "lane-27", "step": "autumn_kill"}
    # 30 of the job's 32 fl oz are used: 2 are still needed. There were 42 before, 12 after.
    # Two weeks before its season begins: the owner says that it was so.
    early = {"done_on": "2026-08-17", "confirms": ["e-0"]}
    after_count = with_log(used("2026-08-16", 30, job=job), early, product={"on_hand_fl_oz": 42})
    before_count = with_log(used("2026-08-15", 30, job=job), early)
    for data in (after_count, before_count):
        one = brew(planned(data))
        assert one.on_hand is not None
        assert one.packages is not None
        assert one.on_hand.value == 12
        assert one.needed.value == pytest.approx(2, rel=1e-9)
        assert one.packages.value == 0


def test_a_finished_job_needs_nothing_more() -> None:
    job = {"planting": "lane-27", "step": "autumn_kill", "finished": True}
    plan = planned(with_log(used("2026-08-16", 11, job=job)))
    assert {one.item.id for one in plan.buying.purchases} == {"sg"}
    # what was paid for it stands in the log
    assert "brew" not in {one.key for one in totals(plan, "item")}


def test_an_entry_that_was_corrected_does_not_count() -> None:
    wrong = used("2026-08-16", 9)
    right = used("2026-08-16", 4, corrects="e-0")
    righter = used("2026-08-16", 3, corrects="e-1")
    found = [
        brew(planned(with_log(*entries))).on_hand
        for entries in ((wrong,), (wrong, right), (wrong, right, righter))
    ]
    assert [one.value for one in found if one is not None] == [3, 8, 9]


def test_a_correction_of_a_later_day_does_not_count_yet() -> None:
    wrong, right = used("2026-08-16", 9), used("2026-08-21", 4, corrects="e-0")
    inventory = inventory_of(with_log(wrong, right))
    found = [brew_on_hand(make_plan(inventory, SEASON, DAY(2026, 8, day))) for day in (20, 21)]
    assert found == [12 - 9, 12 - 4]


def test_a_correction_replaces_what_a_later_one_replaced_too() -> None:
    wrong, dated_wrong = used("2026-08-16", 9), used("2026-08-29", 4, corrects="e-0")
    plan = planned(with_log(wrong, dated_wrong, used("2026-08-16", 4, corrects="e-1")))
    assert [one.id for one in plan.entries] == ["e-2"]
    assert codes(plan, "log/e-1") == set()


def test_a_count_of_a_later_day_does_not_count_yet() -> None:
    data = small_property()
    data["products"]["products"][0]["counted_on"] = "2026-08-21"
    one = brew(planned(data))
    assert (one.on_hand, one.packages, one.cost) == (None, None, None)
    assert "N357" in codes(planned(data), "brew")
    data["products"]["products"][0]["counted_on"] = "2026-08-20"
    assert brew(planned(data)).on_hand is not None
    assert "N357" not in codes(planned(data), "brew")


def test_an_entry_of_a_later_day_does_not_count_yet() -> None:
    plan = planned(with_log(used("2026-08-21", 5)))
    assert brew_on_hand(plan) == 12
    # where it was sprayed is not said: no job may be done by this plan
    assert "brew" not in {one.item.id for one in plan.buying.purchases if not one.nothing}
    assert codes(plan, "log/e-0") == {"N352"}
    assert "N352" not in codes(planned(with_log(used("2026-08-20", 5))), "log/e-0")


@pytest.mark.parametrize("how", [{"finished": True}, {"finished": False, "area_ac": 0.5}])
def test_a_use_that_is_logged_without_its_amount_leaves_the_stock_unknown(how: Data) -> None:
    data = twice(on_hand_fl_oz=32)
    job = {"planting": "lane-27", "step": "autumn_kill"} | how
    entry: Data = {"id": "e", "done_on": "2026-09-15", "job": job}
    data["log"] = {"entries": [entry]}
    at = DAY(2026, 9, 20)
    told = plan_of(data, at)
    one = brew(told)
    assert (one.on_hand, one.packages, one.nothing) == (None, None, False)
    assert "C268" in codes(told, "brew")
    assert "Sep 15, 2026" in next(f.words for f in told.findings if f.code == "C268")
    # either cure: the amount typed, or the thing counted again
    entry["used"] = [{"item": "brew", "amount_fl_oz": 30}]
    cured = plan_of(data, at)
    assert brew(cured).on_hand is not None
    assert "C268" not in codes(cured, "brew")
    del entry["used"]
    data["products"]["products"][0]["counted_on"] = "2026-09-15"
    recounted = plan_of(data, at)
    assert recounted.as_of == at
    assert brew(recounted).on_hand is not None
    assert "C268" not in codes(recounted, "brew")


def test_more_used_than_there_was_is_a_caution() -> None:
    looked_again = {"done_on": "2026-08-17", "confirms": ["e-0"]}
    assert "C262" in codes(planned(with_log(used("2026-08-16", 12.5), looked_again)), "brew")
    assert "C262" not in codes(planned(with_log(used("2026-08-16", 12))), "brew")


def test_less_than_nothing_on_hand_is_not_bought_back() -> None:
    looked_again = {"done_on": "2026-08-17", "confirms": ["e-0"]}
    none_left, slip = (
        brew(planned(with_log(used("2026-08-16", amount), looked_again))) for amount in (12, 1200)
    )
    assert none_left.packages is not None
    assert slip.packages is not None
    assert slip.on_hand is not None
    assert slip.on_hand.value < 0
    assert slip.packages.value == none_left.packages.value == 1
    # one gallon for 32 fl oz leaves 96, whatever the log says is missing
    assert slip.left_over is not None
    assert slip.left_over.value == pytest.approx(96, rel=1e-12)


def test_a_log_without_the_day_of_the_count_leaves_the_stock_open() -> None:
    data = with_log(used("2026-08-16", 5))
    del data["products"]["products"][0]["counted_on"]
    one = brew(planned(data))
    assert (one.on_hand, one.packages, one.cost) == (None, None, None)
    assert "C261" in codes(planned(data), "brew")
    del data["log"]
    alone = brew(planned(data))
    assert alone.on_hand is not None
    assert alone.on_hand.value == 12
    assert "C261" not in codes(planned(data), "brew")


def test_a_count_that_is_missing_is_a_caution() -> None:
    data = small_property()
    del data["products"]["products"][0]["on_hand_fl_oz"]
    assert brew(planned(data)).packages is None
    assert "C260" in codes(planned(data), "brew")
    assert "C260" not in codes(planned(small_property()), "brew")


def test_a_price_that_is_missing_or_old() -> None:
    data = small_property()
    product = data["products"]["products"][0]
    product["priced_on"] = "2025-08-19"
    assert "N350" in codes(planned(data), "brew")
    product["priced_on"] = "2025-08-20"
    assert not {"N350", "C208"} & codes(planned(data), "brew")
    del product["price_usd"]
    assert "C208" in codes(planned(data), "brew")
    assert cost_in_all(planned(data)) is None


def order_of(lead_days: int | None, as_of: datetime.date) -> tuple[Purchase, set[str]]:
    data = small_property()
    if lead_days is not None:
        data["products"]["products"][0]["lead_days"] = lead_days
    plan = make_plan(inventory_of(data), SEASON, as_of)
    return brew(plan), codes(plan, "brew")


def test_order_by_is_the_first_open_day_less_the_time_it_takes() -> None:
    # the kill is open from 10 to Sep 27, 2026
    one, found = order_of(21, AS_OF)
    assert one.order.by == DAY(2026, 8, 20)
    assert one.order.state == "by"
    assert (one.order.needed_from, one.order.needed_until) == (DAY(2026, 9, 10), DAY(2026, 9, 27))
    assert "C263" not in found
    now, found = order_of(22, AS_OF)
    assert (now.order.state, now.order.by) == ("now", DAY(2026, 8, 19))
    assert now.order.comes == DAY(2026, 9, 11)
    assert "C263" not in found
    assert "N359" in found
    assert "N359" not in order_of(21, AS_OF)[1]


def test_what_comes_within_the_open_dates_is_not_too_late() -> None:
    # the kill is open to Sep 27, 38 days after the day of the plan
    one, found = order_of(38, AS_OF)
    assert (one.order.state, one.order.comes) == ("now", DAY(2026, 9, 27))
    assert "C263" not in found
    data = small_property()
    data["products"]["products"][0]["lead_days"] = 39
    assert {"C263", "N359"} & codes(planned(data), "brew") == {"C263"}
    # fetched from the shelf on a day on which the job is open, and on its last one
    for day in (DAY(2026, 9, 15), DAY(2026, 9, 27)):
        shelf, found = order_of(0, day)
        assert (shelf.order.state, shelf.order.comes) == ("now", day)
        assert "C263" not in found


def test_without_the_time_it_takes_the_day_is_not_known() -> None:
    one, found = order_of(None, AS_OF)
    assert (one.order.state, one.order.by) == ("no_lead", None)
    assert "N351" in found
    assert "N351" not in order_of(0, AS_OF)[1]


def plan_on(as_of: datetime.date, *entries: Data) -> Plan:
    data = small_property()
    data["log"] = {"entries": list(entries)}
    return make_plan(inventory_of(data), SEASON, as_of)


def test_nothing_is_bought_for_open_dates_that_are_over() -> None:
    last = plan_on(DAY(2026, 9, 27))
    assert brew(last).order.state == "no_lead"
    assert last.buying.missed == ()
    over = plan_on(DAY(2026, 9, 28))
    assert "brew" not in {one.item.id for one in over.buying.purchases}
    assert [one.item.id for one in over.buying.missed] == ["brew"]
    assert "C263" not in codes(over, "brew")
    job = {"planting": "lane-27", "step": "autumn_kill", "finished": True}
    late = plan_on(DAY(2026, 9, 28), {"id": "e", "done_on": "2026-09-20", "job": job})
    assert late.buying.missed == ()


def test_open_dates_that_are_not_known_leave_the_day_open() -> None:
    data = small_property()
    data["seed"]["lots"][0]["lead_days"] = 20
    del data["property"]["season_signs"]
    (one,) = planned(data).buying.purchases
    # the sowing opens on a day of the calendar; only its end waits for a sign
    assert (one.order.state, one.order.by) == ("by", DAY(2026, 12, 31))
    assert (one.order.needed_from, one.order.needed_until) == (DAY(2027, 1, 20), None)


def test_what_to_buy_stands_by_its_order_by_day() -> None:
    data = small_property()
    data["products"]["products"][0]["lead_days"] = 1
    data["seed"]["lots"][0]["lead_days"] = 190
    # Jan 20, 2027 less 190 days is in July 2026, before Sep 9
    assert [one.item.id for one in planned(data).buying.purchases] == ["sg", "brew"]
    data["seed"]["lots"][0]["lead_days"] = 30
    assert [one.item.id for one in planned(data).buying.purchases] == ["brew", "sg"]
    data["products"]["products"][0]["on_hand_fl_oz"] = 40
    assert [one.item.id for one in planned(data).buying.purchases] == ["sg", "brew"]


def test_costs_of_lines_are_what_is_used_of_a_package() -> None:
    plan = planned(small_property())
    cost = {one.key: one.cost.value for one in totals(plan, "item") if one.cost is not None}
    # 32 / 128 x 41.25 = 10.3125; 11.1111 / 10 x 118.5 = 131.667
    assert cost == pytest.approx({"brew": 10.3125, "sg": 131.6667}, rel=1e-5)


def machined(**changes: object) -> Data:
    """The small property mown with the mower and sprayed with it, so to say."""
    data = small_property(machine="mower")
    data["equipment"]["machines"] = [MOWER | changes]
    the_work(data).append({"step": "first_summer_mowing", "machine": "mower"})
    return data


def test_hours_fuel_and_rent() -> None:
    data = machined(
        fuel_gal_per_hour=1.5, fuel_usd_per_gal=4, rent_usd_per_day=90, work_day_hours=6
    )
    plan = planned(data)
    hours = hours_in_all(plan.times, plan.season)
    assert hours is not None
    # 4 x 5 x 0.8 / 8.25 = 1.939 ac an hour: an acre takes 0.5156 hours, twice 1.0313
    assert plan.times[0].rate.value == pytest.approx(1.939, abs=5e-4)
    assert hours.value == pytest.approx(1.03125, rel=1e-12)
    lines = {(one.kind, one.job_id.rpartition("/")[2]): one for one in plan.lines}
    fuel = lines["fuel", "first_summer_mowing"]
    assert fuel.cost is not None
    # 0.515625 x 1.5 = 0.7734 gal at $4
    assert (fuel.amount.value, fuel.cost.value) == pytest.approx((0.7734375, 3.09375), rel=1e-12)
    # each step is a day of its own
    for step in ("autumn_kill", "first_summer_mowing"):
        rent = lines["rent", step]
        assert rent.cost is not None
        assert (rent.amount.value, rent.cost.value) == pytest.approx((1, 90), rel=1e-12)


def test_what_a_machine_lacks_is_a_note() -> None:
    assert codes(planned(machined()), "mower") == set()
    assert codes(planned(machined(fuel_gal_per_hour=1)), "mower") == {"N353"}
    assert codes(planned(machined(rent_usd_per_day=90)), "mower") == {"N354"}
    kinds = {line.kind for line in planned(machined(rent_usd_per_day=90)).lines}
    assert kinds == {"seed", "product", "hours"}


def test_hours_stand_in_every_month_a_job_is_open() -> None:
    plan = planned(machined())
    found = {f"{one.first:%Y-%m}": one.hours.value for one in months(plan)}
    # the kill in September, mowing from Jun 1 to Aug 1
    assert set(found) == {"2026-09", "2027-06", "2027-07", "2027-08"}
    assert set(found.values()) == {0.515625}


def hired(**price: object) -> Data:
    """The small property and a second of half an acre, both sprayed by hire."""
    data = machined()
    second = copy.deepcopy(data["screens"]["screens"][0])
    second |= {"id": "back", "name": "Back", "known_as": "Strip 2", "length_ft": 363}
    second["plantings"][0]["id"] = "back-27"
    data["screens"]["screens"].append(second)
    jobs = [{"planting": one, "steps": ["autumn_kill"]} for one in ("lane-27", "back-27")]
    data["money"] = {"hires": [{"id": "crew", "jobs": jobs} | price]}
    return data


@pytest.mark.parametrize(
    ("price", "charge", "parts"),
    [
        ({"price_usd_per_ac": 60}, 90, [60, 30]),
        ({"price_usd_per_ac": 60, "minimum_usd": 150}, 150, [100, 50]),
        ({"price_usd_per_ac": 60, "minimum_usd": 80}, 90, [60, 30]),
        ({"price_usd": 120}, 120, [80, 40]),
        # 1.5 ac at 1.939 ac an hour are 0.7734 hours
        ({"price_usd_per_hour": 100}, 77.34375, [51.5625, 25.78125]),
    ],
)
def test_a_hire_is_charged_once_and_parted_by_ground_or_time(
    price: Data, charge: float, parts: list[float]
) -> None:
    plan = planned(hired(**price))
    whole = hire_charge(plan, plan.land.hires[0])
    assert whole is not None
    assert whole.value == pytest.approx(charge, rel=1e-12)
    found = {one.place_id: one.cost.value for one in plan.lines if one.kind == "hire" and one.cost}
    assert [found["lane"], found["back"]] == pytest.approx(parts, rel=1e-12)


def test_a_hire_by_the_hour_needs_the_hours() -> None:
    data = hired(price_usd_per_hour=100)
    assert codes(planned(data), "crew") == set()
    for screen in data["screens"]["screens"]:
        del screen["plantings"][0]["work"][0]["machine"]
    plan = planned(data)
    assert codes(plan, "crew") == {"N355"}
    assert [one.cost for one in plan.lines if one.kind == "hire"] == [None, None]
    data["money"]["hires"][0] |= {"priced_on": "2025-01-01"}
    assert codes(planned(data), "crew") == {"N355", "N356"}


def test_a_stopped_job_has_no_line_and_its_product_no_amount() -> None:
    data = hired(price_usd_per_ac=60)
    data["products"]["products"][0]["label"] = full_card(CLOVER)
    plan = planned(data)
    assert {one.kind for one in plan.lines} == {"seed", "hours"}
    assert KILL not in {one.job_id for one in plan.lines}
    assert [one.id for one in plan.buying.not_yet] == ["brew"]
    assert "brew" not in {one.item.id for one in plan.buying.purchases}
    assert hire_charge(plan, plan.land.hires[0]) is None


def shared(**terms: object) -> Data:
    data = small_property()
    share = {"id": "program", "name": "Screen program", "planting": "lane-27"} | terms
    data["money"] = {"cost_share": [share]}
    data["screens"]["screens"][0]["contract"] = "Screen program"
    return data


@pytest.mark.parametrize(
    ("terms", "paid"),
    [
        ({"pays_usd": 75}, 75),
        ({"pays_usd_per_ac": 90}, 90),
        # half of 131.6667 + 10.3125 = 141.9792
        ({"pays_pct": 50}, 70.98958),
        ({"pays_pct": 50, "cap_usd": 60}, 60),
    ],
)
def test_what_is_paid_back_and_what_is_left(terms: Data, paid: float) -> None:
    plan = planned(shared(approved_on="2026-08-01", **terms))
    for column in ("planting", "place", "season"):
        (row,) = money_rows(plan, column)
        assert row.paid_back is not None
        assert row.net is not None
        assert row.paid_back.value == pytest.approx(paid, rel=1e-6)
        assert row.net.value == pytest.approx(141.979166667 - paid, rel=1e-6)
    assert codes(plan, "program") == set()


def test_a_payment_not_approved_before_work_begins_does_not_count() -> None:
    data = shared(pays_usd=75)
    plan = planned(data)
    assert codes(plan, "program") == {"C264"}
    (row,) = money_rows(plan, "planting")
    assert (row.paid_back, row.net) == (None, None)
    (payment,) = payments(plan)
    assert payment.paid is not None
    assert not payment.counts
    # approved after the first job opens, but nothing is begun
    data["money"]["cost_share"][0]["approved_on"] = "2026-09-11"
    later = make_plan(inventory_of(data), SEASON, DAY(2026, 9, 11))
    assert codes(later, "program") == {"C265"}
    assert money_rows(later, "planting")[0].paid_back is not None
    data["money"]["cost_share"][0]["approved_on"] = "2026-09-10"
    later = make_plan(inventory_of(data), SEASON, DAY(2026, 9, 11))
    assert codes(later, "program") == set()
    # begun before it was approved
    job = {"planting": "lane-27", "step": "autumn_kill"}
    data["money"]["cost_share"][0]["approved_on"] = "2026-08-19"
    data["log"] = {"entries": [{"id": "first", "done_on": "2026-08-18", "job": job}]}
    assert codes(planned(data), "program") == {"C266"}
    del data["log"]["entries"][0]["job"]
    assert codes(planned(data), "program") == set()


def test_an_approval_of_a_later_day_does_not_count_yet() -> None:
    data = shared(pays_usd=75, approved_on="2026-08-21")
    assert codes(planned(data), "program") == {"C264", "N358"}
    assert not payments(planned(data))[0].counts
    data["money"]["cost_share"][0]["approved_on"] = "2026-08-20"
    assert codes(planned(data), "program") == set()
    assert payments(planned(data))[0].counts


def test_findings_of_money_are_the_owner_s_alone() -> None:
    plan = planned(shared(pays_usd=75))
    told = [one for one in plan.findings if one.code[1:3] in ("26", "35")]
    assert told
    assert all(not one.words_for_others for one in told)


def test_spent_stands_in_the_season_of_its_day() -> None:
    days = ("2026-08-16", "2026-08-31", "2026-09-01")
    bought = [
        {"done_on": day, "bought": [{"item": "sg", "amount_lb": 1, "cost_usd": 10 + n}]}
        for n, day in enumerate(days)
    ]
    inventory = inventory_of(with_log(*bought))
    plan = make_plan(inventory, SEASON, DAY(2026, 9, 2))
    assert [(year, one.value) for year, one in spent(plan)] == [(2026, 21), (2027, 12)]


def test_a_machine_is_no_faster_than_its_width_and_speed_allow() -> None:
    """Independent: a mile an hour on a foot of width is 5,280 sq ft an hour."""
    assert field_work.work_rate_ac_per_hour(1, 1, 1) == pytest.approx(5280 / 43560, rel=1e-12)
