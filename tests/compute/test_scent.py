"""Where scent goes: bearings turned together change nothing, and sides are alike."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.compute.scent import blows_to, half_angle_deg, off_downwind_deg, sector_count

BEARINGS = st.integers(min_value=0, max_value=3599).map(lambda tenths: tenths / 10)
POINTS = ("N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE",
          "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW")  # fmt: skip
# Wind summary help of the National Climatic Data Center: first and last whole degree of each of
# the sixteen directions, as far as it was read.
LIMITS = {"N": (349, 11), "NNE": (12, 33), "NE": (34, 56), "ENE": (57, 78), "E": (79, 101)}


@given(wind=BEARINGS, toward=BEARINGS, turn=BEARINGS)
def test_turning_both_bearings_turns_nothing_off_the_line(
    wind: float, toward: float, turn: float
) -> None:
    turned = off_downwind_deg((wind + turn) % 360, (toward + turn) % 360)
    assert turned == pytest.approx(off_downwind_deg(wind, toward), abs=1e-9)


@given(wind=BEARINGS, toward=BEARINGS)
def test_a_thing_is_as_far_off_the_line_as_the_wind_it_would_take_to_blow_there(
    wind: float, toward: float
) -> None:
    off = off_downwind_deg(wind, toward)
    assert 0 <= off <= 180
    # the other way around the circle, by hand: the wind that blows straight there comes from
    # opposite, and so far from this one
    carries = (toward + 180) % 360
    apart = abs(wind - carries)
    assert off == pytest.approx(min(apart, 360 - apart), abs=1e-9)


@given(wind=BEARINGS, toward=BEARINGS)
def test_what_lies_straight_downwind_and_upwind_are_the_ends(wind: float, toward: float) -> None:
    assert off_downwind_deg(wind, (wind + 180) % 360) == pytest.approx(0, abs=1e-9)
    assert off_downwind_deg(wind, wind) == pytest.approx(180, abs=1e-9)
    across = off_downwind_deg((wind + 180) % 360, toward)
    assert off_downwind_deg(wind, toward) + across == pytest.approx(180, abs=1e-9)


def test_north_is_one_bearing_whether_0_or_360() -> None:
    for toward in range(0, 361, 5):
        assert off_downwind_deg(0, toward) == off_downwind_deg(360, toward)
        assert off_downwind_deg(toward, 0) == off_downwind_deg(toward, 360)


@given(
    off=st.floats(0, 180),
    within=st.floats(0, 90),
    more=st.floats(0, 90),
    distance=st.none() | st.floats(1, 600),
)
def test_a_wider_plume_never_reaches_less(
    off: float, within: float, more: float, distance: float | None
) -> None:
    order = {False: 0, None: 1, True: 2}
    narrow = blows_to(off, within, 22.5, distance, 300)
    wide = blows_to(off, within + more, 22.5, distance, 300)
    assert order[wide] >= order[narrow]


@pytest.mark.parametrize(
    ("off", "distance", "reached"),
    [
        (67.5, 300, True),
        (67.6, 300, None),
        (90, 300, None),
        (90.1, 300, False),
        (0, 300.1, None),
        (0, None, None),
        (90.1, None, False),
    ],
)
def test_the_borders_belong_to_the_worse_answer(
    off: float, distance: float | None, reached: bool | None
) -> None:
    assert blows_to(off, 67.5, 22.5, distance, 300) is reached


@pytest.mark.parametrize("point", LIMITS)
def test_sectors_are_those_of_the_table(point: str) -> None:
    first, last = LIMITS[point]
    number = POINTS.index(point)
    assert sector_count(first, 16) == sector_count(last, 16) == number
    assert sector_count(first - 1, 16) != number
    assert sector_count(last + 1, 16) != number


@given(bearing=BEARINGS, sectors=st.sampled_from((8, 16)))
def test_a_sector_later_is_a_sector_on(bearing: float, sectors: int) -> None:
    on = sector_count(bearing + 360 / sectors, sectors)
    # tenths of a degree meet borders exactly, and a turn by a whole sector keeps them
    assert on == (sector_count(bearing, sectors) + 1) % sectors


@pytest.mark.parametrize(
    ("plume", "wander", "printed"),
    [(10, 0, 22), (10, 10, 34), (10, 25, 45), (20, 0, 34), (20, 10, 45), (20, 25, 56)],
)
def test_half_angles_are_sectors_of_half_a_sixteenth(
    plume: float, wander: float, printed: float
) -> None:
    """Worked by hand: 11.25 and the two, to the nearest 11.25: 22, 34, 45 or 56 degrees."""
    assert half_angle_deg(11.25, plume, wander) == pytest.approx(printed, abs=0.5)
