"""What must hold of money, stock and field work, whatever the numbers."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.compute import buying, field_work, money, stock

AMOUNTS = st.floats(min_value=0.01, max_value=1e4)
SHARES = st.floats(min_value=0.05, max_value=1)
SOME = st.lists(AMOUNTS, min_size=1, max_size=8)
MAYBE = st.lists(AMOUNTS, max_size=8)


@given(speed=AMOUNTS, width=AMOUNTS, share=SHARES, area=AMOUNTS)
def test_twice_the_width_takes_half_the_hours(
    speed: float, width: float, share: float, area: float
) -> None:
    one = field_work.work_rate_ac_per_hour(speed, width, share)
    two = field_work.work_rate_ac_per_hour(speed, 2 * width, share)
    assert two == pytest.approx(2 * one, rel=1e-12)
    hours = field_work.work_hours(area, one)
    assert field_work.work_hours(area, two) == pytest.approx(hours / 2, rel=1e-12)


@given(hours=SOME, day=st.floats(min_value=1, max_value=24))
def test_days_of_rent_hold_the_hours_and_one_less_does_not(hours: list[float], day: float) -> None:
    days = field_work.rent_days(math.fsum(hours), day)
    assert days == math.floor(days)
    assert days * day >= math.fsum(hours) * (1 - 1e-9)
    assert (days - 1) * day < math.fsum(hours) * (1 + 1e-9)


@given(whole=AMOUNTS, parts=SOME)
def test_parts_of_a_whole_are_the_whole(whole: float, parts: list[float]) -> None:
    shares = [money.part_of(whole, part, math.fsum(parts)) for part in parts]
    assert math.fsum(shares) == pytest.approx(whole, rel=1e-9)
    assert all(0 < share <= whole * (1 + 1e-9) for share in shares)


@given(whole=AMOUNTS, parts=SOME, cut=st.floats(min_value=0.1, max_value=0.9))
def test_ground_parted_in_two_pays_the_same(whole: float, parts: list[float], cut: float) -> None:
    first, *rest = parts
    halves = [first * cut, first * (1 - cut), *rest]
    shares = [money.part_of(whole, part, math.fsum(halves)) for part in halves[:2]]
    undivided = money.part_of(whole, first, math.fsum(parts))
    assert math.fsum(shares) == pytest.approx(undivided, rel=1e-9)


@given(counted=AMOUNTS, bought=MAYBE, used=MAYBE)
def test_stock_counts_everything_once(
    counted: float, bought: list[float], used: list[float]
) -> None:
    left = stock.left_after_use(stock.counted_and_bought(counted, bought), used)
    assert left == pytest.approx(counted + math.fsum(bought) - math.fsum(used), abs=1e-6)


@given(planned=AMOUNTS, used=MAYBE)
def test_what_is_still_needed_is_never_below_nothing(planned: float, used: list[float]) -> None:
    still = stock.still_needed(planned, used)
    assert 0 <= still <= planned
    assert still + math.fsum(used) >= planned * (1 - 1e-12)


@given(needed=AMOUNTS, on_hand=st.floats(0, 1e4), size=st.floats(1, 500))
def test_less_than_a_package_is_left_of_what_was_bought_and_a_hundredth_short(
    needed: float, on_hand: float, size: float
) -> None:
    packages = buying.packages_count(needed, on_hand, size)
    left = stock.left_over(on_hand, packages, size, needed)
    assert left >= -size / 100 - 1e-6
    assert stock.short_of(needed, on_hand, packages, size) == pytest.approx(-left, abs=1e-6)
    if packages:
        assert left < size * (1 + 1e-9)


@given(amounts=SOME, size=AMOUNTS, price=AMOUNTS)
def test_what_is_used_of_packages_costs_its_share(
    amounts: list[float], size: float, price: float
) -> None:
    parts = [money.used_usd(amount, size, price) for amount in amounts]
    whole = money.used_usd(math.fsum(amounts), size, price)
    assert buying.sum_of(parts) == pytest.approx(whole, rel=1e-9)
    assert money.used_usd(size, size, price) == pytest.approx(price, rel=1e-12)


@given(area=AMOUNTS, price=AMOUNTS, least=AMOUNTS)
def test_a_hire_is_never_below_its_minimum(area: float, price: float, least: float) -> None:
    charge = money.at_least_usd(money.hire_by_area_usd(area, price), least)
    assert charge >= least
    assert charge >= money.hire_by_time_usd(area, price)
    assert charge in (least, money.hire_by_area_usd(area, price))


@given(cost=AMOUNTS, share=SHARES, cap=AMOUNTS)
def test_a_share_and_what_is_left_make_up_the_cost(cost: float, share: float, cap: float) -> None:
    paid = money.capped_usd(money.share_of_cost_usd(cost, share), cap)
    assert paid <= cap
    assert paid <= cost
    assert money.net_usd(cost, [paid]) + paid == pytest.approx(cost, rel=1e-9)
    assert money.share_by_area_usd(cost, share) == money.share_of_cost_usd(cost, share)


@given(hours=AMOUNTS, rate=AMOUNTS, price=AMOUNTS, days=st.integers(1, 30))
def test_fuel_and_rent_grow_with_what_they_pay_for(
    hours: float, rate: float, price: float, days: int
) -> None:
    fuel = field_work.fuel_usd(field_work.fuel_gal(hours, rate), price)
    double = field_work.fuel_usd(field_work.fuel_gal(2 * hours, rate), price)
    assert double == pytest.approx(2 * fuel, rel=1e-12)
    each = [price] * days
    assert field_work.rent_usd(days, price) == pytest.approx(math.fsum(each), rel=1e-12)
