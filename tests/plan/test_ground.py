"""The ground of a place: which way to it counts, what is compared, what is said; by hand."""

from typing import Any

import pytest
from geographiclib.geodesic import Geodesic

from generator.plan.model.place import Ground
from generator.plan.model.plan import Plan
from generator.plan.views.numbers import explained, numbers_of
from generator.units import convert
from generator.working import Measured, Quantity
from tests.plan.planned import planned
from tests.properties import SEASON, Data, small_property

AREA = f"lane/{SEASON}/ground/area_ac"
SOW = f"lane/{SEASON}/frost_seeding"
AT = (41.0, -93.0)


def strip(length_ft: float, width_ft: float) -> list[list[float]]:
    """An outline of a strip to the north, laid out by an independent implementation."""
    around = Geodesic.WGS84
    along, across = convert(length_ft, "ft", "m"), convert(width_ft, "ft", "m")
    end = around.Direct(*AT, 0, along)
    corners = [around.Direct(*AT, 90, across)]
    corners.append(around.Direct(end["lat2"], end["lon2"], 90, across))
    east = [[one["lat2"], one["lon2"]] for one in corners]
    return [list(AT), [end["lat2"], end["lon2"]], *east[::-1]]


def line(length_ft: float) -> list[list[float]]:
    """A line of three points to the north."""
    there, middle = strip(length_ft, 10)[1], strip(length_ft / 3, 10)[1]
    return [list(AT), middle, there]


def with_ground(**ground: Any) -> Data:
    """The small property, its one place with this and nothing else to work its ground out from."""
    data = small_property()
    screen = data["screens"]["screens"][0]
    del screen["length_ft"], screen["width_ft"]
    screen |= ground
    return data


def ground_of(plan: Plan) -> Ground:
    """How the ground of the one place came about."""
    ground = plan.place("lane").ground
    assert ground is not None
    return ground


def codes(plan: Plan) -> list[str]:
    """The codes on the place, without that of a size out of the usual."""
    return [one.code for one in plan.findings_on("lane") if one.code != "C400"]


TAPE = {"length_ft": 726, "width_ft": 60}  # 43,560 sq ft, an acre
# 732.05 ft by 60 ft and 726 ft by 57 ft: 1.0083 and 0.95 ac
LINE = {"line_lat_lon": line(732.05)}
OUTLINE = {"area_lat_lon": strip(726, 57)}
ACRES = {"area_ac": 0.98}


@pytest.mark.parametrize(
    ("ground", "kinds", "counts_ac"),
    [
        (TAPE, ["tape"], 1),
        (TAPE | LINE | OUTLINE | ACRES, ["tape", "line", "outline", "stated"], 1),
        ({"width_ft": 60} | LINE | OUTLINE | ACRES, ["line", "outline", "stated"], 1.00833),
        ({"width_ft": 60} | OUTLINE | ACRES, ["outline", "stated"], 0.95),
        ({"length_ft": 726} | OUTLINE, ["outline"], 0.95),
        (LINE | OUTLINE, ["outline"], 0.95),
        (LINE | ACRES, ["stated"], 0.98),
        ({"area_sq_ft": 43560}, ["stated"], 1),
        ({"length_yd": 242, "width_in": 720}, ["tape"], 1),
    ],
)
def test_the_first_way_in_the_order_counts(
    ground: dict[str, Any], kinds: list[str], counts_ac: float
) -> None:
    plan = planned(with_ground(**ground))
    ways = ground_of(plan).ways
    assert [one.kind for one in ways] == kinds
    assert ways[0].area is plan.place("lane").area
    assert ways[0].area.identity == AREA
    assert ways[0].area.value == pytest.approx(counts_ac, rel=1e-5)
    assert ways[0].apart is None
    assert ground_of(plan).line_without_width == (
        "width_ft" not in ground and LINE.items() <= ground.items()
    )


def test_others_are_compared_with_what_counts() -> None:
    plan = planned(with_ground(**TAPE, **LINE, **OUTLINE, **ACRES))
    apart = {one.kind: one.apart.value for one in ground_of(plan).ways if one.apart is not None}
    # 732.05 for 726 ft; 57 for 60 ft; 0.98 for 1 ac
    assert apart == pytest.approx({"line": 0.008333, "outline": 0.05, "stated": 0.02}, abs=1e-5)
    assert codes(plan) == []


