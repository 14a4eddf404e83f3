"""Seed, spreaders and drills: what must hold whatever the numbers, and printed slips kept out."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.compute import drill, seed, seed_rate, seed_short, spread
from generator.compute import swath as throw

AMOUNTS = st.floats(min_value=0.01, max_value=1e4)
SHARES = st.floats(min_value=0.05, max_value=1)
COUNTS = st.floats(min_value=1000, max_value=5e6)
WEIGHTS = st.lists(st.floats(min_value=0.01, max_value=1), min_size=2, max_size=6)


@given(seeds=AMOUNTS, count=COUNTS)
def test_seeds_to_pounds_and_back(seeds: float, count: float) -> None:
    rate = seed_rate.counted_rate_lb_per_ac(seeds, count)
    assert seed.seeds_per_sq_ft(rate, count) == pytest.approx(seeds, rel=1e-12)
    assert seed_rate.counted_rate_lb_per_ac(2 * seeds, count) == 2 * rate


@given(weights=WEIGHTS, rate=AMOUNTS, data=st.data())
def test_the_parts_of_a_mixture_are_the_mixture(
    weights: list[float], rate: float, data: st.DataObject
) -> None:
    shares = [one / sum(weights) for one in weights]
    counts = [data.draw(COUNTS) for _ in shares]
    rates = [seed_rate.share_rate_lb_per_ac(rate, share) for share in shares]
    assert sum(rates) == pytest.approx(rate, rel=1e-9)
    brought = [
        seed_rate.share_seeds_per_lb(share, count)
        for share, count in zip(shares, counts, strict=True)
    ]
    in_a_pound = seed_rate.mix_seeds_per_lb(brought)
    assert min(counts) * (1 - 1e-9) <= in_a_pound <= max(counts) * (1 + 1e-9)
    each = [seed.seeds_per_sq_ft(one, count) for one, count in zip(rates, counts, strict=True)]
    together = seed_rate.together_seeds_per_sq_ft(each)
    assert together == pytest.approx(seed.seeds_per_sq_ft(rate, in_a_pound), rel=1e-9)


@given(price=AMOUNTS, package=AMOUNTS, share=SHARES)
def test_a_pound_of_live_seed_costs_no_less_than_a_pound(
    price: float, package: float, share: float
) -> None:
    cost = seed_rate.pls_pound_usd(price, package, share)
    assert cost >= price / package * (1 - 1e-12)
    assert cost * package * share == pytest.approx(price, rel=1e-12)


@given(
    area=AMOUNTS, rate=AMOUNTS, share=SHARES, cut=st.floats(min_value=0.05, max_value=0.95),
    swath=st.floats(1, 60), width=st.floats(1, 60),
)  # fmt: skip
def test_a_place_cut_in_two_takes_the_same_seed(
    area: float, rate: float, share: float, cut: float, swath: float, width: float
) -> None:
    def loaded(ground: float) -> float:
        bulk = seed.bulk_seed_lb(ground, rate, share)
        return throw.load_lb(bulk, throw.beside_lb(bulk, swath, width))

    both = loaded(area * cut) + loaded(area * (1 - cut))
    assert both == pytest.approx(loaded(area), rel=1e-9)
    assert loaded(2 * area) == pytest.approx(2 * loaded(area), rel=1e-12)


@given(bulk=AMOUNTS, swath=st.floats(1, 60), width=st.floats(1, 60))
def test_nothing_falls_beside_a_place_as_wide_as_the_throw(
    bulk: float, swath: float, width: float
) -> None:
    beside = throw.beside_lb(bulk, swath, width)
    if width >= swath:
        assert beside == 0
    else:
        # of the throw the place takes its width's share
        assert (bulk + beside) * width / swath == pytest.approx(bulk, rel=1e-9)


@given(width=st.floats(1, 500), swath=st.floats(1, 60), length=AMOUNTS, wanted=AMOUNTS)
def test_lanes_that_share_a_width_put_down_the_seed_of_the_place(
    width: float, swath: float, length: float, wanted: float
) -> None:
    assume(width >= swath)
    caught = 5.0
    lanes = spread.lanes_count(width, swath)
    lane = throw.lane_width_ft(width, lanes)
    assert lane <= swath * (1 + 1e-9)
    laid = throw.laid_rate_lb_per_ac(caught, swath, lane)
    times = spread.times_over_count(wanted, laid)
    correction = spread.correction_fraction(wanted, laid, times)
    a_pass = correction * caught * swath * length  # pound-feet to an acre, over one lane
    assert a_pass * lanes * times == pytest.approx(wanted * width * length, rel=1e-9)


@given(on_hand=AMOUNTS, more=AMOUNTS, needs=st.lists(AMOUNTS, min_size=1, max_size=6))
def test_a_short_lot_is_never_sown_thin_and_never_overdrawn(
    on_hand: float, more: float, needs: list[float]
) -> None:
    left = supply = seed_short.supply_lb(on_hand, more)
    taken = []
    for need in needs:
        sown = seed_short.sown_area_ac(2.0, left, need)
        assert 0 <= sown <= 2.0
        assert sown + seed_short.not_sown_area_ac(2.0, sown) == pytest.approx(2.0)
        took = seed_short.taken_lb(need, sown, 2.0)
        if sown:
            assert took / sown == pytest.approx(need / 2.0, rel=1e-9)
        taken.append(took)
        left = seed_short.left_lb(left, took)
    assert sum(taken) == pytest.approx(min(sum(needs), supply), rel=1e-9)
    assert seed_short.waiting_area_ac(2.0) == seed_short.not_sown_area_ac(2.0, 0)


@given(put_in=AMOUNTS, left=AMOUNTS)
def test_two_weighings_add_up(put_in: float, left: float) -> None:
    assume(left < put_in)
    assert throw.run_out_lb(put_in, left) + left == pytest.approx(put_in, rel=1e-12)


@given(distance=AMOUNTS, seconds=AMOUNTS, stretch=AMOUNTS)
def test_a_pace_is_the_same_over_any_stretch(
    distance: float, seconds: float, stretch: float
) -> None:
    pace = throw.pace_mph(distance, seconds)
    took = throw.stretch_seconds(stretch, distance, seconds)
    assert throw.pace_mph(stretch, took) == pytest.approx(pace, rel=1e-9)


@given(one=AMOUNTS, other=AMOUNTS)
def test_catches_are_apart_alike_from_both_sides(one: float, other: float) -> None:
    apart = throw.apart_fraction(one, other)
    assert apart == throw.apart_fraction(other, one) >= 0
    assert min(one, other) * (1 + apart) == pytest.approx(max(one, other), rel=1e-9)


@given(rate=AMOUNTS, spacing=st.floats(4, 40), distance=AMOUNTS, rows=st.integers(1, 20))
def test_a_drill_that_gives_what_each_row_must_gives_the_rate(
    rate: float, spacing: float, distance: float, rows: int
) -> None:
    grams = drill.row_catch_g(rate, spacing, distance)
    ground = drill.rows_ground_sq_ft(distance, spacing, rows)
    given_back = drill.drilled_rate_lb_per_ac(grams * rows / 453.59237, ground)
    assert given_back == pytest.approx(rate, rel=1e-9)
    assert drill.drill_correction_fraction(rate, given_back) == pytest.approx(1, rel=1e-9)


@given(turns=AMOUNTS, around=st.floats(1, 30))
def test_turns_and_distance_undo_each_other(turns: float, around: float) -> None:
    distance = drill.turned_distance_ft(turns, around)
    assert drill.distance_turns(distance, around) == pytest.approx(turns, rel=1e-12)


# Printed slips (source keys txdot_pls, psu_pls_price): one divides by a share it rounded first, the
# other multiplies by rounded pounds and names one lot at two prices.
LOW, HIGH = seed.pls_fraction(0.85, 0.60, 0, 0), seed.pls_fraction(0.99, 0.90, 0, 0)
SLIPS = [
    (seed.bulk_rate_lb_per_ac(1, seed.pls_fraction(0.85, 0.75, 0, 0)), 1.56),
    (seed_rate.pls_pound_usd(1.95, 1, LOW), 3.90),
    (seed_rate.pls_pound_usd(3.00, 1, HIGH), 3.30),
    (seed_rate.pls_pound_usd(2.50, 1, HIGH), 3.30),
]


@pytest.mark.parametrize(("computed", "slip"), SLIPS)
def test_rounding_on_the_way_is_no_answer(computed: float, slip: float) -> None:
    assert abs(computed - slip) > 0.005
