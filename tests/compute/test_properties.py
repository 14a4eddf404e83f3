"""What must hold whatever the numbers: double the ground, double the seed."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.compute import area, buying, dose, seed, spray, spread, stock

AMOUNTS = st.floats(min_value=0.01, max_value=1e4)
SHARES = st.floats(min_value=0.05, max_value=1)
WHOLE = st.integers(min_value=1, max_value=500).map(float)


@given(length_ft=AMOUNTS, width_ft=AMOUNTS)
def test_a_strip_twice_as_long_has_twice_the_ground(length_ft: float, width_ft: float) -> None:
    one = area.strip_area_ac(length_ft, width_ft)
    assert area.strip_area_ac(2 * length_ft, width_ft) == 2 * one
    assert area.strip_area_ac(width_ft, length_ft) == one


@given(area_ac=AMOUNTS, rate=AMOUNTS, share=SHARES)
def test_twice_the_ground_takes_twice_the_seed(area_ac: float, rate: float, share: float) -> None:
    one = seed.bulk_seed_lb(area_ac, rate, share)
    assert seed.bulk_seed_lb(2 * area_ac, rate, share) == 2 * one
    assert one == pytest.approx(area_ac * seed.bulk_rate_lb_per_ac(rate, share), rel=1e-12)


@given(rate=AMOUNTS, share=SHARES)
def test_a_bag_never_holds_more_live_seed_than_seed(rate: float, share: float) -> None:
    assert seed.bulk_rate_lb_per_ac(rate, share) >= rate


@given(purity=SHARES, parts=st.lists(st.floats(0, 1), min_size=3, max_size=3))
def test_live_seed_counts_every_viable_part_alike(purity: float, parts: list[float]) -> None:
    assume(0 < sum(parts) <= 1)
    germinated, hard, dormant = parts
    share = seed.pls_fraction(purity, germinated, hard, dormant)
    assert 0 <= share <= purity * (1 + 1e-12)
    assert share == pytest.approx(seed.pls_fraction(purity, dormant, germinated, hard), rel=1e-12)


@given(rate=AMOUNTS, germinated=SHARES, dormant=SHARES)
def test_ready_and_sleeping_seed_make_up_the_rate(
    rate: float, germinated: float, dormant: float
) -> None:
    asleep = seed.dormant_share_fraction(germinated, 0, dormant)
    ready = seed.ready_rate_pls_lb_per_ac(rate, germinated, 0, dormant)
    assert ready + rate * asleep == pytest.approx(rate, rel=1e-12)


@given(flow=AMOUNTS, speed=AMOUNTS, spacing=AMOUNTS)
def test_half_the_speed_puts_on_twice_the_spray(flow: float, speed: float, spacing: float) -> None:
    one = spray.carrier_gal_per_ac(flow, speed, spacing)
    assert spray.carrier_gal_per_ac(flow, speed / 2, spacing) == pytest.approx(2 * one, rel=1e-12)


@given(spray_gal=AMOUNTS, tank_gal=st.floats(min_value=1, max_value=500))
def test_loads_hold_the_spray_and_no_load_more_than_the_tank(
    spray_gal: float, tank_gal: float
) -> None:
    loads = spray.loads_count(spray_gal, tank_gal)
    last = spray.last_load_gal(spray_gal, tank_gal, loads)
    assert 0 < last <= tank_gal * (1 + 1e-9)
    full = spray.full_loads_count(loads) * tank_gal
    assert full + last == pytest.approx(spray_gal, rel=1e-9)
    equal = spray.equal_load_gal(spray_gal, loads)
    assert equal <= tank_gal * (1 + 1e-9)
    assert equal * loads == pytest.approx(spray_gal, rel=1e-9)


@given(area_ac=AMOUNTS, carrier=AMOUNTS, rate=AMOUNTS, tank_gal=st.floats(1, 500))
def test_product_of_the_loads_is_the_product_of_the_place(
    area_ac: float, carrier: float, rate: float, tank_gal: float
) -> None:
    spray_gal = spray.spray_gal(area_ac, carrier)
    loads = spray.loads_count(spray_gal, tank_gal)
    last = spray.last_load_gal(spray_gal, tank_gal, loads)
    parts = spray.full_loads_count(loads) * dose.load_product_fl_oz(tank_gal, carrier, rate)
    together = parts + dose.load_product_fl_oz(last, carrier, rate)
    assert together == pytest.approx(dose.product_fl_oz(area_ac, rate), rel=1e-6)


@given(rate=AMOUNTS, strength=AMOUNTS)
def test_active_and_product_rates_undo_each_other(rate: float, strength: float) -> None:
    product = dose.product_rate_fl_oz_per_ac(rate, strength)
    assert dose.active_rate_lb_per_ac(product, strength) == pytest.approx(rate, rel=1e-12)


@given(amount=AMOUNTS, mark=st.floats(min_value=0.01, max_value=100))
def test_marks_are_near_and_the_mark_below_is_never_too_much(amount: float, mark: float) -> None:
    nearest = dose.measured_fl_oz(amount, mark)
    below = dose.mark_below_fl_oz(amount, mark)
    assert abs(nearest - amount) <= mark / 2 * (1 + 1e-9)
    assert below <= amount * (1 + 1e-12)
    assert amount - below <= mark * (1 + 1e-9)
    for one in (nearest, below):
        assert one / mark == pytest.approx(round(one / mark), abs=1e-9)


@given(amount=AMOUNTS, load=AMOUNTS, carrier=AMOUNTS)
def test_a_measured_amount_gives_back_its_rate(amount: float, load: float, carrier: float) -> None:
    rate = dose.rate_given_fl_oz_per_ac(amount, load, carrier)
    assert dose.load_product_fl_oz(load, carrier, rate) == pytest.approx(amount, rel=1e-12)


@given(width=AMOUNTS, swath=st.floats(min_value=1, max_value=100))
def test_lanes_cover_the_width_and_one_less_does_not(width: float, swath: float) -> None:
    lanes = spread.lanes_count(width, swath)
    assert lanes * swath >= width * (1 - 1e-12)
    assert (lanes - 1) * swath < width


@given(bulk=AMOUNTS, caught=AMOUNTS)
def test_times_over_and_correction_give_the_rate(bulk: float, caught: float) -> None:
    times = spread.times_over_count(bulk, caught)
    assert times >= 1
    assert times == math.floor(times)
    correction = spread.correction_fraction(bulk, caught, times)
    assert correction * caught * times == pytest.approx(bulk, rel=1e-12)
    if bulk >= caught:
        assert 2 / 3 <= correction <= 3 / 2


@given(lanes=WHOLE, times=WHOLE)
def test_every_lane_is_walked_each_time(lanes: float, times: float) -> None:
    assert spread.passes_count(lanes, times) == sum(lanes for _ in range(int(times)))


@given(bulk=AMOUNTS, hopper=st.floats(min_value=1, max_value=500))
def test_fills_hold_the_seed_and_fit_the_hopper(bulk: float, hopper: float) -> None:
    fills = spread.fills_count(bulk, hopper)
    each = spread.fill_lb(bulk, fills)
    assert each <= hopper * (1 + 1e-12)
    assert each * fills == pytest.approx(bulk, rel=1e-12)


@given(needed=AMOUNTS, on_hand=st.floats(0, 1e4), size=st.floats(1, 500))
def test_packages_cover_the_need_but_for_a_hundredth_of_one_and_one_less_does_not(
    needed: float, on_hand: float, size: float
) -> None:
    packages = buying.packages_count(needed, on_hand, size)
    assert packages >= 0
    assert packages * size + on_hand >= (needed - size / 100) * (1 - 1e-9)
    if packages:
        # what is short with one less is as much as is not let go
        assert needed - ((packages - 1) * size + on_hand) >= size / 100 * (1 - 1e-9)


# By hand: a bag of 50 lb is not bought for 0.49 lb, and is for 0.5 lb; of 50.49 lb one is bought.
@pytest.mark.parametrize(
    ("needed", "on_hand", "packages"),
    [(10.49, 10, 0), (10.5, 10, 1), (50.49, 0, 1), (50.5, 0, 2), (50, 0, 1), (10, 10, 0)],
)
def test_no_package_is_bought_for_less_than_a_hundredth_of_it(
    needed: float, on_hand: float, packages: float
) -> None:
    assert buying.packages_count(needed, on_hand, 50) == packages
    short = stock.short_of(needed, on_hand, packages, 50)
    assert short < 0.5
    assert (short > 0) == (needed in (10.49, 50.49))


@given(packages=WHOLE, price=AMOUNTS)
def test_cost_is_every_package_at_its_price(packages: float, price: float) -> None:
    each = [price for _ in range(int(packages))]
    assert buying.sum_of(each) == pytest.approx(buying.cost_usd(packages, price), rel=1e-12)


# Independent: whole counts by hand, where binary fractions come out a hair above or below.
def test_a_rounding_error_of_computing_is_no_load_fill_or_package_more() -> None:
    ground = area.strip_area_ac(1650, 60)
    assert spray.loads_count(spray.spray_gal(ground, 11), 25) == 1
    assert spread.fills_count(seed.bulk_seed_lb(10.5, 8, 0.7), 5) == 24
    assert buying.packages_count(0.8, 0.7, 0.1) == 1
    assert dose.mark_below_fl_oz(0.3, 0.1) == pytest.approx(0.3, rel=1e-12)
