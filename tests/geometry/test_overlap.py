"""How far pieces of ground lie on each other, by hand and by brute force, and what is near."""

import math
from itertools import combinations

import pytest
from geographiclib.geodesic import Geodesic
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.geometry.arcs import OnGround
from generator.geometry.overlap import lies_on, near_each_other, past_ft, runs_in, shared_width_ft
from generator.geometry.pieces import Piece, line_piece, outline_piece, reach_piece, strip_piece
from tests.geometry.test_crossing import MIDDLES, laid_out

FT_IN_SHAPE = 3 / 0.3048  # `laid_out` takes shapes in units of three meters
Shape = list[tuple[float, float]]


def rectangle(east: float, north: float, wide: float, high: float) -> Shape:
    """The corners of a rectangle in feet, its south-west corner first."""
    far_east, far_north = east + wide, north + high
    return [(east, north), (far_east, north), (far_east, far_north), (east, far_north)]


FIELD = rectangle(0, 0, 300, 300)
# What lies on the field, how wide the shared ground is, and the error up to which that counts.
FIGURES: list[tuple[Shape, float, float]] = [
    (rectangle(250, 200, 300, 300), 50, 50),  # a corner, 50 by 100
    (rectangle(0, 288, 300, 100), 12, 12),  # a long edge, 12 wide
    (rectangle(140, -100, 20, 600), 20, 1000),  # a strip across: with its whole width
    (rectangle(100, 280, 10, 100), 10, 1000),  # the end of one
    # a tip of a right angle, 60 deep: a round spot in it is 2 * 60 * (sqrt(2) - 1) wide
    ([(150, 240), (250, 340), (150, 440), (50, 340)], 49.71, 60),
    (FIELD, 300, 1000),  # the same
    (rectangle(0, 300, 300, 100), 0, 0),  # side by side
    (rectangle(400, 0, 100, 100), 0, 0),  # apart
]


@pytest.mark.parametrize(("other", "wide_ft", "counts_to_ft"), FIGURES)
def test_the_width_is_that_of_the_figure(other: Shape, wide_ft: float, counts_to_ft: float) -> None:
    one, piece = outline_piece(FIELD), outline_piece(other)
    assert shared_width_ft(one, piece) == pytest.approx(wide_ft, abs=0.02)
    assert shared_width_ft(piece, one) == pytest.approx(wide_ft, abs=0.02)
    for first, second in ((one, piece), (piece, one)):
        if counts_to_ft:
            assert lies_on(first, second, counts_to_ft * 0.99)
        assert lies_on(first, second, counts_to_ft * 1.01 + 1) == (counts_to_ft == 1000)


def to_the_edge_ft(spot: tuple[float, float], outline: Shape) -> float:
    """How deep a spot lies in a convex outline walked to the left, below 0 outside, by hand."""
    depths = []
    for (x, y), (east, north) in zip(outline, [*outline[1:], outline[0]], strict=True):
        along, up = east - x, north - y
        side = along * (spot[1] - y) - up * (spot[0] - x)
        depths.append(side / math.hypot(along, up))
    return min(depths)


def turned(shape: Shape, by_deg: float, to: tuple[float, float] = (0, 0)) -> Shape:
    """A shape turned around the middle of the plane and moved."""
    cos, sin = math.cos(math.radians(by_deg)), math.sin(math.radians(by_deg))
    return [(cos * x - sin * y + to[0], sin * x + cos * y + to[1]) for x, y in shape]


@settings(max_examples=25)
@given(
    st.floats(0, 360), st.floats(-90, 90), st.floats(-90, 90), st.floats(8, 90), st.floats(8, 90)
)
def test_the_width_is_that_of_the_deepest_of_many_spots(
    by_deg: float, east: float, north: float, wide: float, high: float
) -> None:
    one = rectangle(-50, -30, 100, 60)
    other = turned(rectangle(-wide / 2, -high / 2, wide, high), by_deg, (east, north))
    spots = [(x / 2, y / 2) for x in range(-100, 101) for y in range(-60, 61)]
    deepest_ft = max(min(to_the_edge_ft(spot, one), to_the_edge_ft(spot, other)) for spot in spots)
    # a spot of the grid lies within 0.36 ft of any other
    found_ft = shared_width_ft(outline_piece(one), outline_piece(other))
    assert 2 * max(deepest_ft, 0) <= found_ft + 0.01
    assert found_ft <= 2 * max(deepest_ft + 0.36, 0) + 0.02


