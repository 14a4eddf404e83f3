"""A recorded line with fewer points, none of those left out farther off than is stated."""

from __future__ import annotations

from collections.abc import Sequence

from generator.geometry.arcs import from_side_ft
from generator.geometry.crossing import Spot, on_the_plane
from generator.geometry.rough import RADIUS_FT
from generator.units import LatLon


def thinned(line_lat_lon: Sequence[LatLon], off_ft: float) -> list[LatLon]:
    """Return a line without points that lie within a distance of what is left of it.

    The method of Douglas and Peucker: the point farthest from the straight way stays while it is
    farther off than stated, and so on in both halves. Both ends stay.

    >>> thinned([(41.0, -93.0), (41.000001, -93.0005), (41.0, -93.001)], 3)
    [(41.0, -93.0), (41.0, -93.001)]
    """
    spots = [
        (east * RADIUS_FT, north * RADIUS_FT)
        for east, north in on_the_plane(line_lat_lon, line_lat_lon[0])
    ]
    kept = {0, len(spots) - 1}
    waiting = [(0, len(spots) - 1)]
    while waiting:
        first, last = waiting.pop()
        number, away_ft = _farthest(spots, first, last)
        if away_ft > off_ft:
            kept.add(number)
            waiting += [(first, number), (number, last)]
    return [line_lat_lon[number] for number in sorted(kept)]


def _farthest(spots: Sequence[Spot], first: int, last: int) -> tuple[int, float]:
    """Return the spot farthest from the straight way between two, and how far that is."""
    away = [
        (from_side_ft(spots[number], spots[first], spots[last]), -number)
        for number in range(first + 1, last)
    ]
    away_ft, number = max(away, default=(-1.0, 0))
    return -number, away_ft
