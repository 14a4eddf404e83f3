"""Boxes: what is said to lie apart lies apart, by geodesics of another library."""

from hypothesis import given
from hypothesis import strategies as st
from pyproj import Geod

from generator.geometry.boxes import are_surely_apart, box_of
from generator.units import convert

GEOD = Geod(ellps="WGS84")
LATITUDES = st.floats(-85, 85)
NEAR = st.floats(-0.3, 0.3)


@given(LATITUDES, st.floats(-180, 180), NEAR, NEAR)
def test_points_that_are_surely_apart_are(
    lat: float, lon: float, north: float, east: float
) -> None:
    other = (lat + north, (lon + east + 180) % 360 - 180)
    _, _, meters = GEOD.inv(lon, lat, other[1], other[0])
    # to a hundredth of a foot, as far as such numbers are long
    apart_ft = convert(meters, "m", "ft") + 0.01
    assert not are_surely_apart(box_of([(lat, lon)]), box_of([other]), apart_ft)


@given(LATITUDES, st.floats(-179, 179), NEAR, NEAR)
def test_what_lies_well_apart_is_found_out(
    lat: float, lon: float, north: float, east: float
) -> None:
    """Straight north or east, a hundredth less than the distance is enough to tell."""
    for other in ((lat + north, lon), (lat, lon + east)):
        _, _, meters = GEOD.inv(lon, lat, other[1], other[0])
        less_ft = convert(meters, "m", "ft") * 0.98
        if less_ft > 1:
            assert are_surely_apart(box_of([(lat, lon)]), box_of([other]), less_ft)


def test_boxes_that_share_ground_are_never_apart() -> None:
    one = box_of([(41, -93), (41.1, -92.9)])
    assert not are_surely_apart(one, box_of([(41.05, -92.95)]), 0)
    assert not are_surely_apart(one, box_of([(41.05, -93.1), (41.2, -92.95)]), 0)


def test_across_the_180th_meridian() -> None:
    west, east = box_of([(-17, 179.9999)]), box_of([(-17, -179.9999)])
    assert not are_surely_apart(west, east, 300)
    assert are_surely_apart(west, east, 50)
