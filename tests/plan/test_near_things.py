"""What dangerous lies near the place of a job stands on its sheet, with how far off it is."""

import math

import pytest
from pyproj import Geod

from generator.plan.jobs.near_lines import STANDS_BESIDE
from generator.plan.land.near import near_places
from generator.plan.model.finding import SafetyLine
from generator.plan.model.plan import Plan
from generator.reference.land_kinds import land_kinds
from tests.plan.planned import BURN_DOWN, KILL, inventory_of, job_of, planned
from tests.properties import Data, full_card, full_use, small_property

# Geodesics by the library's own implementation: a way of its own beside the plane.
GEOD = Geod(ellps="WGS84")
LAT, LON = 41.0270137, -93.0204211
FT = 0.3048
WIDTH_FT = 30


def moved(lat: float, lon: float, toward_deg: float, distance_ft: float) -> list[float]:
    """The point so many feet from another."""
    east, north, _ = GEOD.fwd(lon, lat, toward_deg, distance_ft * FT)
    return [north, east]


END = moved(LAT, LON, 0, 400)


def with_things(*things: Data, data: Data | None = None) -> Data:
    """The small property with these things, its one place a strip of 400 by 30 feet."""
    data = data or small_property()
    screen = data["screens"]["screens"][0]
    del screen["length_ft"]
    screen |= {"width_ft": WIDTH_FT, "line_lat_lon": [[LAT, LON], END]}
    data["land"] = {
        "land": [{"id": f"t-{n}", "name": f"T {n}"} | one for n, one in enumerate(things)]
    }
    return data


def east(kind: str, from_edge_ft: float, **more: object) -> Data:
    """A thing at a point beside the middle of the strip, so far east of its edge."""
    middle = moved(LAT, LON, 0, 200)
    return {"kind": kind, "at_lat_lon": moved(*middle, 90, from_edge_ft + WIDTH_FT / 2)} | more


def lines_of(plan: Plan, job_id: str = KILL) -> list[SafetyLine]:
    """The lines on what lies near."""
    return [line for line in job_of(plan, job_id).safety if "_there." in line.key]


def told(plan: Plan, job_id: str = KILL) -> list[tuple[str, str | None, float | None]]:
    return [
        (line.label, line.text, getattr(line.figure, "value", None))
        for line in lines_of(plan, job_id)
    ]


def test_a_thing_is_named_with_its_feet_from_the_edge() -> None:
    creek = {"kind": "creek", "known_as": "The creek", "width_ft": 8,
             "line_lat_lon": [moved(*moved(LAT, LON, 0, far), 270, 15 + 50 + 4)
                              for far in (-50, 450)]}  # fmt: skip
    plan = planned(with_things(east("well", 120), creek, wires(60)))
    assert told(plan) == [
        ("Water, wells, tile inlets", "The creek", 50),
        ("Water, wells, tile inlets", "Well", 120),
        ("Lines above and below ground", "Line above ground", 60),
    ]
    assert {line.after for line in lines_of(plan)} == {"from the edge"}


def wires(from_edge_ft: float) -> Data:
    """A line above ground along the strip."""
    ends = (moved(*moved(LAT, LON, 0, far), 90, from_edge_ft + WIDTH_FT / 2) for far in (0, 400))
    return {"kind": "line_above", "line_lat_lon": list(ends)}


@pytest.mark.parametrize("toward_deg", [3, 37, 90, 251])
@pytest.mark.parametrize("distance_ft", [20, 149, 299])
def test_feet_are_those_of_geodesics(toward_deg: float, distance_ft: float) -> None:
    """From a round pond to a speck of ground: the way to its middle less its radius."""
    pond = {"id": "p", "name": "P", "kind": "pond", "radius_ft": 60.0}
    data = with_things(pond | {"at_lat_lon": moved(LAT, LON, toward_deg, distance_ft + 60)})
    screen = data["screens"]["screens"][0]
    # a strip of a foot and a half by a foot
    screen |= {"width_ft": 1, "line_lat_lon": [[LAT, LON], moved(LAT, LON, toward_deg, 1.5)]}
    inventory = inventory_of(data)
    (near,) = near_places(inventory.places(), inventory.land, 300)["lane"]
    assert math.isclose(near.apart.value, distance_ft, abs_tol=2)


def test_what_lies_on_the_ground_of_the_place_says_so() -> None:
    plan = planned(with_things(east("tile_inlet", -5, known_as="Low inlet")))
    ((label, text, figure),) = told(plan)
    assert (label, figure) == ("Water, wells, tile inlets", None)
    assert text == "Low inlet, on this ground or at its edge"


