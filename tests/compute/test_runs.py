"""Runs: what is left at gates, whatever the places and the tank."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.compute import runs, spray

EACH = st.lists(st.floats(min_value=0.01, max_value=50), min_size=2, max_size=8)
HELD = st.floats(min_value=1, max_value=60)
THOUSANDTH = 0.001


@given(each=EACH, tank=HELD)
def test_what_is_left_and_what_is_sprayed_are_what_was_mixed(
    each: list[float], tank: float
) -> None:
    in_all = runs.run_spray_gal(each)
    count = spray.loads_count(in_all, tank)
    last = spray.last_load_gal(in_all, tank, count)
    for number in range(1, len(each) + 1):
        used = math.fsum(each[:number])
        begun = runs.loads_begun_count(used, tank, count)
        left = runs.left_in_tank_gal(used, begun, count, tank, last)
        mixed = begun * tank if begun < count else (count - 1) * tank + last
        assert left + used == pytest.approx(mixed, abs=THOUSANDTH)
        # never more than the tank holds, and at the last gate nothing of an exact mix
        assert 0 <= left <= tank + THOUSANDTH
    assert left == pytest.approx(0, abs=THOUSANDTH)


@given(each=EACH, hopper=HELD)
def test_what_is_left_in_a_hopper_is_never_more_than_a_fill(
    each: list[float], hopper: float
) -> None:
    in_all = runs.run_seed_lb(each)
    fills = math.ceil(round(in_all / hopper, 9))
    fill = in_all / fills
    lefts = []
    for number in range(1, len(each) + 1):
        used = math.fsum(each[:number])
        begun = runs.fills_begun_count(used, fill)
        lefts.append(runs.left_in_hopper_lb(used, begun, fill))
        assert lefts[-1] + used == pytest.approx(begun * fill, abs=THOUSANDTH)
    assert max(lefts) <= fill + THOUSANDTH
    assert lefts[-1] == pytest.approx(0, abs=THOUSANDTH)


@given(each=EACH)
def test_twice_every_place_is_twice_the_run(each: list[float]) -> None:
    doubled = [2 * one for one in each]
    for summed in (runs.run_ground_ac, runs.run_product_fl_oz, runs.run_product_oz_wt):
        assert summed(doubled) == pytest.approx(2 * summed(each), rel=1e-12)
