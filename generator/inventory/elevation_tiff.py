"""Heights out of a GeoTIFF: as much of it as the places of a property lie on.

What reads one is an extra of the install, imported when one is named. Of a file as large as
agencies give them out, only the strips or tiles with ground of the property in them are unpacked.
"""

from __future__ import annotations

import logging
import math
import re
import warnings
from array import array
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from generator.geometry.heights import HeightGrid, window_of
from generator.inventory import elevation as say
from generator.inventory.elevation import (
    FEET,
    HIGHEST_FT,
    LOWEST_FT,
    METERS,
    MOST_CELLS,
    WrongGridError,
    hold_to_zone,
)
from generator.inventory.problems import shown_value
from generator.units import LatLon, convert

if TYPE_CHECKING:
    from tifffile import TiffFile, TiffPage

TIFF_STARTS = (b"II*\0", b"MM\0*", b"II+\0", b"MM\0+")
TIFF_START_BYTES = 4
# Tags and keys by the numbers of TIFF 6.0, of GeoTIFF 1.1 (OGC 19-008) and of what most programs
# write for a height that is not known, a scale and a unit.
_UPRIGHT, _DARK_IS_LOW, _PREDICTORS = 1, 1, (1, 2, 3)
_PACKED_BY = (1, 5, 8, 32946)  # not, LZW, deflate by its two numbers
_TURN, _MATRIX, _SCALE, _TIED = 274, 34264, 33550, 33922
_MORE, _NOT_KNOWN = 42112, 42113
_A_TIE = 6  # column, row and depth in the picture, east, north and height on the earth
_PROJECTED, _IN_DEGREES, _POINTS = 1, 2, 2
_DEGREE, _METER = 9102, 9001
_DEGREES_OF = (4326, 4269, 6318)  # WGS 84, NAD 83, NAD 83 of 2011: within some feet of each other
# First and last code of UTM zones, and the number of the first; south of the equator below 0.
_ZONES = ((32601, 32660, 1), (32701, 32760, -1), (26901, 26923, 1), (6330, 6348, 1))
_UNITS = {
    METERS: {"m", "meter", "meters", "metre", "metres"},
    FEET: {"ft", "foot", "feet", "us-ft", "ftus", "foot_us", "us survey foot"},
}
_UNIT_CODES = {9001: METERS, 9002: FEET, 9003: FEET, 5703: METERS, 8228: FEET, 6360: FEET}
_AN_ITEM = re.compile(r"role=\"(scale|offset|unittype)\"\s*>([^<]*)<")
_AS_THEY_ARE = {"scale": 1.0, "offset": 0.0}
_OTHERS = "neither degrees of WGS 84 or NAD 83 nor meters of a UTM zone of theirs"


def tiff_grid(
    path: Path, heights_in: str, zone: int, points_lat_lon: Sequence[LatLon], reach_ft: float
) -> HeightGrid | None:
    """Return the cells of a GeoTIFF around points; None where there are no points.

    `zone` is the UTM zone that is typed, or 0. Raises WrongGridError.
    """
    try:
        import imagecodecs  # unpacks what the other lays out  # noqa: F401
        from tifffile import TiffFile
    except ImportError:
        raise WrongGridError(say.no_reader()) from None
    try:
        with _quietly(), TiffFile(path) as tiff:
            return _around(tiff, heights_in, zone, points_lat_lon, reach_ft)
    except WrongGridError:
        raise
    except Exception:
        # a damaged file ends in no end of errors there, and its own say nothing to an owner
        raise WrongGridError(say.damaged_grid()) from None


@contextmanager
def _quietly() -> Iterator[None]:
    """Keep what the library thinks of a file from the terminal."""
    logger = logging.getLogger("tifffile")
    was, logger.disabled = logger.disabled, True
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            yield
    finally:
        logger.disabled = was


