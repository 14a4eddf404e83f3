"""The grid of heights of an inventory out of its file; nothing is read where none is named."""

import math
import re
from array import array
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path

from generator.geometry.heights import HeightGrid
from generator.inventory import elevation as say
from generator.inventory.elevation import HEIGHTS_FOLDER, METERS, Elevation
from generator.inventory.files import Hindered, content_of
from generator.inventory.problems import Problem, Sentence, shown_value
from generator.inventory.schema import Inventory
from generator.units import convert

MOST_GRID_BYTES = 40_000_000
MOST_CELLS = 4_000_000
A_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]*", re.ASCII)
A_ZONE = re.compile(r"([1-9]|[1-5][0-9]|60)([NS])", re.ASCII)
_TIFFS = (b"II*\0", b"MM\0*", b"II+\0", b"MM\0+")
_COUNTS, _SIZE, _NOT_KNOWN = ("ncols", "nrows"), "cellsize", "nodata_value"
_WEST, _SOUTH = ("xllcorner", "xllcenter"), ("yllcorner", "yllcenter")
_HEAD = (*_COUNTS, *_WEST, *_SOUTH, _SIZE, _NOT_KNOWN)
# Of the middle of a zone and half its width, with room; of the way from the equator to the pole.
_EAST_M, _NORTH_M = (100_000, 900_000), (0, 10_000_000)
_USUALLY_NOT_KNOWN = -9999.0


class _WrongError(Exception):
    """A fault in a file of heights, and its line."""

    def __init__(self, sentence: Sentence, line: int = 1) -> None:
        super().__init__(sentence.what)
        self.sentence, self.line = sentence, line


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
    content = content_of(folder / HEIGHTS_FOLDER / typed.file, MOST_GRID_BYTES)
    if isinstance(content, Hindered):
        return inventory, [_told(say.no_grid(content.words), typed, "file")]
    try:
        grid = _grid(content, typed, zone)
    except _WrongError as wrong:
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


def _grid(content: bytes, typed: Elevation, zone: int) -> HeightGrid:
    if content.startswith(_TIFFS):
        raise _WrongError(say.other_grid("a picture with heights in it (TIFF)"))
    try:
        lines = content.decode("utf-8-sig").splitlines()
    except UnicodeDecodeError:
        raise _WrongError(say.other_grid("no text")) from None
    head, begins = _head(lines)
    columns, rows = int(head["ncols"]), int(head["nrows"])
    size, half = head[_SIZE], head[_SIZE] / 2
    west = head["xllcorner"] if "xllcorner" in head else head["xllcenter"] - half
    south = head["yllcorner"] if "yllcorner" in head else head["yllcenter"] - half
    _hold_to_zone(west, south, zone)
    heights = array("d", _heights(lines, begins, head, typed))
    if len(heights) != columns * rows:
        raise _WrongError(
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
            raise _WrongError(say.bad_head(f"its head has the line {shown}"), number + 1)
        if words:
            head[key] = _number(words[1], number + 1)
    return _whole_head(head, len(lines)), len(lines)


def _whole_head(head: dict[str, float], line: int) -> Mapping[str, float]:
    wanted = [(key,) for key in (*_COUNTS, _SIZE)] + [_WEST, _SOUTH]
    missing = [keys[0] for keys in wanted if not any(key in head for key in keys)]
    if missing:
        raise _WrongError(say.bad_head(f"its head has no {missing[0]}"), max(line, 1))
    columns, rows = (head[key] for key in _COUNTS)
    if columns != int(columns) or rows != int(rows) or min(columns, rows, head[_SIZE]) <= 0:
        raise _WrongError(say.bad_head("its head has a size that no grid has"))
    if columns * rows > MOST_CELLS:
        what = f"the grid has {columns * rows:,.0f} cells"
        raise _WrongError(say.bad_rows(what, f"at most {MOST_CELLS:,}: cut out the property"))
    return head


def _hold_to_zone(west: float, south: float, zone: int) -> None:
    in_zone = _EAST_M[0] <= west <= _EAST_M[1] and _NORTH_M[0] <= south <= _NORTH_M[1]
    on_earth = abs(west) <= 180 and abs(south) <= 90  # degrees of longitude and latitude
    if zone and not in_zone:
        what = f"its corner {west:g}, {south:g} lies in no UTM zone"
        raise _WrongError(say.other_corner(what, "meters of the zone, or no utm_zone: for degrees"))
    if not zone and not on_earth:
        what = f"its corner {west:g}, {south:g} is no longitude and latitude"
        raise _WrongError(
            say.other_corner(
                what, "degrees; or utm_zone: in property.yaml for meters of a UTM zone"
            )
        )


def _heights(
    lines: list[str], begins: int, head: Mapping[str, float], typed: Elevation
) -> Iterator[float]:
    not_known = head.get(_NOT_KNOWN, _USUALLY_NOT_KNOWN)
    in_meters = typed.heights_in == METERS
    for number, line in enumerate(lines[begins:], begins + 1):
        for word in line.split():
            height = _number(word, number)
            if height == not_known:
                yield math.nan
            else:
                yield convert(height, "m", "ft") if in_meters else height


def _number(word: str, line: int) -> float:
    try:
        found = float(word)
    except ValueError:
        found = math.nan
    if not math.isfinite(found):
        raise _WrongError(say.bad_rows(f"{shown_value(word)} is no number", "a number"), line)
    return found
