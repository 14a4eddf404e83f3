"""A grid of heights is read as it stands, and every fault in it has its file, line and cure."""

import math
from pathlib import Path
from typing import Any

import pytest

from generator.inventory.load import load_inventory
from generator.inventory.problems import Problem
from generator.inventory.schema import Inventory
from tests.properties import small_property, write_property

HEAD = "ncols 3\nnrows 2\nxllcorner -93.03\nyllcorner 41.02\ncellsize 0.01\nNODATA_value -9999\n"
ROWS = "300 301 302\n310 -9999 312\n"
METERS = HEAD.replace("-93.03", "498000").replace("41.02", "4541000").replace("0.01", "30")


def loaded(
    tmp_path: Path, content: str | bytes | None, **typed: Any
) -> tuple[Inventory | None, tuple[Problem, ...]]:
    data = small_property()
    said = {"file": "farm.asc", "heights_in": "m", "source": "invented, 2026"} | typed
    data["property"]["elevation"] = {key: one for key, one in said.items() if one is not None}
    folder = write_property(tmp_path / "property", data)
    (folder / "elevation").mkdir()
    if content is not None:
        raw = content.encode() if isinstance(content, str) else content
        (folder / "elevation" / "farm.asc").write_bytes(raw)
    found = load_inventory(folder)
    return found.inventory, found.problems


def test_a_grid_is_read_with_its_corner_its_rows_and_what_it_does_not_know(tmp_path: Path) -> None:
    inventory, problems = loaded(tmp_path, HEAD + ROWS)
    assert problems == ()
    assert inventory is not None
    grid = inventory.heights
    assert grid is not None
    assert (grid.columns_count, grid.rows_count, grid.utm_zone) == (3, 2, 0)
    assert grid.south_west == (-93.03, 41.02)
    # rows from the north; 312 m over 0.3048
    assert grid.height_ft(2, 0) == pytest.approx(1023.622, abs=0.001)
    assert grid.height_ft(0, 1) == pytest.approx(984.252, abs=0.001)
    assert math.isnan(grid.height_ft(1, 0))
    assert math.isnan(grid.height_ft(3, 0))


def test_a_corner_by_the_middle_of_its_cell_and_heights_in_feet(tmp_path: Path) -> None:
    head = HEAD.replace("xllcorner", "XLLCENTER").replace("yllcorner", "yllcenter")
    inventory, problems = loaded(tmp_path, head.replace("NODATA_value -9999\n", "") + ROWS,
                                 heights_in="ft")  # fmt: skip
    assert problems == ()
    assert inventory is not None
    assert inventory.heights is not None
    assert inventory.heights.south_west == pytest.approx((-93.035, 41.015))
    assert inventory.heights.height_ft(2, 0) == 312
    assert math.isnan(inventory.heights.height_ft(1, 0))


@pytest.mark.parametrize(("zone", "number"), [("15N", 15), ("15 n", None), ("15s", -15)])
def test_meters_of_a_zone(tmp_path: Path, zone: str, number: int | None) -> None:
    inventory, problems = loaded(tmp_path, METERS + ROWS, utm_zone=zone)
    if number is None:
        assert [one.code for one in problems] == ["F543"]
    else:
        assert problems == ()
        assert inventory is not None
        assert inventory.heights is not None
        assert inventory.heights.utm_zone == number


@pytest.mark.parametrize(
    ("content", "typed", "code", "at", "says"),
    [
        (None, {}, "F540", "property.yaml", "cannot be opened"),
        (HEAD + ROWS, {"file": "../farm.asc"}, "F540", "property.yaml", "farm.asc"),
        (b"II*\0" + bytes(90), {}, "F541", "elevation/farm.asc:1", "TIFF"),
        (b"\xff\xfe\x00\x01", {}, "F541", "elevation/farm.asc:1", "no text"),
        (HEAD.replace("nrows 2\n", "") + ROWS, {}, "F542", "elevation/farm.asc:5", "nrows"),
        (HEAD.replace("cellsize", "dx") + ROWS, {}, "F542", "elevation/farm.asc:5", "dx 0.01"),
        (HEAD.replace("ncols 3", "ncols 2.5") + ROWS, {}, "F542", "elevation/farm.asc:1", "size"),
        (
            HEAD.replace("ncols 3", "ncols 9999999") + ROWS,
            {},
            "F542",
            "elevation/farm.asc:1",
            "cells",
        ),
        (HEAD + "300 301 302\n310 x 312\n", {}, "F542", "elevation/farm.asc:8", "x"),
        (HEAD + "300 301 302\n310 nan 312\n", {}, "F542", "elevation/farm.asc:8", "nan"),
        (HEAD + "300 301 302\n310 311\n", {}, "F542", "elevation/farm.asc:8", "5 heights"),
        (HEAD, {}, "F542", "elevation/farm.asc:6", "0 heights"),
        ("", {}, "F542", "elevation/farm.asc:1", "ncols"),
        (METERS + ROWS, {}, "F543", "elevation/farm.asc:1", "498000"),
        (HEAD + ROWS, {"utm_zone": "15N"}, "F543", "elevation/farm.asc:1", "-93.03"),
        (HEAD + ROWS, {"utm_zone": "61N"}, "F543", "property.yaml", "61N"),
    ],
)
def test_what_is_wrong_is_told_where_it_stands(
    tmp_path: Path,
    content: str | bytes | None,
    typed: dict[str, Any],
    code: str,
    at: str,
    says: str,
) -> None:
    inventory, problems = loaded(tmp_path, content, **typed)
    assert inventory is None
    (problem,) = problems
    assert problem.code == code
    assert f"{problem.file}:{problem.line}".startswith(at)
    assert says in str(problem)


def test_without_a_unit_no_height_is_guessed(tmp_path: Path) -> None:
    _, problems = loaded(tmp_path, HEAD + ROWS, heights_in=None)
    assert any("heights_in" in str(problem) for problem in problems)
