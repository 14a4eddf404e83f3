"""Lengths and areas from points, held to an independent implementation and to printed cases."""

import math
from collections.abc import Sequence
from itertools import pairwise

import pytest
from geographiclib.geodesic import Geodesic
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.geometry.geodesic import (
    MI_IN_A_DEGREE,
    are_surely_within_mi,
    distances_mi,
    line_length_ft,
    outline_area_ac,
    outline_perimeter_ft,
)
from generator.units import LatLon, convert

WGS84 = Geodesic.WGS84
PART_PER_MILLION = 1e-6
ROUNDING_AC = 1e-9  # 0.00004 sq ft: what rounding leaves of a few square feet

# Where a property may lie: the demonstration's corner, far north, the 180th meridian, the equator.
MIDDLES = st.sampled_from([(41.0, -93.0), (78.2, 15.6), (-16.8, 179.9999), (0.0, -77.0)])
METRES = st.floats(min_value=10, max_value=2000)


def moved(point: LatLon, bearing: float, metres: float) -> LatLon:
    """The point so far from another, by the independent implementation."""
    there = WGS84.Direct(*point, bearing, metres)
    return there["lat2"], there["lon2"]


@st.composite
def strips(draw: st.DrawFn) -> tuple[list[LatLon], float]:
    """A line of a few legs with moderate bends, and its length in feet as laid out."""
    point = draw(MIDDLES)
    bearing = draw(st.floats(min_value=0, max_value=360))
    legs = draw(st.lists(METRES, min_size=1, max_size=8))
    line = [point]
    for metres in legs:
        bearing += draw(st.floats(min_value=-60, max_value=60))
        line.append(moved(line[-1], bearing, metres))
    return line, convert(math.fsum(legs), "m", "ft")


@st.composite
def outlines(draw: st.DrawFn) -> list[LatLon]:
    """An outline around a middle that does not meet itself: one corner for each bearing."""
    middle = draw(MIDDLES)
    count = draw(st.integers(min_value=3, max_value=12))
    return [moved(middle, 360 * n / count, draw(METRES)) for n in range(count)]


def independent(points: Sequence[LatLon]) -> tuple[float, float]:
    """Area in acres and way around in feet, by the independent implementation."""
    polygon = WGS84.Polygon()
    for point in points:
        polygon.AddPoint(*point)
    _, perimeter, area = polygon.Compute()
    return convert(abs(area), "sq_m", "ac"), convert(perimeter, "m", "ft")


@given(strip=strips())
def test_a_line_has_the_length_it_was_laid_out_with(strip: tuple[list[LatLon], float]) -> None:
    line, laid_out_ft = strip
    measured = math.fsum(WGS84.Inverse(*one, *other)["s12"] for one, other in pairwise(line))
    length_ft = line_length_ft(line)
    assert length_ft == pytest.approx(laid_out_ft, rel=PART_PER_MILLION)
    assert length_ft == pytest.approx(convert(measured, "m", "ft"), rel=PART_PER_MILLION)


@given(outline=outlines())
def test_an_outline_has_the_area_and_the_way_around_of_another_implementation(
    outline: list[LatLon],
) -> None:
    area_ac, perimeter_ft = independent(outline)
    assert outline_area_ac(outline) == pytest.approx(area_ac, rel=PART_PER_MILLION, abs=ROUNDING_AC)
    assert outline_perimeter_ft(outline) == pytest.approx(perimeter_ft, rel=PART_PER_MILLION)


@given(strip=strips(), half_width=st.floats(min_value=3, max_value=10))
def test_a_straight_strip_holds_its_length_times_its_width(
    strip: tuple[list[LatLon], float], half_width: float
) -> None:
    """On a few thousand feet the ground is as flat as a sheet to a part in a million."""
    (start, end, *_), _ = strip
    leg = WGS84.Inverse(*start, *end)
    sides = [
        moved(point, leg[azimuth] + turn, half_width)
        for point, azimuth, turn in (
            (start, "azi1", -90), (end, "azi2", -90), (end, "azi2", 90), (start, "azi1", 90),
        )
    ]  # fmt: skip
    by_tape_ac = convert(leg["s12"] * 2 * half_width, "sq_m", "ac")
    assert outline_area_ac(sides) == pytest.approx(by_tape_ac, rel=PART_PER_MILLION)


@given(outline=outlines(), start=st.integers(min_value=0, max_value=11))
def test_where_an_outline_begins_and_which_way_round_it_goes_does_not_matter(
    outline: list[LatLon], start: int
) -> None:
    turned = outline[start % len(outline) :] + outline[: start % len(outline)]
    for other in (turned, turned[::-1]):
        assert outline_area_ac(other) == pytest.approx(
            outline_area_ac(outline), rel=PART_PER_MILLION / 1000, abs=ROUNDING_AC
        )
        assert outline_perimeter_ft(other) == pytest.approx(
            outline_perimeter_ft(outline), rel=PART_PER_MILLION / 1000
        )