def test_what_lies_farther_than_the_book_looks_is_not_named() -> None:
    assert told(planned(with_things(east("well", 298)))) != []
    assert told(planned(with_things(east("well", 303)))) == []


@pytest.mark.parametrize(
    ("keeps", "kind", "is_told"),
    [
        ({"kind": "well"}, "well", True),
        ({"kind": "well"}, "pond", False),
        ({"kind": "open_water"}, "pond", True),
        ({"kind": "other"}, "pond", True),
        ({}, "bees", True),
    ],
)
def test_a_label_that_keeps_more_makes_the_sheet_look_farther(
    keeps: Data, kind: str, is_told: bool
) -> None:
    use = full_use(setbacks_ft=[{"keep_from": "what it is", "distance_ft": 500} | keeps])
    thing = east(kind, 480) | ({"radius_ft": 5} if kind == "pond" else {})
    burn = full_use("after_sowing_before_emergence")
    plan = planned(with_things(thing, data=small_property(full_card(use, burn))))
    assert bool(told(plan)) == is_told
    # by another use on the same card nothing farther off is kept from
    assert told(plan, BURN_DOWN) == []


def test_a_mixing_distance_counts_as_well() -> None:
    card = full_card(
        full_use(), mixing_setbacks_ft=[{"keep_from": "wells", "distance_ft": 400, "kind": "well"}]
    )
    plan = planned(with_things(east("well", 390), data=small_property(card)))
    assert len(told(plan)) == 1


def test_nothing_that_was_typed_is_lost() -> None:
    data = with_things(east("well", 50), east("bees", 70))
    data["screens"]["screens"][0]["near"] = {"water_and_wells": "a spring in the bank"}
    before = {line.key: line for line in job_of(planned(small_property())).safety}
    safety = job_of(planned(data)).safety
    keys = [line.key for line in safety]
    assert set(before) < set(keys)
    assert keys.index("near.water_and_wells_there.1") + 1 == keys.index("near.water_and_wells")
    (typed,) = (line for line in safety if line.key == "near.water_and_wells")
    assert typed.text == "a spring in the bank"
    # what nobody typed stays a blank, whatever else is known to lie there
    (blank,) = (line for line in safety if line.key == "near.neighbours")
    assert blank.text is None


def test_what_is_harmless_or_private_is_never_named() -> None:
    kinds = land_kinds()
    harmless = [name for name, kind in kinds.items() if not kind.danger and "point" in kind.drawn]
    assert {"bedding", "feeding", "gate", "building"} <= set(harmless)
    assert told(planned(with_things(*(east(kind, 20) for kind in harmless)))) == []


def test_every_dangerous_kind_stands_beside_a_typed_line_and_none_is_private() -> None:
    dangers = {name for name, kind in land_kinds().items() if kind.danger}
    assert dangers == set(STANDS_BESIDE)
    assert not any(land_kinds()[name].private for name in dangers)


def test_of_a_place_without_points_nothing_is_said() -> None:
    data = with_things(east("well", 50))
    screen = data["screens"]["screens"][0]
    del screen["line_lat_lon"]
    screen["length_ft"] = 400
    assert told(planned(data)) == []
    assert job_of(planned(data)).near == ()


def test_a_stopped_job_names_them_too() -> None:
    data = with_things(east("well", 50))
    del data["products"]["products"][0]["label"]
    plan = planned(data)
    assert job_of(plan).mix is None
    assert [text for _, text, _ in told(plan)] == ["Well"]


def none_typed(words: str | None, *things: Data, line: str = "water_and_wells") -> list[str]:
    """What is said of a place whose typed words say that nothing is near."""
    data = with_things(*things)
    if words is not None:
        data["screens"]["screens"][0]["near"] = {line: words}
    return [one.words for one in planned(data).findings if one.code == "C536"]


@pytest.mark.parametrize("words", ["None within sight", "Nothing near", "no", "No, never", "none"])
def test_words_that_say_nothing_is_near_are_held_against_what_is_drawn(words: str) -> None:
    (told,) = none_typed(words, east("well", 120))
    assert words in told
    assert "T 0" in told
    # farther than sheets tell, and of a kind that stands beside another line
    assert none_typed(words, east("well", 301)) == []
    assert none_typed(words, wires(60)) == []
    assert len(none_typed(words, wires(60), line="lines")) == 1
    # a road has a line of its own, of which nothing is typed
    road = wires(60) | {"kind": "road"}
    assert none_typed(words, road, line="neighbours") == []


@pytest.mark.parametrize("words", [None, "Northern pond", "Well house, nothing else", "Notice it"])
def test_other_words_may_name_what_lies_there(words: str | None) -> None:
    assert none_typed(words, east("well", 120)) == []
