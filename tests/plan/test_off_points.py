"""How far points count as off: the owner's figure, else by how they were got."""

from pathlib import Path

import pytest

from generator.inventory.load import load_inventory
from generator.plan.land.off_points import off_ft

PROPERTY = "format: 1\nname: Bend\nseason: 2027\n"
# What GPS.gov prints of phones under open sky, and the average of 13 m under trees and beside
# buildings of PLOS ONE 14(7), e0219890, in whole feet; the other two are common practice.
OPEN_FT, TREES_FT, SURVEYED_FT, DRAWN_FT = 16, 43, 1, 30
LAND = "land:\n  - {{id: it, kind: well, name: Old well, at_lat_lon: [41, -93]{more}}}\n"
PLACE = "screens:\n  - {{id: it, name: Lane, area_ac: 1{more}}}\n"
STAND = "stands:\n  - {{id: it, name: Oak, at_lat_lon: [41, -93]{more}}}\n"
WALK = "routes:\n  - {{id: it, name: Draw{more}}}\n"
FILES = {LAND: "land", PLACE: "screens", STAND: "stands", WALK: "routes"}


@pytest.mark.parametrize(
    ("text", "more", "expected_ft"),
    [
        (LAND, "", OPEN_FT),
        (LAND, ", got: phone", OPEN_FT),
        (LAND, ", got: phone_under_trees", TREES_FT),
        (LAND, ", got: surveyed", SURVEYED_FT),
        (LAND, ", got: drawn", DRAWN_FT),
        (LAND, ", got: drawn, off_ft: 7", 7),
        (LAND, ", off_yd: 4", 12),
        (PLACE, "", OPEN_FT),
        (PLACE, ", got: surveyed", SURVEYED_FT),
        (PLACE, ", got: surveyed, outline_error_ft: 3", 3),
        # stands stand under trees and walks run there, unless somebody says otherwise
        (STAND, "", TREES_FT),
        (STAND, ", got: phone", OPEN_FT),
        (STAND, ", off_ft: 10", 10),
        (WALK, "", TREES_FT),
        (WALK, ", got: surveyed", SURVEYED_FT),
        (WALK, ", off_ft: 60", 60),
    ],
)
def test_the_owner_s_figure_counts_else_how_the_points_were_got(
    text: str, more: str, expected_ft: float, tmp_path: Path
) -> None:
    (tmp_path / "property.yaml").write_text(PROPERTY, encoding="utf-8")
    (tmp_path / f"{FILES[text]}.yaml").write_text(text.format(more=more), encoding="utf-8")
    loaded = load_inventory(tmp_path)
    assert loaded.problems == ()
    assert loaded.inventory is not None
    inventory = loaded.inventory
    (thing,) = (*inventory.land, *inventory.screens, *inventory.stands, *inventory.routes)
    assert off_ft(thing).value == pytest.approx(expected_ft)
    assert off_ft(thing).unit == "ft"
