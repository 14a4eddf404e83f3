"""The grid of heights of an inventory out of its file; nothing is read where none is named."""

import math
import re
from array import array
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from generator.geometry.heights import HeightGrid, window_of
from generator.geometry.pieces import SHARPEST_MITRE
from generator.inventory import elevation as say
from generator.inventory.elevation import (
    HEIGHTS_FOLDER,
    HIGHEST_FT,
    LOWEST_FT,
    METERS,
    MOST_CELLS,
    Elevation,
    WrongGridError,
    hold_to_zone,
)
from generator.inventory.elevation_tiff import TIFF_START_BYTES, TIFF_STARTS, tiff_grid
from generator.inventory.files import Hindered, content_of, start_of
from generator.inventory.problems import Problem, Sentence, shown_value
from generator.inventory.schema import Inventory
from generator.units import LatLon, convert

MOST_GRID_BYTES = 40_000_000
MOST_PICTURE_BYTES = 1_000_000_000
A_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]*", re.ASCII)
A_ZONE = re.compile(r"([1-9]|[1-5][0-9]|60)([NS])", re.ASCII)
_COUNTS, _SIZE, _NOT_KNOWN = ("ncols", "nrows"), "cellsize", "nodata_value"
_WEST, _SOUTH = ("xllcorner", "xllcenter"), ("yllcorner", "yllcenter")
_HEAD = (*_COUNTS, *_WEST, *_SOUTH, _SIZE, _NOT_KNOWN)
_USUALLY_NOT_KNOWN = -9999.0


class _ClosedError(Exception):
    """A file of heights that could not be opened, in words."""


def with_elevation(folder: Path, inventory: Inventory) -> tuple[Inventory, list[Problem]]:
    """Return the inventory with the grid of heights it names, and every fault in that."""
    typed = inventory.property.elevation
    if typed is None:
        return inventory, []
    zone = _zone(typed.utm_zone)
    if isinstance(zone, Sentence):
        return inventory, [_told(zone, typed, "utm_zone")]
    if not A_NAME.fullmatch(typed.file):
        return inventory, [_told(say.bad_grid_name(typed.file), typed, "file")]
    try:
        grid = _of_file(folder / HEIGHTS_FOLDER / typed.file, typed, zone, inventory)
    except _ClosedError as closed:
        return inventory, [_told(say.no_grid(str(closed)), typed, "file")]
    except WrongGridError as wrong:
        return inventory, [wrong.sentence.at(f"{HEIGHTS_FOLDER}/{typed.file}", wrong.line, 1)]
    return replace(inventory, heights=grid), []


def _told(sentence: Sentence, typed: Elevation, key: str) -> Problem:
    where = typed.where_of(key)
    return sentence.at(where.file, where.line, where.column)


def _zone(typed: str | None) -> int | Sentence:
    """Return a UTM zone as a number, below 0 south of the equator; 0 where none is typed."""
    if typed is None:
        return 0
    found = A_ZONE.fullmatch(typed.strip().upper())
    if found is None:
        return say.bad_zone(typed)
    return int(found[1]) if found[2] == "N" else -int(found[1])


def _of_file(path: Path, typed: Elevation, zone: int, inventory: Inventory) -> HeightGrid | None:
    """Return the grid of a file, of a picture as much as places lie on; None where none has points.

    Raises WrongGridError, and `_ClosedError` where the file cannot be opened.
    """
    points, reach_ft = _around_places(inventory)
    if _opened(start_of(path, MOST_PICTURE_BYTES, TIFF_START_BYTES)) in TIFF_STARTS:
        return tiff_grid(path, typed.heights_in, zone, points, reach_ft)
    grid = _text_grid(_opened(content_of(path, MOST_GRID_BYTES)), typed, zone)
    if points and window_of(points, reach_ft, grid) is None:
        raise WrongGridError(say.grid_elsewhere())
    return grid


def _opened(content: bytes | Hindered) -> bytes:
    if isinstance(content, Hindered):
        raise _ClosedError(content.words)
    return content


