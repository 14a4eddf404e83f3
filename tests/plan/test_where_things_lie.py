"""Where things lie is told where it cannot be meant or may hurt, and no more once it is mended.

Distances are laid out by another library, in feet from one corner of the invented ground.
"""

from typing import Any

import pytest
from geographiclib.geodesic import Geodesic

from generator.plan.model.finding import Finding
from generator.plan.model.plan import Plan
from tests.plan.planned import planned
from tests.properties import SEASON, Data, full_card, full_use, small_property

CORNER = (41.03, -93.02)
TYPED_FT = 0.04  # seven decimals of a degree of latitude
Spot = tuple[float, float]
MOW = f"lane/{SEASON}/first_summer_mowing"


def at(east_ft: float, north_ft: float) -> list[float]:
    """A point so many feet east and north of the corner, by another library."""
    earth = Geodesic.WGS84
    east = earth.Direct(*CORNER, 90, east_ft * 0.3048)
    north = earth.Direct(east["lat2"], east["lon2"], 0, north_ft * 0.3048)
    return [round(north["lat2"], 7), round(north["lon2"], 7)]


def line(*spots: Spot) -> list[list[float]]:
    return [at(*spot) for spot in spots]


def square(east: float, north: float, side: float) -> list[list[float]]:
    far_east, far_north = east + side, north + side
    return line((east, north), (far_east, north), (far_east, far_north), (east, far_north))


def land(kind: str, **more: Any) -> Data:
    return {"id": f"the-{kind.replace('_', '-')}", "kind": kind, "name": f"The {kind}"} | more


def ground(*things: Data, place: Data | None = None, walk: Any = None, use: Any = None) -> Data:
    """The one strip of 726 by 60 ft, its line north from the corner, and what lies around it."""
    data = small_property(full_card(full_use(), **(use or {})))
    screen = data["screens"]["screens"][0]
    data["property"] |= {"location_lat_lon": list(CORNER)}
    screen |= {"line_lat_lon": line((0, 0), (0, 726)), "got": "surveyed"} | (place or {})
    if things:
        data["land"] = {"land": [dict(thing) for thing in things]}
    if walk is not None:
        route = {"id": "way", "name": "The way", "line_lat_lon": walk, "got": "surveyed"}
        data["routes"] = {"routes": [route]}
    return data


def told(data: Data, code: str, season: int = SEASON) -> list[Finding]:
    """What a code says, of jobs those of a season."""
    found = [one for one in planned(data).findings if one.code == code]
    return [one for one in found if one.subject.kind != "job" or f"/{season}/" in one.subject]


def figures(found: Finding) -> list[float]:
    return [figure.value for _, figure in found.figures]  # type: ignore[union-attr]


BOUND = land("boundary", area_lat_lon=square(-100, -100, 1000), got="surveyed")


def test_a_place_past_the_boundary() -> None:
    # its strip reaches 30 ft to the west of the line, 15 ft past a side 15 ft off it
    near = land("boundary", area_lat_lon=square(-15, -100, 1000), got="surveyed")
    (found,) = told(ground(near), "C523")
    assert found.subject == "lane"
    assert figures(found) == pytest.approx([15, 1], abs=TYPED_FT)
    assert told(ground(BOUND), "C523") == []
    # by no more than a boundary drawn on a picture may be off
    assert told(ground(near | {"got": "drawn"}), "C523") == []
    # ground past it that is leased
    leased = land("boundary", area_lat_lon=square(-200, -100, 190), got="surveyed")
    leased |= {"id": "leased", "area_lat_lon": square(-1000, -100, 990)}
    assert told(ground(near, leased), "C523") == []
    assert told(ground(), "C523") == []
    # what lies around the ground is no ground of it
    road = land("road", line_lat_lon=line((-300, -300), (-300, 900)), got="surveyed")
    assert told(ground(BOUND, road), "C523") == []


