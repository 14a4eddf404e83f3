"""Lists of points: what an owner may type, and every fault at the point that has it."""

from pathlib import Path

import pytest

from generator.inventory.load import Loaded, load_inventory

PROPERTY = "format: 1\nname: Bend\nseason: 2027\n"
SCREEN = "screens:\n  - id: lane\n    name: Lane\n    width_ft: 24\n"


def loaded(folder: Path, line: str) -> Loaded:
    """A property with one screen that has a line more."""
    (folder / "property.yaml").write_text(PROPERTY, encoding="utf-8")
    (folder / "screens.yaml").write_text(f"{SCREEN}{line}\n", encoding="utf-8")
    return load_inventory(folder)


def test_points_keep_their_order_and_places(tmp_path: Path) -> None:
    typed = "    line_lat_lon:\n      - [41.02, -93.10]\n      - [41, -93]\n      - [41.03, -93.1]"
    inventory = loaded(tmp_path, typed).inventory
    assert inventory is not None
    points = inventory.screens[0].line_lat_lon
    assert points is not None
    assert points.lat_lon == ((41.02, -93.10), (41.0, -93.0), (41.03, -93.1))
    assert [(one.line, one.column) for one in points.each] == [(6, 9), (7, 9), (8, 9)]
    assert (points.where.file, points.where.line) == ("screens.yaml", 6)


@pytest.mark.parametrize(
    ("typed", "faults"),
    [
        # one point, or numbers in a row, instead of a list of points
        ("[41.02, -93.10]", ["5:19 F203"]),
        ("[41.02, -93.10, 41.03, -93.10]", ["5:19 F203"]),
        ("41.02", ["5:19 F203"]),
        ("[]", ["5:19 F203"]),
        ("{lat: 41.02, lon: -93.10}", ["5:19 F203"]),
        # every point that is wrong, in one run, and both of its numbers
        ("[[41.02, -93.10], [41.02], [41.02, 193.1], [91, -181], 5]",
         ["5:37 F203", "5:54 F204", "5:63 F204", "5:67 F204", "5:74 F203"]),
        ("[[41.02, west], [true, -93.1]]", ["5:28 F203", "5:36 F203"]),
    ],
)  # fmt: skip
def test_every_point_that_is_wrong_is_named_at_its_place(
    typed: str, faults: list[str], tmp_path: Path
) -> None:
    found = loaded(tmp_path, f"    line_lat_lon: {typed}").problems
    assert [f"{one.line}:{one.column} {one.code}" for one in found] == faults
    assert all(
        "[41.02, -93.10]" in one.accepted or one.accepted in ("-90 to 90", "-180 to 180")
        for one in found
    )


def test_a_longitude_that_stands_first_is_put_last(tmp_path: Path) -> None:
    found = loaded(tmp_path, "    line_lat_lon: [[-93.10, 41.02], [-93.15, 41.03]]").problems
    assert [f"{one.line}:{one.column} {one.code} {one.accepted}" for one in found] == [
        "5:21 F204 [41.02, -93.1]: latitude first, then longitude",
        "5:38 F204 [41.03, -93.15]: latitude first, then longitude",
    ]


@pytest.mark.parametrize(
    ("key", "cure"),
    [
        ("area_latlon", "did you mean area_lat_lon?"),
        ("area_lat_long", "did you mean area_lat_lon?"),
        ("line_latlon", "did you mean line_lat_lon?"),
        ("area_acres", "area_ac, area_sq_ft, area_ha or area_sq_m"),
        ("area", "area_ac, area_sq_ft, area_ha or area_sq_m"),
        ("width_feet", "width_ft"),
    ],
)
def test_a_mistyped_key_of_the_ground_has_its_cure(key: str, cure: str, tmp_path: Path) -> None:
    (fault,) = loaded(tmp_path, f"    {key}: 3").problems
    assert f'"{key}"' in fault.what
    assert fault.accepted.startswith(cure)


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("    area_lat_lon: [[41, -93], [41, -92.999], [41.001, -93]]", ""),
        ("    area_ha: 0.4", ""),
        ("    length_yd: 200", ""),
        ("    line_lat_lon: [[41, -93], [41.01, -93]]", ""),
        ("    area_lat_lon: [[41, -93], [41, -92.999], [41, -93]]", "F316"),
        ("    area_ac: 0", "F204"),
        ("    outline_error_ft: 3", "F315"),
        ("    note: nothing measured yet", "F315"),
    ],
)
def test_each_way_to_the_ground_is_enough(line: str, code: str, tmp_path: Path) -> None:
    assert [one.code for one in loaded(tmp_path, line).problems] == ([code] if code else [])


# A shape of so many points, and where they lie: what is far from most is what is named.
@pytest.mark.parametrize(
    ("far", "named"),
    [((3,), [3]), ((2, 4), [2, 4]), ((0,), [0]), ((), [])],
)
def test_points_far_from_the_others_are_named(
    far: tuple[int, ...], named: list[int], tmp_path: Path
) -> None:
    points = [[41 + n / 1000 + (1 if n in far else 0), -93 + n * n / 9000] for n in range(6)]
    found = loaded(tmp_path, f"    line_lat_lon: {points}").problems
    assert [one.code for one in found] == ["F318"] * len(named)
    words = [f"point {number + 1} of line_lat_lon lies" for number in named]
    assert all(one.what.startswith(told) for one, told in zip(found, words, strict=True))


def test_points_that_are_far_apart_though_each_is_near_the_first_are_named(tmp_path: Path) -> None:
    """15 miles to the north and 15 to the south of the first: 30 between them."""
    points = [[41.0, -93.0], [41.2172, -93.0], [40.7828, -93.0]]
    (fault,) = loaded(tmp_path, f"    line_lat_lon: {points}").problems
    assert (fault.code, fault.what) == (
        "F318",
        "point 3 of line_lat_lon lies 30 miles from point 2",
    )
