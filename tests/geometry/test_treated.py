"""What reaches take of ground: against closed forms, samples of points, and ten times finer turns.

The closed forms are those of Steiner for a convex piece: area + perimeter x distance + pi x
distance squared, and of the halves of a field. Units are whatever the numbers are in.
"""

import math
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point
from shapely.affinity import rotate, translate

from generator.geometry.crossing import Spot
from generator.geometry.pieces import (
    FINE_SIDES_OF_A_QUARTER,
    Piece,
    line_piece,
    outline_piece,
    reach_piece,
    strip_piece,
)
from generator.geometry.treated import (
    Axis,
    axis_of_outline,
    frame_of,
    is_nothing,
    runs_along,
    share_taken,
    stretches_taken,
)

FIELD = outline_piece([(0, 0), (100, 0), (100, 60), (0, 60)])
FINEST_SIDES = 256
# A foot is 0.3048 m, so the 66 ft that a label keeps are 20.1168 m.
KEPT_M = 66 * 0.3048
PPM = 1e-6


def left_of_field(*reaches: Piece) -> float:
    """What is left of the field of 100 by 60."""
    return 6000 * (1 - share_taken(FIELD, reaches))


def test_a_reach_around_a_convex_piece_is_what_steiner_says() -> None:
    expected = 6000 + 320 * 20 + math.pi * 400
    assert expected == pytest.approx(13_656.637, abs=0.001)
    for sides in (16, FINE_SIDES_OF_A_QUARTER, FINEST_SIDES):
        area = reach_piece(FIELD, 20, sides).area
        assert expected <= area <= expected * 1.0012


def test_a_stream_down_the_middle_leaves_two_strips() -> None:
    stream = line_piece([(-200, 30), (300, 30)])
    left = left_of_field(reach_piece(stream, KEPT_M, FINEST_SIDES))
    # the reference, whose turns lie inside of the distance, is held to 0.01; ours lie outside
    assert left == pytest.approx(1976.64, abs=0.03)
    assert left <= 100 * (60 - 2 * KEPT_M)


def test_a_round_pond_in_the_middle_leaves_the_rest() -> None:
    pond = reach_piece(line_piece([(50, 30)]), 10, FINEST_SIDES)
    left = left_of_field(reach_piece(pond, 10, FINEST_SIDES))
    assert left == pytest.approx(4743.363, abs=0.03)
    assert left <= 6000 - math.pi * 400


def test_ten_times_finer_turns_change_little_and_only_to_less() -> None:
    for around in ([(50, 70)], [(20, 20), (60, 30), (130, 10)]):
        coarse = reach_piece(line_piece(around), 33, FINE_SIDES_OF_A_QUARTER)
        fine = reach_piece(line_piece(around), 33, 10 * FINE_SIDES_OF_A_QUARTER)
        assert share_taken(FIELD, [fine]) <= share_taken(FIELD, [coarse])
        assert share_taken(FIELD, [coarse]) == pytest.approx(share_taken(FIELD, [fine]), rel=2e-4)


def test_of_points_strewn_over_a_field_as_many_are_taken() -> None:
    chance = random.Random(7)
    line, kept = [(-10.0, 80.0), (40.0, 45.0), (120.0, 66.0)], 31.0
    share = share_taken(FIELD, [reach_piece(line_piece(line), kept, FINE_SIDES_OF_A_QUARTER)])
    way, strewn = line_piece(line), 40_000
    within = sum(
        way.distance(Point(chance.uniform(0, 100), chance.uniform(0, 60))) <= kept
        for _ in range(strewn)
    )
    # four times what chance alone makes of so many points
    assert within / strewn == pytest.approx(share, abs=4 * math.sqrt(share * (1 - share) / strewn))


def test_reaches_that_share_ground_take_it_once() -> None:
    one = reach_piece(line_piece([(0, 30)]), 20)
    assert share_taken(FIELD, [one, one]) == share_taken(FIELD, [one])
    assert share_taken(FIELD, []) == 0
    assert is_nothing(1 - share_taken(FIELD, [reach_piece(FIELD, 1)]))


def test_a_cut_is_told_in_feet_from_the_first_end_and_by_its_side() -> None:
    strip, axis = strip_piece([(0, 0), (400, 0)], 30), Axis(((0, 0), (400, 0)), 30)
    assert axis.start_deg == 270
    inlet = reach_piece(line_piece([(300, 40)]), 50, FINE_SIDES_OF_A_QUARTER)
    (cut,) = stretches_taken(axis, strip, [inlet])
    # a chord 25 below the middle of a circle of 50: half as long as the root of 50^2 - 25^2
    assert (cut.first_ft, cut.last_ft) == pytest.approx((300 - 43.301, 300 + 43.301), abs=0.01)
    assert cut.widest_ft == pytest.approx(25, abs=0.01)
    assert cut.side_deg == 0
    assert not runs_along(axis, strip, [inlet])


def test_a_cut_across_the_whole_width_has_no_side() -> None:
    strip, axis = strip_piece([(0, 0), (0, 400)], 30), Axis(((0, 0), (0, 400)), 30)
    ditch = reach_piece(line_piece([(-90, 100), (90, 100)]), 66, FINE_SIDES_OF_A_QUARTER)
    (cut,) = stretches_taken(axis, strip, [ditch])
    assert (cut.first_ft, cut.last_ft) == pytest.approx((34, 166), abs=0.01)
    assert cut.side_deg is None
    assert axis.start_deg == 180