def _around(
    tiff: TiffFile, heights_in: str, zone: int, points_lat_lon: Sequence[LatLon], reach_ft: float
) -> HeightGrid | None:
    page = tiff.pages.first
    keys = page.geotiff_tags or {}
    if (form := _other_form(page, keys)) is not None:
        raise WrongGridError(say.other_grid(form))
    frame = _frame(page, keys)
    if zone and zone != frame.utm_zone:
        raise WrongGridError(say.other_zone(_in_words(frame.utm_zone)))
    said = _unit_said(page, keys)
    if said is not None and said != heights_in:
        raise WrongGridError(say.other_unit(said, heights_in))
    if not points_lat_lon:
        return None
    window = window_of(points_lat_lon, reach_ft, frame)
    if window is None:
        raise WrongGridError(say.grid_elsewhere())
    columns, rows = window
    if len(columns) * len(rows) > MOST_CELLS:
        raise WrongGridError(say.too_wide())
    west, south = frame.south_west
    return replace(
        frame,
        columns_count=len(columns),
        rows_count=len(rows),
        south_west=(
            west + columns.start * frame.cell_size,
            south + rows.start * frame.cell_size,
        ),
        heights_ft=_heights_ft(page, columns, rows, convert(1, heights_in, "ft")),
    )


def _other_form(page: TiffPage, keys: Mapping[str, Any]) -> str | None:
    """Return what makes a picture no form that is read, in words; None of one that is."""
    if page.samplesperpixel != 1:
        return f"a picture of {page.samplesperpixel} bands"
    if page.photometric != _DARK_IS_LOW or page.dtype is None or page.dtype.itemsize == 1:
        return "a picture to look at, not one of heights"
    if page.dtype.kind not in "iuf":
        return f"of numbers of the form {page.dtype}"
    if page.compression not in _PACKED_BY or page.predictor not in _PREDICTORS:
        way = getattr(page.compression, "name", page.compression)
        return f"packed by {way} with predictor {int(page.predictor)}"
    if page.tags.valueof(_TURN, _UPRIGHT) != _UPRIGHT or page.tags.get(_MATRIX) is not None:
        return "turned, or laid by a matrix"
    if not keys or page.tags.get(_SCALE) is None or page.tags.get(_TIED) is None:
        return "a TIFF that does not say where on earth it lies"
    if len(page.tags.valueof(_TIED)) != _A_TIE:
        return "tied to the earth at several points"
    east, north = page.tags.valueof(_SCALE)[:2]
    if not math.isclose(east, north, rel_tol=1 / 1_000_000):
        return f"of cells {east:.9g} wide and {north:.9g} high, which are no squares"
    for role, value in _items(page):
        if role in _AS_THEY_ARE and float(value) != _AS_THEY_ARE[role]:
            return f"of numbers that are heights only with a {role} of {value}"
    return None


def _items(page: TiffPage) -> list[tuple[str, str]]:
    """Return what a picture says of its numbers beside the tags of TIFF itself."""
    return _AN_ITEM.findall(str(page.tags.valueof(_MORE, "")))


def _unit_said(page: TiffPage, keys: Mapping[str, Any]) -> str | None:
    """Return the unit of heights that a picture names; None where it names none."""
    for key in ("VerticalUnitsGeoKey", "VerticalCSTypeGeoKey"):
        if (unit := _UNIT_CODES.get(int(keys.get(key, 0)))) is not None:
            return unit
    words = [value.strip().lower() for role, value in _items(page) if role == "unittype"]
    return next((unit for unit, names in _UNITS.items() for word in words if word in names), None)


def _frame(page: TiffPage, keys: Mapping[str, Any]) -> HeightGrid:
    """Return where the cells of a picture lie, without their heights."""
    zone = _zone_of(keys)
    column, row, _, east, north, _ = page.tags.valueof(_TIED)
    size = page.tags.valueof(_SCALE)[0]
    half = size / 2 if keys.get("GTRasterTypeGeoKey") == _POINTS else 0.0
    west = east - column * size - half
    south = north + row * size + half - page.imagelength * size
    if not (math.isfinite(west) and math.isfinite(south) and size > 0):
        raise WrongGridError(say.damaged_grid())
    hold_to_zone(west, south, zone)
    return HeightGrid(page.imagewidth, page.imagelength, (west, south), size, zone, ())


