"""What a drawing of some ground shows, in words for whoever does not see it."""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from generator.book.charts.ground_frame import PlaneSpot
from generator.book.text import clean, inert
from generator.inventory.plain_values import point_of_compass
from generator.plan.land.drawn import GroundShape

_AROUND, _AT = "Around it", "At it"
_MOST_SIDES = 60
_LONGEST_NAME = 40
# Nearer to the middle than this share of the way from corner to corner it lies at the subject.
_AT_FRACTION = 0.15


def short_name(name: str) -> str:
    """Return a name, or the beginning of one that is too long to be told.

    >>> short_name("Well by the windmill that fell over in the storm of 1998")
    'Well by the windmill that fell over in…'
    """
    seen = clean(name)
    return seen if len(seen) <= _LONGEST_NAME else f"{seen[: _LONGEST_NAME - 1].rstrip()}…"


def told_in(told: str, most_bytes: int) -> str:
    """Return what is told, or as many of its words as take no more bytes on a page.

    >>> told_in("North is up. On it: Old well.", 24)
    'North is up.…'
    """
    words = told
    while len(inert(words).encode()) > most_bytes:
        words = f"{words.removesuffix('…').rpartition(' ')[0]}…"
    return words


def ground_told(
    subject: GroundShape, others: Sequence[GroundShape], beyond: Sequence[tuple[str, PlaneSpot]]
) -> str:
    """Return which way from the middle of a subject each other shape lies, and what lies beyond."""
    at = middle_of(subject)
    near_ft = _AT_FRACTION * math.dist(*subject.corners)
    by_way: dict[str, list[str]] = {}
    for other in others:
        by_way.setdefault(_way(at, other, near_ft), []).append(short_name(other.name))
    told = [f"{way}: {', '.join(names)}." for way, names in by_way.items()]
    off = [f"{words} lies to the {way_to(at, spot)}, off the sheet." for words, spot in beyond]
    return " ".join([f"North is up. {short_name(subject.name)}{_runs(subject)}.", *told, *off])


def middle_of(shape: GroundShape) -> PlaneSpot:
    """Return the middle of a shape: half way along a line, of ground that of its box."""
    if len(shape.spots_ft) == 1 or shape.is_outline:
        (west, south), (east, north) = shape.corners
        return (west + east) / 2, (south + north) / 2
    sides = list(pairwise(shape.spots_ft))
    left_ft = sum(math.dist(*side) for side in sides) / 2
    for begins, ends in sides:
        side_ft = math.dist(begins, ends)
        if side_ft >= left_ft:
            part = left_ft / side_ft if side_ft else 0.0
            return (
                begins[0] + part * (ends[0] - begins[0]),
                begins[1] + part * (ends[1] - begins[1]),
            )
        left_ft -= side_ft
    return shape.spots_ft[-1]


def way_to(at: PlaneSpot, to: PlaneSpot) -> str:
    """Return the point of the compass in which a spot lies from another.

    >>> way_to((0, 0), (10, 10))
    'northeast'
    """
    return point_of_compass(math.degrees(math.atan2(to[0] - at[0], to[1] - at[1])))


def _runs(subject: GroundShape) -> str:
    """Return between which points of the compass a line runs, nothing for anything else."""
    if len(subject.spots_ft) == 1 or subject.is_outline:
        return " is in the middle"
    first, last = subject.spots_ft[0], subject.spots_ft[-1]
    return f" runs from the {way_to(last, first)} to the {way_to(first, last)}"


def _way(at: PlaneSpot, other: GroundShape, near_ft: float) -> str:
    in_a_hole = any(_holds(hole, at) for hole in other.holes_ft)
    if other.is_outline and _holds(other.spots_ft, at) and not in_a_hole:
        return _AROUND
    spot = _nearest(at, other)
    if math.dist(at, spot) - other.half_width_ft <= near_ft:
        return _AT
    return f"To the {way_to(at, spot)}"


def _nearest(at: PlaneSpot, other: GroundShape) -> PlaneSpot:
    """Return the spot of a shape nearest to another; of many corners a few stand for all."""
    nearest: list[PlaneSpot] = []
    for ring in (other.spots_ft, *other.holes_ft):
        spots = ring[:: len(ring) // _MOST_SIDES + 1]
        closed = [*spots, spots[0]] if other.is_outline or len(spots) == 1 else [*spots]
        nearest += _nearest_on_sides(at, closed)
    return min(nearest, key=lambda spot: math.dist(at, spot))


def _nearest_on_sides(at: PlaneSpot, line: Sequence[PlaneSpot]) -> Iterator[PlaneSpot]:
    for (x, y), (to_x, to_y) in pairwise(line):
        over_x, over_y = to_x - x, to_y - y
        squared = over_x * over_x + over_y * over_y
        along = ((at[0] - x) * over_x + (at[1] - y) * over_y) / squared if squared else 0.0
        part = min(1.0, max(0.0, along))
        yield x + part * over_x, y + part * over_y


def _holds(outline: Sequence[PlaneSpot], at: PlaneSpot) -> bool:
    inside = False
    for (x, y), (to_x, to_y) in pairwise([*outline, outline[0]]):
        if (y <= at[1]) != (to_y <= at[1]) and x + (at[1] - y) / (to_y - y) * (to_x - x) > at[0]:
            inside = not inside
    return inside