def test_a_place_in_water() -> None:
    pond = land("pond", at_lat_lon=at(60, 300), radius_ft=50, got="surveyed")
    (found,) = told(ground(pond), "C524")
    # the strip reaches 30 ft to the east, the pond from 10 ft on
    assert figures(found) == pytest.approx([20, 1], abs=0.1)
    assert "The pond" in found.words
    assert told(ground(pond | {"radius_ft": 30}), "C524") == []
    creek = land("creek", line_lat_lon=line((-90, 300), (90, 310)), got="phone")
    assert len(told(ground(creek), "C524")) == 1
    assert len(told(ground(creek | {"width_ft": 6}), "C524")) == 1
    beside = line((90, 0), (80, 700))
    assert told(ground(creek | {"line_lat_lon": beside}), "C524") == []
    # wet ground is none to keep out of
    wet = land("wet_ground", area_lat_lon=square(-20, 100, 60))
    assert told(ground(wet), "C524") == []


WALK = line((200, 0), (200, 500))


@pytest.mark.parametrize(
    ("code", "across", "opening"),
    [("C525", "creek", "crossing"), ("C525", "creek", "culvert"), ("C526", "fence", "gate")],
)
def test_a_walk_through_water_or_across_a_fence(code: str, across: str, opening: str) -> None:
    barrier = land(across, line_lat_lon=line((100, 300), (300, 300)), got="surveyed")
    (found,) = told(ground(barrier, walk=WALK), code)
    assert found.subject.kind == "route"
    assert figures(found) == pytest.approx([300], abs=0.1)
    way = land(opening, at_lat_lon=at(201, 301), got="surveyed")
    assert told(ground(barrier, way, walk=WALK), code) == []
    # 20 ft off, and both surveyed
    aside = way | {"at_lat_lon": at(220, 300)}
    assert len(told(ground(barrier, aside, walk=WALK), code)) == 1
    assert told(ground(barrier, aside | {"got": "drawn"}, walk=WALK), code) == []
    past = barrier | {"line_lat_lon": line((100, 600), (300, 600))}
    assert told(ground(past, walk=WALK), code) == []


def test_a_walk_past_the_boundary() -> None:
    (found,) = told(ground(BOUND, walk=line((200, 0), (200, 950))), "C523")
    assert found.subject.kind == "route"
    assert figures(found) == pytest.approx([50, 1], abs=TYPED_FT)


KEPT = {
    "mixing_setbacks_ft": [
        {"keep_from": "wells", "distance_ft": 50, "kind": "well", "counts_from": "as_printed"}
    ]
}


@pytest.mark.parametrize(
    ("east_ft", "code"),
    [(40, "S520"), (49.9, "S520"), (50.1, "C527"), (51.9, "C527"), (52.1, "")],
)
def test_a_place_to_mix_keeps_off_what_the_label_says(east_ft: float, code: str) -> None:
    well = land("well", at_lat_lon=at(400, 100), got="surveyed")
    mixing = land("mixing_place", at_lat_lon=at(400 + east_ft, 100), got="surveyed")
    plan: Plan = planned(ground(well, mixing, use=KEPT))
    found = [one for one in plan.findings if one.code in ("S520", "C527")]
    assert [one.code for one in found] == ([code] if code else [])
    for one in found:
        assert one.subject == "the-mixing-place"
        assert figures(one) == pytest.approx([east_ft, 50, 1, 1], abs=TYPED_FT)
        assert "Made-up product brew" in one.words
        assert one.words_for_others


@pytest.mark.parametrize("has_middle", [True, False])
def test_what_each_of_the_two_may_be_off(has_middle: bool) -> None:
    well = land("well", at_lat_lon=at(400, 100), got="surveyed")
    data = ground(well, land("mixing_place", at_lat_lon=at(440, 100)), use=KEPT)
    if not has_middle:
        del data["property"]["location_lat_lon"]
    (one,) = (one for one in planned(data).findings if one.code == "S520")
    # of the place to mix first, which a phone may have, then of the well
    assert figures(one) == pytest.approx([40, 50, 16, 1], abs=TYPED_FT)


def mixed(*things: Data, all_drawn: tuple[str, ...] = (), **kept: Any) -> list[str]:
    """What is said of a place to mix at 400 by 100 ft, among things, by one line of a label."""
    mixing = land("mixing_place", at_lat_lon=at(400, 100), got="surveyed")
    setback = {"keep_from": "wells", "distance_ft": 50} | kept
    data = ground(mixing, *things, use={"mixing_setbacks_ft": [setback]})
    data["property"]["all_drawn"] = list(all_drawn)
    return [one.code for one in planned(data).findings if one.subject == "the-mixing-place"]


