"""Of lines and outlines of their work another reader learns the ground and, in files, the lie."""

import random
from dataclasses import replace
from pathlib import Path

import pytest

from generator.book.make import make_book
from generator.book.model import Book
from generator.book.pages.written import GROUND_GEOJSON, GROUND_GPX, GROUND_KML
from generator.inventory.load import load_inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.plan.views.numbers import numbers_of
from generator.working import Measured, Quantity, Withheld, flat_inputs, walk
from tests.plan.planned import AS_OF, inventory_of, planned
from tests.properties import SEASON, Data, small_property, write_property
from tests.readers.test_no_canary import every_byte
from tests.readers.test_non_interference import contractor_site
from tests.shapes import line_of, outline_of, with_other_acres

# Degrees east that are sums of powers of two: a move by 32 degrees changes no difference of them.
EAST, STEP = -93 + 13 / 128, 3 / 16384
LAT = 41.0270137


def handed(**ground: object) -> Data:
    """The small property, its one place, which is handed over, on this ground alone."""
    data = small_property()
    screen = data["screens"]["screens"][0]
    del screen["length_ft"], screen["width_ft"]
    screen |= ground
    return data


def outline(moved_east: float = 0, north: float = 0.0009) -> list[list[float]]:
    """An outline of about a quarter of an acre, moved by some degrees."""
    west, east = EAST + moved_east, EAST + moved_east + STEP
    return [[LAT, west], [LAT + north, west], [LAT + north, east], [LAT, east]]


def site(data: Data, folder: Path) -> dict[str, bytes]:
    return contractor_site(write_property(folder / "land", data), "hired", folder / "site")


LINE = line_of(LAT, EAST, 700)


@pytest.mark.parametrize(
    "ground",
    [{"area_lat_lon": outline()}, {"width_ft": 20, "line_lat_lon": LINE}],
    ids=["outline", "line"],
)
def test_coordinates_are_in_files_alone_and_nothing_measured_on_one_is_handed_on(
    ground: dict[str, object], tmp_path: Path
) -> None:
    data = handed(**ground)
    files = site(data, tmp_path)
    points = ground.get("area_lat_lon", LINE)
    assert isinstance(points, list)
    for name in (GROUND_GPX, GROUND_KML, GROUND_GEOJSON):
        degrees = [f"{part:.7f}".rstrip("0").encode() for point in points for part in point]
        assert all(part in files[name] for part in degrees)
        (tmp_path / "site" / name).unlink()
    text = every_byte(tmp_path / "site")
    plan = planned(data)
    assert "ground to treat" in text
    assert repr(plan.place("lane").area.value) in text
    measured = {
        one
        for number in numbers_of(plan).values()
        for _, one in flat_inputs(number)
        if isinstance(one, Measured)
    }
    assert measured
    secret = {repr(part) for point in points for part in point}
    secret |= {repr(one.value) for one in measured if one.name != "outline_area_ac"}
    secret |= {one.method.lower() for one in measured} | {"screens.yaml", "planimeter"}
    assert [one for one in sorted(secret) if one in text] == []


def without_the_lie(data: Data) -> Book:
    """A contractor's book of all but where the place lies."""
    view = contractor_plan(data)
    return make_book(replace(view, places=tuple(replace(one, lies=None) for one in view.places)))


def test_a_line_and_the_same_length_typed_look_alike() -> None:
    by_line = handed(width_ft=20, line_lat_lon=LINE)
    area = planned(by_line).place("lane").area
    (length,) = (one for _, one in flat_inputs(area) if isinstance(one, Measured))
    typed = handed(width_ft=20, length_ft=length.value)
    assert without_the_lie(by_line) == without_the_lie(typed)


def test_where_an_outline_lies_changes_nothing_else() -> None:
    here, there = handed(area_lat_lon=outline()), handed(area_lat_lon=outline(moved_east=32))
    assert without_the_lie(here) == without_the_lie(there)
    assert repr(contractor_plan(here)) != repr(contractor_plan(there))


def test_another_size_of_an_outline_is_seen(tmp_path: Path) -> None:
    small, large = handed(area_lat_lon=outline()), handed(area_lat_lon=outline(north=0.001))
    assert site(small, tmp_path / "small") != site(large, tmp_path / "large")


@pytest.mark.parametrize("seed", range(2))
@pytest.mark.parametrize(
    "ground",
    [
        {"length_ft": 700, "width_ft": 20},
        {"width_ft": 20, "line_lat_lon": LINE},
        {"area_lat_lon": outline()},
    ],
    ids=["tape", "line", "outline"],
)
def test_ground_that_does_not_count_changes_no_byte(
    ground: dict[str, object], seed: int, tmp_path: Path
) -> None:
    before, after = handed(**ground), handed(**ground)
    screens = after["screens"]["screens"]
    screens[0] = with_other_acres(screens[0], random.Random(seed))
    assert screens[0] != before["screens"]["screens"][0]
    assert site(before, tmp_path / "before") == site(after, tmp_path / "after")


def contractor_plan(data: Data) -> Plan:
    inventory = inventory_of(data)
    plan = make_plan(inventory, SEASON, AS_OF)
    return seen_by(plan, inventory.readers[0])


def test_what_is_measured_on_points_is_withheld() -> None:
    data = handed(area_lat_lon=outline_of(LAT, EAST, 900, 200), area_ac=9)
    (place,) = contractor_plan(data).places
    assert place.ground is None
    assert place.typed is None
    leaves = [
        one
        for number in walk(place.area)
        for _, one in flat_inputs(number)
        if not isinstance(one, Quantity)
    ]
    assert leaves == [Withheld("outline_area_ac", "ac", "set by the owner")]


def test_the_owner_is_told_that_the_ground_rests_on_points(tmp_path: Path) -> None:
    data = handed(area_lat_lon=outline())
    inventory = load_inventory(write_property(tmp_path / "land", data)).inventory
    assert inventory is not None
    (handed_over,) = make_plan(inventory, SEASON, AS_OF).handed
    assert handed_over.rest_on_hidden
    assert all("outline_area_ac" in hidden for _, hidden in handed_over.rest_on_hidden)
