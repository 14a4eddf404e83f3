"""Strips on the plane: length times width where they lie beside themselves, less where they do not.

The figures in meters were run with two other libraries for the reference sheet of the project.
"""

import math
import random
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.geometry.pieces import may_lie_on_itself, strip_piece
from generator.geometry.plane import middle_of_plane, on_plane_ft, snapped_share
from tests.geometry.test_geodesic import strips
from tests.geometry.test_overlap import turned

Line = list[tuple[float, float]]


def length(line: Line) -> float:
    return math.fsum(math.dist(*pair) for pair in pairwise(line))


@pytest.mark.parametrize(
    ("line", "width", "area", "lies_on_itself"),
    [
        ([(0, 0), (100, 0), (100, 100)], 9.144, 1828.80, False),  # mitred, exactly length x width
        ([(0, 0), (100, 0), (30, 5)], 9.144, 1280, True),  # length x width is 1556
        ([(0, 0), (400, 0)], 30, 12000, False),
        ([(0, 0), (400, 0), (400, 30), (0, 30)], 30, 24900, False),
        ([(0, 0), (400, 0), (400, 10), (0, 10)], 30, 16600, True),
    ],
)
def test_strips_hold_what_was_worked_out(
    line: Line, width: float, area: float, lies_on_itself: bool
) -> None:
    held = strip_piece(line, width).area
    assert held == pytest.approx(area, rel=1e-3)
    # more than one part in a hundred is missing where it lies on itself
    assert (held < 0.99 * length(line) * width) == lies_on_itself
    if lies_on_itself:
        assert may_lie_on_itself(line, width)


@st.composite
def bends(draw: st.DrawFn) -> tuple[Line, float]:
    """A line of legs with any turns, and a width."""
    line, bearing = [(0.0, 0.0)], 0.0
    for leg in draw(st.lists(st.floats(5, 400), min_size=1, max_size=6)):
        bearing += draw(st.floats(-150, 150))
        east, north = line[-1]
        angle = math.radians(bearing)
        line.append((east + leg * math.sin(angle), north + leg * math.cos(angle)))
    return line, draw(st.floats(5, 60))


@given(bends())
def test_where_it_is_said_to_lie_beside_itself_it_holds_length_times_width(
    strip: tuple[Line, float],
) -> None:
    line, width = strip
    held, by_length = strip_piece(line, width).area, length(line) * width
    assert held > 0
    if not may_lie_on_itself(line, width):
        # what is finer than a twentieth of the width may be left out of a line
        assert held == pytest.approx(by_length, rel=0.006)


@given(bends(), st.floats(0, 360), st.floats(-3000, 3000))
def test_moving_and_turning_changes_no_area_past_a_part_in_a_million(
    strip: tuple[Line, float], by_deg: float, away: float
) -> None:
    line, width = strip
    if not may_lie_on_itself(line, width):
        moved = strip_piece(turned(line, by_deg, (away, away)), width).area
        assert moved == pytest.approx(strip_piece(line, width).area, rel=1e-6)


@given(strips(), st.floats(6, 30))
def test_a_strip_of_points_on_the_earth_holds_length_times_width_on_the_plane(
    strip: tuple[list[tuple[float, float]], float], width_ft: float
) -> None:
    (start, end, *_), _ = strip
    spots = on_plane_ft([start, end], middle_of_plane(start))
    held = strip_piece(spots, width_ft).area
    assert held == pytest.approx(length(spots) * width_ft, rel=1e-6)


def test_points_that_wander_less_than_a_part_of_the_width_change_nothing() -> None:
    chance = random.Random(4)
    wander = [(3.0 * n, chance.uniform(-0.3, 0.3)) for n in range(200)]
    held = strip_piece(wander, 24).area
    assert held == pytest.approx(24 * 597, rel=0.002)
    # and the length of the wandering line is not that of the strip
    assert snapped_share(1 - held / (24 * length(wander))) > 0


def brute_area(line: Line, width: float, spots: int) -> float:
    """The share of random spots in a box that lie beside a stretch, within half the width."""
    chance = random.Random(7)
    hits = 0
    for _ in range(spots):
        x, y = chance.uniform(-20, 420), chance.uniform(-20, 50)
        hits += any(
            min(a, east) <= x <= max(a, east) and abs(y - b) <= width / 2
            for (a, b), (east, _) in pairwise(line)
        )
    return hits / spots * 440 * 70


def test_two_stretches_on_each_other_hold_what_random_spots_say() -> None:
    there, back = [(0.0, 0.0), (400.0, 0.0)], [(400.0, 10.0), (0.0, 10.0)]
    held = strip_piece([*there, *back], 30).area - 15 * 40  # past the turn
    expected = brute_area([*there, *back], 30, 40_000)
    assert held == pytest.approx(expected, rel=0.02)
