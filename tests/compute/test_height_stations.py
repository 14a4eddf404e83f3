"""Heights at stations: what must hold whatever was measured."""

from hypothesis import given
from hypothesis import strategies as st

from generator.compute import height_stations

HEIGHTS = st.lists(st.floats(min_value=0.1, max_value=300), min_size=1, max_size=40)
LENGTH = st.floats(min_value=1, max_value=20_000)


@given(heights_in=HEIGHTS)
def test_the_mean_lies_between_the_lowest_and_the_highest(heights_in: list[float]) -> None:
    lowest = height_stations.lowest_height_in(heights_in)
    mean = height_stations.mean_height_in(heights_in)
    assert lowest <= mean * (1 + 1e-12)
    assert mean <= max(heights_in) * (1 + 1e-12)


@given(length_ft=LENGTH, more_ft=LENGTH)
def test_a_longer_screen_never_asks_for_fewer_stations(length_ft: float, more_ft: float) -> None:
    one = height_stations.stations_wanted_count(length_ft)
    longer = height_stations.stations_wanted_count(length_ft + more_ft)
    assert height_stations.STATIONS_ON_A_LINE <= one <= longer


@given(length_ft=LENGTH)
def test_as_many_evenly_laid_leave_no_gap(length_ft: float) -> None:
    spaces = height_stations.stations_wanted_count(length_ft)
    assert length_ft / spaces <= height_stations.WIDEST_GAP_FT / 2 * (1 + 1e-9)


@given(pull_fraction=st.floats(min_value=0.01, max_value=20))
def test_few_stations_never_raise(pull_fraction: float) -> None:
    assert height_stations.unlifted_fraction(pull_fraction) == min(1, pull_fraction)