def _around_places(inventory: Inventory) -> tuple[Sequence[LatLon], float]:
    """Return the points of every place, and how far past them its ground may reach."""
    points, widest_ft = list[LatLon](), 0.0
    for place in inventory.places():
        for typed in (place.area_lat_lon, place.line_lat_lon):
            points += typed.lat_lon if typed is not None else ()
        widest_ft = max(widest_ft, place.width_ft.value if place.width_ft is not None else 0.0)
    # a bend of a strip may reach that far out of its middle line
    return points, SHARPEST_MITRE * widest_ft / 2


def _text_grid(content: bytes, typed: Elevation, zone: int) -> HeightGrid:
    try:
        lines = content.decode("utf-8-sig").splitlines()
    except UnicodeDecodeError:
        raise WrongGridError(say.other_grid("no text")) from None
    head, begins = _head(lines)
    columns, rows = int(head["ncols"]), int(head["nrows"])
    size, half = head[_SIZE], head[_SIZE] / 2
    west = head["xllcorner"] if "xllcorner" in head else head["xllcenter"] - half
    south = head["yllcorner"] if "yllcorner" in head else head["yllcenter"] - half
    hold_to_zone(west, south, zone)
    heights = array("d", _heights(lines, begins, head, typed))
    if len(heights) != columns * rows:
        raise WrongGridError(
            say.bad_rows(
                f"the file holds {len(heights)} heights",
                f"{columns} times {rows} of them, as its head says",
            ),
            len(lines),
        )
    return HeightGrid(columns, rows, (west, south), size, zone, heights)


def _head(lines: list[str]) -> tuple[Mapping[str, float], int]:
    """Return what the head says, and the number, from 0, of the first line behind it."""
    head: dict[str, float] = {}
    for number, line in enumerate(lines):
        words = line.split()
        key = words[0].lower() if words else ""
        if key and not key[0].isalpha():
            return _whole_head(head, number), number
        if words and (key not in _HEAD or len(words) != len(("key", "number"))):
            shown = shown_value(" ".join(words))
            raise WrongGridError(say.bad_head(f"its head has the line {shown}"), number + 1)
        if words:
            head[key] = _number(words[1], number + 1)
    return _whole_head(head, len(lines)), len(lines)


def _whole_head(head: dict[str, float], line: int) -> Mapping[str, float]:
    wanted = [(key,) for key in (*_COUNTS, _SIZE)] + [_WEST, _SOUTH]
    missing = [keys[0] for keys in wanted if not any(key in head for key in keys)]
    if missing:
        raise WrongGridError(say.bad_head(f"its head has no {missing[0]}"), max(line, 1))
    columns, rows = (head[key] for key in _COUNTS)
    if columns != int(columns) or rows != int(rows) or min(columns, rows, head[_SIZE]) <= 0:
        raise WrongGridError(say.bad_head("its head has a size that no grid has"))
    if columns * rows > MOST_CELLS:
        what = f"the grid has {columns * rows:,.0f} cells"
        raise WrongGridError(say.bad_rows(what, f"at most {MOST_CELLS:,}: cut out the property"))
    return head


def _heights(
    lines: list[str], begins: int, head: Mapping[str, float], typed: Elevation
) -> Iterator[float]:
    not_known = head.get(_NOT_KNOWN, _USUALLY_NOT_KNOWN)
    in_meters = typed.heights_in == METERS
    for number, line in enumerate(lines[begins:], begins + 1):
        for word in line.split():
            height = _number(word, number)
            height_ft = convert(height, "m", "ft") if in_meters else height
            is_known = height != not_known and LOWEST_FT < height_ft < HIGHEST_FT
            yield height_ft if is_known else math.nan


def _number(word: str, line: int) -> float:
    try:
        found = float(word)
    except ValueError:
        found = math.nan
    if not math.isfinite(found):
        raise WrongGridError(say.bad_rows(f"{shown_value(word)} is no number", "a number"), line)
    return found
