"""Outlines that meet themselves are found wherever they lie, and sound ones are let pass."""

from fractions import Fraction
from itertools import combinations

import pytest
from geographiclib.geodesic import Geodesic
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.geometry.crossing import first_crossing
from generator.units import LatLon

MIDDLES = [(41.0, -93.0), (78.2, 15.6), (-16.8, 179.9999), (0.0, -77.0), (90.0, 0.0)]
# Shapes in tens of feet east and north, with the two sides that meet first, or None.
SQUARE = [(0, 0), (9, 0), (9, 9), (0, 9)]
EIGHT = [(0, 0), (9, 0), (0, 9), (9, 9)]
NOTCH = [(0, 0), (3, 0), (3, 3), (6, 3), (6, 0), (9, 0), (9, 9), (0, 9)]
CORNER_ON_A_SIDE = [(0, 0), (9, 0), (9, 9), (5, 0), (0, 9)]
CORNER_TWICE = [(0, 0), (5, 5), (9, 0), (9, 9), (5, 5), (0, 9)]
THERE_AND_BACK = [(0, 0), (9, 0), (4, 0), (4, 9)]
COMB = [(0, 0), (9, 0), (9, 9), (7, 9), (7, 2), (5, 2), (5, 9), (3, 9), (3, 2), (0, 2)]
STAR = [(0, 7), (9, 7), (2, 0), (5, 9), (8, 0)]


def laid_out(shape: list[tuple[float, float]], middle: LatLon) -> list[LatLon]:
    """A shape on the ground at a middle."""
    around = Geodesic.WGS84
    points = []
    for east, north in shape:
        from_east = around.Direct(*middle, 90, 3 * east)
        point = around.Direct(
            from_east["lat2"], from_east["lon2"], from_east["azi2"] - 90, 3 * north
        )
        points.append((point["lat2"], point["lon2"]))
    return points


@pytest.mark.parametrize("middle", MIDDLES, ids=str)
@pytest.mark.parametrize(
    ("shape", "sides"),
    [(SQUARE, None), (NOTCH, None), (COMB, None), (EIGHT, (1, 3)), (STAR, (0, 2))],
)
def test_crossings_are_found_wherever_a_place_lies(
    shape: list[tuple[float, float]], sides: tuple[int, int] | None, middle: LatLon
) -> None:
    assert first_crossing(laid_out(shape, middle)) == sides


@pytest.mark.parametrize(
    ("shape", "sides"),
    [
        (SQUARE, None),
        (NOTCH, None),
        (COMB, None),
        (CORNER_ON_A_SIDE, (0, 2)),
        (CORNER_TWICE, (0, 3)),
        (THERE_AND_BACK, (0, 1)),
    ],
)
def test_sides_that_touch_are_found_on_the_equator_where_lines_are_straight(
    shape: list[tuple[float, float]], sides: tuple[int, int] | None
) -> None:
    """On the equator equal latitudes lie exactly in one line, so touching is exact."""
    assert first_crossing([(north / 1024, east / 1024) for east, north in shape]) == sides


@pytest.mark.parametrize("shape", [SQUARE, NOTCH, COMB, EIGHT, STAR, CORNER_TWICE])
def test_where_an_outline_begins_and_which_way_round_it_goes_does_not_matter(
    shape: list[tuple[float, float]],
) -> None:
    points = laid_out(shape, (41.0, -93.0))
    crosses = first_crossing(points) is not None
    for start in range(len(points)):
        turned = points[start:] + points[:start]
        assert (first_crossing(turned) is not None) == crosses
        assert (first_crossing(turned[::-1]) is not None) == crosses


GRID = st.integers(min_value=0, max_value=200)
Corner = tuple[int, int]


def meet_at(a: Corner, b: Corner, c: Corner, d: Corner) -> bool:
    """Whether a to b and c to d share a spot, solved for the spot in exact fractions."""
    ab, cd, ac = (b[0] - a[0], b[1] - a[1]), (d[0] - c[0], d[1] - c[1]), (c[0] - a[0], c[1] - a[1])
    across = ab[0] * cd[1] - ab[1] * cd[0]
    if across == 0:
        return False
    along_ab = Fraction(ac[0] * cd[1] - ac[1] * cd[0], across)
    along_cd = Fraction(ac[0] * ab[1] - ac[1] * ab[0], across)
    return 0 <= along_ab <= 1 and 0 <= along_cd <= 1


def meeting_sides(shape: list[Corner]) -> list[tuple[int, int]]:
    """Every two sides that share a spot and no corner."""
    sides = list(enumerate(zip(shape, [*shape[1:], shape[0]], strict=True)))
    return [
        (first, second)
        for (first, one), (second, other) in combinations(sides, 2)
        if not set(one) & set(other) and meet_at(*one, *other)
    ]


def in_a_line(one: Corner, two: Corner, three: Corner) -> bool:
    left = (two[0] - one[0]) * (three[1] - one[1])
    return left == (two[1] - one[1]) * (three[0] - one[0])


@given(shape=st.lists(st.tuples(GRID, GRID), min_size=3, max_size=9, unique=True))
def test_the_first_crossing_is_the_one_that_exact_fractions_give(shape: list[Corner]) -> None:
    """At the equator, where a few miles of latitude and longitude are a plane to a hair.

    With no three corners in a line, sides cross or stay well clear of each other.
    """
    assume(not any(in_a_line(*three) for three in combinations(shape, 3)))
    points = [(north / 4096, east / 4096) for east, north in shape]
    assert first_crossing(points) == min(meeting_sides(shape), default=None)
