"""What was put on an acre: properties on random amounts and ground."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.compute.applied import applied_fl_oz_per_ac, applied_lb_per_ac

USED = st.floats(0, 1e4)
GROUND_AC = st.floats(1e-3, 1e3)
WAYS = [applied_fl_oz_per_ac, applied_lb_per_ac]


@pytest.mark.parametrize("applied", WAYS)
@given(used=USED, area_ac=GROUND_AC)
def test_over_its_ground_it_is_what_was_used(applied, used: float, area_ac: float) -> None:
    assert applied(used, area_ac) * area_ac == pytest.approx(used)


@pytest.mark.parametrize("applied", WAYS)
@given(used=USED, area_ac=GROUND_AC)
def test_twice_the_ground_takes_half_the_rate(applied, used: float, area_ac: float) -> None:
    assert applied(used, 2 * area_ac) == pytest.approx(applied(used, area_ac) / 2)