def _zone_of(keys: Mapping[str, Any]) -> int:
    """Return the UTM zone of a picture, below 0 south of the equator; 0 where it is in degrees."""
    model = int(keys.get("GTModelTypeGeoKey", 0))
    if model == _IN_DEGREES and int(keys.get("GeogAngularUnitsGeoKey", _DEGREE)) == _DEGREE:
        code = int(keys.get("GeographicTypeGeoKey", 0))
        if code in _DEGREES_OF:
            return 0
    elif model == _PROJECTED and int(keys.get("ProjLinearUnitsGeoKey", _METER)) == _METER:
        code = int(keys.get("ProjectedCSTypeGeoKey", 0))
        for first, last, zone in _ZONES:
            if first <= code <= last:
                return zone * (code - first + 1)
    named = keys.get("PCSCitationGeoKey") or keys.get("GTCitationGeoKey")
    named = named or keys.get("GeogCitationGeoKey")
    in_words = (
        f"{shown_value(str(named))}, {_OTHERS}" if named else f"coordinates that are {_OTHERS}"
    )
    raise WrongGridError(say.other_grid(f"in {in_words}"))


def _in_words(zone: int) -> str:
    return f"UTM zone {abs(zone)}{'N' if zone > 0 else 'S'}" if zone else "degrees"


def _heights_ft(page: TiffPage, columns: range, rows: range, unit_ft: float) -> array[float]:
    """Return the heights of some columns and rows, counted from the south-west, in feet."""
    top = page.imagelength - rows.stop
    wide, high = (
        (page.tilewidth, page.tilelength)
        if page.is_tiled
        else (page.imagewidth, min(page.rowsperstrip, page.imagelength))
    )
    if wide * high > MOST_CELLS:
        raise WrongGridError(say.other_grid("written in one piece; tiles or strips are needed"))
    across = -(-page.imagewidth // wide)
    heights = array("d", [math.nan]) * (len(columns) * len(rows))
    for down in range(top // high, (top + len(rows) - 1) // high + 1):
        for right in range(columns.start // wide, columns[-1] // wide + 1):
            piece = _piece(page, down * across + right)
            if piece is not None:
                _lay(piece * unit_ft, (right * wide, down * high), columns, top, heights)
    return heights


def _piece(page: TiffPage, number: int) -> Any:
    """Return the heights of a strip or tile, row by row; None where nothing is written of it."""
    length = page.databytecounts[number]
    if not length:
        return None
    file = page.parent.filehandle
    file.seek(page.dataoffsets[number])
    packed = file.read(length)
    if len(packed) != length:
        raise WrongGridError(say.damaged_grid())
    decoded, _, shape = page.decode(packed, number)
    if decoded is None:
        return None
    found = decoded[0, : shape[1], : shape[2], 0]
    heights = found.astype("float64")
    not_known = page.tags.valueof(_NOT_KNOWN)
    if not_known is not None:
        # as the numbers of the file are written, which may be shorter than what is compared
        heights[found == float(not_known)] = math.nan
    return heights


def _lay(
    piece: Any, corner: tuple[int, int], columns: range, top: int, heights: array[float]
) -> None:
    """Put the rows of a piece, from its upper left corner on, where they lie among the heights."""
    piece[(piece <= LOWEST_FT) | (piece >= HIGHEST_FT)] = math.nan
    left, upper = corner
    first, past = max(columns.start, left), min(columns.stop, left + piece.shape[1])
    rows_count = len(heights) // len(columns)
    for row in range(max(top, upper), min(top + rows_count, upper + piece.shape[0])):
        cells = piece[row - upper, first - left : past - left]
        begins = (row - top) * len(columns) + first - columns.start
        heights[begins : begins + past - first] = array("d", cells.tobytes())
