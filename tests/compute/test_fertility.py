"""Fertilizer, lime and water holes: what must hold whatever the numbers."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.compute import fertility, lime, water

AMOUNTS = st.floats(min_value=0.01, max_value=1e4)
SHARES = st.floats(min_value=0.02, max_value=1)
NEEDS = st.floats(min_value=0, max_value=500)
CREDITS = st.lists(st.floats(min_value=0, max_value=200), max_size=4)
SLOPES = st.floats(min_value=0, max_value=5)
GROWTH = st.floats(min_value=1.01, max_value=3)


@given(need=NEEDS, share=SHARES)
def test_what_a_product_carries_is_what_it_was_reckoned_for(need: float, share: float) -> None:
    product = fertility.product_rate_lb_per_ac(need, share)
    assert fertility.carried_lb_per_ac(product, share) == pytest.approx(need, rel=1e-12)
    assert product >= need


@given(need=NEEDS, credits=CREDITS)
def test_credits_never_ask_for_less_than_nothing_nor_for_more_than_the_need(
    need: float, credits: list[float]
) -> None:
    still = fertility.still_needed_lb_per_ac(need, credits)
    assert 0 <= still <= need
    assert still + math.fsum(credits) >= need * (1 - 1e-12)


@given(got=NEEDS, need=NEEDS)
def test_what_goes_on_is_never_both_short_and_over(got: float, need: float) -> None:
    over = fertility.beyond_lb_per_ac(got, need)
    short = fertility.still_needed_lb_per_ac(need, [got])
    assert min(over, short) == 0
    assert got - over + short == pytest.approx(need)


@given(area=AMOUNTS, rate=AMOUNTS)
def test_twice_the_ground_takes_twice_the_fertilizer_and_lime(area: float, rate: float) -> None:
    assert fertility.product_lb(2 * area, rate) == 2 * fertility.product_lb(area, rate)
    assert lime.lime_ton(2 * area, rate) == 2 * lime.lime_ton(area, rate)
    assert lime.lime_lb(2 * area, rate) == 2 * lime.lime_lb(area, rate)
    assert lime.lime_lb(area, rate) == pytest.approx(2000 * lime.lime_ton(area, rate), rel=1e-12)


@given(amount=AMOUNTS, bag=st.floats(min_value=1, max_value=100))
def test_whole_bags_and_the_part_make_up_the_amount(amount: float, bag: float) -> None:
    bags = fertility.whole_bags_count(amount, bag)
    part = fertility.part_bag_lb(amount, bags, bag)
    assert bags == math.floor(bags)
    assert 0 <= part <= bag * (1 + 1e-9)
    assert bags * bag + part == pytest.approx(amount, rel=1e-9)


@given(need=AMOUNTS, base=SHARES, strength=SHARES, factor=GROWTH)
def test_a_stronger_lime_is_spread_thinner(
    need: float, base: float, strength: float, factor: float
) -> None:
    for rate in (lime.lime_by_cce_ton_per_ac, lime.lime_by_ecce_ton_per_ac):
        one = rate(need, base, strength)
        assert rate(need, base, factor * strength) == pytest.approx(one / factor, rel=1e-12)
        assert rate(need, factor * base, strength) == pytest.approx(factor * one, rel=1e-12)
        # Lime as strong as the lab reckons with goes on as printed.
        assert 2000 * rate(need, base, base) == pytest.approx(need, rel=1e-12)
    enm = lime.lime_by_enm_ton_per_ac(need, 400)
    assert lime.lime_by_enm_ton_per_ac(need, 400 * factor) == pytest.approx(enm / factor, rel=1e-12)


@given(rate=AMOUNTS, most=st.floats(min_value=0.5, max_value=5))
def test_lime_now_and_later_make_up_the_lime_and_no_time_has_too_much(
    rate: float, most: float
) -> None:
    now = lime.lime_now_ton_per_ac(rate, most)
    later = lime.lime_later_ton_per_ac(rate, now)
    assert now <= most
    assert now + later == pytest.approx(rate, rel=1e-12)
    times = lime.applications_count(rate, most)
    assert times * most >= rate * (1 - 1e-9)
    assert (times - 1) * most < rate * (1 + 1e-9)
    assert (later > 0) == (rate > most)


@given(top=AMOUNTS, share=st.floats(0, 1), depth=AMOUNTS, factor=GROWTH)
def test_a_round_hole_holds_more_with_every_size(
    top: float, share: float, depth: float, factor: float
) -> None:
    bottom = share * top
    one = water.round_cu_ft(top, bottom, depth)
    assert water.round_cu_ft(factor * top, bottom, depth) > one
    assert water.round_cu_ft(top, bottom, factor * depth) > one
    assert water.round_cu_ft(top, bottom + 1, depth) > one
    # It lies between the cone and the upright hole of the same top.
    assert water.cone_cu_ft(top, depth) <= one * (1 + 1e-12)
    assert one <= 3 * water.cone_cu_ft(top, depth) * (1 + 1e-12)


@given(top=AMOUNTS, depth=AMOUNTS)
def test_a_cone_is_a_round_hole_without_a_bottom(top: float, depth: float) -> None:
    cone = water.cone_cu_ft(top, depth)
    assert water.round_cu_ft(top, 0, depth) == pytest.approx(cone, rel=1e-12)
    assert 3 * cone == pytest.approx(math.pi * (top / 2) ** 2 * depth, rel=1e-12)


@given(bottoms=st.tuples(AMOUNTS, AMOUNTS), depth=AMOUNTS, slope=SLOPES, factor=GROWTH)
def test_a_rectangle_holds_more_with_every_size_and_less_with_flatter_sides(
    bottoms: tuple[float, float], depth: float, slope: float, factor: float
) -> None:
    length, width = (one + 2 * slope * depth for one in bottoms)
    one = water.rectangle_cu_ft(length, width, depth, slope)
    assert one == pytest.approx(water.rectangle_cu_ft(width, length, depth, slope), rel=1e-9)
    assert water.rectangle_cu_ft(factor * length, width, depth, slope) > one
    assert water.rectangle_cu_ft(length, factor * width, depth, slope) > one
    assert one <= length * width * depth * (1 + 1e-9)
    assert water.rectangle_cu_ft(length, width, depth, 0) == pytest.approx(
        length * width * depth, rel=1e-9
    )
    # By hand: the integral of (length - 2 s z)(width - 2 s z) over the depth.
    whole = length * width * depth - (length + width) * slope * depth**2
    assert one == pytest.approx(whole + 4 / 3 * slope**2 * depth**3, rel=1e-6)


@given(deer=AMOUNTS, weight=AMOUNTS, need=AMOUNTS, held=AMOUNTS)
def test_twice_the_deer_drink_twice_and_the_hole_lasts_half_as_long(
    deer: float, weight: float, need: float, held: float
) -> None:
    daily = water.deer_water_gal_per_day(deer, weight, need)
    double = water.deer_water_gal_per_day(2 * deer, weight, need)
    assert double == pytest.approx(2 * daily, rel=1e-12)
    lasts = water.lasts_days(held, daily)
    assert water.lasts_days(held, double) == pytest.approx(lasts / 2, rel=1e-12)
    assert daily * lasts == pytest.approx(held, rel=1e-12)


@given(daily=AMOUNTS, days=AMOUNTS, held=AMOUNTS, load=st.floats(min_value=1, max_value=5000))
def test_loads_carry_through_the_dry_spell_and_one_less_does_not(
    daily: float, days: float, held: float, load: float
) -> None:
    loads = water.refills_count(daily, days, held, load)
    assert loads >= 0
    brought = min(load, held)  # a hole takes no more than it holds
    assert loads * brought + held >= daily * days * (1 - 1e-6)
    if loads:
        assert (loads - 1) * brought + held < daily * days * (1 + 1e-6)


# A pond of 335 by 385 ft, 18 ft deep, sides 4 to 1 (University of Regina, source key uregina_pond).
# Its two edges come in alike, so its sides do not run to one point.
def test_the_wrong_rules_for_sloping_sides_do_not_come_out() -> None:
    volume = water.rectangle_cu_ft(385, 335, 18, 4)
    bottom = water.bottom_edge_ft(385, 18, 4) * water.bottom_edge_ft(335, 18, 4)
    top = 385 * 335
    as_a_pyramid = 18 / 3 * (top + math.sqrt(top * bottom) + bottom)
    assert round(as_a_pyramid) == 1512342
    assert volume == 1512846
    assert abs(volume - as_a_pyramid) > 500
    assert abs(volume - 18 / 2 * (top + bottom)) > 1000
    # Only one of both sides taken off: 385 - 72 by 335 - 72.
    one_side = 18 / 6 * (top + 4 * 349 * 299 + 313 * 263)
    assert abs(volume - one_side) > 100000
    assert water.bottom_edge_ft(385, 18, 4) != 313
