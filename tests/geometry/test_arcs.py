"""How far arcs of fire are from what lies there, on figures of another library and by hand."""

import math
import random
from collections.abc import Iterator

import pytest
from geographiclib.geodesic import Geodesic
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.geometry.arcs import Fire, OnGround, apart_ft, arc_outline
from generator.units import LatLon
from tests.geometry.test_crossing import MIDDLES

EARTH = Geodesic.WGS84
FT_IN_M = 1 / 0.3048
AT = (41.0, -93.0)
# Of the touching plane of a round earth, as its module says: one percent.
RIGHT_TO = 0.01
SNAPPED_FT = 0.01


def out(from_lat_lon: LatLon, bearing_deg: float, distance_ft: float) -> LatLon:
    """The point so far out on a bearing, over the ellipsoid."""
    found = EARTH.Direct(*from_lat_lon, bearing_deg, distance_ft / FT_IN_M)
    return found["lat2"], found["lon2"]


def apart_on_earth_ft(one: LatLon, other: LatLon) -> float:
    return float(EARTH.Inverse(*one, *other)["s12"]) * FT_IN_M


@pytest.mark.parametrize("middle", MIDDLES[:4], ids=str)
@pytest.mark.parametrize(
    ("bearing_deg", "distance_ft", "expected_ft"),
    [
        (90, 300, 0),  # inside
        (90, 1000, 400),  # straight out: 1000 less the reach of 600
        (270, 200, 200),  # behind: the stand itself is nearest
        (0, 500, 500 * math.sin(math.radians(45))),  # beside: the foot on the left side
        (135, 600, 0),  # the end of the right side
    ],
)
def test_a_point_is_so_far_as_by_hand(
    middle: LatLon, bearing_deg: float, distance_ft: float, expected_ft: float
) -> None:
    fire = Fire(middle, 45, 135, 600)
    found = apart_ft(fire, OnGround((out(middle, bearing_deg, distance_ft),)))
    assert found == pytest.approx(expected_ft, abs=RIGHT_TO * distance_ft)


def test_two_arcs_that_face_each_other_are_apart_by_what_their_reaches_leave() -> None:
    other = out(AT, 90, 2000)
    east, west = Fire(AT, 45, 135, 600), Fire(other, 225, 315, 900)
    assert apart_ft(east, west) == pytest.approx(500, abs=RIGHT_TO * 2000)
    assert apart_ft(west, east) == pytest.approx(500, abs=RIGHT_TO * 2000)
    assert apart_ft(east, Fire(other, 225, 315, 1450)) == 0
    # turned away from each other, the two stands are what is nearest
    assert apart_ft(east, Fire(other, 45, 135, 900)) == pytest.approx(1400, rel=RIGHT_TO)


def test_a_walk_through_an_arc_a_field_around_it_and_a_wide_strip_beside_it() -> None:
    fire = Fire(AT, 300, 60, 600)  # to the north, over the bearing 0
    through = OnGround((out(AT, 315, 500), out(AT, 45, 500)))
    assert apart_ft(fire, through) == 0
    around = OnGround(tuple(out(AT, bearing, 3000) for bearing in (45, 135, 225, 315)), True)
    assert apart_ft(fire, around) == 0
    beside = OnGround((out(AT, 170, 100), out(AT, 190, 100)))
    gap = 100 * math.cos(math.radians(10))
    assert apart_ft(fire, beside) == pytest.approx(gap, rel=RIGHT_TO)
    strip = OnGround(beside.points_lat_lon, half_width_ft=40)
    assert apart_ft(fire, strip) == pytest.approx(gap - 40, rel=RIGHT_TO)


def sampled(fire: Fire, chance: random.Random) -> Iterator[LatLon]:
    for _ in range(1500):
        turn, far = chance.random() * fire.turn_deg, chance.random() ** 0.5 * fire.reach_ft
        yield out(fire.at_lat_lon, fire.from_deg + turn, far)


@settings(max_examples=25, deadline=None)
@given(
    st.integers(0, 359),
    st.integers(5, 355),
    st.integers(60, 1500),
    st.lists(st.tuples(st.integers(0, 359), st.integers(0, 3000)), min_size=1, max_size=3),
    st.integers(0, 999),
)
def test_no_sampled_ground_of_an_arc_is_nearer_than_it_says(
    begins: int, turn: int, reach: int, ends: list[tuple[int, int]], seed: int
) -> None:
    fire, chance = Fire(AT, begins, (begins + turn) % 360, reach), random.Random(seed)
    line = tuple(out(AT, bearing, distance) for bearing, distance in ends)
    said_ft = apart_ft(fire, OnGround(line))
    nearest_ft = min(
        apart_on_earth_ft(spot, point) for spot in sampled(fire, chance) for point in line
    )
    # a line may come nearer between its points than at them, and never lies farther off
    assert said_ft <= nearest_ft + RIGHT_TO * 4500
    if len(line) == 1:
        # 1500 spots leave gaps of a few hundredths of the reach between them
        assert said_ft >= nearest_ft - RIGHT_TO * 4500 - 0.12 * reach


@given(st.integers(0, 359), st.integers(1, 360), st.integers(30, 3000))
def test_the_outline_leaves_nothing_of_the_arc_out(begins: int, turn: int, reach: int) -> None:
    outline = arc_outline(Fire(AT, begins, begins + turn, reach))
    far = [math.hypot(east, north) for east, north in outline]
    assert all(one == 0 or one >= reach for one in far)
    assert max(far) <= reach * 1.001  # five degrees of turn: 1 / cos(2.5 degrees)


@given(st.integers(0, 359), st.integers(0, 359), st.integers(0, 3000))
def test_turning_everything_changes_nothing(turned: int, bearing: int, distance: int) -> None:
    there = apart_ft(Fire(AT, 20, 100, 500), OnGround((out(AT, bearing, distance),)))
    fire = Fire(AT, (20 + turned) % 360, (100 + turned) % 360, 500)
    # a round earth is off by a share of what is laid out on it, not of what lies between
    assert apart_ft(fire, OnGround((out(AT, bearing + turned, distance),))) == pytest.approx(
        there, abs=SNAPPED_FT + RIGHT_TO * distance
    )