def test_feet_go_around_bends() -> None:
    bent = [(0.0, 0.0), (200.0, 0.0), (200.0, 200.0)]
    strip, axis = strip_piece(bent, 20), Axis(tuple(bent), 20)
    well = reach_piece(line_piece([(200, 100)]), 30, FINE_SIDES_OF_A_QUARTER)
    (cut,) = stretches_taken(axis, strip, [well])
    assert (cut.first_ft, cut.last_ft) == pytest.approx((270, 330), abs=0.01)


def test_a_spot_that_stands_twice_changes_no_cut() -> None:
    once, twice = [(0.0, 0.0), (200.0, 0.0), (400.0, 0.0)], [(0.0, 0.0)] * 3 + [(400.0, 0.0)] * 2
    inlet = reach_piece(line_piece([(300, 40)]), 50, FINE_SIDES_OF_A_QUARTER)
    cuts = [
        stretches_taken(Axis(tuple(line), 30), strip_piece(line, 30), [inlet])
        for line in (once, twice)
    ]
    assert cuts[0] == cuts[1]


def test_what_runs_along_is_even_and_on_one_side() -> None:
    strip, axis = strip_piece([(0, 0), (400, 0)], 30), Axis(((0, 0), (400, 0)), 30)

    def beside(line: list[Spot]) -> bool:
        return runs_along(axis, strip, [reach_piece(line_piece(line), 66)])

    assert beside([(-200, -65), (600, -65)])
    assert not beside([(-200, -65), (600, -55)])  # nearer at one end
    assert not beside([(-200, -65), (200, -65)])  # half of it alone
    assert not beside([(-200, -65), (600, -500)])


def test_an_outline_has_ends_where_it_is_long() -> None:
    long = [(0.0, 0.0), (400.0, 0.0), (400.0, 30.0), (0.0, 30.0)]
    axis = axis_of_outline(long, outline_piece(long))
    assert axis is not None
    assert (axis.length_ft, axis.width_ft, axis.start_deg) == (400, 30, 270)
    square = [(0.0, 0.0), (50.0, 0.0), (50.0, 60.0), (0.0, 60.0)]
    assert axis_of_outline(square, outline_piece(square)) is None


length = st.floats(20, 2000)
width = st.floats(6, 200)
place = st.floats(-500, 2500)
reaches = st.lists(st.tuples(place, place, st.floats(1, 400)), min_size=1, max_size=4)


def pieces_of(things: list[tuple[float, float, float]]) -> list[Piece]:
    return [
        reach_piece(line_piece([(east, north)]), kept, FINE_SIDES_OF_A_QUARTER)
        for east, north, kept in things
    ]


@settings(max_examples=60, deadline=None)
@given(length, width, reaches)
def test_no_more_is_taken_than_there_is_and_none_twice(
    length_ft: float, width_ft: float, things: list[tuple[float, float, float]]
) -> None:
    strip, pieces = strip_piece([(0, 0), (length_ft, 0)], width_ft), pieces_of(things)
    together = share_taken(strip, pieces)
    each = [share_taken(strip, [piece]) for piece in pieces]
    assert 0 <= max(each) - 1e-9 <= together <= min(1, math.fsum(each) + 1e-9) or together == 0
    axis = Axis(((0, 0), (length_ft, 0)), width_ft)
    for cut in stretches_taken(axis, strip, pieces):
        assert 0 <= cut.first_ft <= cut.last_ft <= length_ft + 0.01
        assert cut.widest_ft <= width_ft + 0.01


@settings(max_examples=60, deadline=None)
@given(length, width, reaches, st.floats(-20_000, 20_000), st.floats(0, 360))
def test_moving_and_turning_everything_changes_no_acre(
    length_ft: float,
    width_ft: float,
    things: list[tuple[float, float, float]],
    over_ft: float,
    turn_deg: float,
) -> None:
    def turned(*spots: Spot) -> list[Spot]:
        line = rotate(line_piece(list(spots)), turn_deg, origin=(0, 0))
        moved = translate(line, over_ft, -over_ft / 3)
        return [(east, north) for east, north in moved.coords]

    def left_sq_ft(line: list[Spot], around: list[tuple[float, float, float]]) -> float:
        frame = frame_of(line)
        strip = strip_piece(frame.laid(line), width_ft)
        laid = [(*frame.laid([(east, north)])[0], kept) for east, north, kept in around]
        return strip.area * (1 - share_taken(strip, pieces_of(laid)))

    line = [(0.0, 0.0), (length_ft * 0.6, 5.0), (length_ft, 0.0)]
    others = [(*turned((east, north))[0], kept) for east, north, kept in things]
    apart_sq_ft = abs(left_sq_ft(turned(*line), others) - left_sq_ft(line, things))
    assert apart_sq_ft <= length_ft * width_ft * PPM


@given(st.floats(-5000, 5000))
def test_a_frame_keeps_every_length_and_knows_the_compass(east: float) -> None:
    spots = [(east, 10.0), (east + 300, 90.0), (east - 20, -40.0)]
    frame = frame_of(spots)
    laid = frame.laid(spots)
    assert math.dist(laid[1], laid[2]) == pytest.approx(math.dist(spots[1], spots[2]))
    assert laid[0] == (0, 0)
    assert laid[1][1] == pytest.approx(0, abs=1e-9)
    # a spot to the north of the first lies there again once the turn is taken back
    (over, up), *_ = frame.laid([(east, 10.0 + 100)])
    bearing = math.degrees(math.atan2(over, up)) + frame.turn_deg
    assert bearing % 360 == pytest.approx(0, abs=1e-6) or bearing % 360 > 360 - 1e-6