@given(st.floats(0, 360), st.floats(-1000, 1000), st.floats(1, 40))
def test_moving_and_turning_both_changes_no_answer(
    by_deg: float, away: float, off_ft: float
) -> None:
    def moved(shape: Shape) -> Piece:
        return strip_piece(turned(shape, by_deg, (away, -away)), 24)

    for other in ([(0, 17), (400, 17)], [(200, -90), (210, 90)], [(390, 3), (800, 3)]):
        plain = lies_on(strip_piece([(0, 0), (400, 0)], 24), strip_piece(other, 24), off_ft)
        # at an error of just what is shared either answer is right
        if abs(off_ft - 7) > 0.05 and abs(off_ft - 10) > 0.05:
            assert lies_on(moved([(0, 0), (400, 0)]), moved(other), off_ft) == plain


def test_a_line_runs_in_ground_and_a_point_lies_in_it() -> None:
    field = outline_piece(FIELD)
    assert runs_in(line_piece([(-50, 150), (350, 150)]), field, 1000)
    assert runs_in(line_piece([(280, 150), (400, 150)]), field, 19)
    assert not runs_in(line_piece([(280, 150), (400, 150)]), field, 21)
    assert not runs_in(line_piece([(310, 0), (310, 300)]), field, 1)
    assert runs_in(line_piece([(1, 1)]), field, 16)
    assert not runs_in(line_piece([(-1, 1)]), field, 16)


def test_how_far_ground_reaches_past_other_ground() -> None:
    field = outline_piece(FIELD)
    assert past_ft(outline_piece(rectangle(250, 250, 90, 60)), field) == pytest.approx(
        math.hypot(40, 10), abs=0.01
    )
    assert past_ft(outline_piece(rectangle(10, 10, 90, 60)), field) == 0
    assert past_ft(line_piece([(150, 150), (150, 325)]), field) == 25


def test_without_things_none_are_near() -> None:
    assert list(near_each_other([])) == []


@pytest.mark.parametrize("middle", MIDDLES, ids=str)
@settings(max_examples=20)
@given(
    st.lists(st.tuples(st.floats(0, 900), st.floats(0, 900)), min_size=2, max_size=6),
    st.floats(0, 200),
)
def test_what_may_be_near_is_never_left_out(
    middle: tuple[float, float], at: Shape, within_ft: float
) -> None:
    """Strips of 120 ft by 60 ft, laid out by another library; within a distance by its points."""
    things, ends = [], []
    for east, north in at:
        line = [(east / FT_IN_SHAPE, north / FT_IN_SHAPE)]
        line.append((line[0][0] + 120 / FT_IN_SHAPE, line[0][1]))
        points = laid_out(line, middle)
        ends.append(points)
        things.append(OnGround(tuple(points), half_width_ft=30))
    near = list(near_each_other(things, within_ft))
    every = list(combinations(range(len(things)), 2))
    assert len(near) == len(set(near))
    assert set(near) <= set(every)
    for one, other in set(every) - set(near):
        apart_m = min(
            Geodesic.WGS84.Inverse(*here, *there)["s12"]
            for here in ends[one]
            for there in ends[other]
        )
        # 30 ft to the side of each line; neither end can be so near and be left out
        assert apart_m / 0.3048 >= within_ft + 60 - 0.01


def test_a_round_spot_is_as_wide_as_it_was_laid() -> None:
    spot = reach_piece(line_piece([(40, 0)]), 20)
    assert shared_width_ft(spot, strip_piece([(-400, 0), (400, 0)], 100)) == pytest.approx(
        40, abs=0.1
    )