def test_a_place_to_mix_where_a_label_names_no_kind_or_another_edge() -> None:
    well = land("well", at_lat_lon=at(440, 100), got="surveyed")
    # by its words, as a distance of the spray counts
    assert mixed(well, all_drawn=("well",)) == ["S520"]
    assert mixed(well, all_drawn=("well",), keep_from="bodies of water") == ["C532"]
    # the label counts from the bank, and the water's edge was drawn: 53 ft off, and the bank nearer
    side = {"area_lat_lon": square(453, 0, 300), "got": "surveyed"}
    bank = {"keep_from": "ponds", "counts_from": "bank"}
    pond = land("pond", counts_from="waters_edge", **side)
    assert mixed(pond, all_drawn=("open_water",), **bank) == ["C527"]
    assert mixed(land("pond", counts_from="bank", **side), all_drawn=("open_water",), **bank) == []
    far = land("pond", counts_from="waters_edge", area_lat_lon=square(503, 0, 300), got="surveyed")
    assert mixed(far, all_drawn=("open_water",), **bank) == []


def test_a_place_to_mix_where_nobody_says_that_all_is_drawn() -> None:
    assert mixed() == ["C532"]
    assert mixed(all_drawn=("well",)) == []
    # one far off tells of no second
    well = land("well", at_lat_lon=at(600, 100), got="surveyed")
    assert mixed(well) == ["C532"]
    assert mixed(well, all_drawn=("well",)) == []
    # what a label means by words of its own no list of kinds holds
    assert mixed(all_drawn=("well",), keep_from="pear trees", kind="other") == ["C532"]


def test_a_place_to_mix_beside_dug_water() -> None:
    kept = {"keep_from": "open water", "distance_ft": 50}
    hole = {"id": "hole", "name": "Dug hole", "shape": "round", "top_ft": 20, "bottom_ft": 4,
            "depth_ft": 3}  # fmt: skip
    mixing = land("mixing_place", at_lat_lon=at(400, 100), got="surveyed")

    def told(**lies: Any) -> list[str]:
        data = ground(mixing, use={"mixing_setbacks_ft": [kept]})
        data["property"]["all_drawn"] = ["open_water"]
        data["ground"] = {"water_holes": [hole | lies]}
        return [one.code for one in planned(data).findings if one.subject == "the-mixing-place"]

    # its edge 10 ft nearer than its middle
    assert told(at_lat_lon=at(459, 100)) == ["S520"]
    assert told(at_lat_lon=at(500, 100)) == []
    assert told() == ["C532"]


def tilled(*things: Data, operation: str = "till") -> Data:
    """The strip, ground on which a step of the owner's own does one thing."""
    data = ground(*things)
    (planting,) = data["screens"]["screens"][0]["plantings"]
    planting |= {"season": SEASON - 4, "upkeep": "lane_upkeep"}
    till = {
        "step": "open_a_strip",
        "name": "Till a strip",
        "operation": operation,
        "timing": "established_growing",
        "why": "So that fire does not cross.",
        "opens": [{"date": "07-01"}],
        "closes": [{"date": "07-31"}],
        "if_missed": "Leave it.",
    }
    own = {"id": "lane_upkeep", "name": "Lane", "based_on": "established_screen_upkeep"}
    data["steps"] = {"step_plans": [own | {"steps": [till]}]}
    return data


def wire_below(east_ft: float) -> Data:
    return land("line_below", line_lat_lon=line((east_ft, 0), (east_ft, 700)), got="surveyed")


def test_a_buried_line_where_ground_is_opened() -> None:
    # the strip reaches 30 ft to each side, 2 ft beside a mark are dug by hand, both may be 1 ft off
    (found,) = told(tilled(wire_below(33.9)), "C533")
    assert found.subject == f"lane/{SEASON}/open_a_strip"
    assert figures(found) == pytest.approx([3.9, 2], abs=TYPED_FT)
    assert told(tilled(wire_below(34.1)), "C533") == []
    # work that opens no ground meets no buried line
    assert told(ground(wire_below(0)), "C533") == []


