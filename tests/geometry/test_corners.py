"""Points that are typed again count once."""

import pytest

from generator.geometry.corners import corner_numbers, line_numbers
from generator.units import LatLon

A, B, C = (41.0, -93.0), (41.0, -92.99), (41.01, -93.0)


@pytest.mark.parametrize(
    ("points", "line", "corners"),
    [
        ([A], (0,), (0,)),
        ([A, A], (0,), (0,)),
        ([A, B, A], (0, 1, 2), (0, 1)),
        ([A, B, C], (0, 1, 2), (0, 1, 2)),
        ([A, B, C, A], (0, 1, 2, 3), (0, 1, 2)),
        ([A, A, B, B, C, A, A], (0, 2, 4, 5), (0, 2, 4)),
    ],
)
def test_repeats_and_the_closing_point_are_left_out(
    points: list[LatLon], line: tuple[int, ...], corners: tuple[int, ...]
) -> None:
    assert line_numbers(points) == line
    assert corner_numbers(points) == corners
