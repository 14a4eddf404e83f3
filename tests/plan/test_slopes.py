"""A grid of heights says how steep a place is where nobody typed it, and never against what was."""

import datetime
from pathlib import Path
from typing import Any

import pytest

from generator.inventory.load import load_inventory
from generator.inventory.schema import Inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.working import Given, Measured
from tests.plan.planned import KILL, job_of
from tests.plan.test_where_things_lie import at, ground, land
from tests.properties import (
    SEASON,
    Data,
    full_card,
    full_use,
    small_property,
    write_property,
)

AS_OF = datetime.date(2026, 8, 20)

CELL, WIDE = 0.0005, 20
NORTH_FT, EAST_FT = 364_360 * CELL, 275_860 * CELL  # of a cell at 41.03 N


def plane(slope_pct: float, known: bool = True) -> str:
    """A grid around the place, so steep to the east: in feet, its heights falling eastward."""
    south_west = (-93.02 - WIDE / 2 * CELL, 41.03 - WIDE / 2 * CELL)
    head = (
        f"ncols {WIDE}\nnrows {WIDE}\nxllcorner {south_west[0]}\nyllcorner {south_west[1]}\n"
        f"cellsize {CELL}\nNODATA_value -9999\n"
    )
    heights = [
        f"{900 - slope_pct / 100 * EAST_FT * column:.4f}" if known else "-9999"
        for column in range(WIDE)
    ]
    return head + "\n".join([" ".join(heights)] * WIDE) + "\n"


def inventory_on(tmp_path: Path, grid: str, data: Data) -> Inventory:
    said = {"file": "farm.asc", "heights_in": "ft", "source": "an invented survey"}
    data["property"]["elevation"] = said
    folder = write_property(tmp_path / "property", data)
    (folder / "elevation").mkdir()
    (folder / "elevation" / "farm.asc").write_text(grid, encoding="utf-8")
    loaded = load_inventory(folder)
    assert loaded.problems == ()
    assert loaded.inventory is not None
    return loaded.inventory


def planned_on(tmp_path: Path, grid: str, data: Data) -> Plan:
    return make_plan(inventory_on(tmp_path, grid, data), SEASON, AS_OF)


def with_limits(**near: Any) -> Data:
    """The strip, its card allowing 10 percent; the owner takes machines up to 12."""
    data = ground(land("well", at_lat_lon=at(200, 300), got="surveyed"))
    data["products"] = small_property(full_card(full_use(slope_limit_pct=10)))["products"]
    data["property"]["slope_limit_pct"] = 12
    data["screens"]["screens"][0]["near"] = near
    return data


def codes(plan: Plan, subject: str = KILL) -> set[str]:
    return {one.code for one in plan.findings_on(subject)}


@pytest.mark.parametrize(
    ("slope_pct", "stops", "cautions"), [(9, False, False), (11, True, False), (14, True, True)]
)
def test_the_grid_stops_what_a_label_does_not_allow(
    tmp_path: Path, slope_pct: float, stops: bool, cautions: bool
) -> None:
    plan = planned_on(tmp_path, plane(slope_pct), with_limits())
    assert ("S220" in codes(plan)) == stops
    mowing = f"lane/{SEASON}/first_summer_mowing"
    assert ("C340" in codes(plan, mowing)) == cautions
    (line,) = (one for one in job_of(plan).safety if one.key == "near.slope_pct")
    assert isinstance(line.figure, Measured)
    assert line.figure.value == pytest.approx(slope_pct, abs=0.1)
    assert "an invented survey" in line.figure.method
    # it falls east, where the well lies
    assert "C531" in codes(plan)
    asked = " ".join(one.asks for one in plan.unanswered)
    assert "too steep" not in asked


def test_what_is_typed_stands(tmp_path: Path) -> None:
    plan = planned_on(tmp_path, plane(14), with_limits(slope_pct=3, falls_to="W"))
    assert "S220" not in codes(plan)
    assert "C531" not in codes(plan)
    (line,) = (one for one in job_of(plan).safety if one.key == "near.slope_pct")
    assert isinstance(line.figure, Given)


def test_what_the_grid_does_not_know_stays_a_question(tmp_path: Path) -> None:
    plan = planned_on(tmp_path, plane(14, known=False), with_limits())
    (line,) = (one for one in job_of(plan).safety if one.key == "near.slope_pct")
    assert line.figure is None
    assert any("too steep" in one.asks for one in plan.unanswered)


def test_another_reader_gets_the_slope_and_not_where_it_stands_in_the_files(
    tmp_path: Path,
) -> None:
    inventory = inventory_on(tmp_path, plane(9), with_limits())
    plan = make_plan(inventory, SEASON, AS_OF)
    (hired,) = inventory.readers
    (line,) = (
        one
        for job in seen_by(plan, hired).jobs
        if job.id.endswith("autumn_kill")
        for one in job.safety
        if one.key == "near.slope_pct"
    )
    assert isinstance(line.figure, Measured)
    assert line.figure.value == pytest.approx(9, abs=0.1)
    assert (line.figure.file, line.figure.line) == ("", 0)