def test_a_buried_line_where_a_water_hole_is_dug() -> None:
    hole = {"id": "hole", "name": "Dug hole", "shape": "round", "top_ft": 20, "bottom_ft": 4,
            "depth_ft": 3, "at_lat_lon": at(400, 100), "upkeep": "water_hole_upkeep",
            "asked_for": ["water_digging"]}  # fmt: skip

    def dug(east_ft: float) -> list[str]:
        data = ground(wire_below(east_ft))
        data["ground"] = {"water_holes": [hole]}
        return [str(one.subject) for one in planned(data).findings if one.code == "C533"]

    # it reaches 10 ft from its point, got with a phone: 16 ft off, and the line by 1
    assert dug(428.9) == ["hole"]
    assert dug(429.1) == []


def walked(*things: Data) -> list[Finding]:
    """What lies near a stand at 400 by 100 ft, and near a walk to it from the south."""
    data = ground(*things, walk=line((400, -500), (400, 100)))
    stand = {"id": "oak", "name": "The oak", "at_lat_lon": at(400, 100), "got": "surveyed"}
    data["stands"] = {"stands": [stand]}
    return [one for one in planned(data).findings if one.code in ("C534", "C535")]


def test_a_line_above_ground_by_a_stand() -> None:
    def wire(east_ft: float) -> Data:
        return land("line_above", line_lat_lon=line((east_ft, 0), (east_ft, 300)), got="surveyed")

    # 30 ft, and both may be 1 ft off
    (found,) = walked(wire(431.9))
    assert (found.code, found.subject) == ("C534", "oak")
    assert figures(found) == pytest.approx([31.9, 30], abs=TYPED_FT)
    assert found.words_for_others
    assert walked(wire(432.1)) == []


@pytest.mark.parametrize("kind", ["well", "sinkhole"])
def test_a_hole_by_a_walk(kind: str) -> None:
    (found,) = walked(land(kind, at_lat_lon=at(411.9, -200), got="surveyed"))
    assert (found.code, found.subject) == ("C535", "way")
    assert figures(found) == pytest.approx([11.9, 10], abs=TYPED_FT)
    assert walked(land(kind, at_lat_lon=at(412.1, -200), got="surveyed")) == []
    # past its end too
    assert walked(land(kind, at_lat_lon=at(400, -511.9), got="surveyed")) != []


def test_what_a_cutter_throws_and_lines_above() -> None:
    house = land("dwelling", at_lat_lon=at(250, 100), got="surveyed")
    (found,) = told(ground(house), "C529")
    assert found.subject == MOW
    # 250 less the 30 ft of the strip
    assert figures(found) == pytest.approx([220, 300], abs=0.1)
    assert found.words_for_others
    assert told(ground(house | {"at_lat_lon": at(340, 100)}), "C529") == []
    # 302 ft by points of which both may be off by 1 ft
    assert len(told(ground(house | {"at_lat_lon": at(331.9, 100)}), "C529")) == 1
    # a phone puts the house 16 ft off
    by_phone = land("dwelling", at_lat_lon=at(346.9, 100))
    assert len(told(ground(by_phone), "C529")) == 1
    assert told(ground(by_phone | {"at_lat_lon": at(347.1, 100)}), "C529") == []
    # a roller throws nothing, though it is drawn by a machine too
    assert len(told(tilled(house, operation="mow"), "C529")) == 1
    assert told(tilled(house, operation="roll"), "C529") == []


def test_lines_above_work_on_a_place_and_machine_work_elsewhere() -> None:
    wire = land("line_above", line_lat_lon=line((-90, 300), (90, 300)), got="surveyed")
    (above,) = told(ground(wire), "C530")
    assert above.subject == "lane"
    assert figures(above) == [0, 10]
    assert told(ground(wire | {"line_lat_lon": line((43, 0), (43, 300))}), "C530") == []
    # by hand too: a ladder, a wand or a pole reaches up there
    assert len(told(tilled(wire, operation="look"), "C530")) == 1
    hole = {"id": "hole", "name": "Dug hole", "shape": "round", "top_ft": 20, "bottom_ft": 4,
            "depth_ft": 3, "at_lat_lon": at(400, 100), "upkeep": "water_hole_upkeep"}  # fmt: skip
    above_it = land("line_above", line_lat_lon=line((300, 100), (500, 100)), got="surveyed")
    for asked_for, is_told in (([], False), (["water_digging"], True)):
        data = ground(above_it)
        data["ground"] = {"water_holes": [hole | {"asked_for": asked_for}]}
        assert [one.subject == "hole" for one in told(data, "C530")] == [True] * is_told


