"""How deep one outline lies in another, on figures laid out by another library, by hand."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.geometry.overlap import near_each_other, shared_depth_ft
from tests.geometry.test_crossing import MIDDLES, laid_out

FT_IN_SHAPE = 3 / 0.3048  # `laid_out` takes shapes in units of three meters
Shape = list[tuple[float, float]]


def rectangle(east: float, north: float, wide: float, high: float) -> Shape:
    """A rectangle in feet, its south-west corner first, as a shape to be laid out."""
    far_east, far_north = east + wide, north + high
    return in_feet((east, north), (far_east, north), (far_east, far_north), (east, far_north))


def in_feet(*corners: tuple[float, float]) -> Shape:
    """Corners in feet as a shape to be laid out."""
    return [(x / FT_IN_SHAPE, y / FT_IN_SHAPE) for x, y in corners]


def shared(one: Shape, other: Shape, middle: tuple[float, float] = (41.0, -93.0)) -> float:
    return shared_depth_ft(laid_out(one, middle), laid_out(other, middle))


@pytest.mark.parametrize("middle", MIDDLES[:4], ids=str)
@pytest.mark.parametrize(
    ("other", "deep_ft"),
    [
        (rectangle(250, 200, 300, 300), 50),  # a corner, 50 by 100
        (rectangle(0, 288, 300, 100), 12),  # a long edge, 12 wide
        # a cross without a corner in the other: a side of it lies 140 deep
        (rectangle(140, -100, 20, 600), 140),
        (rectangle(0, 0, 300, 300), 300),  # the same
        (rectangle(0, 300, 300, 100), 0),  # side by side
        (rectangle(400, 0, 100, 100), 0),  # apart
    ],
)
def test_the_depth_is_that_of_the_figure(
    middle: tuple[float, float], other: Shape, deep_ft: float
) -> None:
    one = rectangle(0, 0, 300, 300)
    assert shared(one, other, middle) == pytest.approx(deep_ft, rel=0.01, abs=0.01)
    assert shared(other, one, middle) == pytest.approx(deep_ft, rel=0.01, abs=0.01)


@given(st.floats(2, 140), st.floats(2, 140))
def test_a_shared_corner_is_as_wide_as_its_shorter_side(east: float, north: float) -> None:
    one, other = rectangle(0, 0, 300, 300), rectangle(300 - east, 300 - north, 300, 300)
    assert shared(one, other) == pytest.approx(min(east, north), rel=0.01)


def test_a_strip_across_the_corner_of_a_field_is_found() -> None:
    slanted = in_feet((-50, 60), (60, -50), (70, -40), (-40, 70))
    assert shared(rectangle(0, 0, 300, 300), slanted) > 5


def test_without_outlines_none_are_near() -> None:
    assert list(near_each_other([])) == []


@pytest.mark.parametrize("middle", MIDDLES, ids=str)
@given(st.lists(st.tuples(st.floats(0, 900), st.floats(0, 900)), min_size=2, max_size=6))
def test_outlines_that_share_ground_are_near_each_other(
    middle: tuple[float, float], corners: Shape
) -> None:
    outlines = [laid_out(rectangle(east, north, 120, 60), middle) for east, north in corners]
    near = list(near_each_other(outlines))
    every = list(combinations(range(len(outlines)), 2))
    assert len(near) == len(set(near))
    assert set(near) <= set(every)
    for one, other in set(every) - set(near):
        assert shared_depth_ft(outlines[one], outlines[other]) == 0
    # two radii of 134 ft at the most: what lies farther apart is never looked at
    for one, other in near:
        (east, north), (far_east, far_north) = corners[one], corners[other]
        assert (far_east - east) ** 2 + (far_north - north) ** 2 < 270**2
