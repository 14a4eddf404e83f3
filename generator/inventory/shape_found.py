"""Shapes as a file holds them, each with what is wrong with it; and a file that cannot be read."""

import re
from collections.abc import Iterable, Sequence

from generator.dataclass import dataclass
from generator.inventory import shape_faults as say
from generator.inventory.problems import Sentence
from generator.units import LatLon

POINT, LINE, OUTLINE = "point", "line", "outline"
# As numbers are written in such files: neither words like nan, nor digits parted by a mark.
NUMBER = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?", re.ASCII)
CORNERS_AND_CLOSING = 4  # of the smallest ring: three corners, and the first of them again


@dataclass(frozen=True, slots=True)
class FoundShape:
    """A shape in a file: its name there, the number of what it belongs to, and its points.

    `within` are the names of the folders around it, from the outermost. An outline has each corner
    once, and so has each of its `holes`. Of what is `wrong` with a shape nothing is told until
    somebody asks for it.
    """

    name: str
    number: int
    line: int | None
    form: str
    lat_lon: tuple[LatLon, ...]
    within: tuple[str, ...] = ()
    wrong: Sentence | None = None
    is_recorded: bool = False
    holes: tuple[tuple[LatLon, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class PieceThere:
    """Points of one form as they stand in a file, with what is wrong with them.

    `is_recorded` where a device wrote them down on the way, every few seconds.
    """

    form: str
    lat_lon: tuple[LatLon, ...]
    wrong: Sentence | None = None
    is_recorded: bool = False
    holes: tuple[tuple[LatLon, ...], ...] = ()


class UnreadableShapesError(Exception):
    """A file of shapes that cannot be read, with what hinders it and where."""

    def __init__(self, sentence: Sentence, line: int = 1, column: int = 1) -> None:
        super().__init__(sentence.what)
        self.sentence, self.line, self.column = sentence, line, column


class UnlikeAPointError(Exception):
    """Something in a shape that is no point, with what is wrong with it."""

    def __init__(self, sentence: Sentence) -> None:
        super().__init__(sentence.what)
        self.sentence = sentence


def piece_of_pairs(form: str, lon_lat: Sequence[tuple[float, float]]) -> PieceThere:
    """Return a point or line of longitudes and latitudes, in the order such files have them."""
    for number, (lon, lat) in enumerate(lon_lat, start=1):
        if abs(lat) > say.MOST_LAT or abs(lon) > say.MOST_LON:
            return PieceThere(form, (), say.out_of_the_world(number, lat, lon))
    if not lon_lat:
        return PieceThere(form, (), say.no_points())
    return PieceThere(form, tuple((lat, lon) for lon, lat in lon_lat))


def piece_of_rings(rings: Sequence[Sequence[tuple[float, float]]]) -> PieceThere:
    """Return an outline out of the rings of a piece of ground: the outer one first, then holes."""
    if not rings:
        return PieceThere(OUTLINE, (), say.no_points())
    outer, *holes = (_ring(ring) for ring in rings)
    if outer.wrong is not None:
        return outer
    for number, hole in enumerate(holes, start=1):
        if hole.wrong is not None:
            return PieceThere(OUTLINE, (), say.of_a_hole(number, hole.wrong))
    return PieceThere(OUTLINE, outer.lat_lon, holes=tuple(hole.lat_lon for hole in holes))


def _ring(lon_lat: Sequence[tuple[float, float]]) -> PieceThere:
    piece = piece_of_pairs(OUTLINE, lon_lat)
    if piece.wrong is not None:
        return piece
    if piece.lat_lon[0] != piece.lat_lon[-1] or len(piece.lat_lon) < CORNERS_AND_CLOSING:
        return PieceThere(OUTLINE, (), say.not_closed(len(piece.lat_lon)))
    return PieceThere(OUTLINE, piece.lat_lon[:-1])


def shapes_of(
    pieces: Iterable[PieceThere],
    name: str,
    number: int,
    line: int | None,
    within: tuple[str, ...] = (),
) -> list[FoundShape]:
    """Return the shapes that the pieces of one feature are, all under its name."""
    tidy = " ".join(name.split())
    return [
        FoundShape(
            name=tidy,
            number=number,
            line=line,
            form=piece.form,
            lat_lon=piece.lat_lon,
            within=within,
            wrong=piece.wrong,
            is_recorded=piece.is_recorded,
            holes=piece.holes,
        )
        for piece in pieces
    ]
