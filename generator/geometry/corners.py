"""Points as they were typed, without those that are given again."""

from collections.abc import Sequence

from generator.units import LatLon


def line_numbers(line_lat_lon: Sequence[LatLon]) -> tuple[int, ...]:
    """Return the numbers, from 0, of the points that are not the one before them again.

    >>> line_numbers([(41, -93), (41, -93), (41, -92.9)])
    (0, 2)
    """
    return tuple(
        number
        for number, point in enumerate(line_lat_lon)
        if number == 0 or point != line_lat_lon[number - 1]
    )


def corner_numbers(outline_lat_lon: Sequence[LatLon]) -> tuple[int, ...]:
    """Return the numbers of an outline's corners: a last point that closes it is left out.

    >>> corner_numbers([(41, -93), (41, -92.9), (41.1, -93), (41, -93)])
    (0, 1, 2)
    """
    numbers = line_numbers(outline_lat_lon)
    closed = len(numbers) > 1 and outline_lat_lon[numbers[-1]] == outline_lat_lon[0]
    return numbers[:-1] if closed else numbers
