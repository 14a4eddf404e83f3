"""Places on some of the same ground: how that is known, and that what is sprayed on one counts."""

import copy
import datetime

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.placed.same_ground import overlaps_of, same_ground, shared_grounds
from tests.plan.planned import BURN_DOWN, inventory_of
from tests.properties import SEASON, Data, full_card, full_use, small_property, the_work

APRIL = datetime.date(2027, 4, 10)
SOWING = f"lane/{SEASON}/frost_seeding"
LINE = [[41.03, -93.02], [41.031, -93.02]]
FIELD = [[41.03, -93.02], [41.03, -93.018], [41.032, -93.018], [41.032, -93.02]]
NORTH = [[41.0319, -93.02], [41.0319, -93.018], [41.034, -93.018], [41.034, -93.02]]
EAST = [[41.03, -93.0199], [41.031, -93.0199]]
ACROSS = [[41.0305, -93.0205], [41.0305, -93.0195]]
ON = "their points lie on each other"
BESIDE = [[41.032, -93.02], [41.032, -93.018], [41.034, -93.018], [41.034, -93.02]]


def two_places(lane: Data, far: Data) -> Data:
    """The lane with a burn down of 32 fl oz, and a place by the name of far; 64 fl oz a year."""
    year = {"amount_fl_oz_per_ac": 64, "counted": "any_12_months"}
    use = full_use("after_sowing_before_emergence", max_per_year=year, times_per_year=1)
    use |= {"plant_back_days": [{"crop": "Switchgrass", "wait_days": 300}]}
    data = small_property(full_card(use))
    the_work(data)[0]["step"] = "spring_burn_down"
    (one,) = data["screens"]["screens"]
    other = copy.deepcopy(one) | {"id": "far", "name": "Far", "known_as": "Strip 2"}
    del other["plantings"]
    one |= lane
    data["screens"]["screens"].append(other | far)
    del data["products"]["products"][0]["on_hand_fl_oz"]
    return data


def sprayed(data: Data, day: str, place: str = "far", fl_oz: float = 40) -> Data:
    said = {"place": place, "treated_ac": 1, "sprayer": "boom", "wind_mph": 5}
    entry = {"id": "e", "done_on": day, "sprayed": said,
             "used": [{"item": "brew", "amount_fl_oz": fl_oz}]}  # fmt: skip
    return data | {"log": {"entries": [entry]}}


def plan_of(data: Data, day: datetime.date = APRIL) -> Plan:
    return make_plan(inventory_of(data), SEASON, day)


def codes(plan: Plan, subject: str) -> set[str]:
    return {one.code for one in plan.findings_on(subject)}


@pytest.mark.parametrize(
    ("lane", "far", "why"),
    [
        ({"same_ground_as": ["far"]}, {}, "typed as the same ground"),
        ({}, {"same_ground_as": ["lane"]}, "typed as the same ground"),
        ({"line_lat_lon": LINE}, {"line_lat_lon": LINE[::-1]}, "they have the same line"),
        ({"area_lat_lon": FIELD}, {"area_lat_lon": FIELD[::-1]}, "they have the same outline"),
        ({"area_lat_lon": FIELD}, {"area_lat_lon": NORTH}, ON),
        ({"area_lat_lon": FIELD}, {"area_lat_lon": BESIDE}, ""),
        ({}, {}, ""),
        # strips by line and width: 0.0001 degree of longitude are 27.59 ft
        ({"line_lat_lon": LINE, "width_ft": 60}, {"line_lat_lon": EAST, "width_ft": 60}, ON),
        # 2.4 ft of both, and a phone may be off by 16 ft
        ({"line_lat_lon": LINE, "width_ft": 30}, {"line_lat_lon": EAST, "width_ft": 30}, ""),
        # one that goes across the other, narrower than points may be off
        (
            {"line_lat_lon": LINE, "width_ft": 12, "length_ft": 3630},
            {"line_lat_lon": ACROSS, "width_ft": 10, "length_ft": 4356},
            ON,
        ),
        # a strip along the inside of an outline
        ({"line_lat_lon": LINE, "width_ft": 60}, {"area_lat_lon": FIELD}, ON),
        # 0.0001 degree of latitude is 36 ft: within what both outlines are said to be off
        (
            {"area_lat_lon": FIELD, "outline_error_ft": 40},
            {"area_lat_lon": NORTH, "outline_error_ft": 40},
            "",
        ),
    ],
)
def test_how_two_places_are_known_to_share_ground(lane: Data, far: Data, why: str) -> None:
    data = sprayed(two_places(lane, far), "2026-10-01")
    inventory = inventory_of(data)
    places = inventory.places()
    # where the middle of the property is not typed, its things are laid out by a point of their own
    for location_lat_lon in (None, inventory.property.location_lat_lon, (41.03, -93.02)):
        shared = shared_grounds(places, overlaps_of(places, location_lat_lon))
        assert [one.why[: len(why)] for one in shared] == ([why] if why else [])
    here = {"lane", "far"} if why else {"lane"}
    assert same_ground(places, shared)["lane"] == here
    # 40 and 32 are 72 of 64, twice where once is allowed
    assert ({"S112", "S113"} <= codes(plan_of(data), BURN_DOWN)) == bool(why)
    assert bool({"S112", "S113"} & codes(plan_of(data), BURN_DOWN)) == bool(why)