@settings(max_examples=30)
@given(middle=MIDDLES, corners=st.integers(min_value=3, max_value=9), metres=METRES, turn=METRES)
def test_turning_a_place_around_changes_nothing(
    middle: LatLon, corners: int, metres: float, turn: float
) -> None:
    """Ground that is turned about its middle keeps its area to a part in a million."""
    around = [
        [moved(middle, 360 * n / corners + by, metres) for n in range(corners)] for by in (0, turn)
    ]
    first, second = map(outline_area_ac, around)
    assert first == pytest.approx(second, rel=PART_PER_MILLION)


@given(strip=strips())
def test_distances_are_those_of_another_implementation(strip: tuple[list[LatLon], float]) -> None:
    line, _ = strip
    expected = [convert(WGS84.Inverse(*line[0], *one)["s12"], "m", "mi") for one in line]
    assert distances_mi(line[0], line) == pytest.approx(expected, rel=PART_PER_MILLION, abs=1e-9)


@given(
    here=st.tuples(st.floats(-90, 90), st.floats(-180, 180)),
    there=st.tuples(st.floats(-90, 90), st.floats(-180, 180)),
    part=st.floats(0.9, 1.1),
)
def test_what_is_surely_near_is_no_farther(here: LatLon, there: LatLon, part: float) -> None:
    """Held against another implementation, anywhere on earth."""
    apart_mi = convert(WGS84.Inverse(*here, *there)["s12"], "m", "mi")
    assert are_surely_within_mi(here, [there], 3 * 180 * MI_IN_A_DEGREE)
    assert not are_surely_within_mi(here, [there], apart_mi * 0.999 - 1e-6)
    if are_surely_within_mi(here, [there], apart_mi * part):
        assert part >= 1 - PART_PER_MILLION or apart_mi == 0


# Documentation of geographiclib for Rust, struct PolygonArea, its example:
# docs.rs/geographiclib-rs, a square of one degree on the equator, in meters and square meters.
def test_the_square_degree_that_the_library_s_documentation_prints() -> None:
    square = [(0.0, 0.0), (0.0, 1.0), (1.0, 1.0), (1.0, 0.0)]
    assert convert(outline_perimeter_ft(square), "ft", "m") == pytest.approx(
        443770.917248302, rel=1e-12
    )
    printed_sq_m = 12308778361.469452
    assert convert(outline_area_ac(square), "ac", "sq_m") == pytest.approx(printed_sq_m, rel=1e-12)


# Documentation of GeographicLib, class PolygonArea and its ports: "approximate area of Antarctica".
ANTARCTICA = [
    (-63.1, -58), (-72.9, -74), (-71.9, -102), (-74.9, -102), (-74.3, -131), (-77.5, -163),
    (-77.4, 163), (-71.7, 172), (-65.9, 140), (-65.7, 113), (-66.6, 88), (-66.9, 59),
    (-69.8, 25), (-70.0, -4), (-71.0, -14), (-77.3, -33), (-77.9, -46), (-74.7, -61),
]  # fmt: skip


@pytest.mark.parametrize(
    ("outline", "printed_sq_m", "printed_m"),
    [
        (ANTARCTICA, 13662703680020.1, 16831067.893),
        # an eighth of the ellipsoid, of the same documentation
        ([(0, 0), (0, 90), (90, 0)], 63758202715511.055, 30022685.630),
    ],
)
def test_polygons_that_the_library_s_documentation_prints(
    outline: list[LatLon], printed_sq_m: float, printed_m: float
) -> None:
    assert convert(outline_area_ac(outline), "ac", "sq_m") == pytest.approx(printed_sq_m, rel=1e-12)
    around_m = convert(outline_perimeter_ft(outline), "ft", "m")
    assert around_m == pytest.approx(printed_m, abs=0.0006)


# By definition: an acre is 43,560 square feet, laid out here at 41 N 93 W.
@pytest.mark.parametrize(
    ("length_ft", "width_ft", "around_ft"), [(208.71, 208.71, 834.84), (726, 60, 1572)]
)
def test_an_acre_laid_out_on_the_ground(
    length_ft: float, width_ft: float, around_ft: float
) -> None:
    start = (41.0, -93.0)
    along, across = convert(length_ft, "ft", "m"), convert(width_ft, "ft", "m")
    end = moved(start, 0, along)
    acre = [start, end, moved(end, 90, across), moved(start, 90, across)]
    assert outline_area_ac(acre) == pytest.approx(1, rel=2e-5)
    assert outline_perimeter_ft(acre) == pytest.approx(around_ft, abs=0.005)


@pytest.mark.parametrize("lat", [41.0, 78.0, -16.0])
def test_the_180th_meridian_is_a_line_like_any_other(lat: float) -> None:
    here = [(lat, -93.001), (lat, -92.999), (lat + 0.001, -92.999), (lat + 0.001, -93.001)]
    there = [(lat, 179.999), (lat, -179.999), (lat + 0.001, -179.999), (lat + 0.001, 179.999)]
    assert outline_area_ac(there) == pytest.approx(outline_area_ac(here), rel=PART_PER_MILLION)
    assert line_length_ft(there) == pytest.approx(line_length_ft(here), rel=PART_PER_MILLION)