@pytest.mark.parametrize(
    ("other", "found"),
    [
        # stated acres by a tenth
        ({"area_ac": 1.099}, []),
        ({"area_ac": 1.101}, ["C220"]),
        ({"area_ac": 0.899}, ["C220"]),
        # both ends of the line off by 16 ft, as of a phone: 32 of 690 and 700 ft are 0.046
        ({"line_lat_lon": line(690)}, ["C220"]),
        ({"line_lat_lon": line(700)}, []),
        ({"line_lat_lon": line(700), "got": "surveyed"}, ["C220"]),
        ({"line_lat_lon": line(725), "got": "surveyed"}, []),
        # both sides of the outline off by 5 ft: 10 of 60 ft
        ({"area_lat_lon": strip(726, 48), "outline_error_ft": 5}, ["C220"]),
        ({"area_lat_lon": strip(726, 52), "outline_error_ft": 5}, []),
        # by 16 ft it may be half as wide again, and says nothing against a tape
        ({"area_lat_lon": strip(726, 48)}, []),
        ({"area_lat_lon": strip(726, 48), "outline_error_ft": 5, "area_ac": 2}, ["C220", "C220"]),
    ],
)
def test_ways_farther_apart_than_their_points_are_off_are_a_caution(
    other: dict[str, Any], found: list[str]
) -> None:
    plan = planned(with_ground(**TAPE, **other))
    assert codes(plan) == found
    for one in plan.findings_on("lane"):
        assert "taped width times measured length" in one.words
        assert one.words_for_others == ""
        assert one.place.startswith("screens.yaml:")
        assert one.figures[0][1] is plan.place("lane").area


# Of a width from 100 ft on the outline counts: 726 ft by 120 ft are 2 ac, by 126 ft 2.1 ac.
@pytest.mark.parametrize(("width_ft", "counts"), [(120, "outline"), (100, "outline"), (99, "tape")])
def test_what_is_wide_counts_by_its_outline(width_ft: float, counts: str) -> None:
    outline = {"area_lat_lon": strip(726, width_ft * 1.05), "outline_error_ft": 4}
    plan = planned(with_ground(length_ft=726, width_ft=width_ft, **outline))
    assert ground_of(plan).ways[0].kind == counts
    assert {one.kind for one in ground_of(plan).ways} == {"tape", "outline"}
    share = 1.05 if counts == "outline" else 1
    assert plan.place("lane").area.value == pytest.approx(width_ft * share / 60, rel=1e-5)
    assert codes(plan) == []


def test_apart_is_a_share_of_the_ground_that_counts() -> None:
    plan = planned(with_ground(area_ac=1, area_lat_lon=strip(726, 66), outline_error_ft=3))
    apart = ground_of(plan).ways[1].apart
    assert apart is not None
    # 1.1 ac by the outline, which counts, and 1 typed: less than a tenth of 1.1
    assert apart.value == pytest.approx(0.1 / 1.1, rel=1e-5)
    assert "C220" not in codes(plan)


# Common practice, worked by hand: 5 ft on each side of a strip of 24 by 600 ft, 0.33 ac in truth.
def test_a_narrow_outline_is_a_caution_until_it_is_taped() -> None:
    walked = {"area_lat_lon": strip(600, 24), "outline_error_ft": 5}
    plan = planned(with_ground(**walked, width_ft=24))
    error = ground_of(plan).outline_error
    assert error is not None
    assert plan.place("lane").area.value == pytest.approx(0.33, abs=0.005)
    assert error.share.value == pytest.approx(10 / 24, rel=1e-6)
    assert round(error.least.value, 2) == 0.19
    assert round(error.most.value, 2) == 0.47
    assert codes(plan) == ["C221"]
    assert "Tape the width and measure the length" in plan.findings_on("lane")[0].cure
    cured = planned(with_ground(**walked, width_ft=24, length_ft=600))
    assert codes(cured) == []
    assert ground_of(cured).outline_error is not None


def test_without_a_taped_width_the_mean_width_of_the_outline_stands_in() -> None:
    plan = planned(with_ground(area_lat_lon=strip(600, 24), outline_error_ft=5))
    error = ground_of(plan).outline_error
    assert error is not None
    # 14,400 sq ft over half of 1,248 ft: 23.08 ft; 10 / 23.08 = 0.4333
    assert error.share.value == pytest.approx(10 * 624 / 14400, rel=1e-5)
    assert codes(plan) == ["C221"]


@pytest.mark.parametrize(
    ("width_ft", "typed", "found"),
    [
        (330, {}, []),  # 32 / 330 of the taped width
        (310, {}, ["C221"]),
        (90, {"outline_error_ft": 4}, []),  # 8 / 90
        (110, {"outline_error_m": 2}, ["C221"]),  # 13.1 / 110
    ],
)
def test_the_error_of_each_side_may_be_typed(
    width_ft: float, typed: dict[str, Any], found: list[str]
) -> None:
    outline = strip(900, width_ft)
    plan = planned(with_ground(area_lat_lon=outline, width_ft=width_ft, **typed))
    assert codes(plan) == found