def burned(*things: Data) -> Data:
    data = ground(*things)
    (planting,) = data["screens"]["screens"][0]["plantings"]
    planting |= {"season": SEASON - 4, "upkeep": "established_screen_upkeep"}
    planting["work"] = [{"step": "upkeep_burning", "treated_sq_ft": 9000, "part": "north"}]
    return data


def test_a_burn_near_what_fire_must_be_kept_from() -> None:
    woods = land("woods", area_lat_lon=square(100, 0, 300), got="surveyed")
    wire = land("line_above", line_lat_lon=line((-90, 1100), (90, 1100)), got="surveyed")
    (found,) = told(burned(woods, wire), "C528")
    assert found.subject == f"lane/{SEASON}/upkeep_burning"
    assert "The woods" in found.words
    assert "The line_above" not in found.words
    for east_ft, is_told in ((331.9, True), (332.1, False)):
        # 30 ft of the strip, and 2 ft that both may be off
        away = woods | {"area_lat_lon": square(east_ft, 0, 300)}
        assert bool(told(burned(away), "C528")) == is_told
    # no burn is planned
    assert told(ground(woods), "C528") == []


@pytest.mark.parametrize(
    ("spots", "is_told"),
    [
        (((0, 0), (0, 400), (300, 700)), False),
        (((0, 0), (0, 400), (40, 30)), True),
        (((0, 0), (0, 400), (20, 400), (20, 0)), True),
    ],
)
def test_a_line_that_comes_back_onto_its_strip(spots: tuple[Spot, ...], is_told: bool) -> None:
    found = told(ground(place={"line_lat_lon": line(*spots)}), "C522")
    assert bool(found) == is_told
    for one in found:
        share, most = figures(one)
        assert share > 0.01
        assert most == 1


def test_two_stretches_20_ft_apart_count_a_third_of_a_strip_twice() -> None:
    spots = ((0, 0), (0, 400), (20, 400), (20, 0))
    (found,) = told(ground(place={"line_lat_lon": line(*spots)}), "C522")
    # 820 ft by 60 ft; the strip holds 80 ft by 430 ft: 1 - 34,400 / 49,200 = 0.301
    assert figures(found)[0] == pytest.approx(0.301, abs=0.001)


@pytest.mark.parametrize(
    ("falls_to", "east_ft", "is_told"),
    [
        ("E", 200, True),
        ("NE", 200, True),
        ("W", 200, False),
        ("N", 200, False),  # along the strip, and the well lies beside it
        ("E", -200, False),
        (None, 200, False),
        # 330 ft by points of which both may be off by 1 ft, 30 ft of them the strip's
        ("E", 331.9, True),
        ("E", 332.1, False),
        ("W", 5, True),  # on the place: whichever way it falls
    ],
)
def test_what_washes_off_toward_water(falls_to: str | None, east_ft: float, is_told: bool) -> None:
    well = land("well", at_lat_lon=at(east_ft, 300), got="surveyed")
    data = ground(well)
    near = data["screens"]["screens"][0].setdefault("near", {})
    if falls_to is not None:
        near["falls_to"] = falls_to
    found = [one for one in told(data, "C531") if one.subject.endswith("autumn_kill")]
    assert bool(found) == is_told
    for one in found:
        assert "The well" in one.words
        assert one.words_for_others
        assert "well" in one.words_for_others
    # nothing washes off where nothing is put down
    assert MOW not in {one.subject for one in told(data, "C531")}


def test_a_house_is_no_water() -> None:
    house = land("dwelling", at_lat_lon=at(200, 300), got="surveyed")
    data = ground(house)
    data["screens"]["screens"][0].setdefault("near", {})["falls_to"] = "E"
    assert told(data, "C531") == []