def test_waits_and_keeping_out_hold_on_shared_ground() -> None:
    data = two_places({"same_ground_as": ["far"]}, {})
    january = datetime.date(2027, 1, 20)
    told = plan_of(sprayed(data, "2027-01-20"), january)
    assert "S210" in codes(told, SOWING)
    assert "C314" in codes(told, "lane")
    apart = plan_of(sprayed(two_places({}, {}), "2027-01-20"), january)
    assert "S210" not in codes(apart, SOWING)
    assert "C314" not in codes(apart, "lane")
    assert "C314" in codes(apart, "far")


def test_a_part_with_another_name_is_other_ground() -> None:
    data = sprayed(two_places({}, {}), "2026-10-01", place="lane")
    assert "S112" in codes(plan_of(data), BURN_DOWN)
    the_work(data)[0]["part"] = "north half"
    data["log"]["entries"][0]["sprayed"]["part"] = "South  half"
    assert codes(plan_of(data), BURN_DOWN) & {"S112", "S113"} == set()
    data["log"]["entries"][0]["sprayed"]["part"] = "North half"
    assert "S112" in codes(plan_of(data), BURN_DOWN)


@pytest.mark.parametrize(
    ("lane", "far", "code", "figures"),
    [
        # 0.0001 degree of longitude at 41.03 N are 27.59 ft: of 30 ft each, 2.41 ft are shared
        ({"line_lat_lon": LINE, "width_ft": 30}, {"line_lat_lon": EAST, "width_ft": 30},
         "C520", (2.41, 16)),
        ({"line_lat_lon": LINE, "width_ft": 60}, {"line_lat_lon": EAST, "width_ft": 60},
         "C521", (32.41, 16)),
        ({"line_lat_lon": LINE, "width_ft": 30, "got": "surveyed"},
         {"line_lat_lon": EAST, "width_ft": 30, "got": "surveyed"}, "C521", (2.41, 1)),
    ],
)  # fmt: skip
def test_places_on_each_other_are_a_caution_until_it_is_typed(
    lane: Data, far: Data, code: str, figures: tuple[float, float]
) -> None:
    told = plan_of(two_places(lane, far)).findings_on("lane")
    (found,) = (one for one in told if one.code in ("C520", "C521"))
    assert found.code == code
    assert [figure.value for _, figure in found.figures] == pytest.approx(figures, abs=0.02)  # type: ignore[union-attr]
    assert "Far" in found.words
    assert found.words_for_others == ""
    typed = two_places(lane | {"same_ground_as": ["far"]}, far)
    assert not {"C520", "C521"} & codes(plan_of(typed), "lane")
    apart = two_places(lane | {"width_ft": 20}, far | {"width_ft": 20})
    assert not {"C520", "C521"} & codes(plan_of(apart), "lane")