def test_the_usual_error_is_that_of_a_phone_in_the_open() -> None:
    error = ground_of(planned(with_ground(area_lat_lon=strip(600, 24)))).outline_error
    assert error is not None
    usual = dict(error.share.inputs)["outline_error_ft"]
    assert (usual.value, usual.source) == (16, "gps_gov_accuracy")  # type: ignore[union-attr]


def test_no_error_of_an_outline_where_there_is_none() -> None:
    assert ground_of(planned(with_ground(**TAPE, **LINE, **ACRES))).outline_error is None


def measured(plan: Plan, identity: str = AREA) -> Measured:
    """What a number of the ground was measured on."""
    found = [one for _, one in numbers_of(plan)[identity].inputs if isinstance(one, Measured)]
    (one,) = found
    return one


def test_a_measured_number_says_how_on_how_many_points_and_where() -> None:
    closed = [*strip(726, 57), strip(726, 57)[0]]
    plan = planned(with_ground(area_lat_lon=closed))
    area = measured(plan)
    assert (area.points, area.unit, area.file) == (4, "ac", "screens.yaml")
    assert area.line > 1
    assert area.visible == "place"
    told = "\n".join(explained(plan.place("lane").area))
    assert "outline_area_ac = " in told
    assert f"4 points in screens.yaml:{area.line} [geodesic_planimeter]" in told


def test_the_same_outline_closed_or_open_and_with_repeats_has_the_same_ground() -> None:
    corners = strip(726, 57)
    shapes = (corners, [*corners, corners[0]], [corners[0], *corners], corners[::-1])
    areas = [planned(with_ground(area_lat_lon=one)).place("lane").area.value for one in shapes]
    assert areas == pytest.approx([areas[0]] * 4, rel=1e-9)


def test_a_line_counts_with_the_taped_width() -> None:
    plan = planned(with_ground(width_ft=60, line_lat_lon=line(726)))
    assert measured(plan).value == pytest.approx(726, rel=1e-6)
    assert plan.place("lane").area.value == pytest.approx(1, rel=1e-6)
    assert plan.place("lane").area.formula.text == "length_ft * width_ft / 43560"


def test_every_number_of_the_ground_is_among_the_plan_s() -> None:
    plan = planned(with_ground(**TAPE, **LINE, **OUTLINE, **ACRES))
    ids = {one.rsplit("/", 1)[1] for one in numbers_of(plan) if "/ground/" in one}
    # the length is told to who works there, so it is a number of the plan
    assert ids == {
        "area_ac",
        "length_ft",
        *(f"{way}_area_ac" for way in ("line", "outline", "stated")),
        *(f"{way}_apart_fraction" for way in ("line", "outline", "stated")),
        "line_error_fraction",
        "outline_error_fraction",
        "outline_least_ac",
        "outline_most_ac",
    }
    assert all(isinstance(one, Quantity) for one in numbers_of(plan).values())


def with_spreader(**ground: Any) -> Data:
    """The place with a sowing over which a spreader with a catch test goes."""
    data = with_ground(**ground)
    test = {"tested_on": "2026-08-16", "lot": "sg", "setting": "third", "caught_lb": 0.2,
            "swath_ft": 12, "distance_ft": 100}  # fmt: skip
    data["equipment"]["spreaders"] = [
        {"id": "crank", "name": "Crank", "hopper_lb": 3, "catch_tests": [test]}
    ]
    data["screens"]["screens"][0]["plantings"][0]["work"].append(
        {"step": "frost_seeding", "spreader": "crank"}
    )
    return data


def test_without_a_width_lanes_are_left_out_and_a_note_says_so() -> None:
    plan = planned(with_spreader(**OUTLINE))
    job = next(one for one in plan.jobs if one.id == SOW)
    assert "lanes_count" not in job.numbers
    assert "passes_count" not in job.numbers
    assert job.numbers["bulk_seed_lb"].value > 0
    (note,) = (one for one in plan.findings_on(SOW) if one.code == "N310")
    assert "width_ft" in note.to_type
    assert "not worked out" in note.words_for_others


def test_with_a_width_there_are_lanes_and_no_note() -> None:
    plan = planned(with_spreader(**OUTLINE, width_ft=57))
    job = next(one for one in plan.jobs if one.id == SOW)
    assert job.numbers["lanes_count"].value == 5  # 57 ft in swaths of 12
    assert "N310" not in [one.code for one in plan.findings]
